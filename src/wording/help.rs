//! What can be typed: every verb, a line each, and one verb in full.

use super::catalogue::Words;
use super::verbs::{USAGES, Usage, VerbGroup};

/// Every way to use every verb, in the groups of the work, a line each: an example and what it
/// does.
#[must_use]
pub fn help(words: &Words) -> String {
    let width = USAGES.iter().map(|usage| usage.example.chars().count()).max().unwrap_or(0);
    let mut lines = vec![words.say("help-intro", &[])];
    for group in VerbGroup::ALL {
        lines.push(String::new());
        lines.push(group_name(group, words));
        for usage in USAGES.iter().filter(|usage| usage.group == group) {
            let meaning = words.say(usage.meaning, &[]);
            lines.push(format!("  {:width$}  {meaning}", usage.example));
        }
    }
    lines.join("\n")
}

/// Help for one verb: what each of its forms does, the form and an example; `None` for what is no
/// verb. An abbreviation will do as long as it is clear.
#[must_use]
pub fn help_for(verb: &str, words: &Words) -> Option<String> {
    let typed = verb.trim().to_lowercase();
    let mut fitting: Vec<&Usage> =
        USAGES.iter().filter(|usage| usage.verb.word() == typed).collect();
    if fitting.is_empty() && !typed.is_empty() {
        fitting = USAGES.iter().filter(|usage| usage.verb.word().starts_with(&typed)).collect();
    }
    let first = fitting.first()?;
    if fitting.iter().any(|usage| usage.verb != first.verb) {
        return None;
    }
    let mut lines = Vec::new();
    for usage in fitting {
        lines.push(words.say(usage.meaning, &[]));
        let form = words.say("help-form", &[("form", usage.form.into())]);
        let example = words.say("help-example", &[("example", usage.example.into())]);
        lines.extend([form, example].map(|line| format!("  {line}")));
    }
    Some(lines.join("\n"))
}

/// The name of a group of verbs.
#[must_use]
pub fn group_name(group: VerbGroup, words: &Words) -> String {
    words.say(group_key(group), &[])
}

const fn group_key(group: VerbGroup) -> &'static str {
    match group {
        VerbGroup::Look => "group-look",
        VerbGroup::Open => "group-open",
        VerbGroup::Measure => "group-measure",
        VerbGroup::Module => "group-module",
        VerbGroup::Run => "group-run",
        VerbGroup::Reason => "group-reason",
        VerbGroup::Repair => "group-repair",
        VerbGroup::Finish => "group-finish",
    }
}

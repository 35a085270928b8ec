//! What can be typed: every verb, a line each, and one verb in full.

use super::catalogue::Words;
use super::verbs::{USAGES, Usage, VerbGroup};

/// Every way to use every verb, in the groups of the work, a line each with an example.
#[must_use]
pub fn help(words: &Words) -> String {
    let width = USAGES.iter().map(|usage| usage.form.chars().count()).max().unwrap_or(0);
    let mut lines = vec![words.say("help-intro", &[])];
    for group in VerbGroup::ALL {
        lines.push(String::new());
        lines.push(words.say(group_key(group), &[]));
        for usage in USAGES.iter().filter(|usage| usage.group == group) {
            let meaning = words.say(usage.meaning, &[]);
            let example = example(usage, words);
            lines.push(format!("  {:width$}  {meaning}{example}", usage.form));
        }
    }
    lines.join("\n")
}

/// Help for one verb: every form that it has, what each does and an example of each; `None` for
/// what is no verb. An abbreviation will do as long as it is clear.
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
    let lines: Vec<String> = fitting
        .iter()
        .map(|usage| {
            let meaning = words.say(usage.meaning, &[]);
            format!("{}\n  {meaning}{}", usage.form, example(usage, words))
        })
        .collect();
    Some(lines.join("\n"))
}

/// The example behind a meaning, where it tells more than the form.
fn example(usage: &Usage, words: &Words) -> String {
    if usage.example == usage.form {
        return String::new();
    }
    format!(" {}", words.say("help-example", &[("example", usage.example.into())]))
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

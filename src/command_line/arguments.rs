//! What can be asked for on the command line.

use super::describe;
use super::ending::Ending;
use super::store;
use crate::virtual_apprentices::policy::Policy;
use crate::wording::catalogue::Words;
use clap::{Arg, ArgAction, Command, builder::PossibleValuesParser, value_parser};
use std::path::PathBuf;

/// The whole command line, its texts in the language of `words`.
#[must_use]
pub fn command(words: &Words) -> Command {
    let say = |key: &str| words.say(key, &[]);
    let named = |name: &'static str, about: &str, examples: &str| {
        Command::new(name).about(say(about)).after_help(say(examples))
    };
    Command::new("faultwright")
        .version(env!("CARGO_PKG_VERSION"))
        .about(say("cli-about"))
        .after_help(after_help(words))
        .subcommand(workshop(words))
        .subcommand(
            named("bench", "cli-bench-about", "cli-bench-examples")
                .arg(scenario(words))
                .arg(seed(words))
                .arg(file("steps", words.say("cli-steps", &[])))
                .arg(file("session", words.say("cli-session", &[])))
                .arg(
                    file("case", words.say("cli-case", &[]))
                        .conflicts_with_all(["scenario", "seed", "assessed"]),
                )
                .arg(keep_worlds(words))
                .arg(
                    Arg::new("assessed")
                        .long("assessed")
                        .action(ArgAction::SetTrue)
                        .help(say("cli-assessed")),
                )
                .arg(format(words)),
        )
        .subcommand(draw(named("draw", "cli-draw-about", "cli-draw-examples"), words))
        .subcommand(
            named("open", "cli-open-about", "cli-open-examples")
                .arg(
                    Arg::new("file")
                        .value_name("FILE")
                        .required(true)
                        .value_parser(value_parser!(PathBuf))
                        .help(say("cli-open-file")),
                )
                .arg(passphrase(words).required(true))
                .arg(file("into", say("cli-into")))
                .arg(format(words)),
        )
        .subcommand(check(named("check", "cli-check-about", "cli-check-examples"), words))
        .subcommand(
            named("describe", "cli-describe-about", "cli-describe-examples").arg(
                Arg::new("kind")
                    .value_name("KIND")
                    .value_parser(PossibleValuesParser::new(describe::KINDS))
                    .help(say("cli-kind")),
            ),
        )
        .subcommand(
            named("replay", "cli-replay-about", "cli-replay-examples")
                .arg(session_file(words))
                .arg(keep_worlds(words))
                .arg(format(words)),
        )
        .subcommand(
            named("mark", "cli-mark-about", "cli-mark-examples")
                .arg(session_file(words))
                .arg(keep_worlds(words))
                .arg(file("html", words.say("cli-html", &[])))
                .arg(passphrase(words))
                .arg(format(words)),
        )
        .subcommand(what_if(named("whatif", "cli-what-if-about", "cli-what-if-examples"), words))
        .subcommand(trial(named("trial", "cli-trial-about", "cli-trial-examples"), words))
}

fn draw(command: Command, words: &Words) -> Command {
    let say = |key: &str| words.say(key, &[]);
    let flag = |name: &'static str| Arg::new(name).long(name).action(ArgAction::SetTrue);
    command
        .arg(scenario(words))
        .arg(seed(words))
        .arg(
            Arg::new("count")
                .long("count")
                .value_name("N")
                .value_parser(value_parser!(u64).range(1..=10_000))
                .default_value("1")
                .help(say("cli-count")),
        )
        .arg(file("class", say("cli-class")).conflicts_with("count"))
        .arg(flag("same").help(say("cli-same")))
        .arg(Arg::new("matched").long("matched").value_name("LEAST..MOST").help(say("cli-matched")))
        .arg(
            Arg::new("look-at")
                .long("look-at")
                .value_name("N")
                .value_parser(value_parser!(u64).range(1..=1_000_000))
                .requires("matched")
                .help(say("cli-look-at")),
        )
        .arg(
            Arg::new("seal")
                .long("seal")
                .value_name("FOLDER")
                .value_parser(value_parser!(PathBuf))
                .requires("passphrase")
                .help(say("cli-seal")),
        )
        .arg(passphrase(words))
        .arg(flag("reveal").help(say("cli-reveal")))
        .arg(format(words))
}

/// Where the passphrase of a seal stands. It is no argument itself: those are seen by every user of a machine.
fn passphrase(words: &Words) -> Arg {
    file("passphrase", words.say("cli-passphrase", &[]))
}

fn check(command: Command, words: &Words) -> Command {
    let say = |key: &str| words.say(key, &[]);
    let flag = |name: &'static str| Arg::new(name).long(name).action(ArgAction::SetTrue);
    command
        .arg(
            Arg::new("files")
                .value_name("FILE")
                .num_args(1..)
                .value_parser(value_parser!(PathBuf))
                .help(say("cli-files")),
        )
        .arg(flag("strict").help(say("cli-strict")))
        .arg(flag("facts").help(say("cli-facts")))
        .arg(
            Arg::new("apprentices")
                .long("apprentices")
                .value_name("N")
                .value_parser(value_parser!(u64).range(1..=1_000))
                .help(say("cli-apprentices")),
        )
        .arg(keep_worlds(words))
        .arg(format(words))
}

fn what_if(command: Command, words: &Words) -> Command {
    let say = |key: &str| words.say(key, &[]);
    command
        .arg(session_file(words))
        .arg(
            Arg::new("at")
                .long("at")
                .value_name("N")
                .required(true)
                .value_parser(value_parser!(u32))
                .help(say("cli-at")),
        )
        .arg(
            Arg::new("step")
                .long("step")
                .value_name("STEP")
                .action(ArgAction::Append)
                .help(say("cli-step")),
        )
        .arg(
            Arg::new("all")
                .long("all")
                .action(ArgAction::SetTrue)
                .conflicts_with("step")
                .help(say("cli-all")),
        )
        .arg(passphrase(words))
        .arg(keep_worlds(words))
        .arg(format(words))
}

fn trial(command: Command, words: &Words) -> Command {
    let say = |key: &str| words.say(key, &[]);
    let policies = Policy::ALL.map(Policy::word);
    command
        .arg(scenario(words))
        .arg(
            Arg::new("seeds")
                .long("seeds")
                .value_name("A..B")
                .default_value("1..20")
                .help(say("cli-seeds")),
        )
        .arg(
            Arg::new("policies")
                .long("policies")
                .value_name("NAME,NAME")
                .value_delimiter(',')
                .value_parser(PossibleValuesParser::new(policies))
                .default_values(policies)
                .help(say("cli-policies")),
        )
        .arg(
            Arg::new("without-marks")
                .long("without-marks")
                .action(ArgAction::SetTrue)
                .help(say("cli-without-marks")),
        )
        .arg(
            Arg::new("by-case").long("by-case").action(ArgAction::SetTrue).help(say("cli-by-case")),
        )
        .arg(
            Arg::new("threads")
                .long("threads")
                .value_name("N")
                .value_parser(value_parser!(u16).range(1..))
                .help(say("cli-threads")),
        )
        .arg(keep_worlds(words))
        .arg(file("csv", say("cli-csv")))
        .arg(file("parquet", say("cli-parquet")))
        .arg(
            Arg::new("join")
                .long("join")
                .value_name("FILE")
                .num_args(1..)
                .value_parser(value_parser!(PathBuf))
                .conflicts_with_all(["seeds", "policies", "without-marks", "threads"])
                .help(say("cli-join")),
        )
        .arg(format(words))
}

fn scenario(words: &Words) -> Arg {
    file("scenario", words.say("cli-scenario", &[]))
}

fn file(name: &'static str, help: String) -> Arg {
    Arg::new(name).long(name).value_name("FILE").value_parser(value_parser!(PathBuf)).help(help)
}

/// Where worlds are kept; the help says where that is unless told otherwise.
fn keep_worlds(words: &Words) -> Arg {
    let usual = store::usual_world_folder().display().to_string();
    Arg::new("keep-worlds")
        .long("keep-worlds")
        .value_name("FOLDER")
        .value_parser(value_parser!(PathBuf))
        .help(words.say("cli-keep-worlds", &[("folder", usual.into())]))
}

fn seed(words: &Words) -> Arg {
    Arg::new("seed")
        .long("seed")
        .value_name("N")
        .value_parser(value_parser!(u64))
        .help(words.say("cli-seed", &[]))
}

fn format(words: &Words) -> Arg {
    Arg::new("format")
        .long("format")
        .value_name("FORMAT")
        .value_parser(PossibleValuesParser::new(["text", "json"]))
        .default_value("text")
        .help(words.say("cli-format", &[]))
}

fn session_file(words: &Words) -> Arg {
    Arg::new("file")
        .value_name("FILE")
        .required(true)
        .value_parser(value_parser!(PathBuf))
        .help(words.say("cli-session-file", &[]))
}

/// The table of exit codes and the safety line.
fn after_help(words: &Words) -> String {
    let mut lines = vec![words.say("cli-exit-codes", &[])];
    for ending in Ending::ALL {
        let key = match ending {
            Ending::Done => "exit-done",
            Ending::WrongArguments => "exit-wrong-arguments",
            Ending::NoWindow => "exit-no-window",
            Ending::BadInput => "exit-bad-input",
            Ending::FileTrouble => "exit-file-trouble",
            Ending::Defect => "exit-defect",
        };
        lines.push(format!("  {:>2}  {}", ending.code(), words.say(key, &[])));
    }
    lines.push(String::new());
    lines.push(words.say("cli-safety", &[]));
    lines.join("\n")
}

/// The window.
fn workshop(words: &Words) -> Command {
    let say = |key: &str| words.say(key, &[]);
    Command::new("workshop")
        .about(say("cli-workshop-about"))
        .after_help(say("cli-workshop-examples"))
        .arg(scenario(words))
        .arg(
            Arg::new("screenshots")
                .long("screenshots")
                .value_name("FOLDER")
                .value_parser(value_parser!(PathBuf))
                .help(say("cli-screenshots")),
        )
        .arg(
            Arg::new("size")
                .long("size")
                .value_name("WIDTHxHEIGHT")
                .value_parser(window_size)
                .help(say("cli-window-size")),
        )
        .arg(
            Arg::new("frame-times")
                .long("frame-times")
                .action(ArgAction::SetTrue)
                .help(say("cli-frame-times")),
        )
}

/// Width and height of a window, each from 320 to 8192.
fn window_size(text: &str) -> Result<(u32, u32), String> {
    let side = |text: &str| text.trim().parse().ok().filter(|side| (320..=8192).contains(side));
    let sides =
        text.split_once('x').and_then(|(width, height)| Some((side(width)?, side(height)?)));
    sides.ok_or_else(|| "WIDTHxHEIGHT, each from 320 to 8192, as in 1280x720".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_the_command_line_contradicts_itself_nowhere() {
        command(&Words::for_language("en-GB")).debug_assert();
    }
}

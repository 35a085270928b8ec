//! The program as a person or a script meets it: the real binary in a folder of its own.
//!
//! Sentences may be reworded, so what is asked for are exit codes, places, names and file contents.
//! The scenario of most tests is the shipped one with two faults instead of all, which deals and
//! marks in a fraction of the time.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use serde_json::Value;
use std::collections::BTreeSet;
use std::fs;
use std::io::{BufRead as _, BufReader, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use tempfile::TempDir;

const COMMANDS: [&str; 9] =
    ["workshop", "bench", "draw", "open", "check", "replay", "mark", "whatif", "trial"];

const WRONG_ARGUMENTS: i32 = 2;
const BAD_INPUT: i32 = 4;
const FILE_TROUBLE: i32 = 5;

/// A session that is finished in a few steps.
const SHORT: &str = "dipstick\nkey on\nread codes\nread freeze-frame\nhand over referred\n";

/// A folder in which the program finds no traces of anybody.
struct Place {
    folder: TempDir,
}

impl Place {
    fn new() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn write(&self, name: &str, text: impl AsRef<[u8]>) -> PathBuf {
        fs::write(self.path(name), text).unwrap();
        self.path(name)
    }

    fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_faultwright"));
        command
            .args(arguments)
            .current_dir(self.folder.path())
            .env_clear()
            .env("HOME", self.folder.path())
            .env("XDG_DATA_HOME", self.path("data"))
            .env("LOCALAPPDATA", self.path("data"))
            .env("XDG_CACHE_HOME", self.path("cache"))
            .env("LANG", "en_GB.UTF-8")
            .stdin(Stdio::null());
        command
    }

    fn run(&self, arguments: &[&str]) -> Ran {
        Ran::of(&self.command(arguments).output().unwrap())
    }

    fn run_with(&self, arguments: &[&str], input: &str) -> Ran {
        let mut command = self.command(arguments);
        command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = command.spawn().unwrap();
        // A program that stops at a wrong line does not read the rest.
        let _ = child.stdin.take().unwrap().write_all(input.as_bytes());
        Ran::of(&child.wait_with_output().unwrap())
    }

    /// The shipped scenario with two faults.
    fn small_scenario(&self) -> String {
        let shipped = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/market-hill.ron");
        let text = fs::read_to_string(shipped).unwrap();
        let kept: Vec<&str> = text
            .lines()
            .filter(|line| {
                !line.trim_start().starts_with("(kind:")
                    || line.contains("OpenCoil, place: \"intake")
                    || line.contains("LowOil")
            })
            .collect();
        let path = self.write("small.ron", kept.join("\n"));
        path.display().to_string()
    }

    /// A session with these steps, kept in a file of this name.
    fn session(&self, name: &str, steps: &str) -> Ran {
        let scenario = self.small_scenario();
        let steps = self.write("given.steps", steps).display().to_string();
        let arguments =
            ["bench", "--scenario", &scenario, "--seed", "5", "--session", name, "--steps", &steps];
        self.run(&arguments)
    }
}

#[derive(Debug)]
struct Ran {
    code: i32,
    out: String,
    talk: String,
}

impl Ran {
    fn of(output: &Output) -> Self {
        let ran = Self {
            code: output.status.code().unwrap(),
            out: String::from_utf8(output.stdout.clone()).unwrap(),
            talk: String::from_utf8(output.stderr.clone()).unwrap(),
        };
        assert!(!ran.talk.contains("panicked"), "{ran:?}");
        ran
    }

    /// That it ended with a code, and names something in what it says.
    #[track_caller]
    fn ended(&self, code: i32, naming: &[&str]) -> &Self {
        assert_eq!(self.code, code, "{self:?}");
        for name in naming {
            assert!(self.out.contains(name) || self.talk.contains(name), "no {name} in {self:?}");
        }
        self
    }
}

#[test]
fn verif_help_tells_every_command_with_examples() {
    let place = Place::new();
    let ran = place.run(&["--help"]);
    ran.ended(0, &COMMANDS);
    for code in ["2", "4", "5", "70"] {
        let is_listed = ran.out.lines().any(|line| line.trim_start().starts_with(code));
        assert!(is_listed, "exit code {code} is not in the help: {}", ran.out);
    }
    for command in COMMANDS {
        let example = format!("faultwright {command}");
        let ran = place.run(&[command, "--help"]);
        ran.ended(0, &[]);
        let (usage, after) = ran.out.split_once("Options:").unwrap();
        assert!(usage.contains(&example), "{}", ran.out);
        assert!(after.contains(&example), "no example for {command}: {}", ran.out);
    }
    place.run(&["--version"]).ended(0, &[env!("CARGO_PKG_VERSION")]);
}

#[test]
fn limit_wrong_arguments_are_refused() {
    let place = Place::new();
    place.run(&["bnch"]).ended(WRONG_ARGUMENTS, &["bnch", "bench"]);
    place.run(&["bench", "--seed", "many"]).ended(WRONG_ARGUMENTS, &["many", "--seed"]);
    place.run(&["draw", "--count", "0"]).ended(WRONG_ARGUMENTS, &["--count"]);
    place.run(&["mark", "--format", "xml", "a"]).ended(WRONG_ARGUMENTS, &["xml", "json"]);
    place.run(&["mark"]).ended(WRONG_ARGUMENTS, &["FILE"]);
}

#[test]
fn verif_the_shipped_scenario_checks_clean() {
    let place = Place::new();
    let shipped = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/market-hill.ron");
    place.run(&["check"]).ended(0, &[]);
    place.run(&["check", &shipped.display().to_string()]).ended(0, &["market-hill.ron"]);
    place.run(&["check", &place.small_scenario()]).ended(0, &["small.ron"]);
    // Warnings fail nothing unless that is asked for.
    let text = fs::read_to_string(shipped).unwrap().replace("fuel: 4_20", "fuel: 0");
    let path = place.write("free.ron", text).display().to_string();
    place.run(&["check", &path]).ended(0, &["free.ron:96:15: warning", "one warning"]);
    place.run(&["check", &path, "--strict"]).ended(BAD_INPUT, &["free.ron:96:15"]);
    place.run(&["check", "market-hill", "--strict"]).ended(0, &["market-hill"]);
}

#[test]
fn limit_an_unknown_field_is_told_with_file_line_and_column() {
    let place = Place::new();
    let good = fs::read_to_string(place.small_scenario()).unwrap();
    let wrong = good.replacen("    title:", "    titel:", 1);
    assert_ne!(good, wrong);
    let line = 1 + wrong.lines().position(|line| line.contains("titel")).unwrap();
    let path = place.write("wrong.ron", wrong).display().to_string();
    let where_it_is = format!("wrong.ron:{line}:5");
    place.run(&["check", &path]).ended(BAD_INPUT, &[&where_it_is, "titel", "title"]);
    let ran = place.run(&["bench", "--scenario", &path]);
    ran.ended(BAD_INPUT, &[&where_it_is, "titel", "title"]);
    assert!(ran.out.is_empty(), "trouble is not data: {}", ran.out);
}

#[test]
fn limit_a_missing_file_is_named() {
    let place = Place::new();
    place.run(&["check", "none.ron"]).ended(FILE_TROUBLE, &["none.ron"]);
    place.run(&["draw", "--scenario", "none.ron"]).ended(FILE_TROUBLE, &["none.ron"]);
    place.run(&["replay", "none.session"]).ended(FILE_TROUBLE, &["none.session"]);
    place.run(&["mark", "none.session"]).ended(FILE_TROUBLE, &["none.session"]);
    let scenario = place.small_scenario();
    let arguments = ["bench", "--scenario", &scenario, "--session", "a", "--steps", "none.steps"];
    place.run(&arguments).ended(FILE_TROUBLE, &["none.steps"]);
}

#[test]
fn limit_a_folder_that_cannot_be_written_is_named() {
    let place = Place::new();
    let scenario = place.small_scenario();
    place.write("plain", "not a folder");
    let session = place.path("plain/a.session").display().to_string();
    let ran = place.run(&["bench", "--scenario", &scenario, "--session", &session]);
    ran.ended(FILE_TROUBLE, &[&session]);
    let mut command = place.command(&["bench", "--scenario", &scenario]);
    let data = place.path("plain/data");
    command.env("XDG_DATA_HOME", &data).env("LOCALAPPDATA", &data);
    Ran::of(&command.output().unwrap()).ended(FILE_TROUBLE, &["plain"]);
}

#[test]
fn verif_a_session_without_a_name_is_kept_where_data_is_kept() {
    let place = Place::new();
    let scenario = place.small_scenario();
    place.run_with(&["bench", "--scenario", &scenario, "--seed", "5"], "dipstick\n").ended(0, &[]);
    let kept: Vec<_> = fs::read_dir(place.path("data/faultwright/sessions")).unwrap().collect();
    assert_eq!(kept.len(), 1);
}

#[test]
fn limit_a_wrong_step_in_a_script_stops_it_and_keeps_what_was_done() {
    let place = Place::new();
    let ran = place.session("a.session", "dipstick\n\n# a comment\nmesaure ohms\nkey on\n");
    ran.ended(BAD_INPUT, &["4", "mesaure", "measure"]);
    assert!(ran.out.contains("dipstick") && !ran.out.contains("key on"), "{}", ran.out);
    let ran = place.run(&["replay", "a.session", "--format", "json"]);
    assert_eq!(entries(&json_lines(&ran.ended(0, &[]).out)), 1);
    let ran = place.run_with(&["bench", "--session", "a.session", "--format", "json"], "key on\n");
    assert_eq!(entries(&json_lines(&ran.ended(0, &["a.session"]).out)), 2);
    let ran = place.run(&["replay", "a.session", "--format", "json"]);
    assert_eq!(entries(&json_lines(&ran.ended(0, &[]).out)), 2);
}

#[test]
fn verif_steps_come_from_standard_input_and_a_file_alike() {
    let place = Place::new();
    let from_file = place.session("a.session", "dipstick\nkey on\nread codes\n");
    from_file.ended(0, &[]);
    let scenario = place.small_scenario();
    let arguments = ["bench", "--scenario", &scenario, "--seed", "5", "--session", "b.session"];
    let from_input = place.run_with(&arguments, "dipstick\nkey on\nread codes");
    assert_eq!(from_input.ended(0, &[]).out, from_file.out);
}

#[test]
fn limit_a_session_of_another_seed_is_not_gone_on_with_in_silence() {
    let place = Place::new();
    place.session("a.session", "dipstick\n").ended(0, &[]);
    let whole = kept(&place, "a.session");
    let ran = place.run_with(&["bench", "--session", "a.session", "--seed", "6"], "key on\n");
    ran.ended(BAD_INPUT, &["a.session", "5", "6"]);
    assert_eq!(kept(&place, "a.session"), whole, "nothing was added");
    let same = ["bench", "--session", "a.session", "--seed", "5"];
    place.run_with(&same, "key on\n").ended(0, &[]);
}

/// The text of a kept session, with the line numbers of its entries from 1.
fn kept(place: &Place, name: &str) -> String {
    fs::read_to_string(place.path(name)).unwrap()
}

#[test]
fn limit_a_torn_session_is_not_marked_but_goes_on() {
    let place = Place::new();
    place.session("a.session", "dipstick\nkey on\nread codes\n").ended(0, &[]);
    let whole = kept(&place, "a.session");
    place.write("torn.session", &whole[..whole.len() - 20]);
    place.run(&["replay", "torn.session"]).ended(BAD_INPUT, &["torn.session", "3"]);
    place.run(&["mark", "torn.session"]).ended(BAD_INPUT, &["torn.session", "3"]);
    let arguments = ["bench", "--session", "torn.session", "--format", "json"];
    let ran = place.run_with(&arguments, "read codes\nhand over referred\n");
    ran.ended(0, &["torn.session"]);
    assert_eq!(entries(&json_lines(&ran.out)), 4);
    place.run(&["replay", "torn.session"]).ended(0, &[]);
    assert!(place.path("torn.session.torn").exists(), "what was cut off is kept beside it");
}

#[test]
fn limit_an_altered_session_is_refused_with_the_entry() {
    let place = Place::new();
    place.session("a.session", SHORT).ended(0, &[]);
    let whole = kept(&place, "a.session");
    let number = whole.lines().position(|line| line.contains("read-codes")).unwrap();
    let altered: Vec<String> =
        whole.lines().map(|line| line.replace("\"read-codes\"", "\"clear-codes\"")).collect();
    let altered = altered.join("\n") + "\n";
    assert_ne!(altered, whole);
    place.write("altered.session", altered);
    // Entries are counted from 1 behind the header line.
    let entry = number.to_string();
    for arguments in [
        vec!["replay", "altered.session"],
        vec!["mark", "altered.session"],
        vec!["bench", "--session", "altered.session"],
    ] {
        place.run(&arguments).ended(BAD_INPUT, &["altered.session", &entry]);
    }
}

fn json_lines(text: &str) -> Vec<Value> {
    text.lines()
        .map(|line| serde_json::from_str(line).unwrap_or_else(|error| panic!("{error}: {line}")))
        .collect()
}

/// The greatest number of an entry in the output.
fn entries(lines: &[Value]) -> u64 {
    lines.iter().filter_map(|line| line["entry"].as_u64()).max().unwrap_or(0)
}

#[track_caller]
fn has_header(lines: &[Value], what: &str) {
    assert_eq!(lines[0]["format"], format!("faultwright {what}"), "{}", lines[0]);
    assert_eq!(lines[0]["version"], 1);
    assert!(lines[1..].iter().all(|line| line.get("format").is_none()));
}

#[test]
fn verif_json_output_is_one_object_a_line_with_its_version_first() {
    let place = Place::new();
    let scenario = place.small_scenario();
    let arguments = [
        "bench",
        "--scenario",
        &scenario,
        "--seed",
        "5",
        "--session",
        "a.session",
        "--format",
        "json",
    ];
    let ran = place.run_with(&arguments, SHORT);
    let lines = json_lines(&ran.ended(0, &[]).out);
    has_header(&lines, "events");
    assert_eq!(lines[0]["session"], "a.session");
    let steps = SHORT.lines().count();
    assert_eq!(lines.iter().filter(|line| line.get("till").is_some()).count(), steps);
    assert!(lines.last().unwrap()["debrief"]["total"].is_number());

    let replayed =
        json_lines(&place.run(&["replay", "a.session", "--format", "json"]).ended(0, &[]).out);
    has_header(&replayed, "events");
    let marked =
        json_lines(&place.run(&["mark", "a.session", "--format", "json"]).ended(0, &[]).out);
    has_header(&marked, "events");
    assert_eq!(marked[1..], lines[lines.len() - 1..]);
    let events = |lines: &[Value]| -> Vec<Value> {
        lines.iter().filter(|line| line.get("event").is_some()).cloned().collect()
    };
    assert_eq!(events(&replayed), events(&lines));

    let drawn = place.run(&[
        "draw",
        "--scenario",
        &scenario,
        "--seed",
        "5",
        "--count",
        "3",
        "--reveal",
        "--format",
        "json",
    ]);
    let drawn = json_lines(&drawn.ended(0, &[]).out);
    has_header(&drawn, "cases");
    assert_eq!(drawn.len(), 1 + 3);
    assert_eq!(drawn[1]["seed"], 5);
    let secret = place.run(&["draw", "--scenario", &scenario, "--seed", "5", "--format", "json"]);
    assert!(json_lines(&secret.out)[1].get("faults").is_none());

    let checked =
        json_lines(&place.run(&["check", &scenario, "--format", "json"]).ended(0, &[]).out);
    has_header(&checked, "checks");
    assert_eq!(checked[1]["fine"], true);
    assert!(checked[1]["draws"]["bits"].is_number() && checked[1]["facts"].is_null());
    let wrong = place.write("wrong.ron", "(format: 3)").display().to_string();
    let checked = place.run(&["check", &wrong, "--format", "json"]);
    let checked = json_lines(&checked.ended(BAD_INPUT, &[]).out);
    assert_eq!(checked[1]["fine"], false);
    assert!(!checked[1]["problems"].as_array().unwrap().is_empty());
}

#[test]
fn replay_marking_twice_gives_the_same_words_and_numbers() {
    let place = Place::new();
    let bench = place.session("a.session", SHORT);
    bench.ended(0, &[]);
    let before = kept(&place, "a.session");
    for format in ["text", "json"] {
        let arguments = ["mark", "a.session", "--format", format];
        let first = place.run(&arguments);
        first.ended(0, &[]);
        assert_eq!(place.run(&arguments).out, first.out);
        if format == "text" {
            assert!(bench.out.ends_with(&first.out), "the bench ends with the same debrief");
        }
    }
    assert_eq!(kept(&place, "a.session"), before, "marking leaves the file alone");
}

/// Where worlds are kept is told by the help and chosen by an option; marks do not hang on it.
#[test]
fn replay_marks_are_the_same_wherever_worlds_are_kept() {
    let place = Place::new();
    place.session("a.session", SHORT).ended(0, &[]);
    let usual = place.path("cache/faultwright/worlds");
    let count = |folder: &Path| fs::read_dir(folder).map_or(0, Iterator::count);
    assert_eq!(count(&usual), 1, "the bench keeps what its debrief worked out");
    fs::remove_dir_all(&usual).unwrap();
    let marked = |folder: &str| place.run(&["mark", "a.session", "--keep-worlds", folder]);
    let plain = marked("none");
    plain.ended(0, &[]);
    assert_eq!(count(&usual) + count(&place.path("none")), 0);
    for _ in 0..2 {
        assert_eq!(marked("mine").out, plain.out);
        assert_eq!(count(&place.path("mine")), 1);
    }
    let in_the_way = marked("a.session");
    in_the_way.ended(0, &["a.session"]);
    assert_eq!(in_the_way.out, plain.out);
    let help = place.run(&["mark", "--help"]);
    help.ended(0, &[]);
    assert!(help.out.contains("cache/faultwright/worlds"), "{}", help.out);
}

#[test]
fn limit_an_unfinished_session_is_not_marked() {
    let place = Place::new();
    place.session("a.session", "dipstick\n").ended(0, &["a.session"]);
    let ran = place.run(&["mark", "a.session"]);
    ran.ended(BAD_INPUT, &["a.session"]);
    assert!(ran.out.is_empty(), "{}", ran.out);
}

#[cfg(unix)]
#[test]
fn limit_a_reader_that_goes_away_is_no_panic() {
    let place = Place::new();
    let scenario = place.small_scenario();
    let steps = "dipstick\n".repeat(200);
    let steps = place.write("many.steps", steps).display().to_string();
    let mut command = place.command(&[
        "bench",
        "--scenario",
        &scenario,
        "--seed",
        "5",
        "--steps",
        &steps,
        "--session",
        "a",
    ]);
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let mut first = String::new();
    BufReader::new(child.stdout.take().unwrap()).read_line(&mut first).unwrap();
    assert!(!first.is_empty());
    let ran = Ran::of(&child.wait_with_output().unwrap());
    assert_eq!(ran.code, 0, "{ran:?}");
    let taken = kept(&place, "a").lines().count() - 1;
    assert!(taken < 200, "all of {taken} steps were taken for nobody");
    place.run(&["replay", "a"]).ended(0, &[]);
}

/// Every way from the top of a value to a field, such as `debrief.marks[].points`.
fn paths(value: &Value, above: &str, found: &mut BTreeSet<String>) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                let path = format!("{above}.{name}");
                paths(value, &path, found);
                found.insert(path);
            }
        }
        Value::Array(values) => {
            for value in values {
                paths(value, &format!("{above}[]"), found);
            }
        }
        _ => {}
    }
}

/// Steps that lead to an event of every kind that the documentation shows, and to a debrief with
/// remarks of several kinds.
const FOR_THE_DOCUMENTATION: &str = "dipstick
hint area
key on
read codes
read freeze-frame
key off
remove engine-cover
unplug intake-connector
zero leads
predict 8.8 to 9.7 ohms
measure ohms intake-valve-feed intake-valve-control
suspect open-coil intake-valve 90%
commit open-coil intake-valve
plug intake-connector
refit engine-cover
hand over declined
";

#[test]
fn verif_the_documentation_of_json_has_the_fields_of_the_output() {
    let place = Place::new();
    let scenario = place.small_scenario();
    let steps = place.write("given.steps", FOR_THE_DOCUMENTATION).display().to_string();
    let wrong = place.write("w.ron", "(format: 3)").display().to_string();
    let look = "look intake-control-wire";
    let json = ["--format", "json"];
    let of_scenario = ["--scenario", &scenario, "--seed", "5"];
    let bench = ["bench", "--session", "a.session", "--steps", &steps];
    let output = [
        [&bench[..], &of_scenario, &json].concat(),
        [&["mark", "a.session"][..], &json].concat(),
        [&["replay", "a.session"][..], &json].concat(),
        [&["whatif", "a.session", "--at", "11"][..], &json].concat(),
        [&["whatif", "a.session", "--at", "11", "--step", look][..], &json].concat(),
        [&["draw", "--reveal"][..], &of_scenario, &json].concat(),
        [&["check", &wrong][..], &json].concat(),
    ];
    let mut real = BTreeSet::new();
    for arguments in &output {
        for line in json_lines(&place.run(arguments).out) {
            paths(&line, "", &mut real);
        }
    }
    let text = include_str!("../docs/json-output.md");
    let mut shown = BTreeSet::new();
    let mut in_example = false;
    for line in text.lines() {
        if line.starts_with("```") {
            in_example = line == "```json";
        } else if in_example {
            paths(&serde_json::from_str(line).unwrap(), "", &mut shown);
        }
    }
    assert!(shown.len() > 50, "{} fields in the examples", shown.len());
    // What is remarked of a session, and which test was best, is another thing in each.
    let differs = |path: &&String| !path.contains(".about.") && !path.contains(".best.");
    let invented: Vec<_> = shown.difference(&real).filter(differs).collect();
    assert!(invented.is_empty(), "in the documentation alone: {invented:?}");
    // Steps, events and kinds of problems have too many fields for a table.
    let is_told = |path: &&String| {
        let name = path.rsplit('.').next().unwrap();
        let steps = [".step.", ".steps[].", ".best.", ".what."];
        let events = [".event.", ".events[].", ".in-truth[]."];
        let is_detail = [&steps[..], &events, &[".about.", ".kind."]]
            .concat()
            .iter()
            .any(|part| path.contains(part));
        is_detail || text.contains(&format!("`{name}`"))
    };
    let untold: Vec<_> = real.iter().filter(|path| !is_told(path)).collect();
    assert!(untold.is_empty(), "not in the documentation: {untold:?}");
}

#[test]
fn verif_a_moment_of_a_finished_session_can_be_asked_what_else_could_have_been_done() {
    let place = Place::new();
    place.session("a.session", SHORT).ended(0, &[]);
    let step = "measure volts battery-plus battery-minus";
    let ran = place.run(&["whatif", "a.session", "--at", "2", "--step", step]);
    ran.ended(0, &["key on", step, "V"]);
    let ran = place.run(&["whatif", "a.session", "--at", "2", "--format", "json"]);
    let lines = json_lines(&ran.ended(0, &[]).out);
    assert_eq!(lines[0]["format"], "faultwright what-if");
    assert_eq!(lines[1]["moment"]["entry"], 2);
    let choices: Vec<&Value> = lines.iter().skip(2).map(|line| &line["choice"]).collect();
    assert!(choices.len() > 20, "{}", choices.len());
    for choice in choices.iter().filter(|it| it["outcomes"].is_array()) {
        let chances = choice["outcomes"].as_array().unwrap().iter();
        let sum: f64 = chances.map(|it| it["chance"].as_f64().unwrap()).sum();
        assert!((sum - 1.0).abs() < 0.002, "{choice}");
        assert!(choice["in-truth"].is_array() && choice["total"].is_number(), "{choice}");
    }
}

#[test]
fn limit_what_cannot_be_looked_back_at_is_refused_with_place_and_remedy() {
    let place = Place::new();
    place.session("open.session", "dipstick\n").ended(0, &[]);
    place.run(&["whatif", "open.session", "--at", "1"]).ended(BAD_INPUT, &["open.session"]);
    place.session("a.session", SHORT).ended(0, &[]);
    for at in ["0", "6"] {
        let ran = place.run(&["whatif", "a.session", "--at", at]);
        ran.ended(BAD_INPUT, &["a.session", at, "5"]);
    }
    let asked = |step| place.run(&["whatif", "a.session", "--at", "1", "--step", step]);
    asked("mesaure ohms").ended(WRONG_ARGUMENTS, &["mesaure", "measure", "--step"]);
    asked("").ended(WRONG_ARGUMENTS, &["--step"]);
    asked("plug intake-connector").ended(BAD_INPUT, &["plug intake-connector"]);
    place.run(&["whatif", "a.session"]).ended(WRONG_ARGUMENTS, &["--at"]);
    place.run(&["whatif", "none.session", "--at", "1"]).ended(FILE_TROUBLE, &["none.session"]);
}

#[test]
fn verif_the_bench_answers_after_the_hand_over() {
    let place = Place::new();
    let ran = place.session("a.session", &format!("{SHORT}whatif 2 dipstick\nquit\n"));
    assert!(ran.ended(0, &[]).out.contains("> whatif 2 dipstick"), "{}", ran.out);
    let ran = place.session("b.session", &format!("{SHORT}whatif 9\n"));
    ran.ended(BAD_INPUT, &["9", "5"]);
}

#[test]
fn verif_hints_are_told_again_by_a_replay_and_refused_where_a_session_is_assessed() {
    let place = Place::new();
    let steps = "hint step\ndipstick\nhint question\n";
    let ran = place.session("a.session", steps);
    let told: Vec<&str> =
        ran.ended(0, &[]).out.lines().skip_while(|it| *it != "> hint step").collect();
    assert!(told.len() > 4, "{told:?}");
    let again = place.run(&["replay", "a.session"]);
    for line in told.iter().filter(|line| !line.starts_with(['[', '>']) && !line.is_empty()) {
        assert!(again.out.contains(line), "{line}");
    }
    let scenario = place.small_scenario();
    let begin = ["bench", "--scenario", &scenario, "--seed", "5", "--format", "json", "--assessed"];
    let ran = place.run_with(&[&begin[..], &["--session", "b.session"]].concat(), "hint area\n");
    assert!(ran.ended(0, &[]).out.contains("no-hints"), "{}", ran.out);
    // It stays assessed, and practice does not become it afterwards.
    let on = ["bench", "--session", "b.session", "--format", "json"];
    assert!(place.run_with(&on, "hint area\n").ended(0, &[]).out.contains("no-hints"));
    place
        .run_with(&["bench", "--assessed", "--session", "a.session"], "")
        .ended(BAD_INPUT, &["a.session"]);
}

#[test]
fn verif_a_debrief_is_written_as_a_page_that_needs_no_other_file() {
    let place = Place::new();
    place.session("a.session", SHORT).ended(0, &[]);
    let whole = kept(&place, "a.session");
    place.run(&["mark", "a.session", "--html", "a.html"]).ended(0, &["a.html"]);
    let page = kept(&place, "a.html");
    assert!(
        page.starts_with("<!DOCTYPE html>") && page.contains("<svg") && page.ends_with("</html>\n")
    );
    assert!(page.contains("licensed technician"), "the safety note is missing");
    for foreign in ["http://", "https://", "src=", "<script", "@import", "url("] {
        assert!(!page.contains(foreign), "{foreign}");
    }
    place.run(&["mark", "a.session", "--html", "a.session"]).ended(WRONG_ARGUMENTS, &["a.session"]);
    place.run(&["mark", "a.session", "--html", "no/a.html"]).ended(FILE_TROUBLE, &["a.html"]);
    assert_eq!(kept(&place, "a.session"), whole);
}

/// A tiny trial, split over two files as two machines would, gives the same table as one run.
#[test]
fn verif_a_trial_is_run_kept_gone_on_with_and_joined() {
    let place = Place::new();
    let scenario = place.small_scenario();
    let trial = |seeds: &str, rest: &[&str]| {
        let mut arguments = vec!["trial", "--scenario", &scenario, "--without-marks"];
        arguments.extend(["--policies", "parts-swapper,by-the-book", "--seeds", seeds]);
        arguments.extend(rest);
        place.run(&arguments)
    };
    let whole = trial("1..2", &["--csv", "whole.csv", "--by-case"]);
    whole.ended(0, &["4 sessions"]);
    trial("1", &["--csv", "a.csv"]).ended(0, &[]);
    trial("2", &["--csv", "b.csv"]).ended(0, &[]);
    let joined = place.run(&["trial", "--join", "b.csv", "a.csv", "--by-case", "--csv", "ab.csv"]);
    joined.ended(0, &[]);
    assert_eq!(joined.out, whole.out);
    let read = |name: &str| fs::read_to_string(place.path(name)).unwrap();
    assert_eq!(read("ab.csv"), read("whole.csv"));
    let head = read("whole.csv").lines().next().unwrap().to_owned();
    assert!(head.starts_with("trial 2 scenario,"), "{head}");
    assert!(head.ends_with(",regret_least,regret_most,value_least,value_most"), "{head}");
    // What is there already is not worked again, and cases are told by their seed.
    let again = trial("1..2", &["--csv", "whole.csv", "--by-case", "--format", "json"]);
    again.ended(0, &["whole.csv"]);
    let lines = json_lines(&again.out);
    has_header(&lines, "trial");
    let seeds: Vec<u64> = lines[1]["cases"]
        .as_array()
        .unwrap()
        .iter()
        .map(|case| case["seed"].as_u64().unwrap())
        .collect();
    assert_eq!(seeds, [1, 2]);
    place.run(&["trial", "--join", "a.csv", "--parquet", "a.parquet"]).ended(0, &[]);
    assert!(fs::read(place.path("a.parquet")).unwrap().starts_with(b"PAR1"));
}

#[test]
fn limit_a_trial_with_wrong_arguments_or_files_is_refused() {
    let place = Place::new();
    for seeds in ["3..1", "one", "0..1000000"] {
        place.run(&["trial", "--seeds", seeds]).ended(WRONG_ARGUMENTS, &[seeds]);
    }
    place.run(&["trial", "--policies", "guesser"]).ended(WRONG_ARGUMENTS, &["guesser"]);
    place.run(&["trial", "--threads", "0"]).ended(WRONG_ARGUMENTS, &["0"]);
    place.run(&["trial", "--join", "a.csv", "--seeds", "1"]).ended(WRONG_ARGUMENTS, &["--seeds"]);
    place.run(&["trial", "--join", "none.csv"]).ended(FILE_TROUBLE, &["none.csv"]);
    place.write("notes.csv", "seed,policy\n1,planner\n");
    place.run(&["trial", "--join", "notes.csv"]).ended(BAD_INPUT, &["notes.csv", "line 1"]);
    // A table of the format before has one figure where there are two bounds now.
    place.write("old.csv", "trial 1 scenario,fingerprint\nmarket-hill,0123\n");
    let old = place.run(&["trial", "--join", "old.csv"]);
    old.ended(BAD_INPUT, &["old.csv", "line 1", "version 1"]);
    let scenario = place.small_scenario();
    let onto = ["trial", "--scenario", &scenario, "--seeds", "1", "--csv", "old.csv"];
    place.run(&onto).ended(BAD_INPUT, &["old.csv", "version 1"]);
}

/// The same band deals the same cases, each within it; seeds that hold too few are told with their number.
#[test]
fn verif_matched_cases_lie_within_the_band() {
    let place = Place::new();
    let scenario = place.small_scenario();
    let draw = |rest: &[&str]| {
        let mut arguments = vec!["draw", "--scenario", &scenario, "--seed", "1"];
        arguments.extend(rest);
        place.run(&arguments)
    };
    let two = ["--count", "2", "--matched", "0..1000", "--format", "json"];
    let dealt = draw(&two);
    dealt.ended(0, &[]);
    assert_eq!(draw(&two).out, dealt.out);
    let lines = json_lines(&dealt.out);
    has_header(&lines, "cases");
    let cost = |line: &Value, field: &str| line[field].as_f64().unwrap();
    let first = &lines[1];
    let (least, most) = (cost(first, "expected-cost-at-least"), cost(first, "expected-cost"));
    assert!(0.0 < least && least <= most && most < 1000.0, "{first}");
    // A band around the first alone deals it first, and whatever follows lies within as well.
    let band = format!("{}..{}", least - 0.01, most + 0.01);
    let near = draw(&["--count", "1", "--matched", &band, "--format", "json"]);
    near.ended(0, &[]);
    assert_eq!(json_lines(&near.out)[1]["seed"], first["seed"]);
    let none = draw(&["--count", "3", "--matched", "0..0.5", "--look-at", "2"]);
    none.ended(BAD_INPUT, &["0 of 3", "2 seeds", "--look-at"]);
    assert_eq!(none.out, "");
    draw(&["--matched", "120..90"]).ended(WRONG_ARGUMENTS, &["120..90", "90..120"]);
    draw(&["--look-at", "5"]).ended(WRONG_ARGUMENTS, &["--matched"]);
}

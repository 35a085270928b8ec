//! The program in another language: it speaks that one, and a session is kept in none.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use tempfile::TempDir;

const ENGLISH: &str = "en_GB.UTF-8";
const GERMAN: &str = "de_DE.UTF-8";

/// A session that asks, looks, measures, is refused once and is handed back.
const STEPS: &str = "ask when\ndipstick\nfit intake-valve hd-4470-1\nkey on\nread codes\nread live-data\n\
    measure volts battery-plus battery-minus\nhand over referred\n";

/// The shipped scenario with two faults, which is dealt and marked in a fraction of the time.
fn small_scenario(folder: &Path) -> String {
    let shipped = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/market-hill.ron");
    let text = fs::read_to_string(shipped).unwrap();
    let is_kept = |line: &&str| {
        !line.trim_start().starts_with("(kind:")
            || line.contains("OpenCoil, place: \"intake")
            || line.contains("LowOil")
    };
    let kept: Vec<&str> = text.lines().filter(is_kept).collect();
    let path = folder.join("small.ron");
    fs::write(&path, kept.join("\n")).unwrap();
    path.display().to_string()
}

/// What the program says, and to whom, when it runs in a language.
fn run(folder: &TempDir, language: &str, arguments: &[&str], ending: i32) -> (String, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_faultwright"))
        .args(arguments)
        .current_dir(folder.path())
        .env_clear()
        .env("HOME", folder.path())
        .env("XDG_DATA_HOME", folder.path())
        .env("LOCALAPPDATA", folder.path())
        .env("XDG_CACHE_HOME", folder.path())
        .env("LANG", language)
        .stdin(Stdio::null())
        .output()
        .unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    let (out, talk) = (text(output.stdout), text(output.stderr));
    assert_eq!(output.status.code(), Some(ending), "{talk}");
    (out, talk)
}

#[test]
fn regress_the_bench_speaks_the_language_of_its_surroundings_and_keeps_a_session_in_none() {
    let folder = tempfile::tempdir().unwrap();
    let scenario = small_scenario(folder.path());
    fs::write(folder.path().join("given.steps"), STEPS).unwrap();
    let bench = |language, name: &str| {
        let place = ["bench", "--scenario", &scenario, "--seed", "5", "--keep-worlds", "none"];
        let what = ["--steps", "given.steps", "--session", name];
        let (out, _) = run(&folder, language, &[&place[..], &what[..]].concat(), 0);
        (out, fs::read(folder.path().join(name)).unwrap())
    };
    let (english, kept) = bench(ENGLISH, "english.session");
    let (german, kept_in_german) = bench(GERMAN, "german.session");

    // Every byte: the case, the steps, what followed from them and the chain over all of it.
    assert_eq!(kept, kept_in_german);
    for (said, in_german) in [
        ("Job sheet", "Auftragsblatt"),
        ("The customer says: ", "Der Kunde sagt: "),
        ("Not possible: ", "Nicht möglich: "),
        ("Key on, engine not started. ", "Zündung ein, Motor nicht gestartet. "),
        ("Live data", "Istwerte"),
        (
            "Battery positive post to battery negative post: ",
            "Batterie-Pluspol gegen Batterie-Minuspol: ",
        ),
        ("The job is closed.", "Der Auftrag ist abgeschlossen."),
    ] {
        assert!(english.contains(said), "{english}");
        assert!(german.contains(in_german), "{german}");
        assert!(!german.contains(said) && !english.contains(in_german), "{said}: {german}");
    }
    // Numbers have the comma of the language, steps are echoed as they are typed.
    assert!(german.contains("> measure volts battery-plus battery-minus"), "{german}");
    let supply = german.lines().find_map(|line| line.split_once("Versorgung ")).unwrap().1;
    assert!(supply.split(' ').next().is_some_and(|volts| volts.contains(',')), "{supply}");

    // A session that was kept in one language is replayed and marked in another.
    let (marked, _) =
        run(&folder, GERMAN, &["mark", "english.session", "--keep-worlds", "none"], 0);
    assert!(marked.contains("Nachbesprechung") && marked.contains("Punkte: "), "{marked}");
    assert!(!marked.contains("Step by step"), "{marked}");
}

#[test]
fn regress_what_scripts_read_is_the_same_in_every_language() {
    let folder = tempfile::tempdir().unwrap();
    let scenario = small_scenario(folder.path());
    fs::write(folder.path().join("given.steps"), STEPS).unwrap();
    let data = |language| {
        let place = ["bench", "--scenario", &scenario, "--seed", "5", "--keep-worlds", "none"];
        let what = ["--steps", "given.steps", "--format", "json", "--session", "a.session"];
        let (out, _) = run(&folder, language, &[&place[..], &what[..]].concat(), 0);
        fs::remove_file(folder.path().join("a.session")).unwrap();
        out
    };
    let english = data(ENGLISH);
    assert!(
        english.contains("\"event\":\"reading\"") && english.contains("\"debrief\""),
        "{english}"
    );
    assert_eq!(english, data(GERMAN));
}

#[test]
fn regress_help_and_troubles_are_in_the_language_of_the_surroundings() {
    let folder = tempfile::tempdir().unwrap();
    let (help, _) = run(&folder, GERMAN, &["bench", "--help"], 0);
    assert!(help.contains("Startzahl des Falls") && help.contains("Beispiele:"), "{help}");
    let (_, talk) = run(&folder, GERMAN, &["mark", "none.session"], 5);
    assert!(talk.contains("Die Datei lässt sich nicht öffnen"), "{talk}");
    let (_, talk) = run(&folder, "tlh_QO.UTF-8", &["mark", "none.session"], 5);
    assert!(talk.contains("cannot be opened"), "{talk}");
}

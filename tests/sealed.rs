//! Sealed cases: what they tell nobody, what the passphrase opens, and what an altered one does not.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::scenario::deal::{DealError, deal, deal_again, deal_sealed};
use faultwright::scenario::draw::Case;
use faultwright::scenario::load::{ScenarioText, read as read_scenario};
use faultwright::scenario::seal::{
    CHANCE, SHORTEST_PASSPHRASE, SealError, open, read, record_of_sealed, seal, text, to_play,
};
use faultwright::session::journal::{Mode, Sealed};
use std::fs;
use std::path::PathBuf;
use std::process::{Command, Output};
use std::sync::{Arc, OnceLock};

const PASSPHRASE: &str = "correct horse battery";
const SEED: u64 = 15_855_509_865_587_049_661;

fn dealt(seed: u64) -> Case {
    let carried = ScenarioText::carried();
    let text = carried.into_iter().find(|it| it.scenario_name == "coal-wharf").unwrap();
    deal(&Arc::new(read_scenario(text).unwrap()), seed).unwrap()
}

fn case() -> &'static Case {
    static CASE: OnceLock<Case> = OnceLock::new();
    CASE.get_or_init(|| dealt(SEED))
}

fn sealed() -> &'static Sealed {
    static SEALED: OnceLock<Sealed> = OnceLock::new();
    SEALED.get_or_init(|| seal(case(), "Anna", PASSPHRASE, &[7; CHANCE]).unwrap())
}

#[test]
fn limit_a_sealed_case_is_read_opened_and_played_as_it_was() {
    let back = read(&text(sealed())).unwrap();
    assert_eq!(&back, sealed());
    let record = open(&back, PASSPHRASE).unwrap();
    assert_eq!((record.seed, record.mode), (SEED, Mode::Assessed));
    assert_eq!(record, to_play(&back).unwrap());
    assert_eq!(deal_sealed(&back).unwrap(), case().clone().assessed());
}

/// Whoever opens the file in an editor, or searches it for a word, finds neither seed nor fault nor the list of faults.
#[test]
fn limit_a_hand_out_and_a_journals_record_tell_neither_seed_nor_fault() {
    let record = serde_json::to_string(&record_of_sealed(sealed())).unwrap();
    for shown in [text(sealed()), record] {
        let mut secrets = vec![SEED.to_string(), format!("{SEED:x}"), "coal-wharf".to_owned()];
        for prior in &case().scenario.scenario.faults {
            secrets.push(prior.place.to_string());
            secrets.push(format!("{:?}", prior.kind));
            secrets.push(prior.kind.word().to_owned());
        }
        for secret in secrets {
            assert!(!shown.contains(&secret), "{secret}");
        }
    }
}

#[test]
fn limit_another_passphrase_opens_nothing() {
    for wrong in ["", "correct horse batter", "Correct horse battery", "correct horse battery "] {
        assert_eq!(open(sealed(), wrong), Err(SealError::NotOpened), "{wrong:?}");
    }
    let short = "x".repeat(SHORTEST_PASSPHRASE - 1);
    let refused = seal(case(), "Anna", &short, &[7; CHANCE]);
    assert_eq!(refused, Err(SealError::ShortPassphrase));
}

/// A letter in any field, in any of its digits, and the case of somebody else.
#[test]
fn limit_an_altered_case_does_not_open() {
    let flipped = |text: &str, place: usize| {
        let mut letters: Vec<char> = text.chars().collect();
        letters[place] = if letters[place] == '0' { '1' } else { '0' };
        letters.into_iter().collect::<String>()
    };
    let altered = |change: &dyn Fn(&mut Sealed)| {
        let mut sealed = sealed().clone();
        change(&mut sealed);
        assert!(open(&sealed, PASSPHRASE).is_err(), "{sealed:?}");
    };
    altered(&|it| it.name.push('e'));
    altered(&|it| it.title.push('!'));
    altered(&|it| it.salt = flipped(&it.salt, 3));
    altered(&|it| it.lock = flipped(&it.lock, 60));
    altered(&|it| it.lock = String::new());
    for place in [0, 47, 48, sealed().case.len() - 1] {
        altered(&|it| it.case = flipped(&it.case, place));
    }
    // An easier case in the frame of this one, and the whole of it under this one's name.
    let easier = seal(&dealt(1), "Ben", PASSPHRASE, &[9; CHANCE]).unwrap();
    altered(&|it| it.case.clone_from(&easier.case));
    altered(&|it| *it = Sealed { name: it.name.clone(), ..easier.clone() });
    assert_eq!(open(&easier, PASSPHRASE).unwrap().seed, 1);
    // What cannot be trusted cannot be played either.
    let mut torn = sealed().clone();
    torn.case = flipped(&torn.case, 60);
    assert_eq!(to_play(&torn), Err(SealError::Damaged));
}

#[test]
fn limit_other_files_are_told_apart() {
    assert_eq!(read(""), Err(SealError::NotSealed));
    assert_eq!(read("(format: 3)"), Err(SealError::NotSealed));
    assert_eq!(read(r#"{"format":"faultwright session","version":2}"#), Err(SealError::NotSealed));
    let newer = text(sealed()).replace("\"version\": 1", "\"version\": 2");
    assert_eq!(read(&newer), Err(SealError::OtherVersion { found: 2 }));
    let lacking = text(sealed()).replace("\"salt\"", "\"malt\"");
    assert_eq!(read(&lacking), Err(SealError::Damaged));
}

#[test]
fn limit_a_sealed_session_is_dealt_to_nobody_who_shows_what_is_hidden() {
    let record = record_of_sealed(sealed());
    assert_eq!(deal_again(&record), Err(DealError::Sealed));
}

/// A folder with a home of its own for the real program.
struct Place(tempfile::TempDir);

impl Place {
    fn new() -> Self {
        let place = Self(tempfile::tempdir().unwrap());
        place.write("secret.txt", PASSPHRASE);
        place.write("names.txt", "Anna\n# nobody\nBen B.\n");
        place
    }

    fn path(&self, name: &str) -> PathBuf {
        self.0.path().join(name)
    }

    fn write(&self, name: &str, content: &str) {
        fs::write(self.path(name), content).unwrap();
    }

    #[track_caller]
    fn run(&self, arguments: &[&str], code: i32) -> (String, String) {
        let Output { status, stdout, stderr } = Command::new(env!("CARGO_BIN_EXE_faultwright"))
            .args(arguments)
            .current_dir(self.0.path())
            .env("HOME", self.0.path())
            .env("XDG_DATA_HOME", self.0.path())
            .env("XDG_CACHE_HOME", self.0.path())
            .env("LC_ALL", "C")
            .output()
            .unwrap();
        let (out, talk) = (String::from_utf8(stdout).unwrap(), String::from_utf8(stderr).unwrap());
        assert_eq!(status.code(), Some(code), "{arguments:?}\n{out}\n{talk}");
        (out, talk)
    }
}

/// From the class to the mark: what each side sees on the way.
#[test]
fn limit_a_class_is_dealt_works_and_is_marked_under_seal() {
    let place = Place::new();
    let draw = [
        "draw",
        "--scenario",
        "coal-wharf",
        "--class",
        "names.txt",
        "--seal",
        "out",
        "--passphrase",
        "secret.txt",
        "--format",
        "json",
    ];
    let (out, _) = place.run(&draw, 0);
    let lines: Vec<serde_json::Value> =
        out.lines().skip(1).map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!(lines.len(), 2);
    assert_eq!(
        (lines[0]["name"].as_str(), lines[1]["name"].as_str()),
        (Some("Anna"), Some("Ben B."))
    );
    assert!(lines.iter().all(|line| line.get("seed").is_none() && line.get("faults").is_none()));
    let hand_out = lines[0]["file"].as_str().unwrap();
    // Nothing is written over what was handed out.
    let (_, talk) = place.run(&[&draw[..8], &["secret.txt"]].concat(), 5);
    assert!(talk.contains(".case"), "{talk}");

    let seed_of = |file: &str| {
        let (out, _) =
            place.run(&["open", file, "--passphrase", "secret.txt", "--format", "json"], 0);
        let opened: serde_json::Value = serde_json::from_str(out.lines().nth(1).unwrap()).unwrap();
        opened["seed"].as_u64().unwrap()
    };
    let (seed, next) = (seed_of(hand_out), seed_of(lines[1]["file"].as_str().unwrap()));
    // Less than one chance in 10^16 that this fails where both are drawn apart.
    assert!(seed.abs_diff(next) > 1_000, "{seed} tells {next}");
    let seed = seed.to_string();

    place.write("job.steps", "read job-sheet\nkey on\nread codes\nkey off\nhand over referred\n");
    let bench = ["bench", "--case", hand_out, "--session", "anna.session", "--steps", "job.steps"];
    let (out, talk) = place.run(&bench, 0);
    let receipt = out.split("receipt, ").nth(1).unwrap().trim().trim_end_matches('.').to_owned();
    for told in [&out, &talk, &fs::read_to_string(place.path("anna.session")).unwrap()] {
        assert!(!told.contains(&seed), "{told}");
        assert!(!told.contains("open coil") && !told.contains("broken wire"), "{told}");
    }
    for hidden in [&["mark", "anna.session"][..], &["whatif", "anna.session", "--at", "1"]] {
        let (out, talk) = place.run(hidden, 4);
        assert!(out.is_empty() && talk.contains("sealed"), "{out}{talk}");
    }
    place.run(&["bench", "--session", "anna.session", "--seed", &seed], 4);
    place.run(&["replay", "anna.session"], 0);

    place.write("other.txt", "another passphrase\n");
    place.run(&["mark", "anna.session", "--passphrase", "other.txt"], 4);
    let (out, _) = place
        .run(&["mark", "anna.session", "--passphrase", "secret.txt", "--keep-worlds", "none"], 0);
    assert!(out.contains("open coil") || out.contains("broken wire"), "{out}");
    let open = ["open", "anna.session", "--passphrase", "secret.txt", "--into", "free.session"];
    let (out, _) = place.run(&open, 0);
    assert!(out.contains(&receipt), "{receipt}: {out}");
    let free = fs::read_to_string(place.path("free.session")).unwrap();
    assert!(free.contains(&seed));
    place.run(&["replay", "free.session"], 0);
}

#[test]
fn limit_everybody_can_get_the_same_case() {
    let place = Place::new();
    let draw = ["draw", "--scenario", "coal-wharf", "--seed", "4", "--class", "names.txt"];
    let (out, _) = place.run(&[&draw[..], &["--same"]].concat(), 0);
    assert_eq!(out.matches("Case 4:").count(), 2, "{out}");
    let (out, _) = place.run(&draw, 0);
    assert!(out.contains("Anna: Case 4:") && out.contains("Ben B.: Case 5:"), "{out}");
    place.write("nobody.txt", "\n# nobody\n");
    let (_, talk) = place.run(&["draw", "--class", "nobody.txt"], 4);
    assert!(talk.contains("0 names"), "{talk}");
    place.run(&["draw", "--seal", "out"], 2);
    place.write("short.txt", "short\n");
    let short = ["draw", "--scenario", "coal-wharf", "--seal", "out", "--passphrase", "short.txt"];
    place.run(&short, 4);
}

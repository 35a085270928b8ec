//! Troubles with session files are said with place, cause and remedy.

use super::file_samples::{
    PATH, actions, every_problem, failures, faults, flaws, one_of_each, parts, path,
};
use crate::session::journal::{
    Action, CaseRecord, Flaw, Journal, JournalProblem, Mode, TornTail, WriteFailure,
};
use crate::wording::catalogue::Words;
use crate::wording::file_words::{io_reason, journal_problem, torn};
use std::collections::BTreeSet;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

/// What a remedy begins with.
const REMEDIES: [&str; 14] = [
    "Begin ",
    "Check ",
    "Choose ",
    "Delete ",
    "Finish ",
    "Go on ",
    "Make ",
    "Name ",
    "Open ",
    "Put ",
    "Report ",
    "Then go on: ",
    "Try ",
    "Use ",
];

/// Reasons that have words of their own.
const REASONS: [ErrorKind; 6] = [
    ErrorKind::NotFound,
    ErrorKind::PermissionDenied,
    ErrorKind::StorageFull,
    ErrorKind::ReadOnlyFilesystem,
    ErrorKind::IsADirectory,
    ErrorKind::NotADirectory,
];

fn english() -> Words {
    Words::for_language("en-GB")
}

fn said(problem: &JournalProblem) -> String {
    journal_problem(problem, &english())
}

fn refused(action: Action, kind: ErrorKind) -> String {
    said(&JournalProblem::Io { path: path(), action, source: kind.into() })
}

/// The sentence has no message or argument missing, begins with its place and tells a remedy.
fn assert_whole(sentence: &str, place: &str) {
    for sign in ["<", ">", "\u{2068}", "\u{2069}", "  ", "{", "$", ". .", ".."] {
        assert!(!sentence.contains(sign), "{sign:?} in {sentence}");
    }
    assert!(sentence.starts_with(place), "{place:?} in {sentence}");
    let is_remedy = |rest: &str| REMEDIES.iter().any(|remedy| rest.starts_with(remedy));
    let mut ends = sentence.match_indices(". ");
    assert!(ends.any(|(at, end)| is_remedy(&sentence[at + end.len()..])), "no remedy: {sentence}");
    assert!(sentence.ends_with('.') || sentence.ends_with(PATH), "{sentence}");
}

#[test]
fn every_problem_is_said_with_place_cause_and_remedy() {
    for problem in every_problem().iter().chain(&one_of_each()) {
        let place = match problem {
            JournalProblem::Flawed { flaw, .. } => format!("{PATH}:{}: ", flaw.line()),
            _ => format!("{PATH}: "),
        };
        assert_whole(&said(problem), &place);
    }
}

#[test]
fn different_problems_are_said_differently() {
    let problems = every_problem();
    let different: BTreeSet<String> = problems.iter().map(said).collect();
    assert_eq!(different.len(), problems.len());
    let count = actions().len() + flaws().len() + 3 * failures().len();
    assert!(problems.len() > count, "only {} problems", problems.len());
}

/// The remedy is looked for and not taken for granted.
#[test]
#[should_panic(expected = "no remedy")]
fn a_sentence_without_a_remedy_would_be_noticed() {
    assert_whole("a.session: the disk is full. So it is.", "a.session: ");
}

#[test]
fn every_refusal_of_the_system_has_a_reason_and_a_remedy() {
    for action in actions() {
        let mut texts = BTreeSet::new();
        for kind in REASONS {
            let text = refused(action, kind);
            assert_whole(&text, &format!("{PATH}: the "));
            texts.insert(text);
        }
        assert_eq!(texts.len(), REASONS.len(), "{action:?}: {texts:#?}");
    }
    let quota = refused(Action::Write, ErrorKind::QuotaExceeded);
    assert_eq!(quota, refused(Action::Write, ErrorKind::StorageFull));
}

/// A file that is not there is misspelt when it is opened; when it is made, its folder is missing.
#[test]
fn a_missing_folder_is_not_a_missing_file() {
    for action in actions() {
        let text = refused(action, ErrorKind::NotFound);
        let is_made = matches!(action, Action::Create | Action::SyncFolder | Action::SaveTorn);
        assert_eq!(text.contains("Make the folder first"), is_made, "{text}");
        assert_eq!(text.contains("Check the name"), !is_made, "{text}");
    }
}

#[test]
fn reasons_without_words_of_their_own_are_the_systems() {
    let reason = |error: io::Error| io_reason(&error, &english());
    assert_eq!(reason(ErrorKind::StorageFull.into()), "the disk is full");
    assert_eq!(
        reason(io::Error::other("the tape\u{1b}[2J is torn")),
        "the tape\u{fffd}[2J is torn"
    );
    let system = io::Error::from(ErrorKind::TimedOut);
    assert_eq!(io_reason(&system, &english()), system.to_string());
    let reasons: BTreeSet<String> = REASONS.map(|kind| reason(kind.into())).into();
    assert_eq!(reasons.len(), REASONS.len());
    for text in reasons {
        assert!(!text.contains(['<', '>']) && !text.ends_with('.'), "{text}");
    }
}

#[test]
fn the_sentences_that_matter_most() {
    for (problem, expected) in [
        (
            JournalProblem::AlreadyExists { path: path() },
            "there is such a file already, and it was left alone. Choose another name, or go on with it: faultwright bench --session jobs/größer.session",
        ),
        (
            JournalProblem::Torn { path: path(), entry: 12, bytes: 41 },
            "the file ends in the middle of entry 12, and what followed from that was never shown. Go on with the whole entries: faultwright bench --session jobs/größer.session",
        ),
        (
            JournalProblem::NotAppended {
                path: path(),
                entry: 12,
                failure: WriteFailure::Refused {
                    action: Action::Write,
                    source: ErrorKind::StorageFull.into(),
                },
                restored: false,
            },
            "entry 12 was not kept because the file cannot be written: the disk is full. Make room on the disk. The entries before it are kept. A part of it may stand at the end of the file, and comes off when the session goes on. Then go on: faultwright bench --session jobs/größer.session",
        ),
        (
            JournalProblem::NotCreated {
                path: path(),
                failure: WriteFailure::Short { written: 23, expected: 456 },
                removed: false,
            },
            "the session was not begun because only 23 of 456 bytes went in, as on a disk that is nearly full. Make room on the disk. The beginning of the file is still there; delete it first.",
        ),
    ] {
        assert_eq!(said(&problem), format!("{PATH}: {expected}"));
    }
    let chain = flaws().into_iter().find(|flaw| matches!(flaw, Flaw::ChainBroken { .. }));
    let text = chain.map(|flaw| said(&JournalProblem::Flawed { path: path(), flaw }));
    assert_eq!(
        text.as_deref(),
        Some(
            "jobs/größer.session:13: the chain breaks at entry 12: this entry or one before it was changed after it was written. Use an unchanged copy of the file."
        )
    );
}

#[test]
fn numbers_of_a_file_are_told_to_the_last_digit() {
    let flaw = Flaw::OutOfOrder { entry: 1, got: u64::MAX };
    let text = said(&JournalProblem::Flawed { path: path(), flaw });
    assert!(text.contains("entry 18446744073709551615 stands"), "{text}");
}

/// After what cannot be mended nobody is sent back to the same file.
#[test]
fn going_on_is_offered_where_it_can_be_done() {
    for failure in failures() {
        let ends = matches!(failure, WriteFailure::Deleted | WriteFailure::TooLarge { .. });
        let is_lost = matches!(failure, WriteFailure::Deleted);
        let problem =
            JournalProblem::NotAppended { path: path(), entry: 12, failure, restored: true };
        let text = said(&problem);
        assert_eq!(text.contains("Then go on: faultwright bench"), !ends, "{text}");
        assert_eq!(text.contains("before it are kept"), !is_lost, "{text}");
    }
}

#[test]
fn every_fault_of_json_and_every_value_is_told_apart() {
    let json: BTreeSet<String> = faults()
        .into_iter()
        .map(|fault| {
            let flaw = Flaw::HeaderUnreadable { column: 41, fault };
            said(&JournalProblem::Flawed { path: path(), flaw })
        })
        .collect();
    assert_eq!(json.len(), faults().len());
    let values: BTreeSet<String> = parts()
        .into_iter()
        .map(|part| {
            let failure = WriteFailure::Unwritable { part };
            said(&JournalProblem::NotCreated { path: path(), failure, removed: true })
        })
        .collect();
    assert_eq!(values.len(), parts().len());
}

#[test]
fn a_torn_end_is_told_with_where_it_went() {
    let text = |count: usize| {
        let tail = TornTail { entry: 12, offset: 900, bytes: vec![b'x'; count] };
        torn(&tail, &path(), &english())
    };
    assert_eq!(
        text(41),
        "jobs/größer.session: entry 12 was cut off while it was written, and what followed from it was never shown. What was there of it, 41 bytes, is now in jobs/größer.session.torn."
    );
    assert!(text(1).contains("What was there of it, 1 byte, is"), "{}", text(1));
}

#[test]
fn a_path_that_would_move_the_cursor_is_shown_harmless_and_one_with_blanks_can_be_typed() {
    let of = |name: &str| said(&JournalProblem::AlreadyExists { path: PathBuf::from(name) });
    assert!(!of("a\u{1b}[2J\n.session").contains(char::is_control));
    assert!(of("my job.session").ends_with("--session \"my job.session\""));
}

fn case() -> CaseRecord {
    CaseRecord {
        scenario_name: "small".to_owned(),
        scenario_text: "()".to_owned(),
        vehicle_text: "()".to_owned(),
        seed: 7,
        mode: Mode::Practice,
        sealed: None,
    }
}

/// What really happens on a disk arrives as the sentence that is meant for it.
#[test]
fn real_troubles_are_said_as_what_they_are() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    let created = |path: &Path| said(&Journal::create(path, &case()).unwrap_err());
    let resumed = |path: &Path| said(&Journal::resume(path).unwrap_err());

    let missing = created(&at("none/job.session"));
    assert!(missing.contains("no such file or folder. Make the folder first"), "{missing}");
    let absent = resumed(&at("job.session"));
    assert!(absent.contains("the file cannot be opened: there is no such file"), "{absent}");
    assert!(resumed(folder.path()).contains("it is a folder"));

    let journal = Journal::create(&at("job.session"), &case()).unwrap();
    assert!(created(&at("job.session")).contains("there is such a file already"));
    assert!(resumed(&at("job.session")).contains("another program works on this session"));
    drop(journal);

    let text = std::fs::read_to_string(at("job.session")).unwrap();
    std::fs::write(at("changed.session"), text.replace("\"seed\":7", "\"seed\":8")).unwrap();
    assert!(
        resumed(&at("changed.session")).contains("session:1: the chain breaks in the first line")
    );
    std::fs::write(at("poem.session"), "Roses are red.\n").unwrap();
    assert!(resumed(&at("poem.session")).contains("it is not a session file"));
    std::fs::write(at("short.session"), &text[..60]).unwrap();
    assert!(resumed(&at("short.session")).contains("after 60 bytes, so it holds no step"));
    std::fs::write(at("torn.session"), format!("{text}{{\"entry\":1")).unwrap();
    let (_, recorded) = Journal::resume(&at("torn.session")).unwrap();
    let tail = recorded.torn.unwrap();
    let said = torn(&tail, &at("torn.session"), &english());
    assert!(said.contains("entry 1 was cut off") && said.contains("10 bytes"), "{said}");
    assert!(at("torn.session.torn").exists() && said.ends_with("torn.session.torn."), "{said}");
}

//! Troubles with files in words.

use super::catalogue::Words;
use super::quoted;
use crate::session::journal::{
    Action, Flaw, JournalProblem, JsonFault, Part, TornTail, WriteFailure,
};
use std::io;
use std::path::{Path, PathBuf};

/// What is wrong with a session file, where, and what to do.
#[must_use]
pub fn journal_problem(problem: &JournalProblem, words: &Words) -> String {
    let (path, said) = match problem {
        JournalProblem::Io { path, action, source } => (path, refused(*action, source, words)),
        JournalProblem::AlreadyExists { path } => {
            let typed = quoted::typed_path(path);
            (path, words.say("session-exists", &[("typed", typed.into())]))
        }
        JournalProblem::NotAFile { path } => (path, words.say("session-not-a-file", &[])),
        JournalProblem::InUse { path } => (path, words.say("session-in-use", &[])),
        JournalProblem::TooLarge { path, limit } => {
            (path, words.say("session-too-large", &[("limit", mebibytes(*limit).into())]))
        }
        JournalProblem::Flawed { path, flaw } => {
            return words.say(
                "session-file-line",
                &[
                    ("path", quoted::path(path).into()),
                    ("line", flaw.line().to_string().into()),
                    ("said", flaw_words(flaw, words).into()),
                ],
            );
        }
        JournalProblem::OldVersion { path, version } => {
            let typed = quoted::typed_path(path);
            let arguments = [("version", (*version).into()), ("typed", typed.into())];
            (path, words.say("session-old-version", &arguments))
        }
        JournalProblem::Torn { path, entry, .. } => {
            let typed = quoted::typed_path(path);
            let arguments = [("entry", entry.to_string().into()), ("typed", typed.into())];
            (path, words.say("session-cut-off", &arguments))
        }
        JournalProblem::NotCreated { path, failure, removed } => {
            let why = failure_words(failure, words);
            let mut said = words.say("session-not-begun", &[("said", why.into())]);
            if !removed {
                add(&mut said, &words.say("session-left-behind", &[]));
            }
            (path, said)
        }
        JournalProblem::NotAppended { path, entry, failure, restored } => {
            let why = failure_words(failure, words);
            let arguments = [("entry", entry.to_string().into()), ("said", why.into())];
            let mut said = words.say("session-not-written", &arguments);
            after_a_failure(&mut said, path, failure, *restored, words);
            (path, said)
        }
    };
    words.say("session-file", &[("path", quoted::path(path).into()), ("said", said.into())])
}

/// A torn tail that was set aside on resuming.
#[must_use]
pub fn torn(torn: &TornTail, path: &Path, words: &Words) -> String {
    let mut aside = path.as_os_str().to_owned();
    aside.push(".torn");
    words.say(
        "session-torn",
        &[
            ("path", quoted::path(path).into()),
            ("entry", torn.entry.to_string().into()),
            ("bytes", torn.bytes.len().into()),
            ("aside", quoted::path(&PathBuf::from(aside)).into()),
        ],
    )
}

/// What the system said, in the catalogue's words where it has some.
#[must_use]
pub fn io_reason(error: &io::Error, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    match error.kind() {
        io::ErrorKind::NotFound => plain("io-not-found"),
        io::ErrorKind::PermissionDenied => plain("io-not-allowed"),
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => plain("io-full"),
        io::ErrorKind::ReadOnlyFilesystem => plain("io-read-only"),
        io::ErrorKind::IsADirectory => plain("io-is-folder"),
        io::ErrorKind::NotADirectory => plain("io-not-folder"),
        _ => quoted::harmless(&error.to_string()),
    }
}

/// What to do about what the system said while something was made, or else only looked for.
fn io_remedy(error: &io::Error, is_made: bool, words: &Words) -> String {
    let key = match error.kind() {
        io::ErrorKind::NotFound if is_made => "remedy-io-no-folder",
        io::ErrorKind::NotFound => "remedy-io-not-found",
        io::ErrorKind::PermissionDenied => "remedy-io-not-allowed",
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => "remedy-io-full",
        io::ErrorKind::ReadOnlyFilesystem => "remedy-io-read-only",
        io::ErrorKind::IsADirectory => "remedy-io-is-folder",
        io::ErrorKind::NotADirectory => "remedy-io-not-folder",
        _ => "remedy-io-other",
    };
    words.say(key, &[])
}

fn refused(action: Action, source: &io::Error, words: &Words) -> String {
    let key = match action {
        Action::Create => "action-create",
        Action::Open => "action-open",
        Action::Lock => "action-lock",
        Action::Measure => "action-measure",
        Action::Read => "action-read",
        Action::Write => "action-write",
        Action::Sync => "action-sync",
        Action::SyncFolder => "action-sync-folder",
        Action::CutBack => "action-cut-back",
        Action::SaveTorn => "action-save-torn",
    };
    let is_made = matches!(action, Action::Create | Action::SyncFolder | Action::SaveTorn);
    words.say(
        "session-refused",
        &[
            ("action", words.say(key, &[]).into()),
            ("why", io_reason(source, words).into()),
            ("remedy", io_remedy(source, is_made, words).into()),
        ],
    )
}

/// Why a line did not get into the file, and what to do about it.
fn failure_words(failure: &WriteFailure, words: &Words) -> String {
    match failure {
        WriteFailure::Refused { action, source } => refused(*action, source, words),
        WriteFailure::Short { written, expected } => words.say(
            "failure-short",
            &[("written", (*written).into()), ("expected", (*expected).into())],
        ),
        WriteFailure::TooLarge { limit, .. } => {
            words.say("failure-too-large", &[("limit", mebibytes(*limit).into())])
        }
        WriteFailure::ChangedOutside { expected, got } => words.say(
            "failure-changed-outside",
            &[("expected", expected.to_string().into()), ("got", got.to_string().into())],
        ),
        WriteFailure::Deleted => words.say("failure-deleted", &[]),
        WriteFailure::Unwritable { part } => {
            let key = match part {
                Part::Case => "unwritable-case",
                Part::Step => "unwritable-step",
                Part::Events => "unwritable-events",
            };
            words.say("failure-unwritable", &[("part", words.say(key, &[]).into())])
        }
    }
}

/// What is left of the session after a failed entry, and how it goes on, if it can.
fn after_a_failure(
    said: &mut String,
    path: &Path,
    failure: &WriteFailure,
    restored: bool,
    words: &Words,
) {
    if matches!(failure, WriteFailure::Deleted) {
        return;
    }
    add(said, &words.say("session-kept", &[]));
    if !restored {
        add(said, &words.say("session-rest-behind", &[]));
    }
    if !matches!(failure, WriteFailure::TooLarge { .. }) {
        let typed = quoted::typed_path(path);
        add(said, &words.say("session-go-on", &[("typed", typed.into())]));
    }
}

/// How the content differs from what the program wrote, and what to do about it.
fn flaw_words(flaw: &Flaw, words: &Words) -> String {
    // Numbers of the file go in as text: as numbers, those of more than 15 digits would be rounded.
    let whole = |number: u64| number.to_string();
    match *flaw {
        Flaw::NotAJournal => words.say("session-not-a-session", &[]),
        Flaw::HeaderCut { bytes } => words.say("session-header-cut", &[("bytes", bytes.into())]),
        Flaw::UnknownVersion { got, oldest, newest } => words.say(
            if got > u64::from(newest) { "session-newer" } else { "session-older" },
            &[("got", whole(got).into()), ("oldest", oldest.into()), ("newest", newest.into())],
        ),
        Flaw::HeaderUnreadable { column, fault } => words.say(
            "session-header-unreadable",
            &[("column", column.into()), ("fault", json_words(fault, words).into())],
        ),
        Flaw::CaseUnreadable { column, fault } => words.say(
            "session-case-unreadable",
            &[("column", column.into()), ("fault", json_words(fault, words).into())],
        ),
        Flaw::HeaderRewritten => words.say("session-header-rewritten", &[]),
        Flaw::HeaderChain { .. } => words.say("session-header-chain", &[]),
        Flaw::NotUtf8 { valid, .. } => words.say("session-not-utf8", &[("valid", valid.into())]),
        Flaw::EntryUnreadable { entry, column, fault } => words.say(
            "session-entry-unreadable",
            &[
                ("entry", whole(entry).into()),
                ("column", column.into()),
                ("fault", json_words(fault, words).into()),
            ],
        ),
        Flaw::RunsOn { entry, column } => words
            .say("session-runs-on", &[("entry", whole(entry).into()), ("column", column.into())]),
        Flaw::OutOfOrder { entry, got } => words.say(
            "session-out-of-order",
            &[("entry", whole(entry).into()), ("got", whole(got).into())],
        ),
        Flaw::EntryRewritten { entry } => {
            words.say("session-entry-rewritten", &[("entry", whole(entry).into())])
        }
        Flaw::ChainBroken { entry, .. } => {
            words.say("session-chain-broken", &[("entry", whole(entry).into())])
        }
        Flaw::StepUnknown { entry, column, fault } => words.say(
            "session-step-unknown",
            &[
                ("entry", whole(entry).into()),
                ("column", column.into()),
                ("fault", json_words(fault, words).into()),
            ],
        ),
    }
}

fn json_words(fault: JsonFault, words: &Words) -> String {
    let key = match fault {
        JsonFault::Syntax => "json-syntax",
        JsonFault::Shape => "json-shape",
        JsonFault::Cut => "json-cut",
    };
    words.say(key, &[])
}

/// Adds a sentence to others.
fn add(said: &mut String, sentence: &str) {
    said.push(' ');
    said.push_str(sentence);
}

const fn mebibytes(bytes: u64) -> u64 {
    bytes / (1024 * 1024)
}

//! Everything that can be wrong with a session file.

use crate::numerics::digest::Digest;
use crate::session::journal::{Action, Flaw, JournalProblem, JsonFault, Part, WriteFailure};
use std::io;
use std::path::PathBuf;

/// Samples of every variant of an enum. It does not build when a variant is not listed, and fails
/// when a variant has no sample.
macro_rules! every {
    ($name:ident: $kind:ident { $($variant:ident: [$($sample:expr),+ $(,)?],)+ }) => {
        pub fn $name() -> Vec<$kind> {
            let samples = vec![$($($sample),+),+];
            for sample in &samples {
                match sample {
                    $($kind::$variant { .. } => {})+
                }
            }
            $(
                let is_there = |sample: &$kind| matches!(sample, $kind::$variant { .. });
                assert!(samples.iter().any(is_there), "no {}", stringify!($variant));
            )+
            samples
        }
    };
}

every!(actions: Action {
    Create: [Action::Create],
    Open: [Action::Open],
    Lock: [Action::Lock],
    Measure: [Action::Measure],
    Read: [Action::Read],
    Write: [Action::Write],
    Sync: [Action::Sync],
    SyncFolder: [Action::SyncFolder],
    CutBack: [Action::CutBack],
    SaveTorn: [Action::SaveTorn],
});

every!(faults: JsonFault {
    Syntax: [JsonFault::Syntax],
    Shape: [JsonFault::Shape],
    Cut: [JsonFault::Cut],
});

every!(parts: Part {
    Case: [Part::Case],
    Step: [Part::Step],
    Events: [Part::Events],
});

every!(failures: WriteFailure {
    Refused: [WriteFailure::Refused { action: Action::Write, source: full() }],
    Short: [WriteFailure::Short { written: 23, expected: 456 }],
    TooLarge: [WriteFailure::TooLarge { bytes: (64 << 20) + 1, limit: 64 << 20 }],
    ChangedOutside: [WriteFailure::ChangedOutside { expected: 456, got: 23 }],
    Deleted: [WriteFailure::Deleted],
    Unwritable: [
        WriteFailure::Unwritable { part: Part::Case },
        WriteFailure::Unwritable { part: Part::Step },
        WriteFailure::Unwritable { part: Part::Events },
    ],
});

fn digests() -> (Digest, Digest) {
    (Digest::of(b"one"), Digest::of(b"other"))
}

every!(flaws: Flaw {
    NotAJournal: [Flaw::NotAJournal],
    HeaderCut: [Flaw::HeaderCut { bytes: 0 }, Flaw::HeaderCut { bytes: 41 }],
    UnknownVersion: [
        Flaw::UnknownVersion { got: 9, oldest: 2, newest: 3 },
        Flaw::UnknownVersion { got: 1, oldest: 2, newest: 3 },
    ],
    HeaderUnreadable: [Flaw::HeaderUnreadable { column: 41, fault: JsonFault::Shape }],
    CaseUnreadable: [Flaw::CaseUnreadable { column: 41, fault: JsonFault::Shape }],
    HeaderRewritten: [Flaw::HeaderRewritten],
    HeaderChain: [Flaw::HeaderChain { expected: digests().0, got: digests().1 }],
    NotUtf8: [Flaw::NotUtf8 { line: 13, valid: 41 }],
    EntryUnreadable: [
        Flaw::EntryUnreadable { entry: 12, column: 41, fault: JsonFault::Syntax },
        Flaw::EntryUnreadable { entry: 12, column: 41, fault: JsonFault::Shape },
        Flaw::EntryUnreadable { entry: 12, column: 41, fault: JsonFault::Cut },
    ],
    RunsOn: [Flaw::RunsOn { entry: 12, column: 41 }],
    OutOfOrder: [Flaw::OutOfOrder { entry: 12, got: 14 }],
    EntryRewritten: [Flaw::EntryRewritten { entry: 12 }],
    ChainBroken: [Flaw::ChainBroken { entry: 12, expected: digests().0, got: digests().1 }],
    StepUnknown: [Flaw::StepUnknown { entry: 12, column: 41, fault: JsonFault::Shape }],
});

/// What the file of all samples is called.
pub const PATH: &str = "jobs/größer.session";

pub fn path() -> PathBuf {
    PathBuf::from(PATH)
}

fn full() -> io::Error {
    io::ErrorKind::StorageFull.into()
}

every!(one_of_each: JournalProblem {
    Io: [JournalProblem::Io {
        path: path(),
        action: Action::Create,
        source: io::ErrorKind::NotFound.into(),
    }],
    AlreadyExists: [JournalProblem::AlreadyExists { path: path() }],
    NotAFile: [JournalProblem::NotAFile { path: path() }],
    InUse: [JournalProblem::InUse { path: path() }],
    TooLarge: [JournalProblem::TooLarge { path: path(), limit: 64 << 20 }],
    Flawed: [JournalProblem::Flawed { path: path(), flaw: Flaw::NotAJournal }],
    OldVersion: [JournalProblem::OldVersion { path: path(), version: 1 }],
    Torn: [JournalProblem::Torn { path: path(), entry: 12, bytes: 41 }],
    NotCreated: [
        JournalProblem::NotCreated { path: path(), failure: WriteFailure::Deleted, removed: true },
    ],
    NotAppended: [JournalProblem::NotAppended {
        path: path(),
        entry: 12,
        failure: WriteFailure::Deleted,
        restored: true,
    }],
});

/// One of each, and of those with a reason one for each reason.
pub fn every_problem() -> Vec<JournalProblem> {
    let mut problems: Vec<JournalProblem> = one_of_each()
        .into_iter()
        .filter(|problem| {
            !matches!(
                problem,
                JournalProblem::Io { .. }
                    | JournalProblem::Flawed { .. }
                    | JournalProblem::NotCreated { .. }
                    | JournalProblem::NotAppended { .. }
            )
        })
        .collect();
    problems.extend(actions().into_iter().map(|action| JournalProblem::Io {
        path: path(),
        action,
        source: full(),
    }));
    problems.extend(flaws().into_iter().map(|flaw| JournalProblem::Flawed { path: path(), flaw }));
    for removed in [true, false] {
        problems.extend(failures().into_iter().map(|failure| JournalProblem::NotCreated {
            path: path(),
            failure,
            removed,
        }));
    }
    problems.extend(failures().into_iter().map(|failure| JournalProblem::NotAppended {
        path: path(),
        entry: 12,
        failure,
        restored: true,
    }));
    problems.push(JournalProblem::NotAppended {
        path: path(),
        entry: 12,
        failure: WriteFailure::Refused { action: Action::Write, source: full() },
        restored: false,
    });
    problems
}

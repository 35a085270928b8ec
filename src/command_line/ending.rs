//! How the program ended, as scripts see it.

use std::process::ExitCode;

/// How the program ended. The numbers are printed by `--help` and do not change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ending {
    /// What was asked for is done.
    Done,
    /// The arguments were wrong.
    WrongArguments,
    /// The window could not open, or did not end well.
    NoWindow,
    /// A scenario, a session file or a step is not right.
    BadInput,
    /// A file or folder could not be read or written.
    FileTrouble,
    /// The simulation itself failed, which is a defect of the program.
    Defect,
}

impl Ending {
    /// Every ending.
    pub const ALL: [Self; 6] = [
        Self::Done,
        Self::WrongArguments,
        Self::NoWindow,
        Self::BadInput,
        Self::FileTrouble,
        Self::Defect,
    ];

    /// The number that the shell gets.
    #[must_use]
    pub const fn code(self) -> u8 {
        match self {
            Self::Done => 0,
            Self::WrongArguments => 2,
            Self::NoWindow => 3,
            Self::BadInput => 4,
            Self::FileTrouble => 5,
            Self::Defect => 70,
        }
    }
}

impl From<Ending> for ExitCode {
    fn from(ending: Ending) -> Self {
        Self::from(ending.code())
    }
}

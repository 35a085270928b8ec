//! The command line: what was asked for, and how the program ends.
//!
//! Purpose: read the arguments, call what does the work, print, and turn the outcome into an exit code. Nothing is
//! worked out here.

#![expect(clippy::print_stderr, reason = "this is where the program talks to its user")]

use std::process::ExitCode;

use clap::Command;

/// How the program ended, as scripts see it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ending {
    /// What was asked for is done.
    Done,
    /// The window could not open, or did not end well.
    NoWindow,
}

impl Ending {
    /// The number that the shell gets. Two is left to wrong arguments, as everywhere.
    #[must_use]
    pub const fn code(self) -> u8 {
        match self {
            Ending::Done => 0,
            Ending::NoWindow => 3,
        }
    }
}

impl From<Ending> for ExitCode {
    fn from(ending: Ending) -> Self {
        ExitCode::from(ending.code())
    }
}

/// Reads the arguments of this process and does what they ask. Wrong arguments, help and version end the process here.
#[must_use]
pub fn run() -> Ending {
    let _no_arguments_yet = command().get_matches();
    open_window()
}

fn command() -> Command {
    Command::new("faultwright")
        .version(env!("CARGO_PKG_VERSION"))
        .about("Practise finding a fault: measure, decide, repair, and prove the repair")
        .after_help(
            "Exit codes: 0 done, 2 wrong arguments, 3 no window.\n\nThe vehicle maker's procedure, \
             local codes and a licensed technician's judgement come before anything shown here.",
        )
}

#[cfg(feature = "workshop")]
fn open_window() -> Ending {
    match crate::workshop::run() {
        Ok(()) => Ending::Done,
        Err(error) => {
            complain(&error);
            Ending::NoWindow
        }
    }
}

#[cfg(not(feature = "workshop"))]
fn open_window() -> Ending {
    eprintln!("faultwright: this build has no window; build it with the feature `workshop`");
    Ending::NoWindow
}

/// Prints an error with everything that led to it.
#[cfg(feature = "workshop")]
fn complain(error: &dyn std::error::Error) {
    eprintln!("faultwright: {error}");
    let mut cause = error.source();
    while let Some(inner) = cause {
        eprintln!("  because {inner}");
        cause = inner.source();
    }
}

//! Opening the window, or the bench where there is none.

use super::screen::Screen;
use super::{Outcome, bench};
use std::io::{self, IsTerminal as _};

/// Opens the window.
#[cfg(feature = "workshop")]
pub fn run(screen: &mut Screen<'_>) -> Outcome {
    use super::Ending;
    use super::store;
    use super::trouble::Trouble;
    use crate::wording::catalogue::Words;
    use crate::workshop::Surroundings;

    let language = store::language();
    let said = Words::for_language(&language);
    let around = Surroundings {
        words: Words::for_language(&language),
        sessions: Box::new(move || {
            store::session_folder().map_err(|trouble| trouble.lines(&said).join(" "))
        }),
        any_seed: store::any_seed,
    };
    crate::workshop::run(around)
        .map(|()| Ending::Done)
        .map_err(|error| Trouble::Window { reason: error.in_words(screen.words) })
}

/// This build has no window.
#[cfg(not(feature = "workshop"))]
pub fn run(screen: &mut Screen<'_>) -> Outcome {
    use super::trouble::Trouble;
    let reason = screen.words.say("window-not-built", &[]);
    Err(Trouble::Window { reason })
}

/// What the program does without a command: steps on standard input are read; at a terminal or
/// started from a desktop the window opens where there is a display, and the bench where not.
pub fn open_whatever_there_is(screen: &mut Screen<'_>) -> Outcome {
    if !io::stdin().is_terminal() && steps_are_waiting() {
        return bench::run_plain(screen);
    }
    match run(screen) {
        Err(super::trouble::Trouble::Window { reason }) => {
            let text = screen.words.say("window-bench-instead", &[("why", reason.into())]);
            screen.talk(&text);
            bench::run_plain(screen)
        }
        other => other,
    }
}

/// A program that a desktop starts has no terminal either, but nothing is sent to it: its
/// standard input is the null device.
fn steps_are_waiting() -> bool {
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt as _;
        std::fs::metadata("/dev/stdin").is_ok_and(|meta| !meta.file_type().is_char_device())
    }
    #[cfg(not(unix))]
    {
        true
    }
}

//! The command line: what was asked for, and how the program ends.
//!
//! Reads the arguments, calls what does the work, prints, and turns the outcome into an exit
//! code. Nothing is worked out here, and every sentence comes from the catalogues.

mod arguments;
mod bench;
mod case;
mod check;
mod class;
mod describe;
mod draw;
mod ending;
mod facts;
mod judging;
mod mark;
mod screen;
mod seals;
mod store;
mod trial;
mod trouble;
mod what_if;
mod window;

pub use ending::Ending;

use crate::wording::catalogue::Words;
use screen::Screen;
use trouble::Trouble;

/// Reads the arguments of this process and does what they ask.
#[must_use]
pub fn run() -> Ending {
    let words = Words::for_language(&store::language());
    let mut screen = Screen::of_process(&words);
    let matches = match arguments::command(&words).try_get_matches() {
        Ok(matches) => matches,
        Err(error) => return Screen::arguments(&error),
    };
    let outcome = match matches.subcommand() {
        Some(("bench", given)) => bench::run(given, &mut screen),
        Some(("workshop", given)) => window::run(Some(given), &mut screen),
        Some(("draw", given)) => draw::run(given, &mut screen),
        Some(("open", given)) => seals::run(given, &mut screen),
        Some(("check", given)) => check::run(given, &mut screen),
        Some(("describe", given)) => Ok(describe::run(given, &mut screen)),
        Some(("replay", given)) => mark::replay(given, &mut screen),
        Some(("trial", given)) => trial::run(given, &mut screen),
        Some(("mark", given)) => mark::run(given, &mut screen),
        Some(("whatif", given)) => what_if::run(given, &mut screen),
        _ => window::open_whatever_there_is(&mut screen),
    };
    match outcome {
        Ok(ending) => ending,
        Err(trouble) => {
            screen.trouble(&trouble);
            trouble.ending()
        }
    }
}

/// What a command comes to.
type Outcome = Result<Ending, Trouble>;

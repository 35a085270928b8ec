//! Where the program talks: data to standard output, talk to standard error.

use super::ending::Ending;
use super::trouble::Trouble;
use crate::wording::catalogue::Words;
use std::io::{self, IsTerminal as _, Write as _};

/// How results are printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// Sentences for people.
    Text,
    /// One JSON object a line.
    Json,
}

impl Format {
    /// The format that the arguments ask for.
    pub fn of(given: &clap::ArgMatches) -> Self {
        match given.get_one::<String>("format").map(String::as_str) {
            Some("json") => Self::Json,
            _ => Self::Text,
        }
    }
}

/// Columns where nobody says how many there are.
const USUAL_WIDTH: usize = 80;

/// The two outputs of the process, and the language in which it talks.
pub struct Screen<'w> {
    /// The sentences.
    pub words: &'w Words,
    talks_to_person: bool,
    /// A reader that went away, such as `head`, is told nothing more.
    is_gone: bool,
    progress_shown: bool,
}

impl<'w> Screen<'w> {
    /// The outputs of this process.
    pub fn of_process(words: &'w Words) -> Self {
        Self {
            words,
            talks_to_person: io::stderr().is_terminal(),
            is_gone: false,
            progress_shown: false,
        }
    }

    /// Columns of the terminal that data goes to, or of one as it usually is.
    #[expect(clippy::unused_self, reason = "the screen is what is asked, whoever knows the answer")]
    pub fn width(&self) -> usize {
        terminal_size::terminal_size_of(io::stdout())
            .map_or(USUAL_WIDTH, |(width, _)| usize::from(width.0))
    }

    /// A line of data.
    pub fn data(&mut self, line: &str) {
        self.end_progress();
        if !self.is_gone && writeln!(io::stdout(), "{line}").is_err() {
            self.is_gone = true;
        }
    }

    /// Whether nobody reads the data any more.
    pub const fn is_gone(&self) -> bool {
        self.is_gone
    }

    /// A line of talk.
    pub fn talk(&mut self, line: &str) {
        self.end_progress();
        // Nobody can be told that standard error is closed.
        let _ = writeln!(io::stderr(), "{line}");
    }

    /// The prompt for a person who types steps.
    pub fn prompt(&mut self) {
        self.end_progress();
        let _ = write!(io::stdout(), "\n> ").and_then(|()| io::stdout().flush());
    }

    /// How far long work has come; only a person at a terminal sees it.
    pub fn progress(&mut self, key: &str, done: usize, of: usize) {
        if self.talks_to_person {
            let text = self.words.say(key, &[("done", done.into()), ("of", of.into())]);
            let _ = write!(io::stderr(), "\r{text}\u{1b}[K").and_then(|()| io::stderr().flush());
            self.progress_shown = true;
        }
    }

    fn end_progress(&mut self) {
        if self.progress_shown {
            self.progress_shown = false;
            let _ = write!(io::stderr(), "\r\u{1b}[K");
        }
    }

    /// Wrong arguments, help or version: the parser has its own words for them.
    pub fn arguments(error: &clap::Error) -> Ending {
        let _ = error.print();
        if error.use_stderr() { Ending::WrongArguments } else { Ending::Done }
    }

    /// What went wrong, in one sentence with place and remedy.
    pub fn trouble(&mut self, trouble: &Trouble) {
        for line in trouble.lines(self.words) {
            let line = self.words.say("cli-trouble", &[("text", line.into())]);
            self.talk(&line);
        }
    }
}

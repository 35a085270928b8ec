//! The text bench: steps typed or read, events printed.

use super::judging::Adviser;
use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::what_if::LookingBack;
use super::{Ending, Outcome, case, judging, mark, seals, store};
use crate::reasoning::world::Worlds;
use crate::reasoning::world_store::WorldStore;
use crate::report::json as report_json;
use crate::scenario::deal::{deal, deal_sealed, deal_to_work, record_of};
use crate::scenario::draw::Case;
use crate::scenario::seal::record_of_sealed;
use crate::session::attempt::Session;
use crate::session::event::Event;
use crate::session::journal::{Journal, Mode};
use crate::session::kept::{self, KeptSession};
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::wording::amounts::till;
use crate::wording::parse_problem::ParseProblem;
use crate::wording::{event_words, file_words, help, hint_words, job_words, step_parser};
use serde_json::json;
use std::fs::File;
use std::io::{self, BufRead, BufReader, IsTerminal as _};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Runs the bench as the arguments ask.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let format = Format::of(given);
    let session_file = given.get_one::<PathBuf>("session");
    let (case, kept, is_sealed) = match session_file.filter(|path| path.exists()) {
        Some(path) => resume(path, given, screen)?,
        None => match given.get_one::<PathBuf>("case") {
            Some(hand_out) => begin_sealed(hand_out, session_file, screen)?,
            None => begin(given, session_file, screen)?,
        },
    };
    let steps = given.get_one::<PathBuf>("steps");
    let from_file = steps.is_some();
    let reader: Box<dyn BufRead> = match steps {
        Some(path) => {
            let file =
                File::open(path).map_err(|source| Trouble::File { path: path.clone(), source })?;
            Box::new(BufReader::new(file))
        }
        None => Box::new(io::stdin().lock()),
    };
    let typed = steps.is_none() && io::stdin().is_terminal();
    // A program that feeds steps through a pipe waits for the bench to end with the debrief.
    let looks_back = typed || from_file;
    let store = store::world_store(given);
    let adviser = Adviser::new(&case, &store);
    let store = &store;
    let bench =
        Bench { case: &case, is_sealed, adviser, kept, format, typed, looks_back, store, screen };
    bench.work(reader)
}

/// Opens the bench in the terminal, or for steps on standard input, with the program's own case.
pub fn run_plain(screen: &mut Screen<'_>) -> Outcome {
    let given = super::arguments::command(screen.words).get_matches_from(["faultwright", "bench"]);
    match given.subcommand() {
        Some((_, given)) => run(given, screen),
        None => Ok(Ending::Done),
    }
}

fn begin(
    given: &clap::ArgMatches,
    path: Option<&PathBuf>,
    screen: &mut Screen<'_>,
) -> Result<Begun, Trouble> {
    let loaded = case::scenario(given)?;
    let seed = given.get_one::<u64>("seed").copied().unwrap_or_else(store::any_seed);
    screen.progress("progress-dealing", 0, 1);
    let case = deal(&loaded, seed)?;
    let case = if given.get_flag("assessed") { case.assessed() } else { case };
    let path = match path {
        Some(path) => path.clone(),
        None => store::new_session_path(&loaded.text.scenario_name, seed)?,
    };
    let session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let kept = KeptSession::create(&path, &record_of(&case), session)
        .map_err(|error| Trouble::of_kept(error, &path))?;
    let text = screen.words.say(
        "bench-begun",
        &[("seed", seed.to_string().into()), ("path", path.display().to_string().into())],
    );
    screen.talk(&text);
    Ok((case, kept, false))
}

/// Begins a sealed case. Its session is named after the hand-out, since the seed is not to be told.
fn begin_sealed(
    hand_out: &Path,
    path: Option<&PathBuf>,
    screen: &mut Screen<'_>,
) -> Result<Begun, Trouble> {
    let sealed = seals::hand_out(hand_out)?;
    screen.progress("progress-dealing", 0, 1);
    let case = deal_sealed(&sealed).map_err(|error| Trouble::of_sealed(error, hand_out))?;
    let path = if let Some(path) = path {
        path.clone()
    } else {
        let name = hand_out.file_stem().unwrap_or_default().to_string_lossy();
        kept::unused_name(&store::session_folder()?, &name)
    };
    let session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let kept = KeptSession::create(&path, &record_of_sealed(&sealed), session)
        .map_err(|error| Trouble::of_kept(error, &path))?;
    let text = screen.words.say(
        "bench-begun-sealed",
        &[("name", sealed.name.as_str().into()), ("path", path.display().to_string().into())],
    );
    screen.talk(&text);
    Ok((case, kept, true))
}

fn resume(
    path: &Path,
    given: &clap::ArgMatches,
    screen: &mut Screen<'_>,
) -> Result<Begun, Trouble> {
    let (journal, recorded) = Journal::resume(path)?;
    let kept = recorded.case.seed;
    let seed: Option<u64> = given.get_one("seed").copied();
    if given.get_flag("assessed") && recorded.case.mode == Mode::Practice {
        return Err(Trouble::Practised { path: path.to_owned() });
    }
    let sealed = &recorded.case.sealed;
    if let Some(given) = seed.filter(|given| *given != kept || sealed.is_some()) {
        if sealed.is_some() {
            return Err(Trouble::Sealed { path: path.to_owned() });
        }
        return Err(Trouble::OtherSeed { path: path.to_owned(), kept, given });
    }
    screen.progress("progress-dealing", 0, 1);
    let case = deal_to_work(&recorded.case).map_err(|error| Trouble::of_sealed(error, path))?;
    let session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let kept = KeptSession::resume(journal, &recorded.entries, session)
        .map_err(|error| Trouble::of_kept(error, path))?;
    if let Some(torn) = &recorded.torn {
        screen.talk(&file_words::torn(torn, path, screen.words));
    }
    let text = screen.words.say(
        "bench-resumed",
        &[
            ("path", path.display().to_string().into()),
            ("steps", kept.session().log().len().into()),
        ],
    );
    screen.talk(&text);
    Ok((case, kept, recorded.case.sealed.is_some()))
}

/// A case, its session, and whether it is sealed.
type Begun = (Case, KeptSession, bool);

struct Bench<'b, 'w> {
    case: &'b Case,
    /// Nothing that is hidden is told after the hand-over.
    is_sealed: bool,
    adviser: Adviser<'b>,
    kept: KeptSession,
    format: Format,
    /// A person types the steps and can mend a mistyped one.
    typed: bool,
    /// Lines after the hand-over may ask what else could have been done.
    looks_back: bool,
    /// Where the debrief finds its worlds.
    store: &'b WorldStore,
    screen: &'b mut Screen<'w>,
}

/// Whether the bench goes on after a line.
enum Next {
    Line,
    Leave,
}

impl Bench<'_, '_> {
    fn work(mut self, reader: impl BufRead) -> Outcome {
        self.open();
        let mut lines = reader.lines().enumerate();
        while self.kept.session().ending().is_none()
            && let Some((number, line)) = next(&mut lines)?
        {
            if matches!(self.line(number, &line)?, Next::Leave) || self.screen.is_gone() {
                break;
            }
            self.prompt();
        }
        let path = self.kept.path().to_owned();
        if self.kept.session().ending().is_none() {
            let text =
                self.screen.words.say("bench-left", &[("path", path.display().to_string().into())]);
            self.screen.talk(&text);
            return Ok(Ending::Done);
        }
        if self.is_sealed {
            self.stays_sealed(&path);
            return Ok(Ending::Done);
        }
        let worlds = judging::worlds(self.case, self.store, self.screen)?;
        let session = self.kept.session();
        let judged = judging::judge(self.case, session, worlds.clone(), &path, self.screen)?;
        mark::show(&judged, self.case, session, self.format, self.screen);
        if self.looks_back {
            self.look_back(worlds, &mut lines)?;
        }
        Ok(Ending::Done)
    }

    /// After the hand-over of a sealed case: to whom its file goes, and by what that file is known again.
    fn stays_sealed(&mut self, path: &Path) {
        let receipt = self.kept.receipt();
        if self.format == Format::Json {
            self.screen.data(&json!({ "sealed": true, "receipt": receipt }).to_string());
            return;
        }
        let said =
            [("path", path.display().to_string().into()), ("receipt", receipt.short().into())];
        let text = self.screen.words.say("bench-stays-sealed", &said);
        self.screen.data(&format!("\n{text}"));
    }

    /// After the hand-over: what else could have been done at any moment.
    fn look_back(
        self,
        worlds: Worlds,
        lines: &mut impl Iterator<Item = (usize, io::Result<String>)>,
    ) -> Result<(), Trouble> {
        let Self { case, kept, format, typed, screen, .. } = self;
        let (session, path) = (kept.session(), kept.path());
        let looking = LookingBack { case, session, worlds, path, format, shows_all: false };
        if typed && format == Format::Text {
            let text = screen.words.say("bench-look-back", &[]);
            screen.data(&format!("\n{text}"));
            screen.prompt();
        }
        while let Some((number, line)) = next(lines)? {
            let asked = Asked::of(&line, &case.briefing);
            if !typed && format == Format::Text && !matches!(asked, Ok(Asked::Nothing)) {
                screen.data(&format!("\n> {}", line.trim()));
            }
            let answered = match asked {
                Ok(Asked::Nothing) => Ok(()),
                Ok(Asked::Leave) => break,
                Ok(Asked::Moment { at, steps }) => looking.answer(at, &steps, screen),
                Ok(Asked::Other) => {
                    let text = screen.words.say("bench-look-back", &[]);
                    screen.talk(&text);
                    Ok(())
                }
                Err(problem) => Err(Trouble::Step { line: number, problem }),
            };
            match answered {
                // Whoever types can ask again.
                Err(trouble) if typed => screen.trouble(&trouble),
                other => other?,
            }
            if screen.is_gone() {
                break;
            }
            if typed && format == Format::Text {
                screen.prompt();
            }
        }
        Ok(())
    }

    fn open(&mut self) {
        match self.format {
            Format::Json => {
                let path = self.kept.path().display().to_string();
                let name = &self.case.scenario.text.scenario_name;
                self.screen.data(&report_json::header(name, Some(&path)).to_string());
            }
            Format::Text => {
                let sheet = job_words::job_sheet(&self.case.briefing, self.screen.words);
                self.screen.data(&sheet);
                if self.typed {
                    let hint = self.screen.words.say("bench-hint", &[]);
                    self.screen.data(&format!("\n{hint}"));
                }
            }
        }
        self.prompt();
    }

    fn prompt(&mut self) {
        if self.typed && self.format == Format::Text && self.kept.session().ending().is_none() {
            self.screen.prompt();
        }
    }

    fn line(&mut self, number: usize, line: &str) -> Result<Next, Trouble> {
        let mut typed_words = line.split_whitespace();
        match (typed_words.next(), typed_words.next(), typed_words.next()) {
            (Some("help"), verb, None) => {
                self.help(verb);
                return Ok(Next::Line);
            }
            (Some("quit" | "leave"), None, None) => return Ok(Next::Leave),
            (Some(start), _, _) if start.ends_with('?') || line.trim_end().ends_with('?') => {
                self.complete(line.trim_end().trim_end_matches('?'));
                return Ok(Next::Line);
            }
            _ => {}
        }
        match step_parser::parse(line, &self.case.briefing) {
            Ok(None) => {}
            Ok(Some(step)) => self.step(line, &step)?,
            Err(problem) if self.typed => {
                let text = problem.sentence(self.screen.words);
                self.screen.talk(&text);
            }
            Err(problem) => return Err(Trouble::Step { line: number, problem }),
        }
        Ok(Next::Line)
    }

    fn help(&mut self, verb: Option<&str>) {
        let words = self.screen.words;
        let text = match verb {
            None => help::help(words),
            Some(verb) => help::help_for(verb, words)
                .unwrap_or_else(|| words.say("bench-no-such-verb", &[("verb", verb.into())])),
        };
        self.screen.data(&text);
    }

    fn complete(&mut self, line: &str) {
        let words = step_parser::complete(line, &self.case.briefing);
        self.screen.data(&words.join("  "));
    }

    fn step(&mut self, line: &str, step: &Step) -> Result<(), Trouble> {
        let path = self.kept.path().to_owned();
        let events = self.kept.take(step).map_err(|error| Trouble::of_kept(error, &path))?;
        let entry = self.kept.session().log().len();
        let log = &self.kept.session().log()[..entry - 1];
        let hint = self.adviser.hint(log, &events, self.screen)?;
        let labour = self.case.briefing.prices.labour_per_hour;
        match self.format {
            Format::Json => {
                for event in &events {
                    self.screen.data(&report_json::event(entry, step, event).to_string());
                }
                if let Some(hint) = &hint {
                    self.screen.data(&report_json::hint(entry, hint).to_string());
                }
                let till = report_json::till(entry, self.kept.session().till(), labour);
                self.screen.data(&till.to_string());
            }
            Format::Text => {
                if !self.typed {
                    self.screen.data(&format!("\n> {}", line.trim()));
                }
                for event in &events {
                    if !matches!(event, Event::Spent { .. }) {
                        self.screen.data(&event_words::line(
                            event,
                            self.screen.words,
                            &self.case.briefing,
                        ));
                    }
                }
                if let Some(hint) = &hint {
                    let briefing = &self.case.briefing;
                    for line in hint_words::hint(hint, briefing, self.screen.words) {
                        self.screen.data(&line);
                    }
                }
                let till = self.till();
                self.screen.data(&till);
            }
        }
        Ok(())
    }

    fn till(&self) -> String {
        let till = till(self.kept.session().till(), &self.case.briefing, self.screen.words);
        self.screen.words.say("bench-till", &[("till", till.into())])
    }
}

/// The next line with its number from 1.
fn next(
    lines: &mut impl Iterator<Item = (usize, io::Result<String>)>,
) -> Result<Option<(usize, String)>, Trouble> {
    let Some((number, line)) = lines.next() else { return Ok(None) };
    let line =
        line.map_err(|source| Trouble::File { path: PathBuf::from("standard input"), source })?;
    Ok(Some((number + 1, line)))
}

/// What a line asks for once the vehicle is handed over.
enum Asked {
    /// Nothing: an empty line or a comment.
    Nothing,
    /// The end.
    Leave,
    /// What else could have been done instead of a step.
    Moment {
        /// Number of the step, from 1.
        at: usize,
        /// What is done instead; none for everything that could be.
        steps: Vec<Step>,
    },
    /// Something that the closed job has no answer for.
    Other,
}

impl Asked {
    fn of(line: &str, briefing: &Briefing) -> Result<Self, ParseProblem> {
        let line = line.split('#').next().unwrap_or_default().trim();
        let (first, rest) = line.split_once(char::is_whitespace).unwrap_or((line, ""));
        let (at, rest) = rest.trim().split_once(char::is_whitespace).unwrap_or((rest.trim(), ""));
        match (first, at.parse()) {
            ("", _) => Ok(Self::Nothing),
            ("quit" | "leave", _) => Ok(Self::Leave),
            ("whatif", Ok(at)) => {
                let mut steps = Vec::new();
                for step in rest.split(';') {
                    steps.extend(step_parser::parse(step, briefing)?);
                }
                Ok(Self::Moment { at, steps })
            }
            _ => Ok(Self::Other),
        }
    }
}

//! Trying the case: a practice session of the text as it stands, with what it hides said from the start.

use super::Writer;
use crate::faults::FaultName;
use crate::report::problem_words;
use crate::scenario::deal::{DealError, deal, record_of};
use crate::scenario::draw::Case;
use crate::scenario::load::Loaded;
use crate::scenario::showing::{MOST_SEEDS, ShowError, deal_showing};
use crate::session::attempt::Session;
use crate::session::journal::Mode;
use crate::session::kept::{self, KeptSession};
use crate::wording::catalogue::Words;
use crate::wording::place;
use crate::workshop::desk::open_case::OpenCase;
use crate::workshop::desk::shelf::Opened;
use crate::workshop::desk::trouble::Trouble;
use crate::workshop::desk::{Answer, Desk, Open, Surroundings};
use std::fs;
use std::sync::Arc;

/// Folder for what is tried, within that of the sessions: nobody is offered those to go on with.
const FOLDER: &str = "tried";

/// What is to be tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wanted {
    /// The entry of this number; the vehicle without a fault behind the last.
    Entry(usize),
    /// Whatever this seed deals.
    Seed(u64),
}

/// A case that was found for it.
pub struct Found {
    opened: Opened,
    seed: u64,
    hidden: Vec<FaultName>,
}

/// The writer, put aside, and what is tried.
pub struct Tried {
    writer: Box<Writer>,
    seed: u64,
    hidden: Vec<FaultName>,
    /// Both in words.
    pub said: String,
}

impl Writer {
    /// The seed that was typed; where it is none, the page says so.
    pub fn typed_seed(&mut self, words: &Words) -> Option<u64> {
        let seed = self.view.trial.seed.trim().parse().ok();
        if seed.is_none() {
            self.view.trial.problem = Some(words.say("window-no-seed", &[]));
        }
        seed
    }

    fn tells_problem(&mut self, problem: Option<String>) {
        self.view.trial.problem = problem;
    }
}

impl Desk {
    /// Begins to look for a case to try, if the text is free of problems.
    pub(super) fn try_with(&mut self, wanted: Wanted) {
        let Open::Writer(writer) = &mut self.open else { return };
        let Some(loaded) = writer.loaded.clone().filter(|_| self.work.is_none()) else { return };
        writer.tells_problem(None);
        let around = Arc::clone(&self.around);
        self.begin_work(self.around.words.say("progress-dealing", &[]), move |_| {
            Answer::Found(Box::new(find(&around, &loaded, wanted)))
        });
    }

    /// Opens the case that was found, or says why there is none. Where the writer was left meanwhile, nobody waits for it.
    pub(in crate::workshop::desk) fn try_found(&mut self, found: Result<Found, String>) {
        if !matches!(self.open, Open::Writer(_)) {
            return;
        }
        match found {
            Err(problem) => {
                if let Open::Writer(writer) = &mut self.open {
                    writer.tells_problem(Some(problem));
                }
            }
            Ok(Found { opened, seed, hidden }) => {
                self.come_in(opened.kept.session());
                let case = OpenCase::lay_out(opened, &self.around.words);
                let before = std::mem::replace(&mut self.open, Open::Case(Box::new(case)));
                if let Open::Writer(writer) = before {
                    self.tried = Some(Tried { writer, seed, hidden, said: String::new() });
                    self.say_tried();
                }
            }
        }
    }

    /// Says what is tried in the language that is spoken now.
    pub(in crate::workshop::desk) fn say_tried(&mut self) {
        let words = &self.around.words;
        if let Some(tried) = &mut self.tried {
            let faults = place::diagnoses(&tried.hidden, words);
            // As text, so that no language puts marks into a seed.
            let seed = tried.seed.to_string();
            tried.said =
                words.say("writer-tried", &[("seed", seed.into()), ("faults", faults.into())]);
        }
    }

    /// Lays the writer out again that was put aside; whether there was one.
    pub(in crate::workshop::desk) fn come_back_to_writer(&mut self) -> bool {
        let Some(Tried { mut writer, .. }) = self.tried.take() else { return false };
        writer.say_anew(&self.around.words);
        self.open = Open::Writer(writer);
        true
    }
}

fn find(around: &Surroundings, loaded: &Arc<Loaded>, wanted: Wanted) -> Result<Found, String> {
    let words = &around.words;
    let mut case = match wanted {
        Wanted::Entry(entry) => {
            deal_showing(loaded, entry).map_err(|error| refused(error, words))?
        }
        Wanted::Seed(seed) => {
            deal(loaded, seed).map_err(|error| Trouble::from(error).sentence(words))?
        }
    };
    // Whatever it is for, its author may ask for hints.
    Arc::make_mut(&mut case.briefing).mode = Mode::Practice;
    let (seed, hidden) = (case.seed, case.hidden.faults.iter().map(|it| it.name.clone()).collect());
    let opened = keep(around, case).map_err(|trouble| trouble.sentence(words))?;
    Ok(Found { opened, seed, hidden })
}

fn refused(error: ShowError, words: &Words) -> String {
    match error {
        ShowError::NeverDrawn => {
            words.say("writer-try-never", &[("seeds", MOST_SEEDS.to_string().into())])
        }
        ShowError::Refused { without_complaint, not_separable } => {
            let why = problem_words::refusals(without_complaint, not_separable, words);
            words.say("writer-try-refused", &[("why", why.into())])
        }
        ShowError::Draw(error) => Trouble::from(DealError::from(error)).sentence(words),
    }
}

fn keep(around: &Surroundings, case: Case) -> Result<Opened, Trouble> {
    let folder = (around.sessions)().map_err(Trouble::NoFolder)?.join(FOLDER);
    // What does not go is told by the session's own file.
    let _ = fs::create_dir_all(&folder);
    let path = kept::unused_path(&folder, &case.scenario.text.scenario_name, case.seed);
    let session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let kept = KeptSession::create(&path, &record_of(&case), session)
        .map_err(|error| Trouble::of_kept(error, &path))?;
    Ok(Opened { case, kept, notice: None, is_sealed: false, is_guided: false, sounds: Vec::new() })
}

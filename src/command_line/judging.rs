//! What marking and looking back have in common: a session taken again, and the expert's worlds.

use super::screen::Screen;
use super::seals;
use super::trouble::Trouble;
use crate::assessment::debrief::{Debrief, debrief};
use crate::reasoning::hint::{Hint, hint};
use crate::reasoning::onlooker::Onlooker;
use crate::reasoning::world::Worlds;
use crate::reasoning::world_store::WorldStore;
use crate::scenario::deal::{deal_again, deal_sealed};
use crate::scenario::draw::Case;
use crate::scenario::load::Loaded;
use crate::scenario::seal;
use crate::scenario::suppose::suppositions;
use crate::session::attempt::{Entry, Session};
use crate::session::event::Event;
use crate::session::journal::{ReadMode, Recorded, Sealed, read};
use crate::session::kept;
use crate::session::setup::Briefing;
use crate::wording::file_words;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

/// A session file whose steps were taken again.
pub struct Replayed {
    /// Its case.
    pub case: Case,
    /// The session after its last step.
    pub session: Session,
    /// The file.
    pub path: PathBuf,
}

impl Replayed {
    /// Reads the session file that the arguments name and takes its steps again; what follows must be what
    /// was recorded. A sealed case is opened with the passphrase that the arguments name.
    ///
    /// # Errors
    /// [`Trouble`] when the file is not right, leads elsewhere, or stays sealed.
    pub fn of(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Result<Self, Trouble> {
        Self::with(given, screen, |sealed, path| {
            let phrase = seals::passphrase(given)?;
            let phrase = phrase.ok_or_else(|| Trouble::Sealed { path: path.to_owned() })?;
            let record = seal::open(sealed, &phrase)
                .map_err(|error| Trouble::Seal { path: path.to_owned(), error })?;
            Ok(deal_again(&record)?)
        })
    }

    /// The same to show nothing but what the apprentice saw: a sealed case stays sealed.
    ///
    /// # Errors
    /// [`Trouble`] when the file is not right or leads elsewhere.
    pub fn as_seen(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Result<Self, Trouble> {
        Self::with(given, screen, |sealed, path| {
            deal_sealed(sealed).map_err(|error| Trouble::of_sealed(error, path))
        })
    }

    fn with(
        given: &clap::ArgMatches,
        screen: &mut Screen<'_>,
        of_sealed: impl FnOnce(&Sealed, &Path) -> Result<Case, Trouble>,
    ) -> Result<Self, Trouble> {
        let path = given.get_one::<PathBuf>("file").cloned().unwrap_or_default();
        let recorded = read(&path, ReadMode::Strict)?;
        screen.progress("progress-dealing", 0, 1);
        let case = match &recorded.case.sealed {
            Some(sealed) => of_sealed(sealed, &path)?,
            None => deal_again(&recorded.case)?,
        };
        let session = replayed(&case, &recorded, &path)?;
        Ok(Self { case, session, path })
    }
}

/// The session of a case after the steps that were recorded.
///
/// # Errors
/// [`Trouble`] when they lead elsewhere.
pub fn replayed(case: &Case, recorded: &Recorded, path: &Path) -> Result<Session, Trouble> {
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    kept::replay(&mut session, &recorded.entries).map_err(|error| Trouble::of_kept(error, path))?;
    Ok(session)
}

/// Who answers when an apprentice asks for a hint. The expert's worlds are begun with the first question.
pub struct Adviser<'a> {
    case: &'a Case,
    store: &'a WorldStore,
    onlooker: Option<Onlooker>,
}

impl<'a> Adviser<'a> {
    /// Nobody has asked yet.
    pub const fn new(case: &'a Case, store: &'a WorldStore) -> Self {
        Self { case, store, onlooker: None }
    }

    /// What an entry's hint told, if it was one: worked out from the log up to it, never from the hidden
    /// state. Entries have to come in their order.
    ///
    /// # Errors
    /// [`Trouble::Simulation`] when a world cannot be simulated.
    pub fn hint(
        &mut self,
        log: &[Entry],
        events: &[Event],
        screen: &mut Screen<'_>,
    ) -> Result<Option<Hint>, Trouble> {
        let asked = events.iter().find_map(|event| match event {
            Event::HintAsked { grade } => Some(*grade),
            _ => None,
        });
        let Some(grade) = asked else { return Ok(None) };
        let onlooker = match &mut self.onlooker {
            Some(onlooker) => onlooker,
            none => {
                let worlds = worlds(self.case, self.store, screen)?;
                none.insert(Onlooker::new(&self.case.briefing, worlds))
            }
        };
        screen.progress("progress-hint", 0, 1);
        Ok(Some(hint(onlooker, log, grade)?))
    }
}

/// The worlds of a case, with a word on how far they are.
///
/// # Errors
/// [`Trouble::Simulation`] when a world cannot be simulated.
pub fn worlds(case: &Case, store: &WorldStore, screen: &mut Screen<'_>) -> Result<Worlds, Trouble> {
    worlds_of(&case.briefing, &case.scenario, store, screen)
}

/// The worlds of a scenario for one of its briefings, with a word on how far they are.
///
/// # Errors
/// [`Trouble::Simulation`] when a world cannot be simulated.
pub fn worlds_of(
    briefing: &Arc<Briefing>,
    scenario: &Loaded,
    store: &WorldStore,
    screen: &mut Screen<'_>,
) -> Result<Worlds, Trouble> {
    let suppositions = suppositions(scenario);
    let begun = AtomicUsize::new(0);
    let (worlds, not_kept) = std::thread::scope(|scope| {
        let worker = scope.spawn(|| {
            store.begin(briefing, &suppositions, &|done, _| {
                begun.store(done, Ordering::Relaxed);
            })
        });
        while !worker.is_finished() {
            screen.progress("progress-worlds", begun.load(Ordering::Relaxed), suppositions.len());
            std::thread::sleep(std::time::Duration::from_millis(50));
        }
        worker.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
    })?;
    if let Some(not_kept) = not_kept {
        let path = not_kept.path.display().to_string();
        let why = file_words::io_reason(&not_kept.source, screen.words);
        let said = [("path", path.into()), ("why", why.into())];
        let line = screen.words.say("worlds-not-kept", &said);
        screen.talk(&line);
    }
    Ok(worlds)
}

/// The debrief of a finished session, with a word on how far it is.
///
/// # Errors
/// [`Trouble`] when the session is not finished or a world cannot be simulated.
pub fn judge(
    case: &Case,
    session: &Session,
    worlds: Worlds,
    path: &Path,
    screen: &mut Screen<'_>,
) -> Result<Debrief, Trouble> {
    let shown = std::cell::RefCell::new(screen);
    debrief(session, case.hidden.faults.clone(), worlds, &case.rubric, &|done, of| {
        shown.borrow_mut().progress("progress-review", done, of);
    })
    .map_err(|error| Trouble::of_debrief(error, path))
}

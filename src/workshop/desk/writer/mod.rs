//! The case that is being written: the text, what it holds, what is wrong with it, and where it is kept.

mod check;
mod door;
mod draft;
mod flow;
mod forms;
mod hard;
mod saving;
#[cfg(test)]
mod tests;
mod trying;

pub use draft::Drawer;
pub use trying::{Found, Tried};

use super::work::{Became, Wake, Work};
use crate::scenario::load::{self, Loaded, ScenarioText};
use crate::scenario::schema::ScenarioFile;
use crate::scenario::writing::manuscript::{By, Manuscript};
use crate::scenario::writing::patch;
use crate::scenario::writing::{offset_of, reading};
use crate::session::step::CustomerTopic;
use crate::vehicle::spec::VehicleSpec;
use crate::wording::catalogue::Words;
use crate::wording::{job_words, place};
use crate::workshop::bay::model::Model;
use crate::workshop::view::bay::{BayAction, BayView, PlaceView};
use crate::workshop::view::writer::form::{Deed, Field, Row};
use crate::workshop::view::writer::{
    CursorView, HardnessView, Section, Side, TrialView, WriterAction, WriterPane, WriterView,
};
use check::{Looked, Subject};
use draft::Draft;
use forms::{Ground, Typed};
use hard::{Known, Measuring};
use saving::Saved;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// What a text is called that is not saved yet, in the file names of sessions and problems.
const NEW_NAME: &str = "new-case";

/// A case that is being written.
pub struct Writer {
    manuscript: Manuscript,
    path: Option<PathBuf>,
    /// What the text held when it could be read last.
    good: Option<ScenarioFile>,
    /// The vehicle, with the name by which it was found.
    vehicle: Option<(String, VehicleSpec)>,
    /// What was typed in fields.
    typed: BTreeMap<String, Typed>,
    /// The scenario of the text as it stands, where nothing is wrong with it.
    loaded: Option<Arc<Loaded>>,
    /// Why there is none, to be said in any language.
    wrong: Option<load::LoadError>,
    /// Number of the text: every change makes it another one.
    number: u64,
    looking: Option<Work<Looked>>,
    /// Number of the text that was looked at last.
    looked_at: Option<u64>,
    /// Somebody knows that nothing can be kept.
    is_told: bool,
    drawer: Drawer,
    saving: Option<Work<Saved>>,
    measuring: Option<Measuring>,
    hard: Known,
    /// Leave when it is saved.
    leaves: bool,
    wake: Wake,
    view: WriterView,
}

/// What the desk has to do for it.
#[derive(Debug)]
pub enum Wish {
    /// Lay the front page.
    Leave,
    /// Say something.
    Tell(String),
    /// Lay the front page and say something.
    LeaveAndTell(String),
}

impl Writer {
    /// Opens a text.
    pub fn open(
        manuscript: Manuscript,
        path: Option<PathBuf>,
        (wake, drawer): (Wake, Drawer),
        words: &Words,
    ) -> Self {
        let view = WriterView {
            name: String::new(),
            path: None,
            is_changed: false,
            can: (false, false),
            text: String::new(),
            cursor: CursorView::default(),
            section: Section::default(),
            rows: Vec::new(),
            is_live: false,
            problems: None,
            doubts: Vec::new(),
            is_checking: false,
            side: Side::default(),
            pane: WriterPane::default(),
            sheet: Vec::new(),
            bay: None,
            trial: TrialView::default(),
            hardness: HardnessView::default(),
            asked: None,
        };
        let mut writer = Self {
            manuscript,
            path,
            good: None,
            vehicle: None,
            typed: BTreeMap::new(),
            loaded: None,
            wrong: None,
            number: 0,
            looking: None,
            looked_at: None,
            is_told: false,
            drawer,
            saving: None,
            measuring: None,
            hard: Known::default(),
            leaves: false,
            wake,
            view,
        };
        writer.follow(words);
        writer
    }

    /// What is shown.
    pub const fn view(&self) -> &WriterView {
        &self.view
    }

    /// The bay with the vehicle, while it is looked at.
    pub fn bay(&self) -> Option<&BayView> {
        self.view.bay.as_ref().filter(|_| self.view.side == Side::Bay)
    }

    /// Whether something goes on beside the window.
    pub const fn is_busy(&self) -> bool {
        self.looking.is_some() || self.saving.is_some() || self.measuring.is_some()
    }

    /// Moves the camera in the bay.
    pub fn look(&mut self, wanted: &BayAction) {
        if let Some(bay) = &mut self.view.bay {
            bay.look(wanted);
        }
    }

    /// Does what is wanted of the text and the page.
    pub fn act(&mut self, wanted: WriterAction, words: &Words) -> Option<Wish> {
        match wanted {
            WriterAction::Type(text) => {
                self.manuscript.rewrite(&text, By::Typing);
                self.typed.clear();
                self.follow(words);
            }
            WriterAction::Fill { path, text } => self.fill(path, text, words),
            WriterAction::Do(deed) => self.do_deed(&deed, words),
            WriterAction::Undo => {
                let at = self.manuscript.undo();
                self.came_back(at, words);
            }
            WriterAction::Redo => {
                let at = self.manuscript.redo();
                self.came_back(at, words);
            }
            WriterAction::Show(section) => {
                self.view.section = section;
                self.typed.clear();
                self.lay_rows(words);
            }
            WriterAction::Turn(side) => {
                self.view.side = side;
                self.view.pane = WriterPane::Side;
            }
            WriterAction::Pane(pane) => self.view.pane = pane,
            WriterAction::GoTo(line, column) => {
                (self.view.side, self.view.pane) = (Side::Text, WriterPane::Side);
                let at = offset_of(self.manuscript.text(), line, column);
                self.send_cursor(at, true);
            }
            WriterAction::StopMeasuring => self.stop_measuring(),
            WriterAction::TypeSeed(seed) => {
                self.view.trial.seed = seed;
                self.view.trial.problem = None;
            }
            other => return self.act_on_file(other, words),
        }
        None
    }

    /// Writes what a field holds into the text, if it is what the field can hold.
    fn fill(&mut self, path: String, text: String, words: &Words) {
        let sort = fields(&self.view.rows).find(|it| it.path == path).map(|it| it.sort);
        let Some(sort) = sort.filter(|_| self.view.is_live) else { return };
        let problem = match forms::written(sort, &text) {
            None => Some(forms::misfit(sort, words)),
            Some(value) => match patch::set(self.manuscript.text(), &path, &value) {
                Some(patch) => {
                    let changed = patch::of_its_version(patch.on(self.manuscript.text()));
                    let problem = reading(NEW_NAME, &changed).err();
                    if problem.is_none() {
                        self.manuscript.rewrite(&changed, By::Field(&path));
                    }
                    problem.map(|problem| crate::report::problem_words::said(&problem, words))
                }
                None => Some(words.say("writer-nowhere", &[])),
            },
        };
        self.typed.insert(path, Typed { text, problem });
        self.follow(words);
    }

    fn do_deed(&mut self, deed: &Deed, words: &Words) {
        let text = self.manuscript.text();
        let patch = match deed {
            Deed::Set { path, value } => patch::set(text, path, value),
            Deed::Push { list, item } => patch::push(text, list, item),
            Deed::Remove { path } => patch::remove(text, path),
        };
        if let Some(patch) = patch
            && self.view.is_live
        {
            let changed = patch::of_its_version(patch.on(text));
            self.manuscript.rewrite(&changed, By::Itself);
            self.typed.clear();
            self.send_cursor(patch.span.start + patch.with.len(), false);
            self.follow(words);
        }
    }

    /// A change was taken back, or made again, at a byte offset.
    fn came_back(&mut self, at: Option<usize>, words: &Words) {
        let Some(at) = at else { return };
        self.typed.clear();
        self.follow(words);
        self.send_cursor(at, false);
    }

    fn send_cursor(&mut self, at: usize, with_focus: bool) {
        let before = self.manuscript.text().get(..at).unwrap_or("");
        let sent = self.view.cursor.sent + 1;
        self.view.cursor = CursorView { at: before.chars().count(), sent, with_focus };
    }

    /// Brings everything that hangs on the text to it, and has it looked at.
    fn follow(&mut self, words: &Words) {
        if self.view.text != self.manuscript.text() || self.number == 0 {
            self.number = self.drawer.next_number();
            self.view.text = self.manuscript.text().to_owned();
            self.loaded = None;
            let read = reading(&self.name(), &self.view.text);
            self.view.is_live = read.is_ok();
            if let Ok(file) = read {
                self.take_vehicle(&file.vehicle, words);
                self.good = Some(file);
            }
        }
        self.show_file(words);
        self.lay_rows(words);
        self.view.sheet = self.sheet(words);
        self.view.trial.can_deal = self.loaded.is_some();
        self.show_hardness(words);
        self.begin_look();
    }

    fn begin_look(&mut self) {
        self.view.is_checking = self.looked_at != Some(self.number);
        if self.looking.is_some() || !self.view.is_checking {
            return;
        }
        let subject = Subject {
            number: self.number,
            name: self.name(),
            text: self.view.text.clone(),
            path: self.path.clone(),
            draft: self.draft(),
        };
        self.looking = Some(check::begin(&self.wake, &self.drawer, subject));
    }

    fn draft(&self) -> Draft {
        let texts = || (self.manuscript.saved().to_owned(), self.manuscript.text().to_owned());
        Draft::new(self.path.clone(), self.manuscript.is_changed().then(texts))
    }

    /// Name of the scenario: that of its file.
    fn name(&self) -> String {
        let stem = self.path.as_deref().and_then(Path::file_stem);
        stem.map_or_else(|| NEW_NAME.to_owned(), |stem| stem.to_string_lossy().into())
    }

    fn folder(&self) -> Option<&Path> {
        self.path.as_deref().and_then(Path::parent)
    }

    fn take_vehicle(&mut self, name: &str, words: &Words) {
        if self.vehicle.as_ref().is_some_and(|(known, _)| known == name) {
            return;
        }
        let found = load::vehicle_named(name, self.folder());
        self.view.bay = found.as_ref().map(|vehicle| bay_of(vehicle, words));
        self.vehicle = found.map(|vehicle| (name.to_owned(), vehicle));
    }

    /// Its file may have been changed by somebody else meanwhile.
    fn keep_vehicle(&mut self, loaded: &Loaded, words: &Words) {
        let found = (loaded.scenario.vehicle.clone(), loaded.vehicle.clone());
        if self.vehicle.as_ref() != Some(&found) {
            self.view.bay = Some(bay_of(&found.1, words));
            self.vehicle = Some(found);
            self.lay_rows(words);
        }
    }

    fn lay_rows(&mut self, words: &Words) {
        let Some(file) = &self.good else { return };
        let vehicle = self.vehicle.as_ref().filter(|(name, _)| *name == file.vehicle);
        let vehicle = vehicle.map(|(_, vehicle)| vehicle);
        let ground = Ground { file, vehicle, typed: &self.typed, words };
        self.view.rows = forms::rows(self.view.section, ground);
        let entries = file.faults.iter().map(|prior| place::diagnoses(&prior.names(), words));
        self.view.trial.entries = entries.collect();
        if file.no_fault > 0.0 {
            self.view.trial.entries.push(place::diagnosis(None, words));
        }
    }

    /// The job sheet and the customer's answers as the apprentice gets them.
    fn sheet(&self, words: &Words) -> Vec<String> {
        let (Some(scenario), Some((_, vehicle))) = (&self.good, &self.vehicle) else {
            return Vec::new();
        };
        let text = ScenarioText {
            scenario_name: self.name(),
            scenario_text: String::new(),
            vehicle_text: String::new(),
        };
        let (scenario, vehicle) = (scenario.clone(), vehicle.clone());
        let briefing = Loaded { text, scenario, vehicle }.briefing();
        let sheet = job_words::job_sheet(&briefing, words);
        let answers = [
            ("writer-asked-symptom", CustomerTopic::Symptom),
            ("writer-asked-when", CustomerTopic::When),
            ("writer-asked-service", CustomerTopic::Service),
            ("writer-asked-repairs", CustomerTopic::Repairs),
        ];
        let answers = answers.into_iter().flat_map(|(key, topic)| {
            [words.say(key, &[]), job_words::answer(topic, &briefing, words)]
        });
        sheet.lines().map(str::to_owned).chain(answers).collect()
    }

    /// Says everything in the language of these words.
    pub fn say_anew(&mut self, words: &Words) {
        self.typed.clear();
        if let Some((_, vehicle)) = &self.vehicle {
            self.view.bay = Some(bay_of(vehicle, words));
        }
        if let Some(error) = &self.wrong {
            self.view.problems = Some(check::views(error, words));
        }
        if let Some(loaded) = &self.loaded {
            self.view.doubts = check::doubts(loaded, words);
        }
        self.follow(words);
    }

    /// Hears what has come of the work beside the window; whether anything has.
    pub fn listen(&mut self, words: &Words) -> (bool, Option<Wish>) {
        let mut heard = self.hear_measured(words);
        let mut wish = None;
        if let Some(work) = self.looking.take() {
            match work.look() {
                Became::Pending => self.looking = Some(work),
                Became::Done(looked) => {
                    heard = true;
                    wish = self.hear_looked(looked, words);
                }
                Became::Lost => {
                    heard = true;
                    self.looked_at = Some(self.number);
                    wish = Some(Wish::Tell(words.say("window-broke-off", &[])));
                }
            }
        }
        let (has_saved, saved) = self.hear_saved(words);
        (heard || has_saved, saved.or(wish))
    }

    fn hear_looked(&mut self, looked: Looked, words: &Words) -> Option<Wish> {
        let Looked { number, outcome, kept } = looked;
        self.looked_at = Some(number);
        if number == self.number {
            match outcome {
                Ok(loaded) => {
                    self.view.problems = Some(Vec::new());
                    self.view.doubts = check::doubts(&loaded, words);
                    self.keep_vehicle(&loaded, words);
                    (self.loaded, self.wrong) = (Some(loaded), None);
                }
                Err(error) => {
                    self.view.problems = Some(check::views(&error, words));
                    self.view.doubts.clear();
                    (self.loaded, self.wrong) = (None, Some(error));
                }
            }
            self.view.trial.can_deal = self.loaded.is_some();
        }
        self.begin_look();
        let error = kept.err()?;
        (!std::mem::replace(&mut self.is_told, true)).then(|| {
            let why = crate::wording::file_words::io_reason(&error, words);
            Wish::Tell(words.say("writer-draft-not-kept", &[("why", why.into())]))
        })
    }
}

/// The bay of a vehicle, everything in place.
fn bay_of(vehicle: &VehicleSpec, words: &Words) -> BayView {
    let model = Arc::new(Model::of(vehicle));
    let places = model.things.iter().map(|thing| PlaceView {
        id: thing.id.clone(),
        name: place::place(&thing.id, words),
        sort: thing.sort,
        is_off: false,
    });
    let places = places.collect();
    BayView::new(model, places)
}

/// Every field of a form.
fn fields(rows: &[Row]) -> Box<dyn Iterator<Item = &Field> + '_> {
    Box::new(rows.iter().flat_map(|row| -> Box<dyn Iterator<Item = &Field>> {
        match row {
            Row::Field(field) => Box::new(std::iter::once(field)),
            Row::Beside(rows) => fields(rows),
            _ => Box::new(std::iter::empty()),
        }
    }))
}

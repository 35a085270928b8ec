//! What goes on behind the panels: which page is open, the case on it, and the work beside the
//! window. It takes what the user wants and gives what there is to see, and knows no engine.

mod at_place;
mod flow;
mod guide;
mod judge;
mod line;
mod logged;
mod look_back;
mod on_road;
mod open_case;
mod open_debrief;
mod scenarios;
mod seen;
mod settings_file;
mod shelf;
mod sounds;
#[cfg(test)]
pub mod tests;
mod tray;
mod trouble;
mod work;
mod writer;

pub use sounds::Speaker;
pub use work::Wake;

use crate::reasoning::world_store::WorldStore;
#[cfg(test)]
use crate::session::attempt::Session;
use crate::session::course::Course;
use crate::session::kept::{KeptError, KeptSession};
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use crate::wording::catalogue::Words;
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::BayView;
use crate::workshop::view::front::{FrontView, KeptFile};
use crate::workshop::view::road::RoadAction;
use crate::workshop::view::settings::Settings;
use crate::workshop::view::writer::WriterDoorView;
use crate::workshop::view::{Page, WindowView};
use look_back::{Answered, LookBack};
use open_case::OpenCase;
use open_debrief::OpenDebrief;
use scenarios::{ReadFile, Scenarios};
use settings_file::SettingsFile;
use shelf::Opened;
use sounds::Sounded;
use std::path::PathBuf;
use std::sync::Arc;
use trouble::Trouble;
use work::{Became, Work};
use writer::{Drawer, Found, Tried, Writer};

/// What the window needs of its surroundings, which only the command line asks.
#[derive(Clone)]
pub struct Surroundings {
    /// The sentences of the user's language.
    pub words: Arc<Words>,
    /// The folder in which sessions are kept, made if need be, or why there is none. It is asked
    /// each time, because the reason can be gone the next time.
    pub sessions: Arc<dyn Fn() -> Result<PathBuf, String> + Send + Sync>,
    /// Where the expert's worlds are kept.
    pub worlds: WorldStore,
    /// A seed that nobody chose.
    pub any_seed: fn() -> u64,
    /// A scenario file that the user named at the start.
    pub scenario: Option<PathBuf>,
    /// The file in which settings are kept; nothing where the surroundings name no place for it.
    pub settings_file: Option<PathBuf>,
    /// Makes whoever lets sounds be heard, at a volume of 0 to 1; it calls the waker when its state changes.
    pub speaker: Arc<dyn Fn(f32, Wake) -> Box<dyn Speaker> + Send + Sync>,
}

/// Width and height of the picture before anybody has said how much room it has [pixels].
const FIRST_PICTURE: [u32; 2] = [720, 640];

/// The page that is open.
enum Open {
    Front(FrontView),
    Case(Box<OpenCase>),
    Debrief(Box<OpenDebrief>),
    WriterDoor(WriterDoorView),
    Writer(Box<Writer>),
}

/// What comes of work beside the window.
enum Answer {
    Read {
        path: PathBuf,
        read: Result<ReadFile, Trouble>,
    },
    Opened(Result<Box<Opened>, Trouble>),
    Found(Box<Result<Found, String>>),
    Taken {
        kept: Box<KeptSession>,
        error: Option<KeptError>,
        hint: Vec<String>,
        sounded: Option<Sounded>,
        /// It was let be heard while it went on.
        was_heard: bool,
    },
    /// What is to be seen on a drive before it is taken.
    OnRoad {
        kept: Box<KeptSession>,
        step: Step,
        course: Box<Course>,
        sounded: Option<Sounded>,
    },
    Judged(Result<Box<LookBack>, Trouble>),
    LookedBack(Result<Answered, VehicleError>),
}

/// Everything behind the panels.
pub struct Desk {
    around: Arc<Surroundings>,
    /// The language that the surroundings asked for.
    language_around: &'static str,
    wake: Wake,
    settings: Settings,
    settings_file: SettingsFile,
    scenarios: Scenarios,
    /// Where what is being written is kept.
    drawer: Drawer,
    /// The case writer, put aside while its case is tried.
    tried: Option<Tried>,
    speaker: Box<dyn Speaker>,
    /// The bay behind the front page.
    showroom: Option<BayView>,
    picture: [u32; 2],
    open: Open,
    looking: Option<Work<Result<Vec<KeptFile>, Trouble>>>,
    work: Option<Work<Answer>>,
    notice: Option<String>,
    is_leaving: bool,
}

impl Desk {
    /// A desk with the front page on it. `wake` makes the window look again.
    #[must_use]
    pub fn new(mut around: Surroundings, wake: Wake) -> Self {
        let language_around = around.words.language();
        let (settings_file, settings, notice) =
            SettingsFile::open(around.settings_file.clone(), &around.words);
        if let Some(tag) = settings.language {
            around.words = Arc::new(Words::for_language(tag));
        }
        let drawer = Drawer::beside(around.settings_file.as_deref());
        let mut desk = Self {
            drawer,
            tried: None,
            speaker: (around.speaker)(settings.volume.gain(), Arc::clone(&wake)),
            language_around,
            around: Arc::new(around),
            wake,
            settings,
            settings_file,
            scenarios: Scenarios::carried(),
            showroom: at_place::showroom(),
            picture: FIRST_PICTURE,
            open: Open::Front(FrontView::default()),
            looking: None,
            work: None,
            notice: None,
            is_leaving: false,
        };
        desk.lay_front();
        if let Some(path) = desk.around.scenario.clone() {
            desk.read_scenario(path);
        }
        desk.notice = notice;
        desk
    }

    /// The sentences.
    #[must_use]
    pub fn words(&self) -> &Words {
        &self.around.words
    }

    /// What there is to see.
    #[must_use]
    pub fn view(&self) -> WindowView<'_> {
        WindowView {
            page: match &self.open {
                Open::Front(view) => Page::Front(view),
                Open::Case(case) => Page::Case(case.view()),
                Open::Debrief(debrief) => Page::Debrief(debrief.view()),
                Open::WriterDoor(view) => Page::WriterDoor(view),
                Open::Writer(writer) => Page::Writer(writer.view()),
            },
            settings: self.settings,
            busy: self.work.as_ref().map(Work::busy),
            sound: self.speaker.state(),
            notice: self.notice.as_deref(),
            tried: self.tried.as_ref().map(|tried| tried.said.as_str()),
            picture: self.picture,
        }
    }

    /// The bay that is to be drawn: that of the case, else the one behind the front page.
    #[must_use]
    pub fn bay(&self) -> Option<&BayView> {
        match &self.open {
            Open::Case(case) => Some(&case.view().bay),
            Open::Front(_) | Open::WriterDoor(_) => self.showroom.as_ref(),
            Open::Writer(writer) => writer.bay(),
            Open::Debrief(debrief) => debrief.bay(),
        }
    }

    /// The session that is open; nothing while a step is being taken.
    #[cfg(test)]
    pub fn session(&self) -> Option<&Session> {
        match &self.open {
            Open::Case(case) => case.session(),
            _ => None,
        }
    }

    /// Whether work is going on beside the window.
    pub fn is_busy(&self) -> bool {
        let writes = matches!(&self.open, Open::Writer(writer) if writer.is_busy());
        self.work.is_some() || self.looking.is_some() || writes
    }

    /// Whether the user wants to end the program.
    #[must_use]
    pub const fn is_leaving(&self) -> bool {
        self.is_leaving
    }

    /// Does what the user wants. While work goes on, what would begin other work is left alone.
    pub fn act(&mut self, action: Action) {
        let is_working = self.work.is_some();
        match action {
            Action::OpenSettings(open) => self.settings.are_open = open,
            Action::SetText(text) => self.set(Settings { text, ..self.settings }),
            Action::SetShade(shade) => self.set(Settings { shade, ..self.settings }),
            Action::SetContrast(contrast) => self.set(Settings { contrast, ..self.settings }),
            Action::SetMotion(motion) => self.set(Settings { motion, ..self.settings }),
            Action::SetLanguage(tag) => self.speak(tag),
            Action::SetVolume(volume) => self.set(Settings { volume, ..self.settings }),
            Action::HearAgain(number) => self.hear_again(number),
            Action::SizePicture(size) => self.picture = size,
            Action::CloseNotice => self.notice = None,
            Action::Leave => self.is_leaving = true,
            Action::LookAgain => self.look_for_sessions(),
            Action::ChooseScenario(number) => {
                self.scenarios.choose(number);
                self.show_scenarios();
            }
            Action::SetAssessed(is_assessed) => {
                self.scenarios.assess(is_assessed);
                self.show_scenarios();
            }
            Action::TypeScenarioFile(text) => {
                if let Open::Front(view) = &mut self.open {
                    view.file = text;
                }
            }
            Action::ReadScenarioFile if !is_working => self.read_typed_scenario(),
            Action::BeginGuide if !is_working => self.begin_guide(),
            Action::DeclineGuide => self.is_no_longer_new(),
            Action::TypeSeed(text) => {
                if let Open::Front(view) = &mut self.open {
                    view.seed = text;
                    view.seed_problem = None;
                }
            }
            Action::Begin if !is_working => self.begin(),
            Action::Open(path) if !is_working => self.go_on(path),
            // Nobody gets out of a vehicle that drives.
            Action::ToFront if self.is_on_road() => self.act_on_road(RoadAction::PullIn),
            // A step that is being taken is waited for; a debrief can be left.
            Action::ToFront if is_working && matches!(self.open, Open::Case(_)) => {}
            Action::ToFront => {
                let may_leave = match &mut self.open {
                    Open::Writer(writer) => writer.may_leave(),
                    _ => true,
                };
                if may_leave {
                    self.show_front();
                }
            }
            Action::Writer(wanted) => self.act_on_writer(wanted),
            Action::TakeStep if is_working || self.is_on_road() => {}
            Action::Road(wanted) if !is_working => self.act_on_road(wanted),
            Action::Debrief(wanted) => self.act_on_debrief(wanted),
            Action::Bay(wanted) if !matches!(self.open, Open::Case(_)) => match &mut self.open {
                Open::Debrief(debrief) => debrief.look(&wanted),
                Open::Writer(writer) => writer.look(&wanted),
                _ => {}
            },
            other => {
                let words = &self.around.words;
                if let Open::Case(case) = &mut self.open
                    && let Some(step) = case.act(other, words)
                {
                    self.take(step);
                }
            }
        }
    }

    /// Lets time pass for what plays by itself; how long until it needs the next frame [s].
    pub fn pass(&mut self, seconds: f32) -> Option<f32> {
        match &mut self.open {
            Open::Debrief(debrief) => {
                let before = debrief.at();
                let wait = debrief.pass(seconds);
                let at = debrief.at();
                if let Some(at) = at.filter(|_| at != before) {
                    self.hear_again(at + 1);
                }
                wait
            }
            Open::Case(_) => self.drive_on(seconds),
            _ => None,
        }
    }

    /// Shows the window by other settings from now on, and keeps them.
    fn set(&mut self, settings: Settings) {
        self.settings = settings;
        self.speaker.set_gain(settings.volume.gain());
        if let Some(said) = self.settings_file.keep(settings, &self.around.words) {
            self.tell(said);
        }
    }

    /// Speaks another language from now on, on the page that is open as well.
    fn speak(&mut self, tag: &'static str) {
        let language = (tag != self.language_around).then_some(tag);
        let words = Arc::new(Words::for_language(tag));
        self.around = Arc::new(Surroundings { words, ..(*self.around).clone() });
        self.notice = None;
        self.set(Settings { language, ..self.settings });
        self.say_anew();
    }

    /// Shows a notice beside the one that has not been read yet.
    fn tell(&mut self, said: String) {
        self.notice = Some(match self.notice.take() {
            Some(before) if before != said => format!("{before}\n\n{said}"),
            _ => said,
        });
    }

    /// Hears what has come of the work beside the window; whether anything has.
    pub fn listen(&mut self) -> bool {
        let mut has_heard = self.listen_to_writer();
        if let Some(work) = self.looking.take() {
            match work.look() {
                Became::Pending => self.looking = Some(work),
                Became::Done(found) => {
                    has_heard = true;
                    self.show_sessions(found);
                }
                Became::Lost => {
                    has_heard = true;
                    self.show_sessions(Ok(Vec::new()));
                }
            }
        }
        if let Some(work) = self.work.take() {
            match work.look() {
                Became::Pending => self.work = Some(work),
                Became::Done(answer) => {
                    has_heard = true;
                    self.hear(answer);
                }
                Became::Lost => {
                    has_heard = true;
                    self.front_with(self.around.words.say("window-broke-off", &[]));
                }
            }
        }
        has_heard
    }
}

/// A drive that is under way when the window closes ends there: it is in the session like any other.
impl Drop for Desk {
    fn drop(&mut self) {
        if let Open::Case(case) = &mut self.open
            && let Some(road) = case.arrive()
            && let Some(mut kept) = case.hand_out(&self.around.words)
        {
            // Nobody is there any more whom an error could be told.
            let _error = kept.take(&road.step());
        }
    }
}

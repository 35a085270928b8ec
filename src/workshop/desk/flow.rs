//! From page to page: what work is begun, and what comes of it.

use super::look_back;
use super::on_road::OnRoad;
use super::open_case::OpenCase;
use super::open_debrief::{OpenDebrief, Wanted};
use super::scenarios;
use super::shelf::{self, Opened};
use super::sounds::Sounded;
use super::trouble::Trouble;
use super::work::{Stage, Work};
use super::{Answer, Desk, Open, guide, judge};
use crate::session::course::Course;
use crate::session::kept::KeptSession;
use crate::session::step::Step;
use crate::wording::step_words;
use crate::workshop::view::debrief::DebriefAction;
use crate::workshop::view::front::{FrontView, KeptFile};
use crate::workshop::view::road::RoadAction;
use std::path::PathBuf;
use std::sync::Arc;

impl Desk {
    pub(super) fn look_for_sessions(&mut self) {
        let around = Arc::clone(&self.around);
        self.looking = Some(Work::begin(&self.wake, String::new(), move |_| {
            let folder = (around.sessions)().map_err(Trouble::NoFolder)?;
            Ok(shelf::newest(&folder, &around.words))
        }));
    }

    pub(super) fn show_sessions(&mut self, found: Result<Vec<KeptFile>, Trouble>) {
        let kept = found.unwrap_or_else(|trouble| {
            self.tell(trouble.sentence(&self.around.words));
            Vec::new()
        });
        if let Open::Front(view) = &mut self.open {
            view.kept = Some(kept);
        }
    }

    pub(super) fn begin_work(
        &mut self,
        text: String,
        work: impl FnOnce(&Stage) -> Answer + Send + 'static,
    ) {
        self.notice = None;
        self.work = Some(Work::begin(&self.wake, text, work));
    }

    /// Shows on the front page what can be chosen now.
    pub(super) fn show_scenarios(&mut self) {
        if let Open::Front(view) = &mut self.open {
            self.scenarios.show_on(view);
        }
    }

    /// Reads the scenario file that was typed; nothing, where nothing was.
    pub(super) fn read_typed_scenario(&mut self) {
        if let Open::Front(view) = &self.open
            && !view.file.trim().is_empty()
        {
            self.read_scenario(PathBuf::from(view.file.trim()));
        }
    }

    /// Reads a scenario file, to be chosen.
    pub(super) fn read_scenario(&mut self, path: PathBuf) {
        let name = path.display().to_string();
        let text = self.around.words.say("front-reading", &[("file", name.into())]);
        self.begin_work(text, move |_| {
            let read = scenarios::read_file(&path);
            Answer::Read { path, read }
        });
    }

    /// The first start is over: the settings are kept as they are, so that nobody is offered the round again.
    pub(super) fn is_no_longer_new(&mut self) {
        if self.settings_file.is_first_start() {
            self.set(self.settings);
        }
        if let Open::Front(view) = &mut self.open {
            view.is_first_start = false;
        }
    }

    /// Begins the case on which somebody is shown round.
    pub(super) fn begin_guide(&mut self) {
        let Some(source) = self.scenarios.of_guide() else { return };
        let around = Arc::clone(&self.around);
        self.begin_work(self.around.words.say("progress-dealing", &[]), move |_| {
            let opened = shelf::begin(&around, &source, guide::SEED, false);
            let guided = |opened| Box::new(Opened { is_guided: true, ..opened });
            Answer::Opened(opened.map(guided))
        });
    }

    pub(super) fn begin(&mut self) {
        let Some((source, is_assessed)) = self.scenarios.chosen() else { return };
        let Open::Front(view) = &mut self.open else { return };
        let seed = match view.seed.trim() {
            // A sealed case brings its own.
            _ if view.is_sealed() => 0,
            "" => (self.around.any_seed)(),
            text => {
                let Ok(seed) = text.parse() else {
                    view.seed_problem = Some(self.around.words.say("window-no-seed", &[]));
                    return;
                };
                seed
            }
        };
        let around = Arc::clone(&self.around);
        self.begin_work(self.around.words.say("progress-dealing", &[]), move |_| {
            Answer::Opened(shelf::begin(&around, &source, seed, is_assessed).map(Box::new))
        });
    }

    pub(super) fn go_on(&mut self, path: PathBuf) {
        let around = Arc::clone(&self.around);
        self.begin_work(self.around.words.say("window-opening", &[]), move |_| {
            Answer::Opened(shelf::open(&path, &around.words).map(Box::new))
        });
    }

    pub(super) fn take(&mut self, step: Step) {
        let Open::Case(case) = &mut self.open else { return };
        let Some(kept) = case.hand_out(&self.around.words) else { return };
        if matches!(step, Step::Drive { .. }) {
            return self.look_ahead(kept, step);
        }
        self.take_with(kept, step, false);
    }

    /// Works out what is to be seen on a drive. One that is refused is taken at once, and says why.
    fn look_ahead(&mut self, mut kept: KeptSession, step: Step) {
        let text = self.around.words.say("road-setting-off", &[]);
        let around = Arc::clone(&self.around);
        self.begin_work(text, move |_| {
            let session = kept.session();
            if let Ok(Some(course)) = session.course(&step)
                && let Ok(follows) = session.would_follow(std::slice::from_ref(&step))
            {
                let log = [session.log(), &follows].concat();
                let sounded = Sounded::after(&log, session.briefing(), &around.words);
                let (kept, course) = (Box::new(kept), Box::new(course));
                return Answer::OnRoad { kept, step, course, sounded };
            }
            let error = kept.take(&step).err();
            Answer::Taken {
                kept: Box::new(kept),
                error,
                hint: Vec::new(),
                sounded: None,
                was_heard: false,
            }
        });
    }

    /// Takes a step beside the window; what it lets be heard is played, unless it was heard already.
    fn take_with(&mut self, mut kept: KeptSession, step: Step, was_heard: bool) {
        let Open::Case(case) = &self.open else { return };
        let line = step_words::line(&step);
        let text = self.around.words.say("window-taking", &[("step", line.into())]);
        let asked = matches!(step, Step::AskHint { .. }).then(|| case.case().clone());
        let around = Arc::clone(&self.around);
        self.begin_work(text, move |stage| {
            let error = kept.take(&step).err();
            // The step is on the disk already; a hint that cannot be worked out can be asked again.
            let hint = match asked {
                Some(case) if error.is_none() => judge::hint(&case, kept.session(), &around, stage),
                _ => Vec::new(),
            };
            let session = kept.session();
            let sounded = match error {
                None => Sounded::after(session.log(), session.briefing(), &around.words),
                Some(_) => None,
            };
            Answer::Taken { kept: Box::new(kept), error, hint, sounded, was_heard }
        });
    }

    fn set_off(
        &mut self,
        kept: KeptSession,
        step: Step,
        course: &Course,
        sounded: Option<Sounded>,
    ) {
        if let Some(sounded) = sounded {
            self.speaker.play(sounded.passage);
        }
        let Open::Case(case) = &mut self.open else { return };
        case.set_off(kept, OnRoad::set_off(step, course, &self.around.words));
    }

    /// Whether a drive is under way.
    pub(super) const fn is_on_road(&self) -> bool {
        matches!(&self.open, Open::Case(case) if case.view().road.is_some())
    }

    /// Does what is wanted of a drive under way.
    pub(super) fn act_on_road(&mut self, wanted: RoadAction) {
        let Open::Case(case) = &mut self.open else { return };
        let is_over = case.road().is_some_and(|road| road.act(wanted));
        case.follow_road();
        if is_over {
            self.arrive();
        }
    }

    /// Lets time pass on the road; how long until the next frame is due [s].
    pub(super) fn drive_on(&mut self, seconds: f32) -> Option<f32> {
        let Open::Case(case) = &mut self.open else { return None };
        let wait = case.road()?.pass(seconds);
        case.follow_road();
        if wait.is_none() {
            self.arrive();
        }
        wait
    }

    /// Takes the drive that was under way as a step.
    fn arrive(&mut self) {
        let Open::Case(case) = &mut self.open else { return };
        let Some(road) = case.arrive() else { return };
        let Some(kept) = case.hand_out(&self.around.words) else { return };
        self.fall_silent();
        self.take_with(kept, road.step(), true);
    }

    /// After the hand-over: the debrief, or to whom the file of a sealed case goes and by what it is known again.
    fn look_back_on(&mut self, opened: Opened) {
        if !opened.is_sealed {
            return self.judge(opened);
        }
        let said = [
            ("path", opened.kept.path().display().to_string().into()),
            ("receipt", opened.kept.receipt().short().into()),
        ];
        let text = self.around.words.say("bench-stays-sealed", &said);
        self.show_front();
        if let Open::Front(view) = &mut self.open {
            view.handed_over = Some(text);
        }
    }

    fn judge(&mut self, opened: Opened) {
        self.open = Open::Debrief(Box::new(OpenDebrief::begin(
            opened.case.briefing.job.title.clone(),
            opened.kept.path().display().to_string(),
        )));
        let around = Arc::clone(&self.around);
        self.begin_work(self.around.words.say("window-judging", &[]), move |stage| {
            Answer::Judged(judge::judge(opened, &around, stage).map(Box::new))
        });
    }

    /// Does what is wanted of the debrief. What has to be worked out waits for what is under way.
    pub(super) fn act_on_debrief(&mut self, wanted: DebriefAction) {
        let is_working = self.work.is_some();
        let Open::Debrief(debrief) = &mut self.open else { return };
        let Some(wanted) = debrief.act(wanted, is_working, &self.around.words) else { return };
        let Some(known) = debrief.known() else { return };
        let around = Arc::clone(&self.around);
        self.begin_work(self.around.words.say("progress-what-if", &[]), move |_| {
            Answer::LookedBack(match wanted {
                Wanted::Others { at } => look_back::others(&known, at, &around.words),
                Wanted::Another { at, step } => look_back::another(&known, at, step, &around.words),
            })
        });
    }

    /// The front page, or the case writer where its case was tried. Work that goes on for another page is not heard any more; what it writes is
    /// on disk all the same.
    pub(super) fn show_front(&mut self) {
        self.fall_silent();
        self.work = None;
        self.notice = None;
        if !self.come_back_to_writer() {
            self.lay_front();
        }
    }

    /// A front page on which nothing was typed yet.
    pub(super) fn lay_front(&mut self) {
        let is_first_start = self.settings_file.is_first_start();
        self.open = Open::Front(FrontView { is_first_start, ..FrontView::default() });
        self.show_scenarios();
        self.look_for_sessions();
    }

    /// Says what the open page says in the language that is spoken now. What a step that is being taken brings is said
    /// so when it comes; a debrief is worked out again.
    pub(super) fn say_anew(&mut self) {
        let words = Arc::clone(&self.around.words);
        match &mut self.open {
            Open::Front(view) => {
                view.seed_problem = None;
                self.look_for_sessions();
            }
            Open::Case(case) => {
                case.say_anew(&words);
                self.say_tried();
            }
            Open::WriterDoor(_) => self.open_door(),
            Open::Writer(writer) => writer.say_anew(&words),
            Open::Debrief(debrief) => {
                let path = PathBuf::from(&debrief.view().kept_at);
                debrief.forget();
                self.say_tried();
                self.go_on(path);
            }
        }
    }

    pub(super) fn front_with(&mut self, notice: String) {
        if matches!(self.open, Open::Front(_)) {
            // What was typed stays.
            self.look_for_sessions();
        } else if !matches!(self.open, Open::Writer(_)) {
            self.show_front();
        }
        self.tell(notice);
    }

    pub(super) fn hear(&mut self, answer: Answer) {
        match answer {
            Answer::Read { path, read: Ok(read) } => {
                self.scenarios.add(&path, &read);
                if let Open::Front(view) = &mut self.open {
                    view.file = String::new();
                }
                self.show_scenarios();
            }
            Answer::Opened(Ok(opened)) if opened.kept.session().ending().is_some() => {
                self.look_back_on(*opened);
            }
            Answer::Opened(Ok(mut opened)) => {
                self.notice = opened.notice.take();
                self.is_no_longer_new();
                self.come_in(opened.kept.session());
                let case = OpenCase::lay_out(*opened, &self.around.words);
                self.open = Open::Case(Box::new(case));
            }
            Answer::Found(found) => self.try_found(*found),
            Answer::Read { read: Err(trouble), .. }
            | Answer::Opened(Err(trouble))
            | Answer::Judged(Err(trouble)) => {
                self.front_with(trouble.sentence(&self.around.words));
            }
            Answer::Taken { kept, error, hint, sounded, was_heard } => {
                let heard = sounded.and_then(|sounded| {
                    if !was_heard {
                        self.speaker.play(sounded.passage);
                    }
                    sounded.view
                });
                let Open::Case(case) = &mut self.open else { return };
                let words = &self.around.words;
                let has_ended = kept.session().ending().is_some();
                self.notice =
                    error.map(|error| Trouble::of_kept(error, kept.path()).sentence(words));
                case.take_back(*kept, self.notice.is_none(), words);
                case.tell(hint, heard);
                if has_ended {
                    let front = Open::Front(FrontView::default());
                    if let Open::Case(case) = std::mem::replace(&mut self.open, front)
                        && let Some(opened) = case.close()
                    {
                        self.look_back_on(opened);
                    }
                }
            }
            Answer::OnRoad { kept, step, course, sounded } => {
                self.set_off(*kept, step, &course, sounded);
            }
            Answer::Judged(Ok(known)) => {
                if let Open::Debrief(debrief) = &mut self.open {
                    debrief.tell(*known);
                }
            }
            Answer::LookedBack(answered) => {
                let Open::Debrief(debrief) = &mut self.open else { return };
                match answered {
                    Ok(answered) => debrief.hear(answered),
                    Err(error) => {
                        debrief.give_up();
                        self.notice = Some(Trouble::from(error).sentence(&self.around.words));
                    }
                }
            }
        }
    }
}

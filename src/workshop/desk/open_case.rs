//! The case that is being worked.

use super::at_place;
use super::guide;
use super::line::About;
use super::logged::{logged, texts_for_record};
use super::on_road::OnRoad;
use super::shelf::Opened;
use super::sounds;
use super::tray;
use crate::scenario::draw::Case;
use crate::session::attempt::Session;
use crate::session::event::Event;
use crate::session::journal::Mode;
use crate::session::kept::KeptSession;
use crate::session::step::Step;
use crate::vehicle::spec::Id;
use crate::wording::amounts;
use crate::wording::catalogue::Words;
use crate::wording::verbs::{USAGES, VerbGroup};
use crate::wording::{help, job_words, place};
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::{BayAction, BayView};
use crate::workshop::view::case::{
    CaseView, GroupView, HeardView, LineView, LogLine, LoggedStep, Pane, StartView, SuspectView,
    Tone, VehicleView,
};

/// A case with its session and what is shown of them.
pub struct OpenCase {
    case: Case,
    is_sealed: bool,
    /// Away while a step is being taken.
    kept: Option<KeptSession>,
    /// The line of the step that is being taken.
    sent: String,
    texts: Vec<String>,
    /// The page speaks another language than it should, because the session was away.
    is_stale: bool,
    view: CaseView,
    /// The drive under way.
    road: Option<OnRoad>,
}

impl OpenCase {
    /// Lays an opened case out.
    pub fn lay_out(opened: Opened, words: &Words) -> Self {
        let Opened { case, kept, is_sealed, is_guided, sounds, .. } = opened;
        let briefing = &case.briefing;
        let mut sounds = sounds.into_iter();
        let log = kept.session().log().iter().enumerate().map(|(index, entry)| LoggedStep {
            heard: sounds.next().flatten(),
            ..logged(index + 1, entry, briefing, words)
        });
        let texts = texts_for_record(kept.session(), words);
        let about = About { briefing, words, texts: &texts };
        let view = CaseView {
            title: briefing.job.title.clone(),
            is_assessed: briefing.mode == Mode::Assessed,
            sheet: job_words::job_sheet(briefing, words).lines().map(str::to_owned).collect(),
            vehicle: vehicle(kept.session(), words),
            bay: at_place::bay(kept.session(), words),
            road: None,
            tray: tray::tray(kept.session(), words),
            till: till(kept.session(), words),
            suspects: suspects(kept.session(), words),
            notes: notes(kept.session()),
            log: log.collect(),
            line: LineView::empty(about),
            groups: VerbGroup::ALL.map(|group| group_view(group, words)).into(),
            open_group: VerbGroup::Look,
            pane: Pane::default(),
            guide: is_guided.then(|| guide::progress(kept.session().log())),
            kept_at: kept.path().display().to_string(),
        };
        Self {
            case,
            is_sealed,
            kept: Some(kept),
            sent: String::new(),
            texts,
            is_stale: false,
            view,
            road: None,
        }
    }

    /// What is shown.
    pub const fn view(&self) -> &CaseView {
        &self.view
    }

    /// The case.
    pub const fn case(&self) -> &Case {
        &self.case
    }

    /// The session; nothing while a step is being taken.
    pub fn session(&self) -> Option<&Session> {
        self.kept.as_ref().map(KeptSession::session)
    }

    /// Does what the user wants with line and page; a step to be taken is given back.
    pub fn act(&mut self, action: Action, words: &Words) -> Option<Step> {
        let about = About { briefing: &self.case.briefing, words, texts: &self.texts };
        let line = &mut self.view.line;
        match action {
            Action::TypeLine(text) => line.typed(text, about),
            Action::AddWord(word) => line.add_word(&word, about),
            Action::AddDigit(digit) => line.rewrite(format!("{}{digit}", line.text), about),
            Action::AddText(text) => line.rewrite(format!("{}{text}", line.text), about),
            Action::StartLine(start) => line.rewrite(format!("{start} "), about),
            Action::RemoveWord => line.remove_word(about),
            Action::Highlight { forward } => line.mark(forward),
            Action::Complete => line.complete(about),
            Action::TakeStep => return line.step(about),
            Action::CloseGuide => self.view.guide = None,
            Action::ShowGroup(group) => self.view.open_group = group,
            Action::ShowPane(pane) => {
                self.view.pane = pane;
                self.view.tray.is_out |= pane == Pane::Tray;
            }
            Action::Tray(wanted) => {
                let session = self.kept.as_ref().map(KeptSession::session);
                let tray = &mut self.view.tray;
                tray::act(tray, wanted, &self.case.briefing, session, words);
                return None;
            }
            Action::Bay(wanted) => {
                self.view.bay.look(&wanted);
                match wanted {
                    BayAction::Choose(chosen) => self.choose(chosen, words),
                    BayAction::GoTo(id) => self.choose(Some(id), words),
                    _ => {}
                }
                return None;
            }
            _ => return None,
        }
        // The chosen place may go on a line now, or not any more.
        if let Some(card) = &mut self.view.bay.card {
            card.fits_line = at_place::fits(&card.id, &self.view.line);
        }
        None
    }

    /// Shows what is known of a place and what can be done there. While a step is being taken it is shown as it was.
    fn choose(&mut self, chosen: Option<Id>, words: &Words) {
        let Some(kept) = &self.kept else { return };
        let view = &mut self.view;
        view.bay.card =
            chosen.and_then(|id| at_place::card(&id, kept.session(), &view.bay, &view.line, words));
    }

    /// Says everything in the language of these words. What hints told stays as they told it.
    pub fn say_anew(&mut self, words: &Words) {
        let Some(kept) = self.kept.take() else {
            self.is_stale = true;
            return;
        };
        let sounds = sounds::said_anew(kept.session(), &self.view.log, words);
        let is_guided = self.view.guide.is_some();
        let (case, is_sealed) = (self.case.clone(), self.is_sealed);
        let opened = Opened { case, kept, notice: None, is_sealed, is_guided, sounds };
        let fresh = Self::lay_out(opened, words);
        let before = std::mem::replace(self, fresh);
        for (step, old) in self.view.log.iter_mut().zip(before.view.log) {
            let told = old.lines.into_iter().skip(step.lines.len());
            step.lines.extend(told);
        }
        tray::carry_over(&mut self.view.tray, before.view.tray);
        let session = self.kept.as_ref().map(KeptSession::session);
        tray::follow(&mut self.view.tray, &self.case.briefing, session, words);
        let BayView { orbit, viewpoint, glides, card, .. } = before.view.bay;
        let bay = &mut self.view.bay;
        (bay.orbit, bay.viewpoint, bay.glides) = (orbit, viewpoint, glides);
        (self.view.pane, self.view.open_group) = (before.view.pane, before.view.open_group);
        self.sent = before.sent;
        self.rewrite(before.view.line.text, words);
        self.choose(card.map(|card| card.id), words);
    }

    /// Hands the session out, so that a step can be taken beside the window. The line is empty at
    /// once, so that the next one can be written meanwhile.
    pub fn hand_out(&mut self, words: &Words) -> Option<KeptSession> {
        let kept = self.kept.take()?;
        self.sent = std::mem::take(&mut self.view.line.text);
        self.rewrite(String::new(), words);
        Some(kept)
    }

    /// Sets off on a drive, with the session back in its place.
    pub fn set_off(&mut self, kept: KeptSession, road: OnRoad) {
        self.kept = Some(kept);
        self.view.road = Some(road.view().clone());
        self.road = Some(road);
    }

    /// The drive under way.
    pub const fn road(&mut self) -> Option<&mut OnRoad> {
        self.road.as_mut()
    }

    /// Shows how far the drive under way has come.
    pub fn follow_road(&mut self) {
        self.view.road = self.road.as_ref().map(|road| road.view().clone());
    }

    /// Ends the drive under way; it is to be taken as a step now.
    pub fn arrive(&mut self) -> Option<OnRoad> {
        self.view.road = None;
        self.road.take()
    }

    /// Takes the session back. Where the step was not taken, its line stands there again, unless
    /// another was begun.
    pub fn take_back(&mut self, kept: KeptSession, taken: bool, words: &Words) {
        let session = kept.session();
        let briefing = &self.case.briefing;
        for (index, entry) in session.log().iter().enumerate().skip(self.view.log.len()) {
            self.view.log.push(logged(index + 1, entry, briefing, words));
            tray::adopt(&mut self.view.tray, &entry.step);
        }
        self.view.vehicle = vehicle(session, words);
        self.view.till = till(session, words);
        self.view.suspects = suspects(session, words);
        self.view.notes = notes(session);
        if let Some(guide) = &mut self.view.guide {
            *guide = guide::progress(session.log());
        }
        self.texts = texts_for_record(session, words);
        at_place::follow(&mut self.view.bay, session);
        tray::follow(&mut self.view.tray, briefing, Some(session), words);
        self.kept = Some(kept);
        if std::mem::take(&mut self.is_stale) {
            self.say_anew(words);
        }
        let chosen = self.view.bay.card.take().map(|card| card.id);
        self.choose(chosen, words);
        let sent = std::mem::take(&mut self.sent);
        if !taken && self.view.line.text.is_empty() {
            self.rewrite(sent, words);
        }
    }

    /// Adds what a hint told, and what was to be heard, to the step that was taken last.
    pub fn tell(&mut self, hint: Vec<String>, heard: Option<HeardView>) {
        if let Some(last) = self.view.log.last_mut() {
            last.lines.extend(hint.into_iter().map(|text| LogLine { text, tone: Tone::Plain }));
            last.heard = heard;
        }
    }

    fn rewrite(&mut self, text: String, words: &Words) {
        let about = About { briefing: &self.case.briefing, words, texts: &self.texts };
        self.view.line.rewrite(text, about);
    }

    /// The case and its session again, for the debrief.
    pub fn close(self) -> Option<Opened> {
        Some(Opened {
            case: self.case,
            kept: self.kept?,
            notice: None,
            is_sealed: self.is_sealed,
            is_guided: false,
            sounds: Vec::new(),
        })
    }
}

/// What anybody sees of the vehicle of a session.
pub fn vehicle(session: &Session, words: &Words) -> VehicleView {
    let sighted = session.vehicle_in_sight();
    let key = match (sighted.key_on(), sighted.engine_runs()) {
        (_, true) => words.say("window-engine-runs", &[]),
        (true, false) => words.say("window-key-on", &[]),
        (false, false) => words.say("window-key-off", &[]),
    };
    let off: Vec<Id> = session.parts_off().cloned().collect();
    let off = if off.is_empty() {
        words.say("window-nothing-off", &[])
    } else {
        words.say("window-off", &[("parts", place::places(&off, words).into())])
    };
    VehicleView { key, off }
}

/// Time and money of a session so far.
pub fn till(session: &Session, words: &Words) -> String {
    amounts::till(session.till(), session.briefing(), words)
}

fn notes(session: &Session) -> Vec<String> {
    let written = session.log().iter().filter(|entry| entry.events.contains(&Event::Noted));
    written
        .filter_map(|entry| match &entry.step {
            Step::Note { text } => Some(text.clone()),
            _ => None,
        })
        .collect()
}

fn suspects(session: &Session, words: &Words) -> Vec<SuspectView> {
    let one = |(fault, percent): (&crate::faults::FaultName, &u8)| SuspectView {
        name: place::fault(fault, words),
        percent: *percent,
        start: format!("suspect {} {}", fault.kind.word(), fault.place),
    };
    let mut list: Vec<SuspectView> = session.suspects().iter().map(one).collect();
    // The likeliest first; those that are alike stay in the order of their names.
    list.sort_by_key(|suspect| std::cmp::Reverse(suspect.percent));
    list
}

fn group_view(group: VerbGroup, words: &Words) -> GroupView {
    let of_group = USAGES.iter().filter(|usage| usage.group == group);
    let start = |usage: &crate::wording::verbs::Usage| StartView {
        words: usage.start(),
        meaning: words.say(usage.meaning, &[]),
    };
    GroupView { group, name: help::group_name(group, words), starts: of_group.map(start).collect() }
}

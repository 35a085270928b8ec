//! The debrief that is open: which step is looked at, and whether the session plays by itself.

use super::look_back::{Answered, Ground, LookBack, Moment};
use crate::session::step::Step;
use crate::vehicle::spec::Id;
use crate::wording::catalogue::Words;
use crate::wording::step_parser::parse;
use crate::workshop::view::bay::{BayAction, BayView};
use crate::workshop::view::debrief::{
    DebriefAction, DebriefView, Direction, LookBackView, Others, Replay, Side,
};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A debrief with what is shown of it.
pub struct OpenDebrief {
    view: DebriefView,
    ground: Option<Arc<Ground>>,
    moments: Vec<Moment>,
    /// What was worked out for steps, by their places.
    others: BTreeMap<usize, Others>,
    /// How long the step that is shown has been shown [s].
    since: f32,
}

/// What has to be worked out beside the window.
pub enum Wanted {
    /// What else could have been done.
    Others {
        /// Place of the step, from 0.
        at: usize,
    },
    /// What one step would have brought.
    Another {
        /// Place of the step in whose place it would have come, from 0.
        at: usize,
        /// The step.
        step: Step,
    },
}

impl OpenDebrief {
    /// A debrief that is being worked out.
    pub const fn begin(title: String, kept_at: String) -> Self {
        Self {
            view: DebriefView { title, parts: None, kept_at, side: Side::Marks, look_back: None },
            ground: None,
            moments: Vec::new(),
            others: BTreeMap::new(),
            since: 0.0,
        }
    }

    /// Everything will be worked out again.
    pub fn forget(&mut self) {
        let DebriefView { title, kept_at, side, .. } = &self.view;
        let (side, begun) = (*side, Self::begin(title.clone(), kept_at.clone()));
        *self = begun;
        self.view.side = side;
    }

    /// What is shown.
    pub const fn view(&self) -> &DebriefView {
        &self.view
    }

    /// The bay, while it is shown.
    pub fn bay(&self) -> Option<&BayView> {
        let shows = self.view.side == Side::Steps;
        self.view.look_back.as_ref().filter(|_| shows).map(|view| &view.bay)
    }

    /// The step that is looked at, from 0.
    pub fn at(&self) -> Option<usize> {
        self.view.look_back.as_ref().map(|view| view.at)
    }

    /// What other steps are tried on, once it is there.
    pub fn known(&self) -> Option<Arc<Ground>> {
        self.ground.clone()
    }

    /// Takes over what was worked out.
    pub fn tell(&mut self, known: LookBack) {
        let LookBack { parts, log, regrets, course, moments, bay, ground } = known;
        self.view.parts = Some(parts);
        self.ground = Some(ground);
        // A session that was handed over has its handing over at least.
        let Some(last) = moments.last() else { return };
        let (vehicle, till) = (last.vehicle.clone(), last.till.clone());
        self.view.look_back = Some(LookBackView {
            at: 0,
            log,
            regrets,
            course,
            bay,
            vehicle,
            till,
            replay: Replay::default(),
            others: Others::NotAsked,
            asked: String::new(),
            asked_problem: None,
            answer: Vec::new(),
        });
        self.moments = moments;
        self.go_to(0);
    }

    /// Does what is wanted; what has to be worked out is given back, unless other work goes on.
    pub fn act(
        &mut self,
        wanted: DebriefAction,
        is_working: bool,
        words: &Words,
    ) -> Option<Wanted> {
        if let DebriefAction::Show(side) = wanted {
            self.view.side = side;
            if let (Side::Marks, Some(view)) = (side, &mut self.view.look_back) {
                view.replay.runs = None;
            }
            return None;
        }
        let view = self.view.look_back.as_mut()?;
        let at = view.at;
        match wanted {
            DebriefAction::GoTo(at) => {
                view.replay.runs = None;
                self.go_to(at);
            }
            DebriefAction::Run(runs) => {
                view.replay.runs = runs;
                self.since = 0.0;
                // From the end it begins anew.
                match runs {
                    Some(Direction::Forwards) if at + 1 >= self.moments.len() => self.go_to(0),
                    Some(Direction::Back) if at == 0 => self.go_to(usize::MAX),
                    _ => {}
                }
            }
            DebriefAction::SetPace(pace) => view.replay.pace = pace,
            DebriefAction::TypeAsked(text) => {
                view.asked = text;
                view.asked_problem = None;
            }
            DebriefAction::AskOthers if !is_working => {
                view.replay.runs = None;
                view.others = Others::UnderWay;
                return Some(Wanted::Others { at });
            }
            DebriefAction::Ask if !is_working => {
                view.replay.runs = None;
                let briefing = &self.ground.as_ref()?.case.briefing;
                match parse(&view.asked, briefing) {
                    Ok(Some(step)) => return Some(Wanted::Another { at, step }),
                    Ok(None) => {}
                    Err(problem) => view.asked_problem = Some(problem.sentence(words)),
                }
            }
            DebriefAction::Show(_) | DebriefAction::AskOthers | DebriefAction::Ask => {}
        }
        None
    }

    /// Hears what was worked out.
    pub fn hear(&mut self, answered: Answered) {
        let Some(view) = &mut self.view.look_back else { return };
        match answered {
            Answered::Others { at, rows, left_out } => {
                let known = Others::Known { rows, left_out };
                if view.at == at {
                    view.others = known.clone();
                }
                self.others.insert(at, known);
            }
            Answered::Another { at, lines } => {
                if view.at == at {
                    view.answer = lines;
                }
            }
        }
    }

    /// What was being worked out will not come.
    pub fn give_up(&mut self) {
        if let Some(view) = &mut self.view.look_back
            && view.others == Others::UnderWay
        {
            view.others = Others::NotAsked;
        }
    }

    /// Moves the camera.
    pub fn look(&mut self, wanted: &BayAction) {
        if let Some(view) = &mut self.view.look_back {
            view.bay.look(wanted);
        }
    }

    /// Lets time pass [s]; how long until the next step is shown [s], while the session plays.
    pub fn pass(&mut self, seconds: f32) -> Option<f32> {
        let view = self.view.look_back.as_ref()?;
        let (at, Replay { runs, pace }) = (view.at, view.replay);
        let runs = runs?;
        self.since += seconds;
        if self.since >= pace.seconds() {
            self.since = 0.0;
            self.go_to(match runs {
                Direction::Forwards => at + 1,
                Direction::Back => at.saturating_sub(1),
            });
            let view = self.view.look_back.as_mut()?;
            let is_over = match runs {
                Direction::Forwards => view.at + 1 >= self.moments.len(),
                Direction::Back => view.at == 0,
            };
            if is_over {
                view.replay.runs = None;
                return None;
            }
        }
        Some((pace.seconds() - self.since).max(0.0))
    }

    /// Shows a step, or the last one: the bay as it was then, seen from where the step was done.
    fn go_to(&mut self, at: usize) {
        let Some(view) = &mut self.view.look_back else { return };
        let at = at.min(self.moments.len().saturating_sub(1));
        let Some(moment) = self.moments.get(at) else { return };
        if at != view.at {
            view.answer.clear();
        }
        view.at = at;
        view.bay.known = moment.known.clone();
        for place in &mut view.bay.places {
            place.is_off = moment.known.off.contains(&place.id);
        }
        view.vehicle = moment.vehicle.clone();
        view.till.clone_from(&moment.till);
        view.others = match self.others.get(&at) {
            Some(known) => known.clone(),
            None => Others::NotAsked,
        };
        let step = view.log.get(at).map_or("", |logged| logged.step.as_str());
        let place = step.split_whitespace().map(Id::from).find(|id| view.bay.place(id).is_some());
        if let Some(place) = place {
            view.bay.look(&BayAction::GoTo(place));
        }
    }
}

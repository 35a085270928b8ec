//! A job from the sheet to the key: finding is a policy's own, the rest is everybody's.

use super::habits;
use super::seen::{Seen, VirtualApprentice};
use crate::faults::FaultName;
use crate::reasoning::consent::Consent;
use crate::reasoning::remedy::Remedy;
use crate::session::attempt::Entry;
use crate::session::event::{Event, Refusal};
use crate::session::step::{Ending, Step};
use crate::vehicle::error::VehicleError;
use std::collections::{BTreeSet, VecDeque};

/// Repairs after which somebody else is asked. No workshop's customer pays for more guesses.
const MOST_REPAIRS: usize = 6;

/// What a policy wants next while it looks for the fault.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Decision {
    /// Take these steps; none means that nothing is left to try.
    Do(Vec<Step>),
    /// This is it: commit and repair.
    Repair {
        /// The diagnosis.
        diagnosis: FaultName,
        /// Confidences to put on the list before it [%].
        confidences: Vec<(FaultName, u8)>,
        /// The repair.
        remedy: Remedy,
    },
    /// There is nothing wrong with this vehicle.
    NothingWrong,
    /// Somebody else should look at it.
    GiveUp,
}

/// How a policy finds a fault.
pub(super) trait Finder {
    /// The steps with which it takes a job in.
    fn intake(&self) -> Vec<Step>;

    /// What it wants next. Asked again when the steps that it wanted are done, and after a repair
    /// that did not help.
    fn decide(&mut self, seen: Seen<'_>) -> Result<Decision, VehicleError>;
}

/// Where a job stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stage {
    New,
    Finding,
    Asking,
    ClosingUp,
    KeyOnCheck,
    RoadTest,
    OutOfTime,
}

/// Whether the last step came after the end of the time that the case allows.
fn was_stopped(log: &[Entry]) -> bool {
    let time_is_up = Event::Refused { reason: Refusal::TimeIsUp };
    log.last().is_some_and(|entry| entry.events.contains(&time_is_up))
}

/// A job that a policy works on.
pub(super) struct Job<F> {
    finder: F,
    stage: Stage,
    queue: VecDeque<Step>,
    repairs: usize,
    diagnosis: Option<FaultName>,
    /// The repair that the customer is asked for.
    wanted: Option<Remedy>,
    listed: BTreeSet<FaultName>,
    found_nothing: bool,
}

impl<F: Finder> Job<F> {
    pub(super) const fn new(finder: F) -> Self {
        Self {
            finder,
            stage: Stage::New,
            queue: VecDeque::new(),
            repairs: 0,
            diagnosis: None,
            wanted: None,
            listed: BTreeSet::new(),
            found_nothing: false,
        }
    }

    fn look_for_it(&mut self, seen: Seen<'_>) -> Result<(), VehicleError> {
        match self.finder.decide(seen)? {
            Decision::Do(steps) if !steps.is_empty() => self.queue.extend(steps),
            Decision::Repair { diagnosis, confidences, remedy } if self.repairs < MOST_REPAIRS => {
                self.note(confidences);
                self.queue.push_back(Step::Commit { fault: Some(diagnosis.clone()) });
                self.queue.push_back(Step::AskApproval);
                self.diagnosis = Some(diagnosis);
                self.wanted = Some(remedy);
                self.stage = Stage::Asking;
            }
            // Whoever has repaired, or has found nothing once before, and still sees the fault, is at an end.
            Decision::NothingWrong if self.repairs == 0 && !self.found_nothing => {
                self.found_nothing = true;
                self.note(Vec::new());
                self.queue.push_back(Step::Commit { fault: None });
                self.diagnosis = None;
                self.stage = Stage::ClosingUp;
            }
            _ => {
                self.queue.extend(habits::close_up(seen));
                self.finish(seen, Ending::Referred);
            }
        }
        Ok(())
    }

    /// Repairs what the customer has approved. Whoever is given a limit and would need more asks once more, does what lies
    /// within it where that mends the same, and else hands the vehicle back with what was declined.
    fn act_on_the_answer(&mut self, seen: Seen<'_>) {
        let consent = Consent::of(seen.log, seen.briefing);
        let others = self.diagnosis.iter().flat_map(Remedy::of);
        let allowed = self
            .wanted
            .clone()
            .into_iter()
            .chain(others)
            .find(|remedy| consent.covers(remedy, seen.briefing));
        if let Some(remedy) = allowed {
            self.queue.extend(remedy.steps(seen.briefing, seen.sighted));
            self.repairs += 1;
            self.stage = Stage::ClosingUp;
        } else if matches!(consent, Consent::UpTo { is_final: true, .. }) {
            self.queue.extend(habits::close_up(seen));
            self.finish(seen, Ending::Declined);
        } else {
            self.queue.push_back(Step::AskApproval);
        }
    }

    /// Confidences on the list: those that no longer hold go first, so that the sum never passes
    /// a hundred.
    fn note(&mut self, confidences: Vec<(FaultName, u8)>) {
        for fault in core::mem::take(&mut self.listed) {
            self.queue.push_back(Step::Suspect { fault, percent: 0 });
        }
        for (fault, percent) in confidences {
            self.listed.insert(fault.clone());
            self.queue.push_back(Step::Suspect { fault, percent });
        }
    }

    fn finish(&mut self, seen: Seen<'_>, ending: Ending) {
        self.queue.extend(habits::hand_over(seen, self.diagnosis.as_ref(), ending));
    }
}

impl<F: Finder> VirtualApprentice for Job<F> {
    fn next(&mut self, seen: Seen<'_>) -> Result<Step, VehicleError> {
        if self.stage != Stage::OutOfTime && was_stopped(seen.log) {
            self.stage = Stage::OutOfTime;
            self.queue.clear();
            self.queue.extend(habits::close_up(seen));
            self.finish(seen, Ending::Referred);
        }
        loop {
            if let Some(step) = self.queue.pop_front() {
                return Ok(step);
            }
            match self.stage {
                Stage::New => {
                    self.queue.extend(self.finder.intake());
                    self.stage = Stage::Finding;
                }
                Stage::Finding => self.look_for_it(seen)?,
                // The vehicle is handed back and nothing more is asked for.
                Stage::OutOfTime => self.finish(seen, Ending::Referred),
                Stage::Asking => self.act_on_the_answer(seen),
                Stage::ClosingUp => {
                    self.queue.extend(habits::close_up(seen));
                    self.queue.extend(habits::key_on_check());
                    self.stage = Stage::KeyOnCheck;
                }
                Stage::KeyOnCheck if habits::codes_are_back(seen) => self.stage = Stage::Finding,
                Stage::KeyOnCheck => {
                    self.queue.extend(habits::road_test(seen.briefing));
                    self.stage = Stage::RoadTest;
                }
                Stage::RoadTest
                    if habits::codes_are_back(seen) || !habits::drove_well(seen.log) =>
                {
                    self.stage = Stage::Finding;
                }
                Stage::RoadTest => {
                    let repaired = self.diagnosis.is_some() || self.repairs > 0;
                    let ending = if repaired { Ending::Repaired } else { Ending::NoFaultFound };
                    self.finish(seen, ending);
                }
            }
        }
    }
}

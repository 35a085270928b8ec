//! What else could have been done at a moment, and what it was worth before anybody knew.

use super::expert::Proposal;
use super::foresight::{Foresight, foresee, imagine};
use super::onlooker::Onlooker;
use super::plan::budget::{Bounds, Enough};
use super::probe::{Probe, steps_to};
use super::review::Regret;
use super::way::way_to;
use crate::session::attempt::Session;
use crate::session::event::Refusal;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use thiserror::Error;

/// How well each row of a list of all tests is known: roughly, so that the list is there in seconds.
const ROUGHLY: Enough = Enough { relative: 0.02, absolute: 1.0, situations: 100_000, work: 8_000 };

/// Why nothing can be said of a step.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum NoWay {
    /// The step cannot be taken at that moment.
    #[error("imagining a step: it is refused, {refusal:?}")]
    Refused {
        /// The step.
        step: Box<Step>,
        /// Why.
        refusal: Refusal,
    },
    /// A world could not be simulated.
    #[error("imagining a step: a vehicle could not be simulated")]
    Vehicle(#[from] VehicleError),
}

/// Something that could be done, with what leads there.
#[derive(Debug, Clone, PartialEq)]
pub struct Alternative {
    /// Everything that would be done, in order; the last shows something.
    pub steps: Vec<Step>,
    /// Whether the same was seen already on the vehicle as it is: then it would tell nothing new.
    pub is_repeat: bool,
    /// What it would tell and cost.
    pub foresight: Foresight,
    /// Expected cost of the whole rest of the job when this comes first; `None` where the vehicle is too
    /// large for the planner.
    pub total: Option<Bounds>,
    /// What that is above the best.
    pub regret: Option<Regret>,
}

/// A first step with what it is worth.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranked {
    /// Which.
    pub proposal: Proposal,
    /// The steps that lead there, and the step itself.
    pub steps: Vec<Step>,
    /// What a test would tell and cost; `None` for a repair.
    pub foresight: Option<Foresight>,
    /// Expected cost of the whole rest of the job when this comes first.
    pub total: Bounds,
    /// What that is above the best.
    pub regret: Regret,
}

/// Where things stand, and everything that could come next.
#[derive(Debug, Clone, PartialEq)]
pub struct Choices {
    /// Expected cost of the rest of the job.
    pub value: Bounds,
    /// What the expert would do.
    pub best: Proposal,
    /// Tests that were not made yet and repairs, by the expected cost of the whole rest, cheapest first.
    pub ranked: Vec<Ranked>,
    /// Tests that were made on the vehicle as it is and would show the same again.
    pub made: usize,
}

impl Onlooker {
    /// What steps would have told and cost at this moment. What is in the way of one is taken off first;
    /// where a step is a test of the expert, what that needs is done first as well.
    ///
    /// # Errors
    /// [`NoWay`] when a step cannot be taken.
    pub fn what_if(&mut self, wanted: &[Step]) -> Result<Alternative, NoWay> {
        let value = self.value()?.cost;
        let steps = self.all_steps(wanted)?;
        let imagined = imagine(&self.belief, &steps)?;
        let is_repeat = match (wanted, steps.last()) {
            ([_], Some(last)) if steps.len() == 1 => {
                self.test_of(last).is_some_and(|test| self.expert.has_made(test))
            }
            _ => false,
        };
        let mut foresight = imagined.foresight;
        if is_repeat {
            foresight.bits = 0.0;
        }
        let told = (!is_repeat).then_some(&imagined.foretold[..]);
        let total = imagined.likeliest.and_then(|after| {
            self.expert.weigh_shown(&after, self.belief.known_codes(), foresight.cost, told)
        });
        let regret = total.map(|total| Regret::between(total, value));
        Ok(Alternative { steps, is_repeat, foresight, total, regret })
    }

    /// Every test and repair that could come next.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    pub fn choices(&mut self) -> Result<Choices, VehicleError> {
        let valuation = self.value()?;
        let value = valuation.cost;
        let mut ranked = Vec::new();
        let mut made = 0;
        for number in 0..self.expert.probes().len() {
            if self.expert.has_made(number) {
                made += 1;
                continue;
            }
            let Some(total) = self.expert.weigh_test(number, &ROUGHLY) else { continue };
            let probe = self.expert.probes()[number].clone();
            let steps = self.steps_of(&probe);
            let foresight = Some(foresee(&self.belief, &steps)?);
            let regret = Regret::between(total, value);
            ranked.push(Ranked {
                proposal: Proposal::Test(probe),
                steps,
                foresight,
                total,
                regret,
            });
        }
        for remedy in self.expert.repairs() {
            let Some(total) = self.expert.weigh_repair(&remedy) else { continue };
            let steps = self.likeliest().map_or_else(Vec::new, |session| {
                remedy.steps(self.briefing(), session.vehicle_in_sight())
            });
            let regret = Regret::between(total, value);
            let proposal = Proposal::Repair(remedy);
            ranked.push(Ranked { proposal, steps, foresight: None, total, regret });
        }
        ranked.sort_by(|a, b| {
            let by_upper = a.total.upper.total_cmp(&b.total.upper);
            by_upper.then(a.total.lower.total_cmp(&b.total.lower))
        });
        Ok(Choices { value, best: valuation.proposal, ranked, made })
    }

    /// The steps to a test and the test itself, up to the step that shows something.
    pub(super) fn steps_of(&self, probe: &Probe) -> Vec<Step> {
        let mut steps = self.likeliest().map_or_else(Vec::new, |session| {
            steps_to(&probe.need, &self.briefing().vehicle, session.vehicle_in_sight())
        });
        steps.extend_from_slice(&probe.steps[..=probe.shows]);
        steps
    }

    /// A session that looks as the vehicle does: what is off and the key are the same in every world.
    pub(super) fn likeliest(&self) -> Option<&Session> {
        self.belief.leading(1).first().map(|(world, _)| self.belief.session(*world))
    }

    /// Steps with what leads to each of them.
    fn all_steps(&self, wanted: &[Step]) -> Result<Vec<Step>, NoWay> {
        let Some(likeliest) = self.likeliest() else { return Ok(wanted.to_vec()) };
        let mut there = likeliest.fork();
        let mut all = Vec::new();
        for step in wanted {
            let way = self.shortest_way(&there, step)?;
            for step in way.into_iter().chain([step.clone()]) {
                there.take_unlogged(&step)?;
                all.push(step);
            }
        }
        Ok(all)
    }

    /// The shortest way to a step: by the needs of the tests that it may be part of, or else by what it is
    /// refused for.
    fn shortest_way(&self, there: &Session, step: &Step) -> Result<Vec<Step>, NoWay> {
        let sighted = there.vehicle_in_sight();
        let of_test = self
            .expert
            .probes()
            .iter()
            .filter(|probe| probe.showing() == step && probe.shows == 0)
            .map(|probe| steps_to(&probe.need, &self.briefing().vehicle, sighted))
            .min_by_key(Vec::len);
        let mut way = of_test.unwrap_or_default();
        let mut after = there.fork();
        for step in &way {
            after.take_unlogged(step)?;
        }
        let rest = way_to(&after, step)?
            .map_err(|refusal| NoWay::Refused { step: Box::new(step.clone()), refusal })?;
        way.extend(rest);
        Ok(way)
    }
}

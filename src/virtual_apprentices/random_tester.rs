//! The random tester: tests at random, and after a random number of them a guess.
//!
//! Every test that the vehicle's data allow is as likely as any other, whatever it costs to get there;
//! so is every fault that the vehicle can have. It stands for the bottom of the scale: whoever does
//! no better has not used the evidence.

use super::habits;
use super::job::{Decision, Finder};
use super::seen::Seen;
use crate::faults::{FaultName, places};
use crate::numerics::streams::Stream;
use crate::numerics::whole::to_usize;
use crate::reasoning::probe::{Need, Probe, probes};
use crate::reasoning::remedy::Remedy;
use crate::session::setup::Briefing;
use crate::session::step::{CustomerTopic, ENGINE_BAY, KeyPosition, Step};
use crate::vehicle::error::VehicleError;
use crate::vehicle::spec::Id;

/// Tests before the first guess, and before each guess after a repair that did not help.
const FIRST_TESTS: (f64, f64) = (3.0, 13.0);
const MORE_TESTS: (f64, f64) = (1.0, 5.0);
/// Wrong guesses after which it gives up.
const MOST_GUESSES: u32 = 3;

pub(super) struct RandomTester {
    stream: Stream,
    tests: Vec<Probe>,
    faults: Vec<FaultName>,
    left_before_guess: usize,
    guesses: u32,
}

impl RandomTester {
    pub(super) fn new(mut stream: Stream, briefing: &Briefing) -> Self {
        let left_before_guess = to_usize(stream.between(FIRST_TESTS.0, FIRST_TESTS.1));
        let mut tests = probes(&briefing.vehicle, &briefing.tools);
        tests.extend(cheap_questions());
        let faults = places(&briefing.vehicle);
        Self { stream, tests, faults, left_before_guess, guesses: 0 }
    }

    fn any<'a, T>(stream: &mut Stream, things: &'a [T]) -> Option<&'a T> {
        things.get(to_usize(stream.between(0.0, things.len() as f64)))
    }

    fn guess(&mut self) -> Decision {
        if self.guesses == MOST_GUESSES {
            return Decision::GiveUp;
        }
        self.guesses += 1;
        self.left_before_guess = to_usize(self.stream.between(MORE_TESTS.0, MORE_TESTS.1));
        let fault = Self::any(&mut self.stream, &self.faults).cloned();
        let sure = self.stream.between(0.0, 100.0).round();
        let remedies = fault.as_ref().map_or_else(Vec::new, Remedy::of);
        match (fault, Self::any(&mut self.stream, &remedies)) {
            (Some(fault), Some(remedy)) => Decision::Repair {
                confidences: vec![(fault.clone(), u8::try_from(to_usize(sure)).unwrap_or(100))],
                diagnosis: fault,
                remedy: remedy.clone(),
            },
            _ => Decision::GiveUp,
        }
    }
}

/// What anyone can ask, look at or read besides the measuring tests.
fn cheap_questions() -> Vec<Probe> {
    let key_on = Need { key: Some(KeyPosition::On), ..Need::default() };
    let free = |step| Probe { need: Need::default(), steps: vec![step], shows: 0 };
    let reader = |step| Probe { need: key_on.clone(), steps: vec![step], shows: 0 };
    vec![
        free(Step::AskCustomer { topic: CustomerTopic::Symptom }),
        free(Step::AskCustomer { topic: CustomerTopic::Service }),
        free(Step::Look { place: Id::from(ENGINE_BAY) }),
        reader(Step::ReadFreezeFrame),
        reader(Step::ReadLiveData),
    ]
}

impl Finder for RandomTester {
    fn intake(&self) -> Vec<Step> {
        vec![Step::ReadJobSheet]
    }

    fn decide(&mut self, seen: Seen<'_>) -> Result<Decision, VehicleError> {
        if self.left_before_guess == 0 {
            return Ok(self.guess());
        }
        self.left_before_guess -= 1;
        let Some(test) = Self::any(&mut self.stream, &self.tests) else {
            return Ok(self.guess());
        };
        let mut steps = habits::way_to(&test.need, &seen.briefing.vehicle, seen.sighted);
        steps.extend(test.steps.iter().cloned());
        Ok(Decision::Do(steps))
    }
}

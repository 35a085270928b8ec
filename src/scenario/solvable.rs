//! Whether a drawn case can be given to an apprentice: it has a complaint, and every rival fault
//! can be told from it by affordable tests, on simulated readings with tolerance.

use super::draw::Acceptance;
use super::load::Loaded;
use super::suppose::suppositions;
use crate::faults::FaultName;
use crate::reasoning::separation::{Separation, separations};
use crate::reasoning::world::{Hypothesis, Supposition, World};
use crate::session::attempt::Session;
use crate::session::setup::{Briefing, Hidden};
use crate::vehicle::error::VehicleError;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Judges drawn cases of one scenario. Rivals are simulated once and kept.
pub struct Solvability {
    briefing: Arc<Briefing>,
    suppositions: Vec<Supposition>,
    /// Rivals whose module remembers nothing, by the number of their supposition.
    rivals: RefCell<BTreeMap<usize, World>>,
    /// Rivals that have met the concern on the road.
    begun: RefCell<BTreeMap<usize, Session>>,
}

impl Solvability {
    /// A judge for a scenario.
    #[must_use]
    pub fn of(loaded: &Loaded) -> Self {
        Self {
            briefing: Arc::new(loaded.briefing()),
            suppositions: suppositions(loaded),
            rivals: RefCell::new(BTreeMap::new()),
            begun: RefCell::new(BTreeMap::new()),
        }
    }

    /// Judges a case. A case that cannot be simulated is refused as not separable.
    #[must_use]
    pub fn judge(&self, _: &Briefing, hidden: &Hidden) -> Acceptance {
        self.try_judge(hidden).unwrap_or(Acceptance::NotSeparable)
    }

    fn try_judge(&self, hidden: &Hidden) -> Result<Acceptance, VehicleError> {
        let faults: Hypothesis = hidden.faults.iter().map(|fault| fault.name.clone()).collect();
        let session = Session::begin(Arc::clone(&self.briefing), hidden.clone())?;
        // The story of a sound vehicle is what the customer believes to have noticed.
        if !faults.is_empty() && !session.has_complaint() {
            return Ok(Acceptance::WithoutComplaint);
        }
        let found = self.separations_from(&faults, &session)?;
        let separable = found.iter().all(Separation::is_enough);
        Ok(if separable { Acceptance::Accepted } else { Acceptance::NotSeparable })
    }

    /// How each rival of some faults is told from a session in which they are the truth.
    ///
    /// # Errors
    /// [`VehicleError`] when a rival cannot be simulated.
    pub fn separations_from(
        &self,
        faults: &[FaultName],
        session: &Session,
    ) -> Result<Vec<Separation>, VehicleError> {
        let mut rivals = self.rivals.borrow_mut();
        for (number, supposition) in self.suppositions.iter().enumerate() {
            // Odd but harmless variants are told apart by what is printed on the part.
            if supposition.variant == 0 && supposition.weight > 0.0 && !rivals.contains_key(&number)
            {
                let hidden = supposition.hidden.clone();
                rivals.insert(
                    number,
                    World {
                        faults: supposition.faults.clone(),
                        left: supposition.faults.clone(),
                        variant: supposition.variant,
                        session: Session::begin_without_history(
                            Arc::clone(&self.briefing),
                            hidden,
                        )?,
                    },
                );
            }
        }
        let others = rivals
            .iter()
            .filter(|(_, world)| world.faults != faults)
            .map(|(number, world)| (*number, world));
        let mut begun = self.begun.borrow_mut();
        let mut history = |number: usize| -> Result<Session, VehicleError> {
            if let Some(session) = begun.get(&number) {
                return Ok(Session::clone(session));
            }
            let hidden = self.suppositions[number].hidden.clone();
            let session = Session::begin(Arc::clone(&self.briefing), hidden)?;
            begun.insert(number, session.clone());
            Ok(session)
        };
        separations(&self.briefing, faults, session, others, &mut history)
    }
}

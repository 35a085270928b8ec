//! Fuses that carry too much.

use super::error::VehicleError;
use super::harness::{OPEN_OHMS, wire_up};
use super::spec::{HarnessElement, Id};
use super::whole::Vehicle;

/// Share of its rating from which a blade fuse is open before anybody has looked at it. ISO 8820-3
/// lets one carry 110 % for 100 hours and asks it to open at 135 % within ten minutes (from memory).
const OPENS_FROM_SHARE: f64 = 1.35;

impl Vehicle {
    /// Lets every fuse that carries too much open, one after the other: the next may be spared once
    /// the first has gone. Returns those that opened.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn blow_fuses(&mut self) -> Result<Vec<Id>, VehicleError> {
        let mut blown = Vec::new();
        while let Some(fuse) = self.most_overloaded_fuse()? {
            self.condition.extra_ohms.insert(fuse.clone(), OPEN_OHMS);
            blown.push(fuse);
        }
        Ok(blown)
    }

    fn most_overloaded_fuse(&self) -> Result<Option<Id>, VehicleError> {
        let standing = self.as_it_stands();
        let state = self.electrical_state(self.engine_runs());
        let wiring = wire_up(&self.spec, &standing, self.assembly(), &state)?;
        let solution = wiring.network.solve()?;
        let mut worst: Option<(f64, &Id)> = None;
        for element in &self.spec.harness.elements {
            if let HarnessElement::Fuse { id, rating, .. } = element
                && let Some(number) = wiring.element(id.as_str())
            {
                let share = solution.amperes(number).abs() / rating;
                if share >= OPENS_FROM_SHARE && worst.is_none_or(|(most, _)| share > most) {
                    worst = Some((share, id));
                }
            }
        }
        Ok(worst.map(|(_, id)| id.clone()))
    }
}

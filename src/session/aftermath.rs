//! What comes after the vehicle was handed back.

use super::attempt::Session;
use crate::vehicle::error::VehicleError;
use crate::vehicle::run_record::Idling;
use serde::{Deserialize, Serialize};

/// What the customer meets on the same road as before.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Aftermath {
    /// The engine lamp is on, or comes on within two drives.
    pub lamp: bool,
    /// The engine runs badly.
    pub runs_badly: bool,
}

impl Aftermath {
    /// Whether the customer comes back.
    #[must_use]
    pub const fn comes_back(self) -> bool {
        self.lamp || self.runs_badly
    }
}

impl Session {
    /// Lets the customer drive the road of the concern twice more. Part of the debrief: it looks
    /// at the hidden state and must not be asked before the vehicle is handed back.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn aftermath(&self) -> Result<Aftermath, VehicleError> {
        let mut vehicle = self.vehicle.clone();
        let mut after = Aftermath { lamp: false, runs_badly: false };
        if let Some(route) = self.briefing.routes.get(&self.briefing.customers_route) {
            for _ in 0..2 {
                let idle = vehicle.start()?;
                let drive = vehicle.drive(&route.profile)?;
                after.lamp = vehicle.lamps().0;
                after.runs_badly |= idle != Idling::Smooth || drive.quality != Idling::Smooth;
                vehicle.key_off();
                vehicle.stand_overnight()?;
            }
        }
        Ok(after)
    }
}

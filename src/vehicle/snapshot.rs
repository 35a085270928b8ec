//! What the module's live data say at one moment.

use super::spec::Id;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::units::{Celsius, KilometresPerHour, Rpm, Volts};

/// Live data.
#[derive(Debug, Clone, PartialEq)]
pub struct Snapshot {
    /// Engine speed [rpm].
    pub rpm: f64,
    /// Load, 0 to 1.
    pub load: f64,
    /// Road speed [km/h].
    pub speed_kmh: f64,
    /// Coolant [°C].
    pub coolant_c: f64,
    /// Oil [°C].
    pub oil_c: f64,
    /// Supply at the module [V].
    pub supply_v: f64,
    /// Camshafts in the order of the valves.
    pub cams: Vec<CamSnapshot>,
}

impl Snapshot {
    /// The same values as the module keeps them in a freeze frame.
    #[must_use]
    pub fn as_frame(&self, battery: Volts) -> FreezeFrame {
        FreezeFrame {
            engine_speed: Rpm(self.rpm),
            load: self.load,
            coolant: Celsius(self.coolant_c),
            oil: Celsius(self.oil_c),
            vehicle_speed: KilometresPerHour(self.speed_kmh),
            supply: Volts(self.supply_v),
            battery,
        }
    }
}

/// One camshaft in live data.
#[derive(Debug, Clone, PartialEq)]
pub struct CamSnapshot {
    /// Its valve.
    pub valve: Id,
    /// Wanted angle away from rest [crank degrees].
    pub wanted: f64,
    /// Measured angle away from rest [crank degrees].
    pub actual: f64,
    /// Duty, 0 to 1.
    pub duty: f64,
}

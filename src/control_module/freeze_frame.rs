//! What the module knew at one moment.

use crate::numerics::digest::DigestBuilder;
use crate::units::{Celsius, KilometresPerHour, Rpm, Volts};
use serde::{Deserialize, Serialize};

/// The values that the module keeps with the first code that fails (SAE J1979 service $02), and
/// by which it follows warm-ups in between.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FreezeFrame {
    /// Engine speed \[rpm\], 0 or more.
    pub engine_speed: Rpm,
    /// Calculated load, 0 to 1.
    pub load: f64,
    /// Coolant temperature \[°C\], -40 to 215 as service $01 can say it.
    pub coolant: Celsius,
    /// Oil temperature \[°C\], -40 to 215.
    pub oil: Celsius,
    /// Speed of the vehicle \[km/h\], 0 to 255.
    pub vehicle_speed: KilometresPerHour,
    /// Supply at the module \[V\].
    pub supply: Volts,
    /// Voltage at the battery as the module is told it \[V\].
    pub battery: Volts,
}

impl FreezeFrame {
    /// Adds the values to a fingerprint in declared order.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        for value in [
            self.engine_speed.0,
            self.load,
            self.coolant.0,
            self.oil.0,
            self.vehicle_speed.0,
            self.supply.0,
            self.battery.0,
        ] {
            digest.number(value);
        }
    }
}

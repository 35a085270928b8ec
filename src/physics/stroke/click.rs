//! What an impact of the spool sounds like.

use crate::numerics::elementary::log10;
use crate::units::{Joules, Seconds};
use serde::{Deserialize, Serialize};

/// Impact energy from which a click is clear [J]. Engineering estimate, set after the energies of
/// healthy and failing valves were known, so it proves nothing about them.
pub const CLEAR: Joules = Joules(0.25e-3);

/// Impact energy from which a click is dull rather than not heard at all [J]; as for [`CLEAR`].
pub const DULL: Joules = Joules(0.03e-3);

/// Share of the impact energy that leaves as sound (engineering estimate).
const RADIATED_SHARE: f64 = 1e-5;
/// Time in which it leaves [s] (engineering estimate).
const RADIATED_IN_S: f64 = 10e-3;
/// Distance of the ear [m].
const EAR_M: f64 = 0.5;
/// Reference intensity of the decibel in air [W/m^2]; ISO 1683, from memory.
const THRESHOLD_W_PER_M2: f64 = 1e-12;

/// How a click is heard by someone who listens for it beside the valve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Click {
    /// Nothing is heard.
    None,
    /// A dull knock.
    Dull,
    /// A clear click.
    Clear,
}

/// The spool against one of its stops.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Impact {
    /// When, counted from switch-on for the far stop and from switch-off for the return [s].
    pub at: Seconds,
    /// Speed on arrival [m/s], above 0.
    pub speed_m_per_s: f64,
    /// Energy of motion on arrival [J]; the stop takes all of it.
    pub energy: Joules,
}

impl Impact {
    /// How it is heard.
    #[must_use]
    pub fn click(&self) -> Click {
        if self.energy.0 >= CLEAR.0 {
            Click::Clear
        } else if self.energy.0 >= DULL.0 {
            Click::Dull
        } else {
            Click::None
        }
    }

    /// Sound pressure level half a metre away [dB re 20 uPa]: a hundred-thousandth of the energy, over
    /// 10 ms, into a half space.
    #[must_use]
    pub fn level_db(&self) -> f64 {
        let watts = self.energy.0 * RADIATED_SHARE / RADIATED_IN_S;
        let area_m2 = 2.0 * core::f64::consts::PI * EAR_M * EAR_M;
        10.0 * log10(watts / area_m2 / THRESHOLD_W_PER_M2)
    }
}

impl Click {
    /// How an impact is heard, where there was one.
    #[must_use]
    pub fn of(impact: Option<&Impact>) -> Self {
        impact.map_or(Self::None, Impact::click)
    }
}

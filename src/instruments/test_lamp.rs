//! A test lamp: a small filament lamp with a clip and a tip.
//!
//! It is a load of some tenths of an ampere, and that is its use: a feed that shows full voltage to
//! a meter of ten megohms and has no copper left to carry a current leaves it dark. It is no
//! instrument for a control module's pins.

use crate::physics::circuit::{CircuitError, Element, FilamentLaw};
use crate::vehicle::harness::Wiring;
use serde::{Deserialize, Serialize};

/// Lamp of 12 V and 4 W: engineering estimate of a common small bulb; the heat of the filament is
/// that of a vacuum lamp.
pub const BULB: FilamentLaw = FilamentLaw { rated_v: 12.0, rated_w: 4.0, rated_k: 2_400.0 };
/// Share of the rated power below which no glow is seen by daylight, and from which the lamp looks
/// as bright as on a battery: engineering estimate.
const GLOWS_FROM_SHARE: f64 = 0.06;
const BRIGHT_FROM_SHARE: f64 = 0.6;
/// Lead and clip [ohm]: engineering estimate.
const LEAD_OHMS: f64 = 0.05;

/// How a lamp looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Glow {
    /// No light.
    Dark,
    /// Less than on a battery.
    Dim,
    /// As on a battery.
    Bright,
}

impl Glow {
    /// How a power [W] looks.
    #[must_use]
    pub fn of_watts(watts: f64) -> Self {
        if watts < GLOWS_FROM_SHARE * BULB.rated_w {
            Self::Dark
        } else if watts < BRIGHT_FROM_SHARE * BULB.rated_w {
            Self::Dim
        } else {
            Self::Bright
        }
    }
}

/// What the lamp takes between two points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lit {
    /// Mean power [W].
    pub watts: f64,
    /// Mean current [A].
    pub amperes: f64,
}

impl Lit {
    /// How it looks.
    #[must_use]
    pub fn glow(&self) -> Glow {
        Glow::of_watts(self.watts)
    }
}

/// Puts the lamp between two points. `phases` are the states through which the wiring passes, with
/// the share of time of each: they are far faster than the filament, whose light is their mean.
///
/// # Errors
/// [`CircuitError`] when the network has no solution.
pub fn light(phases: &[(f64, Wiring)], tip: &str, clip: &str) -> Result<Lit, CircuitError> {
    let mut lit = Lit { watts: 0.0, amperes: 0.0 };
    for (share, wiring) in phases {
        let (Some(tip), Some(clip)) = (wiring.node(tip), wiring.node(clip)) else {
            continue;
        };
        let mut network = wiring.network.clone();
        let bulb = network.add_node();
        network.add(Element::Resistor { a: tip, b: bulb, ohms: LEAD_OHMS });
        let filament = network.add(Element::Filament { a: bulb, b: clip, law: BULB });
        let solution = network.solve()?;
        let amperes = solution.amperes(filament);
        lit.watts += share * amperes * solution.volts_between(bulb, clip);
        lit.amperes += share * amperes;
    }
    Ok(lit)
}

#[cfg(test)]
mod tests;

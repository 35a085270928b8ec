//! A hand-held digital multimeter.
//!
//! On volts it is ten megohms between its leads (the least that service information asks for),
//! on ohms a current source with a limited voltage, on amperes a shunt behind a fuse. The display
//! shows 6,000 counts and changes its range by itself.

use crate::physics::circuit::{CircuitError, OhmSource, Seen};
use crate::vehicle::harness::Wiring;
use serde::{Deserialize, Serialize};

/// Input resistance on volts [ohm].
const VOLTS_INPUT_OHMS: f64 = 10e6;
/// Both leads together [ohm]: common practice 0.1 to 0.4, no source.
pub const LEADS_OHMS: f64 = 0.2;
/// Shunt, fuse and socket on amperes [ohm]: engineering estimate.
const SHUNT_OHMS: f64 = 0.04;
/// Rating of the fuse behind the amperes socket [A].
const AMPS_FUSE_A: f64 = 11.0;
/// Open-circuit voltage and internal resistance on ohms: engineering estimate. The resistance is
/// low enough for the whole test current of the lowest range up to its full scale (1.9 kohm would
/// just do); a meter with more would read 599 ohm as 576.
const OHMS_COMPLIANCE_V: f64 = 2.5;
const OHMS_INTERNAL: f64 = 1_500.0;
/// Ranges on ohms: full scale [ohm] and test current [A]: engineering estimate.
const OHMS_RANGES: [(f64, f64); 5] =
    [(600.0, 1e-3), (6e3, 100e-6), (60e3, 10e-6), (600e3, 1e-6), (6e6, 0.1e-6)];
/// Full scales on volts [V] and amperes [A].
const VOLTS_RANGES: [f64; 4] = [0.6, 6.0, 60.0, 600.0];
const AMPS_RANGES: [f64; 2] = [6.0, 10.0];
/// What the meter is set to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum MeterFunction {
    /// Direct voltage, mean value.
    Volts,
    /// Resistance.
    Ohms,
    /// Direct current through the meter.
    Amps,
}

/// One meter with the errors it was born with.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Multimeter {
    /// Shown volts over true volts, near 1.
    pub volts_gain: f64,
    /// Shown ohms over true ohms, near 1.
    pub ohms_gain: f64,
    /// Shown amperes over true amperes, near 1.
    pub amps_gain: f64,
    /// Resistance that is subtracted on ohms [ohm]: that of the leads once they were zeroed.
    pub zeroed_ohms: f64,
    /// Whether the fuse behind the amperes socket is still whole.
    pub fuse_whole: bool,
}

/// What the display shows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Display {
    /// Digits.
    Value {
        /// The value shown, rounded as shown, in volts, ohms or amperes.
        value: f64,
        /// Digits behind the point in the unit shown.
        decimals: u8,
        /// Prefix of the unit shown.
        prefix: Prefix,
    },
    /// Beyond the largest range.
    OverLimit,
}

/// A unit's prefix.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Prefix {
    /// Thousandth.
    Milli,
    /// None.
    One,
    /// Thousand.
    Kilo,
    /// Million.
    Mega,
}

impl Prefix {
    /// What one unit with this prefix is worth.
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Milli => 1e-3,
            Self::One => 1.0,
            Self::Kilo => 1e3,
            Self::Mega => 1e6,
        }
    }
}

/// A reading with what happened to the meter while it was taken.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct MeterReading {
    /// The display.
    pub display: Display,
    /// Half the width within which the true value lies by the meter's data sheet: a share of the
    /// reading and some counts, in volts, ohms or amperes; zero for over limit.
    pub tolerance: f64,
    /// Voltage that stood between the leads before the meter touched, on ohms and amperes [V].
    pub standing_volts: f64,
    /// The fuse behind the amperes socket blew.
    pub fuse_blew: bool,
}

/// What the meter's converter sees before the display rounds it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sensed {
    /// The quantity measured; `None` beyond the largest range.
    pub on_scale: Option<OnScale>,
    /// Voltage that stood between the leads before the meter touched [V].
    pub standing_volts: f64,
    /// The fuse behind the amperes socket blew.
    pub fuse_blew: bool,
}

/// A quantity within a range of the meter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnScale {
    /// The value with the meter's own errors, in volts, ohms or amperes.
    pub value: f64,
    /// Largest value of the range that was chosen, in the same unit.
    pub full_scale: f64,
}

/// Accuracy of a common hand-held meter as share of the reading and counts of the last digit;
/// typical values from memory.
#[must_use]
pub const fn accuracy(function: MeterFunction) -> (f64, f64) {
    match function {
        MeterFunction::Volts => (0.005, 3.0),
        MeterFunction::Ohms => (0.009, 2.0),
        MeterFunction::Amps => (0.012, 3.0),
    }
}

impl Multimeter {
    /// A meter without errors, leads not zeroed.
    #[must_use]
    pub const fn ideal() -> Self {
        Self { volts_gain: 1.0, ohms_gain: 1.0, amps_gain: 1.0, zeroed_ohms: 0.0, fuse_whole: true }
    }

    /// Reads with the red lead on one node and the black on another. `phases` are the states
    /// through which the wiring passes in one period of a switched driver, with the share of time
    /// of each; the display shows the mean.
    ///
    /// # Errors
    /// [`CircuitError`] when the network has no solution.
    pub fn read(
        &mut self,
        function: MeterFunction,
        phases: &[(f64, Wiring)],
        red: &str,
        black: &str,
    ) -> Result<MeterReading, CircuitError> {
        let sensed = self.sense(function, phases, red, black)?;
        let display = sensed
            .on_scale
            .map_or(Display::OverLimit, |quantity| rounded(quantity.value, quantity.full_scale));
        Ok(MeterReading {
            display,
            tolerance: display.tolerance(function),
            standing_volts: sensed.standing_volts,
            fuse_blew: sensed.fuse_blew,
        })
    }

    /// What [`Self::read`] rounds for the display.
    ///
    /// # Errors
    /// [`CircuitError`] when the network has no solution.
    pub fn sense(
        &mut self,
        function: MeterFunction,
        phases: &[(f64, Wiring)],
        red: &str,
        black: &str,
    ) -> Result<Sensed, CircuitError> {
        let seen = phases
            .iter()
            .map(|(share, wiring)| Ok((*share, seen_between(wiring, red, black)?)))
            .collect::<Result<Vec<_>, CircuitError>>()?;
        let mut standing_volts = 0.0;
        for (share, seen) in &seen {
            if let Some(seen) = seen {
                standing_volts += share * seen.with_resistor(VOLTS_INPUT_OHMS)?.0;
            }
        }
        let mut fuse_blew = false;
        let on_scale = match function {
            MeterFunction::Volts => autorange(standing_volts * self.volts_gain, &VOLTS_RANGES),
            MeterFunction::Ohms => self.sense_ohms(&seen)?,
            MeterFunction::Amps => {
                let mut amperes = 0.0;
                if self.fuse_whole {
                    for (share, seen) in &seen {
                        if let Some(seen) = seen {
                            amperes += share * seen.with_resistor(SHUNT_OHMS + LEADS_OHMS)?.1;
                        }
                    }
                }
                if amperes.abs() > AMPS_FUSE_A {
                    self.fuse_whole = false;
                    fuse_blew = true;
                    amperes = 0.0;
                }
                autorange(amperes * self.amps_gain, &AMPS_RANGES)
            }
        };
        Ok(Sensed { on_scale, standing_volts, fuse_blew })
    }

    fn sense_ohms(&self, seen: &[(f64, Option<Seen>)]) -> Result<Option<OnScale>, CircuitError> {
        for (full_scale, range_a) in OHMS_RANGES {
            let mut volts = 0.0;
            for (share, seen) in seen {
                volts += share * with_ohm_source(seen.as_ref(), range_a)?;
            }
            let value = (volts / range_a) * self.ohms_gain - self.zeroed_ohms;
            if value.abs() <= full_scale {
                return Ok(Some(OnScale { value, full_scale }));
            }
        }
        Ok(None)
    }
}

/// The wiring as the two leads see it; `None` with a lead in the air.
fn seen_between(wiring: &Wiring, red: &str, black: &str) -> Result<Option<Seen>, CircuitError> {
    match (wiring.node(red), wiring.node(black)) {
        (Some(red), Some(black)) => wiring.network.seen_between(red, black).map(Some),
        _ => Ok(None),
    }
}

/// Voltage at the meter's sockets [V] while its source drives a range's current [A].
fn with_ohm_source(seen: Option<&Seen>, range_a: f64) -> Result<f64, CircuitError> {
    let Some(seen) = seen else {
        // A lead in the air: nothing takes the current.
        return Ok(OHMS_COMPLIANCE_V);
    };
    // The leads are in series with the source: seen from their tips they add to its resistance.
    let source = OhmSource {
        range_a,
        compliance_v: OHMS_COMPLIANCE_V,
        internal_ohms: OHMS_INTERNAL + LEADS_OHMS,
    };
    let (volts, amperes) = seen.with_ohm_source(source)?;
    Ok(volts + amperes * LEADS_OHMS)
}

/// Chooses the smallest range that holds the value.
fn autorange(value: f64, ranges: &[f64]) -> Option<OnScale> {
    ranges
        .iter()
        .find(|full_scale| value.abs() <= **full_scale)
        .map(|full_scale| OnScale { value, full_scale: *full_scale })
}

/// Rounds to the counts of a range.
fn rounded(value: f64, full_scale: f64) -> Display {
    let prefix = if full_scale < 1.0 {
        Prefix::Milli
    } else if full_scale < 1e3 {
        Prefix::One
    } else if full_scale < 1e6 {
        Prefix::Kilo
    } else {
        Prefix::Mega
    };
    let shown_full = full_scale / prefix.factor();
    let (decimals, counts_in_one) = if shown_full <= 6.0 {
        (3, 1e3)
    } else if shown_full <= 60.0 {
        (2, 1e2)
    } else {
        (1, 1e1)
    };
    let counts = (value / prefix.factor() * counts_in_one).round();
    // Whole counts divided by a power of ten give the number that the digits say, to its last
    // bit. Adding zero turns a negative zero into a plain one, which is what a display shows.
    let value = match prefix {
        Prefix::Milli => counts / (counts_in_one * 1e3),
        Prefix::One => counts / counts_in_one,
        Prefix::Kilo | Prefix::Mega => counts * prefix.factor() / counts_in_one,
    };
    Display::Value { value: value + 0.0, decimals, prefix }
}

impl Display {
    /// Half the width within which the true value lies, by the data sheet.
    #[must_use]
    pub fn tolerance(&self, function: MeterFunction) -> f64 {
        match *self {
            Self::OverLimit => 0.0,
            Self::Value { value, decimals, prefix } => {
                let (share, counts) = accuracy(function);
                share * value.abs() + counts * Self::count(decimals, prefix)
            }
        }
    }

    fn count(decimals: u8, prefix: Prefix) -> f64 {
        let digit = match decimals {
            0 => 1.0,
            1 => 0.1,
            2 => 0.01,
            _ => 0.001,
        };
        digit * prefix.factor()
    }

    /// The digits as shown, without the unit.
    #[must_use]
    pub fn digits(&self) -> String {
        match *self {
            Self::OverLimit => "OL".to_owned(),
            Self::Value { value, decimals, prefix } => {
                format!("{:.*}", usize::from(decimals), value / prefix.factor())
            }
        }
    }
}

#[cfg(test)]
mod tests;

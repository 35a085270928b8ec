//! When two values agree, and what to say about many.

use super::case::Case;
use super::reading::{Answer, Probe, Reading};
use super::wiring::Wiring;
use faultwright::instruments::multimeter::{Display, MeterFunction};

/// Whether two values differ by no more than a share of the second or a least amount; over limit
/// agrees with nothing but itself.
pub fn close(ours: f64, theirs: f64, share: f64, least: f64) -> bool {
    if ours.is_infinite() || theirs.is_infinite() {
        return ours.to_bits() == theirs.to_bits();
    }
    (ours - theirs).abs() <= (share * theirs.abs()).max(least)
}

/// The program against the simulator: ten times finer than the ten-thousandth that a reading may
/// be off, for anything larger than the least.
pub const SHARE: f64 = 1e-5;
/// Least difference that counts, where a value is nothing but leakage past open contacts: a
/// hundredth of the meter's finest count in volts and ohms, far less in amperes, whose milliamperes
/// matter. Both solvers carry sixteen digits, and such a value is what is left of them.
const fn least(probe: Probe) -> f64 {
    match probe {
        Probe::Meter(MeterFunction::Volts) | Probe::BareVolts | Probe::Clamp => 1e-6,
        Probe::Meter(MeterFunction::Ohms) => 1e-3,
        Probe::Meter(MeterFunction::Amps) | Probe::CoilAmps => 1e-8,
        Probe::Lamp => 1e-7,
    }
}

/// Collects comparisons and fails at the end with all that disagree.
#[derive(Default)]
pub struct Agreement {
    compared: usize,
    worst_share: f64,
    worst: String,
    disagreed: Vec<String>,
}

impl Agreement {
    /// Compares every reading in every case.
    pub fn of(
        wiring: Wiring,
        cases: &[Case],
        readings: &[Reading],
        simulated: &[Vec<f64>],
    ) -> Self {
        let mut agreement = Self::default();
        for (reading, values) in readings.iter().zip(simulated) {
            for (case, value) in cases.iter().zip(values) {
                agreement.compare(&case.name, reading, reading.taken(wiring, case), *value);
            }
        }
        agreement
    }

    /// Compares one reading, the value before rounding and the display with its counts.
    pub fn compare(&mut self, case: &str, reading: &Reading, ours: Answer, theirs: f64) {
        let what = format!("{} / {case}", reading.name);
        let least = least(reading.probe);
        self.compared += 1;
        if theirs.is_finite() && theirs.abs() > least / SHARE {
            let share = ((ours.value - theirs) / theirs).abs();
            if share > self.worst_share {
                self.worst_share = share;
                self.worst.clone_from(&what);
            }
        }
        if !close(ours.value, theirs, SHARE, least) {
            self.disagreed.push(format!("{what}: ours {}, simulator {theirs}", ours.value));
        }
        if let Some(display) = ours.display
            && !shows(display, theirs)
        {
            self.disagreed.push(format!("{what}: display {display:?}, simulator {theirs}"));
        }
    }

    /// Values compared, the greatest relative difference among them, and how many disagreed.
    pub const fn figures(&self) -> (usize, f64, usize) {
        (self.compared, self.worst_share, self.disagreed.len())
    }

    /// # Panics
    /// When something disagreed, or when less than `least` was compared.
    pub fn settle(self, test: &str, least: usize) {
        assert!(self.compared >= least, "{test}: only {} comparisons", self.compared);
        assert!(
            self.disagreed.is_empty(),
            "{test}: {} of {} disagree\n{}",
            self.disagreed.len(),
            self.compared,
            self.disagreed.join("\n")
        );
        super::simulator::tell(&format!(
            "{test}: {} readings agree, largest difference {:.1e} of the value ({})",
            self.compared, self.worst_share, self.worst
        ));
    }
}

/// Whether a display shows a value: within half a count, and a little for the last bits of both.
pub fn shows(display: Display, value: f64) -> bool {
    match display {
        Display::OverLimit => value.is_infinite(),
        Display::Value { value: shown, decimals, prefix } => {
            let count = prefix.factor() / 10_f64.powi(i32::from(decimals));
            (shown - value).abs() <= 0.5 * count + SHARE * value.abs() + 1e-9
        }
    }
}

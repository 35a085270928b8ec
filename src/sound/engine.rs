//! The engine, as heard beside the open bonnet.
//!
//! Model: each cylinder that fires lets its charge into the exhaust, a flow that rises and falls within the time for which
//! the valve is open; what leaves the silencer's mouth radiates with the change of that flow, above a corner with the flow
//! itself. On top comes the engine's own noise, a burst with each fire. A charge goes with manifold pressure, and so with
//! load. Fires of an uneven idle differ in strength, and the speed wanders with them.
//! Limits: evenly spaced fires; no intake, no fan, no belt. Figures are engineering estimates.

use super::DT_S;
use super::loudness::rms_of;
use crate::numerics::elementary::{cos, exp, sqrt};
use crate::numerics::streams::{Stream, Streams};
use crate::units::Rpm;
use core::f64::consts::TAU;

/// Speed and load of the idle to which the levels belong [rpm], 0 to 1.
pub const IDLE: (f64, f64) = (700.0, 0.2);
/// Level of the exhaust at that idle, a metre away [dB re 20 uPa].
const EXHAUST_DB: f64 = 62.0;
/// Level of the engine's own noise then.
const NOISE_DB: f64 = 52.0;
/// Turn of the crankshaft in which the flow into the exhaust peaks [degrees]: a valve is open for some four times that.
pub const PEAK_DEG: f64 = 60.0;
/// Corner below which the silencer's mouth radiates with the change of flow [Hz].
pub const CORNER_HZ: f64 = 60.0;
/// Frequencies of the noise [Hz].
const NOISE_HZ: [f64; 2] = [1_150.0, 2_600.0];
/// Width of each as a share of its frequency.
const NOISE_WIDTH: f64 = 0.25;
/// Time in which a burst of noise falls to 37 % [s].
const BURST_S: f64 = 4e-3;
/// Scatter of the strength of fires: a good idle, and a rough one; ten in a hundred is a usual limit of what drivers
/// bear (common practice, no source).
const SCATTER: (f64, f64) = (0.03, 0.22);
/// Wandering of the speed as a standard deviation [rpm]: the rough one is twice what people call rough.
const WANDER_RPM: (f64, f64) = (2.0, 16.0);
/// How much of its wandering a fire passes on to the next.
const WANDER_STAYS: f64 = 0.9;
/// What a charge that does not burn is worth of one that does.
const UNFIRED: f64 = 0.3;
/// Time in which the sound comes up [s].
const ATTACK_S: f64 = 5e-3;
/// Speed below which the crankshaft stands [rpm].
const STANDS_RPM: f64 = 20.0;

/// How the engine turns at a moment; between two of these everything changes in a straight line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// Since the run began [s], rising.
    pub at_s: f64,
    /// Speed [rpm].
    pub rpm: f64,
    /// Load, 0 to 1.
    pub load: f64,
}

/// A run of the engine. After its last moment it goes on like that for ever, unless it stands then.
#[derive(Debug, Clone, PartialEq)]
pub struct EngineRun {
    /// Cylinders, 1 or more.
    pub cylinders: u8,
    /// How it turns.
    pub moments: Vec<Moment>,
    /// Whether it fires unevenly.
    pub is_rough: bool,
    /// Whether it fires at all.
    pub is_fired: bool,
}

impl EngineRun {
    /// When it stands at last [s]; `None` for one that goes on.
    #[must_use]
    pub fn ends_s(&self) -> Option<f64> {
        let last = self.moments.last()?;
        (last.rpm <= STANDS_RPM).then_some(last.at_s)
    }
}

/// Fires a second of a four-stroke engine.
#[must_use]
pub fn fires_hz(speed: Rpm, cylinders: u8) -> f64 {
    speed.0 / 60.0 * f64::from(cylinders) / 2.0
}

/// Turn from fire to fire [degrees].
fn interval_deg(cylinders: u8) -> f64 {
    720.0 / f64::from(cylinders.max(1))
}

/// Amplitude of the flow's harmonic `number`, for fires of strength one.
fn flow_harmonic(number: u32, cylinders: u8) -> f64 {
    let peaks = PEAK_DEG / interval_deg(cylinders);
    let turned = TAU * peaks * f64::from(number);
    2.0 * peaks / (1.0 + turned * turned)
}

/// Amplitude of the exhaust's harmonic `number` (1 is the fires themselves) at the idle speed times `strength`, in samples.
#[must_use]
pub fn exhaust_harmonic(number: u32, speed: Rpm, cylinders: u8, strength: f64) -> f64 {
    let hz = fires_hz(speed, cylinders) * f64::from(number);
    let radiated = hz / sqrt(hz * hz + CORNER_HZ * CORNER_HZ);
    strength * flow_harmonic(number, cylinders) * radiated
}

/// Strength of a fire at a speed and load against that at [`IDLE`]: the charge by manifold pressure, as the crankshaft's own
/// model has it, times the speed at which it is let go.
#[must_use]
pub fn strength(speed: Rpm, load: f64) -> f64 {
    let manifold = |load: f64| 0.25 + 0.7 * load.clamp(0.0, 1.0);
    speed.0 / IDLE.0 * manifold(load) / manifold(IDLE.1)
}

/// Size of a fire at idle, so that the exhaust has its level.
fn fire_at_idle(cylinders: u8) -> f64 {
    let power: f64 = (1..=40)
        .map(|number| {
            let amplitude = exhaust_harmonic(number, Rpm(IDLE.0), cylinders, 1.0);
            0.5 * amplitude * amplitude
        })
        .sum();
    rms_of(EXHAUST_DB) / sqrt(power)
}

/// A narrow band of noise.
#[derive(Debug, Clone, Copy)]
struct Band {
    by_last: f64,
    by_one_before: f64,
    last: f64,
    one_before: f64,
    gain: f64,
}

impl Band {
    /// A band around `hz` that turns noise of variance 1/3 into a root mean square of one.
    fn around(hz: f64) -> Self {
        let shrink = exp(-0.5 * TAU * hz * NOISE_WIDTH * DT_S);
        let (one, two) = (2.0 * shrink * cos(TAU * hz * DT_S), shrink * shrink);
        // Variance of a second-order filter fed with white noise.
        let variance = (1.0 + two) / ((1.0 - two) * ((1.0 + two) * (1.0 + two) - one * one));
        let gain = 1.0 / sqrt(variance / 3.0);
        Self { by_last: one, by_one_before: two, last: 0.0, one_before: 0.0, gain }
    }

    fn step(&mut self, noise: f64) -> f64 {
        let out =
            self.gain * noise + self.by_last * self.last - self.by_one_before * self.one_before;
        self.one_before = self.last;
        self.last = out;
        out
    }
}

/// An engine that sounds.
#[derive(Debug, Clone)]
pub struct EngineVoice {
    run: EngineRun,
    ends_s: Option<f64>,
    segment: usize,
    samples: u64,
    /// Way from one fire to the next, 0 to 1.
    phase: f64,
    wander_rpm: f64,
    /// The flow, and what is still to flow.
    flow: f64,
    held: f64,
    flow_before: f64,
    exhaust: f64,
    burst: f64,
    bands: [Band; NOISE_HZ.len()],
    scatter: Stream,
    hiss: Stream,
    fire: f64,
    noise: f64,
}

impl EngineVoice {
    /// An engine at the beginning of a run; the same run sounds the same.
    #[must_use]
    pub fn new(run: &EngineRun) -> Self {
        let streams = Streams::new(0);
        // A burst of noise and its pause, as the mean square over an interval at idle.
        let interval_s = 1.0 / fires_hz(Rpm(IDLE.0), run.cylinders.max(1));
        let filled = BURST_S / (2.0 * interval_s) * (1.0 - exp(-2.0 * interval_s / BURST_S));
        let bands = NOISE_HZ.len() as f64;
        Self {
            ends_s: run.ends_s(),
            segment: 0,
            samples: 0,
            phase: 0.0,
            wander_rpm: 0.0,
            flow: 0.0,
            held: 0.0,
            flow_before: 0.0,
            exhaust: 0.0,
            burst: 0.0,
            bands: NOISE_HZ.map(Band::around),
            scatter: streams.stream("fires that are heard"),
            hiss: streams.stream("noise of an engine that is heard"),
            fire: fire_at_idle(run.cylinders.max(1)),
            noise: rms_of(NOISE_DB) / sqrt(filled * bands),
            run: run.clone(),
        }
    }

    /// Speed and load at a time.
    fn turns(&mut self, time_s: f64) -> (f64, f64) {
        let moments = &self.run.moments;
        while moments.get(self.segment + 1).is_some_and(|next| next.at_s <= time_s) {
            self.segment += 1;
        }
        let Some(from) = moments.get(self.segment) else { return (0.0, 0.0) };
        match moments.get(self.segment + 1) {
            Some(to) if time_s > from.at_s => {
                let share = (time_s - from.at_s) / (to.at_s - from.at_s);
                let between = |a: f64, b: f64| a + (b - a) * share;
                (between(from.rpm, to.rpm), between(from.load, to.load))
            }
            _ => (from.rpm, from.load),
        }
    }

    /// Lets the flow go on for a part of a turn, in times of its peak.
    fn flow_on(&mut self, peaks: f64) {
        let left = exp(-peaks);
        self.flow = (self.flow + peaks * self.held) * left;
        self.held *= left;
    }

    fn fire(&mut self, rpm: f64, load: f64) {
        let pick = |(even, rough): (f64, f64)| if self.run.is_rough { rough } else { even };
        let (scatter, wander) = (pick(SCATTER), pick(WANDER_RPM));
        let fired = if self.run.is_fired { 1.0 } else { UNFIRED };
        let uneven = (1.0 + scatter * self.scatter.normal()).max(0.0);
        let strong = strength(Rpm(rpm), load) * fired * uneven;
        self.held += self.fire * strong;
        self.burst += self.noise * strong;
        let fresh = sqrt(1.0 - WANDER_STAYS * WANDER_STAYS);
        self.wander_rpm = WANDER_STAYS * self.wander_rpm + fresh * wander * self.scatter.normal();
    }
}

impl Iterator for EngineVoice {
    type Item = f64;

    fn next(&mut self) -> Option<f64> {
        let time_s = self.samples as f64 * DT_S;
        if self.run.moments.is_empty() || self.ends_s.is_some_and(|ends_s| time_s >= ends_s) {
            return None;
        }
        self.samples += 1;
        let (asked_rpm, load) = self.turns(time_s);
        // What wanders at a standstill would turn it backwards.
        let rpm = (asked_rpm + self.wander_rpm * (asked_rpm / IDLE.0).min(1.0)).max(0.0);
        let cylinders = self.run.cylinders.max(1);
        let peaks_between = interval_deg(cylinders) / PEAK_DEG;
        let step = fires_hz(Rpm(rpm), cylinders) * DT_S;
        self.phase += step;
        if self.phase >= 1.0 {
            self.phase -= 1.0;
            // The fire falls between two samples.
            self.flow_on((step - self.phase) * peaks_between);
            self.fire(rpm, load);
            self.flow_on(self.phase * peaks_between);
        } else {
            self.flow_on(step * peaks_between);
        }
        let keeps = 1.0 - TAU * CORNER_HZ * DT_S;
        self.exhaust = keeps * self.exhaust + self.flow - self.flow_before;
        self.flow_before = self.flow;
        self.burst *= 1.0 - DT_S / BURST_S;
        let hiss = self.burst * (2.0 * self.hiss.unit() - 1.0);
        let noise: f64 = self.bands.iter_mut().map(|band| band.step(hiss)).sum();
        let attack = (time_s / ATTACK_S).min(1.0);
        Some(attack * (self.exhaust + noise))
    }
}

#[cfg(test)]
impl EngineVoice {
    /// The same engine without its own noise and without any scatter, for comparison with the formula.
    #[must_use]
    pub fn bare(run: &EngineRun) -> Self {
        Self { noise: 0.0, ..Self::new(run) }
    }

    /// Size of a fire at idle.
    #[must_use]
    pub const fn fire_size(&self) -> f64 {
        self.fire
    }
}

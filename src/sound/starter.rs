//! The starter as it turns the engine.
//!
//! Model: pinion and ring gear whine with the teeth that meet in a second; compression slows the crankshaft down and loads the
//! gear at each stroke, which is what one hears as turning over. The speed is that of the steady state on the battery's
//! drooped voltage; it comes up within a tenth of a second.
//! Limits: no click of the solenoid, no running out of the pinion. Figures are engineering estimates.

use super::DT_S;
use super::loudness::rms_of;
use crate::numerics::elementary::{cos, exp, sin, sqrt};
use crate::numerics::streams::{Stream, Streams};
use crate::units::{Rpm, Seconds};
use core::f64::consts::TAU;

/// Teeth of the ring gear.
pub const RING_TEETH: f64 = 110.0;
/// Level of the starter, a metre from the open bonnet [dB re 20 uPa].
const LEVEL_DB: f64 = 70.0;
/// Whine against the noise under it, as shares of the power.
const WHINE_SHARE: f64 = 0.7;
/// Strength of the second harmonic of the teeth against the first.
const SECOND: f64 = 0.5;
/// How far compression slows the crankshaft down and speeds it up again, as a share of the speed.
const SPEED_RIPPLE: f64 = 0.25;
/// How much louder the gear is under load, as a share.
const LOAD_RIPPLE: f64 = 0.7;
/// Time in which the speed comes up to 63 % [s].
const RISE_S: f64 = 0.06;
/// Time in which sound fades at both ends [s].
const FADE_S: f64 = 0.02;
/// How much of the noise a sample keeps of the one before: a corner at some 600 Hz.
const NOISE_KEEPS: f64 = 0.92;

/// A turn of the starter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StarterRun {
    /// Speed of the crankshaft.
    pub speed: Rpm,
    /// Cylinders, 1 or more.
    pub cylinders: u8,
    /// How long it turns.
    pub lasts: Seconds,
}

/// Compression strokes a second.
#[must_use]
pub fn strokes_hz(run: &StarterRun) -> f64 {
    run.speed.0 / 60.0 * f64::from(run.cylinders) / 2.0
}

/// A starter that sounds.
#[derive(Debug, Clone)]
pub struct StarterVoice {
    run: StarterRun,
    samples: u64,
    /// Turn of the crankshaft [rev].
    turned: f64,
    noise: f64,
    noise_before: f64,
    hiss: Stream,
    whine: f64,
    growl: f64,
}

impl StarterVoice {
    /// A starter at the beginning of its turn; the same turn sounds the same.
    #[must_use]
    pub fn new(run: &StarterRun) -> Self {
        // Mean square of the load's factor over time, of which more goes by where the crankshaft is slow; of two sines; and
        // of a difference of smoothed noise of variance 1/3.
        let mean_hard = (1.0 - sqrt(1.0 - SPEED_RIPPLE * SPEED_RIPPLE)) / SPEED_RIPPLE;
        let squared_hard = mean_hard / SPEED_RIPPLE;
        let loaded = 1.0 + 2.0 * LOAD_RIPPLE * mean_hard + LOAD_RIPPLE * LOAD_RIPPLE * squared_hard;
        let sines = 0.5 * (1.0 + SECOND * SECOND);
        let hissing = 2.0 / 3.0 / (1.0 + NOISE_KEEPS);
        let rms = rms_of(LEVEL_DB);
        Self {
            run: *run,
            samples: 0,
            turned: 0.0,
            noise: 0.0,
            noise_before: 0.0,
            hiss: Streams::new(0).stream("noise of a starter that is heard"),
            whine: rms * sqrt(WHINE_SHARE / (loaded * sines)),
            growl: rms * sqrt((1.0 - WHINE_SHARE) / (loaded * hissing)),
        }
    }
}

impl Iterator for StarterVoice {
    type Item = f64;

    fn next(&mut self) -> Option<f64> {
        let time_s = self.samples as f64 * DT_S;
        let left_s = self.run.lasts.0 - time_s;
        if left_s <= 0.0 {
            return None;
        }
        self.samples += 1;
        let stroke = TAU * self.turned * f64::from(self.run.cylinders.max(1)) / 2.0;
        // Slowest when a stroke is at its hardest, and then the gear is loudest.
        let hard = cos(stroke);
        // A turn takes longer in its slow half than it gains in the fast one, by this root; the mean speed is the one asked.
        let even = sqrt(1.0 - SPEED_RIPPLE * SPEED_RIPPLE);
        let steady = self.run.speed.0 / 60.0 / even * (1.0 - exp(-time_s / RISE_S));
        self.turned += steady * (1.0 - SPEED_RIPPLE * hard) * DT_S;
        let tooth = TAU * RING_TEETH * self.turned;
        self.noise = NOISE_KEEPS * self.noise + 2.0 * self.hiss.unit() - 1.0;
        let growl = self.noise - std::mem::replace(&mut self.noise_before, self.noise);
        let whine = sin(tooth) + SECOND * sin(2.0 * tooth);
        let fade = (time_s / FADE_S).min(left_s / FADE_S).min(1.0);
        Some(fade * (1.0 + LOAD_RIPPLE * hard) * (self.whine * whine + self.growl * growl))
    }
}

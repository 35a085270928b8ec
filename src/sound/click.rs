//! The click of a spool against its stop.
//!
//! Model: the blow lasts as long as two elastic bodies touch (Hertz), and rings the modes of valve and cover; a blow of
//! half a sine excites a mode by its spectrum at that mode's frequency. So a fast spool rings the high modes too, and a slow
//! one is both softer and duller. The level over the first 10 ms is that of [`Impact::level_db`].
//! Limits: four modes and one decay for every valve (engineering estimates); stops of steel without an oil film.

use super::loudness::rms_of;
use super::{DT_S, SAMPLES_PER_SECOND};
use crate::numerics::elementary::{cos, exp, pow, sin, sqrt};
use crate::physics::stroke::Impact;
use core::f64::consts::{PI, TAU};

/// Modes of valve and cover [Hz] (engineering estimate).
pub const MODES_HZ: [f64; 4] = [2_300.0, 4_100.0, 6_700.0, 9_800.0];
/// Time in which a mode's amplitude falls to 37 % [s] (engineering estimate).
const DECAY_S: f64 = 3e-3;
/// Decays after which nothing is left to hear: to a thirtieth of a thousandth.
const DECAYS: f64 = 10.5;
/// Samples over which the level is that of the impact: 10 ms.
const LEVEL_SAMPLES: u32 = SAMPLES_PER_SECOND / 100;

/// Radius of the spool's end where it meets the stop [m] (engineering estimate).
const END_RADIUS_M: f64 = 5e-3;
/// Effective modulus of steel on steel [Pa]: E / (2 (1 - nu^2)) of 210e9 Pa and 0.3.
const EFFECTIVE_PA: f64 = 210e9 / (2.0 * (1.0 - 0.3 * 0.3));
/// Factor of the time of contact; Johnson, Contact Mechanics, 1985, eq. 11.24, from memory.
const CONTACT: f64 = 2.87;

/// How long spool and stop touch [s]: 2.87 (m^2 / (R E*^2 v))^(1/5). The mass is that of the impact's own energy and speed.
#[must_use]
pub fn contact_s(impact: &Impact) -> f64 {
    let speed = impact.speed_m_per_s.max(1e-6);
    let mass_kg = 2.0 * impact.energy.0 / (speed * speed);
    let stiffness = END_RADIUS_M * EFFECTIVE_PA * EFFECTIVE_PA;
    CONTACT * pow(mass_kg * mass_kg / (stiffness * speed), 0.2)
}

/// How strongly a blow of half a sine that lasts `contact_s` excites a mode at `hz`; 1 at 0 Hz.
#[must_use]
pub fn excited(hz: f64, contact_s: f64) -> f64 {
    let turns = 2.0 * hz * contact_s;
    let apart = 1.0 - turns * turns;
    // At half a turn both sides vanish, and their ratio is a quarter of pi.
    if apart.abs() < 1e-9 { PI / 4.0 } else { (cos(PI * hz * contact_s) / apart).abs() }
}

/// A mode that rings: a number in the plane that turns and shrinks.
#[derive(Debug, Clone, Copy)]
struct Mode {
    now: (f64, f64),
    turn: (f64, f64),
}

/// A click as it rings.
#[derive(Debug, Clone)]
pub struct ClickVoice {
    modes: [Mode; MODES_HZ.len()],
    left: u32,
}

impl ClickVoice {
    /// The click of an impact.
    #[must_use]
    pub fn new(impact: &Impact) -> Self {
        let contact_s = contact_s(impact);
        let raw = Self::ringing(contact_s, 1.0);
        let squares: f64 =
            raw.clone().take(LEVEL_SAMPLES as usize).map(|sample| sample * sample).sum();
        let rms = sqrt(squares / f64::from(LEVEL_SAMPLES));
        let scale = if rms > 0.0 { rms_of(impact.level_db()) / rms } else { 0.0 };
        Self::ringing(contact_s, scale)
    }

    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few thousand samples, far within the range"
    )]
    fn ringing(contact_s: f64, scale: f64) -> Self {
        let shrink = exp(-DT_S / DECAY_S);
        let modes = MODES_HZ.map(|hz| {
            let angle = TAU * hz * DT_S;
            let turn = (shrink * cos(angle), shrink * sin(angle));
            // It begins as 1 - turn: then all that follows sums up to nothing, and the click has no steady part.
            let begin = scale * excited(hz, contact_s) / angle;
            Mode { now: (begin * (1.0 - turn.0), -begin * turn.1), turn }
        });
        Self { modes, left: (DECAY_S * DECAYS / DT_S) as u32 }
    }
}

impl Iterator for ClickVoice {
    type Item = f64;

    fn next(&mut self) -> Option<f64> {
        self.left = self.left.checked_sub(1)?;
        let mut sum = 0.0;
        for Mode { now, turn } in &mut self.modes {
            sum += now.1;
            *now = (now.0 * turn.0 - now.1 * turn.1, now.0 * turn.1 + now.1 * turn.0);
        }
        Some(sum)
    }
}

//! What is heard in the workshop: from what followed from a step to samples, and from samples to the sound server.
//!
//! Purpose: a valve's click as loud and as bright as its impact, the starter against compression, the engine at idle and
//! under load. [`heard`] says which sound belongs to which events, and looks at nothing else, so that nobody hears what
//! the expert is not told. [`passage`] says what a sound is made of; [`click`], [`starter`] and [`engine`] make the
//! samples, the same ones each time; [`mixer`] puts them in a row and [`player`] brings them to the sound server.
//! Limits: one ear, no room, no direction; levels, modes and decays are engineering estimates, and no recording of an
//! engine has been compared.
//!
//! ```
//! use faultwright::physics::stroke::Impact;
//! use faultwright::sound::passage::{Part, Passage};
//! use faultwright::units::{Joules, Seconds};
//!
//! let impact = Impact { at: Seconds(0.0), speed_m_per_s: 0.4, energy: Joules(1e-3) };
//! let samples: Vec<f64> = Passage::new(vec![Part::Click(impact)]).samples().collect();
//! assert!(samples.iter().any(|sample| sample.abs() > 0.01));
//! ```

pub mod caption;
pub mod click;
pub mod engine;
pub mod heard;
pub mod loudness;
pub mod mixer;
pub mod passage;
pub mod player;
pub mod starter;
#[cfg(test)]
mod tests;
pub mod trace;

/// Samples a second of everything here.
pub const SAMPLES_PER_SECOND: u32 = 48_000;

/// Time from one sample to the next [s].
const DT_S: f64 = 1.0 / SAMPLES_PER_SECOND as f64;

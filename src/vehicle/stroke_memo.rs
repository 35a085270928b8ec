//! Strokes that were simulated before, by everything that decides them.
//!
//! A stroke is half a millisecond of work and hangs on 23 numbers alone. Whoever asks the same of many
//! vehicles that differ in one part, as the expert does of its worlds, finds most valves and circuits
//! as they were. A profile (`perf`, shipped scenarios) says that of asking every world every test two thirds
//! went into strokes; of 1,664 and 2,336 strokes that are asked for, 396 and 537 are different ones.
//!
//! The key is made of the bits of every number, so that what is remembered is what would come about
//! anew. Who shares a memo with whom therefore changes nothing but the wait.

use super::condition::FittedValve;
use crate::physics::actuator::Actuator;
use crate::physics::coil::Winding;
use crate::physics::solenoid::Solenoid;
use crate::physics::spool::Spool;
use crate::physics::stroke::{Drive, Stroke, Surroundings, energise};
use crate::units::Newtons;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// Strokes of one generation. Two are kept, ten megabytes at most, because a stroke carries its trace.
const MOST_OF_A_GENERATION: usize = 1_024;

/// The bits of every number that enters the simulation.
type Key = [u64; 23];

/// A memory of strokes that vehicles share.
#[derive(Debug, Default)]
pub struct StrokeMemo {
    kept: Mutex<Kept>,
}

/// When the young are too many they become the old, and the old are forgotten; what is asked for
/// again stays young.
#[derive(Debug, Default)]
struct Kept {
    young: BTreeMap<Key, Arc<Stroke>>,
    old: BTreeMap<Key, Arc<Stroke>>,
}

impl Kept {
    fn get(&mut self, key: &Key) -> Option<Arc<Stroke>> {
        if let Some(known) = self.young.get(key) {
            return Some(Arc::clone(known));
        }
        let known = self.old.remove(key)?;
        self.insert(*key, Arc::clone(&known));
        Some(known)
    }

    fn insert(&mut self, key: Key, stroke: Arc<Stroke>) {
        if self.young.len() >= MOST_OF_A_GENERATION {
            self.old = core::mem::take(&mut self.young);
        }
        self.young.insert(key, stroke);
    }
}

impl StrokeMemo {
    /// The stroke of a fitted valve with a supply put on it for a time and taken off.
    #[must_use]
    pub fn stroke(
        &self,
        actuator: &Actuator,
        valve: &FittedValve,
        drive: Drive,
        surroundings: Surroundings,
    ) -> Arc<Stroke> {
        let spool = actuator.spool.gummed(Newtons(valve.stiction_n));
        let key = key(&actuator.solenoid, &valve.winding, &spool, &drive, &surroundings);
        if let Some(known) = self.kept().get(&key) {
            return known;
        }
        // Not under the lock: two who miss the same stroke at once simulate it both, to the same end.
        let stroke = energise(&actuator.solenoid, &valve.winding, &spool, drive, surroundings);
        let stroke = Arc::new(stroke);
        self.kept().insert(key, Arc::clone(&stroke));
        stroke
    }

    /// How many strokes are kept.
    #[must_use]
    pub fn size(&self) -> usize {
        let kept = self.kept();
        kept.young.len() + kept.old.len()
    }

    /// Whoever panicked over it left it whole: a stroke is put in in one go.
    fn kept(&self) -> MutexGuard<'_, Kept> {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Taken apart without a rest, so that a new field is either part of the key or an error of the compiler.
fn key(
    solenoid: &Solenoid,
    winding: &Winding,
    spool: &Spool,
    drive: &Drive,
    surroundings: &Surroundings,
) -> Key {
    let Solenoid {
        inductance_at_rest,
        inductance_slope_h_per_m,
        saturation,
        slope_beyond_saturation,
    } = *solenoid;
    let Winding { ohms_at_20, turns, shorted_share, joint } = *winding;
    let Spool {
        moving_mass_kg,
        preload,
        spring_n_per_m,
        stroke,
        oil_drag_n_s_per_m,
        reference_viscosity_pa_s,
        dry_drag_n_s_per_m,
        stiction,
        viscosity_multiplier,
    } = *spool;
    let Drive { supply, source, on_for } = *drive;
    let Surroundings { coil, oil_viscosity_pa_s, start } = *surroundings;
    [
        inductance_at_rest.0,
        inductance_slope_h_per_m,
        saturation.0,
        slope_beyond_saturation,
        ohms_at_20.0,
        turns,
        shorted_share,
        joint.0,
        moving_mass_kg,
        preload.0,
        spring_n_per_m,
        stroke.0,
        oil_drag_n_s_per_m,
        reference_viscosity_pa_s,
        dry_drag_n_s_per_m,
        stiction.0,
        viscosity_multiplier,
        supply.0,
        source.0,
        on_for.0,
        coil.0,
        oil_viscosity_pa_s,
        start.0,
    ]
    .map(f64::to_bits)
}

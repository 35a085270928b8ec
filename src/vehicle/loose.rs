//! Contacts that come and go: what shakes or heats them decides when.
//!
//! Model: a contact that is closed opens at a rate that grows with vibration and with temperature,
//! and an open one closes again after a time that is exponentially distributed; both are drawn for
//! every tenth of a second from a stream of the contact's own. A contact that opens by heat alone
//! is open from a temperature on. Whatever stands still and cool is closed.
//! Limits: no memory of how often it opened; replugging does not mend it.

use super::condition::{Condition, LooseContact};
use super::harness::OPEN_OHMS;
use super::spec::Id;
use crate::numerics::digest::DigestBuilder;
use crate::numerics::elementary::exp;
use crate::numerics::streams::{Stream, Streams};
use crate::units::{Celsius, Rpm};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

/// How long a contact that was shaken open stays open, on average [s]: engineering estimate.
const OPEN_FOR_S: f64 = 0.35;
/// How the rate of opening grows with temperature [1/K]: engineering estimate, sevenfold from a cold
/// engine to a warm one.
const RATE_PER_K: f64 = 0.028;
/// The hottest that counts [°C].
const HOTTEST_C: f64 = 120.0;
/// Vibration that a hand which wiggles a connector makes, the roughest road being 1: engineering
/// estimate.
const WIGGLED: f64 = 6.0;
/// Draws in the fifteen seconds for which a hand wiggles.
const WIGGLE_DRAWS: u32 = 150;
/// Time between two draws [s].
const DRAW_S: f64 = 0.1;

/// Vibration of a connector on an engine: a fifth at idle, all of it at 4,000 rpm on a road;
/// engineering estimate.
#[must_use]
pub fn vibration(speed: Rpm, is_moving: bool) -> f64 {
    if speed.0 <= 0.0 {
        return 0.0;
    }
    let engine = (speed.0 / 4_000.0).min(1.0);
    if is_moving { 0.3 + 0.7 * engine } else { engine }
}

/// Chance that a closed contact opens, or an open one closes, within one draw.
fn chance(rate_per_s: f64) -> f64 {
    1.0 - exp(-rate_per_s * DRAW_S)
}

/// The contacts of a vehicle that come and go.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct LooseContacts {
    streams: Streams,
    drawn_from: BTreeMap<Id, Stream>,
    draws: u64,
    shaken_open: BTreeSet<Id>,
}

impl LooseContacts {
    /// Contacts at rest, with the streams that grow from a seed.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self {
            streams: Streams::new(seed),
            drawn_from: BTreeMap::new(),
            draws: 0,
            shaken_open: BTreeSet::new(),
        }
    }

    /// The pins that are shaken open at the moment.
    #[must_use]
    pub const fn shaken_open(&self) -> &BTreeSet<Id> {
        &self.shaken_open
    }

    /// A tenth of a second of vibration, 0 (none) to 1 (roughest road).
    pub fn shake(&mut self, condition: &Condition, vibration: f64, at: Celsius) {
        for (pin, contact) in &condition.loose {
            self.draw(pin, *contact, vibration, at);
        }
    }

    /// A hand wiggles a place for a while; returns every set of open contacts that came about,
    /// beginning with that at rest. What is wiggled is left closed.
    pub fn wiggle(
        &mut self,
        condition: &Condition,
        pins: &[&Id],
        at: Celsius,
    ) -> BTreeSet<BTreeSet<Id>> {
        self.settle();
        let mut seen = BTreeSet::from([BTreeSet::new()]);
        for _ in 0..WIGGLE_DRAWS {
            for (pin, contact) in condition.loose.iter().filter(|(pin, _)| pins.contains(pin)) {
                self.draw(pin, *contact, WIGGLED, at);
            }
            seen.insert(self.shaken_open.clone());
        }
        self.settle();
        seen
    }

    /// Holds these contacts open until they are let go by [`Self::settle`].
    pub fn hold_open(&mut self, open: BTreeSet<Id>) {
        self.shaken_open = open;
    }

    /// Everything stands still: what was shaken open closes.
    pub fn settle(&mut self) {
        self.shaken_open.clear();
    }

    fn draw(&mut self, pin: &Id, contact: LooseContact, vibration: f64, at: Celsius) {
        let name = format!("loose contact {pin}");
        let streams = self.streams;
        let stream = self.drawn_from.entry(pin.clone()).or_insert_with(|| streams.stream(&name));
        let drawn = stream.unit();
        self.draws += 1;
        if self.shaken_open.contains(pin) {
            if drawn < chance(1.0 / OPEN_FOR_S) {
                self.shaken_open.remove(pin);
            }
        } else {
            let warm = exp(RATE_PER_K * (at.0.min(HOTTEST_C) - 20.0));
            if drawn < chance(contact.openings_per_s * vibration * warm) {
                self.shaken_open.insert(pin.clone());
            }
        }
    }

    /// Adds what decides later answers to a fingerprint.
    pub fn digest_into(&self, builder: &mut DigestBuilder) {
        if self.draws > 0 {
            builder.whole(self.draws);
        }
    }
}

/// The contacts that are open at the moment: those that were shaken open, and those that heat keeps
/// open.
#[must_use]
pub fn open_contacts(
    condition: &Condition,
    shaken_open: &BTreeSet<Id>,
    at: Celsius,
) -> BTreeSet<Id> {
    let heated = |contact: &LooseContact| contact.open_from.is_some_and(|from| at.0 >= from.0);
    condition
        .loose
        .iter()
        .filter(|(pin, contact)| shaken_open.contains(*pin) || heated(contact))
        .map(|(pin, _)| pin.clone())
        .collect()
}

/// The condition with these contacts open.
#[must_use]
pub fn as_it_stands<'a>(condition: &'a Condition, open: &BTreeSet<Id>) -> Cow<'a, Condition> {
    if open.is_empty() {
        return Cow::Borrowed(condition);
    }
    let mut standing = condition.clone();
    standing.extra_ohms.extend(open.iter().map(|pin| (pin.clone(), OPEN_OHMS)));
    Cow::Owned(standing)
}

#[cfg(test)]
mod tests;

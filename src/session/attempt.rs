//! The attempt: state, the one entrance, and what it costs.

use super::event::{Event, Refusal};
use super::setup::{Briefing, Hidden};
use super::step::{Bound, Ending, Quantity, Sign, Step};
use super::take;
use super::toolbox::Tool;
use crate::control_module::code::Code;
use crate::faults::FaultName;
use crate::instruments::current_probe::{CurrentProbe, MOST_OFFSET_A};
use crate::instruments::multimeter::Multimeter;
use crate::numerics::digest::{Digest, DigestBuilder};
use crate::numerics::streams::Streams;
use crate::units::{Minutes, Money};
use crate::vehicle::error::VehicleError;
use crate::vehicle::run_record::Idling;
use crate::vehicle::spec::Id;
use crate::vehicle::state::VehicleState;
use crate::vehicle::stroke_memo::StrokeMemo;
use crate::vehicle::whole::Vehicle;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Time and money spent.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Till {
    /// Working time.
    pub minutes: Minutes,
    /// Things bought.
    pub money: Money,
}

impl Till {
    /// Everything in money, at the labour rate.
    #[must_use]
    pub fn total(&self, labour_per_hour: Money) -> Money {
        self.minutes.at_rate(labour_per_hour) + self.money
    }
}

/// A step with what followed from it.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// The step.
    pub step: Step,
    /// What followed.
    pub events: Vec<Event>,
}

/// What the apprentice has fetched, read, said and settled so far.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Progress {
    pub meter_fetched: bool,
    pub clamp_fetched: bool,
    pub scope_set_up: bool,
    pub reader_connected: bool,
    pub gauge_fitted: bool,
    pub codes_read: bool,
    pub oil_checked: bool,
    pub suspects: BTreeMap<FaultName, u8>,
    pub prediction: Option<Prediction>,
    pub sign: Option<Sign>,
    pub codes_seen: BTreeSet<Code>,
    pub committed: bool,
    pub approved: bool,
    /// Work and things of every repair so far, in hundredths.
    pub spent_on_repair: Money,
    pub cleaned: BTreeSet<Id>,
    pub ending: Option<Ending>,
}

/// What a beginning comes to: enough to begin the same case again without the customer's drives.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct Begun {
    complaint: bool,
    vehicle: VehicleState,
}

/// Between which values the next reading is said to lie, and of what.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Prediction {
    pub least: f64,
    pub most: Bound,
    pub of: Option<Quantity>,
}

/// One attempt at one case.
#[derive(Debug, Clone)]
pub struct Session {
    pub(super) briefing: Arc<Briefing>,
    pub(super) vehicle: Vehicle,
    pub(super) meter: Multimeter,
    pub(super) clamp: CurrentProbe,
    pub(super) progress: Progress,
    /// Seed of everything random during the session.
    pub(super) seed: u64,
    till: Till,
    log: Vec<Entry>,
    complaint: bool,
    old_codes: Arc<[Code]>,
}

impl Session {
    /// Begins: the customer has met the concern on two drives, so that the control module holds
    /// what it would hold; the vehicle then stood overnight.
    ///
    /// # Errors
    /// [`VehicleError`] when the vehicle's wiring cannot be solved.
    pub fn begin(briefing: Arc<Briefing>, hidden: Hidden) -> Result<Self, VehicleError> {
        let mut session = Self::begin_without_history(briefing, hidden)?;
        let vehicle = &mut session.vehicle;
        if let Some(route) = session.briefing.routes.get(&session.briefing.customers_route) {
            for _ in 0..2 {
                let idle = vehicle.start()?;
                let drive = vehicle.drive(&route.profile)?;
                session.complaint |=
                    vehicle.lamps().0 || idle != Idling::Smooth || drive.quality != Idling::Smooth;
                vehicle.key_off();
                vehicle.stand_overnight()?;
            }
        }
        Ok(session)
    }

    /// Begins with a vehicle that has met no road yet, so that its module remembers nothing: what
    /// instruments read of it is the same, and it is there at once.
    ///
    /// # Errors
    /// As [`Session::begin`].
    pub fn begin_without_history(
        briefing: Arc<Briefing>,
        hidden: Hidden,
    ) -> Result<Self, VehicleError> {
        let vehicle = Vehicle::new(
            Arc::new(briefing.vehicle.clone()),
            hidden.condition,
            briefing.workshop_temperature,
            &hidden.old_codes,
            hidden.seed,
        )?;
        Ok(Self::with(briefing, vehicle, hidden.meter, (hidden.old_codes.into(), hidden.seed)))
    }

    fn with(
        briefing: Arc<Briefing>,
        vehicle: Vehicle,
        meter: Multimeter,
        (old_codes, seed): (Arc<[Code]>, u64),
    ) -> Self {
        let mut zero = Streams::new(seed).stream("zero of the current probe");
        let clamp = CurrentProbe {
            offset_a: zero.between(-MOST_OFFSET_A, MOST_OFFSET_A),
            ..CurrentProbe::ideal()
        };
        Self {
            briefing,
            vehicle,
            meter,
            clamp,
            progress: Progress::default(),
            seed,
            till: Till::default(),
            log: Vec::new(),
            complaint: false,
            old_codes,
        }
    }

    /// What [`Session::begin`] came to, to be taken before the first step.
    #[must_use]
    pub fn begun(&self) -> Begun {
        Begun { complaint: self.complaint, vehicle: self.vehicle.state() }
    }

    /// Begins with what an earlier beginning of the same case came to: the same session to the bit.
    #[must_use]
    pub fn begin_again(briefing: Arc<Briefing>, hidden: &Hidden, begun: Begun) -> Self {
        let vehicle = Vehicle::in_state(Arc::new(briefing.vehicle.clone()), begun.vehicle);
        let session = Self::with(
            briefing,
            vehicle,
            hidden.meter,
            (hidden.old_codes.clone().into(), hidden.seed),
        );
        Self { complaint: begun.complaint, ..session }
    }

    /// Takes one step and returns what followed. A step that is not possible answers with
    /// [`Event::Refused`] and changes nothing.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved; the session is then as before.
    pub fn take(&mut self, step: &Step) -> Result<Vec<Event>, VehicleError> {
        let events = match self.forbidden(step) {
            Some(reason) => vec![Event::Refused { reason }],
            None => take::take(self, step)?,
        };
        for event in &events {
            match event {
                Event::Spent { minutes, money } => {
                    self.till.minutes += *minutes;
                    self.till.money += *money;
                    self.vehicle.pass_minutes(minutes.0)?;
                }
                Event::Waited { minutes } => self.vehicle.pass_minutes(minutes.0)?,
                _ => {}
            }
        }
        self.log.push(Entry { step: step.clone(), events: events.clone() });
        Ok(events)
    }

    /// Why a step is not possible in this case, whatever the vehicle.
    fn forbidden(&self, step: &Step) -> Option<Refusal> {
        if self.progress.ending.is_some() {
            return Some(Refusal::Finished);
        }
        let Briefing { tools, time_limit, .. } = &*self.briefing;
        if let Some(tool) = Tool::of(step).filter(|tool| !tools.has(*tool)) {
            return Some(Refusal::NoSuchTool(tool));
        }
        time_limit.is_over_for(step, self.till.minutes).then_some(Refusal::TimeIsUp)
    }

    /// Takes a step without keeping it in the log, for those who only want to know what would
    /// follow.
    ///
    /// # Errors
    /// As [`Session::take`].
    pub fn take_unlogged(&mut self, step: &Step) -> Result<Vec<Event>, VehicleError> {
        let events = self.take(step)?;
        self.log.pop();
        Ok(events)
    }

    /// A copy in the same state with an empty log.
    #[must_use]
    pub fn fork(&self) -> Self {
        Self {
            briefing: Arc::clone(&self.briefing),
            vehicle: self.vehicle.clone(),
            meter: self.meter,
            clamp: self.clamp,
            progress: self.progress.clone(),
            seed: self.seed,
            till: self.till,
            log: Vec::new(),
            complaint: self.complaint,
            old_codes: Arc::clone(&self.old_codes),
        }
    }

    /// Remembers the strokes of valves together with other sessions from now on, which changes nothing
    /// but the wait. Copies share them already.
    pub fn share_strokes(&mut self, memo: &Arc<StrokeMemo>) {
        self.vehicle.share_strokes(memo);
    }

    /// What was fetched already, as a number that differs whenever it does: it decides what the
    /// next reading costs.
    #[must_use]
    pub fn instruments_at_hand(&self) -> u8 {
        u8::from(self.progress.meter_fetched)
            + 2 * u8::from(self.progress.reader_connected)
            + 4 * u8::from(self.progress.clamp_fetched)
            + 8 * u8::from(self.progress.scope_set_up)
            + 16 * u8::from(self.progress.gauge_fitted)
    }

    /// Whether the customer would have come: the engine lamp is on or the engine ran badly when
    /// the concern was met.
    #[must_use]
    pub const fn has_complaint(&self) -> bool {
        self.complaint
    }

    /// What everybody may know.
    #[must_use]
    pub const fn briefing(&self) -> &Arc<Briefing> {
        &self.briefing
    }

    /// Every step so far with what followed.
    #[must_use]
    pub fn log(&self) -> &[Entry] {
        &self.log
    }

    /// Time and money so far.
    #[must_use]
    pub const fn till(&self) -> Till {
        self.till
    }

    /// Confidences on the list of suspects [%].
    #[must_use]
    pub const fn suspects(&self) -> &BTreeMap<FaultName, u8> {
        &self.progress.suspects
    }

    /// Codes that have been in the memory from the start and that no fault of this case has set: left
    /// from long ago, left by somebody's handling, or of an unrelated fault that is there. A door to the
    /// truth, for the debrief alone.
    pub fn codes_from_elsewhere(&self) -> impl Iterator<Item = &Code> {
        self.old_codes.iter().chain(&self.vehicle.condition().present_elsewhere)
    }

    /// How the session ended, if it has.
    #[must_use]
    pub const fn ending(&self) -> Option<Ending> {
        self.progress.ending
    }

    /// Which parts are off, which anyone standing beside the vehicle can see.
    pub fn parts_off(&self) -> impl Iterator<Item = &Id> {
        self.vehicle.assembly().off()
    }

    /// What anyone standing beside the vehicle can see of it: what is off, and the key.
    #[must_use]
    pub const fn vehicle_in_sight(&self) -> Sighted<'_> {
        Sighted { vehicle: &self.vehicle }
    }

    /// The only door to the truth: for the debrief once the session has ended, and for tests.
    #[must_use]
    pub const fn truth(&self) -> &Vehicle {
        &self.vehicle
    }

    /// A fingerprint of the whole state and log.
    #[must_use]
    pub fn digest(&self) -> Digest {
        let mut builder = DigestBuilder::new("session");
        for entry in &self.log {
            // Serialisation of plain data cannot fail; a failure would show as an empty text and
            // so as another digest, never as a panic.
            builder.text(&serde_json::to_string(&entry.step).unwrap_or_default());
            builder.text(&serde_json::to_string(&entry.events).unwrap_or_default());
        }
        self.vehicle.digest_into(&mut builder);
        builder.finish()
    }

    /// A fingerprint of everything that decides what later steps will show, log and till left
    /// out: two sessions with the same one answer alike.
    #[must_use]
    pub fn outlook(&self) -> Digest {
        let mut builder = DigestBuilder::new("outlook");
        self.vehicle.digest_into(&mut builder);
        builder.finish()
    }
}

/// What can be seen of the vehicle without any instrument.
#[derive(Debug, Clone, Copy)]
pub struct Sighted<'a> {
    vehicle: &'a Vehicle,
}

impl Sighted<'_> {
    /// What is off.
    #[must_use]
    pub const fn assembly(&self) -> &crate::vehicle::assembly::Assembly {
        self.vehicle.assembly()
    }

    /// Key on.
    #[must_use]
    pub const fn key_on(&self) -> bool {
        self.vehicle.key_on()
    }

    /// Engine running.
    #[must_use]
    pub const fn engine_runs(&self) -> bool {
        self.vehicle.engine_runs()
    }
}

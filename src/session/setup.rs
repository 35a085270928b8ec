//! What a session starts from: what everybody may know, and what is hidden.

use crate::control_module::code::Code;
use crate::faults::Fault;
use crate::instruments::multimeter::Multimeter;
use crate::session::journal::Mode;
use crate::session::shelf::{Offer, Shelf};
use crate::session::step::CustomerTopic;
use crate::session::toolbox::{TimeLimit, Tools};
use crate::units::{Celsius, Minutes, Money};
use crate::vehicle::condition::Condition;
use crate::vehicle::route::RouteProfile;
use crate::vehicle::spec::{Id, VehicleSpec};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What everybody may know: the vehicle as built, the job sheet, prices, roads.
#[derive(Debug, Clone, PartialEq)]
pub struct Briefing {
    /// The vehicle as built.
    pub vehicle: VehicleSpec,
    /// What the session is for: there are hints in practice alone.
    pub mode: Mode,
    /// The job sheet.
    pub job: JobSheet,
    /// What the customer approves. Nobody is told before asking.
    pub approval: Approval,
    /// The tools of the case.
    pub tools: Tools,
    /// How long an apprentice may work.
    pub time_limit: TimeLimit,
    /// Prices and times.
    pub prices: Prices,
    /// What the counter has besides the maker's own parts.
    pub shelf: Shelf,
    /// Roads for a test drive, by name.
    pub routes: BTreeMap<Id, Route>,
    /// The road on which the customer met the concern, by name.
    pub customers_route: Id,
    /// Temperature in the workshop; the vehicle has stood there overnight.
    pub workshop_temperature: Celsius,
    /// How likely it is, 0 to 1, that a code stands in the memory that no fault has set. Nobody is told;
    /// an expert expects it.
    pub false_codes: BTreeMap<Code, f64>,
}

impl Briefing {
    /// The part of that number, if the vehicle has it or the counter sells one.
    #[must_use]
    pub fn offer(&self, number: &Id) -> Option<Offer<'_>> {
        Offer::of(number, &self.vehicle, &self.prices, &self.shelf)
    }
}

/// What the customer says when asked to approve a repair.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub enum Approval {
    /// Yes, whatever it takes.
    #[default]
    Everything,
    /// Yes, up to a limit that the customer names; asked for more, no. The limit is for the repair, its work and its things:
    /// what is spent on finding the fault, on opening and closing and on proving is not counted, nor is a top-up of oil.
    UpTo {
        /// The limit.
        money: Money,
    },
}

/// What the job sheet says, in the scenario's own words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct JobSheet {
    /// Title of the job, as it stands on the sheet; not empty.
    pub title: String,
    /// The customer's concern, in the words in which it was taken down; not empty.
    pub concern: String,
    /// Distance that the vehicle has run, for the sheet alone [km].
    pub kilometres: u32,
    /// What is known of earlier work on the vehicle, a line each; may be empty.
    pub history: Vec<String>,
    /// What the customer answers when asked; there must be an answer to every topic.
    #[cfg_attr(test, schemars(extend("x-keys" = "CustomerTopic")))]
    pub answers: BTreeMap<CustomerTopic, String>,
}

/// What time and things cost.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Prices {
    /// Sign of the currency, such as `"£"`.
    pub currency: String,
    /// Labour for an hour.
    pub labour_per_hour: Money,
    /// Times of steps that no part of the vehicle sets.
    pub minutes: StepMinutes,
    /// Price of a valve by its part number; every part number of the vehicle has one.
    pub valves: BTreeMap<Id, Money>,
    /// Price of a valve seal.
    pub seal: Money,
    /// Price of the material to mend a contact or a wire.
    pub mending: Money,
    /// Price of a litre of oil.
    pub oil_litre: Money,
    /// Price of an oil filter.
    #[serde(default = "usual_oil_filter")]
    pub oil_filter: Money,
    /// Price of cleaning fluid for one valve.
    pub cleaning: Money,
    /// Prices of fuses and relays.
    #[serde(default)]
    pub small_parts: SmallParts,
    /// Price of the fuel for one test drive.
    pub fuel: Money,
    /// What it costs when a vehicle comes back with its fault: goodwill and a second visit.
    pub comeback: Money,
}

/// Minutes for each kind of step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StepMinutes {
    /// Ask the customer.
    pub ask: Minutes,
    /// Consult service information.
    pub consult: Minutes,
    /// Look at a place.
    pub look: Minutes,
    /// Pull the dipstick.
    pub dipstick: Minutes,
    /// Turn the key.
    pub key: Minutes,
    /// Start and let idle.
    pub start: Minutes,
    /// One meter reading.
    pub measure: Minutes,
    /// Fetch the meter for the first reading.
    pub fetch_meter: Minutes,
    /// Read the oil pressure gauge, warming up not counted.
    #[serde(default = "usual_gauge_reading")]
    pub read_gauge: Minutes,
    /// Power a valve.
    pub power: Minutes,
    /// Connect the code reader for the first time.
    pub connect_reader: Minutes,
    /// One request to the control module.
    pub request: Minutes,
    /// Clean a valve.
    pub clean: Minutes,
    /// Mend a contact.
    pub mend_pin: Minutes,
    /// Mend a wire.
    pub mend_wire: Minutes,
    /// Top up oil.
    pub top_up: Minutes,
    /// Change oil and filter.
    #[serde(default = "usual_oil_change")]
    pub change_oil: Minutes,
    /// Talk to the customer about approval.
    pub approval: Minutes,
    /// Write a part of the record.
    pub write: Minutes,
    /// Hand over.
    pub hand_over: Minutes,
    /// Fetch a part from the counter.
    pub fetch_part: Minutes,
    /// Times of instruments and small electrical work.
    #[serde(default)]
    pub electrical: ElectricalMinutes,
}

/// Minutes for instruments besides the meter and for small electrical work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct ElectricalMinutes {
    /// Look with the test lamp, fetched with the first use.
    pub lamp: Minutes,
    /// Read with the current probe.
    pub clamp: Minutes,
    /// Fetch the current probe for the first reading.
    pub fetch_clamp: Minutes,
    /// One capture with the scope.
    pub capture: Minutes,
    /// Set the scope up for the first capture.
    pub set_up_scope: Minutes,
    /// Wiggle while the meter is watched.
    pub wiggle: Minutes,
    /// Put a fuse into the meter.
    pub meter_fuse: Minutes,
    /// Replace a fuse.
    pub fuse: Minutes,
    /// Replace a relay.
    pub relay: Minutes,
}

impl Default for ElectricalMinutes {
    /// Assumed: what a practised hand needs at an engine that is open.
    fn default() -> Self {
        Self {
            lamp: Minutes(2),
            clamp: Minutes(3),
            fetch_clamp: Minutes(4),
            capture: Minutes(5),
            set_up_scope: Minutes(10),
            wiggle: Minutes(8),
            meter_fuse: Minutes(4),
            fuse: Minutes(3),
            relay: Minutes(6),
        }
    }
}

/// Prices of small electrical parts, in hundredths of the currency.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct SmallParts {
    /// The fuse of the meter.
    pub meter_fuse: Money,
    /// A blade fuse.
    pub fuse: Money,
    /// A relay.
    pub relay: Money,
}

impl Default for SmallParts {
    /// Assumed.
    fn default() -> Self {
        Self { meter_fuse: Money(7_20), fuse: Money(60), relay: Money(11_80) }
    }
}

/// Price of an oil filter where a scenario names none: common practice, no source.
const fn usual_oil_filter() -> Money {
    Money(14_00)
}

/// Time to change oil and filter where a scenario names none: common practice 20 to 40 minutes, no
/// source.
const fn usual_oil_change() -> Minutes {
    Minutes(30)
}

/// Time to read the oil pressure gauge where a scenario names none: common practice, no source.
const fn usual_gauge_reading() -> Minutes {
    Minutes(3)
}

/// A road for a test drive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Route {
    /// Time in the workshop's book, getting in and out included [min].
    pub minutes: Minutes,
    /// Speed and load over time.
    pub profile: RouteProfile,
}

/// What is hidden from the apprentice and from the planner.
#[derive(Debug, Clone, PartialEq)]
pub struct Hidden {
    /// The state of the vehicle, faults included.
    pub condition: Condition,
    /// The faults that were drawn, for the debrief alone.
    pub faults: Vec<Fault>,
    /// Codes that were stored long ago and have nothing to do with the concern.
    pub old_codes: Vec<Code>,
    /// The meter with its errors.
    pub meter: Multimeter,
    /// Seed of everything random that happens during the session.
    pub seed: u64,
}

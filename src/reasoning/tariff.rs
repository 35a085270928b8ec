//! What steps and covers cost on one vehicle, in money at the labour rate, without walking.

use super::probe::Need;
use crate::numerics::whole::to_i64;
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::step::{KeyPosition, Step};
use crate::units::{Minutes, Money};
use crate::vehicle::spec::{HarnessElement, Id, PartKind};

use super::plan::compiled::Flaw;
use super::plan::covers::{Covers, Demand, Open};
use super::plan::problem::Cover;

/// What has to be fetched before the first use of some instruments.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Fetched {
    Meter,
    Reader,
    Clamp,
    Scope,
}

impl Fetched {
    const ALL: [Self; 4] = [Self::Meter, Self::Reader, Self::Clamp, Self::Scope];

    /// Its bit in [`Session::instruments_at_hand`].
    const fn bit(self) -> u8 {
        match self {
            Self::Meter => 1,
            Self::Reader => 2,
            Self::Clamp => 4,
            Self::Scope => 8,
        }
    }

    /// What a step cannot do without; a stroke is commanded by the reader while the scope watches.
    const fn for_step(step: &Step) -> &'static [Self] {
        match step {
            Step::Measure { .. } | Step::MeasureFromFront { .. } | Step::Wiggle { .. } => {
                &[Self::Meter]
            }
            Step::ReadCodes | Step::ReadTestResults | Step::Command { .. } | Step::ClearCodes => {
                &[Self::Reader]
            }
            Step::Clamp { .. } | Step::ZeroClamp => &[Self::Clamp],
            Step::Scope { .. } => &[Self::Scope, Self::Reader],
            _ => &[],
        }
    }
}

/// Time for a cold engine to reach its working temperature at idle, as the simulated one takes it.
const WARM_UP: Minutes = Minutes(8);

/// Prices of one vehicle.
#[derive(Debug, Clone)]
pub struct Tariff {
    list: Vec<Cover>,
    covers: Covers,
    /// Parts of the vehicle come first, in their order; then these.
    parts: usize,
    key: usize,
}

impl Tariff {
    /// Parts and connectors as covers, the key, and instruments that are fetched once.
    ///
    /// # Errors
    /// [`Flaw`] when the vehicle has more parts than a search has room for.
    pub fn new(briefing: &Briefing) -> Result<Self, Flaw> {
        let spec = &briefing.vehicle;
        let prices = &briefing.prices;
        let price = |minutes: Minutes, money: Money| {
            (minutes.at_rate(prices.labour_per_hour) + money).as_units()
        };
        let mut list: Vec<Cover> = spec
            .parts
            .iter()
            .map(|part| {
                // A valve goes back with a new seal.
                let seal = if part.kind == PartKind::Valve { prices.seal } else { Money(0) };
                Cover {
                    name: part.id.to_string(),
                    open: price(part.remove, Money(0)),
                    shut: price(part.refit, seal),
                    behind: part.behind.iter().map(ToString::to_string).collect(),
                }
            })
            .collect();
        let parts = list.len();
        let times = &prices.minutes;
        let turn = price(times.key, Money(0));
        let alone = |name: &str, open: f64, shut: f64| Cover {
            name: name.to_owned(),
            open,
            shut,
            behind: Vec::new(),
        };
        list.push(alone(" key", turn, turn));
        for fetched in Fetched::ALL {
            let minutes = match fetched {
                Fetched::Meter => times.fetch_meter,
                Fetched::Reader => times.connect_reader,
                Fetched::Clamp => times.electrical.fetch_clamp,
                Fetched::Scope => times.electrical.set_up_scope,
            };
            list.push(alone(&format!(" {fetched:?}"), price(minutes, Money(0)), 0.0));
        }
        let covers = Covers::new(&list)?.guarded(parts, (1 << parts) - 1);
        Ok(Self { list, covers, parts, key: parts })
    }

    /// The covers.
    #[must_use]
    pub const fn covers(&self) -> &Covers {
        &self.covers
    }

    /// What is open, on and fetched in a session.
    #[must_use]
    pub fn open_in(&self, session: &Session) -> Open {
        let sighted = session.vehicle_in_sight();
        let at_hand = session.instruments_at_hand();
        let mut open = 0;
        for part in session.parts_off() {
            if let Some(place) = self.list.iter().position(|cover| cover.name == part.as_str()) {
                open |= 1 << place;
            }
        }
        if sighted.key_on() || sighted.engine_runs() {
            open |= 1 << self.key;
        }
        for (place, fetched) in Fetched::ALL.into_iter().enumerate() {
            if at_hand & fetched.bit() != 0 {
                open |= 1 << (self.key + 1 + place);
            }
        }
        open
    }

    /// What a need and the steps that follow ask of the covers.
    ///
    /// # Errors
    /// [`Flaw`] when a part is unknown or would have to be on and off at once.
    pub fn demand(&self, need: &Need, steps: &[Step]) -> Result<Demand, Flaw> {
        let names = |parts: &[Id]| parts.iter().map(ToString::to_string).collect::<Vec<_>>();
        let mut open = names(&need.off);
        let mut shut = names(&need.plugged);
        match need.key {
            Some(KeyPosition::Off) => shut.push(self.list[self.key].name.clone()),
            Some(_) => open.push(self.list[self.key].name.clone()),
            None => {}
        }
        for fetched in steps.iter().flat_map(Fetched::for_step) {
            open.push(format!(" {fetched:?}"));
        }
        self.covers.demand(&self.list, "step", &open, &shut)
    }

    /// Everything back in its place and the key off.
    #[must_use]
    pub const fn closed_up(&self) -> Demand {
        Demand { open: 0, shut: (1 << (self.parts + 1)) - 1 }
    }

    /// What steps cost of themselves, with everything open and fetched that they need. The oil that
    /// is missing is not known here: [`Step::TopUpOil`] counts its time alone.
    #[must_use]
    pub fn of_steps(&self, briefing: &Briefing, steps: &[Step]) -> f64 {
        steps.iter().map(|step| work_price(briefing, step).as_units()).sum()
    }

    /// What a proof costs once the vehicle is closed up: codes cleared, key on, the shortest of the
    /// test roads, a rescan.
    #[must_use]
    pub fn of_proof(&self, briefing: &Briefing) -> f64 {
        let prices = &briefing.prices;
        let road = briefing.routes.values().map(|route| route.minutes).min().unwrap_or_default();
        let requests = prices.minutes.request + prices.minutes.request;
        let minutes = requests + prices.minutes.key + road;
        (minutes.at_rate(prices.labour_per_hour) + prices.fuel).as_units()
    }
}

/// What a step of a repair costs, work and things.
pub(super) fn work_price(briefing: &Briefing, step: &Step) -> Money {
    let (minutes, money) = of_step(briefing, step);
    minutes.at_rate(briefing.prices.labour_per_hour) + money
}

fn of_step(briefing: &Briefing, step: &Step) -> (Minutes, Money) {
    let prices = &briefing.prices;
    let times = &prices.minutes;
    let electrical = &times.electrical;
    let time = |minutes: Minutes| (minutes, Money(0));
    match step {
        Step::Dipstick => time(times.dipstick),
        Step::ReadCodes | Step::ReadTestResults | Step::ClearCodes | Step::Command { .. } => {
            time(times.request)
        }
        Step::Key { position: KeyPosition::Start } => time(times.start),
        Step::Key { .. } => time(times.key),
        Step::FitGauge => time(briefing.vehicle.oil.gauge_tap.fit),
        Step::ReadGauge { warm, .. } => {
            let warm_up = if *warm { WARM_UP } else { Minutes(0) };
            time(times.read_gauge + warm_up)
        }
        Step::RemoveGauge => time(briefing.vehicle.oil.gauge_tap.remove),
        Step::ChangeOil { .. } => {
            let litres = to_i64(briefing.vehicle.sump.full_litres.ceil());
            (times.change_oil, Money(prices.oil_litre.0 * litres) + prices.oil_filter)
        }
        Step::Measure { .. } | Step::MeasureFromFront { .. } => time(times.measure),
        Step::Wiggle { .. } => time(times.measure + electrical.wiggle),
        Step::TestLamp { .. } => time(electrical.lamp),
        Step::Clamp { .. } | Step::ZeroClamp => time(electrical.clamp),
        Step::Scope { .. } => time(electrical.capture + times.request),
        Step::Power { .. } => time(times.power),
        Step::Look { .. } => time(times.look),
        Step::Fit { part_number, .. } => {
            let money = briefing.offer(part_number).map(|offer| offer.money(&briefing.shelf));
            (times.fetch_part, money.unwrap_or_default())
        }
        Step::Clean { .. } => (times.clean, prices.cleaning),
        Step::Mend { element } => match briefing.vehicle.element(element) {
            Some(HarnessElement::Pin { .. }) => (times.mend_pin, prices.mending),
            _ => (times.mend_wire, prices.mending),
        },
        Step::Replace { element } => match briefing.vehicle.element(element) {
            Some(HarnessElement::Fuse { .. }) => (electrical.fuse, prices.small_parts.fuse),
            _ => (electrical.relay, prices.small_parts.relay),
        },
        Step::TopUpOil => time(times.top_up),
        _ => (Minutes(0), Money(0)),
    }
}

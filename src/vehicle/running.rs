//! A running engine, tick by tick: oil, gallery, two camshafts a bank, warm-up, monitors.
//!
//! Order of work in one tick of a millisecond: every hundredth tick the temperatures move on and
//! what depends on them is worked out again; every tenth tick the control module runs; then air,
//! the camshafts bank by bank, and last the one gallery with the oil that all of them drew. Temperatures, phasers and what
//! the module has learnt stay between runs; findings belong to a driving cycle.

use crate::control_module::performance_monitor::Conditions;
use crate::numerics::streams::Stream;
use crate::physics::oil::{Fluid, OilError, ViscosityCurve};
use crate::physics::phaser::PulseAngle;
use crate::physics::pump::Gallery;
use crate::physics::sump::Aeration;
use crate::physics::warm_up::{Deck, EngineHeat, WarmUp};
use crate::units::{Bars, Celsius, Minutes, Rpm, Seconds, Watts};
use crate::vehicle::cam_line::{CamCondition, CamLine, DT_S, SharedTick};
use crate::vehicle::idle::{Idle, IdleTick};
use crate::vehicle::per_bank::{CamPlace, PerBank};
use crate::vehicle::per_cam::{Cam, PerCam};
use crate::vehicle::route::{Demand, Foot, RouteError, RouteProfile};
use crate::vehicle::run_record::{RunRecord, Tally, TallyTick};
use serde::{Deserialize, Serialize};

mod engine;

pub use engine::{EngineCondition, EngineSpec};

/// Ticks between two runs of the control module's fast task.
const CONTROL_TICKS: u64 = 10;
/// Ticks between two looks at the temperatures.
const HEAT_TICKS: u64 = 100;
/// Change of oil temperature that is worth working out the oil again [K]: 0.1 % of viscosity.
const OIL_MATTERS_K: f64 = 0.05;
/// Ticks that the starter turns the engine.
const CRANKING_TICKS: u32 = 1_000;
/// Ticks in which an engine that is switched off runs down.
const RUN_DOWN_TICKS: u32 = 600;
/// Ticks after that in which the gallery empties.
const EMPTYING_TICKS: u32 = 2_400;
/// Angle of the crankshaft after which everything repeats [rad]: one turn of the camshafts.
const CYCLE_RAD: f64 = 2.0 * core::f64::consts::TAU;

/// A running engine.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct RunningEngine {
    spec: EngineSpec,
    condition: EngineCondition,
    curve: ViscosityCurve,
    fluid: Fluid,
    fluid_is_for: Celsius,
    heat: EngineHeat,
    deck: Deck,
    gallery: Gallery,
    switch_is_closed: bool,
    aeration: Aeration,
    cams: PerBank<PerCam<CamLine>>,
    crank_rad: f64,
    idle: Idle,
    is_braked: bool,
    ticks: u64,
    heat_w_sum: f64,
    is_powered: bool,
    /// Empty between runs.
    #[serde(skip, default = "Tally::without_room")]
    tally: Tally,
}

impl RunningEngine {
    /// An engine that stands, with temperatures; `air` decides when the pump draws air.
    ///
    /// # Errors
    /// [`OilError`] when the oil's figures describe no oil.
    pub fn new(
        spec: EngineSpec,
        condition: EngineCondition,
        heat: EngineHeat,
        air: Stream,
    ) -> Result<Self, OilError> {
        let condition = condition.with_banks_of(&spec);
        let curve = condition.oil.curve()?;
        let fluid = curve.fluid(heat.oil);
        let idle = Idle::new(spec.idle, air.sibling("cycles"));
        let line = |place| CamLine::new(*spec.cams.of(place), *condition.cams.of(place), &fluid);
        let cams = PerBank::of_each(spec.cams.two.is_some(), line);
        Ok(Self {
            curve,
            fluid,
            fluid_is_for: heat.oil,
            heat,
            deck: Deck::default(),
            gallery: Gallery::default(),
            switch_is_closed: true,
            aeration: Aeration::new(&spec.sump, air),
            cams,
            crank_rad: 0.0,
            idle,
            is_braked: false,
            ticks: 0,
            heat_w_sum: 0.0,
            is_powered: true,
            tally: Tally::without_room(),
            spec,
            condition,
        })
    }

    /// Changes oil, level, valves, circuits, supply or weather; temperatures and positions stay.
    ///
    /// # Errors
    /// [`OilError`] when the oil's figures describe no oil; then nothing is changed.
    pub fn set_condition(&mut self, condition: EngineCondition) -> Result<(), OilError> {
        self.curve = condition.oil.curve()?;
        self.condition = condition.with_banks_of(&self.spec);
        for (line, condition) in self.cams.each_mut().zip(self.condition.cams.each()) {
            line.set_condition(*condition);
        }
        self.refresh();
        Ok(())
    }

    /// Changes one valve or its circuit only, for instance as its coil gets hot.
    pub fn set_cam(&mut self, place: CamPlace, condition: CamCondition) {
        *self.condition.cams.of_mut(place) = condition;
        let line = self.cams.of_mut(place);
        line.set_condition(condition);
        line.refresh(&self.fluid);
    }

    /// Sets the temperatures, as after a known drive.
    pub fn set_heat(&mut self, heat: EngineHeat) {
        self.heat = heat;
        self.refresh();
    }

    /// Gives the module the hold duties that earlier drives with these circuits would have taught.
    pub fn assume_learnt(&mut self) {
        let (supply, oil) = (self.condition.supply, self.heat.oil);
        for line in self.cams.each_mut() {
            line.assume_learnt(supply, oil);
        }
    }

    /// The battery was off: the module forgets what it learnt.
    pub fn forget(&mut self) {
        for line in self.cams.each_mut() {
            line.forget();
        }
    }

    /// Works out what depends on the oil.
    fn refresh(&mut self) {
        self.fluid = self.curve.fluid(self.heat.oil);
        self.fluid_is_for = self.heat.oil;
        for line in self.cams.each_mut() {
            line.refresh(&self.fluid);
        }
    }

    /// Starts the engine: a new driving cycle, a second of the starter, an empty record.
    pub fn start(&mut self) {
        self.is_powered = true;
        self.begin_cycle();
        self.crank();
        self.begin_run();
    }

    /// A second of the starter: after a stall within the same driving cycle.
    pub fn crank(&mut self) {
        for _ in 0..CRANKING_TICKS {
            self.advance(&Demand::CRANKING);
        }
        self.idle.follow(&Demand::CRANKING);
        self.idle.fire_up();
    }

    /// Puts it on a brake that holds the speed that is asked, at idle too, or takes it off.
    pub const fn brake(&mut self, on: bool) {
        self.is_braked = on;
    }

    /// Begins a new driving cycle: the monitors have found nothing yet.
    pub fn begin_cycle(&mut self) {
        for line in self.cams.each_mut() {
            line.begin_cycle();
        }
    }

    /// Begins a new record within the driving cycle.
    pub fn begin_run(&mut self) {
        self.tally.clear();
    }

    /// Runs for one millisecond and adds to the record. Left to itself, the engine runs at the speed
    /// that it finds, not at the one that is asked; one that has stalled stands until it is started.
    #[inline]
    pub fn tick(&mut self, demand: &Demand) {
        let felt = self.turn(demand);
        self.advance(&felt);
        self.tally.add(&TallyTick {
            demand: &felt,
            targets: self.cams.map(|bank| bank.map(CamLine::target)),
            measured: self.cams.map(|bank| bank.map(CamLine::seen)),
            duties: self.cams.map(|bank| bank.map(CamLine::duty)),
            gallery_pa: self.gallery.pressure_pa(),
            switch_is_closed: self.switch_is_closed,
            heat: self.heat,
            idling: self.idle.quality(),
        });
    }

    /// What of a demand comes about: the crankshaft's own speed where nothing else turns it.
    #[inline]
    fn turn(&mut self, demand: &Demand) -> Demand {
        if self.idle.is_stalled() {
            return Demand { speed: Rpm(0.0), load: 0.0, ..*demand };
        }
        if self.is_braked || !demand.is_idle() {
            self.idle.follow(demand);
            return *demand;
        }
        let around = IdleTick {
            away_deg: self.away_deg(),
            viscosity_pa_s: self.fluid.viscosity_pa_s,
            coolant: self.heat.coolant,
            outside: self.condition.ambient,
            generator: self.condition.generator,
        };
        Demand { speed: self.idle.tick(demand.speed, &around), ..*demand }
    }

    /// Both camshafts' way from rest together, as the idle feels it [degrees at the crank]: of a V engine the mean
    /// of its banks. The idle's model has one manifold and one residual for all cylinders, and every second charge
    /// comes from the other bank. Limit: a bank that burns badly by itself is felt as both burning half as badly,
    /// so that it shakes less than a real one.
    fn away_deg(&self) -> f64 {
        let of =
            |bank: &PerCam<CamLine>| bank.intake.vane().away().0 + bank.exhaust.vane().away().0;
        let one_deg = of(&self.cams.one);
        self.cams.two.as_ref().map_or(one_deg, |two| 0.5 * (one_deg + of(two)))
    }

    /// The order of work in one millisecond.
    #[inline]
    fn advance(&mut self, demand: &Demand) {
        if self.ticks.is_multiple_of(HEAT_TICKS) {
            self.warm_up();
        }
        if self.ticks.is_multiple_of(CONTROL_TICKS) {
            self.run_module(demand);
        }
        self.ticks += 1;
        self.heat_w_sum += self.spec.warm_up.heat(demand.speed, demand.load).0;

        let fill = self.condition.fill;
        self.aeration.step(&self.spec.sump, fill, demand.speed, demand.load, demand.tilt, DT_S);
        let air = self.aeration.air();
        let turn_rad = demand.speed.0 / 60.0 * core::f64::consts::TAU;
        self.crank_rad += turn_rad * DT_S;
        if self.crank_rad >= CYCLE_RAD {
            self.crank_rad -= CYCLE_RAD;
        }
        let is_turning = demand.speed.0 > 0.0;
        let is_pulsed = is_turning && !self.cams.each().all(CamLine::is_parked);
        let shared = SharedTick {
            gallery_pa: self.gallery.pressure_pa(),
            pulses: if is_pulsed {
                let lobes = &self.spec.cams.one.intake.phaser.lobes;
                PulseAngle::at(lobes.cylinders, self.crank_rad)
            } else {
                PulseAngle::STANDING
            },
            air,
            is_turning,
        };
        let one = &mut self.cams.one;
        let mut drawn_m3_s = one.intake.tick(&shared) + one.exhaust.tick(&shared);
        if let Some(two) = &mut self.cams.two {
            // Fires alternate between the banks, so that the other's pulses fall between these.
            let shared = SharedTick { pulses: shared.pulses.half_a_pulse_later(), ..shared };
            drawn_m3_s += two.intake.tick(&shared) + two.exhaust.tick(&shared);
        }
        let delivery_m3_s = self.spec.pump.delivery_m3_s(demand.speed, air);
        self.gallery.step(&self.spec.pump, &self.fluid, delivery_m3_s, drawn_m3_s, air, DT_S);
        let switch = &self.spec.pressure_switch;
        self.switch_is_closed = switch.is_closed(self.switch_is_closed, self.gallery.pressure());
    }

    fn warm_up(&mut self) {
        let mean_w = self.heat_w_sum / HEAT_TICKS as f64;
        self.heat_w_sum = 0.0;
        let span_s = HEAT_TICKS as f64 * DT_S;
        let passed = self.deck.step(&self.spec.deck, Watts(mean_w), true, span_s);
        self.heat.step(&self.spec.warm_up, passed, self.condition.ambient, span_s);
        if (self.heat.oil.0 - self.fluid_is_for.0).abs() >= OIL_MATTERS_K {
            self.refresh();
        }
    }

    fn run_module(&mut self, demand: &Demand) {
        let conditions = Conditions {
            speed: demand.speed,
            oil: self.heat.oil,
            supply: self.condition.supply,
            circuit_is_sound: true,
        };
        let asked = demand.bench_targets;
        for bank in self.cams.banks_mut() {
            for cam in Cam::BOTH {
                let in_its_place = asked.map(|targets| *targets.of(cam));
                let line = bank.of_mut(cam);
                line.control(demand.load, in_its_place, &conditions, self.is_powered);
            }
        }
    }

    /// Drives a route and returns its record. After a stall the driver starts it again and keeps his
    /// foot on the pedal for the rest of the way.
    ///
    /// # Errors
    /// [`RouteError`] when the route cannot be driven; then nothing has happened.
    pub fn drive(&mut self, route: &RouteProfile) -> Result<RunRecord, RouteError> {
        route.check()?;
        self.begin_run();
        let mut driver = route.driver();
        let mut tick = 0_u32;
        let mut foot = Foot::Up;
        while let Some(demand) = driver.demand(f64::from(tick) * DT_S) {
            self.tick(&foot.on(demand));
            tick += 1;
            if self.idle.is_stalled() {
                foot = Foot::Down;
                self.crank();
            }
        }
        Ok(self.record())
    }

    /// Keeps one demand for some whole milliseconds and returns the record.
    pub fn hold(&mut self, demand: &Demand, milliseconds: u32) -> RunRecord {
        self.begin_run();
        for _ in 0..milliseconds {
            self.tick(demand);
        }
        self.record()
    }

    /// Switches the engine off: it runs down, and the gallery empties. Valves get no current.
    pub fn stop(&mut self) {
        self.is_powered = false;
        let from = self.speed().0.min(Demand::IDLE.speed.0);
        for tick in 0..RUN_DOWN_TICKS {
            let left = 1.0 - f64::from(tick + 1) / f64::from(RUN_DOWN_TICKS);
            let speed = Rpm(from * left);
            self.advance(&Demand { speed, load: 0.0, ..Demand::IDLE });
        }
        for _ in 0..EMPTYING_TICKS {
            self.advance(&Demand::STANDING);
        }
        self.idle.stand();
    }

    /// Lets the engine stand: its deck soaks the coolant, everything cools, and phasers that are still
    /// away may come home.
    pub fn rest(&mut self, time: Minutes) {
        let warm_up = &self.spec.warm_up;
        let standing = WarmUp {
            radiator_w_k: warm_up.radiator_w_k * self.spec.deck.standing_radiator,
            ..*warm_up
        };
        for second in 0..u64::from(time.0) * 60 {
            let passed = self.deck.step(&self.spec.deck, Watts(0.0), false, 1.0);
            self.heat.step(&standing, passed, self.condition.ambient, 1.0);
            let is_away = self.cams.each().any(|line| !line.vane().is_locked());
            if is_away {
                if second.is_multiple_of(60) {
                    self.refresh();
                }
                for line in self.cams.each_mut() {
                    line.stand(1.0);
                }
            }
        }
        self.gallery = Gallery::default();
        self.switch_is_closed = true;
        self.refresh();
    }

    /// Lets the engine run at one demand until its oil is warm, in seconds instead of ticks: only
    /// temperatures move. Returns how long it took, `longest` at most.
    pub fn warm_at(&mut self, demand: &Demand, oil: Celsius, longest: Minutes) -> Seconds {
        let heat = self.spec.warm_up.heat(demand.speed, demand.load);
        let mut elapsed_s = 0.0;
        while self.heat.oil.0 < oil.0 && elapsed_s < f64::from(longest.0) * 60.0 {
            let passed = self.deck.step(&self.spec.deck, heat, true, 1.0);
            self.heat.step(&self.spec.warm_up, passed, self.condition.ambient, 1.0);
            elapsed_s += 1.0;
        }
        self.refresh();
        Seconds(elapsed_s)
    }

    /// The record so far.
    #[must_use]
    pub fn record(&self) -> RunRecord {
        self.tally.record(self.heat, self.cams.map(|bank| bank.map(CamLine::monitor)))
    }

    /// Lets go of the record and the room that its trace took.
    pub fn drop_record(&mut self) {
        self.tally = Tally::without_room();
    }

    /// Viscosity of the oil now [Pa s].
    #[must_use]
    pub const fn viscosity_pa_s(&self) -> f64 {
        self.fluid.viscosity_pa_s
    }

    /// Speed of the crankshaft now.
    #[must_use]
    pub fn speed(&self) -> Rpm {
        self.idle.crank().speed()
    }

    /// Temperatures now.
    #[must_use]
    pub const fn heat(&self) -> EngineHeat {
        self.heat
    }

    /// How much hotter than the coolant the deck is [K].
    #[must_use]
    pub const fn deck_excess_k(&self) -> f64 {
        self.deck.excess_k
    }

    /// Gallery pressure now.
    #[must_use]
    pub fn pressure(&self) -> Bars {
        self.gallery.pressure()
    }

    /// Whether the switch of the oil lamp is closed now.
    #[must_use]
    pub const fn pressure_switch_is_closed(&self) -> bool {
        self.switch_is_closed
    }

    /// How the oil thins and expands with heat.
    #[must_use]
    pub const fn oil_curve(&self) -> &ViscosityCurve {
        &self.curve
    }

    /// What it is by design.
    #[must_use]
    pub const fn spec(&self) -> &EngineSpec {
        &self.spec
    }

    /// One camshaft now.
    #[must_use]
    pub const fn cam(&self, place: CamPlace) -> &CamLine {
        self.cams.of(place)
    }

    /// The crankshaft and how it idles.
    #[must_use]
    pub const fn idle(&self) -> &Idle {
        &self.idle
    }

    /// What it is set up with.
    #[must_use]
    pub const fn condition(&self) -> &EngineCondition {
        &self.condition
    }
}

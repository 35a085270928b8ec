//! A crankshaft that turns by itself at idle: air in, fires, friction, speed.
//!
//! Model: mean values between fires. Air flows past a throttle into a manifold and from there into
//! the cylinders; fires are evenly spaced, with four cylinders at every half turn: one cylinder has drawn its charge,
//! and the one before it burns: its work acts evenly until the next fire. Friction, pumping and the generator act
//! against it, the flywheel carries the difference. Limits: no ripple between two
//! fires; three to eight cylinders; temperatures of charge and residual gas fixed; exact for the manifold and the crankshaft to
//! first order in the step.
//!
//! Sources: flow through an opening by the ellipse of ISO 6358 (critical ratio 0.528, that of an ideal
//! nozzle for air); filling and emptying as in every mean-value model since Hendricks and Sorenson,
//! SAE 900616 (from memory). All figures are engineering estimates.

use super::combustion::{Breathing, Residual, flame};
use crate::numerics::elementary::pow;
use crate::numerics::streams::Stream;
use crate::units::{Celsius, Rpm, Watts};
use serde::{Deserialize, Serialize};

/// Gas constant of air [J/(kg K)].
const AIR_J_KG_K: f64 = 287.0;
/// Mass flow through an ideal nozzle at the speed of sound, times sqrt(R T) / (A p), for air:
/// sqrt(1.4) (2 / 2.4)^3.
const CHOKED: f64 = 0.684_7;
/// Pressure ratio below which a nozzle is choked, for air.
const CRITICAL: f64 = 0.528;
/// Most cylinders.
const MOST_CYLINDERS: usize = 8;
/// Angle of the crankshaft in which every cylinder fires once [rad]: two turns.
const CYCLE_RAD: f64 = 2.0 * core::f64::consts::TAU;
/// Below this speed the generator gives nothing [rad/s]: 380 rpm.
const GENERATES_FROM_RAD_S: f64 = 40.0;

/// An engine as far as its idle is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CrankSpec {
    /// Cylinders, 1 to 8.
    pub cylinders: u8,
    /// One cylinder and its valves.
    pub breathing: Breathing,
    /// Inertia of crankshaft, flywheel and what turns with them [kg m²].
    pub inertia_kg_m2: f64,
    /// Friction that does not depend on oil or speed, as mean effective pressure [Pa].
    pub dry_pa: f64,
    /// Friction of oil films at the reference of viscosity and speed, likewise [Pa].
    pub film_pa: f64,
    /// Reference viscosity [Pa s].
    pub film_at_pa_s: f64,
    /// Reference speed [rev/s].
    pub film_at_rev_s: f64,
    /// Power of viscosity times speed with which film friction goes: 0.5 for a bearing by itself, less
    /// because films warm up and thin out.
    pub film_power: f64,
    /// Volume between throttle and valves [m³].
    pub manifold_m3: f64,
    /// Throttle's free area when the idle control opens it fully [m²].
    pub throttle_m2: f64,
    /// Share of the cylinder that is filled at manifold pressure.
    pub filling: f64,
    /// Temperature of the fresh charge at the end of its intake [K].
    pub charge_k: f64,
    /// Temperature of residual gas [K].
    pub residual_k: f64,
    /// Heat of a kilogram of mixture [J/kg].
    pub heat_j_kg: f64,
    /// Share of that heat which becomes indicated work, pumping left out.
    pub indicated: f64,
    /// Pressure of the air outside [Pa].
    pub outside_pa: f64,
    /// Pressure in the exhaust at idle [Pa].
    pub exhaust_pa: f64,
    /// Scatter of the flame's speed from cycle to cycle, as a share of the full speed.
    pub flame_scatter: f64,
    /// Scatter of the charge's heat from cycle to cycle.
    pub charge_scatter: f64,
}

impl CrankSpec {
    /// A four-cylinder petrol engine of 1.4 l (engineering estimate).
    pub const TYPICAL: Self = Self {
        cylinders: 4,
        breathing: Breathing::TYPICAL,
        inertia_kg_m2: 0.13,
        dry_pa: 0.32e5,
        film_pa: 0.33e5,
        film_at_pa_s: 0.0109,
        film_at_rev_s: 12.5,
        film_power: 0.4,
        manifold_m3: 3e-3,
        throttle_m2: 5e-5,
        filling: 0.95,
        charge_k: 330.0,
        residual_k: 900.0,
        heat_j_kg: 2.82e6,
        indicated: 0.31,
        outside_pa: 1.013e5,
        exhaust_pa: 1.03e5,
        flame_scatter: 0.07,
        charge_scatter: 0.025,
    };

    /// The same engine with another number of like cylinders, 1 to 8: flywheel, manifold and throttle grow with
    /// them (engineering estimate).
    #[must_use]
    pub fn with_cylinders(self, cylinders: u8) -> Self {
        let share = f64::from(cylinders) / f64::from(self.cylinders);
        Self {
            cylinders,
            inertia_kg_m2: self.inertia_kg_m2 * share,
            manifold_m3: self.manifold_m3 * share,
            throttle_m2: self.throttle_m2 * share,
            ..self
        }
    }

    /// Angle of the crankshaft from one fire to the next [rad].
    #[must_use]
    #[inline]
    pub fn between_fires_rad(&self) -> f64 {
        CYCLE_RAD / f64::from(self.cylinders)
    }

    /// How many cylinders there are places for.
    fn count(&self) -> usize {
        usize::from(self.cylinders).clamp(1, MOST_CYLINDERS)
    }

    /// Friction as mean effective pressure [Pa] at a speed [rev/s] and a viscosity [Pa s].
    #[must_use]
    pub fn friction_pa(&self, rev_s: f64, viscosity_pa_s: f64) -> f64 {
        let film = viscosity_pa_s * rev_s / (self.film_at_pa_s * self.film_at_rev_s);
        self.dry_pa + self.film_pa * pow(film.max(0.0), self.film_power)
    }

    /// Torque of a mean effective pressure [N m]: one cylinder's swept volume from fire to fire.
    #[must_use]
    pub fn torque_nm(&self, mean_effective_pa: f64) -> f64 {
        mean_effective_pa * self.breathing.swept_m3 / self.between_fires_rad()
    }

    /// Air past the throttle [kg/s] at an opening of 0 to 1, a manifold pressure [Pa] and a temperature
    /// outside.
    #[must_use]
    pub fn air_kg_s(&self, opening: f64, manifold_pa: f64, outside: Celsius) -> f64 {
        let ratio = manifold_pa / self.outside_pa;
        let over = ((ratio - CRITICAL) / (1.0 - CRITICAL)).max(0.0);
        let share = (1.0 - over * over).max(0.0).sqrt();
        let kelvin = (outside.0 + 273.15).max(200.0);
        opening * self.throttle_m2 * self.outside_pa * CHOKED / (AIR_J_KG_K * kelvin).sqrt() * share
    }

    /// Mass that a cylinder traps [kg] at a manifold pressure [Pa] and a share of residual gas.
    #[must_use]
    pub fn trapped_kg(&self, manifold_pa: f64, residual: f64) -> f64 {
        let kelvin = self.charge_k * (1.0 - residual) + self.residual_k * residual;
        self.filling * manifold_pa * self.breathing.swept_m3 / (AIR_J_KG_K * kelvin)
    }
}

/// What acts on the crankshaft in one step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrankDrive {
    /// Throttle opening by the idle control, 0 to 1.
    pub opening: f64,
    /// Torque by spark timing as a share of the best, about 1.
    pub spark: f64,
    /// Overlap of the valves [degrees].
    pub overlap_deg: f64,
    /// Viscosity of the oil [Pa s].
    pub viscosity_pa_s: f64,
    /// Mechanical power of the generator.
    pub generator: Watts,
    /// Torque of the starter [N m].
    pub starter_nm: f64,
    /// Air outside.
    pub outside: Celsius,
}

/// A charge in a cylinder.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
struct Charge {
    trapped_kg: f64,
    burnt_gas: f64,
}

/// A crankshaft in motion.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct Crank {
    speed_rad_s: f64,
    manifold_pa: f64,
    angle_rad: f64,
    fire_nm: f64,
    friction_pa: f64,
    residual: Residual,
    waiting: Option<Charge>,
    burnt: [f64; MOST_CYLINDERS],
    cylinder: usize,
    scatter: Stream,
}

impl Crank {
    /// A crankshaft at rest; `scatter` decides from cycle to cycle.
    #[must_use]
    pub fn new(spec: &CrankSpec, scatter: Stream) -> Self {
        Self {
            speed_rad_s: 0.0,
            manifold_pa: spec.outside_pa,
            angle_rad: 0.0,
            fire_nm: 0.0,
            friction_pa: spec.dry_pa,
            residual: Residual { back: 0.0, kept: 0.0 },
            waiting: None,
            burnt: [1.0; MOST_CYLINDERS],
            cylinder: 0,
            scatter,
        }
    }

    /// Lets the road or a brake turn the crankshaft at a speed, with a manifold pressure that goes with
    /// the load of 0 to 1.
    pub fn follow(&mut self, spec: &CrankSpec, speed: Rpm, load: f64) {
        self.speed_rad_s = speed.0 / 60.0 * core::f64::consts::TAU;
        self.manifold_pa = spec.outside_pa * (0.25 + 0.7 * load.clamp(0.0, 1.0));
        self.friction_pa = spec.dry_pa + spec.film_pa;
        self.fire_nm = spec.torque_nm(self.friction_pa + spec.exhaust_pa - self.manifold_pa);
        self.waiting = None;
        self.burnt = [1.0; MOST_CYLINDERS];
    }

    /// The crankshaft stands.
    pub fn stand(&mut self, spec: &CrankSpec) {
        self.speed_rad_s = 0.0;
        self.manifold_pa = spec.outside_pa;
        self.fire_nm = 0.0;
        self.waiting = None;
    }

    /// Sets a speed and leaves everything else as it is.
    pub fn spin(&mut self, speed: Rpm) {
        self.speed_rad_s = speed.0 / 60.0 * core::f64::consts::TAU;
    }

    /// Sets the manifold's pressure [Pa] and leaves everything else as it is.
    pub const fn fill(&mut self, manifold_pa: f64) {
        self.manifold_pa = manifold_pa;
    }

    /// Moves on by `dt_s` seconds, at most a few milliseconds.
    #[inline]
    pub fn step(&mut self, spec: &CrankSpec, drive: &CrankDrive, dt_s: f64) {
        let generator_nm = if self.speed_rad_s > GENERATES_FROM_RAD_S {
            drive.generator.0 / self.speed_rad_s
        } else {
            0.0
        };
        let against_nm =
            spec.torque_nm(self.friction_pa + spec.exhaust_pa - self.manifold_pa) + generator_nm;
        let net_nm = self.fire_nm * drive.spark + drive.starter_nm - against_nm;
        self.speed_rad_s = (self.speed_rad_s + net_nm / spec.inertia_kg_m2 * dt_s).max(0.0);

        let residual = self.residual.total();
        let trapped_kg = spec.trapped_kg(self.manifold_pa, residual);
        let between_rad = spec.between_fires_rad();
        let drawn_kg_s = trapped_kg * (1.0 - residual) * self.speed_rad_s / between_rad;
        let let_in_kg_s = spec.air_kg_s(drive.opening, self.manifold_pa, drive.outside);
        let by_kg_pa = AIR_J_KG_K * spec.charge_k / spec.manifold_m3;
        self.manifold_pa = (self.manifold_pa + by_kg_pa * (let_in_kg_s - drawn_kg_s) * dt_s)
            .clamp(0.05 * spec.outside_pa, spec.outside_pa);

        self.angle_rad += self.speed_rad_s * dt_s;
        if self.angle_rad >= between_rad {
            self.angle_rad -= between_rad;
            self.fire(spec, drive, trapped_kg);
        }
    }

    /// One cylinder burns what it drew; the next has drawn its charge.
    fn fire(&mut self, spec: &CrankSpec, drive: &CrankDrive, trapped_kg: f64) {
        if let Some(charge) = self.waiting {
            let speed = flame(charge.burnt_gas) + spec.flame_scatter * self.scatter.normal();
            let burnt = spec.breathing.burnt(speed);
            self.burnt[self.cylinder] = burnt;
            let heat_j = charge.trapped_kg
                * (1.0 - charge.burnt_gas)
                * spec.heat_j_kg
                * (1.0 + spec.charge_scatter * self.scatter.normal());
            self.fire_nm = heat_j * burnt * spec.indicated / spec.between_fires_rad();
        }
        let cylinders = spec.count();
        self.cylinder = (self.cylinder + 1) % cylinders;
        let rev_s = self.speed_rad_s / core::f64::consts::TAU;
        self.residual = spec.breathing.residual(
            spec.breathing.overlap_factor(drive.overlap_deg),
            rev_s,
            self.manifold_pa * 1e-5,
            spec.exhaust_pa * 1e-5,
        );
        // What stays in a cylinder is as burnt as its own last charge; what comes back from the exhaust
        // is as burnt as what all of them left there.
        let in_exhaust = self.burnt.iter().take(cylinders).sum::<f64>() / cylinders as f64;
        let burnt_gas =
            self.residual.kept * self.burnt[self.cylinder] + self.residual.back * in_exhaust;
        self.waiting = Some(Charge { trapped_kg, burnt_gas });
        self.friction_pa = spec.friction_pa(rev_s, drive.viscosity_pa_s);
    }

    /// Whether the flywheel can carry the crankshaft over the next compression.
    #[must_use]
    pub fn carries_on(&self, spec: &CrankSpec) -> bool {
        let kinetic_j = 0.5 * spec.inertia_kg_m2 * self.speed_rad_s * self.speed_rad_s;
        kinetic_j > spec.breathing.compression_j(self.manifold_pa)
    }

    /// Speed now.
    #[must_use]
    pub fn speed(&self) -> Rpm {
        Rpm(self.speed_rad_s * 60.0 / core::f64::consts::TAU)
    }

    /// Pressure in the manifold [Pa].
    #[must_use]
    pub const fn manifold_pa(&self) -> f64 {
        self.manifold_pa
    }

    /// Residual gas of the last charge, 0 to 1.
    #[must_use]
    pub fn residual(&self) -> f64 {
        self.residual.total()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::streams::Streams;
    use crate::numerics::whole::to_u32;
    use proptest::prelude::*;

    const SPEC: CrankSpec = CrankSpec::TYPICAL;

    /// Mass flow through an ideal nozzle, choked: p A sqrt(k / (R T)) (2 / (k + 1))^((k + 1) / (2 (k - 1))).
    #[test]
    fn closed_form_air_past_a_choked_throttle() {
        let wanted = SPEC.throttle_m2
            * SPEC.outside_pa
            * (1.4_f64 / (287.0 * 293.15)).sqrt()
            * (2.0_f64 / 2.4).powi(3);
        let got = SPEC.air_kg_s(1.0, 30e3, Celsius(20.0));
        assert!((got / wanted - 1.0).abs() < 1e-3, "{got} {wanted}");
        assert!(SPEC.air_kg_s(1.0, SPEC.outside_pa, Celsius(20.0)).abs() < 1e-12);
    }

    /// The ideal nozzle's own law between choking and no flow; the ellipse stays within 1 % of full flow.
    #[test]
    fn closed_form_ellipse_is_near_the_nozzle() {
        for ratio in [0.55, 0.65, 0.75, 0.85, 0.95] {
            let nozzle =
                (2.8 / 0.4 * (pow(ratio, 2.0 / 1.4) - pow(ratio, 2.4 / 1.4))).sqrt() / CHOKED;
            let full = SPEC.air_kg_s(1.0, 0.3 * SPEC.outside_pa, Celsius(20.0));
            let ours = SPEC.air_kg_s(1.0, ratio * SPEC.outside_pa, Celsius(20.0)) / full;
            assert!((ours - nozzle).abs() < 0.01, "{ratio}: {ours} {nozzle}");
        }
    }

    /// With no fire a crankshaft gives its energy to friction and pumping alone: half J w squared.
    #[test]
    fn conserves_energy_of_a_crankshaft_that_runs_down() {
        let mut crank = Crank::new(&SPEC, Streams::new(1).stream("cycles"));
        crank.spin(Rpm(700.0));
        let drive = CrankDrive {
            opening: 1.0,
            spark: 0.0,
            overlap_deg: 0.0,
            viscosity_pa_s: 0.0109,
            generator: Watts(0.0),
            starter_nm: 0.0,
            outside: Celsius(20.0),
        };
        let kinetic = |crank: &Crank| 0.5 * SPEC.inertia_kg_m2 * crank.speed_rad_s.powi(2);
        let before = kinetic(&crank);
        let (mut lost, dt_s) = (0.0, 1e-5);
        while crank.speed().0 > 100.0 {
            let drag = SPEC.torque_nm(crank.friction_pa + SPEC.exhaust_pa - crank.manifold_pa);
            lost += drag * crank.speed_rad_s * dt_s;
            crank.step(&SPEC, &drive, dt_s);
        }
        let left = kinetic(&crank);
        assert!(((lost + left) / before - 1.0).abs() < 1e-3, "{lost} {left} {before}");
    }

    /// Over two turns the work of a mean effective pressure is that of all cylinders, and each of them fires once.
    #[test]
    fn closed_form_a_cycle_has_the_work_and_the_fires_of_all_cylinders() {
        assert_eq!(SPEC.with_cylinders(SPEC.cylinders), SPEC);
        for cylinders in 3..=8 {
            let grown = SPEC.with_cylinders(cylinders);
            // So heavy that the speed stays.
            let spec = CrankSpec { inertia_kg_m2: 1e9, ..grown };
            let work_j = spec.torque_nm(2e5) * CYCLE_RAD;
            let wanted_j = 2e5 * spec.breathing.swept_m3 * f64::from(cylinders);
            assert!((work_j / wanted_j - 1.0).abs() < 1e-12, "{cylinders}: {work_j} J");
            let mut crank = Crank::new(&spec, Streams::new(2).stream("cycles"));
            crank.spin(Rpm(600.0));
            let drive = CrankDrive {
                opening: 0.3,
                spark: 1.0,
                overlap_deg: 6.0,
                viscosity_pa_s: 0.0109,
                generator: Watts(0.0),
                starter_nm: 0.0,
                outside: Celsius(20.0),
            };
            let mut fires = vec![0_u32; spec.count()];
            let mut before = crank.cylinder;
            // Ten cycles of 0.2 s and half a fire more, so that no fire falls on the end.
            let end_s = 10.0 * 0.2 + 0.1 / f64::from(cylinders);
            for _ in 0..to_u32(end_s / 1e-4) {
                crank.step(&spec, &drive, 1e-4);
                if crank.cylinder != before {
                    before = crank.cylinder;
                    fires[before] += 1;
                }
            }
            assert!(fires.iter().all(|count| *count == 10), "{cylinders}: {fires:?}");
        }
    }

    proptest! {
        /// Thicker oil and more speed never mean less friction; at the reference it is the sum of both.
        #[test]
        fn prop_friction_rises_with_viscosity_and_speed(mu in 0.004..2.5_f64, rev_s in 1.0..100.0_f64) {
            let here = SPEC.friction_pa(rev_s, mu);
            prop_assert!(SPEC.friction_pa(rev_s, mu * 1.1) > here);
            prop_assert!(SPEC.friction_pa(rev_s + 1.0, mu) > here);
            let reference = SPEC.friction_pa(12.5, 0.0109);
            prop_assert!((reference - SPEC.dry_pa - SPEC.film_pa).abs() < 1e-6);
        }

        /// Whatever acts on it, speed, pressure and residual gas stay within their bounds.
        #[test]
        fn prop_an_idle_stays_within_its_bounds(
            opening in 0.0..1.0_f64, overlap in -20.0..95.0_f64, seed in 0..50_u64,
        ) {
            let mut crank = Crank::new(&SPEC, Streams::new(seed).stream("cycles"));
            crank.spin(Rpm(700.0));
            let drive = CrankDrive {
                opening,
                spark: 1.0,
                overlap_deg: overlap,
                viscosity_pa_s: 0.02,
                generator: Watts(700.0),
                starter_nm: 0.0,
                outside: Celsius(20.0),
            };
            for _ in 0..3_000 {
                crank.step(&SPEC, &drive, 1e-3);
                prop_assert!((0.0..20_000.0).contains(&crank.speed().0));
                prop_assert!(crank.manifold_pa() > 0.0 && crank.manifold_pa() <= SPEC.outside_pa);
                prop_assert!((0.0..=0.9 + 1e-9).contains(&crank.residual()));
            }
        }
    }
}

//! Where the energy goes, and the coil alone against the textbook.

use super::super::motion::{Incident, Moment};
use super::*;
use crate::units::{Amperes, Henries, Newtons};
use proptest::prelude::*;

/// Energies of a run of two phases [J], by the trapezoidal rule over the moments shown.
#[derive(Default)]
struct Tally {
    supplied: f64,
    copper: f64,
    drag: f64,
    friction: f64,
    stops: f64,
    previous: Option<(Moment, Powers)>,
}

/// Powers at one moment [W].
#[derive(Clone, Copy)]
struct Powers {
    supplied: f64,
    copper: f64,
    drag: f64,
}

struct Setup {
    winding: Winding,
    spool: Spool,
    source_ohm: f64,
    machine_drag: f64,
}

impl Setup {
    /// From the two loops of the winding, each by itself.
    fn powers(&self, moment: &Moment, supply_v: f64) -> Powers {
        let share = self.winding.shorted_share;
        let carrying_ohm = self.winding.terminal_ohms(Celsius(20.0)).0 + self.source_ohm;
        let current_a = moment.current_a;
        let turns = self.winding.turns;
        let turn_v = (supply_v - carrying_ohm * current_a) / (turns * (1.0 - share));
        // n2 Phi' over R2, both in proportion to the share, into the share's ohms.
        let shorted_a = turns * turn_v / self.winding.ohms_at_20.0;
        let speed = moment.state.v_m_per_s;
        Powers {
            supplied: supply_v * current_a,
            copper: carrying_ohm * current_a * current_a
                + shorted_a * shorted_a * share * self.winding.ohms_at_20.0,
            drag: self.machine_drag * speed * speed,
        }
    }

    fn stored_j(&self, state: &State) -> f64 {
        let solenoid = Solenoid::REFERENCE;
        let inductance = solenoid.inductance_h(state.x_m);
        let flux_times_current = inductance * solenoid.shape(state.m_a).value_a * state.m_a;
        let field = flux_times_current - inductance * solenoid.coenergy_per_henry(state.m_a);
        let spring = self.spool.preload.0 * state.x_m
            + 0.5 * self.spool.spring_n_per_m * state.x_m * state.x_m;
        field + spring + self.moving_j(state)
    }

    fn moving_j(&self, state: &State) -> f64 {
        0.5 * self.spool.moving_mass_kg * state.v_m_per_s * state.v_m_per_s
    }
}

impl Tally {
    fn feel(&mut self, setup: &Setup, supply_v: f64, moment: &Moment) {
        let powers = setup.powers(moment, supply_v);
        if let Some((last, before)) = self.previous {
            let half_s = 0.5 * (moment.at_s - last.at_s);
            self.supplied += half_s * (before.supplied + powers.supplied);
            self.copper += half_s * (before.copper + powers.copper);
            self.drag += half_s * (before.drag + powers.drag);
            self.friction += setup.spool.sliding_n() * (moment.state.x_m - last.state.x_m).abs();
        }
        if matches!(moment.incident, Incident::Strikes | Incident::IsHeld) {
            self.stops += setup.moving_j(&moment.state);
        }
        self.previous = Some((*moment, powers));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// All that the supply gives is found again: in the copper of both loops, in the field, in the
    /// spring, in motion, in drag and friction, and in the stops.
    #[test]
    fn conserves_energy_over_a_stroke_and_its_return(
        supply_v in 3.0..16.0_f64, share in 0.0..0.9_f64, turns in 0.6..1.6_f64,
        stiction in 0.0..3.0_f64, thickening in 0.1..8.0_f64, on_s in 0.002..0.05_f64,
        source_ohm in 0.0..3.0_f64,
    ) {
        let winding = Winding { turns, shorted_share: share, ..Winding::REFERENCE };
        let spool = sticking(stiction, thickening);
        let setup =
            Setup { winding, spool, source_ohm, machine_drag: spool.drag_n_s_per_m(OIL_AT_20) };
        let machine = Machine {
            solenoid: &Solenoid::REFERENCE,
            spool: &spool,
            flux: FluxLoop::new(&winding, Celsius(20.0), Ohms(source_ohm)),
            drag_n_s_per_m: setup.machine_drag,
            // A tenth of the usual step, so that the trapezoidal rule is not what is tested.
            step_s: 0.1 * STEP_S,
        };
        let start = State { m_a: 0.0, x_m: 0.0, v_m_per_s: 0.0, motion: Motion::Held };
        let mut tally = Tally::default();
        let end = machine.run(supply_v, start, on_s, Until::Time, |moment| {
            tally.feel(&setup, supply_v, moment);
        });
        tally.previous = None;
        let rest = machine.run(0.0, end, 0.1, Until::Time, |moment| {
            tally.feel(&setup, 0.0, moment);
        });
        let found =
            tally.copper + tally.drag + tally.friction + tally.stops + setup.stored_j(&rest);
        prop_assert!(
            (found / tally.supplied - 1.0).abs() < 1e-5,
            "found {found}, supplied {}", tally.supplied
        );
    }

    /// With no resistance but the winding's own, shorted turns do not change what is heard.
    #[test]
    fn prop_shorted_turns_cannot_be_heard_on_a_stiff_supply(share in 0.01..0.95_f64) {
        let run = |shorted_share| {
            let winding = Winding { shorted_share, ..Winding::REFERENCE };
            let drive = Drive { source: Ohms(0.0), ..BENCH };
            energise(&Solenoid::REFERENCE, &winding, &Spool::REFERENCE, drive, AT_20)
        };
        let (whole, shorted) = (run(0.0), run(share));
        for (ours, theirs) in [
            (whole.engaged.unwrap(), shorted.engaged.unwrap()),
            (whole.returned.unwrap(), shorted.returned.unwrap()),
        ] {
            prop_assert!((ours.at.0 - theirs.at.0).abs() < 1e-9);
            prop_assert!((ours.energy.0 / theirs.energy.0 - 1.0).abs() < 1e-6);
        }
        let ratio = shorted.end_current.0 / whole.end_current.0;
        prop_assert!((ratio * (1.0 - share) - 1.0).abs() < 1e-9, "{ratio}");
    }
}

/// A coil without a moving core and without saturation: the same integrator, the plunger seized.
fn plain_coil(millihenries: f64, ohms: f64, drive: Drive) -> Stroke {
    let solenoid = Solenoid {
        inductance_at_rest: Henries(millihenries * 1e-3),
        inductance_slope_h_per_m: 0.0,
        saturation: Amperes(1e6),
        slope_beyond_saturation: 0.0,
    };
    let winding = Winding { ohms_at_20: Ohms(ohms), ..Winding::REFERENCE };
    let seized = Spool { stiction: Newtons(1000.0), ..Spool::REFERENCE };
    energise(&solenoid, &winding, &seized, drive, AT_20)
}

/// A public worked example: 45 mH, 60 ohm, 15 V; after 7.0 ms the page has 0.2499 A.
#[test]
fn published_rise_of_current_in_a_coil() {
    let drive = Drive { supply: Volts(15.0), source: Ohms(0.0), on_for: Seconds(7e-3) };
    let stroke = plain_coil(45.0, 60.0, drive);
    let current = stroke.end_current.0;
    assert!((current - 0.2499).abs() < 1e-4, "{current}");
    // The formula behind it, V/R (1 - e^(-t R/L)), all along the trace.
    for (index, sample) in stroke.trace.samples.iter().take(36).enumerate() {
        let exact = 0.25 * (1.0 - crate::numerics::elementary::exp(-(index as f64) * 0.2 / 0.75));
        assert!((sample.0 - exact).abs() < 1e-7, "{index} {} {exact}", sample.0);
    }
}

/// A public worked example: 7.50 mH and 3.00 ohm have a time constant of 2.50 ms, and 10.0 A have fallen
/// to 1.35 A after 5.00 ms.
#[test]
fn published_decay_of_current_in_a_coil() {
    let drive = Drive { supply: Volts(30.0), source: Ohms(0.0), on_for: Seconds(0.06) };
    let stroke = plain_coil(7.5, 3.0, drive);
    assert!((stroke.end_current.0 - 10.0).abs() < 1e-6);
    let after = stroke.trace.samples[325].0;
    assert!((after - 1.35).abs() < 0.005, "{after}");
    assert!((after - 1.353_353).abs() < 1e-5, "{after}");
}

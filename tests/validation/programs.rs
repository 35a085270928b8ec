//! Other programs' answers, compared with ours.

use super::idle_reference;
use super::stored::rows;
use super::wiring_reference::{agreement, asked};
use faultwright::physics::coil::Winding;
use faultwright::physics::oil::Oil;
use faultwright::physics::pulsed_coil::CoilDrive;
use faultwright::physics::pump::Pump;
use faultwright::physics::solenoid::Solenoid;
use faultwright::physics::spool::Spool;
use faultwright::physics::stroke::{Drive, Stroke, Surroundings, energise};
use faultwright::units::{Celsius, Henries, Millimetres, Newtons, Ohms, Rpm, Seconds, Volts};

/// One stored table and how far ours lies from it.
pub struct Comparison {
    pub what: &'static str,
    pub stored_in: &'static str,
    pub program: &'static str,
    pub compared: usize,
    /// With its unit, in as many digits as are stable.
    pub greatest: String,
    pub allowed: String,
    pub holds: bool,
}

pub fn all() -> Vec<Comparison> {
    let mut list = wiring();
    list.push(strokes());
    list.push(pulses());
    list.push(gallery());
    list.extend(idle());
    list
}

/// The next of 1, 2 and 5 times a power of ten above a difference: the last digits of a difference
/// hang on the order of sums and tell nobody anything.
fn below(difference: f64) -> String {
    for exponent in -16..=3 {
        for digit in [1.0, 2.0, 5.0] {
            let step: f64 = format!("{digit}e{exponent}").parse().expect("a number");
            if difference < step {
                return format!("below {step:e}");
            }
        }
    }
    format!("{difference}")
}

const SIMULATOR: &str = "ngspice, an operating point each";
const SCIPY: &str = "scipy";

fn wiring() -> Vec<Comparison> {
    asked::all()
        .into_iter()
        .map(|asked| {
            let (compared, greatest, disagreed) = asked.with_stored().figures();
            Comparison {
                what: asked.name,
                stored_in: asked.file,
                program: SIMULATOR,
                compared,
                greatest: format!("{} of the value", below(greatest)),
                allowed: format!("{:e} of the value", agreement::SHARE),
                holds: disagreed == 0 && compared >= asked.least,
            }
        })
        .collect()
}

/// An engine left to itself, started and disturbed, at the tick of a session: its fires fall to the tick.
fn idle() -> impl Iterator<Item = Comparison> {
    let rows: usize =
        idle_reference::CASES.map(|case| idle_reference::theirs(case).len()).iter().sum();
    let greatest = idle_reference::CASES
        .map(|case| idle_reference::apart(case, 1))
        .into_iter()
        .fold([0.0_f64; 3], |most, apart| core::array::from_fn(|k| most[k].max(apart[k])));
    [
        ("engine left to itself, speed", 6.0, "rpm"),
        ("engine left to itself, pressure in the manifold", 0.5, "kPa"),
        ("engine left to itself, residual gas", 0.005, "of the charge"),
    ]
    .into_iter()
    .zip(greatest)
    .map(move |((what, allowed, unit), greatest)| Comparison {
        what,
        stored_in: "idle.csv",
        program: "Python, fourth order, steps that end at each half turn",
        compared: rows,
        greatest: format!("{} {unit}", below(greatest)),
        allowed: format!("{allowed} {unit}"),
        holds: greatest < allowed,
    })
}

/// Strokes of a valve against an adaptive solver.
fn strokes() -> Comparison {
    const ALLOWED: f64 = 3e-6;
    let (mut compared, mut greatest) = (0, 0.0_f64);
    let mut is_same = true;
    for row in rows(include_str!("../reference/solenoid.csv")) {
        let stroke = stroke(&|name| row.value(name));
        let (far, home) = (stroke.engaged, stroke.returned);
        // The peak is left out: a maximum is taken at the ends of steps and has a tolerance of its
        // own in the test of the stroke.
        for (column, ours) in [
            ("starts_ms", stroke.first_motion.map(|at| at.0 * 1e3)),
            ("impact_ms", far.map(|hit| hit.at.0 * 1e3)),
            ("speed_m_per_s", far.map(|hit| hit.speed_m_per_s)),
            ("energy_mj", far.map(|hit| hit.energy.0 * 1e3)),
            ("back_impact_ms", home.map(|hit| hit.at.0 * 1e3)),
            ("back_speed_m_per_s", home.map(|hit| hit.speed_m_per_s)),
            ("back_energy_mj", home.map(|hit| hit.energy.0 * 1e3)),
            ("trough_a", stroke.dip.map(|dip| dip.trough.0)),
            ("end_a", Some(stroke.end_current.0)),
            ("end_mm", Some(stroke.end_position.0)),
            ("rest_mm", Some(stroke.rest_position.0)),
        ] {
            let theirs = row.number(column);
            is_same &= ours.is_some() == theirs.is_some();
            if let (Some(ours), Some(theirs)) = (ours, theirs) {
                compared += 1;
                is_same &= theirs != 0.0 || ours == 0.0;
                if theirs != 0.0 {
                    greatest = greatest.max((ours / theirs - 1.0).abs());
                }
            }
        }
    }
    Comparison {
        what: "current, motion and impact of a valve's stroke",
        stored_in: "solenoid.csv",
        program: SCIPY,
        compared,
        greatest: format!("{} of the value", below(greatest)),
        allowed: format!("{ALLOWED:e} of the value"),
        holds: is_same && greatest <= ALLOWED,
    }
}

fn stroke(given: &dyn Fn(&str) -> f64) -> Stroke {
    let winding = Winding {
        ohms_at_20: Ohms(given("ohms_at_20")),
        turns: given("turns"),
        shorted_share: given("shorted_share"),
        joint: Ohms(given("joint_ohm")),
    };
    let spool = Spool {
        stiction: Newtons(given("stiction_n")),
        viscosity_multiplier: given("thickening"),
        ..Spool::REFERENCE
    };
    let drive = Drive {
        supply: Volts(given("supply_v")),
        source: Ohms(given("source_ohm")),
        on_for: Seconds(given("on_s")),
    };
    let surroundings = Surroundings {
        coil: Celsius(given("coil_c")),
        oil_viscosity_pa_s: given("viscosity_pa_s"),
        start: Millimetres(0.0),
    };
    energise(&Solenoid::REFERENCE, &winding, &spool, drive, surroundings)
}

/// Mean, least and greatest current of a pulsed coil against the same circuit stepped through.
fn pulses() -> Comparison {
    const ALLOWED_A: f64 = 1e-4;
    let (mut compared, mut greatest) = (0, 0.0_f64);
    for row in rows(include_str!("../reference/coil_pulses.csv")) {
        let drive = CoilDrive {
            v_on: Volts(row.value("volts")),
            v_freewheel: Volts(row.value("drop_v")),
            r_total: Ohms(row.value("ohms")),
            inductance: Henries(row.value("millihenries") * 1e-3),
            pulses_per_s: row.value("pulses_per_s"),
        };
        let ours = drive.ripple(row.value("duty"));
        for (column, ours) in
            [("step_mean", ours.average), ("step_low", ours.least), ("step_high", ours.most)]
        {
            compared += 1;
            greatest = greatest.max((ours.0 - row.value(column)).abs());
        }
    }
    Comparison {
        what: "mean, least and greatest current of a pulsed coil",
        stored_in: "coil_pulses.csv",
        program: "a circuit stepped by 0.1 us in Python",
        compared,
        greatest: format!("{} A", below(greatest)),
        allowed: format!("{ALLOWED_A:e} A"),
        holds: greatest <= ALLOWED_A,
    }
}

/// Pressure in the gallery by temperature, speed and oil.
fn gallery() -> Comparison {
    const ALLOWED_BAR: f64 = 3e-5;
    const AIR: f64 = 0.03;
    let fresh = Oil::TYPICAL_5W_30;
    let oils = [
        ("fresh_bar", fresh),
        ("oxidised_bar", Oil { thickening: 1.8, ..fresh }),
        ("diluted_bar", Oil { dilution: 0.65, ..fresh }),
    ];
    let (mut compared, mut greatest) = (0, 0.0_f64);
    for row in rows(include_str!("../reference/gallery.csv")) {
        for (column, oil) in oils {
            let fluid = oil.curve().expect("an oil").fluid(Celsius(row.value("temperature_c")));
            let ours =
                Pump::TYPICAL.equilibrium(Rpm(row.value("rpm")), AIR, &fluid).expect("a pressure");
            compared += 1;
            greatest = greatest.max((ours.0 - row.value(column)).abs());
        }
    }
    Comparison {
        what: "oil pressure at rest by temperature, speed and oil",
        stored_in: "gallery.csv",
        program: SCIPY,
        compared,
        greatest: format!("{} bar", below(greatest)),
        allowed: format!("{ALLOWED_BAR:e} bar"),
        holds: greatest <= ALLOWED_BAR,
    }
}

//! Coils: how the current comes and goes, and with what force they pull.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources;
use faultwright::physics::coil::Winding;
use faultwright::physics::solenoid::Solenoid;
use faultwright::physics::spool::Spool;
use faultwright::physics::stroke::{Drive, Stroke, Surroundings, energise};
use faultwright::physics::thermal::HeatPath;
use faultwright::units::{
    Amperes, Celsius, Henries, Millimetres, Newtons, Ohms, Seconds, Volts, Watts,
};

/// A coil without a moving core and without saturation, put on a supply.
fn plain_coil(henries: f64, ohms: f64, supply: Volts, on_for: Seconds) -> Stroke {
    energise(
        &straight(henries, 0.0),
        &Winding { ohms_at_20: Ohms(ohms), ..Winding::REFERENCE },
        &Spool { stiction: Newtons(1000.0), ..Spool::REFERENCE },
        Drive { supply, source: Ohms(0.0), on_for },
        Surroundings { coil: Celsius(20.0), oil_viscosity_pa_s: 0.1, start: Millimetres(0.0) },
    )
}

fn straight(henries: f64, slope_h_per_m: f64) -> Solenoid {
    Solenoid {
        inductance_at_rest: Henries(henries),
        inductance_slope_h_per_m: slope_h_per_m,
        saturation: Amperes(1e6),
        slope_beyond_saturation: 0.0,
    }
}

/// Force of an air gap whose core never saturates: inductance of `turns` over the gap is
/// `µ0 N² A / g`, and this is how quickly it rises as the gap closes.
fn air_gap_n(turns: f64, amperes: f64, area_m2: f64, gap_m: f64) -> f64 {
    let permeability = 4e-7 * core::f64::consts::PI;
    let slope = permeability * turns * turns * area_m2 / (gap_m * gap_m);
    straight(0.01, slope).force_at(Amperes(amperes), &Winding::REFERENCE).0
}

pub fn area() -> Area {
    let rise = plain_coil(0.045, 60.0, Volts(15.0), Seconds(7e-3));
    // On for 24 time constants, until 10 A stand; then off, and 5 ms are sample 325 of the trace.
    let decay = plain_coil(7.5e-3, 3.0, Volts(30.0), Seconds(0.06));
    let (at_s, interval_s) = (0.065, decay.trace.interval.0);
    let sample = (at_s / interval_s).round() as usize;
    let warmed =
        HeatPath::IN_AIR.step(Celsius(20.0), Celsius(20.0), Watts(10.0), Seconds(45.0 * 8.0));
    let example = |item, source, published, allowed, ours, unit, decimals, reason| Row {
        item,
        source,
        wanted: Wanted::Value(published, allowed),
        ours: Ours::Value(ours),
        unit,
        decimals,
        reason,
        evidence: Evidence::WorkedExample,
    };
    let half = "half of the last printed digit";
    Area {
        title: "Coils: current, force, warmth",
        calls: "`physics::stroke::energise`, `physics::solenoid::Solenoid::force_at`, \
                `physics::thermal::HeatPath::step`",
        note: "For the force the inductance's slope is that of the example's air gap, so what is \
               compared is the law that force is half the slope times the square of the current. The \
               valve's own slope is an estimate and proved by nothing here.",
        rows: vec![
            example(
                "current 7.0 ms after switch-on, 45 mH and 60 ohm on 15 V",
                &sources::RL_RISE,
                0.2499,
                1e-4,
                rise.end_current.0,
                "A",
                5,
                "printed cut, not rounded: one unit of the last digit",
            ),
            Row {
                item: "current 5.00 ms after switch-off from 10.0 A, 7.50 mH and 3.00 ohm",
                source: &sources::RL_DECAY,
                wanted: Wanted::Value(1.353_352_8, 1e-5),
                ours: Ours::Value(decay.trace.samples[sample].0),
                unit: "A",
                decimals: 5,
                reason: "10/e²; a millionth of the 10 A for the method's steps",
                evidence: Evidence::ClosedForm,
            },
            example(
                "force, 100 turns, 5 A, 0.01 m², gap 20 mm",
                &sources::FORCE_CALCULATOR,
                3.93,
                0.005,
                air_gap_n(100.0, 5.0, 0.01, 0.02),
                "N",
                3,
                half,
            ),
            example(
                "force, 200 turns, 3 A, 0.02 m², gap 30 mm",
                &sources::FORCE_CALCULATOR,
                5.03,
                0.005,
                air_gap_n(200.0, 3.0, 0.02, 0.03),
                "N",
                3,
                half,
            ),
            Row {
                item: "share of its final rise that a coil has after one time constant",
                source: &sources::ARITHMETIC,
                wanted: Wanted::Value(0.632_120_558_828_557_7, 1e-12),
                ours: Ours::Value((warmed.0 - 20.0) / 80.0),
                unit: "",
                decimals: 6,
                reason: "1 - 1/e; rounding of the arithmetic",
                evidence: Evidence::ClosedForm,
            },
        ],
    }
}

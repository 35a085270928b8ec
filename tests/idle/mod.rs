//! An engine left to itself on the bench of `tests/reference/idle.py`, beside what that program says.
#![expect(clippy::expect_used, reason = "a test fails by panicking")]

use faultwright::control_module::idle_control::{IdleControl, IdleControlSpec, IdleDrive};
use faultwright::numerics::streams::Streams;
use faultwright::physics::crank::{Crank, CrankDrive, CrankSpec};
use faultwright::units::{Celsius, Rpm, Watts};

/// What the other program was asked.
pub const CASES: [&str; 4] = ["start-warm", "start-cold", "load-step", "cam-out"];

/// Without scatter from cycle to cycle, so that two programs can be compared.
const STEADY: CrankSpec =
    CrankSpec { flame_scatter: 0.0, charge_scatter: 0.0, ..CrankSpec::TYPICAL };

struct Case {
    outside_c: f64,
    coolant_c: f64,
    viscosity_pa_s: f64,
    from_rpm: f64,
    overlap_deg: fn(f64) -> f64,
    generator_w: fn(f64) -> f64,
}

fn case(name: &str) -> Case {
    let warm = Case {
        outside_c: 20.0,
        coolant_c: 90.0,
        viscosity_pa_s: 0.0109,
        from_rpm: 200.0,
        overlap_deg: |_| 6.0,
        generator_w: |_| 700.0,
    };
    match name {
        "start-warm" => warm,
        "start-cold" => Case { outside_c: 0.0, coolant_c: 0.0, viscosity_pa_s: 0.45, ..warm },
        "load-step" => Case {
            from_rpm: 700.0,
            generator_w: |time| if time < 5.0 { 700.0 } else { 900.0 },
            ..warm
        },
        "cam-out" => Case {
            from_rpm: 700.0,
            overlap_deg: |time| if time < 5.0 { 6.0 } else { 26.0 },
            ..warm
        },
        other => panic!("no case {other}"),
    }
}

/// Speed [rpm], manifold pressure [kPa] and residual gas every fifty milliseconds.
fn run(case: &Case, per_tick: u32, until_s: f64) -> Vec<(f64, f64, f64, f64)> {
    let dt_s = 1e-3 / f64::from(per_tick);
    let mut crank = Crank::new(&STEADY, Streams::new(1).stream("cycles"));
    crank.spin(Rpm(case.from_rpm));
    if case.from_rpm > 400.0 {
        crank.fill(0.4e5);
    }
    let mut control = IdleControl::new(IdleControlSpec::TYPICAL);
    let mut drive = IdleDrive { opening: 0.0, spark: 1.0 };
    let mut rows = Vec::new();
    let mut step = 0_u32;
    let mut starter = case.from_rpm < 400.0;
    loop {
        let time_s = f64::from(step) * dt_s;
        if time_s > until_s + 1e-9 {
            return rows;
        }
        if step.is_multiple_of(50 * per_tick) {
            rows.push((time_s, crank.speed().0, crank.manifold_pa() * 1e-3, crank.residual()));
        }
        if step.is_multiple_of(10 * per_tick) {
            drive = control.update(Rpm(700.0), crank.speed(), Celsius(case.coolant_c), 0.01);
        }
        starter &= crank.speed().0 < 400.0;
        let helps_nm = 80.0 * (1.0 - crank.speed().0 / 340.0).max(0.0);
        let acting = CrankDrive {
            opening: drive.opening,
            spark: drive.spark,
            overlap_deg: (case.overlap_deg)(time_s),
            viscosity_pa_s: case.viscosity_pa_s,
            generator: Watts((case.generator_w)(time_s)),
            starter_nm: if starter { helps_nm } else { 0.0 },
            outside: Celsius(case.outside_c),
        };
        crank.step(&STEADY, &acting, dt_s);
        step += 1;
    }
}

const TABLE: &str = include_str!("../reference/idle.csv");

pub fn theirs(name: &str) -> Vec<Vec<f64>> {
    TABLE
        .lines()
        .filter_map(|line| line.strip_prefix(name)?.strip_prefix(','))
        .map(|line| {
            line.split(',').map(|field| field.parse().expect("a row of the table")).collect()
        })
        .collect()
}

/// Largest difference in speed [rpm], pressure [kPa] and residual gas.
pub fn apart(name: &str, per_tick: u32) -> [f64; 3] {
    let rows = theirs(name);
    let ours = run(&case(name), per_tick, rows.last().expect("a row of the table")[0]);
    assert_eq!(ours.len(), rows.len(), "{name}");
    let mut most = [0.0_f64; 3];
    for (ours, theirs) in ours.iter().zip(&rows) {
        for (most, gap) in
            most.iter_mut().zip([ours.1 - theirs[1], ours.2 - theirs[2], ours.3 - theirs[3]])
        {
            *most = most.max(gap.abs());
        }
    }
    most
}

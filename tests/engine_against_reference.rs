//! The running engine against another program (`tests/reference/running_engine.py`, another
//! language, explicit steps of 0.1 and 0.25 ms) and against tables printed in the project's notes.
//!
//! What differs from the preparatory study on purpose, and is therefore not compared with their digits:
//! sticking spools (one friction law here, where the preparatory study's slow model and its equation of motion
//! disagreed), the lag of a spool in cold oil (its drag over its spring here, 9 ms at 20 °C; a rule
//! of its own in the preparatory study's slow model, 38 ms), least and mean pressure of the road test (the preparatory study lets oil flow into a phaser that
//! stands at its stop), and runs that draw air, whose random moments differ (see the seeds in
//! `hydraulic_faults.rs`).
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod road;

use faultwright::control_module::code_family::Bank;
use faultwright::units::CrankDegrees;
use faultwright::vehicle::cam_line::CamCondition;
use faultwright::vehicle::per_bank::CamPlace;
use faultwright::vehicle::per_cam::Cam;
use faultwright::vehicle::route::Demand;
use road::{Row, demand, drive_as_printed, one_cam, rows, set_oil};

struct StepRun {
    t10: Option<f64>,
    t63: Option<f64>,
    t90: Option<f64>,
    mean_error: f64,
    peak_to_peak: f64,
    mean_bar: f64,
    least_bar: f64,
    duty: f64,
}

/// The same experiment as the other program's: settle, step, six seconds.
fn step(row: &Row<'_>) -> StepRun {
    let (from, to) = (row.value("from_deg"), row.value("to_deg"));
    let (rpm, oil_c) = (row.value("rpm"), row.value("oil_c"));
    let mut engine = one_cam(row, Cam::Intake, row.value("hold"), row.value("r_total"), oil_c);
    let run = |engine: &mut _, target: f64, ticks: u32, look: &mut dyn FnMut(u32, &_)| {
        let engine: &mut faultwright::vehicle::running::RunningEngine = engine;
        for tick in 0..ticks {
            if tick % 100 == 0 {
                set_oil(engine, oil_c);
            }
            engine.tick(&demand(rpm, target, 0.0));
            look(tick, &*engine);
        }
    };
    run(&mut engine, from, 4_000, &mut |_, _| ());
    let start = engine.cam(CamPlace::INTAKE).vane().away().0;
    let mut times = [None; 3];
    let (mut error, mut duty, mut low, mut high) = (0.0, 0.0, f64::INFINITY, f64::NEG_INFINITY);
    let (mut pressure, mut least) = (0.0, f64::INFINITY);
    run(&mut engine, to, 6_000, &mut |tick, engine| {
        let line = engine.cam(CamPlace::INTAKE);
        let moved = (line.vane().away().0 - start) / (to - from);
        for (time, share) in times.iter_mut().zip([0.1, 0.63, 0.9]) {
            if moved >= share && time.is_none() {
                *time = Some(f64::from(tick + 1) * 1e-3);
            }
        }
        pressure += engine.pressure().0 / 6_000.0;
        least = least.min(engine.pressure().0);
        if tick >= 5_000 {
            error += (to - line.vane().away().0) / 1_000.0;
            duty += line.duty() / 1_000.0;
            low = low.min(line.seen().0);
            high = high.max(line.seen().0);
        }
    });
    StepRun {
        t10: times[0],
        t63: times[1],
        t90: times[2],
        mean_error: error,
        peak_to_peak: high - low,
        mean_bar: pressure,
        least_bar: least,
        duty,
    }
}

const STEPS: &str = include_str!("reference/steps.csv");
const ROAD: &str = include_str!("reference/road.csv");

/// A time may differ by the coarser step (a few ticks, as errors of first order add up over a
/// move) and by 1 %.
fn times_agree(ours: Option<f64>, theirs: Option<f64>, slack_s: f64) -> bool {
    match (ours, theirs) {
        (Some(ours), Some(theirs)) => (ours - theirs).abs() < slack_s + 0.01 * theirs,
        (None, None) => true,
        _ => false,
    }
}

#[test]
fn reference_steps_agree_with_the_other_program() {
    let mut compared = 0;
    for row in rows(STEPS) {
        let (name, ours) = (row.text("case"), step(&row));
        for (what, got, column) in
            [("t10", ours.t10, "t10"), ("t63", ours.t63, "t63"), ("t90", ours.t90, "t90")]
        {
            let wanted = row.number(column);
            // A spool of 6 N breaks away at nearly all that the coil can give, where the force
            // creeps, and is held again on its way: up to three control periods more.
            let slack_s = if row.value("stiction_n") > 5.0 { 34e-3 } else { 4e-3 };
            assert!(times_agree(got, wanted, slack_s), "{name} {what}: {got:?} {wanted:?}");
        }
        let near = |what: &str, got: f64, slack: f64| {
            let wanted = row.value(what);
            assert!((got - wanted).abs() < slack, "{name} {what}: {got} {wanted}");
        };
        near("mean_bar", ours.mean_bar, 0.005);
        near("least_bar", ours.least_bar, 0.01);
        // A sticking spool hunts in a limit cycle whose phase at the end of a run is chance.
        if row.value("stiction_n") == 0.0 || row.value("stiction_n") >= 2.5 {
            // Half a dead band of the port is worth 0.2 degrees before the integral fills it.
            near("mean_error_deg", ours.mean_error, 0.2);
            // At 6000 rpm a pulse has five ticks, which miss its peaks and those of its harmonics.
            let missed = if row.value("rpm") > 5_000.0 { 0.06 } else { 0.0 };
            near("peak_to_peak_deg", ours.peak_to_peak, 0.12 + missed);
            near("duty", ours.duty, 0.015);
        }
        compared += 1;
    }
    assert_eq!(compared, 24);
}

#[test]
fn reference_steps_agree_with_the_printed_table() {
    for row in rows(STEPS) {
        let (name, ours) = (row.text("case"), step(&row));
        // Printed to 0.01 s, by a plain loop of 1 ms: half a digit, one control period, 2 %, and for
        // a slow move one torque pulse, which it meets at another angle.
        let pulse_s = if row.value("blockage") > 0.9 { 30.0 / row.value("rpm") } else { 0.0 };
        // The lag that the preparatory study gave a spool in its oil, 0.25/Pa of the viscosity; ours is shorter.
        let curve = road::oil(row.text("oil")).curve().unwrap();
        let mu = curve.fluid(faultwright::units::Celsius(row.value("oil_c"))).viscosity_pa_s;
        let lag_s = if row.value("oil_c") < 60.0 { 0.25 * mu } else { 0.0 };
        // What sticks follows another law there.
        let sticks = row.value("stiction_n") > 0.0;
        if let (Some(wanted), false) = (row.number("printed_t63"), sticks) {
            let got = ours.t63.unwrap();
            let slack = 0.015 + 0.02 * wanted + pulse_s + lag_s;
            assert!((got - wanted).abs() < slack, "{name} t63: {got} {wanted}");
        }
        if let (Some(wanted), false) = (row.number("printed_t90"), sticks) {
            let got = ours.t90.unwrap();
            // The preparatory study themselves call the last tenth "dominated by the PID tail".
            let slack = 0.06 + 0.02 * wanted + lag_s;
            assert!((got - wanted).abs() < slack, "{name} t90: {got} {wanted}");
        }
        for (what, got, slack) in [
            ("printed_mean_bar", ours.mean_bar, 0.015),
            ("printed_least_bar", ours.least_bar, 0.015),
            ("printed_duty", ours.duty, 0.025),
            ("printed_ptp", ours.peak_to_peak, 0.13),
        ] {
            // The screen of 95 % in cold oil has not settled when the figures are taken, and at rest
            // the pin holds the vane, which the preparatory study leaves free.
            // A phaser that stands still makes this module add duty; the preparatory study's module waits.
            let is_apart = match what {
                // Behind a screen of 99 % the vane is still on its way.
                "printed_ptp" => ["screen 95 cold", "back to rest", "screen 99"].contains(&name),
                "printed_duty" => name == "screen 98 hot idle",
                _ => false,
            };
            if let (Some(wanted), false) = (row.number(what), is_apart) {
                assert!((got - wanted).abs() < slack, "{name} {what}: {got} {wanted}");
            }
        }
    }
}

/// The road test with its figures and codes.
fn road_run(row: &Row<'_>) -> (f64, f64, f64, Vec<(String, f64)>, Vec<f64>) {
    let cam = if row.text("cam") == "0" { Cam::Intake } else { Cam::Exhaust };
    let extra = row.value("extra_ohm");
    let coil = 14.2424 + extra;
    let (hold, r_total) =
        if extra > 1e3 { (0.404, 1e12) } else { (0.404 * coil / 14.2424, coil + 0.45) };
    let mut engine = one_cam(row, cam, hold, r_total, 88.0);
    // Pressure builds before the monitors' cycle and the fault begin.
    engine.hold(&Demand::IDLE, 500);
    let forced = row.value("forced");
    if forced >= 0.0 {
        let condition = *engine.cam(cam.on(Bank::One)).condition();
        let forced_duty = Some(forced);
        engine.set_cam(cam.on(Bank::One), CamCondition { forced_duty, ..condition });
    }
    let record = drive_as_printed(&mut engine, cam);
    let summary = record.cams.one.of(cam);
    let mut codes: Vec<(String, f64)> = summary
        .failures()
        .filter_map(|dated| dated.failed_at.map(|at| (dated.finding.code.to_string(), at.0)))
        .collect();
    codes.sort_by(|a, b| a.0.cmp(&b.0));
    let steps = summary.steps.iter().map(|step| step.time.0).collect();
    (summary.mean_error.0, record.least_pressure.0, record.mean_pressure.0, codes, steps)
}

fn named(text: &str) -> Vec<(String, f64)> {
    let entries = text.split(';').filter(|entry| !entry.is_empty());
    entries
        .map(|entry| {
            let (name, at) = entry.split_once('@').unwrap_or((entry, "0"));
            (name.to_owned(), at.parse().unwrap())
        })
        .collect()
}

#[test]
fn reference_road_tests_agree_with_the_other_program() {
    let mut compared = 0;
    for row in rows(ROAD).filter(|row| row.text("printed_codes") != "seeds") {
        let name = format!("{} cam {}", row.text("case"), row.text("cam"));
        let (error, least, mean, codes, steps) = road_run(&row);
        let wanted = named(row.text("codes"));
        let hunts = (1.0..=2.0).contains(&row.value("stiction_n"));
        let only =
            |codes: &[(String, f64)]| codes.iter().map(|code| code.0.clone()).collect::<Vec<_>>();
        if hunts {
            // Limit cycles: whether a code comes is compared, not when and on which side.
            assert_eq!(codes.is_empty(), wanted.is_empty(), "{name}: {codes:?} {wanted:?}");
        } else {
            assert_eq!(only(&codes), only(&wanted), "{name}: {codes:?} {wanted:?}");
            for (got, wanted) in codes.iter().zip(&wanted) {
                assert!((got.1 - wanted.1).abs() < 0.12, "{name}: {got:?} {wanted:?}");
            }
            let theirs: Vec<f64> =
                row.text("step_times").split(';').filter_map(|text| text.parse().ok()).collect();
            // Beyond 98 % a phaser hardly moves: whether two degrees were reached in time, and with
            // that whether a step counts, is a matter of hundredths.
            let counts = row.value("blockage") < 0.98;
            assert!(!counts || steps.len() == theirs.len(), "{name}: {steps:?} {theirs:?}");
            // Both count in hundredths; a sticking spool adds its break-away jitter.
            let slack = if row.value("stiction_n") > 0.0 { 0.06 } else { 0.021 };
            for (got, wanted) in steps.iter().zip(&theirs).filter(|_| counts) {
                assert!(
                    (got - wanted).abs() < slack + 0.01 * wanted,
                    "{name}: {steps:?} {theirs:?}"
                );
            }
            let wanted = row.value("mean_error_deg");
            assert!((error - wanted).abs() < 0.04 + 0.02 * wanted, "{name}: {error} {wanted}");
        }
        assert!((least - row.value("least_bar")).abs() < 0.03, "{name}: {least}");
        assert!((mean - row.value("mean_bar")).abs() < 0.01, "{name}: {mean}");
        compared += 1;
    }
    assert_eq!(compared, 32);
}

#[test]
fn reference_road_tests_agree_with_the_printed_table() {
    let mut compared = 0;
    for row in rows(ROAD) {
        let printed = row.text("printed_codes");
        if printed == "seeds" || printed == "*" {
            continue;
        }
        let name = row.text("case");
        let (error, _, _, codes, _) = road_run(&row);
        let wanted: Vec<String> = named(printed).into_iter().map(|code| code.0).collect();
        assert_eq!(codes.into_iter().map(|code| code.0).collect::<Vec<_>>(), wanted, "{name}");
        // Beyond 98 % a screen passes so little that its error depends on every detail, and a
        // spool that sticks follows another law than the preparatory study's.
        let is_another_law = (0.5..5.0).contains(&row.value("stiction_n"));
        let is_apart = name == "screen 98.5" || is_another_law;
        if let (Some(wanted), false) = (row.number("printed_mean_error"), is_apart) {
            assert!((error - wanted).abs() < 0.12 + 0.03 * wanted, "{name}: {error} {wanted}");
        }
        compared += 1;
    }
    assert_eq!(compared, 20);
}

/// Thirteen step times each, printed to hundredths.
#[test]
fn reference_step_times_of_the_printed_screen_sweep() {
    let sweep = [
        (0.0, [0.31, 0.08, 0.06, 0.1, 0.18, 0.07, 0.11, 0.34, 0.06, 0.08, 0.22, 0.07, 0.12]),
        (0.8, [0.41, 0.11, 0.09, 0.14, 0.27, 0.1, 0.17, 0.44, 0.08, 0.12, 0.31, 0.09, 0.18]),
        (0.9, [0.65, 0.21, 0.16, 0.26, 0.47, 0.16, 0.3, 0.71, 0.14, 0.2, 0.53, 0.16, 0.33]),
        (0.93, [0.92, 0.31, 0.24, 0.41, 0.69, 0.25, 0.46, 0.99, 0.21, 0.33, 0.77, 0.25, 0.51]),
        (0.95, [1.37, 0.54, 0.38, 0.67, 1.12, 0.42, 0.77, 1.43, 0.35, 0.53, 1.2, 0.42, 0.87]),
        (0.97, [2.73, 1.32, 0.96, 1.66, 2.63, 1.17, 1.93, 2.89, 1.05, 1.34, 2.77, 1.29, 2.2]),
    ];
    for (blockage, printed) in sweep {
        let row = rows(ROAD)
            .find(|row| {
                row.text("cam") == "0"
                    && row.value("blockage") == blockage
                    && ["sound", "screen 80", "screen 90", "screen 93", "screen 95", "screen 97"]
                        .contains(&row.text("case"))
            })
            .unwrap();
        let (.., steps) = road_run(&row);
        assert_eq!(steps.len(), printed.len());
        for (got, wanted) in steps.iter().zip(printed) {
            // Two hundredths for counting, 3 %, and for the slowest screen 0.07 s, because a step
            // begins where the one before left the cam.
            let left_over_s = if blockage > 0.96 { 0.07 } else { 0.0 };
            let slack = 0.026 + 0.03 * wanted + left_over_s;
            assert!((got - wanted).abs() < slack, "{blockage}: {steps:?}");
        }
    }
}

/// A quantity with a rest point comes out the same at any step: what the module sees at the end of
/// a long hold is its target.
#[test]
fn limit_a_long_hold_ends_on_the_target() {
    let row = rows(STEPS).next().unwrap();
    let mut engine = one_cam(&row, Cam::Intake, row.value("hold"), row.value("r_total"), 90.0);
    let wanted = demand(2_000.0, 17.0, 0.0);
    for _ in 0..20_000 {
        engine.tick(&wanted);
    }
    let away = engine.cam(CamPlace::INTAKE).vane().away();
    assert!((away.0 - 17.0).abs() < 0.15, "{away:?}");
    assert_eq!(engine.cam(CamPlace::INTAKE).target(), CrankDegrees(17.0));
}

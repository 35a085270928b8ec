//! Benches on which the running engine is compared with another program and with printed tables.
#![expect(clippy::expect_used, reason = "a test fails by panicking")]
#![expect(dead_code, reason = "each test file uses its own part of it")]

use faultwright::control_module::verdict::Verdict;
use faultwright::numerics::elementary::exp;
use faultwright::numerics::streams::Streams;
use faultwright::physics::oil::Oil;
use faultwright::physics::pulsed_coil::CoilDrive;
use faultwright::physics::warm_up::EngineHeat;
use faultwright::units::{Celsius, CrankDegrees, Litres, Newtons, Ohms, Rpm};
use faultwright::vehicle::cam_line::CamCondition;
use faultwright::vehicle::per_cam::{Cam, PerCam};
use faultwright::vehicle::route::{Demand, RouteProfile};
use faultwright::vehicle::run_record::{CamSummary, RunRecord};
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};

/// One row of a table, read by column name.
pub struct Row<'a> {
    names: Vec<&'a str>,
    fields: Vec<&'a str>,
}

pub fn rows(table: &str) -> impl Iterator<Item = Row<'_>> {
    let mut lines = table.lines();
    let names: Vec<&str> = lines.next().unwrap().split(',').collect();
    lines.map(move |line| {
        let fields: Vec<&str> = line.split(',').collect();
        assert_eq!(fields.len(), names.len(), "{line}");
        Row { names: names.clone(), fields }
    })
}

impl Row<'_> {
    pub fn text(&self, name: &str) -> &str {
        let index = self.names.iter().position(|known| *known == name).expect(name);
        self.fields[index]
    }

    /// The number of a column, `None` where the table has none.
    pub fn number(&self, name: &str) -> Option<f64> {
        let text = self.text(name);
        if text.is_empty() || text == "-" { None } else { Some(text.parse().expect(text)) }
    }

    pub fn value(&self, name: &str) -> f64 {
        self.number(name).expect(name)
    }
}

pub fn oil(name: &str) -> Oil {
    match name {
        "fresh" => Oil::TYPICAL_5W_30,
        "oxidised" => Oil { thickening: 1.8, ..Oil::TYPICAL_5W_30 },
        "diluted" => Oil { dilution: 0.65, ..Oil::TYPICAL_5W_30 },
        other => panic!("no oil {other}"),
    }
}

pub fn coil(ohms: f64) -> CoilDrive {
    CoilDrive { r_total: Ohms(ohms), ..CamCondition::SOUND.coil }
}

/// An engine like the other program's: one camshaft works, the other is locked and tight, and the
/// module holds with a fixed duty instead of one that it learns.
pub fn one_cam(row: &Row<'_>, cam: Cam, hold: f64, r_total: f64, oil_c: f64) -> RunningEngine {
    let mut spec = EngineSpec::TYPICAL;
    let mut condition = EngineCondition {
        oil: oil(row.text("oil")),
        fill: Litres(row.value("fill_l")),
        ..EngineCondition::SOUND
    };
    for other in Cam::BOTH {
        let line = spec.cams.one.of_mut(other);
        line.control.learning_s = f64::INFINITY;
        line.control.hold_duty = hold;
        let valve = condition.cams.one.of_mut(other);
        if other == cam {
            valve.blockage = row.value("blockage");
            valve.stiction = Newtons(row.value("stiction_n"));
            valve.coil = coil(r_total);
        } else {
            line.port.leak_m3 = 0.0;
            valve.coil = CoilDrive::OPEN;
        }
    }
    let heat = EngineHeat { coolant: Celsius(oil_c), oil: Celsius(oil_c) };
    let air = Streams::new(1).stream("aeration");
    let mut engine = RunningEngine::new(spec, condition, heat, air).unwrap();
    // The other program gives the speed, at idle too.
    engine.brake(true);
    engine
}

pub fn set_oil(engine: &mut RunningEngine, oil_c: f64) {
    engine.set_heat(EngineHeat { coolant: Celsius(oil_c), oil: Celsius(oil_c) });
}

/// The oil temperature that the other program gives the warm road test.
pub fn road_oil_c(milliseconds: u32) -> f64 {
    88.0 + 6.0 * (1.0 - exp(-f64::from(milliseconds) / 120_000.0))
}

/// The other program's wanted angles of the intake cam [degrees] on each leg of the warm road test;
/// its exhaust cam follows at four fifths. Our own come from the module's map.
pub const PRINTED_TARGETS: [f64; 16] =
    [0.0, 28.0, 20.0, 35.0, 24.0, 5.0, 34.0, 22.0, 0.0, 0.0, 30.0, 20.0, 5.0, 36.0, 24.0, 0.0];

/// Drives the warm road test with the other program's oil temperature and wanted angles, which are
/// those of one camshaft alone.
pub fn drive_as_printed(engine: &mut RunningEngine, cam: Cam) -> RunRecord {
    let route = RouteProfile::warm_road_test();
    engine.begin_cycle();
    engine.begin_run();
    let mut driver = route.driver();
    let mut tick = 0;
    while let Some(mut demand) = driver.demand(f64::from(tick) * 1e-3) {
        let at_s = f64::from(tick) * 1e-3;
        let leg = route.segments.iter().position(|leg| at_s < leg.until_s).unwrap();
        let mut targets = PerCam { intake: CrankDegrees(0.0), exhaust: CrankDegrees(0.0) };
        let share = if cam == Cam::Intake { 1.0 } else { 0.8 };
        *targets.of_mut(cam) = CrankDegrees(share * PRINTED_TARGETS[leg]);
        demand.bench_targets = Some(targets);
        if tick % 100 == 0 {
            set_oil(engine, road_oil_c(tick));
        }
        engine.tick(&demand);
        tick += 1;
    }
    engine.record()
}

/// Names of the failed codes, in order of the alphabet.
pub fn codes(summary: &CamSummary) -> Vec<String> {
    let mut codes: Vec<String> =
        summary.failures().map(|dated| dated.finding.code.to_string()).collect();
    codes.sort();
    codes
}

pub fn verdicts(summary: &CamSummary) -> [Verdict; 4] {
    summary.findings.map(|dated| dated.finding.verdict)
}

/// A warm engine that has learnt its valves, ready to drive.
#[expect(clippy::large_types_passed_by_value, reason = "a literal at most calls")]
pub fn warm(condition: EngineCondition, seed: u64) -> RunningEngine {
    let heat = EngineHeat { coolant: Celsius(89.0), oil: Celsius(88.0) };
    let air = Streams::new(seed).stream("aeration");
    let mut engine = RunningEngine::new(EngineSpec::TYPICAL, condition, heat, air).unwrap();
    engine.assume_learnt();
    engine.start();
    engine
}

/// The warm road test of an engine with something changed.
pub fn road_test(seed: u64, change: impl FnOnce(&mut EngineCondition)) -> RunRecord {
    let mut condition = EngineCondition::SOUND;
    change(&mut condition);
    warm(condition, seed).drive(&RouteProfile::warm_road_test()).unwrap()
}

/// The same change of a valve on one camshaft.
pub fn on(cam: Cam, change: impl FnOnce(&mut CamCondition)) -> impl FnOnce(&mut EngineCondition) {
    move |condition| change(condition.cams.one.of_mut(cam))
}

pub fn demand(rpm: f64, intake_deg: f64, exhaust_deg: f64) -> Demand {
    Demand {
        speed: Rpm(rpm),
        km_h: 0.0,
        load: 0.3,
        bench_targets: Some(PerCam {
            intake: CrankDegrees(intake_deg),
            exhaust: CrankDegrees(exhaust_deg),
        }),
        ..Demand::IDLE
    }
}

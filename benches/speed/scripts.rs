//! Two transients against the independent Python scripts that the tests' tables were made with, where Python
//! with numpy and scipy is installed: the stroke of a valve, whose coil current and plunger go together, and
//! the step of a phaser.

use super::stopwatch::median;
use super::table::Row;
use faultwright::numerics::streams::Streams;
use faultwright::physics::coil::Winding;
use faultwright::physics::solenoid::Solenoid;
use faultwright::physics::spool::Spool;
use faultwright::physics::stroke::{Drive, Surroundings, energise};
use faultwright::physics::warm_up::EngineHeat;
use faultwright::units::{Celsius, CrankDegrees, Millimetres, Ohms, Rpm, Seconds, Volts};
use faultwright::vehicle::per_cam::PerCam;
use faultwright::vehicle::route::Demand;
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};
use std::hint::black_box;
use std::process::Command;
use std::time::Duration;

/// Times the integration alone, without the start of Python, the tables and the printing. Argument: the
/// folder of the scripts. A compiler for Python that one script would use is left out: it is the plain
/// scripts that are compared.
const TIMER: &str = r#"
import sys, time, types, warnings
warnings.filterwarnings("ignore")
plain = types.ModuleType("numba")
plain.njit = lambda *a, **k: a[0] if a and callable(a[0]) else (lambda f: f)
sys.modules["numba"] = plain
def names(path, end):
    space = {"__name__": "bench"}
    exec(compile(open(path).read().rsplit(end, 1)[0], path, "exec"), space)
    return space
def took(work):
    times = []
    for _ in range(3):
        began = time.process_time()
        work()
        times.append(time.process_time() - began)
    return sorted(times)[1]
valve = names(sys.argv[1] + "/solenoid.py", "main()")
case = valve["CASES"][1]
def stroke():
    _, _, state = valve["integrate"](case, case.volts, (0.0, 0.0, 0.0), 0.0, case.on_s, False)
    valve["integrate"](case, 0.0, state, 0.0, 1.0, False)
print(took(stroke))
engine = names(sys.argv[1] + "/running_engine.py", "if __name__")
import numpy as np
dt, n = 1e-4, 70000
target = np.where(np.arange(n) * dt < 1.0, 0.0, 20.0)
print(took(lambda: engine["simulate"](dt, np.full(n, 2000.0), np.full(n, .3), target, 0, np.full(n, 90.0),
    *engine["OILS"]["fresh"], 0.0, 0.0, 4.5, 14.69, .404, -1.0, 1)))
"#;

pub fn rows() -> Result<Vec<Row>, String> {
    let scripts = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference");
    let output = Command::new("python3").args(["-c", TIMER, scripts]).output().map_err(|_| {
        "python3 is not installed, so no transient is compared with a script".to_owned()
    })?;
    let said = String::from_utf8_lossy(&output.stdout);
    let times: Vec<f64> = said.lines().filter_map(|line| line.trim().parse().ok()).collect();
    let &[stroke_s, step_s] = times.as_slice() else {
        let why = String::from_utf8_lossy(&output.stderr);
        let why = why.lines().last().unwrap_or("it printed no times").to_owned();
        return Err(format!(
            "the Python scripts cannot be timed here ({why}); they need numpy and scipy"
        ));
    };
    let row = |what: &str, ours, seconds, against: &str| Row {
        what: what.to_owned(),
        ours,
        other: Duration::from_secs_f64(seconds),
        against: against.to_owned(),
        goal: 100.0,
    };
    Ok(vec![
        row(
            "stroke of a valve, 0.12 s on and 1 s off",
            stroke(),
            stroke_s,
            "scipy's Radau, tolerance 1e-10",
        ),
        row(
            "step of a phaser in a running engine, 7 s",
            phaser_step(),
            step_s,
            "plain Python, one cam, 0.1 ms",
        ),
    ])
}

fn stroke() -> Duration {
    median(|| {
        let stroke = energise(
            &Solenoid::REFERENCE,
            &Winding::REFERENCE,
            &Spool::REFERENCE,
            Drive { supply: Volts(12.6), source: Ohms(0.52), on_for: Seconds(0.12) },
            Surroundings {
                coil: Celsius(20.0),
                oil_viscosity_pa_s: Spool::REFERENCE.reference_viscosity_pa_s,
                start: Millimetres(0.0),
            },
        );
        assert!(stroke.has_returned());
        black_box(stroke);
    })
}

fn phaser_step() -> Duration {
    let heat = EngineHeat { coolant: Celsius(90.0), oil: Celsius(90.0) };
    let air = Streams::new(1).stream("air in the oil");
    let engine = RunningEngine::new(EngineSpec::TYPICAL, EngineCondition::SOUND, heat, air)
        .expect("a sound engine");
    let demand = |angle| Demand {
        speed: Rpm(2_000.0),
        load: 0.3,
        bench_targets: Some(PerCam { intake: CrankDegrees(angle), exhaust: CrankDegrees(0.0) }),
        ..Demand::IDLE
    };
    median(|| {
        let mut engine = engine.clone();
        for tick in 0..7_000 {
            engine.tick(&demand(if tick < 1_000 { 0.0 } else { 20.0 }));
        }
        black_box(engine.pressure());
    })
}

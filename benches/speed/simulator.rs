//! The same wiring in another circuit simulator, ngspice, where it is installed: many solutions inside one
//! process, the start of the process taken off, and a whole process for one solution.
//!
//! The netlist is the one that the tests compare readings with; the meter is on volts.

use super::stopwatch::median;
use super::table::Row;
use super::vehicle;
use super::wiring::{Bench, with_resistor};
use faultwright::physics::circuit::Network;
use std::fmt::Write as _;
use std::hint::black_box;
use std::process::Command;
use std::time::Duration;

const WIRING: &str = include_str!("../../tests/reference/wiring.cir");
const METERS: &str = include_str!("../../tests/reference/meter.cir");
/// Solutions in the process that solves many; each changes a wire's resistance first.
const MANY: u32 = 20_000;
/// Whole processes that are timed together.
const PROCESSES: u32 = 40;
/// Both programs must show the same, or the comparison compares nothing [V].
const AGREE_V: f64 = 1e-6;

pub fn rows() -> Result<Vec<Row>, String> {
    let folder = tempfile::tempdir().map_err(|error| error.to_string())?;
    let path = folder.path().join("bench.cir");
    let path = path.to_str().ok_or("the temporary folder has a name that is no text")?;
    let process = |solutions: u32, times: u32| -> Result<(Duration, f64), String> {
        std::fs::write(path, netlist(solutions)).map_err(|error| error.to_string())?;
        processor_time(path, times)
    };
    let (one, shown) = process(1, PROCESSES)?;
    let whole = one / PROCESSES;
    let (many, _) = process(MANY, 1)?;
    let within = many.saturating_sub(whole) / MANY;

    let (network, red) = ours();
    let ours_v = network.solve().map_err(|error| error.to_string())?.volts_between(red, 0);
    if (ours_v - shown).abs() > AGREE_V {
        return Err(format!("ngspice shows {shown} V and this program {ours_v} V"));
    }
    let ours = median(|| {
        black_box(black_box(&network).solve().expect("sound wiring"));
    });
    let row = |what: &str, other, against: &str, goal| Row {
        what: what.to_owned(),
        ours,
        other,
        against: against.to_owned(),
        goal,
    };
    Ok(vec![
        row(
            "DC solution against a circuit simulator",
            within,
            "ngspice, one of many in a process",
            20.0,
        ),
        row("DC solution against its whole process", whole, "ngspice, a process for one", 1_000.0),
    ])
}

/// The same wiring here, a meter on the first valve's control side, and the number of that node.
fn ours() -> (Network, usize) {
    let bench = Bench::of(vehicle::mended());
    let wiring = bench.wiring();
    let network = with_resistor(&wiring, "intake-control-harness", "battery-minus");
    (network, wiring.node("intake-control-harness").expect("a node of the wiring"))
}

/// The netlist in the bench's circumstances, solved so many times.
fn netlist(solutions: u32) -> String {
    let mut text = String::new();
    for line in WIRING.lines() {
        // What the harness works out for a sound vehicle with its first valve driven.
        let line = match line.split('=').next() {
            Some(".param rfeta") => ".param rfeta=0.15",
            Some(".param emf") => ".param emf=12.655",
            Some(".param rint") => ".param rint=8.03m",
            _ => line,
        };
        writeln!(text, "{line}").expect("text grows");
    }
    // Results are thrown away each time: otherwise the program drowns in its own tables.
    write!(
        text,
        "{METERS}xmeter a2h 0 reading volts\n.control\nset numdgt=15\nrepeat {}\nalter rwa1 = 50m\nop\n\
         destroy all\nend\nalter rwa1 = 45m\nop\nprint v(reading)\nquit 0\n.endc\n.end\n",
        solutions - 1
    )
    .expect("text grows");
    text
}

/// The processor's time for so many processes after each other, and what the last one showed.
fn processor_time(path: &str, times: u32) -> Result<(Duration, f64), String> {
    const SCRIPT: &str = "for _ in $(seq \"$1\"); do shown=$(ngspice -n -b \"$2\" 2>/dev/null | grep 'v(reading) ='); \
                          done; echo \"$shown\"; TIMEFORMAT='%3U %3S'; times";
    if Command::new("ngspice").arg("--version").output().is_err() {
        return Err("ngspice is not installed, so the wiring is not compared with it".to_owned());
    }
    let output = Command::new("bash")
        .args(["-c", SCRIPT, "bench", &times.to_string(), path])
        .output()
        .map_err(|error| format!("bash, which keeps the time of other programs: {error}"))?;
    let said = String::from_utf8_lossy(&output.stdout);
    let shown = said
        .lines()
        .find_map(|line| line.split_once("v(reading) = ")?.1.trim().parse().ok())
        .ok_or("ngspice did not solve the wiring")?;
    // The last line is the time of the children: "0m1.234s 0m0.567s".
    let seconds: f64 = said
        .lines()
        .last()
        .unwrap_or_default()
        .split_whitespace()
        .filter_map(|text| {
            let (minutes, seconds) = text.strip_suffix('s')?.split_once('m')?;
            Some(minutes.parse::<f64>().ok()? * 60.0 + seconds.parse::<f64>().ok()?)
        })
        .sum();
    Ok((Duration::from_secs_f64(seconds), shown))
}

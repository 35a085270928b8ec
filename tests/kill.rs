//! Whatever step was shown is on the disk, at whatever moment the program is killed.
//!
//! The real binary is killed, not a stand-in: with a scenario of one fault and short roads it deals
//! in a twentieth of a second. A round goes on with the session of the round before, so each kill is followed by a
//! resumption; steps wait in the pipe, so that the program writes one entry after the other and the
//! kill falls at any moment, inside a write too.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]
#![cfg(target_os = "linux")]

use faultwright::numerics::streams::Streams;
use faultwright::scenario::load::load;
use faultwright::session::journal::{ReadMode, read};
use faultwright::session::setup::Briefing;
use faultwright::session::step::Step;
use faultwright::wording::step_parser;
use serde_json::Value;
use std::fs;
use std::io::{BufRead as _, BufReader, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::Duration;

/// Two rows of rounds run side by side, each with sessions of its own.
const ROUNDS_OF_ROW: usize = 50;
const ROWS: [&str; 2] = ["first", "second"];
/// How likely a kill waits for none, one, two or three steps: few, so that a session lasts for many.
const AS_LIKELY: [f64; 4] = [1.0; 4];
/// Longest wait between the last step that was waited for and the kill [s]: an entry or two are
/// written in that time.
const LONGEST_WAIT_S: f64 = 0.002;
/// Longest wait before a kill that waits for no step [s]: dealing and resuming take about as long.
const LONGEST_START_S: f64 = 0.12;

/// Length of the roads [s]; every one has a segment that ends by then.
const ROAD_S: f64 = 18.0;

const STEPS: &str = "ask symptom
ask when
dipstick
look engine-bay
key on
read codes
read freeze-frame
read live-data
command intake-valve on
command intake-valve off
key off
remove engine-cover
unplug intake-connector
look intake-connector
zero leads
predict 8.8 to 9.7 ohms
measure ohms intake-valve-feed intake-valve-control
key on
measure volts intake-harness-feed battery-minus
measure volts intake-harness-control battery-minus
key off
suspect open-coil intake-valve 60%
commit open-coil intake-valve
ask approval
plug intake-connector
refit engine-cover
write concern Lacks pull
write cause Winding open
write correction None, the customer declined
hand over declined
";

/// A stretch of a road that begins with five minutes of warming up, as if it did not.
fn without_warm_up(line: &str) -> String {
    const WARM_UP_S: f64 = 300.0;
    let Some((before, rest)) = line.split_once("(until_s: ") else { return line.to_owned() };
    let Some((until, rest)) = rest.split_once(',') else { return line.to_owned() };
    let until = until.parse::<f64>().unwrap();
    let until = if until > WARM_UP_S { until - WARM_UP_S } else { until };
    format!("{before}(until_s: {until},{rest}")
}

/// The shipped scenario with one fault and roads of a few seconds, so that dealing, resuming and
/// marking take little.
fn small_scenario(folder: &Path) -> PathBuf {
    let shipped = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/market-hill.ron");
    let text = fs::read_to_string(shipped).unwrap();
    let kept: Vec<String> = text
        .lines()
        .map(without_warm_up)
        .filter(|line| {
            let line = line.trim_start();
            let until = line.strip_prefix("(until_s: ").and_then(|rest| rest.split_once(','));
            let is_late = until.is_some_and(|(until, _)| until.parse::<f64>().unwrap() > ROAD_S);
            let is_other =
                line.starts_with("(kind:") && !line.contains("OpenCoil, place: \"intake");
            !is_late && !is_other
        })
        .collect();
    let path = folder.join("small.ron");
    fs::write(&path, kept.join("\n")).unwrap();
    path
}

struct Bench {
    folder: tempfile::TempDir,
    scenario: PathBuf,
    steps: Vec<Step>,
}

impl Bench {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let scenario = small_scenario(folder.path());
        let briefing: Briefing = load(&scenario).unwrap().briefing();
        let steps =
            STEPS.lines().filter_map(|line| step_parser::parse(line, &briefing).unwrap()).collect();
        Self { folder, scenario, steps }
    }

    fn command(&self) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_faultwright"));
        command.env("HOME", self.folder.path()).env("XDG_DATA_HOME", self.folder.path());
        command
    }

    /// The program with the steps from `done` on in its pipe; more could come, so it does not
    /// leave by itself.
    fn start(&self, session: &Path, done: usize) -> Child {
        let mut child = self
            .command()
            .args(["bench", "--format", "json", "--seed", "5", "--scenario"])
            .arg(&self.scenario)
            .arg("--session")
            .arg(session)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let rest: Vec<&str> = STEPS.split_inclusive('\n').skip(done).collect();
        child.stdin.as_mut().unwrap().write_all(rest.concat().as_bytes()).unwrap();
        child
    }

    /// The entries of a session file, which must be those of the script as far as it goes, and
    /// whether a torn one stands behind them.
    fn entries(&self, session: &Path) -> (usize, bool) {
        let recorded = read(session, ReadMode::AllowTorn).unwrap();
        let taken: Vec<&Step> = recorded.entries.iter().map(|entry| &entry.step).collect();
        assert!(taken.len() <= self.steps.len());
        assert!(taken.iter().zip(&self.steps).all(|(taken, step)| *taken == step), "{taken:?}");
        (taken.len(), recorded.torn.is_some())
    }

    fn ends_well(&self, command: &str, session: &Path) {
        let output = self.command().arg(command).arg(session).output().unwrap();
        assert!(output.status.success(), "{command}: {output:?}");
    }
}

/// The entry that a line of output acknowledges, when it is whole.
fn acknowledged(line: &str) -> Option<usize> {
    let value: Value = serde_json::from_str(line).ok()?;
    value.get("till")?;
    usize::try_from(value["entry"].as_u64()?).ok()
}

/// What happened in a row of rounds.
struct Row {
    finished: usize,
    torn: usize,
    beyond: usize,
    early: usize,
}

fn kill_again_and_again(name: &str) -> Row {
    let bench = Bench::new();
    let mut chance = Streams::new(20).stream(name);
    let mut session = bench.folder.path().join("0.session");
    let mut on_disk = 0;
    let (mut finished, mut torn, mut beyond, mut early) = (0, 0, 0, 0);
    for round in 0..ROUNDS_OF_ROW {
        let mut child = bench.start(&session, on_disk);
        let wanted = on_disk + chance.weighted(&AS_LIKELY).unwrap();
        let mut seen = on_disk;
        let mut output = BufReader::new(child.stdout.take().unwrap());
        let mut hear = |seen: &mut usize| {
            let mut line = String::new();
            let is_open = output.read_line(&mut line).unwrap() > 0;
            *seen = acknowledged(&line).unwrap_or(*seen);
            is_open
        };
        if wanted == on_disk {
            sleep(Duration::from_secs_f64(chance.between(0.0, LONGEST_START_S)));
        }
        while seen < wanted && hear(&mut seen) {}
        sleep(Duration::from_secs_f64(chance.between(0.0, LONGEST_WAIT_S)));
        child.kill().unwrap();
        // What it had printed before it was killed was shown as well.
        while hear(&mut seen) {}
        child.wait().unwrap();
        if !session.exists() {
            assert_eq!(seen, 0, "round {round}: steps were shown of a session without a file");
            early += 1;
            continue;
        }
        if fs::metadata(&session).unwrap().len() == 0 {
            // Killed between making the file and writing its header: nothing was begun.
            assert_eq!(seen, 0, "round {round}");
            fs::remove_file(&session).unwrap();
            early += 1;
            continue;
        }
        let (entries, is_torn) = bench.entries(&session);
        assert!(
            entries >= seen,
            "round {round}: {seen} steps were shown, {entries} are on the disk"
        );
        torn += usize::from(is_torn);
        beyond += usize::from(entries > seen);
        on_disk = entries;
        if on_disk == bench.steps.len() {
            bench.ends_well("replay", &session);
            finished += 1;
            session = bench.folder.path().join(format!("{finished}.session"));
            on_disk = 0;
        }
    }
    // The last one is finished in peace, and every one can be marked.
    let child = bench.start(&session, on_disk);
    assert!(child.wait_with_output().unwrap().status.success());
    assert_eq!(bench.entries(&session), (bench.steps.len(), false));
    bench.ends_well("replay", &session);
    bench.ends_well("mark", &session);
    Row { finished, torn, beyond, early }
}

#[test]
fn verif_no_shown_step_is_lost_by_a_hundred_kills() {
    let rows: Vec<Row> = std::thread::scope(|scope| {
        let rows = ROWS.map(|name| scope.spawn(move || kill_again_and_again(name)));
        rows.into_iter().map(|row| row.join().unwrap()).collect()
    });
    let sum = |count: fn(&Row) -> usize| rows.iter().map(count).sum::<usize>();
    let (finished, torn) = (sum(|row| row.finished), sum(|row| row.torn));
    let (beyond, early) = (sum(|row| row.beyond), sum(|row| row.early));
    println!(
        "{finished} sessions finished, {torn} torn entries, {beyond} kills between writing and showing, {early} before the file"
    );
    assert!(finished >= 1, "every kill hit the same session");
    assert!(beyond + torn >= 1, "no kill fell between writing and showing; wait differently");
}

//! What the player plays, as it arrives at a real sound server: recorded at the monitor of a sink that leads nowhere.
//!
//! `tests/sound_server.sh` starts the server and runs this; nobody else has one that a test may end.
#![cfg(all(feature = "sound-out", target_os = "linux"))]
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::physics::stroke::Impact;
use faultwright::sound::engine::{EngineRun, Moment, fires_hz};
use faultwright::sound::passage::{Part, Passage};
use faultwright::sound::player::{Address, Player, State};
use faultwright::units::{Joules, Rpm, Seconds};
use std::io::Read as _;
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::Duration;

const SECOND: usize = 48_000;
/// Least sample that is no silence: the sink carries floating point, so that silence is nought to the last bit.
const SILENCE: f32 = 1e-5;
const IDLE_RPM: f64 = 900.0;

/// Records what arrives at the sink.
struct Recorder {
    recording: Child,
    samples: Arc<Mutex<Vec<f32>>>,
}

impl Recorder {
    fn begin() -> Self {
        let mut recording = Command::new("parec")
            .args(["--device=faultwright.monitor", "--raw", "--latency-msec=20"])
            .args(["--format=float32le", "--rate=48000", "--channels=1"])
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let mut from = recording.stdout.take().unwrap();
        let samples = Arc::new(Mutex::new(Vec::new()));
        let taken = Arc::clone(&samples);
        thread::spawn(move || {
            let mut bytes = [0_u8; 4];
            while from.read_exact(&mut bytes).is_ok() {
                taken.lock().unwrap().push(f32::from_le_bytes(bytes));
            }
        });
        let recorder = Self { recording, samples };
        recorder.next(SECOND / 10);
        recorder
    }

    /// The next samples that arrive. The limit is far beyond what any machine needs.
    fn next(&self, count: usize) -> Vec<f32> {
        let begin = self.samples.lock().unwrap().len();
        for _ in 0..6_000 {
            let samples = self.samples.lock().unwrap();
            if samples.len() >= begin + count {
                return samples[begin..begin + count].to_vec();
            }
            drop(samples);
            thread::sleep(Duration::from_millis(10));
        }
        panic!("the recording stands still");
    }
}

impl Drop for Recorder {
    fn drop(&mut self) {
        let _ = self.recording.kill();
        let _ = self.recording.wait();
    }
}

fn rms(samples: &[f32]) -> f64 {
    let squares: f64 = samples.iter().map(|sample| f64::from(*sample) * f64::from(*sample)).sum();
    (squares / samples.len() as f64).sqrt()
}

/// Amplitude at a frequency over half a second at a time, so that a moment which a busy machine misses does not turn the one
/// half against the other.
fn line(samples: &[f32], hz: f64) -> f64 {
    let halves = samples.chunks_exact(SECOND / 2).map(|half| line_in(half, hz));
    (halves.map(|line| line * line).sum::<f64>() / (samples.len() / (SECOND / 2)) as f64).sqrt()
}

/// Amplitude of the line at a frequency, by Goertzel's recurrence.
fn line_in(samples: &[f32], hz: f64) -> f64 {
    let factor = 2.0 * (core::f64::consts::TAU * hz / SECOND as f64).cos();
    let (mut last, mut one_before) = (0.0, 0.0);
    for sample in samples {
        let next = f64::from(*sample) + factor * last - one_before;
        one_before = last;
        last = next;
    }
    let square: f64 = last * last + one_before * one_before - factor * last * one_before;
    2.0 / samples.len() as f64 * square.max(0.0).sqrt()
}

fn click(energy_j: f64) -> Passage {
    let speed_m_per_s = (2.0 * energy_j / 0.012).sqrt();
    Passage::new(vec![Part::Click(Impact {
        at: Seconds(0.0),
        speed_m_per_s,
        energy: Joules(energy_j),
    })])
}

fn idle() -> Passage {
    let moments = vec![Moment { at_s: 0.0, rpm: IDLE_RPM, load: 0.2 }];
    Passage::new(vec![Part::Engine(EngineRun {
        cylinders: 4,
        moments,
        is_rough: false,
        is_fired: true,
    })])
}

/// Ten milliseconds from where it stops being silent.
fn from_onset(samples: &[f32]) -> Vec<f32> {
    let onset = samples.iter().position(|sample| sample.abs() > SILENCE);
    let onset = onset.expect("nothing arrives at the sink");
    samples[onset..].iter().take(SECOND / 100).copied().collect()
}

fn until(player: &Player, state: State) {
    for _ in 0..3_000 {
        if player.state() == state {
            return;
        }
        thread::sleep(Duration::from_millis(10));
    }
    panic!("{:?} instead of {state:?}", player.state());
}

#[test]
#[ignore = "wants a sound server of its own, which tests/sound_server.sh starts"]
fn reference_what_is_played_arrives_at_a_sound_server() {
    let recorder = Recorder::begin();
    let player = Player::new(Address::all(|name| std::env::var_os(name)), 1.0, Arc::new(|| {}));

    // A sharp click and a dull one, each as loud as it was made.
    let mut levels = Vec::new();
    for energy_j in [1e-3, 1e-4] {
        let passage = click(energy_j);
        player.play(passage.clone());
        let got = from_onset(&recorder.next(SECOND));
        let made: Vec<f32> =
            passage.samples().map(|sample| sample as f32).take(SECOND / 100).collect();
        let off = rms(&got) / rms(&made);
        assert!((off - 1.0).abs() < 0.02, "{energy_j} J arrives {off} times as loud");
        levels.push(rms(&got));
        until(&player, State::Rests);
    }
    let more_db = 20.0 * (levels[0] / levels[1]).log10();
    assert!((more_db - 10.0).abs() < 0.3, "sharp over dull: {more_db} dB");

    // An engine at idle: its strongest line is that of its fires.
    player.play(idle());
    until(&player, State::Plays);
    let _fades_in = recorder.next(SECOND);
    let sounds = recorder.next(2 * SECOND);
    let fires = fires_hz(Rpm(IDLE_RPM), 4);
    let strongest = line(&sounds, fires);
    assert!(strongest > 0.01, "the fires arrive with an amplitude of {strongest}");
    for hz in (5..1_000).map(f64::from).filter(|hz| (hz - fires).abs() > 5.0) {
        assert!(line(&sounds, hz) < strongest, "{hz} Hz is stronger than the fires");
    }

    // Half the volume is half of it, and muted is nothing at all.
    player.set_gain(0.5);
    let _changes = recorder.next(SECOND);
    let half = rms(&recorder.next(2 * SECOND)) / rms(&sounds);
    assert!((half - 0.5).abs() < 0.03, "half the volume gives {half}");
    player.set_gain(0.0);
    until(&player, State::Rests);
    let _goes_away = recorder.next(SECOND);
    let muted = recorder.next(SECOND);
    assert!(muted.iter().all(|sample| sample.abs() < SILENCE), "muted, and yet it sounds");
    player.set_gain(1.0);
    until(&player, State::Plays);
    let _comes_back = recorder.next(SECOND);
    assert!(rms(&recorder.next(SECOND)) > 0.02, "it does not come back");

    // Silence ends it.
    player.play(Passage::SILENCE);
    until(&player, State::Rests);
    let _goes_away = recorder.next(SECOND);
    assert!(recorder.next(SECOND / 2).iter().all(|sample| sample.abs() < SILENCE));

    // The server goes away in the middle, and the next sound finds none.
    player.play(idle());
    until(&player, State::Plays);
    drop(recorder);
    assert!(Command::new("pactl").arg("exit").status().unwrap().success());
    until(&player, State::Lost);
    player.play(idle());
    until(&player, State::NoServer);
}

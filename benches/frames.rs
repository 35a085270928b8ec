//! The window's own work in a frame, with the renderer left out: see `benches/README.md`.
//!
//! `cargo bench --bench frames`
#![expect(clippy::expect_used, reason = "a bench that cannot be run ends by panicking")]
#![expect(clippy::print_stdout, reason = "a bench is there to print")]
#![expect(clippy::cast_possible_truncation, reason = "a share of a count is a small whole number")]
#![expect(clippy::cast_sign_loss, reason = "a share of a count is not negative")]

use faultwright::reasoning::world_store::WorldStore;
use faultwright::sound::passage::Passage;
use faultwright::sound::player::State;
use faultwright::wording::catalogue::Words;
use faultwright::workshop::{Headless, Speaker, Surroundings};
use std::sync::Arc;
use std::time::Duration;

/// What 99 of 100 frames should stay under [ms].
const GOAL: f64 = 4.0;
/// Frames of each page, a sweep of the pointer over all of it.
const FRAMES: usize = 3_000;
const FIRST_FRAMES: usize = 20;
const STEPS: &str = include_str!("../assets/pictured/steps.txt");

/// Lets nothing be heard.
struct Silent;

impl Speaker for Silent {
    fn play(&self, _: Passage) {}
    fn set_gain(&self, _: f32) {}
    fn state(&self) -> State {
        State::default()
    }
}

fn main() {
    let folder = std::env::temp_dir().join(format!("faultwright-frames-{}", std::process::id()));
    std::fs::create_dir_all(&folder).expect("a folder for the session");
    let sessions = folder.clone();
    let around = Surroundings {
        words: Arc::new(Words::for_language("en-GB")),
        sessions: Arc::new(move || Ok(sessions.clone())),
        worlds: WorldStore::none(),
        any_seed: || 2,
        scenario: None,
        settings_file: None,
        speaker: Arc::new(|_, _| Box::new(Silent)),
    };
    let mut window = Headless::open(around, 1_280.0, 680.0);
    measure(&mut window, "front page");
    window.begin(2);
    let lines = STEPS.lines().filter(|line| !line.is_empty() && !line.starts_with('#'));
    // Handing over would leave the page of the case.
    for line in lines.filter(|line| *line != "hand over") {
        window.take(line);
    }
    measure(&mut window, "a case with forty steps, the whole bay");
    std::fs::remove_dir_all(&folder).expect("the folder can be removed again");
}

fn measure(window: &mut Headless, what: &str) {
    for _ in 0..FIRST_FRAMES {
        window.frame(0.5, 0.5);
    }
    let mut spent: Vec<Duration> = (0..FRAMES)
        .map(|frame| {
            let share = frame as f32 / FRAMES as f32;
            window.frame((37.0 * share).fract(), share)
        })
        .collect();
    spent.sort_unstable();
    let at = |share: f64| 1e3 * spent[(share * (FRAMES - 1) as f64).round() as usize].as_secs_f64();
    let (middle, most) = (at(0.5), at(0.99));
    println!(
        "{what:<44} {middle:>6.2} ms in the middle, {most:>6.2} ms in 99 of 100, {:>5.2} of the goal of {GOAL} ms: {}",
        most / GOAL,
        if most <= GOAL { "met" } else { "MISSED" }
    );
}

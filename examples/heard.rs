//! Two seconds of an engine at idle, a rest, and the sharp click of a valve, through the program's own way out for sound:
//! for a pair of ears on a system where no test listens.
//!
//! `cargo run --no-default-features --features sound-out --example heard`
#![expect(clippy::print_stdout, reason = "its only result")]

use faultwright::physics::stroke::Impact;
use faultwright::sound::engine::{EngineRun, Moment};
use faultwright::sound::passage::{Part, Passage};
use faultwright::sound::player::{Address, Player};
use faultwright::units::{Joules, Seconds};
use std::sync::Arc;
use std::thread;
use std::time::Duration;

fn main() {
    let player = Player::new(Address::all(|name| std::env::var_os(name)), 1.0, Arc::new(|| {}));
    let listen = |what: &str, passage: Passage| {
        player.play(passage);
        thread::sleep(Duration::from_secs(2));
        println!("{what}: {:?}", player.state());
        player.play(Passage::SILENCE);
        thread::sleep(Duration::from_secs(1));
    };
    listen(
        "engine",
        Passage::new(vec![Part::Engine(EngineRun {
            cylinders: 4,
            moments: vec![Moment { at_s: 0.0, rpm: 900.0, load: 0.2 }],
            is_rough: false,
            is_fired: true,
        })]),
    );
    // A plunger of 12 g at 0.4 m/s.
    listen(
        "click",
        Passage::new(vec![Part::Click(Impact {
            at: Seconds(0.0),
            speed_m_per_s: 0.4,
            energy: Joules(1e-3),
        })]),
    );
    println!("at the end: {:?}", player.state());
}

//! Brings passages to the sound server, in a thread of its own, so that no frame ever waits for one.
//!
//! The newest passage takes the place of one that was not begun yet, so nothing queues up. A server that is not there, that
//! refuses or goes away is no error: nothing is heard, [`Player::state`] says so, and the next passage tries again.
//! The feature `sound-out` builds the way out in: on Linux the server is spoken to in its own protocol, on Windows and macOS
//! the system's own way is taken through the crate that knows them all. Elsewhere, and without the feature, there is none.

mod address;
#[cfg(all(feature = "sound-out", any(windows, target_os = "macos")))]
mod device;
#[cfg(not(all(feature = "sound-out", any(windows, target_os = "macos", target_os = "linux"))))]
mod nowhere;
mod orders;
#[cfg(any(test, all(feature = "sound-out", any(windows, target_os = "macos"))))]
mod pace;
#[cfg(all(feature = "sound-out", target_os = "linux"))]
mod server;
#[cfg(all(test, feature = "sound-out", target_os = "linux"))]
mod tests;
#[cfg(all(feature = "sound-out", target_os = "linux"))]
mod wire;

use super::mixer::Mixer;
use super::passage::Passage;
pub use address::Address;
#[cfg(all(feature = "sound-out", any(windows, target_os = "macos")))]
use device::play;
#[cfg(not(all(
    feature = "sound-out",
    any(windows, target_os = "macos", target_os = "linux")
)))]
use nowhere::play;
use orders::Orders;
#[cfg(all(feature = "sound-out", target_os = "linux"))]
use server::play;
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;

/// Silence before the first sound [samples]: 60 ms. A server that has mixed ahead takes a new stream up somewhere within its
/// first piece, and the blow of a click would be missed.
#[cfg(all(feature = "sound-out", any(windows, target_os = "macos", target_os = "linux")))]
const LEAD: u32 = super::SAMPLES_PER_SECOND * 6 / 100;

/// How it stands with the sound.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum State {
    /// Nothing was to be heard yet, or what was is over.
    #[default]
    Rests,
    /// Something is being played.
    Plays,
    /// No sound server is there, or no device that takes sound.
    NoServer,
    /// It does not want us, or does not answer.
    Refused,
    /// It went away while something was played.
    Lost,
    /// This build has no way out for sound.
    NotBuilt,
}

/// Told when the state changes; called from the player's own thread.
pub type Tell = Arc<dyn Fn() + Send + Sync>;

/// Plays passages. Dropping it ends what sounds.
pub struct Player {
    orders: Arc<Orders>,
    state: Arc<Mutex<State>>,
}

impl Player {
    /// A player at a volume of 0 to 1 that looks for the server at these addresses.
    #[must_use]
    pub fn new(addresses: Vec<Address>, gain: f32, tell: Tell) -> Self {
        let orders = Arc::new(Orders::new(gain));
        let state = Arc::new(Mutex::new(State::default()));
        let (taken, told) = (Arc::clone(&orders), Arc::clone(&state));
        thread::spawn(move || {
            let say = |new: State| {
                let old = std::mem::replace(
                    &mut *told.lock().unwrap_or_else(PoisonError::into_inner),
                    new,
                );
                if old != new {
                    tell();
                }
            };
            work(&addresses, &taken, gain, &say);
        });
        Self { orders, state }
    }

    /// Begins a passage in the place of whatever sounds. It returns at once.
    pub fn play(&self, passage: Passage) {
        self.orders.play(passage);
    }

    /// Sets the volume, 0 (muted) to 1.
    pub fn set_gain(&self, gain: f32) {
        self.orders.set_gain(gain);
    }

    /// How it stands with the sound.
    #[must_use]
    pub fn state(&self) -> State {
        *self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Drop for Player {
    fn drop(&mut self) {
        self.orders.end();
    }
}

/// Waits for passages and plays them until nobody wants any more.
fn work(addresses: &[Address], orders: &Orders, gain: f32, say: &dyn Fn(State)) {
    let mut mixer = Mixer::new(gain);
    while orders.wait(&mut mixer) {
        if mixer.is_silent() {
            continue;
        }
        let ended = play(addresses, &mut mixer, orders, &|| say(State::Plays));
        say(match ended {
            Ok(()) => State::Rests,
            Err(state) => {
                mixer.stop();
                state
            }
        });
    }
}

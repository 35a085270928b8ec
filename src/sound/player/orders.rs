//! What the player is to do next: one place, in which the newer takes the place of the older.

use crate::sound::mixer::Mixer;
use crate::sound::passage::Passage;
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};

/// What is wanted and has not been taken over.
#[derive(Debug)]
struct Wanted {
    passage: Option<Passage>,
    gain: f32,
    is_new: bool,
    is_over: bool,
}

/// Orders from the window to the player's thread.
#[derive(Debug)]
pub struct Orders {
    wanted: Mutex<Wanted>,
    bell: Condvar,
}

impl Orders {
    pub const fn new(gain: f32) -> Self {
        let wanted = Wanted { passage: None, gain, is_new: false, is_over: false };
        Self { wanted: Mutex::new(wanted), bell: Condvar::new() }
    }

    fn wanted(&self) -> MutexGuard<'_, Wanted> {
        self.wanted.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn change(&self, change: impl FnOnce(&mut Wanted)) {
        let mut wanted = self.wanted();
        change(&mut wanted);
        wanted.is_new = true;
        drop(wanted);
        self.bell.notify_one();
    }

    pub fn play(&self, passage: Passage) {
        self.change(|wanted| wanted.passage = Some(passage));
    }

    pub fn set_gain(&self, gain: f32) {
        self.change(|wanted| wanted.gain = gain);
    }

    pub fn end(&self) {
        self.change(|wanted| wanted.is_over = true);
    }

    /// Waits for something new and hands it to the mixer; false when it is over.
    pub fn wait(&self, mixer: &mut Mixer) -> bool {
        let wanted = self.wanted();
        let mut wanted = self
            .bell
            .wait_while(wanted, |wanted| !wanted.is_new)
            .unwrap_or_else(PoisonError::into_inner);
        wanted.hand_to(mixer)
    }

    /// Hands what is new to the mixer, if there is anything; false when it is over.
    #[cfg_attr(
        not(all(feature = "sound-out", any(windows, target_os = "macos", target_os = "linux"))),
        expect(dead_code, reason = "only a server plays for longer than a moment")
    )]
    pub fn look(&self, mixer: &mut Mixer) -> bool {
        self.wanted().hand_to(mixer)
    }
}

impl Wanted {
    fn hand_to(&mut self, mixer: &mut Mixer) -> bool {
        if std::mem::take(&mut self.is_new) {
            mixer.set_gain(self.gain);
            if let Some(passage) = self.passage.take() {
                mixer.begin(&passage);
            }
        }
        !self.is_over
    }
}

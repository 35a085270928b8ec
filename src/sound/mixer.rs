//! What sounds now: the newest passage, while the one before fades away, at the volume that is set.

use super::SAMPLES_PER_SECOND;
use super::passage::{Passage, PassageVoice};

/// Time in which what is replaced fades away [samples]: 10 ms, too short to be heard as a sound of its own.
const FADE: u32 = SAMPLES_PER_SECOND / 100;
/// Silence after which nothing sounds any more [samples]: a third of a second, so that a server has played what it holds.
const SILENT_AFTER: u32 = SAMPLES_PER_SECOND / 3;
/// How much of the way to a new volume is gone with a sample: 63 % in 10 ms.
const GAIN_SHARE: f32 = 1.0 / FADE as f32;
/// A volume that is none [share of full scale]: far below the least step of a sample.
const NO_GAIN: f32 = 1e-6;

/// What sounds now.
#[derive(Debug)]
pub struct Mixer {
    now: Option<PassageVoice>,
    is_endless: bool,
    going: Option<(PassageVoice, u32)>,
    wanted_gain: f32,
    gain: f32,
    silent_for: u32,
}

impl Mixer {
    /// Nothing sounds, at a volume of 0 to 1.
    #[must_use]
    pub const fn new(gain: f32) -> Self {
        Self {
            now: None,
            is_endless: false,
            going: None,
            wanted_gain: gain,
            gain,
            silent_for: SILENT_AFTER,
        }
    }

    /// Begins a passage and lets the one before fade away.
    pub fn begin(&mut self, passage: &Passage) {
        if let Some(voice) = self.now.take() {
            self.going = Some((voice, FADE));
        }
        self.now = (!passage.parts().is_empty()).then(|| passage.samples());
        self.is_endless = passage.is_endless();
        self.silent_for = 0;
        self.pass_over();
    }

    /// Sets the volume, 0 (muted) to 1.
    pub fn set_gain(&mut self, gain: f32) {
        self.wanted_gain = gain;
        self.pass_over();
    }

    /// What would have been over when it is loud again is left out: of an engine that goes on only that remains.
    fn pass_over(&mut self) {
        if self.wanted_gain > NO_GAIN {
            return;
        }
        match &mut self.now {
            Some(voice) if self.is_endless => voice.pass_to_last(),
            now => *now = None,
        }
    }

    const fn is_muted(&self) -> bool {
        self.wanted_gain <= NO_GAIN && self.gain <= NO_GAIN
    }

    /// Whether nothing sounds and nothing is about to.
    #[must_use]
    pub const fn is_silent(&self) -> bool {
        self.is_muted()
            || (self.now.is_none() && self.going.is_none() && self.silent_for >= SILENT_AFTER)
    }

    /// Nothing sounds any more, at once.
    pub fn stop(&mut self) {
        *self = Self::new(self.wanted_gain);
    }

    /// The next sample.
    #[expect(clippy::cast_possible_truncation, reason = "a server takes no more digits")]
    pub fn next_sample(&mut self) -> f32 {
        self.gain += (self.wanted_gain - self.gain) * GAIN_SHARE;
        if self.is_muted() {
            self.gain = 0.0;
            return 0.0;
        }
        let mut sample = if let Some(Some(sample)) = self.now.as_mut().map(Iterator::next) {
            sample as f32
        } else {
            self.now = None;
            self.silent_for = self.silent_for.saturating_add(1);
            0.0
        };
        self.going = self.going.take().and_then(|(mut voice, left)| {
            sample += voice.next()? as f32 * left as f32 / FADE as f32;
            (left > 1).then_some((voice, left - 1))
        });
        (sample * self.gain).clamp(-1.0, 1.0)
    }

    /// Fills a buffer.
    pub fn fill(&mut self, samples: &mut [f32]) {
        for sample in samples {
            *sample = self.next_sample();
        }
    }
}

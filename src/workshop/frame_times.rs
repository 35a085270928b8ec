//! How long frames take, for whoever asks: the first one that can be used, and the window's own work in each.

#![expect(
    clippy::disallowed_types,
    clippy::disallowed_methods,
    reason = "the clock measures frames and reaches no session"
)]

use bevy::prelude::*;
use bevy::render::renderer::RenderAdapterInfo;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

/// Frames that are left out at the beginning, while shaders and pictures are made ready.
const FRAMES_TO_WARM: usize = 10;

/// What was measured.
#[derive(Debug, Clone, Default)]
pub struct FrameTimes {
    /// What draws.
    pub adapter: String,
    /// From the start of the program to the end of the first frame with a page on it.
    pub first: Option<Duration>,
    /// Own work of each frame: everything but the renderer, shortest first.
    pub own: Vec<Duration>,
}

impl FrameTimes {
    /// The time that a share of the frames stays under, once enough of them were drawn.
    #[must_use]
    #[expect(
        clippy::cast_sign_loss,
        clippy::cast_possible_truncation,
        reason = "a share of a count is a small whole number"
    )]
    pub fn quantile(&self, share: f64) -> Option<Duration> {
        let frames = self.own.len().checked_sub(1)?;
        self.own.get((share.clamp(0.0, 1.0) * frames as f64).round() as usize).copied()
    }
}

/// What the window and whoever started it share.
pub type Shared = Arc<Mutex<FrameTimes>>;

#[derive(Resource)]
struct Watch {
    started: Instant,
    began: Instant,
    own: Vec<Duration>,
    shared: Shared,
}

/// Measures every frame of an application that was started at an instant.
pub(super) fn plugin(app: &mut App, started: Instant, shared: Shared) {
    app.insert_resource(Watch { started, began: Instant::now(), own: Vec::new(), shared })
        .add_systems(First, |mut watch: ResMut<Watch>| watch.began = Instant::now())
        .add_systems(Last, note);
}

fn note(
    mut watch: ResMut<Watch>,
    adapter: Option<Res<RenderAdapterInfo>>,
    leaving: MessageReader<AppExit>,
) {
    let now = Instant::now();
    let own = now - watch.began;
    watch.own.push(own);
    let (started, frames) = (watch.started, watch.own.len());
    if frames > 1 && leaving.is_empty() && !frames.is_multiple_of(64) {
        return;
    }
    let mut sorted = watch.own.get(FRAMES_TO_WARM..).unwrap_or(&[]).to_vec();
    sorted.sort_unstable();
    let mut shared = watch.shared.lock().unwrap_or_else(PoisonError::into_inner);
    shared.first.get_or_insert(now - started);
    if let Some(info) = adapter {
        shared.adapter.clone_from(&info.name);
    }
    shared.own = sorted;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_quantiles_of_a_hundred_and_one_frames() {
        let own = (0..=100).map(Duration::from_millis).collect();
        let times = FrameTimes { own, ..FrameTimes::default() };
        assert_eq!(times.quantile(0.5), Some(Duration::from_millis(50)));
        assert_eq!(times.quantile(0.99), Some(Duration::from_millis(99)));
        assert_eq!(FrameTimes::default().quantile(0.5), None);
    }
}

//! The window without a renderer: everything that it does itself in a frame, to be measured and to be driven.

#![expect(
    clippy::disallowed_types,
    clippy::disallowed_methods,
    reason = "the clock measures frames and reaches no session"
)]

use super::desk::{Desk, Surroundings};
use super::panels::{Tools, window_ui};
use super::theme;
use super::view::action::Action;
use super::view::road::RoadAction;
use egui::{Context, Event, Pos2, RawInput, Rect, TextureId, Vec2, pos2};
use std::sync::Arc;
use std::time::{Duration, Instant};

/// A window that is drawn into nothing.
pub struct Headless {
    desk: Desk,
    ctx: Context,
    size: Vec2,
    frame: u32,
}

impl Headless {
    /// A window of a size [points] with the front page.
    #[must_use]
    pub fn open(around: Surroundings, width: f32, height: f32) -> Self {
        let ctx = Context::default();
        let desk = Desk::new(around, Arc::new(|| {}));
        theme::dress(&ctx, desk.view().settings.contrast);
        Self { desk, ctx, size: Vec2::new(width, height), frame: 0 }
    }

    /// Begins the case of a seed and waits until it is there.
    pub fn begin(&mut self, seed: u64) {
        self.desk.act(Action::TypeSeed(seed.to_string()));
        self.desk.act(Action::Begin);
        self.wait();
    }

    /// Takes a step as if its line was typed, and waits until it is done.
    pub fn take(&mut self, line: &str) {
        self.desk.act(Action::TypeLine(line.to_owned()));
        self.desk.act(Action::TakeStep);
        self.wait();
        self.desk.act(Action::Road(RoadAction::ToTheEnd));
        self.wait();
    }

    fn wait(&mut self) {
        while self.desk.is_busy() {
            self.desk.listen();
            std::thread::sleep(Duration::from_millis(1));
        }
    }

    /// Draws a frame with the pointer at a place, in shares of the window, and says how long its own work took: what
    /// there is to see, the panels, what the user wants, and the triangles that a renderer would get.
    pub fn frame(&mut self, x: f32, y: f32) -> Duration {
        let began = Instant::now();
        self.frame += 1;
        let at: Pos2 = pos2(x * self.size.x, y * self.size.y);
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, self.size)),
            time: Some(f64::from(self.frame) / 60.0),
            events: vec![Event::PointerMoved(at)],
            ..RawInput::default()
        };
        self.desk.listen();
        let ctx = self.ctx.clone();
        theme::set(&ctx, self.desk.view().settings);
        let mut actions = Vec::new();
        let mut output = ctx.run_ui(input, |ui| {
            let picture = Some(TextureId::User(0));
            let tools = Tools { words: self.desk.words(), picture };
            actions = window_ui(ui, &self.desk.view(), tools);
        });
        for action in actions {
            self.desk.act(action);
        }
        let shapes = std::mem::take(&mut output.shapes);
        std::hint::black_box(ctx.tessellate(shapes, output.pixels_per_point));
        let spent = began.elapsed();
        // There is nobody to give the letters to.
        output.drop_without_applying_deltas();
        spent
    }
}

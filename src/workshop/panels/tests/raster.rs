//! Draws the panels on the processor, without engine or driver, so that somebody can look at them in a moment:
//!
//! `FAULTWRIGHT_PANEL_PICTURES=folder cargo test --features panel-tests --lib panels_drawn -- --ignored`
//!
//! `FAULTWRIGHT_PANEL_PICTURES_OF=writer,settings` draws those alone, without what was done for the others before.
//! The picture of the bay is a grey field here; `faultwright workshop --screenshots` draws everything.

use crate::workshop::desk::Desk;
use crate::workshop::desk::tests::{settle, surroundings};
use crate::workshop::panels::{Tools, window_ui};
use crate::workshop::pictures::file::encode;
use crate::workshop::pictures::script::shots;
use crate::workshop::theme;
use egui::epaint::{ImageDelta, Mesh, Primitive, Vertex};
use egui::{Color32, Context, ImageData, Pos2, RawInput, Rect, TextureId, Vec2};
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// Size of the pictures [points, and pixels].
const SIZE: [usize; 2] = [1_280, 680];
/// Frames until sizes that come from the frame before have settled.
const FRAMES: usize = 6;
/// What stands in the place of the bay's picture.
const BAY: Color32 = Color32::from_gray(150);

/// A texture by its rows.
#[derive(Default)]
struct Texture {
    size: [usize; 2],
    texels: Vec<Color32>,
}

impl Texture {
    fn change(&mut self, delta: &ImageDelta) {
        let ImageData::Color(image) = &delta.image;
        let [left, top] = delta.pos.unwrap_or([0, 0]);
        if delta.pos.is_none() {
            *self = Self { size: image.size, texels: image.pixels.clone() };
            return;
        }
        for (row, texels) in image.pixels.chunks_exact(image.size[0]).enumerate() {
            let start = (top + row) * self.size[0] + left;
            self.texels[start..start + texels.len()].copy_from_slice(texels);
        }
    }

    /// The texel at a place, in shares of the texture.
    fn at(&self, uv: Pos2) -> Color32 {
        let [x, y] =
            [uv.x * self.size[0] as f32, uv.y * self.size[1] as f32].map(|it| it.max(0.0) as usize);
        self.texels[y.min(self.size[1] - 1) * self.size[0] + x.min(self.size[0] - 1)]
    }
}

/// A page that is drawn.
struct Canvas {
    pixels: Vec<[f32; 3]>,
}

impl Canvas {
    fn draw(&mut self, clip: Rect, mesh: &Mesh, textures: &BTreeMap<TextureId, Texture>) {
        let texture = textures.get(&mesh.texture_id);
        for corners in mesh.indices.chunks_exact(3) {
            let corners = [0, 1, 2].map(|it| mesh.vertices[corners[it] as usize]);
            self.triangle(clip, &corners, texture);
        }
    }

    fn triangle(&mut self, clip: Rect, corners: &[Vertex; 3], texture: Option<&Texture>) {
        let [a, b, c] = corners.map(|corner| corner.pos);
        let twice_area = (b - a).x * (c - a).y - (b - a).y * (c - a).x;
        if twice_area.abs() < 1e-9 {
            return;
        }
        let all = Rect::from_min_size(Pos2::ZERO, Vec2::new(SIZE[0] as f32, SIZE[1] as f32));
        let around = Rect::from_points(&[a, b, c]).intersect(clip).intersect(all);
        if !around.is_positive() {
            return;
        }
        for y in around.top() as usize..(around.bottom().ceil() as usize).min(SIZE[1]) {
            for x in around.left() as usize..(around.right().ceil() as usize).min(SIZE[0]) {
                let at = Pos2::new(x as f32 + 0.5, y as f32 + 0.5);
                let share = |p: Pos2, q: Pos2| {
                    ((q - p).x * (at - p).y - (q - p).y * (at - p).x) / twice_area
                };
                let shares = [share(b, c), share(c, a), share(a, b)];
                // An edge belongs to both of its triangles; what is drawn twice there does not show.
                if shares.iter().any(|share| *share < 0.0) || !clip.contains(at) {
                    continue;
                }
                let mix = |of: fn(&Vertex) -> f32| {
                    corners
                        .iter()
                        .zip(shares)
                        .map(|(corner, share)| of(corner) * share)
                        .sum::<f32>()
                };
                let texel = texture.map_or(BAY, |texture| {
                    texture.at(Pos2::new(mix(|it| it.uv.x), mix(|it| it.uv.y)))
                });
                let color = [
                    mix(|it| f32::from(it.color.r())) * f32::from(texel.r()) / 255.0,
                    mix(|it| f32::from(it.color.g())) * f32::from(texel.g()) / 255.0,
                    mix(|it| f32::from(it.color.b())) * f32::from(texel.b()) / 255.0,
                ];
                let covers = mix(|it| f32::from(it.color.a())) * f32::from(texel.a()) / 65_025.0;
                let pixel = &mut self.pixels[y * SIZE[0] + x];
                for (channel, color) in pixel.iter_mut().zip(color) {
                    *channel = color + *channel * (1.0 - covers);
                }
            }
        }
    }

    fn save(&self, path: &Path) {
        let bytes: Vec<u8> = self
            .pixels
            .iter()
            .flatten()
            .map(|value| value.round().clamp(0.0, 255.0) as u8)
            .collect();
        encode(path, SIZE.map(|side| u32::try_from(side).unwrap()), &bytes).unwrap();
    }
}

/// Draws a desk as it stands.
fn draw(
    desk: &mut Desk,
    ctx: &Context,
    frame: &mut u32,
    textures: &mut BTreeMap<TextureId, Texture>,
) -> Canvas {
    let mut canvas = Canvas { pixels: vec![[0.0; 3]; SIZE[0] * SIZE[1]] };
    for number in 0..FRAMES {
        *frame += 1;
        // Larger text is a larger scale of everything, on a window of the same size.
        let scale = ctx.zoom_factor();
        let size = Vec2::new(SIZE[0] as f32, SIZE[1] as f32) / scale;
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, size)),
            time: Some(f64::from(*frame) / 4.0),
            ..RawInput::default()
        };
        theme::dress(ctx, desk.view().settings.contrast);
        theme::set(ctx, desk.view().settings);
        let mut actions = Vec::new();
        let mut output = ctx.run_ui(input, |ui| {
            let tools = Tools { words: desk.words(), picture: Some(TextureId::User(0)) };
            actions = window_ui(ui, &desk.view(), tools);
        });
        for action in actions {
            desk.act(action);
        }
        // Textures know nothing of each other, so their order is none.
        let changed = std::mem::take(&mut output.textures_delta.set);
        for (id, deltas) in changed.into_iter().collect::<BTreeMap<_, _>>() {
            let texture = textures.entry(id).or_default();
            deltas.iter().for_each(|delta| texture.change(delta));
        }
        let shapes = std::mem::take(&mut output.shapes);
        output.drop_without_applying_deltas();
        if number + 1 == FRAMES {
            let scale = ctx.pixels_per_point();
            for clipped in ctx.tessellate(shapes, scale) {
                if let Primitive::Mesh(mut mesh) = clipped.primitive {
                    for corner in &mut mesh.vertices {
                        corner.pos = (corner.pos.to_vec2() * scale).to_pos2();
                    }
                    canvas.draw(clipped.clip_rect * scale, &mesh, textures);
                }
            }
        }
    }
    canvas
}

#[test]
#[ignore = "makes pictures to look at, in the folder that FAULTWRIGHT_PANEL_PICTURES names"]
fn panels_drawn() {
    let folder = std::env::var_os("FAULTWRIGHT_PANEL_PICTURES").expect("a folder for the pictures");
    let sessions = tempfile::tempdir().unwrap();
    let mut desk = Desk::new(surroundings(sessions.path()), Arc::new(|| {}));
    settle(&mut desk);
    let (ctx, mut frame, mut textures) = (Context::default(), 0, BTreeMap::new());
    let only = std::env::var("FAULTWRIGHT_PANEL_PICTURES_OF").ok();
    let is_wanted =
        |name: &str| only.as_ref().is_none_or(|only| only.split(',').any(|it| it == name));
    for shot in shots().into_iter().filter(|shot| is_wanted(shot.name)) {
        for action in shot.actions {
            desk.act(action);
            settle(&mut desk);
        }
        let _seen = desk.pass(1.7);
        let canvas = draw(&mut desk, &ctx, &mut frame, &mut textures);
        let shades: std::collections::BTreeSet<[u8; 3]> =
            canvas.pixels.iter().map(|pixel| pixel.map(|value| value as u8)).collect();
        assert!(shades.len() > 8, "{} is empty", shot.name);
        canvas.save(&Path::new(&folder).join(format!("{}.png", shot.name)));
    }
}

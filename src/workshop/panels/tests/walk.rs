//! Every page in every state, at every text size and in both shades.

use super::samples::{self, Sample};
use super::{SHADES, SIZES, window};
use crate::wording::catalogue::Words;
use crate::workshop::panels::frame::{BREACH_SIGN, CAUTION_SIGN, DONE_SIGN, REFUSED_SIGN};
use crate::workshop::panels::tray::{MET_SIGN, MISSED_SIGN};
use egui::accesskit::Role;
use egui::epaint::ClippedShape;
use egui::{FontFamily, FontId, Shape, Theme, Vec2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use std::collections::BTreeSet;
use std::path::Path;

/// Least height of something that can be clicked [points]: the Web Content Accessibility
/// Guidelines 2.2, 2.5.8.
const LEAST_TARGET: f32 = 24.0;

/// What the settings say where nothing takes the sound.
const NO_SERVER: &str = "No sound server or device answers, so nothing is heard. What would be is written and \
                         drawn beside its step.";

fn shown(sample: Sample, size: Vec2, shade: Theme) -> Harness<'static, Sample> {
    let words = Words::for_language("en-GB");
    let mut harness = window(size, shade, sample, move |sample, draw| {
        drop(draw(&sample.view(), &words));
    });
    harness.run();
    harness
}

fn each(mut check: impl FnMut(&str, &Harness<'_, Sample>)) {
    for size in SIZES {
        for shade in SHADES {
            for sample in samples::all() {
                let name = format!("{}, {size:?}, {shade:?}", sample.name);
                check(&name, &shown(sample, size, shade));
            }
        }
    }
}

#[test]
fn every_control_has_a_name_a_size_and_a_place_in_the_window() {
    each(|name, harness| {
        let width = harness.ctx.content_rect().width();
        let mut controls = 0;
        for node in harness.root().children_recursive() {
            let access = node.accesskit_node();
            let role = access.role();
            let is_control = matches!(role, Role::Button | Role::TextInput | Role::RadioButton);
            if !is_control {
                continue;
            }
            controls += 1;
            let label = access
                .label()
                .or_else(|| access.labelled_by().find_map(|by| by.value().or_else(|| by.label())));
            let label = label.unwrap_or_default();
            assert!(!label.trim().is_empty(), "{name}: a {role:?} has no name");
            let rect = node.rect();
            assert!(rect.height() >= LEAST_TARGET, "{name}: {label} is {rect:?}");
            let inside = rect.left() >= 0.0 && rect.right() <= width;
            assert!(inside, "{name}: {label} at {rect:?} in {width}");
        }
        assert!(controls > 1, "{name}: {controls} controls");
    });
}

#[test]
fn no_text_is_cut_on_its_side() {
    each(|name, harness| {
        let whole = harness.ctx.content_rect();
        let mut texts = 0;
        for ClippedShape { clip_rect, shape } in &harness.output().shapes {
            let Shape::Text(text) = shape else { continue };
            let rect = shape.visual_bounding_rect();
            let visible = clip_rect.intersect(whole);
            if text.galley.text().trim().is_empty() || !visible.intersects(rect) {
                continue;
            }
            texts += 1;
            let cut = rect.left() < visible.left() - 1.0 || rect.right() > visible.right() + 1.0;
            assert!(!cut, "{name}: {:?} at {rect:?} in {visible:?}", text.galley.text());
        }
        assert!(texts > 5, "{name}: {texts} texts");
    });
}

/// Whoever has chosen a session from the end of the page sees what is then said at its head.
#[test]
fn what_is_said_at_the_head_of_the_front_page_comes_into_sight() {
    let said = "Handed over. The case is sealed.";
    for size in SIZES {
        let is_it = |it: &Sample| it.name == "front, a sealed case";
        let sample = samples::all().into_iter().find(is_it).unwrap();
        let mut harness = shown(sample, size, Theme::Light);
        let place = size.to_pos2() * 0.4;
        harness.event(egui::Event::PointerMoved(place));
        harness.event(egui::Event::MouseWheel {
            unit: egui::MouseWheelUnit::Point,
            delta: Vec2::new(0.0, -2_000.0),
            phase: egui::TouchPhase::Move,
            modifiers: egui::Modifiers::NONE,
        });
        harness.run();
        let last = harness.get_by_role_and_label(Role::Button, "Look again").rect();
        assert!(last.bottom() <= size.y, "it was not scrolled: {last:?}");
        harness.state_mut().front.handed_over = Some(said.to_owned());
        harness.run();
        let rect = harness.get_by_label(said).rect();
        assert!(0.0 <= rect.top() && rect.bottom() <= size.y, "{rect:?} in {size:?}");
    }
}

/// Each control is there once.
fn find(sample: &str, size: Vec2, wanted: &[(Role, &str)]) {
    let found = samples::all().into_iter().find(|it| it.name == sample).unwrap();
    let harness = shown(found, size, Theme::Light);
    for (role, label) in wanted {
        let count = harness.query_all_by_role_and_label(*role, label).count();
        assert_eq!(count, 1, "{sample}: {role:?} {label}");
    }
}

#[test]
fn the_controls_of_the_front_page_are_found_by_role_and_name() {
    let [wide, narrow] = SIZES;
    for size in [wide, narrow] {
        find(
            "front, files and troubles",
            size,
            &[
                (Role::Button, "Settings"),
                (Role::Button, "Leave the program"),
                (Role::Button, "Close the message"),
                (Role::TextInput, "Seed"),
                (Role::Button, "Begin"),
                (Role::TextInput, "Scenario or sealed case"),
                (Role::Button, "Read the file"),
                (Role::Button, "Practise"),
                (Role::Button, "Assessed"),
                (Role::Button, "market-hill-7-1: go on after 12 steps\nPractice, 2 hours ago"),
                (
                    Role::Button,
                    "market-hill-8-1: handed back after 41 steps, see the debrief\nAssessed",
                ),
                (Role::Button, "Look again"),
            ],
        );
        find(
            "front, a sealed case",
            size,
            &[
                (Role::Label, "A sealed case brings its own seed."),
                (
                    Role::Button,
                    "market-hill-7-1: handed back under its seal after 30 steps, see its \
                     receipt\nAssessed, 2 hours ago",
                ),
            ],
        );
    }
}

#[test]
fn the_controls_of_each_page_are_found_by_role_and_name() {
    let [wide, narrow] = SIZES;
    for size in [wide, narrow] {
        find(
            "settings, no sound server",
            size,
            &[
                (Role::Button, "Settings"),
                (Role::Button, "Close the settings"),
                (Role::Button, "Close the message"),
                (Role::Button, "100 %"),
                (Role::Button, "200 %"),
                (Role::Button, "Light"),
                (Role::Button, "Dark"),
                (Role::Button, "Ordinary contrast"),
                (Role::Button, "High contrast"),
                (Role::Button, "No motion"),
                (Role::Button, "Deutsch"),
                (Role::Button, "Mute"),
                (Role::Button, "Loud"),
                (Role::Label, NO_SERVER),
            ],
        );
        find(
            "case, words",
            size,
            &[
                (Role::TextInput, "Step"),
                (Role::Button, "Take it"),
                (Role::Button, "Front page"),
                (Role::Button, "Take the step"),
                (Role::Button, "Remove last word"),
                (Role::Button, "battery-minus-0"),
            ],
        );
        find(
            "case, digits and texts",
            size,
            &[(Role::Button, "7"), (Role::Button, "."), (Role::Button, "-")],
        );
        find("case, first round", size, &[(Role::Button, "Skip the round")]);
        find(
            "front, first start",
            size,
            &[(Role::Button, "Show me round"), (Role::Button, "Not now")],
        );
        find(
            "case, meter",
            size,
            &[
                (Role::Button, "Multimeter"),
                (Role::Button, "Ohms"),
                (Role::Button, "Take the reading"),
                (Role::Label, "Ohms: -4.120 kΩ"),
            ],
        );
        find("case, scope", size, &[(Role::Image, "Captured course"), (Role::Button, "Capture")]);
        find("case, gauge", size, &[(Role::Button, "Screw it in"), (Role::Button, "2000 rpm")]);
        find("debrief", size, &[(Role::ProgressIndicator, "Choice of tests")]);
    }
    for size in [wide, narrow] {
        let sounds = "Heard: a sharp click, then a dull, soft click.";
        let silence = "Heard: no click, then no click.";
        find(
            "case, log",
            size,
            &[(Role::Image, silence), (Role::Image, sounds), (Role::Button, "Hear step 4 again")],
        );
    }
    let panes = [(Role::Button, "Job sheet"), (Role::Button, "Next step")];
    find("case, log", narrow, &panes);
    find("case, log", wide, &[(Role::ProgressIndicator, "partly broken coil, intake valve: 60 %")]);
}

#[test]
fn a_window_without_any_room_is_drawn_all_the_same() {
    for sample in samples::all() {
        shown(sample, vec2(1.0, 1.0), Theme::Light);
    }
}

#[test]
fn every_character_that_is_shown_is_in_the_fonts() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/locales/en-GB");
    let mut characters: BTreeSet<char> =
        [BREACH_SIGN, CAUTION_SIGN, DONE_SIGN, REFUSED_SIGN, MET_SIGN, MISSED_SIGN]
            .concat()
            .chars()
            .collect();
    for file in std::fs::read_dir(folder).unwrap() {
        characters.extend(std::fs::read_to_string(file.unwrap().path()).unwrap().chars());
    }
    characters.extend("£€ΩµÄé°".chars());
    characters.remove(&'\n');
    let sample = samples::all().swap_remove(0);
    let harness = shown(sample, SIZES[0], Theme::Light);
    for family in [FontFamily::Proportional, FontFamily::Monospace] {
        let font = FontId::new(14.0, family);
        for character in &characters {
            // A character that no font has looks like one that nobody ever gave a meaning.
            let text = format!("{character}\u{10FFFD}");
            let laid_out = harness
                .ctx
                .fonts_mut(|fonts| fonts.layout_no_wrap(text, font.clone(), egui::Color32::WHITE));
            let [shown, unknown] = laid_out.rows[0].glyphs.as_slice() else {
                panic!("{character:?} is not one glyph")
            };
            assert_ne!(shown.uv_rect, unknown.uv_rect, "{character:?} in {font:?}");
        }
    }
}

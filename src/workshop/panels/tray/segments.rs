//! Digits of seven strokes, drawn.

use egui::{Color32, Painter, Pos2, Shape, Stroke, pos2};

/// Width of a digit, of the gap behind it and of a point, in shares of the height.
const WIDTH: f32 = 0.52;
const GAP: f32 = 0.14;
const POINT: f32 = 0.16;
/// Half the thickness of a stroke, in shares of the height.
const HALF: f32 = 0.055;
/// How far the top leans over the foot, in shares of the height.
const LEAN: f32 = 0.07;

/// The strokes, from one end to the other in shares of width and height: top, right above and below, bottom, left below
/// and above, middle.
const STROKES: [[(f32, f32); 2]; 7] = [
    [(0.0, 0.0), (1.0, 0.0)],
    [(1.0, 0.0), (1.0, 0.5)],
    [(1.0, 0.5), (1.0, 1.0)],
    [(1.0, 1.0), (0.0, 1.0)],
    [(0.0, 1.0), (0.0, 0.5)],
    [(0.0, 0.5), (0.0, 0.0)],
    [(0.0, 0.5), (1.0, 0.5)],
];

/// The strokes of a character, one bit each, the top the lowest; nothing where there are none for it.
const fn strokes_of(character: char) -> u8 {
    match character {
        '0' | 'O' => 0b011_1111,
        '1' => 0b000_0110,
        '2' => 0b101_1011,
        '3' => 0b100_1111,
        '4' => 0b110_0110,
        '5' => 0b110_1101,
        '6' => 0b111_1101,
        '7' => 0b000_0111,
        '8' => 0b111_1111,
        '9' => 0b110_1111,
        'L' => 0b011_1000,
        '-' => 0b100_0000,
        _ => 0,
    }
}

/// The width of a text at a height.
#[must_use]
pub fn width(text: &str, height: f32) -> f32 {
    let each = |character: char| if character == '.' { POINT } else { WIDTH + GAP };
    (text.chars().map(each).sum::<f32>() + LEAN) * height
}

/// Draws a text with its lower left corner at a place.
pub fn draw(painter: &Painter, corner: Pos2, height: f32, text: &str, color: Color32) {
    let mut left = 0.0;
    let place = |x: f32, y: f32| {
        let lean = LEAN * (1.0 - y);
        pos2(corner.x + (x + lean) * height, corner.y + (y - 1.0) * height)
    };
    for character in text.chars() {
        if character == '.' {
            painter.circle_filled(
                place(left + POINT * 0.2, 1.0 - HALF),
                HALF * 1.15 * height,
                color,
            );
            left += POINT;
            continue;
        }
        let lit = strokes_of(character);
        for (number, [from, to]) in STROKES.into_iter().enumerate() {
            if lit & (1 << number) != 0 {
                let end = |(x, y): (f32, f32)| {
                    [left + HALF + x * (WIDTH - 2.0 * HALF), HALF + y * (1.0 - 2.0 * HALF)]
                };
                painter.add(stroke(end(from), end(to), place, color));
            }
        }
        left += WIDTH + GAP;
    }
}

/// A stroke with pointed ends.
fn stroke(
    [x, y]: [f32; 2],
    [to_x, to_y]: [f32; 2],
    place: impl Fn(f32, f32) -> Pos2,
    color: Color32,
) -> Shape {
    let short = HALF * 0.22;
    let (along_x, along_y) = ((to_x - x).signum(), (to_y - y).signum());
    let points = if (to_x - x).abs() > (to_y - y).abs() {
        let (from, to) = (x + along_x * short, to_x - along_x * short);
        let inner = along_x * HALF;
        vec![
            place(from, y),
            place(from + inner, y - HALF),
            place(to - inner, y - HALF),
            place(to, y),
            place(to - inner, y + HALF),
            place(from + inner, y + HALF),
        ]
    } else {
        let (from, to) = (y + along_y * short, to_y - along_y * short);
        let inner = along_y * HALF;
        vec![
            place(x, from),
            place(x + HALF, from + inner),
            place(x + HALF, to - inner),
            place(x, to),
            place(x - HALF, to - inner),
            place(x - HALF, from + inner),
        ]
    };
    Shape::convex_polygon(points, color, Stroke::NONE)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_every_character_of_a_display_has_strokes_of_its_own() {
        let shown = "0123456789-L";
        let strokes: std::collections::BTreeSet<u8> = shown.chars().map(strokes_of).collect();
        assert_eq!(strokes.len(), shown.len());
        assert!(!strokes.contains(&0));
    }

    #[test]
    fn closed_form_a_point_takes_less_room_than_a_digit() {
        assert!(width("1.2", 1.0) < width("112", 1.0));
        assert!((width("12", 2.0) - 2.0 * width("12", 1.0)).abs() < 1e-6);
    }
}

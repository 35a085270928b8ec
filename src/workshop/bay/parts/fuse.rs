//! Blade fuses and relays.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, block};
use crate::workshop::view::bay::Mark;
use bevy::math::vec3;

/// A blade fuse of a rating [A], in the colour that its rating has (ISO 8820-3: 7.5 brown, 10 red, 15 blue,
/// 20 yellow, 25 white, 30 green); its foot is where its body meets the box.
pub fn fuse(rating: f64) -> Vec<Piece> {
    let body = match rating {
        ..=8.0 => Finish::Brown,
        ..=12.0 => Finish::Red,
        ..=17.0 => Finish::Blue,
        ..=22.0 => Finish::Yellow,
        ..=27.0 => Finish::White,
        _ => Finish::Green,
    };
    let blade = |x: f32| block(vec3(0.007, 0.022, 0.002), 0.0008, 0.0005).at(x, -0.022, 0.0);
    let shoulders = block(vec3(0.034, 0.012, 0.012), 0.003, 0.002);
    let head = block(vec3(0.026, 0.012, 0.010), 0.003, 0.002).at(0.0, 0.011, 0.0);
    vec![
        piece(body, shoulders.and(head)),
        piece(Finish::Contact, blade(-0.010).and(blade(0.010))),
        piece(Finish::Contact, strip()).without(Mark::BlownFuse),
        piece(Finish::Burnt, parted_strip()).with(Mark::BlownFuse),
    ]
}

/// The strip as its window shows it.
fn strip() -> Solid {
    block(vec3(0.022, 0.003, 0.0016), 0.0008, 0.0004).at(0.0, 0.012, 0.0062)
}

fn parted_strip() -> Solid {
    let half = |x: f32| block(vec3(0.008, 0.004, 0.0018), 0.0012, 0.0004).at(x, 0.0115, 0.0062);
    half(-0.0075)
        .and(half(0.0075))
        .and(block(vec3(0.016, 0.008, 0.0012), 0.003, 0.0004).at(0.0, 0.009, 0.0058))
}

/// A relay in its socket.
pub fn relay() -> Vec<Piece> {
    let cap = block(vec3(0.042, 0.046, 0.042), 0.006, 0.004);
    let label = block(vec3(0.024, 0.001, 0.018), 0.002, 0.0003).at(0.0, 0.0455, 0.0);
    vec![piece(Finish::GreyPlastic, cap), piece(Finish::White, label)]
}

//! Plugs of the harness and the contacts in them.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, ball, block, rod};
use crate::workshop::view::bay::Mark;
use bevy::math::vec3;

/// A plug; its foot is the face that goes onto the socket, at the back; its wires leave to the front.
pub fn connector() -> Vec<Piece> {
    let shell = block(vec3(0.050, 0.046, 0.040), 0.010, 0.004).turned_x(90.0);
    let latch = block(vec3(0.018, 0.034, 0.008), 0.003, 0.002).turned_x(90.0).at(0.0, 0.019, 0.006);
    let boots = [-0.011_f32, 0.011].map(|x| rod(0.0085, 0.020).turned_x(90.0).at(x, 0.0, 0.044));
    let [one, other] = boots;
    vec![
        piece(Finish::BlackPlastic, shell),
        piece(Finish::Red, latch),
        piece(Finish::Rubber, one.and(other)),
    ]
}

/// One contact of a plug, as its face shows it: the foot is in the middle of it, it looks to the back.
pub fn pin() -> Vec<Piece> {
    vec![
        piece(Finish::Contact, sleeve(0.010, 0.010)).without(Mark::SpreadTerminal),
        piece(Finish::Contact, sleeve(0.017, 0.011)).with(Mark::SpreadTerminal),
        piece(Finish::Verdigris, crust()).with(Mark::Corrosion),
    ]
}

/// A female terminal: two leaves beside a slot.
fn sleeve(width: f32, height: f32) -> Solid {
    let leaf = |side: f32| {
        block(vec3(width * 0.34, 0.014, height), 0.001, 0.0008).turned_x(-90.0).at(
            side * width * 0.36,
            0.0,
            0.004,
        )
    };
    leaf(-1.0).and(leaf(1.0))
}

/// What grows on a contact that has been wet.
fn crust() -> Solid {
    let mut solid = Solid::default();
    for k in 0..9 {
        let angle = 2.4 * k as f32;
        let out = 0.0026 * (k as f32).sqrt();
        let size = 0.0034 + 0.0012 * ((k * 2) % 3) as f32;
        solid.add(ball(size).at(out * angle.cos(), out * angle.sin(), -0.010));
    }
    solid
}

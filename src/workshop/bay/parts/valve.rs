//! An oil-control valve: solenoid above its flange, spool and screen below.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{ball, block, circle, lathe, plate, rod, tube};
use crate::workshop::view::bay::Mark;
use bevy::math::{Vec2, Vec3, vec2, vec3};
use core::f32::consts::TAU;

/// Where the plug goes on, from the valve's foot; it points to the front [m].
pub const SOCKET: Vec3 = vec3(0.0, 0.069, 0.034);

/// The valve; its foot is the face of its flange.
pub fn valve() -> Vec<Piece> {
    let ear: Vec<Vec2> =
        circle(1.0, 20).into_iter().map(|at| vec2(at.x * 0.056 + 0.012, at.y * 0.034)).collect();
    let can =
        lathe(&[(0.030, 0.008), (0.033, 0.012), (0.033, 0.052), (0.030, 0.057), (0.022, 0.059)]);
    let head = block(vec3(0.044, 0.034, 0.044), 0.012, 0.005).at(0.0, 0.052, 0.0);
    let socket =
        block(vec3(0.042, 0.034, 0.026), 0.010, 0.003).turned_x(90.0).at(0.0, 0.069, 0.014);
    let contact =
        |x: f32| block(vec3(0.006, 0.012, 0.003), 0.001, 0.0005).turned_x(90.0).at(x, 0.069, 0.040);
    let mut pieces = vec![
        piece(Finish::Steel, plate(&ear, 0.010, 0.003)),
        piece(Finish::Steel, can),
        piece(Finish::BlackPlastic, head),
        piece(Finish::GreyPlastic, socket),
        piece(Finish::Contact, contact(-0.009).and(contact(0.009))),
        piece(Finish::Steel, rod(0.011, 0.012).at(0.054, 0.008, 0.0)),
        piece(Finish::Casting, body()),
    ];
    pieces.push(piece(Finish::Seal, seal_ring(0.0245, 0.0055)).without(Mark::TornSeal));
    pieces.push(piece(Finish::FlatSeal, torn_ring()).with(Mark::TornSeal));
    pieces.push(piece(Finish::FlatSeal, flat_band()).with(Mark::UsedSeal));
    pieces.push(piece(Finish::Screen, screen()).without(Mark::Sludge));
    pieces.push(piece(Finish::Sludge, sludge()).with(Mark::Sludge));
    pieces.push(piece(Finish::Sludge, varnish()).with(Mark::Varnish));
    pieces
}

/// The part that is inside the engine while the valve is in place: lands and grooves of the spool's sleeve.
fn body() -> crate::workshop::bay::shape::Solid {
    lathe(&[
        (0.014, -0.150),
        (0.018, -0.146),
        (0.018, -0.118),
        (0.0145, -0.116),
        (0.0145, -0.090),
        (0.018, -0.088),
        (0.018, -0.076),
        (0.0145, -0.074),
        (0.0145, -0.054),
        (0.018, -0.052),
        (0.018, -0.036),
        (0.022, -0.034),
        (0.022, 0.0),
    ])
}

fn seal_ring(radius: f32, thick: f32) -> crate::workshop::bay::shape::Solid {
    let path: Vec<Vec3> = (0..=28)
        .map(|k| {
            let angle = TAU * k as f32 / 28.0;
            vec3(radius * angle.cos(), -0.018, radius * angle.sin())
        })
        .collect();
    tube(&path, thick, 8)
}

/// A seal parted at one place, one end of it hanging out of its groove.
fn torn_ring() -> crate::workshop::bay::shape::Solid {
    let path: Vec<Vec3> = (0..=26)
        .map(|k| {
            let share = k as f32 / 26.0;
            let angle = 1.9 + TAU * 0.86 * share;
            let off = (share - 0.62).max(0.0);
            let radius = 0.0245 + 0.09 * off * off * 2.0;
            vec3(radius * angle.cos(), -0.018 - 0.20 * off * off, radius * angle.sin())
        })
        .collect();
    tube(&path, 0.0052, 8)
}

/// The flat that squeezing leaves on a seal.
fn flat_band() -> crate::workshop::bay::shape::Solid {
    lathe(&[(0.027, -0.022), (0.0303, -0.0215), (0.0303, -0.0145), (0.027, -0.014)])
}

/// Wire cloth over the ports: a sleeve with its wires standing out.
fn screen() -> crate::workshop::bay::shape::Solid {
    let mut solid =
        lathe(&[(0.0165, -0.116), (0.0172, -0.115), (0.0172, -0.091), (0.0165, -0.090)]);
    for k in 0..5 {
        let up = -0.113 + 0.005 * k as f32;
        solid.add(lathe(&[
            (0.0170, up),
            (0.0182, up + 0.0008),
            (0.0182, up + 0.0016),
            (0.0170, up + 0.0024),
        ]));
    }
    solid
}

/// The same screen under a coat of sludge, lumps in it.
fn sludge() -> crate::workshop::bay::shape::Solid {
    let mut solid = lathe(&[
        (0.017, -0.121),
        (0.0205, -0.116),
        (0.0215, -0.104),
        (0.0205, -0.090),
        (0.017, -0.085),
    ]);
    for k in 0..14 {
        let angle = TAU * 0.381_97 * k as f32;
        let up = -0.118 + 0.030 * ((k * 5) % 14) as f32 / 14.0;
        let size = 0.0045 + 0.0020 * ((k * 3) % 5) as f32 / 4.0;
        solid.add(ball(size).at(0.0195 * angle.cos(), up, 0.0195 * angle.sin()));
    }
    solid
}

/// Varnish on the lands of the spool.
fn varnish() -> crate::workshop::bay::shape::Solid {
    lathe(&[(0.0182, -0.145), (0.0188, -0.144), (0.0188, -0.120), (0.0182, -0.119)]).and(lathe(&[
        (0.0182, -0.087),
        (0.0188, -0.086),
        (0.0188, -0.078),
        (0.0182, -0.077),
    ]))
}

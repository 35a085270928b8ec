//! The two wirings with their netlists, and the names of their nodes on both sides.

use super::vehicle;
use faultwright::vehicle::spec::VehicleSpec;

/// Which wiring.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wiring {
    Original,
    Mended,
}

impl Wiring {
    pub fn spec(self) -> VehicleSpec {
        match self {
            Self::Original => vehicle::original(),
            Self::Mended => vehicle::mended(),
        }
    }

    /// The netlist, open at its end for a meter.
    pub const fn netlist(self) -> &'static str {
        match self {
            Self::Original => include_str!("original.cir"),
            Self::Mended => include_str!("wiring.cir"),
        }
    }
}

/// The harness's name of a netlist's node.
pub fn harness_node(netlist_node: &str) -> &'static str {
    match netlist_node {
        "0" => "battery-minus",
        "batp" => "battery-plus",
        "fbox" => "fuse-box",
        "r30" => "valve-fuse-out",
        "r87" => "valve-feed",
        "m30" => "module-fuse-out",
        "m87" => "module-feed",
        "spl" => "splice",
        "a1h" => "intake-feed-harness",
        "a1v" => "intake-feed-valve",
        "a2v" => "intake-control-valve",
        "a2h" => "intake-control-harness",
        "ecma" => "intake-module-pin",
        "b1h" => "exhaust-feed-harness",
        "b1v" => "exhaust-feed-valve",
        "b2v" => "exhaust-control-valve",
        "b2h" => "exhaust-control-harness",
        "ecmbp" => "exhaust-module-pin",
        "ecmb" => "module-supply",
        "ecmg" => "module-ground",
        "engg" => "engine-ground",
        "v5" => "module-rail",
        other => panic!("no node of the harness stands for {other}"),
    }
}

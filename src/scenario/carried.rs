//! The scenarios and vehicles that the program carries, so that it works from anywhere.

/// A scenario that the program carries.
#[derive(Debug, Clone, Copy)]
pub(super) struct Carried {
    /// Name of its file without folder and ending.
    pub name: &'static str,
    /// Name of its vehicle.
    pub vehicle: &'static str,
    /// Text of its file.
    pub text: &'static str,
}

macro_rules! carried {
    ($name:literal, $vehicle:literal) => {
        Carried {
            name: $name,
            vehicle: $vehicle,
            text: include_str!(concat!("../../scenarios/", $name, ".ron")),
        }
    };
}

/// The scenarios; the first is the one that is taken where none is named, the others follow by level.
pub(super) const SCENARIOS: [Carried; 23] = [
    carried!("market-hill", "harrowfen-dray"),
    carried!("coal-wharf", "harrowfen-dray"),
    carried!("lime-kiln", "harrowfen-dray"),
    carried!("rope-walk", "harrowfen-dray"),
    carried!("toll-bar", "harrowfen-dray"),
    carried!("ferry-stairs", "marlgate-teal"),
    carried!("gravel-pit", "coldbeck-heron"),
    carried!("mill-race", "brackenholm-bittern"),
    carried!("chapel-row", "harrowfen-dray"),
    carried!("apple-loft", "harrowfen-dray"),
    carried!("saddlers-yard", "harrowfen-dray"),
    carried!("tithe-barn", "harrowfen-dray"),
    carried!("tram-depot", "harrowfen-dray"),
    carried!("malt-house", "marlgate-teal"),
    carried!("signal-box", "brackenholm-bittern"),
    carried!("almshouse-row", "harrowfen-dray"),
    carried!("corn-exchange", "harrowfen-dray"),
    carried!("glasshouse-lane", "harrowfen-dray"),
    carried!("weir-cottage", "harrowfen-dray"),
    carried!("harbour-office", "harrowfen-dray"),
    carried!("quarry-school", "harrowfen-dray"),
    carried!("observatory-road", "marlgate-teal"),
    carried!("shepherds-gate", "coldbeck-heron"),
];

/// The vehicles by their names.
pub(super) const VEHICLES: [(&str, &str); 4] = [
    ("harrowfen-dray", include_str!("../../scenarios/vehicles/harrowfen-dray.ron")),
    ("marlgate-teal", include_str!("../../scenarios/vehicles/marlgate-teal.ron")),
    ("coldbeck-heron", include_str!("../../scenarios/vehicles/coldbeck-heron.ron")),
    ("brackenholm-bittern", include_str!("../../scenarios/vehicles/brackenholm-bittern.ron")),
];

/// The text of a carried vehicle.
pub(super) fn vehicle(name: &str) -> Option<&'static str> {
    VEHICLES.iter().find(|(known, _)| *known == name).map(|(_, text)| *text)
}

//! Roads that the program carries, for any scenario to name.
//!
//! They are files under `scenarios/routes`, built into the program. A scenario names them and can
//! lead to no other file; a session that is replayed finds the same ones, as it finds the same
//! physics.

use super::schema::{ROUTE_FORMAT, ROUTE_VERSION, RouteFile};
use crate::session::setup::Route;
use crate::vehicle::spec::Id;
use ron::extensions::Extensions;

/// The carried roads in the order of their names.
const ROUTES: [(&str, &str); 6] = [
    ("car-park-loop", include_str!("../../scenarios/routes/car-park-loop.ron")),
    ("cold-start-short-run", include_str!("../../scenarios/routes/cold-start-short-run.ron")),
    ("hill", include_str!("../../scenarios/routes/hill.ron")),
    ("motorway", include_str!("../../scenarios/routes/motorway.ron")),
    ("proving-drive", include_str!("../../scenarios/routes/proving-drive.ron")),
    ("town", include_str!("../../scenarios/routes/town.ron")),
];

/// Their names.
#[must_use]
pub fn names() -> Vec<Id> {
    ROUTES.iter().map(|(name, _)| Id::from(*name)).collect()
}

/// The carried road of a name; `None` for any other name.
#[must_use]
pub fn route(name: &Id) -> Option<Route> {
    let (_, text) = ROUTES.iter().find(|(known, _)| name == *known)?;
    let options = ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    // A test holds that each of them reads.
    let file: RouteFile = options.from_str(text).ok()?;
    (file.format == ROUTE_FORMAT && file.version == ROUTE_VERSION).then_some(file.route)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_every_carried_road_reads_and_can_be_driven() {
        for name in names() {
            let route = route(&name).unwrap();
            assert_eq!(route.profile.check(), Ok(()), "{name}");
            assert!(f64::from(route.minutes.0) * 60.0 > route.profile.duration().0, "{name}");
        }
        assert_eq!(route(&Id::from("../routes/town")), None);
        assert!(names().is_sorted());
    }
}

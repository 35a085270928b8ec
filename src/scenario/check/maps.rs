//! Maps of wanted cam angles.

use crate::control_module::target_map::{MOST_DEG, TargetMap};
use crate::scenario::findings::Findings;
use crate::scenario::problem::ProblemKind;
use crate::vehicle::spec::VehicleSpec;

/// Engine speed of a row [rpm], load of a column.
const RPM: (f64, f64) = (0.0, 9_000.0);
const LOAD: (f64, f64) = (0.0, 1.0);

/// Checks both maps.
pub(super) fn check(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    map(findings, "vehicle.module.target_maps.intake", &spec.module.target_maps.intake);
    map(findings, "vehicle.module.target_maps.exhaust", &spec.module.target_maps.exhaust);
}

fn map(findings: &mut Findings<'_>, path: &str, map: &TargetMap) {
    axis(findings, &format!("{path}.rpm"), &map.rpm, RPM);
    axis(findings, &format!("{path}.load"), &map.load, LOAD);
    for (row, angles) in map.degrees.iter().enumerate() {
        for (column, angle) in angles.iter().enumerate() {
            findings.number(&format!("{path}.degrees[{row}][{column}]"), *angle, (0.0, MOST_DEG));
        }
    }
}

fn axis(findings: &mut Findings<'_>, path: &str, points: &[f64], range: (f64, f64)) {
    let mut before = f64::NEG_INFINITY;
    for (number, point) in points.iter().enumerate() {
        let path = format!("{path}[{number}]");
        findings.number(&path, *point, range);
        if *point <= before {
            findings.add(&path, ProblemKind::WrongOrder { first: before, second: *point });
        }
        before = *point;
    }
}

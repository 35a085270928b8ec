//! Fifty random vehicles.

use super::asked::random::vehicles;
use super::circumstances::Driver;

#[test]
fn reference_random_parameters_agree_with_simulator() {
    vehicles().check();
}

/// Fifty draws of the same thing would prove no more than one.
#[test]
fn closed_form_random_vehicles_differ() {
    let cases = vehicles().cases;
    let with = |parameter: &str| {
        cases.iter().filter(|case| case.netlist.iter().any(|(name, _)| *name == parameter)).count()
    };
    for (parameter, least) in [("rleak", 10), ("rleakfeed", 4), ("rjoint", 5)] {
        let count = with(parameter);
        assert!(count >= least && count < cases.len(), "{count} sets with {parameter}");
    }
    let driven = cases.iter().filter(|case| matches!(case.drivers, Some((Driver::On, _)))).count();
    assert!(driven > 10 && driven < 45, "{driven}");
    for (name, low, high) in [("rcoil", 6.0, 25.0), ("rca1", 0.01, 10.0), ("rca2", 0.01, 10.0)] {
        let values: Vec<f64> = cases
            .iter()
            .flat_map(|case| case.netlist.iter().filter(|(other, _)| *other == name))
            .map(|(_, value)| *value)
            .collect();
        assert!(values.iter().any(|value| *value < low), "{name}: nothing below {low}");
        assert!(values.iter().any(|value| *value > high), "{name}: nothing above {high}");
    }
}

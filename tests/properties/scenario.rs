//! A vehicle with any figures comes back from its file as it went.

use faultwright::scenario::load::{Loaded, ScenarioText, demo, read};
use faultwright::scenario::schema::{VEHICLE_VERSION, VehicleFile};
use faultwright::vehicle::spec::{HarnessElement, VehicleSpec};
use proptest::prelude::*;
use std::sync::OnceLock;

fn shipped() -> &'static Loaded {
    static SHIPPED: OnceLock<Loaded> = OnceLock::new();
    SHIPPED.get_or_init(|| demo().expect("the scenario"))
}

/// The shipped vehicle with its figures moved by factors.
fn moved(factors: &[f64]) -> VehicleSpec {
    let mut vehicle = shipped().vehicle.clone();
    let mut factors = factors.iter().cycle();
    let mut change = |figure: &mut f64| *figure *= factors.next().expect("a factor");
    for element in &mut vehicle.harness.elements {
        match element {
            HarnessElement::Wire { ohms, .. }
            | HarnessElement::Fuse { ohms, .. }
            | HarnessElement::RelayContact { ohms, .. }
            | HarnessElement::Pin { ohms, .. } => change(ohms),
            HarnessElement::Cable { metres, mm2, .. } => {
                change(metres);
                change(mm2);
            }
            HarnessElement::Driver { on_ohms, sense_ohms, bias_ohms, .. } => {
                change(on_ohms);
                change(sense_ohms);
                change(bias_ohms);
            }
            HarnessElement::Load { load, .. } => {
                change(&mut load.key_off);
                change(&mut load.key_on);
            }
            _ => {}
        }
    }
    vehicle
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// To the last bit, through the same door as any file.
    #[test]
    fn prop_a_vehicle_file_comes_back_as_it_went(
        factors in proptest::collection::vec(0.5..2.0_f64, 7),
        is_pretty in any::<bool>(),
    ) {
        let vehicle = moved(&factors);
        let file = VehicleFile {
            format: "faultwright vehicle".to_owned(),
            version: VEHICLE_VERSION,
            vehicle: vehicle.clone(),
        };
        let written = if is_pretty {
            ron::ser::to_string_pretty(&file, ron::ser::PrettyConfig::default())
        } else {
            ron::to_string(&file)
        };
        let again = read(ScenarioText {
            vehicle_text: written.expect("text"),
            ..shipped().text.clone()
        });
        let again = again.unwrap_or_else(|error| panic!("{error:#?}"));
        prop_assert_eq!(again.vehicle, vehicle);
    }
}

//! Test lamp and current probe in the wiring, against the simulator's own lamp and its current.

use super::agreement::Agreement;
use super::case::{Case, TABLE_FAULTS};
use super::circumstances::{DRIVEN, KEY_OFF, KEY_ON, RUNNING};
use super::reading::{Probe, Reading};
use super::table;
use super::wiring::Wiring::Mended;
use Probe::{Clamp, Lamp};

const READINGS: [Reading; 8] = [
    Reading::new("lamp on the battery", KEY_OFF, Lamp, "batp", "0"),
    Reading::new("lamp on the feed unplugged", KEY_ON.unplugged(), Lamp, "a1h", "0"),
    Reading::new("lamp on the feed to ground", KEY_ON.unplugged(), Lamp, "a1h", "engg"),
    Reading::new("lamp behind the contact driven", DRIVEN, Lamp, "a1v", "0"),
    Reading::new("lamp from battery to control wire", KEY_ON.unplugged(), Lamp, "batp", "a2h"),
    Reading::new("lamp across the ground strap", DRIVEN, Lamp, "engg", "0"),
    Reading::new("clamp driven", DRIVEN, Clamp, "0", "0"),
    Reading::new("clamp running", RUNNING, Clamp, "0", "0"),
];

#[test]
fn reference_lamp_and_clamp_agree_with_simulator() {
    let cases = Case::of(Mended, &TABLE_FAULTS);
    let simulated = table::simulated(Mended, "instruments_stored.csv", &cases, &READINGS);
    Agreement::of(Mended, &cases, &READINGS, &simulated).settle("lamp and clamp", 96);
    let [battery, feed, ..] = simulated.as_slice() else {
        panic!("eight readings");
    };
    // The healthy lamp glows and the lamp behind a broken feed or a blown fuse does not.
    let named = |name: &str| cases.iter().position(|case| case.name == name).expect("a case");
    assert!(battery[0] > 4.0 && feed[named("healthy 11R")] > 4.0);
    assert!(feed[named("feed open wire")] < 1e-6 && feed[named("fuse blown")] < 1e-6);
}

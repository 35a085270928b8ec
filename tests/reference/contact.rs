//! A poor contact passes an ohms test and fails a voltage-drop test; an ohms test on a live
//! circuit reads neither.

use super::asked::contact::{
    AMPS, BACK_PROBED, COIL, CONTACTS_OHMS, DROP, UNPLUGGED, sweep, with_contact,
};
use super::case::{Case, extra};
use super::circumstances::KEY_ON;
use super::reading::{OHMS, Reading};
use super::wiring::Wiring::{Mended, Original};
use faultwright::instruments::multimeter::Display;

#[test]
fn reference_contact_sweep_agrees_with_simulator() {
    sweep().check();
}

/// Through the range of contacts the ohms test of the unplugged valve does not move by a count,
/// while the drop grows at every step.
#[test]
fn limit_an_ohms_test_of_the_valve_never_sees_the_contact() {
    let mut drop_before = 0.0;
    for ohms in CONTACTS_OHMS {
        let case = with_contact(ohms);
        let unplugged = UNPLUGGED.taken(Mended, &case);
        assert_eq!(unplugged.display, with_contact(0.005).displayed(UNPLUGGED), "{ohms} ohm");
        let drop = DROP.taken(Mended, &case).value;
        assert!(drop > drop_before, "{ohms} ohm: {drop} after {drop_before}");
        drop_before = drop;
        // Back-probed, the meter has coil and contacts in series, bypassed by what leaks past
        // them: a few kilo-ohms of diodes at most.
        let back = BACK_PROBED.taken(Mended, &case).value;
        let series = 11.0 + ohms + 0.005;
        assert!(back <= series + 1e-9 && back > series * (1.0 - series / 2_000.0), "{back}");
    }
}

impl Case {
    fn displayed(&self, reading: Reading) -> Option<Display> {
        reading.taken(Mended, self).display
    }
}

/// Five ohms in the feed contact; figures computed with an independent circuit simulator for this
/// project, in the original wiring.
#[test]
fn reference_five_ohm_contact_has_the_stored_figures() {
    let mut case = Case::sound(Original);
    extra(&mut case.condition, "intake-feed-pin", 4.995);
    let taken = |reading: &Reading| reading.taken(Original, &case).value;
    let amps = taken(&AMPS);
    for (what, value, stored) in [
        ("current [A]", amps, "0.762"),
        ("drop from battery to coil [V]", taken(&DROP), "3.93"),
        ("coil pins [V]", taken(&COIL), "8.38"),
        ("resistance estimated from 12.6 V and the current [ohm]", 12.6 / amps, "16.5"),
        ("back-probed [ohm]", taken(&BACK_PROBED), "16.0"),
        ("unplugged [ohm]", taken(&UNPLUGGED), "11.0"),
    ] {
        let decimals = stored.split('.').nth(1).map_or(0, str::len);
        assert_eq!(format!("{value:.decimals$}"), stored, "{what}: {value}");
    }
}

/// With the key on, the module's bias current of 0.429 mA goes through the coil and adds to the
/// meter's own or takes away from it: 11 ohm reads as 15.7 or 6.3, by the way the leads are held.
/// Values computed with an independent circuit simulator for this project.
#[test]
fn reference_ohms_on_a_live_coil_read_wrong_both_ways() {
    const FEED_TO_CONTROL: Reading = Reading::new("live", KEY_ON, OHMS, "a1v", "a2v");
    const CONTROL_TO_FEED: Reading = Reading::new("live reversed", KEY_ON, OHMS, "a2v", "a1v");
    for wiring in [Original, Mended] {
        let case = Case::sound(wiring);
        for (reading, shown) in [(FEED_TO_CONTROL, "15.7"), (CONTROL_TO_FEED, "6.3")] {
            let display = reading.taken(wiring, &case).display.expect("a display");
            assert_eq!(display.digits(), shown, "{wiring:?} {}", reading.name);
        }
    }
}

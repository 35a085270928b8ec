use super::*;
use crate::vehicle::diagnostic_link::LinkCondition;
use std::collections::BTreeMap;

fn condition(contacts: &[(&str, LooseContact)]) -> Condition {
    Condition {
        extra_ohms: BTreeMap::new(),
        leak_to_ground_ohms: BTreeMap::new(),
        leak_to_supply_ohms: BTreeMap::new(),
        spread_ohms: BTreeMap::new(),
        loose: contacts.iter().map(|(pin, contact)| (Id::from(*pin), *contact)).collect(),
        valves: BTreeMap::new(),
        oil: crate::vehicle::condition::OilFill::in_use(
            4.0,
            crate::physics::oil::Grade::Sae5W30,
            50.0,
        ),
        battery_charge: 0.9,
        link: LinkCondition::SOUND,
        present_elsewhere: std::collections::BTreeSet::new(),
    }
}

const SHAKY: LooseContact = LooseContact { openings_per_s: 0.5, open_from: None };

/// Two states with constant rates: the share of time open is a/(a + b), a = rate of opening and
/// b = 1/0.35 s. A million draws leave a standard error of some thousandths.
#[test]
fn closed_form_the_share_of_time_open_is_that_of_the_two_rates() {
    let condition = condition(&[("pin", SHAKY)]);
    let mut loose = LooseContacts::new(3);
    let (mut open, draws) = (0_u32, 400_000_u32);
    for _ in 0..draws {
        loose.shake(&condition, 1.0, Celsius(20.0));
        open += u32::from(!loose.shaken_open().is_empty());
    }
    let share = f64::from(open) / f64::from(draws);
    // In steps of a tenth of a second.
    let (opens, closes) = (chance(0.5), chance(1.0 / OPEN_FOR_S));
    let expected = opens / (opens + closes);
    assert!((share / expected - 1.0).abs() < 0.02, "{share} {expected}");
}

#[test]
fn limit_what_is_not_shaken_or_is_sound_stays_closed() {
    let contacts = condition(&[("pin", SHAKY)]);
    let mut loose = LooseContacts::new(1);
    for _ in 0..10_000 {
        loose.shake(&contacts, 0.0, Celsius(90.0));
    }
    assert!(loose.shaken_open().is_empty());
    let sound = condition(&[]);
    assert_eq!(loose.wiggle(&sound, &[&Id::from("pin")], Celsius(20.0)).len(), 1);
    // Another contact was wiggled.
    assert_eq!(loose.wiggle(&contacts, &[&Id::from("other")], Celsius(20.0)).len(), 1);
    assert_eq!(loose.wiggle(&contacts, &[&Id::from("pin")], Celsius(20.0)).len(), 2);
    assert!(loose.shaken_open().is_empty());
}

#[test]
fn limit_heat_opens_from_its_temperature_on_and_cold_closes_again() {
    let hot = LooseContact { openings_per_s: 0.0, open_from: Some(Celsius(70.0)) };
    let condition = condition(&[("pin", hot)]);
    let open = |celsius| open_contacts(&condition, &BTreeSet::new(), Celsius(celsius)).len();
    assert_eq!([open(20.0), open(69.9), open(70.0), open(95.0)], [0, 0, 1, 1]);
    let mut loose = LooseContacts::new(1);
    assert_eq!(loose.wiggle(&condition, &[&Id::from("pin")], Celsius(20.0)).len(), 1);
}

/// A stream of its own: what another contact draws shifts nothing.
#[test]
fn replay_each_contact_draws_from_a_stream_of_its_own() {
    let alone = condition(&[("pin", SHAKY)]);
    let both = condition(&[("a-pin", SHAKY), ("pin", SHAKY)]);
    let (mut one, mut two) = (LooseContacts::new(9), LooseContacts::new(9));
    let pin = Id::from("pin");
    for _ in 0..2_000 {
        one.shake(&alone, 1.0, Celsius(50.0));
        two.shake(&both, 1.0, Celsius(50.0));
        assert_eq!(one.shaken_open().contains(&pin), two.shaken_open().contains(&pin));
    }
}

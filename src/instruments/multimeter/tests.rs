use super::*;
use crate::instruments::bench::{BATTERY_OHMS, BATTERY_V, bench};
use MeterFunction::{Amps, Ohms, Volts};

/// A resistance that hangs on the battery's negative post alone.
fn resistance(ohms: f64) -> Vec<(f64, Wiring)> {
    bench(&[("end", "battery-minus", ohms)], false)
}

fn read(function: MeterFunction, phases: &[(f64, Wiring)], red: &str, black: &str) -> MeterReading {
    Multimeter::ideal().read(function, phases, red, black).unwrap()
}

fn ohms_of(ohms: f64) -> Display {
    let mut zeroed = Multimeter { zeroed_ohms: LEADS_OHMS, ..Multimeter::ideal() };
    zeroed.read(Ohms, &resistance(ohms), "end", "battery-minus").unwrap().display
}

/// Digits and prefix as a person would read them out.
fn seen(display: Display) -> String {
    let prefix = match display {
        Display::OverLimit => "",
        Display::Value { prefix, .. } => match prefix {
            Prefix::Milli => " m",
            Prefix::One => "",
            Prefix::Kilo => " k",
            Prefix::Mega => " M",
        },
    };
    format!("{}{prefix}", display.digits())
}

fn volts_shown(value: f64) -> String {
    seen(
        autorange(value, &VOLTS_RANGES)
            .map_or(Display::OverLimit, |on_scale| rounded(on_scale.value, on_scale.full_scale)),
    )
}

#[test]
fn closed_form_volts_load_the_circuit_with_ten_megohms() {
    let divider =
        bench(&[("battery-plus", "middle", 1e6), ("middle", "battery-minus", 1e6)], false);
    let mut meter = Multimeter::ideal();
    let sensed = meter.sense(Volts, &divider, "middle", "battery-minus").unwrap();
    // Half the battery behind half a megohm, on ten.
    let wanted = 0.5 * BATTERY_V * 10e6 / 10.5e6;
    assert!((sensed.on_scale.unwrap().value - wanted).abs() < 1e-4);
    assert!((sensed.standing_volts - wanted).abs() < 1e-4);
    assert_eq!(seen(read(Volts, &divider, "middle", "battery-minus").display), "6.05");
}

#[test]
fn closed_form_volts_change_range_and_prefix_at_six_thousand_counts() {
    for (value, shown) in [
        (0.000_04, "0.0 m"),
        (0.123_46, "123.5 m"),
        (0.599_9, "599.9 m"),
        (0.600_1, "0.600"),
        (5.999, "5.999"),
        (6.01, "6.01"),
        (59.99, "59.99"),
        (60.01, "60.0"),
        (599.9, "599.9"),
        (600.1, "OL"),
    ] {
        assert_eq!(volts_shown(value), shown, "{value}");
        if value > 0.000_1 && value < 600.0 {
            assert_eq!(volts_shown(-value), format!("-{shown}"), "{value}");
        }
    }
    assert_eq!(volts_shown(-600.1), "OL");
}

#[test]
fn closed_form_a_display_rounds_half_a_count_away_from_zero() {
    for (value, shown) in [(0.25, "0.3"), (-0.25, "-0.3"), (0.249_9, "0.2"), (0.05, "0.1")] {
        assert_eq!(rounded(value, 600.0).digits(), shown, "{value}");
    }
    // A display has no negative nothing.
    assert_eq!(rounded(-0.049, 600.0).digits(), "0.0");
}

#[test]
fn closed_form_ohms_change_range_and_prefix() {
    for (ohms, shown) in [
        (0.04, "0.0"),
        (11.04, "11.0"),
        (11.06, "11.1"),
        (599.0, "599.0"),
        (601.0, "0.601 k"),
        (4_700.0, "4.700 k"),
        (5_990.0, "5.990 k"),
        (6_010.0, "6.01 k"),
        (59_900.0, "59.90 k"),
        (60_100.0, "60.1 k"),
        (599_000.0, "599.0 k"),
        (601_000.0, "0.601 M"),
        (4_700_000.0, "4.700 M"),
        (6_100_000.0, "OL"),
        (1e12, "OL"),
    ] {
        assert_eq!(seen(ohms_of(ohms)), shown, "{ohms} ohm");
    }
}

#[test]
fn closed_form_leads_count_until_they_are_zeroed() {
    let link = resistance(0.3);
    assert_eq!(read(Ohms, &link, "end", "battery-minus").display.digits(), "0.5");
    assert_eq!(ohms_of(0.3).digits(), "0.3");
    // Leads held together.
    assert_eq!(read(Ohms, &link, "end", "end").display.digits(), "0.2");
    let mut zeroed = Multimeter { zeroed_ohms: LEADS_OHMS, ..Multimeter::ideal() };
    assert_eq!(zeroed.read(Ohms, &link, "end", "end").unwrap().display.digits(), "0.0");
    // Zeroed on a poor touch of 0.5 ohm, it takes too much away ever after.
    let mut spoiled = Multimeter { zeroed_ohms: 0.7, ..Multimeter::ideal() };
    assert_eq!(spoiled.read(Ohms, &link, "end", "end").unwrap().display.digits(), "-0.5");
}

#[test]
fn closed_form_swapped_leads_change_the_sign_of_volts_and_amps_only() {
    let wiring = bench(&[("battery-plus", "lamp", 1e12), ("lamp", "battery-minus", 10.0)], false);
    let both = |function, red, black| {
        (
            read(function, &wiring, red, black).display.digits(),
            read(function, &wiring, black, red).display.digits(),
        )
    };
    let pair = |a: &str, b: &str| (a.to_owned(), b.to_owned());
    assert_eq!(both(Volts, "battery-plus", "battery-minus"), pair("12.70", "-12.70"));
    // 12.7 V / (10 + 0.24 + 0.008) ohm, the meter in place of an open switch.
    assert_eq!(both(Amps, "battery-plus", "lamp"), pair("1.239", "-1.239"));
    assert_eq!(both(Ohms, "lamp", "battery-minus"), pair("10.2", "10.2"));
}

#[test]
fn closed_form_amps_across_a_battery_blow_the_fuse_for_good() {
    let wiring = bench(&[("battery-plus", "lamp", 1e12), ("lamp", "battery-minus", 10.0)], false);
    let mut meter = Multimeter::ideal();
    const { assert!(BATTERY_V / (SHUNT_OHMS + LEADS_OHMS + BATTERY_OHMS) > AMPS_FUSE_A) };
    let blow = meter.read(Amps, &wiring, "battery-plus", "battery-minus").unwrap();
    assert!(blow.fuse_blew && !meter.fuse_whole);
    assert_eq!(blow.display.digits(), "0.000");
    assert!((blow.standing_volts - BATTERY_V).abs() < 1e-3);
    // Held the other way round it blows as well.
    let mut other = Multimeter::ideal();
    assert!(other.read(Amps, &wiring, "battery-minus", "battery-plus").unwrap().fuse_blew);
    // From now on a sound circuit reads nothing, and no second fuse blows.
    let after = meter.read(Amps, &wiring, "battery-plus", "lamp").unwrap();
    assert_eq!(after.display.digits(), "0.000");
    assert!(!after.fuse_blew && !meter.fuse_whole);
    // Volts and ohms have sockets of their own.
    let volts = meter.read(Volts, &wiring, "battery-plus", "battery-minus").unwrap();
    assert_eq!(volts.display.digits(), "12.70");
    assert_eq!(
        meter.read(Ohms, &wiring, "lamp", "battery-minus").unwrap().display.digits(),
        "10.2"
    );
}

#[test]
fn limit_amps_below_the_fuse_but_beyond_the_range_are_over_limit() {
    // 12.7 V / (1.0 + 0.248) ohm is 10.2 A: more than the range of 10 A, less than the fuse's 11 A.
    let wiring = bench(&[("battery-plus", "lamp", 1e12), ("lamp", "battery-minus", 1.0)], false);
    let reading = read(Amps, &wiring, "battery-plus", "lamp");
    assert_eq!(reading.display, Display::OverLimit);
    assert!(!reading.fuse_blew);
}

#[test]
fn closed_form_a_switched_circuit_shows_the_mean_of_its_phases() {
    let phase =
        |key_on| bench(&[("switched", "lamp", 1e12), ("lamp", "battery-minus", 10.0)], key_on);
    let phases: Vec<(f64, Wiring)> = [(0.4, true), (0.6, false)]
        .into_iter()
        .flat_map(|(share, key_on)| {
            phase(key_on).into_iter().map(move |(_, wiring)| (share, wiring))
        })
        .collect();
    let mut meter = Multimeter::ideal();
    // The node stands on the battery through 9 milliohms and 1 kilo-ohm to ground, or on nothing.
    let on_v = BATTERY_V * 1_000.0 / (1_000.0 + BATTERY_OHMS + 0.001);
    let volts = meter.sense(Volts, &phases, "switched", "battery-minus").unwrap();
    assert!((volts.on_scale.unwrap().value - 0.4 * on_v).abs() < 1e-6);
    assert_eq!(read(Volts, &phases, "switched", "battery-minus").display.digits(), "5.080");
    let one = |number: usize| {
        let alone = [(1.0, phases[number].1.clone())];
        let mut meter = Multimeter::ideal();
        meter.sense(Amps, &alone, "switched", "lamp").unwrap().on_scale.unwrap().value
    };
    let amps = meter.sense(Amps, &phases, "switched", "lamp").unwrap().on_scale.unwrap().value;
    assert!((amps - (0.4 * one(0) + 0.6 * one(1))).abs() < 1e-12);
    assert!((one(0) - 1.239).abs() < 1e-3 && one(1).abs() < 1e-6);
}

#[test]
fn closed_form_each_function_has_its_own_error() {
    let mut meter =
        Multimeter { volts_gain: 1.01, ohms_gain: 0.99, amps_gain: 1.02, ..Multimeter::ideal() };
    let wiring = bench(&[("battery-plus", "lamp", 1e12), ("lamp", "battery-minus", 100.0)], false);
    let mut value = |function, red, black| {
        meter.sense(function, &wiring, red, black).unwrap().on_scale.unwrap().value
    };
    assert!((value(Volts, "battery-plus", "battery-minus") - 1.01 * BATTERY_V).abs() < 1e-4);
    assert!((value(Ohms, "lamp", "battery-minus") - 0.99 * 100.2).abs() < 1e-4);
    assert!((value(Amps, "battery-plus", "lamp") - 1.02 * BATTERY_V / 100.248).abs() < 1e-6);
}

#[test]
fn closed_form_tolerance_is_a_share_and_some_counts() {
    let volts = rounded(12.56, 60.0).tolerance(Volts);
    assert!((volts - (0.005 * 12.56 + 3.0 * 0.01)).abs() < 1e-12);
    let milli = rounded(-0.2, 0.6).tolerance(Volts);
    assert!((milli - (0.005 * 0.2 + 3.0 * 0.000_1)).abs() < 1e-12);
    let ohms = rounded(4_700.0, 6_000.0).tolerance(Ohms);
    assert!((ohms - (0.009 * 4_700.0 + 2.0 * 1.0)).abs() < 1e-9);
    let amps = rounded(1.094, 6.0).tolerance(Amps);
    assert!((amps - (0.012 * 1.094 + 3.0 * 0.001)).abs() < 1e-12);
    assert_eq!(Display::OverLimit.tolerance(Ohms).to_bits(), 0.0_f64.to_bits());
}

#[test]
fn limit_ohms_on_a_live_circuit_or_in_the_air_are_over_limit() {
    let wiring = bench(&[], false);
    let live = read(Ohms, &wiring, "battery-plus", "battery-minus");
    assert_eq!(live.display, Display::OverLimit);
    assert!((live.standing_volts - BATTERY_V).abs() < 1e-3, "told, so that it can be marked");
    assert_eq!(read(Ohms, &wiring, "battery-minus", "battery-plus").display, Display::OverLimit);
    let in_the_air = read(Ohms, &wiring, "battery-plus", "no such node");
    assert_eq!(in_the_air.display, Display::OverLimit);
    assert_eq!(read(Volts, &wiring, "battery-plus", "no such node").display.digits(), "0.0");
}

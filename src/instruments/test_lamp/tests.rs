use super::*;
use crate::instruments::bench::{BATTERY_OHMS, BATTERY_V, bench};

/// A filament at a known heat needs a known voltage and current; what is left of the battery's
/// voltage falls in the feed, whose resistance follows.
#[test]
fn closed_form_a_lamp_behind_a_corroded_feed() {
    for kelvin in [700.0, 1_000.0, 1_500.0, 2_000.0, 2_300.0] {
        let volts = BULB.volts_at(kelvin);
        let amperes = BULB.radiated_w(kelvin) / volts;
        let feed_ohms = (BATTERY_V - volts) / amperes - BATTERY_OHMS - LEAD_OHMS;
        assert!(feed_ohms > 0.0);
        let phases = bench(&[("battery-plus", "feed", feed_ohms)], false);
        let lit = light(&phases, "feed", "battery-minus").unwrap();
        assert!((lit.amperes / amperes - 1.0).abs() < 1e-6, "{kelvin} K: {lit:?}");
        assert!((lit.watts / BULB.radiated_w(kelvin) - 1.0).abs() < 1e-6, "{kelvin} K: {lit:?}");
    }
}

#[test]
fn limit_bright_on_a_battery_dim_behind_ohms_dark_behind_kilohms_or_nothing() {
    let glow = |feed_ohms: f64, clip: &str| {
        let phases = bench(&[("battery-plus", "feed", feed_ohms)], false);
        light(&phases, "feed", clip).unwrap().glow()
    };
    assert_eq!(glow(0.02, "battery-minus"), Glow::Bright);
    // Two more ohms are no fault that a lamp shows; forty are.
    assert_eq!(glow(2.0, "battery-minus"), Glow::Bright);
    assert_eq!(glow(30.0, "battery-minus"), Glow::Dim);
    assert_eq!(glow(400.0, "battery-minus"), Glow::Dark);
    assert_eq!(glow(0.02, "battery-plus"), Glow::Dark);
    assert_eq!(glow(0.02, "no-such-node"), Glow::Dark);
}

/// What a meter of ten megohms takes for a good feed, the lamp shows for what it is.
#[test]
fn limit_a_feed_that_shows_full_volts_to_a_meter_leaves_the_lamp_dark() {
    use crate::instruments::multimeter::{MeterFunction, Multimeter};
    let phases = bench(&[("battery-plus", "feed", 2_000.0)], false);
    let mut meter = Multimeter::ideal();
    let reading = meter.read(MeterFunction::Volts, &phases, "feed", "battery-minus").unwrap();
    assert_eq!(reading.display.digits(), "12.70");
    assert_eq!(light(&phases, "feed", "battery-minus").unwrap().glow(), Glow::Dark);
}

/// The light of a pulsed feed is the mean of its powers.
#[test]
fn closed_form_the_light_of_a_pulsed_feed_is_the_mean_of_its_powers() {
    let state = |ohms| bench(&[("battery-plus", "feed", ohms)], false).remove(0).1;
    let watts = |phases: &[(f64, Wiring)]| light(phases, "feed", "battery-minus").unwrap().watts;
    let (full, weak) = (watts(&[(1.0, state(0.02))]), watts(&[(1.0, state(60.0))]));
    let mean = watts(&[(0.3, state(0.02)), (0.7, state(60.0))]);
    assert!((mean - 0.3 * full - 0.7 * weak).abs() < 1e-9);
}

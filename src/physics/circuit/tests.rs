use super::*;
use crate::numerics::elementary;
use proptest::prelude::*;

#[test]
fn closed_form_divider_and_superposition() {
    let solve = |first: f64, second: f64| {
        let mut network = Network::with_nodes(2);
        network.add(Element::Source { plus: 1, minus: 0, volts: first, ohms: 2.0 });
        network.add(Element::Source { plus: 1, minus: 0, volts: second, ohms: 3.0 });
        network.add(Element::Resistor { a: 1, b: 0, ohms: 6.0 });
        network.solve().unwrap().volts_between(1, 0)
    };
    // (V1/2 + V2/3) / (1/2 + 1/3 + 1/6) = V1/2 + V2/3
    assert!((solve(12.0, 6.0) - 8.0).abs() < 1e-12);
    assert!((solve(12.0, 0.0) + solve(0.0, 6.0) - solve(12.0, 6.0)).abs() < 1e-12);
}

#[test]
fn closed_form_diode_current_satisfies_its_own_law() {
    let law = DiodeLaw { saturation_a: 1e-9, ideality: 1.3, series_ohms: 0.05 };
    for volts in [-14.0, -0.1, 0.0, 0.3, 0.6, 0.9, 2.0, 14.0] {
        let (current, slope) = law.current(volts);
        let current = current - 1e-12 * volts;
        let junction = volts - 0.05 * current;
        // Compared as voltages: the exponential would blow the last bit of the voltage up.
        let wanted = 1.3 * 0.025_864_93 * elementary::ln_1p(current / 1e-9);
        assert!(volts < -0.5 || (junction - wanted).abs() < 1e-6, "{volts}: {junction} {wanted}");
        assert!(volts > -0.5 || (current + 1e-9).abs() < 1e-15, "{volts}: {current}");
        let difference = (law.current(volts + 1e-7).0 - law.current(volts - 1e-7).0) / 2e-7;
        assert!((slope - difference).abs() < 1e-4 * slope + 1e-9, "{volts}: {slope} {difference}");
    }
}

#[test]
fn limit_an_ohmmeter_on_nothing_shows_its_open_voltage() {
    let mut network = Network::with_nodes(2);
    network.add(Element::Resistor { a: 1, b: 0, ohms: 1e12 });
    let source = OhmSource { range_a: 1e-3, compliance_v: 2.5, internal_ohms: 2e3 };
    network.add(Element::OhmMeter { red: 1, black: 0, source });
    assert!((network.solve().unwrap().volts_between(1, 0) - 2.5).abs() < 1e-6);
}

#[test]
fn limit_a_floating_node_is_told() {
    let mut network = Network::with_nodes(3);
    network.add(Element::Resistor { a: 1, b: 0, ohms: 1.0 });
    assert!(matches!(network.solve(), Err(CircuitError::Floating { .. })));
}

const LAMP: FilamentLaw = FilamentLaw { rated_v: 12.0, rated_w: 4.0, rated_k: 2_400.0 };

/// By hand: 4 W at 12 V is 36 ohm and 333 mA; a filament at room temperature has
/// 36 x (293.15/2400)^1.2 = 2.888 ohm; half the absolute temperature radiates a sixteenth.
#[test]
fn closed_form_a_filament_at_its_rating_cold_and_at_half_its_heat() {
    assert!((LAMP.current(12.0).0 - 1.0 / 3.0).abs() < 1e-9);
    assert!((LAMP.current(1e-6).0 * 2.888 / 1e-6 - 1.0).abs() < 1e-3);
    assert!((LAMP.radiated_w(1_200.0) / 4.0 - 1.0 / 16.0).abs() < 3e-4);
    // Voltage across it at that heat: sqrt(P R), R = 36 / 2^1.2.
    let volts = LAMP.volts_at(1_200.0);
    assert!((volts - (0.249_2_f64 * 15.67).sqrt()).abs() < 0.01, "{volts}");
    assert!((LAMP.settled_k(volts) - 1_200.0).abs() < 1e-6);
    assert!((LAMP.watts(volts) - LAMP.radiated_w(1_200.0)).abs() < 1e-9);
}

/// A lamp at a known heat behind a resistance: the source that this needs is known in closed form.
#[test]
fn closed_form_a_lamp_behind_a_resistance_settles_at_the_heat_it_was_made_for() {
    for kelvin in [300.0, 600.0, 1_000.0, 1_700.0, 2_400.0] {
        for ohms in [0.05, 5.0, 40.0, 400.0] {
            let volts = LAMP.volts_at(kelvin);
            let amperes = (LAMP.radiated_w(kelvin) / LAMP.ohms(kelvin)).sqrt();
            let mut network = Network::with_nodes(2);
            let emf = volts + amperes * ohms;
            network.add(Element::Source { plus: 1, minus: 0, volts: emf, ohms });
            let lamp = network.add(Element::Filament { a: 1, b: 0, law: LAMP });
            let found = network.solve().unwrap().amperes(lamp);
            assert!((found / amperes - 1.0).abs() < 1e-6, "{kelvin} K, {ohms} ohm: {found}");
        }
    }
}

proptest! {
    #[test]
    fn prop_a_filament_is_odd_and_its_slope_a_slope(volts in 0.001_f64..30.0) {
        let (current, slope) = LAMP.current(volts);
        prop_assert_eq!(LAMP.current(-volts).0, -current);
        let d = 1e-4 * volts;
        let difference = (LAMP.current(volts + d).0 - LAMP.current(volts - d).0) / (2.0 * d);
        prop_assert!(slope > 0.0 && (slope / difference - 1.0).abs() < 1e-5, "{slope} {difference}");
    }
}

fn random_network() -> impl Strategy<Value = Network> {
    let element = (0_usize..6, 0_usize..6, -3.0_f64..4.0, 0_usize..8, -15.0_f64..15.0);
    proptest::collection::vec(element, 1..25).prop_map(|wanted| {
        let mut network = Network::with_nodes(6);
        for node in 1..6 {
            network.add(Element::Resistor { a: node, b: 0, ohms: 1e6 });
        }
        for (a, b, size, kind, volts) in wanted {
            let ohms = elementary::pow(10.0, size);
            network.add(match kind {
                0 => Element::Source { plus: a, minus: b, volts, ohms },
                1 => Element::Diode {
                    anode: a,
                    cathode: b,
                    law: DiodeLaw { saturation_a: 1e-9, ideality: 1.3, series_ohms: 0.05 },
                },
                2 => Element::Current { from: a, to: b, amperes: volts * 1e-6 },
                3 => Element::Filament { a, b, law: LAMP },
                _ => Element::Resistor { a, b, ohms },
            });
        }
        network
    })
}

proptest! {
    #[test]
    fn conserves_current_at_every_node_and_power_in_the_whole(network in random_network()) {
        let solution = network.solve().unwrap();
        let mut into = vec![0.0; network.nodes()];
        let mut size = vec![1e-9; network.nodes()];
        let (mut used, mut delivered) = (0.0, 0.0);
        for (number, element) in network.elements().iter().enumerate() {
            let current = solution.amperes(number);
            let (from, to, current, power) = match *element {
                Element::Resistor { a, b, .. } | Element::Filament { a, b, .. } =>
                    (a, b, current, current * solution.volts_between(a, b)),
                Element::Diode { anode, cathode, .. } =>
                    (anode, cathode, current, current * solution.volts_between(anode, cathode)),
                Element::Source { plus, minus, volts, ohms } => {
                    delivered += volts * current;
                    (plus, minus, -current, ohms * current * current)
                }
                Element::Current { from, to, .. } => {
                    (from, to, current, current * solution.volts_between(from, to))
                }
                Element::OhmMeter { red, black, .. } => (red, black, -current, 0.0),
            };
            used += power;
            into[from] -= current;
            into[to] += current;
            size[from] += current.abs();
            size[to] += current.abs();
        }
        for node in 1..network.nodes() {
            prop_assert!(into[node].abs() < 1e-8 * size[node].max(1.0), "{node}: {}", into[node]);
        }
        prop_assert!((used - delivered).abs() < 1e-7 * (delivered.abs() + 1.0));
    }
}

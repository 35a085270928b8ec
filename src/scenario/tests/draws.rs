//! Drawing cases.

use crate::faults::FaultKind;
use crate::instruments::multimeter::{MeterFunction, accuracy};
use crate::scenario::draw::{
    Acceptance, DrawError, MOST_ATTEMPTS, any_case, attempt_streams, draw, draw_fault,
};
use crate::scenario::load::{Loaded, demo};
use crate::vehicle::spec::Id;
use std::cell::Cell;
use std::sync::Arc;

fn shipped() -> Arc<Loaded> {
    Arc::new(demo().unwrap())
}

#[test]
fn same_seed_same_case() {
    let loaded = shipped();
    for seed in [0, 1, u64::MAX] {
        let case = draw(&loaded, seed, &any_case).unwrap();
        assert_eq!(case, draw(&shipped(), seed, &any_case).unwrap());
        assert_eq!(case.seed, seed);
        assert_eq!(case.rubric, loaded.scenario.rubric);
        assert_eq!(*case.briefing, loaded.briefing());
    }
}

#[test]
fn another_seed_another_vehicle() {
    let loaded = shipped();
    let cases: Vec<_> = (0..50).map(|seed| draw(&loaded, seed, &any_case).unwrap()).collect();
    for (number, one) in cases.iter().enumerate() {
        for other in &cases[..number] {
            assert_ne!(one.hidden.condition, other.hidden.condition);
            assert_ne!(one.hidden.meter, other.hidden.meter);
            assert_ne!(one.hidden.seed, other.hidden.seed);
        }
    }
}

#[test]
fn regress_first_case_is_pinned() {
    let case = draw(&shipped(), 1, &any_case).unwrap();
    let fault = case.hidden.faults.first().unwrap();
    assert_eq!(
        (fault.name.kind, fault.name.place.as_str()),
        (FaultKind::CorrodedPin, "intake-control-pin")
    );
    assert_eq!(fault.severity.to_bits(), 0.834_484_401_087_096_3_f64.to_bits());
    assert_eq!(case.hidden.seed, 8_987_788_176_106_828_982);
}

/// The sum of squared differences over expectations is about as large as the number of classes less
/// one; 2000 draws over 22 classes exceed 50 by chance less than once in two thousand times, and the
/// seeds are fixed.
#[test]
fn draws_follow_the_weights() {
    const DRAWS: u64 = 2_000;
    let loaded = shipped();
    let scenario = &loaded.scenario;
    let mut counts = vec![0_u32; scenario.faults.len() + 1];
    let mut severities = Vec::new();
    for seed in 0..DRAWS {
        let drawn = draw_fault(scenario, attempt_streams(seed, 0));
        let class = match drawn.faults.as_slice() {
            [] => scenario.faults.len(),
            [fault] => {
                let class =
                    scenario.faults.iter().position(|prior| prior.names() == [fault.name.clone()]);
                let (least, most) = scenario.faults[class.unwrap()].severity;
                assert!((least..=most).contains(&fault.severity));
                severities.push((fault.severity - least) / (most - least));
                class.unwrap()
            }
            more => panic!("{more:?}"),
        };
        counts[class] += 1;
    }
    let mut weights: Vec<f64> = scenario.faults.iter().map(|prior| prior.weight).collect();
    weights.push(scenario.no_fault);
    let total: f64 = weights.iter().sum();
    let distance: f64 = weights
        .iter()
        .zip(&counts)
        .map(|(weight, count)| {
            let expected = weight / total * DRAWS as f64;
            (f64::from(*count) - expected) * (f64::from(*count) - expected) / expected
        })
        .sum();
    assert!(distance < 50.0, "{distance} {counts:?}");
    let mean = severities.iter().sum::<f64>() / severities.len() as f64;
    assert!((mean - 0.5).abs() < 0.03, "severities lie evenly in their range: {mean}");
}

#[test]
fn decoys_follow_their_chances() {
    const DRAWS: u64 = 2_000;
    let loaded = shipped();
    let drawn: Vec<_> =
        (0..DRAWS).map(|seed| draw_fault(&loaded.scenario, attempt_streams(seed, 0))).collect();
    let share = |count: usize| count as f64 / DRAWS as f64;
    let decoys = &loaded.scenario.decoys;
    // Four standard deviations of a share of 0.3 over 2000 draws are 0.041.
    for old in &decoys.old_codes {
        let count = drawn.iter().filter(|one| one.decoys.old_codes.contains(&old.code)).count();
        assert!((share(count) - old.chance).abs() < 0.041, "{} {count}", old.code);
    }
    let count = drawn.iter().filter(|one| one.decoys.other_winding.is_some()).count();
    let chance = decoys.other_winding.as_ref().unwrap().chance;
    assert!((share(count) - chance).abs() < 0.041, "{count}");
}

#[test]
fn hidden_state_lies_in_its_ranges_and_shows_what_was_drawn() {
    let loaded = shipped();
    let exhaust = Id::from("exhaust-valve");
    let (mut with_decoy, mut without_fault) = (0, 0);
    for seed in 0..300 {
        let case = draw(&loaded, seed, &any_case).unwrap();
        let (hidden, condition) = (&case.hidden, &case.hidden.condition);
        assert!((0.88..0.98).contains(&condition.battery_charge));
        assert!((40.0..220.0).contains(&condition.oil.hours));
        for (gain, function) in [
            (hidden.meter.volts_gain, MeterFunction::Volts),
            (hidden.meter.ohms_gain, MeterFunction::Ohms),
            (hidden.meter.amps_gain, MeterFunction::Amps),
        ] {
            assert!((gain - 1.0).abs() <= 0.6 * accuracy(function).0);
        }
        assert!(hidden.meter.fuse_whole && hidden.meter.zeroed_ohms == 0.0);
        for valve in condition.valves.values() {
            let part = loaded.vehicle.valve_part(&valve.part_number).unwrap();
            let share = valve.winding.ohms_at_20.0 / part.ohms_at_20;
            assert!((share - 1.0).abs() <= 0.025);
            let window = part.ohms_least..=part.ohms_most;
            assert!(window.contains(&valve.winding.ohms_at_20.0));
        }
        if condition.valves[&exhaust].part_number == *"hd-4470-3" {
            with_decoy += 1;
        }
        if hidden.faults.is_empty() {
            without_fault += 1;
            assert!(condition.extra_ohms.is_empty() && condition.leak_to_ground_ohms.is_empty());
            assert!(condition.oil.litres >= loaded.vehicle.sump.full_litres);
        } else if hidden.faults[0].name.kind == FaultKind::LowOil {
            assert!(condition.oil.litres < loaded.vehicle.sump.least_litres);
        }
    }
    assert!(with_decoy > 50 && without_fault > 0, "{with_decoy} {without_fault}");
}

#[test]
fn refused_attempts_are_drawn_anew_and_the_session_seed_stays() {
    let loaded = shipped();
    let first = draw(&loaded, 9, &any_case).unwrap();
    let attempts = Cell::new(0);
    let third = draw(&loaded, 9, &|_, _| {
        attempts.set(attempts.get() + 1);
        if attempts.get() < 3 { Acceptance::WithoutComplaint } else { Acceptance::Accepted }
    })
    .unwrap();
    assert_eq!(attempts.get(), 3);
    assert_ne!(first.hidden.condition, third.hidden.condition);
    assert_eq!(first.hidden.seed, third.hidden.seed);
}

#[test]
fn scenario_without_an_acceptable_case_is_told_after_a_bounded_search() {
    let asked = Cell::new(0_u32);
    let result = draw(&shipped(), 4, &|_, _| {
        asked.set(asked.get() + 1);
        if asked.get().is_multiple_of(4) {
            Acceptance::WithoutComplaint
        } else {
            Acceptance::NotSeparable
        }
    });
    assert_eq!(asked.get(), MOST_ATTEMPTS);
    assert_eq!(
        result,
        Err(DrawError::NoneAccepted { attempts: 200, without_complaint: 50, not_separable: 150 })
    );
}

//! What the samples measure, against closed forms.

use super::click::{ClickVoice, MODES_HZ, contact_s, excited};
use super::engine::{EngineRun, EngineVoice, Moment, exhaust_harmonic, fires_hz, strength};
use super::loudness::{FULL_SCALE_DB, level_db_of, limited, rms_of};
use super::mixer::Mixer;
use super::passage::{Part, Passage};
use super::starter::{RING_TEETH, StarterRun, StarterVoice, strokes_hz};
use super::trace::Outline;
use super::{DT_S, SAMPLES_PER_SECOND};
use crate::numerics::elementary::{cos, log10, sin, sqrt};
use crate::physics::stroke::{CLEAR, DULL, Impact};
use crate::units::{Joules, Rpm, Seconds};
use core::f64::consts::TAU;
use proptest::prelude::*;

const SECOND: usize = SAMPLES_PER_SECOND as usize;

/// Amplitude of the line at a frequency of samples taken so many times a second, by Goertzel's recurrence.
fn line_at(samples: &[f64], hz: f64, per_second: f64) -> f64 {
    let factor = 2.0 * cos(TAU * hz / per_second);
    let (mut last, mut one_before) = (0.0, 0.0);
    for sample in samples {
        let next = sample + factor * last - one_before;
        one_before = last;
        last = next;
    }
    let square = last * last + one_before * one_before - factor * last * one_before;
    2.0 / samples.len() as f64 * sqrt(square.max(0.0))
}

fn line(samples: &[f64], hz: f64) -> f64 {
    line_at(samples, hz, f64::from(SAMPLES_PER_SECOND))
}

/// Every tenth sample, each the mean of ten: enough for what lies below some hundred hertz, and ten times as fast.
fn thinned(samples: &[f64]) -> Vec<f64> {
    samples.chunks_exact(10).map(mean).collect()
}

fn mean(samples: &[f64]) -> f64 {
    samples.iter().sum::<f64>() / samples.len() as f64
}

fn rms(samples: &[f64]) -> f64 {
    sqrt(samples.iter().map(|sample| sample * sample).sum::<f64>() / samples.len() as f64)
}

fn peak(samples: &[f64]) -> f64 {
    samples.iter().fold(0.0, |most, sample| f64::max(most, sample.abs()))
}

fn impact(energy_j: f64) -> Impact {
    // A spool of 12 g.
    let speed_m_per_s = sqrt(2.0 * energy_j / 0.012);
    Impact { at: Seconds(0.0), speed_m_per_s, energy: Joules(energy_j) }
}

fn turning(cylinders: u8, rpm: f64, load: f64, is_rough: bool) -> EngineRun {
    let moments = vec![Moment { at_s: 0.0, rpm, load }];
    EngineRun { cylinders, moments, is_rough, is_fired: true }
}

/// Some whole seconds, the first half left out.
fn settled(run: &EngineRun, seconds: usize) -> Vec<f64> {
    EngineVoice::new(run).skip(SECOND / 2).take(seconds * SECOND).collect()
}

#[test]
fn closed_form_a_line_has_the_amplitude_of_its_sine() {
    let samples: Vec<f64> =
        (0..SECOND).map(|number| 0.3 * sin(TAU * 40.0 * number as f64 * DT_S)).collect();
    assert!((line(&samples, 40.0) - 0.3).abs() < 1e-6);
    assert!(line(&samples, 47.0) < 1e-6);
}

#[test]
fn closed_form_a_sine_of_full_scale_has_the_level_of_full_scale() {
    assert!((level_db_of(sqrt(0.5)) - FULL_SCALE_DB).abs() < 1e-12);
    for level_db in [20.0, 55.0, 86.0] {
        assert!((level_db_of(rms_of(level_db)) - level_db).abs() < 1e-9);
    }
}

#[test]
fn closed_form_a_click_is_as_loud_as_its_impact() {
    for energy_j in [DULL.0, CLEAR.0, 1e-3, 4e-3] {
        let impact = impact(energy_j);
        let samples: Vec<f64> = ClickVoice::new(&impact).take(SECOND / 100).collect();
        let level_db = level_db_of(rms(&samples));
        assert!((level_db - impact.level_db()).abs() < 1e-6, "{energy_j}: {level_db}");
    }
}

/// Ten times the energy is ten decibels more.
#[test]
fn closed_form_a_sharp_click_is_louder_than_a_dull_one_by_their_energies() {
    let whole = |energy_j| ClickVoice::new(&impact(energy_j)).collect::<Vec<f64>>();
    let (sharp, dull) = (whole(1e-3), whole(1e-4));
    let by_energy = |samples: &[f64]| 10.0 * log10(rms(samples) * rms(samples));
    let more_db = by_energy(&sharp[..SECOND / 100]) - by_energy(&dull[..SECOND / 100]);
    assert!((more_db - 10.0).abs() < 1e-6, "{more_db}");
    assert!(peak(&sharp) > 2.5 * peak(&dull));
}

/// Between two clicks the lines of two modes change as the blow's spectrum does.
#[test]
fn closed_form_a_sharp_click_is_brighter() {
    let lines = |energy_j: f64| {
        let impact = impact(energy_j);
        let samples: Vec<f64> = ClickVoice::new(&impact).collect();
        let seen = line(&samples, MODES_HZ[3]) / line(&samples, MODES_HZ[0]);
        let contact_s = contact_s(&impact);
        (seen, excited(MODES_HZ[3], contact_s) / excited(MODES_HZ[0], contact_s))
    };
    let ((sharp, sharp_excited), (dull, dull_excited)) = (lines(1e-3), lines(5e-5));
    let (seen, wanted) = (sharp / dull, sharp_excited / dull_excited);
    assert!((seen / wanted - 1.0).abs() < 0.05, "{seen} {wanted}");
    assert!(seen > 1.2, "{seen}");
}

/// The spectrum of half a sine by its own integral.
#[test]
fn closed_form_a_blow_excites_by_its_own_spectrum() {
    let lasts_s = 80e-6;
    for hz in [0.0, 2_300.0, 6_250.0, 9_800.0, 20_000.0] {
        let steps = 20_000;
        let (mut real, mut imaginary, mut area) = (0.0, 0.0, 0.0);
        for step in 0..steps {
            let time_s = (f64::from(step) + 0.5) / f64::from(steps) * lasts_s;
            let force = sin(core::f64::consts::PI * time_s / lasts_s);
            area += force;
            real += force * cos(TAU * hz * time_s);
            imaginary += force * sin(TAU * hz * time_s);
        }
        let by_sum = sqrt(real * real + imaginary * imaginary) / area;
        assert!((excited(hz, lasts_s) - by_sum).abs() < 1e-6, "{hz}");
    }
    assert_eq!(excited(6_250.0, 80e-6).to_bits(), (core::f64::consts::PI / 4.0).to_bits());
}

/// From formula: a spool 32 times as fast touches for half the time, and some ten to hundred microseconds.
#[test]
fn closed_form_contact_shortens_with_the_fifth_root_of_speed() {
    let slow = Impact { speed_m_per_s: 0.1, energy: Joules(0.5 * 0.012 * 0.01), ..impact(1.0) };
    let fast = Impact { speed_m_per_s: 3.2, energy: Joules(0.5 * 0.012 * 10.24), ..slow };
    assert!((contact_s(&slow) / contact_s(&fast) - 2.0).abs() < 1e-9);
    assert!((20e-6..200e-6).contains(&contact_s(&slow)), "{}", contact_s(&slow));
}

#[test]
fn limit_no_click_is_no_sound() {
    assert_eq!(Passage::SILENCE.samples().count(), 0);
    let pause = Passage::new(vec![Part::Pause(Seconds(0.25))]);
    let samples: Vec<f64> = pause.samples().collect();
    assert_eq!(samples.len(), SECOND / 4);
    assert_eq!(peak(&samples), 0.0);
}

#[test]
fn closed_form_the_strongest_line_is_that_of_the_fires() {
    for (cylinders, rpm, load) in
        [(4, 700.0, 0.2), (4, 940.0, 0.2), (4, 3_000.0, 0.8), (3, 800.0, 0.2), (6, 650.0, 0.2)]
    {
        for is_rough in [false, true] {
            let samples = thinned(&settled(&turning(cylinders, rpm, load, is_rough), 4));
            let fires = fires_hz(Rpm(rpm), cylinders);
            assert!((fires - rpm / 60.0 * f64::from(cylinders) / 2.0).abs() < 1e-12);
            // Wandering spreads a line; a rough engine's is as wide as its speed wanders.
            let around = |hz: f64| {
                let per_second = f64::from(SAMPLES_PER_SECOND) / 10.0;
                let lines =
                    (-8..=8).map(|n| line_at(&samples, hz + f64::from(n) * 0.25, per_second));
                lines.map(|line| line * line).sum::<f64>()
            };
            let strongest = around(fires);
            for number in 1..100 {
                let hz = f64::from(number) * 5.0 + 2.5;
                if (hz - fires).abs() > 5.0 {
                    assert!(around(hz) < strongest, "{cylinders} {rpm} {is_rough}: {hz}");
                }
            }
        }
    }
}

/// Harmonics of a steady engine without scatter: the flow's own, times what the silencer's mouth radiates.
#[test]
fn closed_form_harmonics_of_the_exhaust() {
    let run = turning(4, 1_500.0, 0.2, false);
    let voice = EngineVoice::bare(&run);
    let fire = voice.fire_size();
    let samples: Vec<f64> = voice.skip(SECOND / 2).take(2 * SECOND).collect();
    let strong = strength(Rpm(1_500.0), 0.2);
    assert!((strong - 1_500.0 / 700.0).abs() < 1e-12);
    for number in [1, 2, 3] {
        let hz = 50.0 * f64::from(number);
        // The speed wanders by two turns in fifteen hundred, which spreads a line over its neighbours.
        let seen = sqrt(
            (-40..=40)
                .map(|n| line(&samples, hz + f64::from(n) * 0.5))
                .map(|line| line * line)
                .sum::<f64>(),
        );
        let wanted = fire * exhaust_harmonic(number, Rpm(1_500.0), 4, strong);
        assert!((seen / wanted - 1.0).abs() < 0.05, "{number}: {seen} {wanted}");
    }
}

#[test]
fn closed_form_load_and_speed_make_it_louder() {
    let level = |rpm, load| level_db_of(rms(&settled(&turning(4, rpm, load, false), 4)));
    let idle = level(700.0, 0.2);
    assert!((idle - 62.4).abs() < 0.5, "{idle}");
    // A full charge against that of the idle.
    let loaded_db = 20.0 * log10(strength(Rpm(2_000.0), 1.0) / strength(Rpm(2_000.0), 0.2));
    let seen_db = level(2_000.0, 1.0) - level(2_000.0, 0.2);
    assert!((seen_db - loaded_db).abs() < 0.1, "{seen_db} {loaded_db}");
    assert!(level(2_500.0, 0.15) > idle + 8.0);
}

/// The strength of fires scatters as it should, and the ear gets it: between fires the level jumps about.
#[test]
fn a_rough_idle_is_rougher() {
    let unevenness = |is_rough| {
        let samples = settled(&turning(4, 700.0, 0.2, is_rough), 6);
        let blocks: Vec<f64> = samples.chunks(SECOND * 60 / 700 / 2).map(rms).collect();
        let middle = mean(&blocks);
        sqrt(mean(&blocks.iter().map(|rms| (rms - middle) * (rms - middle)).collect::<Vec<_>>()))
            / middle
    };
    assert!(
        unevenness(true) > 2.0 * unevenness(false),
        "{} {}",
        unevenness(true),
        unevenness(false)
    );
}

#[test]
fn a_starter_turns_over_with_its_compression_strokes() {
    for rpm in [60.0, 200.0] {
        let run = StarterRun { speed: Rpm(rpm), cylinders: 4, lasts: Seconds(6.0) };
        assert!((strokes_hz(&run) - rpm / 30.0).abs() < 1e-12);
        let samples: Vec<f64> = StarterVoice::new(&run).collect();
        assert_eq!(samples.len(), 6 * SECOND);
        // What swells and falls: the power, its mean taken off.
        let power: Vec<f64> = samples[SECOND..].iter().map(|sample| sample * sample).collect();
        let middle = mean(&power);
        let swell: Vec<f64> = power.iter().map(|power| power - middle).collect();
        let at = |hz: f64| line(&swell, hz);
        let strokes = at(strokes_hz(&run));
        for number in 1..80 {
            let hz = f64::from(number) * 0.25;
            if (hz - strokes_hz(&run)).abs() > 0.4 {
                assert!(at(hz) < strokes, "{rpm}: {hz}");
            }
        }
    }
}

#[test]
fn closed_form_a_starter_has_its_level_and_its_teeth() {
    let run = StarterRun { speed: Rpm(180.0), cylinders: 4, lasts: Seconds(4.0) };
    let samples: Vec<f64> = StarterVoice::new(&run).skip(SECOND).take(2 * SECOND).collect();
    assert!((level_db_of(rms(&samples)) - 70.0).abs() < 0.3, "{}", level_db_of(rms(&samples)));
    // The whine lies between the slowest and the fastest tooth, a quarter either way.
    let teeth_hz = 3.0 * RING_TEETH;
    let band = |low: f64, high: f64| {
        let lines = (0..).map(|n| low + f64::from(n)).take_while(|hz| *hz < high);
        lines.map(|hz| line(&samples, hz)).map(|line| line * line).sum::<f64>()
    };
    let whine = band(teeth_hz * 0.7, teeth_hz * 1.3);
    assert!(whine > 3.0 * band(20.0, teeth_hz * 0.6), "{whine}");
    // Above the second harmonic of the fastest tooth as well.
    assert!(whine > 3.0 * band(teeth_hz * 2.7, teeth_hz * 3.3), "{whine}");
}

#[test]
fn an_engine_that_stalls_comes_to_an_end() {
    let moments = vec![
        Moment { at_s: 0.0, rpm: 700.0, load: 0.2 },
        Moment { at_s: 1.5, rpm: 0.0, load: 0.2 },
    ];
    let run = EngineRun { cylinders: 4, moments, is_rough: true, is_fired: true };
    let samples: Vec<f64> = EngineVoice::new(&run).collect();
    assert_eq!(samples.len(), SECOND * 3 / 2);
    assert!(!Passage::new(vec![Part::Engine(run)]).is_endless());
    assert!(Passage::new(vec![Part::Engine(turning(4, 700.0, 0.2, false))]).is_endless());
}

fn parts() -> impl Strategy<Value = Part> {
    let moment = (0.0..8_000.0_f64, 0.0..=1.0_f64);
    prop_oneof![
        (1e-6..0.05_f64, 0.01..5.0_f64).prop_map(|(energy_j, speed_m_per_s)| {
            Part::Click(Impact { speed_m_per_s, ..impact(energy_j) })
        }),
        (40.0..600.0_f64, 1..=8_u8, 0.0..1.0_f64).prop_map(|(rpm, cylinders, lasts)| {
            Part::Starter(StarterRun { speed: Rpm(rpm), cylinders, lasts: Seconds(lasts) })
        }),
        (1..=8_u8, prop::collection::vec(moment, 1..4), any::<bool>(), any::<bool>()).prop_map(
            |(cylinders, turns, is_rough, is_fired)| {
                let at = |number: usize| number as f64 * 0.2;
                let moments = turns
                    .iter()
                    .enumerate()
                    .map(|(number, (rpm, load))| Moment {
                        at_s: at(number),
                        rpm: *rpm,
                        load: *load,
                    })
                    .collect();
                Part::Engine(EngineRun { cylinders, moments, is_rough, is_fired })
            }
        ),
        (0.0..0.2_f64).prop_map(|lasts| Part::Pause(Seconds(lasts))),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// No sound leaves its range, none stands on one side of it, and each is the same every time.
    #[test]
    fn prop_every_sound_stays_in_range_and_has_no_steady_part(
        parts in prop::collection::vec(parts(), 0..4),
    ) {
        let passage = Passage::new(parts);
        let samples: Vec<f64> = passage.samples().take(2 * SECOND).collect();
        prop_assert!(samples.iter().all(|sample| sample.abs() <= 1.0));
        // What is bent is bent more on its higher side, and a few turns of a slow starter do not even out.
        if samples.len() > SECOND / 4 && peak(&samples) <= 0.8 {
            prop_assert!(mean(&samples).abs() <= 0.05 * peak(&samples), "{}", mean(&samples));
        }
        let again: Vec<f64> = passage.samples().take(2 * SECOND).collect();
        prop_assert!(samples.iter().zip(&again).all(|(one, other)| one.to_bits() == other.to_bits()));
    }

    #[test]
    fn prop_bending_keeps_order_and_range(one in -50.0..50.0_f64, other in -50.0..50.0_f64) {
        prop_assert!(limited(one).abs() <= 1.0);
        prop_assert!((one <= other) <= (limited(one) <= limited(other)));
        if one.abs() <= 0.8 {
            prop_assert_eq!(limited(one).to_bits(), one.to_bits());
        }
    }
}

fn filled(mixer: &mut Mixer, seconds: f32) -> Vec<f64> {
    let mut samples = vec![0.0_f32; (seconds * SAMPLES_PER_SECOND as f32) as usize];
    mixer.fill(&mut samples);
    samples.iter().map(|sample| f64::from(*sample)).collect()
}

#[test]
fn a_passage_is_mixed_at_its_volume_and_then_nothing_sounds() {
    let click = Passage::new(vec![Part::Click(impact(1e-3))]);
    let mut mixer = Mixer::new(0.5);
    assert!(mixer.is_silent());
    mixer.begin(&click);
    assert!(!mixer.is_silent());
    let mixed = filled(&mut mixer, 0.1);
    let alone: Vec<f64> = click.samples().collect();
    for (mixed, alone) in mixed.iter().zip(&alone) {
        assert!((mixed - 0.5 * alone).abs() < 1e-6);
    }
    filled(&mut mixer, 0.5);
    assert!(mixer.is_silent());
}

#[test]
fn what_is_replaced_fades_and_silence_ends_an_engine() {
    let mut mixer = Mixer::new(1.0);
    mixer.begin(&Passage::new(vec![Part::Engine(turning(4, 700.0, 0.2, false))]));
    let before = filled(&mut mixer, 1.0);
    mixer.begin(&Passage::SILENCE);
    let after = filled(&mut mixer, 0.5);
    let step = (after[0] - before[before.len() - 1]).abs();
    assert!(step < 0.1 * peak(&before), "{step}");
    assert_eq!(peak(&after[SECOND / 50..]), 0.0);
    assert!(mixer.is_silent());
}

#[test]
fn a_muted_engine_goes_on_when_it_is_loud_again_and_a_muted_click_does_not() {
    let start = Passage::new(vec![
        Part::Starter(StarterRun { speed: Rpm(200.0), cylinders: 4, lasts: Seconds(1.0) }),
        Part::Engine(turning(4, 700.0, 0.2, false)),
    ]);
    let mut mixer = Mixer::new(0.0);
    mixer.begin(&start);
    assert!(mixer.is_silent());
    assert_eq!(peak(&filled(&mut mixer, 0.1)), 0.0);
    mixer.set_gain(1.0);
    assert!(!mixer.is_silent());
    let loud = filled(&mut mixer, 2.0);
    // The engine, not the starter that was to be heard long ago.
    assert!(line(&loud[SECOND..], fires_hz(Rpm(700.0), 4)) > 0.01);
    assert!((level_db_of(rms(&loud[SECOND / 10..SECOND])) - 62.4).abs() < 1.5);

    let mut mixer = Mixer::new(0.0);
    mixer.begin(&Passage::new(vec![Part::Click(impact(1e-3))]));
    mixer.set_gain(1.0);
    assert_eq!(peak(&filled(&mut mixer, 0.5)), 0.0);
}

#[test]
fn an_outline_goes_as_far_as_its_sound() {
    let click = Passage::new(vec![
        Part::Click(impact(1e-3)),
        Part::Pause(Seconds(0.2)),
        Part::Click(impact(CLEAR.0)),
    ]);
    let samples: Vec<f64> = click.samples().collect();
    let outline = Outline::of(&click, 100);
    assert!((90..=100).contains(&outline.columns.len()));
    let most = outline.columns.iter().fold(0.0, |most, (_, up)| f64::max(most, f64::from(*up)));
    let wanted = samples.iter().fold(0.0, |most, sample| f64::max(most, *sample));
    assert!((most - wanted).abs() < 1e-6);
    assert!(outline.columns.contains(&(0.0, 0.0)), "no pause is drawn");
    assert!(Outline::of(&Passage::SILENCE, 100).columns.is_empty());
    let engine = Passage::new(vec![Part::Engine(turning(4, 700.0, 0.2, false))]);
    assert_eq!(Outline::of(&engine, 100).columns.len(), 100);
}

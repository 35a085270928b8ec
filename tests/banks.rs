//! An engine with two banks: four phasers on one gallery, and each bank's valves, codes and figures its own.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod road;

use faultwright::control_module::code_family::Bank;
use faultwright::numerics::streams::Streams;
use faultwright::physics::phaser::Lobes;
use faultwright::physics::warm_up::EngineHeat;
use faultwright::units::{Celsius, Newtons, Rpm};
use faultwright::vehicle::cam_line::{CamCondition, CamSpec};
use faultwright::vehicle::per_bank::{CamPlace, PerBank};
use faultwright::vehicle::per_cam::{Cam, PerCam};
use faultwright::vehicle::route::{Demand, RouteProfile};
use faultwright::vehicle::run_record::{CamSummary, Idling, RunRecord};
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};
use proptest::prelude::*;
use road::{codes, demand, verdicts};

const WARM: EngineHeat = EngineHeat { coolant: Celsius(89.0), oil: Celsius(88.0) };

/// A V engine of six cylinders whose banks are alike.
fn vee() -> EngineSpec {
    let typical = EngineSpec::TYPICAL;
    let bank = typical.cams.one.map(|cam| cam.with_cylinders(3));
    let mut spec = EngineSpec { cams: PerBank { one: bank, two: Some(bank) }, ..typical };
    spec.idle.crank = spec.idle.crank.with_cylinders(6);
    spec
}

/// The same without torque pulses, which come at other moments on the other bank.
fn without_pulses(spec: &EngineSpec) -> EngineSpec {
    let mut spec = *spec;
    for cam in spec.cams.each_mut() {
        cam.phaser.lobes = Lobes { lobe_nm: 0.0, ..cam.phaser.lobes };
    }
    spec
}

fn conditions(one: &[CamCondition; 2], two: &[CamCondition; 2]) -> EngineCondition {
    let bank = |valves: &[CamCondition; 2]| PerCam { intake: valves[0], exhaust: valves[1] };
    EngineCondition {
        cams: PerBank { one: bank(one), two: Some(bank(two)) },
        ..EngineCondition::SOUND
    }
}

static SOUND: [CamCondition; 2] = [CamCondition::SOUND; 2];

fn engine(spec: &EngineSpec, condition: &EngineCondition) -> RunningEngine {
    let air = Streams::new(5).stream("aeration");
    let mut engine = RunningEngine::new(*spec, *condition, WARM, air).unwrap();
    engine.assume_learnt();
    engine
}

fn road_test(spec: &EngineSpec, condition: &EngineCondition) -> RunRecord {
    let mut engine = engine(spec, condition);
    engine.start();
    engine.drive(&RouteProfile::warm_road_test()).unwrap()
}

fn banks(record: &RunRecord) -> [&PerCam<CamSummary>; 2] {
    [&record.cams.one, record.cams.two.as_ref().unwrap()]
}

fn places(engine: &RunningEngine) -> impl Iterator<Item = CamPlace> + use<> {
    engine.spec().cams.places()
}

/// Pressure of the gallery with every vane locked, and with every vane on its way.
fn pressures(spec: &EngineSpec) -> [f64; 2] {
    let mut engine = engine(spec, &EngineCondition::SOUND);
    engine.brake(true);
    engine.hold(&demand(2_000.0, 0.0, 0.0), 3_000);
    assert!(places(&engine).all(|place| engine.cam(place).vane().is_locked()));
    let locked = engine.pressure().0;
    engine.hold(&demand(2_000.0, 30.0, 25.0), 60);
    [locked, engine.pressure().0]
}

/// Pressure of the gallery at rest with a displacement of the pump [cm³] and so many valves that leak, the others
/// being tight.
fn at_rest(displacement_cm3: f64, leaking: usize) -> f64 {
    let mut spec = vee();
    spec.pump.displacement_cm3 = displacement_cm3;
    for cam in spec.cams.each_mut().skip(leaking) {
        cam.port.leak_m3 = 0.0;
    }
    let mut engine = engine(&spec, &EngineCondition::SOUND);
    engine.brake(true);
    engine.hold(&demand(1_000.0, 0.0, 0.0), 2_000);
    assert!(places(&engine).all(|place| engine.cam(place).vane().is_locked()));
    engine.pressure().0
}

/// What the phasers draw from the one gallery adds up. At one pressure every bearing lets the same through and every
/// valve draws the same, so the pump must deliver in proportion to the number of valves that draw, whichever bank
/// they stand on.
#[test]
fn closed_form_the_gallery_feeds_the_sum_of_what_four_phasers_draw() {
    let with_two = EngineSpec::TYPICAL.pump.displacement_cm3;
    let pressure = at_rest(with_two, 2);
    let (mut low, mut high) = (0.5 * with_two, with_two);
    for _ in 0..45 {
        let middle = 0.5 * (low + high);
        *(if at_rest(middle, 0) < pressure { &mut low } else { &mut high }) = middle;
    }
    let without = low;
    let a_valve = 0.5 * (with_two - without);
    assert!(a_valve > 0.01 * without, "valves hardly draw: {a_valve} cm³ of {without} cm³");
    for leaking in [1, 3, 4] {
        let fed = without + leaking as f64 * a_valve;
        let got = at_rest(fed, leaking);
        // The oil warms a little meanwhile, and the gallery follows it; what a valve draws is a thousand times that.
        assert!((got - pressure).abs() < 1e-5, "{leaking}: {got} bar, {pressure} bar");
        assert!((at_rest(with_two, leaking) - pressure).abs() > 1e-2, "{leaking} draw as two do");
    }
}

/// Vanes on their way take oil as well: the gallery falls further when four of them move than when two do.
#[test]
fn limit_four_vanes_on_their_way_take_more_than_two() {
    let four = without_pulses(&vee());
    let two = EngineSpec { cams: PerBank { two: None, ..four.cams }, ..four };
    let fall = |[before, after]: [f64; 2]| before - after;
    let (by_four, by_two) = (fall(pressures(&four)), fall(pressures(&two)));
    assert!(by_two > 0.01 && by_four > 1.5 * by_two, "{by_four} bar, {by_two} bar");
}

/// Without torque pulses the banks cannot be told apart, to the last bit; with them the other bank feels the same
/// pulses at other moments.
#[test]
fn limit_banks_with_the_same_data_and_condition_read_alike() {
    let record = road_test(&without_pulses(&vee()), &EngineCondition::SOUND);
    let [one, two] = banks(&record);
    assert_eq!(one, two);
    assert_eq!(verdicts(&one.intake), [faultwright::control_module::verdict::Verdict::Passed; 4]);
    let record = road_test(&vee(), &EngineCondition::SOUND);
    let [one, two] = banks(&record);
    for cam in Cam::BOTH {
        let (one, two) = (one.of(cam), two.of(cam));
        assert!(codes(one).is_empty() && codes(two).is_empty(), "{one:?} {two:?}");
        assert_eq!(verdicts(one), verdicts(two));
        assert!((one.mean_error.0 - two.mean_error.0).abs() < 0.1, "{one:?} {two:?}");
        assert_eq!(one.steps.len(), two.steps.len());
    }
}

/// What nobody says of a second bank is as in the first.
#[test]
fn limit_a_second_bank_of_which_nothing_is_said_is_like_the_first() {
    let sticking = CamCondition { stiction: Newtons(2.5), ..CamCondition::SOUND };
    let both = [sticking, CamCondition::SOUND];
    let said = road_test(&vee(), &conditions(&both, &both));
    let mut unsaid = conditions(&both, &both);
    unsaid.cams.two = None;
    assert_eq!(road_test(&vee(), &unsaid), said);
    // And an engine in line keeps one, whatever is said.
    let in_line = road_test(&EngineSpec::TYPICAL, &conditions(&both, &SOUND));
    assert_eq!(in_line.cams.two, None);
    assert!(!codes(&in_line.cams.one.intake).is_empty());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(6))]

    /// The same fault on the other bank: everything is exchanged and nothing else changes. The bank beside it feels
    /// it through the one gallery alone, and sets no code of its own.
    #[test]
    fn prop_a_fault_on_the_other_bank_is_the_same_fault_there(
        blockage in 0.0..0.99_f64, stiction_n in 0.0..12.0_f64, is_intake in any::<bool>(),
    ) {
        let bad = CamCondition { blockage, stiction: Newtons(stiction_n), ..CamCondition::SOUND };
        let hurt = if is_intake {
            [bad, CamCondition::SOUND]
        } else {
            [CamCondition::SOUND, bad]
        };
        let spec = without_pulses(&vee());
        let first = road_test(&spec, &conditions(&hurt, &SOUND));
        let second = road_test(&spec, &conditions(&SOUND, &hurt));
        let ([one, two], [other_one, other_two]) = (banks(&first), banks(&second));
        prop_assert_eq!(one, other_two);
        prop_assert_eq!(two, other_one);
        prop_assert_eq!(first.mean_pressure, second.mean_pressure);
        for cam in Cam::BOTH {
            prop_assert!(codes(two.of(cam)).is_empty(), "{:?}", two.of(cam));
        }
    }
}

/// Both banks burn what the mean of their overlaps lets them: one bank's valves held on shake the idle less than
/// both banks' do, and both banks' as those of an engine in line, which stall it.
#[test]
fn limit_the_idle_feels_the_mean_of_the_banks() {
    let on = CamCondition { forced_duty: Some(1.0), ..CamCondition::SOUND };
    let idle = |one: &[CamCondition; 2], two: &[CamCondition; 2]| {
        let mut engine = engine(&vee(), &conditions(one, two));
        engine.start();
        let record = engine.hold(&Demand::IDLE, 20_000);
        (record.idling, engine.idle().spread_rpm())
    };
    let (sound, spread) = idle(&SOUND, &SOUND);
    assert_eq!(sound, Idling::Smooth);
    assert_eq!(idle(&[on, on], &[on, on]).0, Idling::Stalls);
    let (_, of_one) = idle(&[on, CamCondition::SOUND], &SOUND);
    let (_, of_two) = idle(&SOUND, &[on, CamCondition::SOUND]);
    assert!(of_one > spread && of_two > spread, "{spread} {of_one} {of_two} rpm");
    let (worst, _) = idle(&[on, CamCondition::SOUND], &[on, CamCondition::SOUND]);
    assert!(worst >= Idling::Rough, "{worst:?}");
}

/// Nobody reads a bank that is not there as another one's: the name of a camshaft leads to its own line.
#[test]
fn limit_each_camshaft_has_a_line_of_its_own() {
    let mut engine = engine(&vee(), &EngineCondition::SOUND);
    engine.brake(true);
    engine.start();
    for (number, place) in places(&engine).enumerate() {
        let blockage = 0.1 * number as f64;
        engine.set_cam(place, CamCondition { blockage, ..CamCondition::SOUND });
    }
    let blocked: Vec<f64> =
        places(&engine).map(|place| engine.cam(place).condition().blockage).collect();
    assert_eq!(blocked, [0.0, 0.1, 0.2, 0.1 * 3.0]);
    engine.set_cam(
        Cam::Exhaust.on(Bank::Two),
        CamCondition { forced_duty: Some(1.0), ..CamCondition::SOUND },
    );
    engine.hold(&Demand { speed: Rpm(2_000.0), ..demand(2_000.0, 0.0, 0.0) }, 2_000);
    for place in places(&engine) {
        let away = engine.cam(place).seen().0;
        let is_driven = place == Cam::Exhaust.on(Bank::Two);
        assert_eq!(away > 20.0, is_driven, "{place:?} {away}");
    }
    // Three cylinders a camshaft are what the pulses count with.
    assert_eq!(engine.spec().cams.one.intake.phaser.lobes.cylinders, 3);
    assert_eq!(CamSpec::INTAKE.with_cylinders(4), CamSpec::INTAKE);
}

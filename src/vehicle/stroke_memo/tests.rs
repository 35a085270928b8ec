use super::*;
use crate::units::{Celsius, Millimetres, Ohms, Seconds, Volts};
use crate::vehicle::condition::Seal;
use crate::vehicle::spec::Id;
use proptest::prelude::*;

fn valve(stiction_n: f64, winding: Winding) -> FittedValve {
    let part_number = Id::from("any");
    FittedValve { part_number, winding, screen_blocked: 0.0, stiction_n, seal: Seal::Good }
}

fn plain(valve: &FittedValve, drive: Drive, around: Surroundings) -> Stroke {
    let Actuator { solenoid, spool } = Actuator::REFERENCE;
    energise(&solenoid, &valve.winding, &spool.gummed(Newtons(valve.stiction_n)), drive, around)
}

fn drive(supply_v: f64, source_ohms: f64, on_s: f64) -> Drive {
    Drive { supply: Volts(supply_v), source: Ohms(source_ohms), on_for: Seconds(on_s) }
}

const WARM: Surroundings =
    Surroundings { coil: Celsius(90.0), oil_viscosity_pa_s: 0.012, start: Millimetres(0.0) };

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Asked twice of one memo, and for the neighbours in each number in between: always what is
    /// simulated without one, to the bit.
    #[test]
    fn prop_remembered_strokes_are_those_simulated_anew(
        supply_v in 6.0..15.0_f64,
        source_ohms in 0.1..8.0_f64,
        stiction_n in 0.0..3.0_f64,
        coil_c in -20.0..150.0_f64,
        shorted_share in 0.0..0.5_f64,
        start_mm in 0.0..2.0_f64,
    ) {
        let memo = StrokeMemo::default();
        let winding = Winding { shorted_share, ..Winding::REFERENCE };
        let around = Surroundings { coil: Celsius(coil_c), start: Millimetres(start_mm), ..WARM };
        let asked = [
            (valve(stiction_n, winding), drive(supply_v, source_ohms, 0.12), around),
            (valve(stiction_n, winding), drive(supply_v.next_up(), source_ohms, 0.12), around),
            (valve(stiction_n, winding), drive(supply_v, source_ohms, 0.5), around),
            (valve(stiction_n + 1.0, winding), drive(supply_v, source_ohms, 0.12), around),
            (valve(stiction_n, Winding::REFERENCE), drive(supply_v, source_ohms, 0.12), around),
            (valve(stiction_n, winding), drive(supply_v, source_ohms, 0.12), WARM),
        ];
        for _ in 0..2 {
            for (valve, drive, around) in &asked {
                let kept = memo.stroke(&Actuator::REFERENCE, valve, *drive, *around);
                prop_assert_eq!(&*kept, &plain(valve, *drive, *around));
            }
        }
        let different = if shorted_share > 0.0 { asked.len() } else { asked.len() - 1 };
        prop_assert_eq!(memo.size(), different);
    }
}

#[test]
fn limit_a_memo_does_not_grow_without_end_and_keeps_what_is_asked_for() {
    let stroke = Arc::new(plain(&valve(0.1, Winding::REFERENCE), drive(12.0, 0.5, 0.01), WARM));
    let mut kept = Kept::default();
    let favourite = [u64::MAX; 23];
    kept.insert(favourite, Arc::clone(&stroke));
    for number in 0..5 * MOST_OF_A_GENERATION {
        kept.insert([number as u64; 23], Arc::clone(&stroke));
        assert!(kept.get(&favourite).is_some(), "forgotten after {number}");
        assert!(kept.young.len() + kept.old.len() <= 2 * MOST_OF_A_GENERATION);
    }
    assert!(kept.get(&[0; 23]).is_none(), "nothing was ever forgotten");
}

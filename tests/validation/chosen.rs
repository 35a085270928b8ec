//! Figures that were chosen with a published one in view. They are shown beside it and prove nothing.

use super::row::digits;
use super::sources;
use faultwright::physics::oil::{Grade, Oil};
use faultwright::physics::pump::Pump;
use faultwright::physics::wire::Cable;
use faultwright::scenario::load::demo;
use faultwright::units::{Celsius, Rpm};
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::whole::Vehicle;
use std::sync::Arc;

/// A figure that was chosen.
pub struct Chosen {
    pub item: &'static str,
    pub source: String,
    pub published: String,
    pub ours: String,
}

/// Current of the starter of the vehicle that the program carries, at 20 °C [A].
fn starter_a() -> f64 {
    let spec = Arc::new(demo().expect("the scenario that the program carries").vehicle);
    let condition = Condition::sound(&spec);
    let vehicle = Vehicle::new(spec, condition, Celsius(20.0), &[], 1).expect("a sound vehicle");
    vehicle.cranking().expect("a solution").expect("a starter").current.0
}

pub fn all() -> Vec<Chosen> {
    let hot = Oil::TYPICAL_5W_30.curve().expect("an oil").fluid(Celsius(100.0));
    let pressure = |rpm: f64| {
        let bar = Pump::TYPICAL.equilibrium(Rpm(rpm), 0.03, &hot).expect("a pressure").0;
        format!("{} bar", digits(bar, 2))
    };
    let trade = "rule of the trade".to_owned();
    let mut list = vec![Chosen {
        item: "current of the starter at 20 °C",
        source: sources::STARTER_DRAW.key.to_owned(),
        published: "at most 150 to 185 A for four cylinders".to_owned(),
        ours: format!("{} A", digits(starter_a(), 0)),
    }];
    for (item, mm2, most) in [
        ("1 m of cable of 0.5 mm²", 0.5, 37.1),
        ("1 m of cable of 0.75 mm²", 0.75, 24.7),
        ("1 m of cable of 1 mm²", 1.0, 18.5),
        ("1 m of cable of 1.5 mm²", 1.5, 12.7),
    ] {
        let cable = Cable { metres: 1.0, mm2 };
        list.push(Chosen {
            item,
            source: sources::ISO_6722.key.to_owned(),
            published: format!("at most {} mohm, from memory", digits(most, 1)),
            ours: format!("{} mohm", digits(1e3 * cable.ohms(Celsius(20.0)).0, 1)),
        });
    }
    for (item, grade) in [
        ("typical 0W-20 at 100 °C", Grade::Sae0W20),
        ("typical 5W-30 at 100 °C", Grade::Sae5W30),
        ("typical 10W-40 at 100 °C", Grade::Sae10W40),
        ("typical 20W-50 at 100 °C", Grade::Sae20W50),
    ] {
        let limits = grade.hot_limits();
        let (least, below) = (digits(limits.least_mm2_s, 1), digits(limits.below_mm2_s, 1));
        list.push(Chosen {
            item,
            source: sources::SAE_J300.key.to_owned(),
            published: format!("{least} to {below} mm²/s"),
            ours: format!("{} mm²/s", digits(grade.typical().kv100_mm2_s, 1)),
        });
    }
    list.push(Chosen {
        item: "oil pressure at hot idle (700 rpm, 100 °C)",
        source: trade.clone(),
        published: "0.7 to 1.4 bar".to_owned(),
        ours: pressure(700.0),
    });
    list.push(Chosen {
        item: "oil pressure at 2000 rpm, 100 °C",
        source: trade,
        published: "at least 1.4 bar (10 psi for each 1000 rpm)".to_owned(),
        ours: pressure(2_000.0),
    });
    list
}

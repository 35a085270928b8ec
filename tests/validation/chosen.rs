//! Figures that were chosen with a published one in view. They are shown beside it and prove nothing.

use super::row::digits;
use super::sources::{self, Source};
use faultwright::physics::battery;
use faultwright::physics::oil::{Grade, Oil};
use faultwright::physics::pump::Pump;
use faultwright::physics::wire::Cable;
use faultwright::units::{Celsius, Rpm};

/// A figure that was chosen.
pub struct Chosen {
    pub item: &'static str,
    pub source: String,
    pub published: String,
    pub ours: String,
}

fn rest(
    item: &'static str,
    charge: f64,
    source: &Source,
    published: f64,
    decimals: usize,
) -> Chosen {
    Chosen {
        item,
        source: source.key.to_owned(),
        published: format!("{} V", digits(published, decimals)),
        ours: format!("{} V", digits(battery::rest_voltage(charge, Celsius(20.0)).0, 2)),
    }
}

pub fn all() -> Vec<Chosen> {
    let hot = Oil::TYPICAL_5W_30.curve().expect("an oil").fluid(Celsius(100.0));
    let pressure = |rpm: f64| {
        let bar = Pump::TYPICAL.equilibrium(Rpm(rpm), 0.03, &hot).expect("a pressure").0;
        format!("{} bar", digits(bar, 2))
    };
    let trade = "rule of the trade".to_owned();
    let mut list: Vec<Chosen> = [
        ("battery at rest, full", 1.0, 12.66, 12.6),
        ("battery at rest, three quarters", 0.75, 12.45, 12.4),
        ("battery at rest, half", 0.5, 12.30, 12.2),
        ("battery at rest, a quarter", 0.25, 12.15, 12.0),
    ]
    .into_iter()
    .flat_map(|(item, charge, first, second)| {
        [
            rest(item, charge, &sources::BATTERY_MOTORHOME, first, 2),
            rest(item, charge, &sources::BATTERY_LIST, second, 1),
        ]
    })
    .collect();
    list.push(rest("battery at rest, empty", 0.0, &sources::BATTERY_LIST, 11.6, 1));
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

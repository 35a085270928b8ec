//! What an engine is by design, and what of it may change between runs.

use crate::physics::oil::Oil;
use crate::physics::pressure_switch::PressureSwitch;
use crate::physics::pump::Pump;
use crate::physics::sump::Sump;
use crate::physics::warm_up::{DeckSpec, WarmUp};
use crate::units::{Celsius, Litres, Volts, Watts};
use crate::vehicle::cam_line::{CamCondition, CamSpec};
use crate::vehicle::idle::IdleSpec;
use crate::vehicle::per_bank::PerBank;
use crate::vehicle::per_cam::PerCam;
use serde::{Deserialize, Serialize};

/// What an engine is by design, and its oil.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EngineSpec {
    /// Oil pump and what the engine lets through.
    pub pump: Pump,
    /// Sump.
    pub sump: Sump,
    /// The switch of the oil lamp.
    pub pressure_switch: PressureSwitch,
    /// Warm-up.
    pub warm_up: WarmUp,
    /// The camshafts of each bank.
    pub cams: PerBank<PerCam<CamSpec>>,
    /// Crankshaft and idle.
    pub idle: IdleSpec,
    /// The deck above the cylinders.
    pub deck: DeckSpec,
}

impl EngineSpec {
    /// A four-cylinder engine of about two litres (engineering estimate).
    pub const TYPICAL: Self = Self {
        pump: Pump::TYPICAL,
        sump: Sump::TYPICAL,
        pressure_switch: PressureSwitch::TYPICAL,
        warm_up: WarmUp::TYPICAL,
        cams: PerBank::single(PerCam { intake: CamSpec::INTAKE, exhaust: CamSpec::EXHAUST }),
        idle: IdleSpec::TYPICAL,
        deck: DeckSpec::TYPICAL,
    };
}

/// What may change between runs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EngineCondition {
    /// The oil in it.
    pub oil: Oil,
    /// How much of it.
    pub fill: Litres,
    /// Valves and circuits.
    pub cams: PerBank<PerCam<CamCondition>>,
    /// Supply of the control module with the engine running.
    pub supply: Volts,
    /// Temperature of the air.
    pub ambient: Celsius,
    /// Mechanical power that the generator takes.
    pub generator: Watts,
}

impl EngineCondition {
    /// Everything sound, 4.5 l of fresh oil, 20 °C outside.
    pub const SOUND: Self = Self {
        oil: Oil::TYPICAL_5W_30,
        fill: Litres(4.5),
        cams: PerBank::single(PerCam { intake: CamCondition::SOUND, exhaust: CamCondition::SOUND }),
        supply: Volts(14.1),
        ambient: Celsius(20.0),
        generator: Watts(700.0),
    };

    /// The same for an engine with as many banks as `spec` has: a second bank of which nothing is said is like the
    /// first.
    pub(super) fn with_banks_of(&self, spec: &EngineSpec) -> Self {
        let two = spec.cams.two.is_some().then(|| self.cams.two.unwrap_or(self.cams.one));
        Self { cams: PerBank { two, ..self.cams }, ..*self }
    }
}

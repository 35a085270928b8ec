//! Where a step leads, of what class it is, and of which family a fault.

use crate::faults::FaultKind;
use crate::instruments::multimeter::MeterFunction;
use crate::session::step::Step;
use crate::vehicle::spec::{HarnessElement, Id, VehicleSpec};

/// A family of causes that are looked for in the same way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Family {
    /// The oil: level, state, grade.
    Oil,
    /// A valve's winding.
    Winding,
    /// What moves inside a valve, or its screen.
    Movement,
    /// Wires and contacts of a circuit.
    Wiring,
    /// Fuse or relay.
    Supply,
    /// Nothing at all.
    Nothing,
}

impl Family {
    /// The family of a kind of fault.
    #[must_use]
    pub const fn of(kind: FaultKind) -> Self {
        match kind {
            FaultKind::OpenCoil
            | FaultKind::PartlyBrokenCoil
            | FaultKind::PoorJoint
            | FaultKind::ShortedTurns => Self::Winding,
            FaultKind::StickingSpool | FaultKind::BlockedScreen => Self::Movement,
            FaultKind::CorrodedPin
            | FaultKind::SpreadTerminal
            | FaultKind::LooseContact
            | FaultKind::HotContact
            | FaultKind::BrokenWire
            | FaultKind::WireToGround
            | FaultKind::WireToSupply => Self::Wiring,
            FaultKind::ChafedFeed | FaultKind::BlownFuse | FaultKind::ResistiveRelay => {
                Self::Supply
            }
            FaultKind::LowOil
            | FaultKind::WornOutOil
            | FaultKind::FuelInOil
            | FaultKind::WrongOil => Self::Oil,
        }
    }

    /// The word by which files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Oil => "oil",
            Self::Winding => "winding",
            Self::Movement => "movement",
            Self::Wiring => "wiring",
            Self::Supply => "supply",
            Self::Nothing => "nothing",
        }
    }
}

/// Which part of the vehicle or of the job to go to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Area {
    /// A valve with its connector and its two wires.
    Valve(Id),
    /// Fuses, relays and feeds before the valves.
    Supply,
    /// The oil.
    Oil,
    /// What the control module remembers.
    Memory,
    /// The road.
    Road,
    /// Customer, sheet and record.
    Paper,
    /// Whatever is off.
    WhatIsOff,
}

impl Area {
    /// Where a step leads.
    #[must_use]
    pub fn of(step: &Step, spec: &VehicleSpec) -> Self {
        let at = |places: &[&Id]| {
            let valve = places.iter().find_map(|place| valve_at(place, spec));
            valve.map_or(Self::Supply, |valve| Self::Valve(valve.clone()))
        };
        match step {
            Step::Dipstick
            | Step::FitGauge
            | Step::RemoveGauge
            | Step::ReadGauge { .. }
            | Step::TopUpOil
            | Step::ChangeOil { .. } => Self::Oil,
            Step::Measure { red, black, .. }
            | Step::MeasureFromFront { red, black, .. }
            | Step::Wiggle { red, black, .. } => at(&[red, black]),
            Step::TestLamp { tip, clip } => at(&[tip, clip]),
            Step::Look { place: one }
            | Step::Clamp { wire: one }
            | Step::Scope { valve: one, .. }
            | Step::Power { valve: one, .. }
            | Step::Command { valve: one, .. }
            | Step::Fit { valve: one, .. }
            | Step::Clean { valve: one }
            | Step::Mend { element: one }
            | Step::Replace { element: one } => at(&[one]),
            Step::Drive { .. } => Self::Road,
            Step::ReadCodes
            | Step::ReadFreezeFrame
            | Step::ReadLiveData
            | Step::ReadLiveItems { .. }
            | Step::ReadReadiness
            | Step::ReadTestResults
            | Step::ReadVehicleInformation
            | Step::ClearCodes => Self::Memory,
            _ => Self::Paper,
        }
    }
}

/// The valve to whose circuit a test point, an element, a connector or the valve itself belongs.
fn valve_at<'a>(place: &Id, spec: &'a VehicleSpec) -> Option<&'a Id> {
    if let Some(valve) = spec.valves.iter().find(|it| it.id == *place || it.connector == *place) {
        return Some(&valve.id);
    }
    let nodes: Vec<&Id> = match (spec.test_point(place), spec.element(place)) {
        (Some(point), _) => vec![&point.node],
        (None, Some(element)) => element.nodes().into_iter().collect(),
        (None, None) => return None,
    };
    spec.valves.iter().find_map(|valve| {
        let is_of_valve = spec.harness.elements.iter().any(|element| match element {
            HarnessElement::Pin { connector, from, to, .. } => {
                *connector == valve.connector && (nodes.contains(&from) || nodes.contains(&to))
            }
            _ => false,
        });
        is_of_valve.then_some(&valve.id)
    })
}

/// The class of a test or of work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// With the eyes.
    Eyes,
    /// A voltage without load.
    Voltage,
    /// A voltage while current flows.
    LoadedVoltage,
    /// A resistance of what carries no current.
    Resistance,
    /// A current.
    Current,
    /// A load that shows what a meter does not.
    Lamp,
    /// A signal over time.
    Capture,
    /// A reading watched while a hand moves something.
    Wiggle,
    /// A valve made to move, and listened to.
    Listening,
    /// The stick, the nose and the fingers.
    Dipstick,
    /// Oil pressure.
    OilPressure,
    /// What the module remembers.
    Reading,
    /// A road test.
    Road,
    /// A repair.
    Repair,
    /// Putting back.
    PuttingBack,
    /// Words and signatures.
    Paper,
}

impl Kind {
    /// The class of a step; the steps around it say whether a voltage is under load.
    #[must_use]
    pub fn of(step: &Step, all: &[Step]) -> Self {
        match step {
            Step::Look { .. } => Self::Eyes,
            Step::Measure { function, .. } | Step::MeasureFromFront { function, .. } => {
                let is_loaded = all.iter().any(|it| matches!(it, Step::Command { on: true, .. }));
                match function {
                    MeterFunction::Volts if is_loaded => Self::LoadedVoltage,
                    MeterFunction::Volts => Self::Voltage,
                    MeterFunction::Ohms => Self::Resistance,
                    MeterFunction::Amps => Self::Current,
                }
            }
            Step::Clamp { .. } => Self::Current,
            Step::TestLamp { .. } => Self::Lamp,
            Step::Scope { .. } => Self::Capture,
            Step::Wiggle { .. } => Self::Wiggle,
            Step::Power { .. } | Step::Command { .. } => Self::Listening,
            Step::Dipstick => Self::Dipstick,
            Step::FitGauge | Step::RemoveGauge | Step::ReadGauge { .. } => Self::OilPressure,
            Step::ReadCodes
            | Step::ReadFreezeFrame
            | Step::ReadLiveData
            | Step::ReadLiveItems { .. }
            | Step::ReadReadiness
            | Step::ReadTestResults
            | Step::ReadVehicleInformation
            | Step::ClearCodes => Self::Reading,
            Step::Drive { .. } => Self::Road,
            Step::Fit { .. }
            | Step::Clean { .. }
            | Step::Mend { .. }
            | Step::Replace { .. }
            | Step::TopUpOil
            | Step::ChangeOil { .. } => Self::Repair,
            Step::Refit { .. } | Step::Plug { .. } => Self::PuttingBack,
            _ => Self::Paper,
        }
    }

    /// The word by which files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Eyes => "eyes",
            Self::Voltage => "voltage",
            Self::LoadedVoltage => "loaded-voltage",
            Self::Resistance => "resistance",
            Self::Current => "current",
            Self::Lamp => "lamp",
            Self::Capture => "capture",
            Self::Wiggle => "wiggle",
            Self::Listening => "listening",
            Self::Dipstick => "dipstick",
            Self::OilPressure => "oil-pressure",
            Self::Reading => "reading",
            Self::Road => "road",
            Self::Repair => "repair",
            Self::PuttingBack => "putting-back",
            Self::Paper => "paper",
        }
    }
}

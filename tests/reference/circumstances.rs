//! What key, engine, plugs and drivers do while a reading is taken, told to both sides: to the
//! program as its own state, to the simulator as parameters of a netlist.

use faultwright::units::{Amperes, Celsius};
use faultwright::vehicle::assembly::Assembly;
use faultwright::vehicle::harness::{DriverState, ElectricalState, Machines};
use faultwright::vehicle::spec::Id;

/// Key and engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    Off,
    On,
    EngineRunning,
}

/// A driver, steady or switched.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Driver {
    Off,
    On,
    /// The switch is open and the coil keeps this current up [A].
    Freewheel(f64),
    /// On for a share of each period, freewheeling at this current for the rest [A].
    Switched(f64, f64),
}

/// Everything besides the condition of the parts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Circumstances {
    pub key: Key,
    pub intake: Driver,
    pub exhaust: Driver,
    pub intake_unplugged: bool,
    pub exhaust_unplugged: bool,
    pub valve_fuse_pulled: bool,
}

/// Key off, everything plugged.
pub const KEY_OFF: Circumstances = Circumstances {
    key: Key::Off,
    intake: Driver::Off,
    exhaust: Driver::Off,
    intake_unplugged: false,
    exhaust_unplugged: false,
    valve_fuse_pulled: false,
};
/// Key on, engine off, drivers off, everything plugged.
pub const KEY_ON: Circumstances = Circumstances { key: Key::On, ..KEY_OFF };
/// As [`KEY_ON`], the intake driver closed.
pub const DRIVEN: Circumstances = KEY_ON.driven(Driver::On);
/// Engine running, the intake driver closed.
pub const RUNNING: Circumstances = Circumstances { key: Key::EngineRunning, ..DRIVEN };

/// Resistance between open contacts [ohm].
const OPEN_OHMS: f64 = 1e12;

impl Circumstances {
    pub const fn driven(mut self, intake: Driver) -> Self {
        self.intake = intake;
        self
    }

    pub const fn exhaust_driven(mut self) -> Self {
        self.exhaust = Driver::On;
        self
    }

    pub const fn unplugged(mut self) -> Self {
        self.intake_unplugged = true;
        self
    }

    pub const fn exhaust_unplugged(mut self) -> Self {
        self.exhaust_unplugged = true;
        self
    }

    pub const fn valve_fuse_pulled(mut self) -> Self {
        self.valve_fuse_pulled = true;
        self
    }

    /// With the drivers open that protect themselves.
    pub fn protected(mut self, (intake, exhaust): (bool, bool)) -> Self {
        for (driver, opens) in [(&mut self.intake, intake), (&mut self.exhaust, exhaust)] {
            if opens && *driver == Driver::On {
                *driver = Driver::Off;
            }
        }
        self
    }

    /// The steady states of one period with the share of time of each.
    pub fn phases(self) -> Vec<(f64, Self)> {
        match self.intake {
            Driver::Switched(duty, coil_a) => vec![
                (duty, self.driven(Driver::On)),
                (1.0 - duty, self.driven(Driver::Freewheel(coil_a))),
            ],
            _ => vec![(1.0, self)],
        }
    }

    pub fn assembly(self) -> Assembly {
        let mut assembly = Assembly::default();
        if self.intake_unplugged {
            assembly.take_off(&Id::from("intake-connector"));
        }
        if self.exhaust_unplugged {
            assembly.take_off(&Id::from("exhaust-connector"));
        }
        assembly
    }

    pub fn state(self, battery: Celsius, coils: Celsius) -> ElectricalState {
        let driver = |driver| match driver {
            Driver::Off => DriverState::Off,
            Driver::On => DriverState::On,
            Driver::Freewheel(amperes) => DriverState::Freewheel(Amperes(amperes)),
            Driver::Switched(..) => unreachable!("phases() comes first"),
        };
        let (intake, exhaust) = (Id::from("intake-valve"), Id::from("exhaust-valve"));
        ElectricalState {
            key_on: self.key != Key::Off,
            charging: self.key == Key::EngineRunning,
            machines: Machines::RESTING,
            battery_temperature: battery,
            coil_temperature: [(intake.clone(), coils), (exhaust.clone(), coils)].into(),
            drivers: [(intake, driver(self.intake)), (exhaust, driver(self.exhaust))].into(),
        }
    }

    /// Parameters of a netlist, by hand and not by way of the program. `module_dead` says that the
    /// module has lost its supply.
    pub fn netlist(
        self,
        wiring: super::wiring::Wiring,
        module_dead: bool,
    ) -> Vec<(&'static str, f64)> {
        use super::wiring::Wiring::{Mended, Original};
        let mut set = Vec::new();
        match (self.key, wiring) {
            (Key::Off, Original) => set.extend([("rrel", OPEN_OHMS), ("rother", 2_200.0)]),
            (Key::Off, Mended) => set.extend([
                ("rrel", OPEN_OHMS),
                ("rmrel", OPEN_OHMS),
                ("rother", 2_200.0),
                ("rbase", 150.0),
            ]),
            (Key::On, _) => {}
            (Key::EngineRunning, _) => {
                // The charging current polarises the battery: it stands at 13.9 V behind 40 mohm.
                set.extend([("emf", 13.9), ("rint", 0.040), ("ralt", 0.015), ("rbase", 0.7)]);
                if wiring == Mended {
                    set.extend([("rother", 12.0), ("rmodule", 15.0)]);
                }
            }
        }
        let module_off = module_dead || self.key == Key::Off;
        if module_off {
            set.extend([("rmodule", 470.0), ("vrail", 0.0), ("rrail", 1_000.0)]);
        }
        if let Driver::Freewheel(amperes) = self.intake {
            set.extend([("rcoil", 1e15), ("ifreea", amperes)]);
        }
        for (driver, switch) in [(self.intake, "rfeta"), (self.exhaust, "rfetb")] {
            if driver == Driver::On && !module_off {
                set.push((switch, 0.150));
            }
        }
        if self.intake_unplugged {
            set.extend([("rca1", OPEN_OHMS), ("rca2", OPEN_OHMS)]);
        }
        if self.exhaust_unplugged {
            set.extend([("rcb1", OPEN_OHMS), ("rcb2", OPEN_OHMS)]);
        }
        if self.valve_fuse_pulled {
            set.push(("rfuse", OPEN_OHMS));
        }
        set
    }
}

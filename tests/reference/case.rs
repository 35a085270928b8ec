//! A vehicle in some condition, told to both sides.

use super::circumstances::{Circumstances, Driver};
use super::wiring::Wiring;
use faultwright::units::Ohms;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::harness::OPEN_OHMS;
use faultwright::vehicle::spec::Id;

/// The rest voltage and the resistance of the battery on which the stored table stands.
const TABLE_EMF_V: f64 = 12.65;
const TABLE_BATTERY_OHMS: f64 = 0.008;

/// One condition of the vehicle.
pub struct Case {
    pub name: String,
    /// For the program.
    pub condition: Condition,
    pub battery_celsius: f64,
    pub coil_celsius: f64,
    /// For the simulator: what differs from the netlist's own values.
    pub netlist: Vec<(&'static str, f64)>,
    /// Lines that the netlist gets beside its own.
    pub lines: String,
    /// Whether the module lacks supply even with the key on: told to the simulator, found by the
    /// program.
    pub module_dead: fn(Circumstances) -> bool,
    /// Intake and exhaust driver whenever the key is on, where the case and not the reading says.
    pub drivers: Option<(Driver, Driver)>,
    /// Whether intake and exhaust driver protect themselves when they are closed: told to the simulator,
    /// found by the program.
    pub opens_itself: (bool, bool),
}

/// A fault of the table: its column, what it does to the program's parameters, and what to the
/// netlist's.
type Fault = (&'static str, fn(&mut Condition), &'static [(&'static str, f64)]);

/// The columns of the stored table, in their order.
pub const TABLE_FAULTS: [Fault; 12] = [
    ("healthy 11R", |_| {}, &[]),
    ("aged 19.5R", |c| joint(c, 8.5), &[("rjoint", 8.5)]),
    ("part-break 4.7k", |c| joint(c, 4_689.0), &[("rjoint", 4_689.0)]),
    ("coil open", |c| joint(c, OPEN_OHMS), &[("rjoint", 1e12)]),
    ("shorted 60%", |c| short_turns(c, 0.6), &[("rcoil", 4.4)]),
    ("conn 5R (pin1)", |c| extra(c, "intake-feed-pin", 4.995), &[("rca1", 5.0)]),
    ("conn 5R (pin2)", |c| extra(c, "intake-control-pin", 4.995), &[("rca2", 5.0)]),
    ("ctrl open wire", |c| extra(c, "intake-control-wire", OPEN_OHMS), &[("rwa2", 1e12)]),
    ("feed open wire", |c| extra(c, "intake-feed-wire", OPEN_OHMS), &[("rwa1", 1e12)]),
    ("ctrl short gnd", |c| leak(c, "intake-control-wire", 0.05), &[("rleak", 0.05)]),
    ("fuse blown", |c| extra(c, "valve-fuse", OPEN_OHMS), &[("rfuse", 1e12)]),
    ("relay 2R contact", |c| extra(c, "valve-relay", 1.985), &[("rrel", 2.0)]),
];

/// What only the mended wiring can have wrong.
pub const MODULE_FAULTS: [Fault; 2] = [
    ("module relay 5R contact", |c| extra(c, "module-relay", 4.985), &[("rmrel", 5.0)]),
    ("module ground 1R", |c| extra(c, "module-ground-wire", 0.990), &[("rground", 1.0)]),
];

impl Case {
    /// A sound vehicle on the table's battery.
    pub fn sound(wiring: Wiring) -> Self {
        let mut condition = Condition::sound(&wiring.spec());
        let (charge, battery_celsius) = table_battery();
        condition.battery_charge = charge;
        Self {
            name: "sound".to_owned(),
            condition,
            battery_celsius,
            coil_celsius: 20.0,
            netlist: Vec::new(),
            lines: String::new(),
            module_dead: |_| false,
            drivers: None,
            opens_itself: (false, false),
        }
    }

    /// The cases of a list of faults.
    pub fn of(wiring: Wiring, faults: &[Fault]) -> Vec<Self> {
        faults
            .iter()
            .map(|(name, apply, netlist)| {
                let mut case = Self::sound(wiring);
                (*name).clone_into(&mut case.name);
                apply(&mut case.condition);
                case.netlist = netlist.to_vec();
                case
            })
            .collect()
    }
}

/// Charge and temperature at which the program's battery has the table's voltage and resistance:
/// each follows from the other, and going round a few times finds both.
fn table_battery() -> (f64, f64) {
    let (mut charge, mut celsius) = (1.0, 20.0);
    for _ in 0..50 {
        charge = (TABLE_EMF_V - 11.8 - 0.001_2 * (celsius - 20.0)) / 0.9;
        let empty: f64 = 1.0 - charge;
        let growth: f64 = 0.008 * (1.0 + 1.5 * empty * empty) / TABLE_BATTERY_OHMS;
        celsius = 20.0 + growth.ln() / 0.018;
    }
    (charge, celsius)
}

pub fn extra(condition: &mut Condition, element: &str, ohms: f64) {
    condition.extra_ohms.insert(Id::from(element), ohms);
}

pub fn leak(condition: &mut Condition, wire: &str, ohms: f64) {
    condition.leak_to_ground_ohms.insert(Id::from(wire), ohms);
}

pub fn coil_ohms(condition: &mut Condition, ohms_at_20: f64) {
    intake(condition).winding.ohms_at_20 = Ohms(ohms_at_20);
}

pub fn joint(condition: &mut Condition, ohms: f64) {
    intake(condition).winding.joint = Ohms(ohms);
}

pub fn short_turns(condition: &mut Condition, share: f64) {
    intake(condition).winding.shorted_share = share;
}

fn intake(condition: &mut Condition) -> &mut faultwright::vehicle::condition::FittedValve {
    condition.valves.get_mut("intake-valve").expect("the test vehicle has an intake valve")
}

//! What the service information of a vehicle says, as far as the by-the-book sequence looks things up
//! in it: where each valve is measured, and what a sound one shows there.

use crate::control_module::driver_side::DriverSide;
use crate::vehicle::spec::{HarnessElement, Id, ValveSpec, VehicleSpec};

/// Voltage that a feed must have with the key on [V], and what a well charged battery shows: common
/// practice, no source.
pub(super) const FEED_LEAST_V: f64 = 11.0;
pub(super) const FEED_EXPECTED_V: (f64, f64) = (11.8, 12.9);
/// The same while the valve is driven [V].
pub(super) const LOADED_LEAST_V: f64 = 10.5;
/// What the module puts on a control wire whose valve is unplugged [V], as the limits state it, with
/// half a volt to each side.
pub(super) const CONTROL_V: (f64, f64) = (2.0, 3.0);
/// Voltage from which a control wire touches its feed [V]: more than the module's regulated supply.
pub(super) const CONTROL_TOO_HIGH_V: f64 = 5.5;
/// Resistance of a sound wire [ohm], with what a meter and its leads add.
pub(super) const WIRE_MOST_OHMS: f64 = 1.0;
/// Resistance to ground below which a wire has rubbed through [ohm].
pub(super) const GROUNDED_BELOW_OHMS: f64 = 20.0;
/// Drop along a sound ground [V].
pub(super) const GROUND_MOST_V: f64 = 0.1;
/// What a reading may lie beyond a printed limit before it counts [ohm]: tolerance of the meter.
const READING_OHMS: f64 = 0.4;
/// Resistance of a winding from which it hangs by a thread [ohm].
pub(super) const THREAD_OHMS: f64 = 1_000.0;

/// Where a valve is measured.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Page {
    pub valve: Id,
    pub side: DriverSide,
    pub connector: Id,
    pub pins: Vec<Id>,
    /// The contact that no driver switches: the feed, or the ground behind a high-side driver.
    pub harness_feed: Option<Id>,
    pub harness_control: Option<Id>,
    pub valve_feed: Option<Id>,
    pub valve_control: Option<Id>,
    pub module_control: Option<Id>,
    pub feed_wire: Option<Id>,
    pub control_wire: Option<Id>,
    /// The wire that ends where the valve's supply does: the feed wire, or that of a high-side driver.
    pub supply_wire: Option<Id>,
}

/// Where a winding's reading lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Winding {
    Sound,
    TooLow,
    TooHigh,
}

impl Page {
    /// The page of a valve.
    pub(super) fn of(spec: &VehicleSpec, valve: &ValveSpec) -> Self {
        let mut page = Self {
            valve: valve.id.clone(),
            side: spec.side_of(&valve.id),
            connector: valve.connector.clone(),
            pins: Vec::new(),
            harness_feed: None,
            harness_control: None,
            valve_feed: None,
            valve_control: None,
            module_control: None,
            feed_wire: None,
            control_wire: None,
            supply_wire: None,
        };
        let feed = spec.steady_node(&valve.id);
        let supply = spec.feed_node(&valve.id);
        for element in &spec.harness.elements {
            match element {
                HarnessElement::Pin { id, connector, from, to, .. }
                    if *connector == valve.connector =>
                {
                    page.pins.push(id.clone());
                    let (near, far) = (point_at(spec, from), point_at(spec, to));
                    if Some(from) == feed {
                        (page.harness_feed, page.valve_feed) = (near, far);
                    } else {
                        (page.harness_control, page.valve_control) = (near, far);
                    }
                }
                HarnessElement::Driver { valve: of, pin, .. } if *of == valve.id => {
                    page.module_control = point_at(spec, pin);
                }
                HarnessElement::Wire { id, to, .. } | HarnessElement::Cable { id, to, .. } => {
                    if Some(to) == supply {
                        page.supply_wire = Some(id.clone());
                    }
                    if Some(to) == feed {
                        page.feed_wire = Some(id.clone());
                    } else if spec.valve_controlled_by(id) == Some(&valve.id) {
                        page.control_wire = Some(id.clone());
                    }
                }
                _ => {}
            }
        }
        page
    }

    /// Whether a winding's reading lies within the limits of a part that fits here [ohm].
    pub(super) fn winding(&self, spec: &VehicleSpec, ohms: f64) -> Winding {
        let mut parts = spec.valve_parts.iter().filter(|part| part.fits.contains(&self.valve));
        let least = parts.clone().map(|part| part.ohms_least).fold(f64::INFINITY, f64::min);
        let is_sound = parts.any(|part| {
            (part.ohms_least - READING_OHMS..=part.ohms_most + READING_OHMS).contains(&ohms)
        });
        if is_sound {
            Winding::Sound
        } else if ohms < least {
            Winding::TooLow
        } else {
            Winding::TooHigh
        }
    }

    /// Limits of the winding that the factory fits [ohm].
    pub(super) fn winding_limits(&self, spec: &VehicleSpec) -> Option<(f64, f64)> {
        let part = spec.valve_part(&spec.valve(&self.valve)?.part_number)?;
        Some((part.ohms_least, part.ohms_most))
    }

    /// Where its supply is measured while it is driven: at the feed, or behind a high-side driver.
    pub(super) const fn loaded(&self) -> Option<&Id> {
        match self.side {
            DriverSide::Low => self.harness_feed.as_ref(),
            DriverSide::High => self.harness_control.as_ref(),
        }
    }

    /// The fuse before the valve, and where a probe touches behind it.
    pub(super) fn fuse(&self, spec: &VehicleSpec) -> Option<(Id, Id)> {
        let fuse = spec.fuse_before(self.supply_wire.as_ref()?)?;
        match spec.element(fuse)? {
            HarnessElement::Fuse { id, to, .. } => Some((id.clone(), point_at(spec, to)?)),
            _ => None,
        }
    }

    /// The relay whose contact feeds the valve.
    pub(super) fn relay(&self, spec: &VehicleSpec) -> Option<Id> {
        spec.harness.elements.iter().find_map(|element| match element {
            HarnessElement::RelayContact { id, .. }
                if spec.valves_fed_through(id).contains(&&self.valve) =>
            {
                Some(id.clone())
            }
            _ => None,
        })
    }
}

/// The test point at a node.
fn point_at(spec: &VehicleSpec, node: &Id) -> Option<Id> {
    spec.test_points.iter().find(|point| point.node == *node).map(|point| point.id.clone())
}

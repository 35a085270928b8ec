//! Where a wire leads: questions about the wiring as drawn, whatever its state.

use super::{HarnessElement, Id, VehicleSpec};
use crate::control_module::driver_side::DriverSide;
use std::collections::BTreeSet;

/// The ends of an element that hands current on from its supply side to its other side.
const fn passage(element: &HarnessElement) -> Option<(&Id, &Id)> {
    match element {
        HarnessElement::Wire { from, to, .. }
        | HarnessElement::Cable { from, to, .. }
        | HarnessElement::Fuse { from, to, .. }
        | HarnessElement::RelayContact { from, to, .. } => Some((from, to)),
        _ => None,
    }
}

impl VehicleSpec {
    /// The valve whose driver a wire runs to, if it is a control wire.
    #[must_use]
    pub fn valve_controlled_by(&self, wire: &Id) -> Option<&Id> {
        let (HarnessElement::Wire { from, to, .. } | HarnessElement::Cable { from, to, .. }) =
            self.element(wire)?
        else {
            return None;
        };
        self.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Driver { valve, pin, .. } if pin == from || pin == to => Some(valve),
            _ => None,
        })
    }

    /// Side and supply node of a valve's driver.
    fn driver_of(&self, wanted: &Id) -> Option<(DriverSide, &Id)> {
        self.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Driver { valve, side, supply, .. } if valve == wanted => {
                Some((*side, supply))
            }
            _ => None,
        })
    }

    /// On which side of a valve its driver sits; the low side for a valve without any.
    #[must_use]
    pub fn side_of(&self, valve: &Id) -> DriverSide {
        self.driver_of(valve).map_or(DriverSide::Low, |(side, _)| side)
    }

    /// The harness side of the contact that no driver switches: of a valve's feed, or of its ground
    /// where the driver is in the feed.
    #[must_use]
    pub fn steady_node(&self, wanted: &Id) -> Option<&Id> {
        let side = self.side_of(wanted);
        let at_coil = self.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Coil { valve, from, to, .. } if valve == wanted => Some(match side {
                DriverSide::Low => from,
                DriverSide::High => to,
            }),
            _ => None,
        })?;
        self.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Pin { from, to, .. } if to == at_coil => Some(from),
            _ => None,
        })
    }

    /// Where a valve's supply ends before anything switches it: the harness side of its feed contact,
    /// or the supply of the driver that is in its feed.
    #[must_use]
    pub fn feed_node(&self, valve: &Id) -> Option<&Id> {
        match self.driver_of(valve) {
            Some((DriverSide::High, supply)) => Some(supply),
            _ => self.steady_node(valve),
        }
    }

    /// The feed that lies beside a control wire in the loom: that of the same valve.
    #[must_use]
    pub fn feed_beside(&self, control_wire: &Id) -> Option<&Id> {
        self.feed_node(self.valve_controlled_by(control_wire)?)
    }

    /// The valves that lose their feed when a wire, a fuse or a relay contact opens.
    #[must_use]
    pub fn valves_fed_through(&self, element: &Id) -> Vec<&Id> {
        let Some((_, start)) = self.element(element).and_then(passage) else {
            return Vec::new();
        };
        let mut reached = BTreeSet::from([start]);
        let mut left = vec![start];
        while let Some(node) = left.pop() {
            let onward = self.harness.elements.iter().filter_map(passage);
            for (from, to) in onward {
                if from == node && reached.insert(to) {
                    left.push(to);
                }
            }
        }
        self.valves
            .iter()
            .map(|valve| &valve.id)
            .filter(|valve| self.feed_node(valve).is_some_and(|feed| reached.contains(feed)))
            .collect()
    }

    /// The fuse through which a wire or a relay contact is fed.
    #[must_use]
    pub fn fuse_before(&self, element: &Id) -> Option<&Id> {
        let (mut node, _) = self.element(element).and_then(passage)?;
        // Each turn goes one element nearer the source; a ring of wires would never end.
        for _ in 0..self.harness.elements.len() {
            let before = self
                .harness
                .elements
                .iter()
                .find(|element| passage(element).is_some_and(|(_, to)| to == node))?;
            if let HarnessElement::Fuse { id, .. } = before {
                return Some(id);
            }
            node = passage(before)?.0;
        }
        None
    }

    /// The connectors whose contacts a wire ends at, or the connector itself.
    #[must_use]
    pub fn pins_at(&self, place: &Id) -> Vec<&Id> {
        let ends = match self.element(place) {
            Some(
                HarnessElement::Wire { from, to, .. } | HarnessElement::Cable { from, to, .. },
            ) => vec![from, to],
            _ => Vec::new(),
        };
        self.harness
            .elements
            .iter()
            .filter_map(|element| match element {
                HarnessElement::Pin { id, connector, from, to, .. }
                    if id == place
                        || connector == place
                        || ends.contains(&from)
                        || ends.contains(&to) =>
                {
                    Some(id)
                }
                _ => None,
            })
            .collect()
    }

    /// The harness-side terminal of a connector at a node.
    #[must_use]
    pub fn terminal_at(&self, node: &Id) -> Option<(&Id, &Id)> {
        self.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Pin { id, connector, from, .. } if from == node => {
                Some((id, connector))
            }
            _ => None,
        })
    }

    /// Whether a node is the module's own control pin or the wire and contact that lead to it.
    #[must_use]
    pub fn is_on_control_side(&self, node: &Id) -> bool {
        let mut reached: BTreeSet<&Id> = BTreeSet::new();
        for element in &self.harness.elements {
            if let HarnessElement::Driver { pin, .. } = element {
                reached.insert(pin);
            }
        }
        loop {
            let before = reached.len();
            for element in &self.harness.elements {
                if let HarnessElement::Wire { from, to, .. }
                | HarnessElement::Cable { from, to, .. }
                | HarnessElement::Pin { from, to, .. } = element
                    && (reached.contains(from) || reached.contains(to))
                {
                    reached.extend([from, to]);
                }
            }
            if reached.len() == before {
                return reached.contains(node);
            }
        }
    }
}

//! Where a wire leads: questions about the wiring as drawn, whatever its state.

use super::{HarnessElement, Id, VehicleSpec};
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
            HarnessElement::LowSideDriver { valve, pin, .. } if pin == from || pin == to => {
                Some(valve)
            }
            _ => None,
        })
    }

    /// The harness side of a valve's feed contact.
    #[must_use]
    pub fn feed_node(&self, valve: &Id) -> Option<&Id> {
        let coil_feed = self.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Coil { valve: of, from, .. } if of == valve => Some(from),
            _ => None,
        })?;
        self.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Pin { from, to, .. } if to == coil_feed => Some(from),
            _ => None,
        })
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
            if let HarnessElement::LowSideDriver { pin, .. } = element {
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

//! The elements of a wiring, and the numbers of their nodes.

use super::harness::HarnessElement;
use super::id::Id;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::ops::{Deref, DerefMut};
use std::sync::{Arc, OnceLock};

/// The node that is the reference of all voltages.
const REFERENCE: &str = "battery-minus";

/// A list of elements. Its nodes are numbered when they are first asked for, and again when the list may
/// have changed: a wiring is built a million times and drawn once.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct Elements {
    list: Vec<HarnessElement>,
    #[serde(skip)]
    numbering: OnceLock<Arc<Numbering>>,
}

/// The numbers of nodes and elements by their names.
#[derive(Debug, PartialEq, Eq, Default)]
pub struct Numbering {
    nodes: BTreeMap<Id, usize>,
    elements: BTreeMap<Id, usize>,
    /// For each element the numbers of its nodes, in the order of [`HarnessElement::nodes`].
    ends: Vec<[usize; 3]>,
    /// For each element the number of a node of its own that has no name in the file.
    inner: Vec<Option<usize>>,
    count: usize,
}

impl Numbering {
    fn of(list: &[HarnessElement]) -> Self {
        let mut numbering = Self { count: 1, ..Self::default() };
        numbering.nodes.insert(Id::from(REFERENCE), 0);
        for (place, element) in list.iter().enumerate() {
            numbering.elements.insert(element.id().clone(), place);
            // The order decides in which order sums are taken, and so their last bits: a driver's own node
            // comes before its others and is followed by the rail of its module.
            let inner = match element {
                HarnessElement::Driver { id, .. } => {
                    Some(numbering.add(&Id(format!("{id}-source"))))
                }
                HarnessElement::ModuleSupply { rail, ground, .. } => {
                    numbering.add(rail);
                    numbering.add(ground);
                    None
                }
                _ => None,
            };
            let mut ends = [0; 3];
            for (end, name) in ends.iter_mut().zip(element.nodes()) {
                *end = numbering.add(name);
            }
            if inner.is_some() {
                numbering.add_rail_of(ends[2], list);
            }
            numbering.ends.push(ends);
            numbering.inner.push(inner);
        }
        numbering
    }

    fn add_rail_of(&mut self, ground_node: usize, list: &[HarnessElement]) {
        for element in list {
            if let HarnessElement::ModuleSupply { rail, ground, .. } = element
                && self.add(ground) == ground_node
            {
                self.add(rail);
                return;
            }
        }
    }

    fn add(&mut self, name: &Id) -> usize {
        if let Some(number) = self.nodes.get(name) {
            return *number;
        }
        self.nodes.insert(name.clone(), self.count);
        self.count += 1;
        self.count - 1
    }

    /// The number of a named node.
    #[must_use]
    pub fn node(&self, name: &str) -> Option<usize> {
        self.nodes.get(name).copied()
    }

    /// The place in the list of a named element.
    #[must_use]
    pub fn element(&self, name: &str) -> Option<usize> {
        self.elements.get(name).copied()
    }

    /// The numbers of an element's nodes by its place in the list, in the order of
    /// [`HarnessElement::nodes`]; zeros behind the last.
    #[must_use]
    pub fn ends(&self, place: usize) -> [usize; 3] {
        self.ends.get(place).copied().unwrap_or_default()
    }

    /// The node between a driver's switch and its sense resistor, by the driver's place in the list.
    #[must_use]
    pub fn inner(&self, place: usize) -> Option<usize> {
        self.inner.get(place).copied().flatten()
    }

    /// How many nodes there are, the reference included.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.count
    }
}

impl Elements {
    /// The numbers of the nodes.
    #[must_use]
    pub fn numbering(&self) -> &Arc<Numbering> {
        self.numbering.get_or_init(|| Arc::new(Numbering::of(&self.list)))
    }
}

impl From<Vec<HarnessElement>> for Elements {
    fn from(list: Vec<HarnessElement>) -> Self {
        Self { list, numbering: OnceLock::new() }
    }
}

/// Whether the numbers were asked for already makes no difference.
impl PartialEq for Elements {
    fn eq(&self, other: &Self) -> bool {
        self.list == other.list
    }
}

impl Deref for Elements {
    type Target = Vec<HarnessElement>;

    fn deref(&self) -> &Self::Target {
        &self.list
    }
}

impl DerefMut for Elements {
    fn deref_mut(&mut self) -> &mut Self::Target {
        self.numbering.take();
        &mut self.list
    }
}

impl<'a> IntoIterator for &'a Elements {
    type Item = &'a HarnessElement;
    type IntoIter = std::slice::Iter<'a, HarnessElement>;

    fn into_iter(self) -> Self::IntoIter {
        self.list.iter()
    }
}

impl<'a> IntoIterator for &'a mut Elements {
    type Item = &'a mut HarnessElement;
    type IntoIter = std::slice::IterMut<'a, HarnessElement>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter_mut()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wire(id: &str, from: &str, to: &str) -> HarnessElement {
        HarnessElement::Wire { id: Id::from(id), from: Id::from(from), to: Id::from(to), ohms: 1.0 }
    }

    #[test]
    fn regress_a_list_that_changes_is_numbered_again() {
        let mut elements = Elements::from(vec![wire("one", "battery-plus", "splice")]);
        assert_eq!(elements.numbering().node("splice"), Some(2));
        assert_eq!(elements.numbering().count(), 3);
        elements.push(wire("two", "splice", REFERENCE));
        assert_eq!(elements.numbering().ends(1), [2, 0, 0]);
        for element in &mut elements {
            if let HarnessElement::Wire { to, .. } = element {
                *to = Id::from("engine-ground");
            }
        }
        assert_eq!(elements.numbering().node("engine-ground"), Some(2));
        assert_eq!(elements.numbering().element("two"), Some(1));
    }
}

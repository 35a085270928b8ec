//! One thing for each of the two camshafts of a bank.

use serde::{Deserialize, Serialize};

/// Which camshaft of a bank.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum Cam {
    /// Camshaft "A": intake, at rest retarded.
    Intake,
    /// Camshaft "B": exhaust, at rest advanced.
    Exhaust,
}

impl Cam {
    /// Both, in the order in which everything is done.
    pub const BOTH: [Self; 2] = [Self::Intake, Self::Exhaust];
}

/// One thing for each camshaft of a bank.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PerCam<T> {
    /// The intake camshaft's.
    pub intake: T,
    /// The exhaust camshaft's.
    pub exhaust: T,
}

impl<T> PerCam<T> {
    /// The one of a camshaft.
    pub const fn of(&self, cam: Cam) -> &T {
        match cam {
            Cam::Intake => &self.intake,
            Cam::Exhaust => &self.exhaust,
        }
    }

    /// The one of a camshaft, to change it.
    pub const fn of_mut(&mut self, cam: Cam) -> &mut T {
        match cam {
            Cam::Intake => &mut self.intake,
            Cam::Exhaust => &mut self.exhaust,
        }
    }

    /// The same made from each.
    #[inline]
    pub fn map<'a, U>(&'a self, mut make: impl FnMut(&'a T) -> U) -> PerCam<U> {
        PerCam { intake: make(&self.intake), exhaust: make(&self.exhaust) }
    }
}

//! What a step costs: whole minutes and whole hundredths of the currency, so that sums are exact.

use core::iter::Sum;
use core::ops::{Add, AddAssign};
use serde::{Deserialize, Serialize};

/// Working time [min], whole minutes.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct Minutes(pub u32);

/// Money \[hundredths of the currency\].
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct Money(pub i64);

impl Money {
    /// The amount in whole units of the currency, for plots and expectations.
    #[must_use]
    pub fn as_units(self) -> f64 {
        self.0 as f64 / 100.0
    }
}

impl Minutes {
    /// What this time costs at an hourly rate, rounded down to a hundredth.
    #[must_use]
    pub fn at_rate(self, hourly: Money) -> Money {
        Money(hourly.0 * i64::from(self.0) / 60)
    }
}

macro_rules! sums {
    ($name:ident) => {
        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }
        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
                iter.fold(Self::default(), Add::add)
            }
        }
    };
}

sums!(Minutes);
sums!(Money);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_labour_is_minutes_times_rate_over_sixty() {
        assert_eq!(Minutes(90).at_rate(Money(60_00)), Money(90_00));
        assert_eq!(Minutes(1).at_rate(Money(1_00)), Money(1));
    }
}

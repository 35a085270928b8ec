//! Wanted cam angles over engine speed and load, as data of the vehicle.
//!
//! Between the points of its grid a map is bilinear; beyond its edges it goes on as at the edge.

use crate::units::{CrankDegrees, Rpm};
use serde::{Deserialize, Serialize};

/// Engine speeds of a map.
pub const SPEEDS: usize = 8;
/// Loads of a map.
pub const LOADS: usize = 10;
/// Largest angle that a map may ask for \[crank degrees\]: more than any phaser's travel.
pub const MOST_DEG: f64 = 60.0;

/// The wanted angle of one camshaft away from rest.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TargetMap {
    /// Engine speed of each row \[rpm\], rising.
    pub rpm: [f64; SPEEDS],
    /// Load of each column, 0 to 1, rising.
    pub load: [f64; LOADS],
    /// Angle away from rest at each point \[crank degrees\], 0 to 60: a row for each speed, in it a
    /// column for each load.
    pub degrees: [[f64; LOADS]; SPEEDS],
}

/// A map that cannot be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum MapFault {
    /// An axis does not rise.
    #[error("checking a map of cam angles: {axis} must rise from point to point")]
    NotRising {
        /// The axis.
        axis: &'static str,
    },
    /// An angle is no angle that a phaser could take.
    #[error("checking a map of cam angles: row {row}, column {column} must be 0 to 60 degrees")]
    OutOfRange {
        /// The row, from 0.
        row: usize,
        /// The column, from 0.
        column: usize,
    },
}

/// The point of an axis below a value, and how far the value is on the way to the next.
fn place(axis: &[f64], value: f64) -> (usize, f64) {
    let above = axis.iter().position(|point| value < *point).unwrap_or(axis.len());
    let last = axis.len().saturating_sub(2);
    let below = above.saturating_sub(1).min(last);
    match (axis.get(below), axis.get(below + 1)) {
        (Some(low), Some(high)) => (below, ((value - low) / (high - low)).clamp(0.0, 1.0)),
        _ => (below, 0.0),
    }
}

fn rises(axis: &[f64]) -> bool {
    axis.windows(2).all(|pair| matches!(pair, [low, high] if low < high))
}

impl TargetMap {
    /// Low at idle and on the overrun, high under load: late intake opening and early exhaust closing
    /// where the engine must run smoothly, the opposite where it must pull (vehicle makers' service
    /// text has the directions; the angles are engineering estimates).
    pub const TYPICAL_INTAKE: Self = Self {
        rpm: [700.0, 1_000.0, 1_100.0, 1_200.0, 1_600.0, 2_200.0, 2_400.0, 4_000.0],
        load: [0.05, 0.2, 0.25, 0.35, 0.4, 0.7, 0.75, 0.8, 0.85, 0.9],
        degrees: [
            [0.0, 0.0, 0.0, 20.0, 22.0, 28.0, 30.0, 34.0, 35.0, 36.0],
            [0.0, 0.0, 0.0, 20.0, 22.0, 28.0, 30.0, 34.0, 35.0, 36.0],
            [0.0, 0.0, 0.0, 20.0, 22.0, 28.0, 30.0, 34.0, 35.0, 36.0],
            [5.0, 0.0, 0.0, 20.0, 22.0, 28.0, 30.0, 34.0, 35.0, 36.0],
            [5.0, 0.0, 0.0, 20.0, 22.0, 28.0, 30.0, 34.0, 35.0, 36.0],
            [5.0, 0.0, 0.0, 20.0, 22.0, 28.0, 30.0, 34.0, 35.0, 36.0],
            [5.0, 0.0, 0.0, 20.0, 24.0, 28.0, 30.0, 34.0, 35.0, 36.0],
            [5.0, 0.0, 0.0, 20.0, 24.0, 28.0, 30.0, 34.0, 35.0, 36.0],
        ],
    };

    /// The exhaust cam's: four fifths of the intake cam's, its travel being that much less
    /// (engineering estimate).
    pub const TYPICAL_EXHAUST: Self = Self::TYPICAL_INTAKE.times(0.8);

    /// The same with every angle multiplied.
    #[must_use]
    pub const fn times(mut self, factor: f64) -> Self {
        let mut row = 0;
        while row < SPEEDS {
            let mut column = 0;
            while column < LOADS {
                self.degrees[row][column] *= factor;
                column += 1;
            }
            row += 1;
        }
        self
    }

    /// Checks that the axes rise and every angle can be taken.
    ///
    /// # Errors
    /// The first thing that is wrong.
    pub fn check(&self) -> Result<(), MapFault> {
        for (axis, points) in [("rpm", &self.rpm[..]), ("load", &self.load[..])] {
            if !rises(points) {
                return Err(MapFault::NotRising { axis });
            }
        }
        for (row, angles) in self.degrees.iter().enumerate() {
            if let Some(column) = angles.iter().position(|angle| !(0.0..=MOST_DEG).contains(angle))
            {
                return Err(MapFault::OutOfRange { row, column });
            }
        }
        Ok(())
    }

    /// The angle away from rest that the map asks for.
    #[must_use]
    pub fn at(&self, speed: Rpm, load: f64) -> CrankDegrees {
        let (row, up) = place(&self.rpm, speed.0);
        let (column, right) = place(&self.load, load);
        let along = |row: usize| {
            let angle = |column: usize| {
                self.degrees.get(row).and_then(|angles| angles.get(column)).copied().unwrap_or(0.0)
            };
            let (left_deg, right_deg) = (angle(column), angle(column + 1));
            left_deg + (right_deg - left_deg) * right
        };
        let (low_deg, high_deg) = (along(row), along(row + 1));
        CrankDegrees(low_deg + (high_deg - low_deg) * up)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const MAP: TargetMap = TargetMap::TYPICAL_INTAKE;

    /// In the middle of four points a bilinear surface is their mean.
    #[test]
    fn closed_form_points_edges_and_the_middle_of_four() {
        assert_eq!(MAP.at(Rpm(700.0), 0.2).0, 0.0);
        assert_eq!(MAP.at(Rpm(2_400.0), 0.4).0, 24.0);
        assert_eq!(MAP.at(Rpm(2_300.0), 0.4).0, 23.0);
        assert_eq!(MAP.at(Rpm(2_300.0), 0.375).0, (20.0 + 20.0 + 22.0 + 24.0) / 4.0);
        assert_eq!(MAP.at(Rpm(9_000.0), 1.0).0, 36.0);
        assert_eq!(MAP.at(Rpm(0.0), 0.0).0, 0.0);
        assert_eq!(TargetMap::TYPICAL_EXHAUST.at(Rpm(2_500.0), 0.7).0, 28.0 * 0.8);
    }

    proptest! {
        /// Bilinear interpolation never leaves the range of the four points around it.
        #[test]
        fn prop_the_surface_stays_between_its_points(rpm in 0.0..9_000.0, load in 0.0..1.0) {
            let at = MAP.at(Rpm(rpm), load).0;
            let (row, _) = place(&MAP.rpm, rpm);
            let (column, _) = place(&MAP.load, load);
            let around = [(0, 0), (0, 1), (1, 0), (1, 1)]
                .map(|(up, right)| MAP.degrees[row + up][column + right]);
            let least = around.iter().copied().fold(f64::INFINITY, f64::min);
            let most = around.iter().copied().fold(0.0, f64::max);
            prop_assert!((least - 1e-9..=most + 1e-9).contains(&at), "{at} {around:?}");
        }
    }

    #[test]
    fn limit_an_unusable_map_is_refused() {
        assert_eq!(MAP.check(), Ok(()));
        assert_eq!(TargetMap::TYPICAL_EXHAUST.check(), Ok(()));
        let mut map = MAP;
        map.load[3] = map.load[2];
        assert_eq!(map.check(), Err(MapFault::NotRising { axis: "load" }));
        let mut map = MAP;
        map.rpm[1] = f64::NAN;
        assert_eq!(map.check(), Err(MapFault::NotRising { axis: "rpm" }));
        let mut map = MAP;
        map.degrees[2][9] = 61.0;
        assert_eq!(map.check(), Err(MapFault::OutOfRange { row: 2, column: 9 }));
    }
}

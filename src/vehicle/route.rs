//! A route as the engine feels it: speed and load against time.

use crate::physics::sump::Tilt;
use crate::units::{CrankDegrees, Rpm, Seconds};
use crate::vehicle::per_cam::PerCam;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Steepest road that the model takes, as its rise by length, and hardest bend [g].
pub const STEEPEST: f64 = 0.35;
/// See [`STEEPEST`].
pub const MOST_ACROSS_G: f64 = 1.0;

/// One stretch of a route.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Segment {
    /// When it ends, counted from the start of the route [s]; each segment later than the one before.
    pub until_s: f64,
    /// Engine speed at its end [rpm], 400 to 7000.
    pub rpm: f64,
    /// Road speed at its end [km/h], 0 to 200.
    pub km_h: f64,
    /// Engine load, 0 to 1.
    pub load: f64,
    /// Slope of the road and bend; level and straight where nothing is said.
    #[serde(default)]
    pub tilt: Tilt,
}

/// A route: segments, and how long speed takes to change from one to the next.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct RouteProfile {
    /// Time in which engine and road speed change at the start of a segment [s].
    #[serde(default = "usual_ramp_s")]
    pub ramp_s: f64,
    /// Engine speed before the first segment [rpm].
    #[serde(default = "usual_start_rpm")]
    pub start_rpm: f64,
    /// The segments in order; at least one.
    pub segments: Vec<Segment>,
}

/// A change of speed where a road says nothing of it: engineering estimate.
const fn usual_ramp_s() -> f64 {
    3.0
}

/// A warm engine idling, where a road does not say how it starts.
const fn usual_start_rpm() -> f64 {
    760.0
}

/// Why a route cannot be driven.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum RouteError {
    /// A route needs at least one segment.
    #[error("checking a route: it has no segment")]
    Empty,
    /// Segments must end one after the other.
    #[error("checking a route: segment {index} ends at {until_s} s, not later than the one before")]
    NotRising {
        /// Index of the segment, from 0.
        index: usize,
        /// Its end [s].
        until_s: f64,
    },
    /// A figure is outside its range.
    #[error("checking a route: segment {index} has {field} = {got}, expected {low} to {high}")]
    OutOfRange {
        /// Index of the segment, from 0.
        index: usize,
        /// Name of the field.
        field: &'static str,
        /// Value got.
        got: f64,
        /// Least value allowed.
        low: f64,
        /// Most value allowed.
        high: f64,
    },
}

/// What is asked of the engine in one tick.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demand {
    /// Engine speed.
    pub speed: Rpm,
    /// Road speed [km/h].
    pub km_h: f64,
    /// Load, 0 to 1.
    pub load: f64,
    /// Wanted cam angles away from rest that a bench puts in the place of the module's own.
    pub bench_targets: Option<PerCam<CrankDegrees>>,
    /// Slope of the road and bend.
    pub tilt: Tilt,
}

impl Demand {
    /// A warm engine idling.
    pub const IDLE: Self = Self {
        speed: Rpm(700.0),
        km_h: 0.0,
        load: 0.2,
        bench_targets: None,
        tilt: Tilt { uphill: 0.0, across_g: 0.0 },
    };

    /// The starter turns the engine.
    pub const CRANKING: Self = Self { speed: Rpm(200.0), load: 0.0, ..Self::IDLE };

    /// The engine stands.
    pub const STANDING: Self = Self { speed: Rpm(0.0), load: 0.0, ..Self::IDLE };
}

/// What it takes to pull in and stand for a moment [s] (engineering estimate).
const PULL_IN_S: f64 = 8.0;
/// Speed at which a driver keeps an engine that will not idle (engineering estimate).
const KEPT_GOING: Rpm = Rpm(1_300.0);
/// Engine speed up to which an engine may be idling [rpm].
const IDLE_UP_TO_RPM: f64 = 1_000.0;
/// Engine speed from which it runs by itself [rpm].
const RUNS_FROM_RPM: f64 = 400.0;
/// Load up to which the pedal is up.
const IDLE_LOAD: f64 = 0.25;
/// Road speed up to which the vehicle stands [km/h].
const STANDS_UP_TO_KM_H: f64 = 1.0;

impl Demand {
    /// Whether the engine is left to itself: standing still, pedal up.
    #[must_use]
    #[inline]
    pub fn is_idle(&self) -> bool {
        self.km_h < STANDS_UP_TO_KM_H
            && self.load <= IDLE_LOAD
            && (RUNS_FROM_RPM..IDLE_UP_TO_RPM).contains(&self.speed.0)
    }
}

/// Where the driver's foot is while the vehicle stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Foot {
    /// Off the pedal.
    Up,
    /// On the pedal, to keep an engine going that will not idle.
    Down,
}

impl Foot {
    /// What becomes of a demand.
    #[must_use]
    #[inline]
    pub fn on(self, demand: Demand) -> Demand {
        if self == Self::Down && demand.is_idle() {
            Demand { speed: KEPT_GOING, ..demand }
        } else {
            demand
        }
    }
}

impl RouteProfile {
    /// Checks that the route can be driven.
    ///
    /// # Errors
    /// [`RouteError`] with the first segment that is wrong.
    pub fn check(&self) -> Result<(), RouteError> {
        if self.segments.is_empty() {
            return Err(RouteError::Empty);
        }
        let mut before_s = 0.0;
        for (index, segment) in self.segments.iter().enumerate() {
            let until_s = segment.until_s;
            if !(until_s > before_s && until_s.is_finite()) {
                return Err(RouteError::NotRising { index, until_s });
            }
            before_s = until_s;
            for (field, got, high) in [
                ("tilt.uphill", segment.tilt.uphill.abs(), STEEPEST),
                ("tilt.across_g", segment.tilt.across_g.abs(), MOST_ACROSS_G),
                ("rpm", segment.rpm, 8_000.0),
                ("km_h", segment.km_h, 250.0),
                ("load", segment.load, 1.0),
            ] {
                if !(0.0..=high).contains(&got) {
                    return Err(RouteError::OutOfRange { index, field, got, low: 0.0, high });
                }
            }
        }
        Ok(())
    }

    /// The road as far as some seconds, where the driver pulls in and the engine idles for a moment before it is
    /// switched off. The way back, with nobody reading, is not driven.
    #[must_use]
    pub fn until(&self, seconds: u16) -> Self {
        let end_s = f64::from(seconds);
        let mut segments: Vec<Segment> =
            self.segments.iter().take_while(|segment| segment.until_s < end_s).copied().collect();
        if let Some(broken_off) = self.segments.get(segments.len()) {
            segments.push(Segment { until_s: end_s, ..*broken_off });
        }
        segments.push(Segment {
            until_s: end_s + PULL_IN_S,
            rpm: Demand::IDLE.speed.0,
            km_h: 0.0,
            load: Demand::IDLE.load,
            tilt: Tilt::default(),
        });
        Self { segments, ..self.clone() }
    }

    /// A warm road test of 150 s with every kind of demand that the monitors need (engineering
    /// estimate: a maker's drive pattern in small).
    #[must_use]
    pub fn warm_road_test() -> Self {
        // until [s], engine [rpm], road [km/h], load
        const LEGS: [(f64, f64, f64, f64); 16] = [
            (10.0, 700.0, 0.0, 0.2),
            (16.0, 2_500.0, 35.0, 0.7),
            (30.0, 2_000.0, 50.0, 0.35),
            (36.0, 3_500.0, 75.0, 0.85),
            (50.0, 2_400.0, 80.0, 0.4),
            (56.0, 1_300.0, 40.0, 0.05),
            (62.0, 3_200.0, 70.0, 0.8),
            (80.0, 2_200.0, 75.0, 0.4),
            (86.0, 1_100.0, 20.0, 0.05),
            (96.0, 700.0, 0.0, 0.2),
            (102.0, 2_800.0, 40.0, 0.75),
            (116.0, 2_000.0, 50.0, 0.35),
            (121.0, 1_200.0, 35.0, 0.05),
            (127.0, 3_600.0, 75.0, 0.9),
            (142.0, 2_400.0, 80.0, 0.4),
            (150.0, 700.0, 0.0, 0.2),
        ];
        let segments = LEGS.map(|(until_s, rpm, km_h, load)| Segment {
            until_s,
            rpm,
            km_h,
            load,
            tilt: Tilt::default(),
        });
        Self { ramp_s: 3.0, start_rpm: 700.0, segments: segments.to_vec() }
    }

    /// How long it takes.
    #[must_use]
    pub fn duration(&self) -> Seconds {
        Seconds(self.segments.last().map_or(0.0, |segment| segment.until_s))
    }

    /// A driver at the start of the route.
    #[must_use]
    pub fn driver(&self) -> Driver<'_> {
        Driver {
            route: self,
            index: 0,
            began_s: 0.0,
            from: (self.start_rpm, 0.0),
            at: (self.start_rpm, 0.0),
        }
    }
}

/// Follows a route tick by tick.
#[derive(Debug, Clone)]
pub struct Driver<'a> {
    route: &'a RouteProfile,
    index: usize,
    began_s: f64,
    /// Engine and road speed where the segment began.
    from: (f64, f64),
    /// Engine and road speed now.
    at: (f64, f64),
}

impl Driver<'_> {
    /// What the route asks at a time [s], which must not go back; `None` when it is over.
    pub fn demand(&mut self, time_s: f64) -> Option<Demand> {
        let segments = &self.route.segments;
        while time_s >= segments.get(self.index)?.until_s {
            self.began_s = segments.get(self.index)?.until_s;
            self.from = self.at;
            self.index += 1;
        }
        let segment = segments.get(self.index)?;
        let ramp_s = self.route.ramp_s;
        let share = if ramp_s > 0.0 { ((time_s - self.began_s) / ramp_s).min(1.0) } else { 1.0 };
        let between = |from: f64, to: f64| from + (to - from) * share;
        self.at = (between(self.from.0, segment.rpm), between(self.from.1, segment.km_h));
        Some(Demand {
            speed: Rpm(self.at.0),
            km_h: self.at.1,
            load: segment.load,
            bench_targets: None,
            tilt: segment.tilt,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn segment(until_s: f64, rpm: f64) -> Segment {
        Segment { until_s, rpm, km_h: rpm / 50.0, load: 0.5, tilt: Tilt::default() }
    }

    fn two() -> RouteProfile {
        RouteProfile {
            ramp_s: 3.0,
            start_rpm: 700.0,
            segments: vec![segment(10.0, 700.0), segment(16.0, 2_500.0)],
        }
    }

    #[test]
    fn closed_form_speed_ramps_over_three_seconds() {
        let route = two();
        let mut driver = route.driver();
        let mut at = |time| driver.demand(time).map(|demand| demand.speed.0);
        assert_eq!(at(0.0), Some(700.0));
        assert_eq!(at(9.999), Some(700.0));
        assert_eq!(at(11.5), Some(1_600.0));
        assert_eq!(at(13.0), Some(2_500.0));
        assert_eq!(at(16.0), None);
    }

    #[test]
    fn closed_form_a_road_that_is_broken_off_goes_as_the_whole_one_until_then() {
        let whole = RouteProfile::warm_road_test();
        for seconds in [1, 10, 58, 149] {
            let part = whole.until(seconds);
            assert_eq!(part.check(), Ok(()));
            assert_eq!(part.duration(), Seconds(f64::from(seconds) + PULL_IN_S));
            let (mut of_whole, mut of_part) = (whole.driver(), part.driver());
            for tenth in 0..u32::from(seconds) * 10 {
                let time_s = f64::from(tenth) * 0.1;
                assert_eq!(of_whole.demand(time_s), of_part.demand(time_s), "at {time_s} s");
            }
            let at_the_end = of_part.demand(part.duration().0 - 0.1);
            assert_eq!(at_the_end.map(|demand| demand.km_h), Some(0.0));
        }
    }

    #[test]
    fn limit_a_route_that_cannot_be_driven_is_refused() {
        assert_eq!(two().check(), Ok(()));
        let mut route = two();
        route.segments.clear();
        assert_eq!(route.check(), Err(RouteError::Empty));
        let mut route = two();
        route.segments[1].until_s = 9.0;
        assert!(matches!(route.check(), Err(RouteError::NotRising { index: 1, .. })));
        let mut route = two();
        route.segments[0].load = f64::NAN;
        assert!(matches!(
            route.check(),
            Err(RouteError::OutOfRange { index: 0, field: "load", .. })
        ));
    }
}

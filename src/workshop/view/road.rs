//! The vehicle on the road, as it is seen from within.

use std::sync::Arc;

/// A drive under way.
#[derive(Debug, Clone, PartialEq)]
pub struct RoadView {
    /// Name of the road.
    pub road: String,
    /// Time on the road so far [s].
    pub at: f32,
    /// How long the road lasts [s].
    pub of: f32,
    /// What is drawn.
    pub charts: Arc<[ChartView]>,
    /// Times of the points that every line has [s].
    pub times: Arc<[f32]>,
    /// How many of them are behind.
    pub seen: usize,
    /// No code reader is connected, so that nobody sees what the module asks for.
    pub lacks_reader: bool,
    /// How fast time runs.
    pub pace: RoadPace,
}

/// Lines that share a scale.
#[derive(Debug, Clone, PartialEq)]
pub struct ChartView {
    /// What is drawn.
    pub name: String,
    /// Unit of the scale.
    pub unit: String,
    /// Decimals that are shown.
    pub decimals: usize,
    /// Least and greatest value of the scale.
    pub scale: [f32; 2],
    /// The lines, in order.
    pub lines: Vec<LineOfRoad>,
}

/// A line.
#[derive(Debug, Clone, PartialEq)]
pub struct LineOfRoad {
    /// Its name; empty where the chart's own says it.
    pub name: String,
    /// A value for each time.
    pub values: Vec<f32>,
}

/// How fast time runs on the road.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RoadPace {
    /// Five seconds in one.
    Slow,
    /// Twenty seconds in one.
    #[default]
    Usual,
    /// A minute in one second.
    Fast,
}

impl RoadPace {
    /// Every pace, from the slowest on.
    pub const ALL: [Self; 3] = [Self::Slow, Self::Usual, Self::Fast];

    /// Seconds on the road in one of the window.
    #[must_use]
    pub const fn times(self) -> f32 {
        match self {
            Self::Slow => 5.0,
            Self::Usual => 20.0,
            Self::Fast => 60.0,
        }
    }
}

/// What the user wants of a drive.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RoadAction {
    /// Pull in and turn back.
    PullIn,
    /// Drive on to the end without watching.
    ToTheEnd,
    /// Let time run at another pace.
    SetPace(RoadPace),
}

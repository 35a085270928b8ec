//! What one run of the engine left behind: findings, figures, and a trace of bounded length.

use crate::control_module::performance_monitor::{DatedFinding, PerformanceMonitor};
use crate::control_module::step_response::StepResponse;
use crate::control_module::verdict::Verdict;
use crate::physics::warm_up::EngineHeat;
use crate::units::{Bars, Celsius, CrankDegrees, Rpm, Seconds};
use crate::vehicle::per_bank::PerBank;
use crate::vehicle::per_cam::PerCam;
use crate::vehicle::route::Demand;
use serde::{Deserialize, Serialize};

/// Ticks between two points of a fresh trace.
const FIRST_INTERVAL_TICKS: u32 = 100;
/// Points that a trace holds; a longer run is thinned out to half, again and again.
pub const MOST_POINTS: usize = 6_000;
/// Time after a start in which pressure is still building [ticks].
const PRESSURE_BUILDS_TICKS: u64 = 1_000;
/// Time after a change of target that is not counted as settled [ticks].
const SETTLE_TICKS: u32 = 2_000;

/// One point of live data.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TracePoint {
    /// Time since the run began.
    pub time: Seconds,
    /// Engine speed.
    pub speed: Rpm,
    /// Road speed [km/h].
    pub km_h: f64,
    /// Load, 0 to 1.
    pub load: f64,
    /// Oil temperature.
    pub oil: Celsius,
    /// Coolant temperature.
    pub coolant: Celsius,
    /// Wanted angles away from rest.
    pub targets: PerBank<PerCam<CrankDegrees>>,
    /// Measured angles away from rest.
    pub measured: PerBank<PerCam<CrankDegrees>>,
    /// Duties of the valves, 0 to 1.
    pub duties: PerBank<PerCam<f64>>,
    /// Gallery pressure.
    pub pressure: Bars,
}

/// Live data at even intervals, never more than [`MOST_POINTS`].
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    points: Vec<TracePoint>,
    interval_ticks: u32,
}

impl Default for Trace {
    fn default() -> Self {
        Self { points: Vec::new(), interval_ticks: FIRST_INTERVAL_TICKS }
    }
}

impl Trace {
    fn new() -> Self {
        Self { points: Vec::with_capacity(MOST_POINTS), interval_ticks: FIRST_INTERVAL_TICKS }
    }

    /// The points in order of time.
    #[must_use]
    pub fn points(&self) -> &[TracePoint] {
        &self.points
    }

    /// Time between two points.
    #[must_use]
    pub fn interval(&self) -> Seconds {
        Seconds(f64::from(self.interval_ticks) * 1e-3)
    }

    fn is_due(&self, tick: u64) -> bool {
        tick.is_multiple_of(u64::from(self.interval_ticks))
    }

    fn push(&mut self, point: TracePoint) {
        if self.points.len() >= MOST_POINTS {
            let mut index = 0;
            self.points.retain(|_| {
                index += 1;
                index % 2 == 1
            });
            self.interval_ticks *= 2;
        }
        self.points.push(point);
    }
}

/// How the engine idles.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Idling {
    /// As it should, or it did not idle.
    Smooth,
    /// It shakes.
    Rough,
    /// It stalled.
    Stalls,
    /// It did not start: the starter turned it too slowly or not at all, or the control module lost its
    /// supply meanwhile.
    DoesNotStart,
}

/// Figures of one camshaft.
#[derive(Debug, Clone, PartialEq)]
pub struct CamSummary {
    /// Findings: early, late, slow, correlation.
    pub findings: [DatedFinding; 4],
    /// Time in which the conditions for monitoring were met.
    pub enabled: Seconds,
    /// Mean distance of the measured angle from its target.
    pub mean_error: CrankDegrees,
    /// Largest less smallest error, settling after a change of target not counted.
    pub peak_to_peak: CrankDegrees,
    /// Furthest from rest.
    pub furthest: CrankDegrees,
    /// The timed changes of target.
    pub steps: Vec<StepResponse>,
}

impl CamSummary {
    /// The codes' findings that failed.
    pub fn failures(&self) -> impl Iterator<Item = &DatedFinding> {
        self.findings.iter().filter(|dated| dated.finding.verdict == Verdict::Failed)
    }
}

/// What a run left behind.
#[derive(Debug, Clone, PartialEq)]
pub struct RunRecord {
    /// How long it ran.
    pub duration: Seconds,
    /// Each camshaft's figures.
    pub cams: PerBank<PerCam<CamSummary>>,
    /// Least gallery pressure, the first second not counted; zero in a run that short.
    pub least_pressure: Bars,
    /// Mean gallery pressure, the first second not counted; zero in a run that short.
    pub mean_pressure: Bars,
    /// The switch of the oil lamp was closed at some time, the first second not counted.
    pub oil_lamp: bool,
    /// How it idled, at its worst.
    pub idling: Idling,
    /// Temperatures at the end.
    pub heat: EngineHeat,
    /// Live data.
    pub trace: Trace,
}

#[derive(Debug, Clone, Copy)]
struct CamTally {
    sum_deg: f64,
    least_deg: f64,
    most_deg: f64,
    furthest_deg: f64,
    target_deg: f64,
    since_change_ticks: u32,
}

impl CamTally {
    const EMPTY: Self = Self {
        sum_deg: 0.0,
        least_deg: f64::INFINITY,
        most_deg: f64::NEG_INFINITY,
        furthest_deg: 0.0,
        target_deg: 0.0,
        since_change_ticks: 0,
    };

    /// Room for two banks, of which an engine in line fills the first.
    const NONE_YET: PerBank<PerCam<Self>> = {
        let bank = PerCam { intake: Self::EMPTY, exhaust: Self::EMPTY };
        PerBank { one: bank, two: Some(bank) }
    };

    #[inline]
    fn add(&mut self, target_deg: f64, measured_deg: f64) {
        if target_deg.total_cmp(&self.target_deg).is_eq() {
            self.since_change_ticks = self.since_change_ticks.saturating_add(1);
        } else {
            self.target_deg = target_deg;
            self.since_change_ticks = 0;
        }
        let error_deg = target_deg - measured_deg;
        self.sum_deg += error_deg.abs();
        self.furthest_deg = self.furthest_deg.max(measured_deg);
        if self.since_change_ticks >= SETTLE_TICKS {
            self.least_deg = self.least_deg.min(error_deg);
            self.most_deg = self.most_deg.max(error_deg);
        }
    }
}

/// Collects a [`RunRecord`] while the engine runs.
#[derive(Debug, Clone)]
pub struct Tally {
    ticks: u64,
    cams: PerBank<PerCam<CamTally>>,
    pressure_sum_pa: f64,
    least_pressure_pa: f64,
    oil_lamp: bool,
    idling: Idling,
    trace: Trace,
}

/// What a tally takes in each tick.
#[derive(Debug, Clone, Copy)]
pub struct TallyTick<'a> {
    /// What was asked.
    pub demand: &'a Demand,
    /// Wanted angles away from rest.
    pub targets: PerBank<PerCam<CrankDegrees>>,
    /// Measured angles away from rest.
    pub measured: PerBank<PerCam<CrankDegrees>>,
    /// Duties.
    pub duties: PerBank<PerCam<f64>>,
    /// Gallery pressure [Pa].
    pub gallery_pa: f64,
    /// The switch of the oil lamp is closed.
    pub switch_is_closed: bool,
    /// Temperatures.
    pub heat: EngineHeat,
    /// How it idles.
    pub idling: Idling,
}

impl Default for Tally {
    fn default() -> Self {
        Self::new()
    }
}

impl Tally {
    /// An empty tally with room for its whole trace.
    #[must_use]
    pub fn new() -> Self {
        Self {
            ticks: 0,
            cams: CamTally::NONE_YET,
            pressure_sum_pa: 0.0,
            least_pressure_pa: f64::INFINITY,
            oil_lamp: false,
            idling: Idling::Smooth,
            trace: Trace::new(),
        }
    }

    /// An empty tally that takes its room when it is cleared for a run.
    #[must_use]
    pub fn without_room() -> Self {
        Self {
            ticks: 0,
            cams: CamTally::NONE_YET,
            pressure_sum_pa: 0.0,
            least_pressure_pa: f64::INFINITY,
            oil_lamp: false,
            idling: Idling::Smooth,
            trace: Trace::default(),
        }
    }

    /// Starts again with the whole room, so that no tick has to ask for any.
    pub fn clear(&mut self) {
        let mut points = core::mem::take(&mut self.trace.points);
        points.clear();
        points.reserve_exact(MOST_POINTS);
        *self = Self {
            trace: Trace { points, interval_ticks: FIRST_INTERVAL_TICKS },
            ..Self::without_room()
        };
    }

    /// Takes in one tick.
    #[inline]
    pub fn add(&mut self, tick: &TallyTick<'_>) {
        let angles = tick.targets.each().zip(tick.measured.each());
        for (tally, (target, measured)) in self.cams.each_mut().zip(angles) {
            tally.add(target.0, measured.0);
        }
        if self.ticks >= PRESSURE_BUILDS_TICKS {
            self.pressure_sum_pa += tick.gallery_pa;
            self.least_pressure_pa = self.least_pressure_pa.min(tick.gallery_pa);
            self.oil_lamp |= tick.switch_is_closed;
        }
        self.idling = self.idling.max(tick.idling);
        if self.trace.is_due(self.ticks) {
            self.trace.push(TracePoint {
                time: Seconds(self.ticks as f64 * 1e-3),
                speed: tick.demand.speed,
                km_h: tick.demand.km_h,
                load: tick.demand.load,
                oil: tick.heat.oil,
                coolant: tick.heat.coolant,
                targets: tick.targets,
                measured: tick.measured,
                duties: tick.duties,
                pressure: Bars(tick.gallery_pa * 1e-5),
            });
        }
        self.ticks += 1;
    }

    /// The record so far, with what the monitors of each camshaft say.
    #[must_use]
    pub fn record(
        &self,
        heat: EngineHeat,
        monitors: PerBank<PerCam<&PerformanceMonitor>>,
    ) -> RunRecord {
        let summary = |place| {
            let monitor = monitors.of(place);
            let tally = self.cams.of(place);
            CamSummary {
                findings: monitor.findings(),
                enabled: monitor.enabled(),
                mean_error: CrankDegrees(tally.sum_deg / self.ticks.max(1) as f64),
                peak_to_peak: CrankDegrees((tally.most_deg - tally.least_deg).max(0.0)),
                furthest: CrankDegrees(tally.furthest_deg),
                steps: monitor.step_responses().to_vec(),
            }
        };
        let counted = self.ticks.saturating_sub(PRESSURE_BUILDS_TICKS);
        let (least, mean) = if counted == 0 {
            (0.0, 0.0)
        } else {
            (self.least_pressure_pa, self.pressure_sum_pa / counted as f64)
        };
        RunRecord {
            duration: Seconds(self.ticks as f64 * 1e-3),
            cams: PerBank::of_each(monitors.two.is_some(), summary),
            least_pressure: Bars(least * 1e-5),
            mean_pressure: Bars(mean * 1e-5),
            oil_lamp: self.oil_lamp,
            idling: self.idling,
            heat,
            trace: self.trace.clone(),
        }
    }
}

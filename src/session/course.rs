//! What is seen on the way of a drive, as it goes: the dashboard's figures, and with a code reader connected what the
//! module says of its camshafts.

use super::attempt::Session;
use super::step::Step;
use super::take;
use crate::units::Seconds;
use crate::vehicle::error::VehicleError;
use crate::vehicle::run_record::Trace;
use crate::vehicle::spec::Id;

/// A drive as it is seen from within.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// The road.
    pub route: Id,
    /// How long it lasts, pulling in included [s].
    pub duration: Seconds,
    /// Figures at even intervals, in order; none where the engine does not start.
    pub points: Vec<CoursePoint>,
    /// Camshafts in the order of the vehicle's valves; none without a code reader.
    pub cams: Vec<CamCourse>,
}

/// The dashboard at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoursePoint {
    /// Time since the drive began.
    pub time: Seconds,
    /// Engine speed [rpm], to the needle's 50.
    pub rpm: f64,
    /// Road speed [km/h].
    pub km_h: f64,
}

/// A camshaft on the way.
#[derive(Debug, Clone, PartialEq)]
pub struct CamCourse {
    /// Its valve.
    pub valve: Id,
    /// Wanted positions, one for each point [crank degrees from rest].
    pub wanted: Vec<f64>,
    /// Actual positions, one for each point [crank degrees from rest], to a tenth.
    pub actual: Vec<f64>,
}

impl Session {
    /// What would be seen on a drive that is possible now. Nothing is taken: the drive itself follows when it is known
    /// where it ends. `None` for another step and for a drive that would be refused.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn course(&self, step: &Step) -> Result<Option<Course>, VehicleError> {
        let Step::Drive { route, stop_after } = step else { return Ok(None) };
        let mut copy = self.fork();
        let Ok(take::Driven { report, profile, .. }) =
            take::on_the_road(&mut copy, route, *stop_after)?
        else {
            return Ok(None);
        };
        Ok(Some(Course {
            route: route.clone(),
            duration: profile.duration(),
            points: points(&report.trace),
            cams: if self.progress.reader_connected {
                cams(self, &report.trace)
            } else {
                Vec::new()
            },
        }))
    }
}

fn points(trace: &Trace) -> Vec<CoursePoint> {
    trace
        .points()
        .iter()
        .map(|point| CoursePoint {
            time: point.time,
            rpm: (point.speed.0 / 50.0).round() * 50.0,
            km_h: point.km_h.round(),
        })
        .collect()
}

fn cams(session: &Session, trace: &Trace) -> Vec<CamCourse> {
    let tenths = |angle: f64| (angle * 10.0).round() / 10.0;
    session
        .briefing
        .vehicle
        .valves
        .iter()
        .map(|valve| CamCourse {
            valve: valve.id.clone(),
            wanted: trace
                .points()
                .iter()
                .map(|it| tenths(it.targets.of(valve.camshaft()).0))
                .collect(),
            actual: trace
                .points()
                .iter()
                .map(|it| tenths(it.measured.of(valve.camshaft()).0))
                .collect(),
        })
        .collect()
}

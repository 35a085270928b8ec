//! A drive under way. What is seen on it is worked out beforehand; the step itself is taken when it is known where the
//! drive ends, so that a session holds what was driven and nothing else.

use crate::numerics::whole::to_u32;
use crate::session::course::{CamCourse, Course};
use crate::session::step::Step;
use crate::wording::amounts::with_capital;
use crate::wording::catalogue::Words;
use crate::wording::place::place;
use crate::workshop::view::on_screen;
use crate::workshop::view::road::{ChartView, LineOfRoad, RoadAction, RoadPace, RoadView};

/// Time between two frames while something is drawn as it goes [s].
const FRAME_S: f32 = 1.0 / 30.0;

/// A drive under way.
pub struct OnRoad {
    step: Step,
    view: RoadView,
}

impl OnRoad {
    /// Sets off.
    pub fn set_off(step: Step, course: &Course, words: &Words) -> Self {
        let times = course.points.iter().map(|point| on_screen(point.time.0)).collect();
        let view = RoadView {
            road: with_capital(&place(&course.route, words)),
            at: 0.0,
            of: on_screen(course.duration.0),
            charts: charts(course, words).into(),
            times,
            seen: 0,
            lacks_reader: course.cams.is_empty(),
            pace: RoadPace::default(),
        };
        Self { step, view }
    }

    /// What is seen of it.
    pub const fn view(&self) -> &RoadView {
        &self.view
    }

    /// Lets time pass; how long until the next frame is due [s], nothing when the end is reached.
    pub fn pass(&mut self, seconds: f32) -> Option<f32> {
        let view = &mut self.view;
        view.at = (view.at + seconds * view.pace.times()).min(view.of);
        view.seen = view.times.partition_point(|time| *time <= view.at);
        (view.at < view.of).then_some(FRAME_S)
    }

    /// Does what is wanted; whether the drive is over with that.
    pub const fn act(&mut self, wanted: RoadAction) -> bool {
        match wanted {
            RoadAction::PullIn => true,
            RoadAction::ToTheEnd => {
                self.view.at = self.view.of;
                true
            }
            RoadAction::SetPace(pace) => {
                self.view.pace = pace;
                false
            }
        }
    }

    /// The step that this drive was: the one that was wanted, or as much of it as was driven.
    pub fn step(&self) -> Step {
        let Step::Drive { route, .. } = &self.step else { return self.step.clone() };
        if self.view.at >= self.view.of {
            return self.step.clone();
        }
        let seconds = to_u32(f64::from(self.view.at).ceil()).max(1);
        let stop_after = Some(u16::try_from(seconds).unwrap_or(u16::MAX));
        Step::Drive { route: route.clone(), stop_after }
    }
}

/// Speeds, and each camshaft that is seen.
fn charts(course: &Course, words: &Words) -> Vec<ChartView> {
    let alone = |values: Vec<f32>| vec![LineOfRoad { name: String::new(), values }];
    let of_points = |of: fn(&crate::session::course::CoursePoint) -> f64| {
        course.points.iter().map(|point| on_screen(of(point))).collect::<Vec<f32>>()
    };
    let chart = |name: String, unit: &str, decimals, lines: Vec<LineOfRoad>, step| ChartView {
        name,
        unit: words.say(unit, &[]),
        decimals,
        scale: scale(&lines, step),
        lines,
    };
    let mut charts = vec![
        chart(words.say("road-speed", &[]), "road-km-h", 0, alone(of_points(|it| it.km_h)), 20.0),
        chart(words.say("road-engine", &[]), "road-rpm", 0, alone(of_points(|it| it.rpm)), 1_000.0),
    ];
    for CamCourse { valve, wanted, actual } in &course.cams {
        let line = |key, values: &[f64]| LineOfRoad {
            name: words.say(key, &[]),
            values: values.iter().map(|value| on_screen(*value)).collect(),
        };
        let lines = vec![line("road-wanted", wanted), line("road-actual", actual)];
        let name = words.say("road-cam", &[("place", place(valve, words).into())]);
        charts.push(chart(with_capital(&name), "road-degrees", 1, lines, 10.0));
    }
    charts
}

/// From zero, or less where a line goes there, to the next whole step above every line.
fn scale(lines: &[LineOfRoad], step: f32) -> [f32; 2] {
    let all = || lines.iter().flat_map(|line| &line.values).copied();
    let most = all().fold(0.0, f32::max);
    let least = all().fold(0.0, f32::min);
    [(least / step).floor() * step, ((most / step).ceil() * step).max(step)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::course::CoursePoint;
    use crate::units::Seconds;
    use crate::vehicle::spec::Id;

    fn on_road() -> OnRoad {
        let step = Step::Drive { route: Id::from("test-hill"), stop_after: None };
        let points = (0..1_000)
            .map(|tenth| CoursePoint {
                time: Seconds(f64::from(tenth) * 0.1),
                rpm: 700.0 + f64::from(tenth),
                km_h: f64::from(tenth % 60),
            })
            .collect();
        let course = Course {
            route: Id::from("test-hill"),
            duration: Seconds(100.0),
            points,
            cams: Vec::new(),
        };
        OnRoad::set_off(step, &course, &Words::for_language("en-GB"))
    }

    #[test]
    fn closed_form_time_runs_at_its_pace_and_ends_at_the_end() {
        let mut on_road = on_road();
        assert_eq!(on_road.pass(0.5), Some(FRAME_S));
        assert_eq!((on_road.view().at, on_road.view().seen), (10.0, 101));
        assert!(!on_road.act(RoadAction::SetPace(RoadPace::Fast)));
        assert_eq!(on_road.pass(1.0), Some(FRAME_S));
        assert_eq!(on_road.view().at, 70.0);
        assert_eq!(on_road.pass(1.0), None);
        assert_eq!((on_road.view().at, on_road.view().seen), (100.0, 1_000));
        assert_eq!(on_road.step(), Step::Drive { route: Id::from("test-hill"), stop_after: None });
    }

    #[test]
    fn limit_whoever_pulls_in_has_driven_as_far_as_was_seen_and_a_second_at_least() {
        let stopped = |on_road: &OnRoad| match on_road.step() {
            Step::Drive { stop_after, .. } => stop_after,
            _ => None,
        };
        let mut on_road = on_road();
        assert!(on_road.act(RoadAction::PullIn));
        assert_eq!(stopped(&on_road), Some(1));
        on_road.pass(1.01);
        assert_eq!(stopped(&on_road), Some(21));
        assert!(on_road.act(RoadAction::ToTheEnd));
        assert_eq!(stopped(&on_road), None);
    }

    #[test]
    fn closed_form_scales_hold_every_value_in_whole_steps() {
        let line = |values: &[f32]| LineOfRoad { name: String::new(), values: values.to_vec() };
        assert_eq!(scale(&[line(&[0.0, 63.0])], 20.0), [0.0, 80.0]);
        assert_eq!(scale(&[line(&[-0.4, 3.0]), line(&[12.0])], 10.0), [-10.0, 20.0]);
        assert_eq!(scale(&[line(&[])], 10.0), [0.0, 10.0]);
    }
}

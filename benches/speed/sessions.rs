//! Sessions: a replay, the worlds of a scenario, and what the expert decides among them.

use super::stopwatch::{median, shared};
use super::table::Row;
use faultwright::reasoning::belief::Belief;
use faultwright::reasoning::expert::Expert;
use faultwright::reasoning::world::Worlds;
use faultwright::scenario::draw::{any_case, draw};
use faultwright::scenario::load::demo;
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::step::Step;
use faultwright::wording::step_parser;
use std::hint::black_box;
use std::num::NonZeroUsize;
use std::sync::Arc;
use std::time::Duration;

/// The session that the tests pin: every kind of step.
const LONG: &str = include_str!("../../tests/replay/long.steps");
/// Steps of the session that is measured, two road tests among them.
const STEPS: usize = 40;
const ROAD_TESTS: usize = 2;
const SEED: u64 = 8;

pub fn rows() -> Result<Vec<Row>, String> {
    let scenario = Arc::new(demo().map_err(|error| error.to_string())?);
    let case = draw(&scenario, SEED, &any_case).map_err(|error| error.to_string())?;
    let parsed: Vec<Step> = LONG
        .lines()
        .filter_map(|line| step_parser::parse(line, &case.briefing).expect("a step that is tested"))
        .collect();
    let (drives, rest): (Vec<Step>, Vec<Step>) =
        parsed.into_iter().partition(|step| matches!(step, Step::Drive { .. }));
    let mut steps = rest;
    steps.truncate(STEPS - ROAD_TESTS);
    steps.extend(drives.into_iter().take(ROAD_TESTS));
    let replay = median(|| {
        let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())
            .expect("a case that can be begun");
        for step in &steps {
            session.take(step).expect("a step that can be taken");
        }
        black_box(session.digest());
    });
    let briefing = Arc::new(scenario.briefing());
    let supposed = suppositions(&scenario);
    let one = median(|| {
        let hidden = supposed[supposed.len() / 2].hidden.clone();
        black_box(
            Session::begin(Arc::clone(&briefing), hidden).expect("a world that can be begun"),
        );
    });
    let threads = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
    let count = u32::try_from(threads).unwrap_or(u32::MAX);
    let (all, worlds) =
        shared(count, || Worlds::begin(&briefing, &supposed, &|_, _| {}).expect("worlds"));
    let belief = Belief::prior(worlds);
    let (decision, _) =
        shared(count, || Expert::new(Arc::clone(&briefing)).value(&belief).expect("a value"));
    let row = |what: String, ours, other| Row {
        what,
        ours,
        other,
        against: "the goal".to_owned(),
        goal: 1.0,
    };
    Ok(vec![
        row(
            format!("replay of {} steps with {ROAD_TESTS} road tests", steps.len()),
            replay,
            Duration::from_secs(1),
        ),
        row(
            "beginning one world: two drives of the customer's".to_owned(),
            one,
            Duration::from_millis(60),
        ),
        row(
            format!("beginning all {} worlds on {threads} threads", supposed.len()),
            all,
            Duration::from_secs(5),
        ),
        row(
            "the expert's first decision, nothing known".to_owned(),
            decision,
            Duration::from_millis(100),
        ),
    ])
}

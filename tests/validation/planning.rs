//! Planning: published problems of decisions under uncertainty.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources::{self, Source};
use faultwright::reasoning::plan::budget::Enough;
use faultwright::reasoning::plan::problem::Problem;
use faultwright::reasoning::plan::search::Search;

/// A problem from the examples, searched until its bounds meet.
fn searched(text: &str, first: Option<usize>) -> f64 {
    let problem: Problem = ron::from_str(text).expect("a problem");
    let mut search = Search::new(&problem).expect("a sound problem");
    let root = search.root();
    let bounds = match first {
        Some(step) => search.weigh(root, step, &Enough::EXACT, &mut |_| true),
        None => search.run(root, &Enough::EXACT, &mut |_| true),
    };
    assert!(bounds.gap() < 1e-6, "{bounds:?}");
    bounds.upper
}

pub fn area() -> Area {
    let row = |item, source: &'static Source, published, ours, decimals, evidence| Row {
        item,
        source,
        wanted: Wanted::Value(published, 1e-6),
        ours: Ours::Value(ours),
        unit: "",
        decimals,
        reason: "the search stops when its bounds are this near",
        evidence,
    };
    let car = include_str!("../../examples/plan/used-car.ron");
    let noisy = include_str!("../../examples/plan/two-noisy-tests.ron");
    let computer = include_str!("../../examples/plan/irregular-computer.ron");
    let retries = include_str!("../../examples/plan/irregular-computer-retries.ron");
    let tests = include_str!("../../examples/plan/five-tests.ron");
    Area {
        title: "Planning",
        calls: "`reasoning::plan::search::Search::{run, weigh}`",
        note: "The expert that marks a session has a search of its own; these problems are put to the \
               planner that knows no engine.",
        rows: vec![
            row(
                "used car: gain of testing, then guarantee or not",
                &sources::USED_CAR,
                31.0,
                -searched(car, None),
                3,
                Evidence::WorkedExample,
            ),
            row(
                "two noisy tests: gain of buying untested, the best",
                &sources::NOISY_TESTS,
                28.0,
                -searched(noisy, None),
                3,
                Evidence::ClosedForm,
            ),
            row(
                "two noisy tests: gain when the first test is made",
                &sources::NOISY_TESTS,
                26.2,
                -searched(noisy, Some(0)),
                3,
                Evidence::ClosedForm,
            ),
            row(
                "irregular computer: least expected cost, each action once",
                &sources::COMPUTER,
                27.875,
                searched(computer, None),
                4,
                Evidence::ClosedForm,
            ),
            row(
                "irregular computer: the same with independent retries",
                &sources::COMPUTER_RETRIES,
                26.625_125,
                searched(retries, None),
                6,
                Evidence::Program,
            ),
            row(
                "five tests of one unit: least expected number of tests",
                &sources::FIVE_TESTS,
                2.12,
                searched(tests, None),
                4,
                Evidence::Program,
            ),
            row(
                "five tests: beginning with the most informative one",
                &sources::FIVE_TESTS,
                2.71,
                searched(tests, Some(0)),
                4,
                Evidence::Program,
            ),
        ],
    }
}

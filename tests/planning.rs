//! Published problems of finding and mending, and small ones that other programs have solved, put to the planner from the
//! files that stand beside its example.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::numerics::streams::Streams;
use faultwright::reasoning::plan::budget::{Bounds, Enough};
use faultwright::reasoning::plan::policy::price;
use faultwright::reasoning::plan::problem::Problem;
use faultwright::reasoning::plan::search::Search;
use faultwright::reasoning::plan::upper::Choice;
use std::collections::BTreeMap;

fn exact(problem: &Problem) -> (Search, Bounds) {
    let mut search = Search::new(problem).unwrap();
    let root = search.root();
    let bounds = search.run(root, &Enough::EXACT, &mut |_| true);
    (search, bounds)
}

fn file(name: &str) -> Problem {
    let path = format!("{}/examples/plan/{name}.ron", env!("CARGO_MANIFEST_DIR"));
    ron::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// Jensen and Nielsen, Bayesian Networks and Decision Graphs, the exercise of the irregular
/// computer: inputs from the exercise, answer by brute force over all sixteen orders.
#[test]
fn published_irregular_computer_each_action_once() {
    let (search, bounds) = exact(&file("irregular-computer"));
    assert!(
        (bounds.upper - 27.875).abs() < 1e-9 && (bounds.lower - 27.875).abs() < 1e-7,
        "{bounds:?}"
    );
    assert_eq!(search.choice(search.root()), Choice::Step(0));
}

/// The same with actions that may be tried again with an independent outcome: an independent exact
/// solver gives 26.625125 for reboot, virus tool three times, new computer.
#[test]
fn reference_irregular_computer_with_retries() {
    let (_, bounds) = exact(&file("irregular-computer-retries"));
    assert!((bounds.upper - 26.625_125).abs() < 1e-6 && bounds.gap() < 1e-6, "{bounds:?}");
}

/// Howard's used car buyer as in the documentation of a decision-programming library: gain 31.
#[test]
fn published_used_car_buyer() {
    let (search, bounds) = exact(&file("used-car"));
    assert!((bounds.upper + 31.0).abs() < 1e-9 && bounds.gap() < 1e-9, "{bounds:?}");
    assert_eq!(search.choice(search.root()), Choice::Step(0));
}

/// Two noisy tests, after Neapolitan 1990 p. 373: buying untested is best, gain 28; the first test
/// leads to 26.2 at best.
#[test]
fn published_testing_can_be_wrong() {
    let problem = file("two-noisy-tests");
    let (mut search, bounds) = exact(&problem);
    assert!((bounds.upper + 28.0).abs() < 1e-9 && bounds.gap() < 1e-9, "{bounds:?}");
    assert!(matches!(search.choice(search.root()), Choice::End(_)));
    let first = search.weigh(search.root(), 0, &Enough::EXACT, &mut |_| true);
    assert!((first.upper + 26.2).abs() < 1e-9 && first.gap() < 1e-9, "{first:?}");
}

/// Five states, five tests of one unit each, identification wanted. Priors and matrix are a local
/// fixture; dynamic programming over all subsets by an independent program gives 2.12 in all, 2.71,
/// 2.12, 2.96, 2.18 and 2.72 for each first test. Information gain alone would begin with the first.
#[test]
fn reference_five_tests_and_each_first_test() {
    let (mut search, bounds) = exact(&file("five-tests"));
    assert!((bounds.upper - 2.12).abs() < 1e-9 && bounds.gap() < 1e-9, "{bounds:?}");
    assert_eq!(search.choice(search.root()), Choice::Step(1));
    for (step, cost) in [2.71, 2.12, 2.96, 2.18, 2.72].into_iter().enumerate() {
        let weighed = search.weigh(search.root(), step, &Enough::EXACT, &mut |_| true);
        assert!((weighed.upper - cost).abs() < 1e-9 && weighed.gap() < 1e-9, "{step}: {weighed:?}");
    }
}

/// What a wandering hand does in one situation: what each step that leads on costs by itself, what it gives
/// away against the best, and where it leads.
type Ways = Vec<(f64, f64, Vec<(usize, f64, usize)>)>;

fn ways(search: &mut Search, situation: usize) -> (f64, Ways) {
    let best = search.run(situation, &Enough::EXACT, &mut |_| true).upper;
    if matches!(search.choice(situation), Choice::End(_)) {
        return (best, Vec::new());
    }
    let offered: Vec<usize> = search.offered(situation).collect();
    let ways = offered
        .into_iter()
        .filter_map(|step| {
            let all = search.weigh(situation, step, &Enough::EXACT, &mut |_| true).upper;
            let leads = search.after(situation, step);
            let here = price(search, situation, step);
            (all.is_finite() && !leads.is_empty()).then_some((here, all - best, leads))
        })
        .collect();
    (best, ways)
}

/// The expected cost of any policy less that of the best is the expected sum of its regrets (the performance
/// difference lemma of Kakade and Langford 2002, from memory). In simulation, within four standard errors:
/// a hand that takes any step that is offered until the best is to end, 20,000 times on each problem.
#[test]
fn closed_form_what_a_policy_costs_too_much_is_the_sum_of_its_regrets() {
    for name in ["five-tests", "irregular-computer"] {
        let (mut search, bounds) = exact(&file(name));
        let mut random = Streams::new(7).stream(name);
        let mut known: BTreeMap<usize, (f64, Ways)> = BTreeMap::new();
        let (mut sum, mut squares, mut regrets) = (0.0, 0.0, 0.0);
        let times = 20_000;
        for _ in 0..times {
            let (mut situation, mut cost, mut regret) = (search.root(), 0.0, 0.0);
            loop {
                let (best, ways) =
                    known.entry(situation).or_insert_with(|| ways(&mut search, situation));
                let chosen = (random.unit() * ways.len() as f64) as usize;
                let Some((here, given_away, leads)) = ways.get(chosen) else {
                    cost += *best;
                    break;
                };
                cost += here;
                regret += given_away;
                let mut at = random.unit();
                let last = leads[leads.len() - 1].2;
                let found = leads.iter().find(|(_, chance, _)| {
                    at -= chance;
                    at < 0.0
                });
                situation = found.map_or(last, |(.., there)| *there);
            }
            let apart = cost - bounds.upper - regret;
            sum += apart;
            squares += apart * apart;
            regrets += regret;
        }
        let times = f64::from(times);
        let (mean, regret) = (sum / times, regrets / times);
        let error = ((squares / times - mean * mean) / times).sqrt();
        assert!(mean.abs() <= 4.0 * error + 1e-9, "{name}: {mean} apart, error {error}");
        assert!(regret > 10.0 * error, "{name}: {regret} given away, error {error}");
    }
}

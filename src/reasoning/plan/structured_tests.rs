//! Small problems with the structure of real ones, against the plain recursion: outcomes that are
//! certain but for a few, shared repairs and covers, a state in which nothing is wrong.

use super::budget::Enough;
use super::compiled::Compiled;
use super::covers::Demand;
use super::problem::{Change, Cover, Ending, Problem, Repeat, State, Step};
use super::ranking::ranking;
use super::search::Search;
use super::tests::{by_definition, exact, state};
use super::upper::take;
use proptest::prelude::*;
use std::collections::BTreeMap;

/// A test: cost, what it shows in each state, how sure that is, the covers in its way.
type Test = (f64, Vec<(usize, f64)>, u8);
/// A repair: cost, the states it mends, how sure that is, the covers in its way.
type Repair = (f64, Vec<bool>, f64, u8);

const OUTCOMES: usize = 3;

fn named(mask: u8) -> Vec<String> {
    (0..2).filter(|cover| mask >> cover & 1 == 1).map(|cover| format!("c{cover}")).collect()
}

fn structured() -> impl Strategy<Value = Problem> {
    (2..5_usize).prop_flat_map(|count| {
        let sure = prop_oneof![3 => Just(1.0), 1 => 0.5..1.0_f64];
        let shows = prop::collection::vec((0..OUTCOMES, sure.clone()), count);
        let tests = prop::collection::vec((1.0..12.0_f64, shows, 0..4_u8), 0..4);
        let mends = prop::collection::vec(any::<bool>(), count);
        let repairs = prop::collection::vec((5.0..60.0_f64, mends, sure, 0..4_u8), 1..4);
        let priors = prop::collection::vec(0.05..1.0_f64, count);
        let covers = prop::collection::vec((0.0..8.0_f64, 0.0..8.0_f64), 2);
        (priors, tests, repairs, covers, any::<bool>(), 20.0..200.0_f64).prop_map(
            |(priors, tests, repairs, covers, nested, comeback)| {
                problem(&priors, &tests, &repairs, &covers, nested, comeback)
            },
        )
    })
}

fn problem(
    priors: &[f64],
    tests: &[Test],
    repairs: &[Repair],
    covers: &[(f64, f64)],
    nested: bool,
    comeback: f64,
) -> Problem {
    let mut states: Vec<State> =
        priors.iter().enumerate().map(|(n, prior)| state(&format!("s{n}"), *prior)).collect();
    states.push(state("fine", 0.0));
    let covers = covers.iter().enumerate().map(|(number, (open, shut))| Cover {
        name: format!("c{number}"),
        open: *open,
        shut: *shut,
        behind: if nested && number == 1 { vec!["c0".into()] } else { Vec::new() },
    });
    let looks = tests.iter().enumerate().map(|(number, (cost, shows, covers))| Step {
        name: format!("t{number}"),
        cost: *cost,
        repeat: Repeat::Same,
        open: named(*covers),
        shut: Vec::new(),
        outcomes: (0..OUTCOMES).map(|outcome| format!("o{outcome}")).collect(),
        chances: shows
            .iter()
            .enumerate()
            .map(|(state, (outcome, sure))| {
                let mut row = vec![0.0; OUTCOMES];
                row[*outcome] += sure;
                row[(outcome + 1) % OUTCOMES] += 1.0 - sure;
                (format!("s{state}"), row)
            })
            .collect(),
        otherwise: vec![1.0, 0.0, 0.0],
        becomes: Vec::new(),
        renews: Vec::new(),
    });
    let mends = repairs.iter().enumerate().map(|(number, (cost, mends, sure, covers))| {
        let mended = || (0..priors.len()).filter(|state| mends[*state]).map(|s| format!("s{s}"));
        Step {
            name: format!("r{number}"),
            cost: *cost,
            repeat: Repeat::Same,
            open: named(*covers),
            shut: Vec::new(),
            outcomes: vec!["works".into(), "fails".into()],
            chances: mended().map(|state| (state, vec![*sure, 1.0 - sure])).collect(),
            otherwise: vec![0.0, 1.0],
            becomes: mended()
                .map(|from| Change { from, on: "works".into(), to: "fine".into() })
                .collect(),
            renews: Vec::new(),
        }
    });
    Problem {
        title: "structured".into(),
        source: String::new(),
        covers: covers.collect(),
        steps: looks.chain(mends).collect(),
        endings: vec![Ending {
            name: "done".into(),
            // In the first state nothing was wrong.
            costs: BTreeMap::from([("fine".to_owned(), 0.0), ("s0".to_owned(), 0.0)]),
            otherwise: Some(comeback),
            open: Vec::new(),
            shut: vec!["c0".into(), "c1".into()],
        }],
        states,
    }
}

/// Cost of a step first, by the definition.
fn first_by_definition(compiled: &Compiled, step: usize) -> f64 {
    let (cost, open, _) = take(compiled, 0, 0, step);
    let branches = compiled.branches(&compiled.prior, step);
    let rest = branches.iter().map(|branch| {
        branch.chance * by_definition(compiled, branch.belief.weights(), open, 1 << step)
    });
    cost + rest.sum::<f64>()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn prop_structured_bounds_meet_at_the_definition(problem in structured()) {
        let (search, bounds) = exact(&problem);
        let compiled = search.compiled();
        let value = by_definition(compiled, compiled.prior.weights(), 0, 0);
        prop_assert!((bounds.upper - value).abs() < 1e-6, "{bounds:?} {value}");
        prop_assert!(bounds.lower <= value + 1e-9 && bounds.gap() < 1e-6, "{bounds:?} {value}");
    }

    /// With and without repairs that put everything back, at every price of information.
    #[test]
    fn prop_every_lower_bound_is_below_the_definition(
        problem in structured(), put_back in any::<bool>(), open in 0..4_u64,
    ) {
        let mut compiled = Compiled::new(&problem).unwrap();
        if put_back {
            for step in compiled.steps.iter_mut().filter(|step| step.changes) {
                step.after = Demand { open: 0, shut: 3 };
            }
        }
        // The second cover may be behind the first.
        let open = if open == 2 { 3 } else { open };
        let value = by_definition(&compiled, compiled.prior.weights(), open, 0);
        let mut search = Search::from(compiled, open, 0).unwrap();
        let root = search.root();
        prop_assert!(search.bounds(root).lower <= value + 1e-9);
        prop_assert!(search.bounds(root).upper >= value - 1e-9);
        let (compiled, belief) = (search.compiled.clone(), search.compiled.prior.clone());
        for price in 0..20 {
            let lower = search.lower.of(&compiled, (&belief, open, 0), &mut { price }, false);
            prop_assert!(lower <= value + 1e-9, "{price}: {lower} {value}");
            let firsts = search.lower.firsts(&compiled, (&belief, open, 0), price);
            for (step, first) in firsts.iter().enumerate() {
                let (cost, open_then, _) = take(&compiled, open, 0, step);
                let rest: f64 = compiled.branches(&belief, step).iter().map(|branch| {
                    let weights = branch.belief.weights();
                    branch.chance * by_definition(&compiled, weights, open_then, 1 << step)
                }).sum();
                prop_assert!(*first <= cost + rest + 1e-9, "{price}, {step}: {first} {}", cost + rest);
            }
        }
    }

    /// Stopped after little work, and asked for every step: nothing lies outside its bounds, and
    /// the regret is what the definition says within its error.
    #[test]
    fn prop_a_ranking_that_was_stopped_still_holds(problem in structured(), work in 0..400_u64) {
        let mut search = Search::new(&problem).unwrap();
        let root = search.root();
        let enough = Enough { work, ..Enough::EXACT };
        let ranking = ranking(&mut search, root, (&enough, &enough), &mut |_| true);
        let compiled = search.compiled();
        let value = by_definition(compiled, compiled.prior.weights(), 0, 0);
        prop_assert!(ranking.value.lower <= value + 1e-9 && value <= ranking.value.upper + 1e-9);
        for rank in &ranking.steps {
            let first = first_by_definition(compiled, rank.step);
            prop_assert!(rank.cost.lower <= first + 1e-9 && first <= rank.cost.upper + 1e-9);
            let regret = first - value;
            prop_assert!(rank.regret.lower <= regret + 1e-9 && regret <= rank.regret.upper + 1e-9);
        }
    }

    /// The same work gives the same bounds to the last bit, whoever calls.
    #[test]
    fn prop_the_same_work_gives_the_same_bounds(problem in structured(), work in 0..400_u64) {
        let run = || {
            let mut search = Search::new(&problem).unwrap();
            let root = search.root();
            let bounds = search.run(root, &Enough { work, ..Enough::EXACT }, &mut |_| true);
            (bounds.lower.to_bits(), bounds.upper.to_bits(), search.choice(root), search.work())
        };
        prop_assert_eq!(run(), run());
    }
}

//! Problems of two hundred states and forty steps, made by seed.

use faultwright::reasoning::plan::problem::{Change, Cover, Ending, Problem, Repeat, State, Step};
use std::collections::BTreeMap;

const STATES: usize = 200;
const TESTS: usize = 28;
const REPAIRS: usize = 12;
const ASSEMBLIES: usize = 6;
/// Ways to fail in an assembly, the first half of which one repair mends, the second half another.
const KINDS: usize = 8;

/// Steele, Lea and Flood's `SplitMix64` (2014), from memory: enough to make problems.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    fn below(&mut self, count: usize) -> usize {
        (self.share() * count as f64) as usize
    }
}

/// What a state shows: one outcome, or by this chance one beside it as well.
struct Showing<'a> {
    dice: &'a mut Dice,
    borderline: f64,
}

impl Showing<'_> {
    fn row(&mut self, outcome: usize, outcomes: usize) -> Vec<f64> {
        let mut row = vec![0.0; outcomes];
        row[outcome] = 1.0;
        if self.dice.share() < self.borderline {
            let beside = if outcome + 1 < outcomes { outcome + 1 } else { outcome - 1 };
            row[beside] = self.dice.between(0.05, 0.5);
            row[outcome] = 1.0 - row[beside];
        }
        row
    }
}

/// Every state shows one of two outcomes of every test at random, wrong in 2 to 15 %; every repair
/// mends states at random. Nothing hangs together.
pub fn unstructured(seed: u64) -> Problem {
    let mut dice = Dice(seed);
    let mut problem = frame(&mut dice);
    for number in 0..TESTS {
        let mut rows = BTreeMap::new();
        for state in 0..STATES {
            let right = dice.between(0.85, 0.98);
            let first = if dice.share() < 0.5 { right } else { 1.0 - right };
            rows.insert(name(state), vec![first, 1.0 - first]);
        }
        problem.steps.push(test(number, dice.between(2.0, 12.0), 2, rows));
    }
    let mended_by: Vec<usize> = (0..STATES).map(|_| dice.below(REPAIRS)).collect();
    for number in 0..REPAIRS {
        let mends = (0..STATES).filter(|state| mended_by[*state] == number).collect::<Vec<_>>();
        problem.steps.push(repair(number, dice.between(40.0, 110.0), &mends));
    }
    problem
}

/// A machine of six assemblies: a cover before each, one behind another, a meter that is fetched
/// once; two scans that often point to the assembly; tests of one assembly that tell apart the kinds
/// of its faults, with exceptions; two repairs an assembly. This share of what is shown is
/// borderline and may read as what is beside it.
pub fn machine(seed: u64, borderline: f64) -> Problem {
    let mut dice = Dice(seed);
    let mut problem = frame(&mut dice);
    let assembly: Vec<usize> = (0..STATES).map(|_| dice.below(ASSEMBLIES)).collect();
    let kind: Vec<usize> = (0..STATES).map(|_| dice.below(KINDS)).collect();
    for number in 0..ASSEMBLIES {
        let behind = if number % 3 == 2 { vec![cover(number - 1)] } else { Vec::new() };
        let (open, shut) = (dice.between(1.0, 8.0), dice.between(1.0, 8.0));
        problem.covers.push(Cover { name: cover(number), open, shut, behind });
        problem.endings[0].shut.push(cover(number));
    }
    let meter = Cover { name: "meter".into(), open: 5.0, shut: 0.0, behind: Vec::new() };
    problem.covers.push(meter);
    for number in 0..TESTS {
        let (cost, outcomes) = match number {
            0 => (dice.between(2.0, 4.0), 1 + ASSEMBLIES),
            1 => (dice.between(2.0, 4.0), 1 + ASSEMBLIES / 2),
            _ => (dice.between(2.0, 12.0), 2 + dice.below(3)),
        };
        let shows: Vec<usize> = (0..KINDS).map(|_| dice.below(outcomes)).collect();
        let mut rows = BTreeMap::new();
        for state in 0..STATES {
            let outcome = if number < 2 {
                let points = 1 + assembly[state] / (1 + number);
                if dice.share() < 0.6 { points } else { 0 }
            } else if assembly[state] != number % ASSEMBLIES {
                continue;
            } else if dice.share() < 0.15 {
                dice.below(outcomes)
            } else {
                shows[kind[state]]
            };
            let mut showing = Showing { dice: &mut dice, borderline };
            rows.insert(name(state), showing.row(outcome, outcomes));
        }
        let mut step = test(number, cost, outcomes, rows);
        if number >= 2 && dice.share() < 0.5 {
            step.open.push(cover(number % ASSEMBLIES));
        }
        if number >= 2 && dice.share() < 0.5 {
            step.open.push("meter".into());
        }
        problem.steps.push(step);
    }
    for number in 0..REPAIRS {
        let mends: Vec<usize> = (0..STATES)
            .filter(|state| 2 * assembly[*state] + usize::from(kind[*state] >= KINDS / 2) == number)
            .collect();
        let mut step = repair(number, dice.between(40.0, 110.0), &mends);
        if dice.share() < 0.7 {
            step.open.push(cover(number / 2));
        }
        problem.steps.push(step);
    }
    problem
}

fn name(state: usize) -> String {
    format!("state {state}")
}

fn cover(number: usize) -> String {
    format!("cover {number}")
}

fn frame(dice: &mut Dice) -> Problem {
    let mut states: Vec<State> = (0..STATES)
        .map(|state| State { name: name(state), prior: dice.between(0.2, 1.0) })
        .collect();
    states.push(State { name: "fine".into(), prior: 0.0 });
    let done = Ending {
        name: "done".into(),
        costs: BTreeMap::from([("fine".to_owned(), 0.0)]),
        otherwise: Some(300.0),
        open: Vec::new(),
        shut: Vec::new(),
    };
    Problem {
        title: "made by seed".into(),
        source: String::new(),
        states,
        covers: Vec::new(),
        steps: Vec::new(),
        endings: vec![done],
    }
}

fn test(number: usize, cost: f64, outcomes: usize, chances: BTreeMap<String, Vec<f64>>) -> Step {
    let mut otherwise = vec![0.0; outcomes];
    otherwise[0] = 1.0;
    Step {
        name: format!("test {number}"),
        cost,
        repeat: Repeat::Same,
        open: Vec::new(),
        shut: Vec::new(),
        outcomes: (0..outcomes).map(|outcome| format!("outcome {outcome}")).collect(),
        chances,
        otherwise,
        becomes: Vec::new(),
        renews: Vec::new(),
    }
}

fn repair(number: usize, cost: f64, mends: &[usize]) -> Step {
    let works = || mends.iter().map(|state| name(*state));
    Step {
        name: format!("repair {number}"),
        cost,
        repeat: Repeat::Same,
        open: Vec::new(),
        shut: Vec::new(),
        outcomes: vec!["works".into(), "fails".into()],
        chances: works().chain(["fine".into()]).map(|state| (state, vec![1.0, 0.0])).collect(),
        otherwise: vec![0.0, 1.0],
        becomes: works()
            .map(|from| Change { from, on: "works".into(), to: "fine".into() })
            .collect(),
        renews: Vec::new(),
    }
}

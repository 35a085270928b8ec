//! Puts a plain problem of finding and mending to the planner and prints what it is worth and what to do:
//! `cargo run --example plan -- PROBLEM.ron`. docs/planning.md describes the file.

#![expect(clippy::print_stdout, clippy::print_stderr, reason = "an example talks to the terminal")]
#![expect(clippy::disallowed_types, reason = "somebody waits; the search itself knows no clock")]

use faultwright::reasoning::plan::budget::Enough;
use faultwright::reasoning::plan::policy::{Plan, plan, price};
use faultwright::reasoning::plan::problem::Problem;
use faultwright::reasoning::plan::ranking::{Rank, ranking};
use faultwright::reasoning::plan::search::Search;
use faultwright::reasoning::plan::upper::Choice;
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// Branches of the policy that are reached less often are not printed.
const LEAST_CHANCE: f64 = 1e-3;

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let (Some(path), seconds) = (arguments.next(), arguments.next()) else {
        eprintln!("usage: plan PROBLEM.ron [SECONDS]\nexample: plan examples/plan/used-car.ron 2");
        return ExitCode::from(2);
    };
    let seconds = match seconds.as_deref().map(str::parse::<f64>) {
        None => 2.0,
        Some(Ok(seconds)) if seconds > 0.0 && seconds < 1e6 => seconds,
        Some(_) => {
            eprintln!("plan: the second argument is how many seconds to search, such as 2");
            return ExitCode::from(2);
        }
    };
    match solve(&path, Duration::from_secs_f64(seconds)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            eprintln!("plan: {path}: {problem}");
            ExitCode::from(3)
        }
    }
}

fn solve(path: &str, time: Duration) -> Result<(), String> {
    let text = std::fs::read_to_string(path).map_err(|error| error.to_string())?;
    let problem: Problem = ron::from_str(&text).map_err(|error| error.to_string())?;
    let mut search = Search::new(&problem).map_err(|flaw| flaw.to_string())?;
    let root = search.root();
    let (began, steps) = (Instant::now(), search.offered(root).count() + 1);
    search.run(root, &Enough::EXACT, &mut |_| began.elapsed() < time);
    // As long again for all the steps together.
    let share = time / u32::try_from(steps).unwrap_or(u32::MAX);
    let each = (&Enough { work: 0, ..Enough::EXACT }, &Enough::EXACT);
    let mut from = Instant::now();
    let ranking = ranking(&mut search, root, each, &mut |_| {
        let on = from.elapsed() < share;
        if !on {
            from = Instant::now();
        }
        on
    });
    println!("{}", problem.title);
    if !problem.source.is_empty() {
        println!("Source: {}", problem.source);
    }
    println!(
        "Least expected cost: between {:.6} and {:.6} (gap {:.2e}, {} situations)",
        ranking.value.lower,
        ranking.value.upper,
        ranking.value.gap(),
        search.size()
    );
    println!("\nEach first step, with the best that can follow, and what it gives away:");
    for Rank { step, cost, regret } in &ranking.steps {
        println!(
            "  {:<24} {:>12.6} to {:>12.6} {:>12.6} to {:>12.6}",
            problem.steps[*step].name, cost.lower, cost.upper, regret.lower, regret.upper
        );
    }
    println!("\nPolicy:");
    let tree = plan(&mut search, root, LEAST_CHANCE);
    print_plan(&problem, &search, &tree, "", 0);
    Ok(())
}

fn print_plan(problem: &Problem, search: &Search, plan: &Plan, seen: &str, depth: usize) {
    let indent = "  ".repeat(depth + 1);
    let seen =
        if seen.is_empty() { String::new() } else { format!("{seen} ({:.4}): ", plan.chance) };
    match plan.choice {
        Choice::End(ending) => println!("{indent}{seen}end: {}", problem.endings[ending].name),
        Choice::Step(step) => {
            let cost = price(search, plan.situation, step);
            println!("{indent}{seen}{} [{cost:.2}]", problem.steps[step].name);
            for (outcome, next) in &plan.then {
                print_plan(
                    problem,
                    search,
                    next,
                    &problem.steps[step].outcomes[*outcome],
                    depth + 1,
                );
            }
        }
    }
}

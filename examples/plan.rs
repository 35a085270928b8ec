//! Puts a plain problem of finding and mending to the planner and prints what it is worth and what to do:
//! `cargo run --example plan -- PROBLEM.ron`. docs/planning.md describes the file.

#![expect(clippy::print_stdout, clippy::print_stderr, reason = "an example talks to the terminal")]
#![expect(clippy::disallowed_types, reason = "somebody waits; the search itself knows no clock")]

use faultwright::reasoning::plan::policy::{Plan, plan, price};
use faultwright::reasoning::plan::problem::Problem;
use faultwright::reasoning::plan::search::{Enough, Search};
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
    let began = Instant::now();
    let bounds = search.run(root, &Enough::EXACT, &mut |_| began.elapsed() < time);
    println!("{}", problem.title);
    if !problem.source.is_empty() {
        println!("Source: {}", problem.source);
    }
    println!(
        "Least expected cost: between {:.6} and {:.6} (gap {:.2e}, {} situations)",
        bounds.lower,
        bounds.upper,
        bounds.gap(),
        search.size()
    );
    println!("\nEach first step, with the best that can follow:");
    let mut ranked = Vec::new();
    for step in search.offered(root) {
        let began = Instant::now();
        let bounds = search.weigh(root, step, &Enough::EXACT, &mut |_| began.elapsed() < time / 10);
        ranked.push((bounds, step));
    }
    ranked.sort_by(|a, b| a.0.upper.total_cmp(&b.0.upper));
    for (bounds, step) in ranked {
        println!(
            "  {:<24} {:>12.6} to {:>12.6}",
            problem.steps[step].name, bounds.lower, bounds.upper
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

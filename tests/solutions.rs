//! Cases of the shipped scenario solved as a careful technician solves them.
//!
//! `tests/solutions/seed-NN.steps` holds the steps of one case each; every kind of fault is among
//! them, and a vehicle without any. Whoever changes physics, prices or marks sees here whether
//! honest work is still rewarded.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::assessment::debrief::{Debrief, debrief};
use faultwright::assessment::mark::{About, ProofPart};
use faultwright::faults::FaultName;
use faultwright::reasoning::remedy::Remedy;
use faultwright::reasoning::world::Worlds;
use faultwright::scenario::deal::deal;
use faultwright::scenario::draw::Case;
use faultwright::scenario::load::{Loaded, demo};
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::event::Event;
use faultwright::wording::step_parser;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

/// Points that careful work must reach.
const GOOD_WORK: f64 = 70.0;
/// How many solutions there are; a file that went missing would otherwise pass unseen.
const SOLUTIONS: usize = 10;

fn scenario() -> &'static Arc<Loaded> {
    static SCENARIO: OnceLock<Arc<Loaded>> = OnceLock::new();
    SCENARIO.get_or_init(|| Arc::new(demo().unwrap()))
}

/// What might be the truth, begun once: every case of the scenario has the same worlds.
fn worlds() -> Worlds {
    static WORLDS: OnceLock<Worlds> = OnceLock::new();
    WORLDS
        .get_or_init(|| {
            let briefing = Arc::new(scenario().briefing());
            Worlds::begin(&briefing, &suppositions(scenario()), &|_, _| {}).unwrap()
        })
        .clone()
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/solutions")
}

fn seeds() -> Vec<u64> {
    let mut seeds: Vec<u64> = fs::read_dir(folder())
        .unwrap()
        .map(|entry| {
            let name = entry.unwrap().file_name().into_string().unwrap();
            let number = name.strip_prefix("seed-").and_then(|name| name.strip_suffix(".steps"));
            number.and_then(|number| number.parse().ok()).unwrap_or_else(|| {
                panic!("tests/solutions/{name} is not called after a seed: seed-NN.steps")
            })
        })
        .collect();
    seeds.sort_unstable();
    seeds
}

/// Takes the steps of a file; none may be refused, since nobody tries what cannot be done twice in
/// a written solution.
fn work(seed: u64) -> (Case, Session) {
    let case = deal(scenario(), seed).unwrap();
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
    let file = format!("seed-{seed:02}.steps");
    let text = fs::read_to_string(folder().join(&file)).unwrap();
    for (number, line) in (1..).zip(text.lines()) {
        let step = step_parser::parse(line, &case.briefing)
            .unwrap_or_else(|problem| panic!("{file}:{number}: {line}: {problem:?}"));
        if let Some(step) = step {
            let events = session.take(&step).unwrap();
            let refused = events.iter().find(|event| matches!(event, Event::Refused { .. }));
            assert!(refused.is_none(), "{file}:{number}: {line}: {refused:?}");
        }
    }
    (case, session)
}

fn judge(case: &Case, session: &Session) -> Debrief {
    debrief(session, case.hidden.faults.clone(), worlds(), &case.rubric, &|_, _| {}).unwrap()
}

/// The weight that the expert gives in the end to what the remedies of the truth take away, no more
/// and no less, and the greatest weight of anything else.
fn weight_of_truth(judged: &Debrief, truth: &[FaultName]) -> (f64, f64) {
    let alike = |one: &FaultName, other: &FaultName| {
        Remedy::of(one).iter().any(|remedy| remedy.fixes(other))
    };
    let (mut right, mut wrong) = (0.0_f64, 0.0_f64);
    for (faults, weight) in &judged.review.at_end {
        let is_right = truth.len() == faults.len()
            && truth.iter().all(|one| faults.iter().any(|other| alike(one, other)));
        if is_right {
            right += weight;
        } else {
            wrong = wrong.max(*weight);
        }
    }
    (right, wrong)
}

/// Everything that is wrong with the outcome of one solution.
fn complaints(seed: u64) -> Vec<String> {
    let (case, session) = work(seed);
    let judged = judge(&case, &session);
    let mut wrong = Vec::new();
    let mut expect = |holds: bool, text: String| {
        if !holds {
            wrong.push(format!("seed {seed}: {text}"));
        }
    };
    expect(
        !judged.aftermath.comes_back(),
        format!("the customer comes back: {:?}", judged.aftermath),
    );
    let proved: BTreeSet<ProofPart> = judged
        .marks
        .iter()
        .flat_map(|mark| &mark.remarks)
        .filter(|remark| remark.good)
        .filter_map(|remark| match remark.about {
            About::Proof(part) => Some(part),
            _ => None,
        })
        .collect();
    let all = BTreeSet::from(ProofPart::ALL);
    expect(proved == all, format!("no proof of {:?}", all.difference(&proved).collect::<Vec<_>>()));
    expect(judged.critical.is_empty(), format!("critical: {:?}", judged.critical));
    expect(judged.passed, "not passed".to_owned());
    expect(judged.total > GOOD_WORK, format!("{:.1} points: {:?}", judged.total, judged.marks));
    let truth: Vec<_> = case.hidden.faults.iter().map(|fault| fault.name.clone()).collect();
    let (right, other) = weight_of_truth(&judged, &truth);
    expect(
        right > other,
        format!("{truth:?} has {right:.3} in the end, something else {other:.3}"),
    );
    wrong
}

#[test]
fn verif_careful_work_mends_proves_and_passes_every_case() {
    let seeds = seeds();
    assert_eq!(seeds.len(), SOLUTIONS, "solutions of {seeds:?}");
    let (first, second) = seeds.split_at(seeds.len() / 2);
    // Two halves side by side; they are joined in the order of the seeds.
    let wrong: Vec<String> = std::thread::scope(|scope| {
        let halves = [first, second].map(|half| {
            scope.spawn(move || half.iter().flat_map(|seed| complaints(*seed)).collect::<Vec<_>>())
        });
        halves.into_iter().flat_map(|half| half.join().unwrap()).collect()
    });
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn verif_solutions_cover_every_kind_of_fault_and_none() {
    let kinds: BTreeSet<_> = seeds()
        .into_iter()
        .map(|seed| deal(scenario(), seed).unwrap().hidden.faults.first().map(|f| f.name.kind))
        .collect();
    let mut wanted: BTreeSet<_> =
        scenario().scenario.faults.iter().map(|prior| Some(prior.kind)).collect();
    wanted.insert(None);
    assert_eq!(kinds, wanted);
}

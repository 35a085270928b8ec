//! Cases of the shipped scenarios solved as a careful technician solves them.
//!
//! `tests/solutions/seed-NN.steps` holds the steps of one case of Market Hill each; every kind of
//! fault is among them, and a vehicle without any. Those of every other scenario are in a folder that
//! is called after it. Whoever changes physics, prices or marks sees here whether honest work is still
//! rewarded.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::assessment::debrief::{Debrief, debrief};
use faultwright::assessment::mark::{About, ProofPart};
use faultwright::assessment::rubric::MarkCategory;
use faultwright::faults::{FaultKind, FaultName};
use faultwright::reasoning::remedy::Remedy;
use faultwright::reasoning::world::Worlds;
use faultwright::scenario::deal::deal;
use faultwright::scenario::draw::Case;
use faultwright::scenario::load::{Loaded, ScenarioText, demo, load, read};
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::event::Event;
use faultwright::session::step::Ending;
use faultwright::wording::step_parser;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

/// Points that careful work must reach.
const GOOD_WORK: f64 = 70.0;
/// How many solutions there are; a file that went missing would otherwise pass unseen.
const SOLUTIONS: usize = 10;
/// The same of the harder scenario.
const HARDER_SOLUTIONS: usize = 6;

/// A scenario with its solutions.
#[derive(Clone)]
struct Book {
    scenario: Arc<Loaded>,
    /// What might be the truth, begun once: every case of the scenario has the same worlds.
    worlds: Arc<OnceLock<Worlds>>,
    folder: PathBuf,
}

impl Book {
    fn of(scenario: Loaded, folder: &str) -> Self {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
        Self { scenario: Arc::new(scenario), worlds: Arc::default(), folder }
    }

    fn worlds(&self) -> Worlds {
        self.worlds
            .get_or_init(|| {
                let briefing = Arc::new(self.scenario.briefing());
                Worlds::begin(&briefing, &suppositions(&self.scenario), &|_, _| {}).unwrap()
            })
            .clone()
    }
}

fn market_hill() -> &'static Book {
    static BOOK: OnceLock<Book> = OnceLock::new();
    BOOK.get_or_init(|| Book::of(demo().unwrap(), "tests/solutions"))
}

fn glasshouse_lane() -> &'static Book {
    static BOOK: OnceLock<Book> = OnceLock::new();
    BOOK.get_or_init(|| {
        let loaded = load(Path::new("glasshouse-lane")).unwrap();
        Book::of(loaded, "tests/solutions/glasshouse-lane")
    })
}

fn seeds(book: &Book) -> Vec<u64> {
    let mut seeds: Vec<u64> = fs::read_dir(&book.folder)
        .unwrap()
        .map(Result::unwrap)
        .filter(|entry| !entry.file_type().unwrap().is_dir())
        .map(|entry| {
            let name = entry.file_name().into_string().unwrap();
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
fn work(book: &Book, seed: u64) -> (Case, Session) {
    let case = deal(&book.scenario, seed).unwrap();
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
    let file = format!("seed-{seed:02}.steps");
    let text = fs::read_to_string(book.folder.join(&file)).unwrap();
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

fn judge(book: &Book, case: &Case, session: &Session) -> Debrief {
    let faults = case.hidden.faults.clone();
    debrief(session, faults, book.worlds(), &case.rubric, &|_, _| {}).unwrap()
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
fn complaints(book: &Book, seed: u64) -> Vec<String> {
    let (case, session) = work(book, seed);
    let judged = judge(book, &case, &session);
    let mut wrong = Vec::new();
    let mut expect = |holds: bool, text: String| {
        if !holds {
            wrong.push(format!("{}, seed {seed}: {text}", book.scenario.text.scenario_name));
        }
    };
    // What the customer has declined stays, and has a proof of its own.
    let was_declined = session.ending() == Some(Ending::Declined);
    expect(
        was_declined || !judged.aftermath.comes_back(),
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
    let all = if was_declined {
        BTreeSet::from([ProofPart::Recorded, ProofPart::Cleared, ProofPart::Declined])
    } else {
        BTreeSet::from(ProofPart::ALL)
    };
    expect(proved == all, format!("no proof of {:?}", all.difference(&proved).collect::<Vec<_>>()));
    expect(judged.critical.is_empty(), format!("critical: {:?}", judged.critical));
    expect(judged.passed, "not passed".to_owned());
    expect(judged.total > GOOD_WORK, format!("{:.1} points: {:?}", judged.total, judged.marks));
    let truth: Vec<_> = case.hidden.faults.iter().map(|fault| fault.name.clone()).collect();
    let (right, other) = weight_of_truth(&judged, &truth);
    if truth.len() > 1 {
        // Each part was mended on evidence, a fuse with the wire that blew it, or declined.
        let repair = judged.marks.iter().find(|mark| mark.category == MarkCategory::Repair);
        expect(repair.is_some_and(|mark| mark.share > 0.999), format!("repair: {repair:?}"));
    }
    expect(
        right > other,
        format!("{truth:?} has {right:.3} in the end, something else {other:.3}"),
    );
    wrong
}

#[test]
fn verif_careful_work_mends_proves_and_passes_every_case() {
    all_are_good(market_hill(), SOLUTIONS);
}

#[test]
fn verif_careful_work_mends_what_comes_together_or_comes_and_goes() {
    let book = glasshouse_lane();
    all_are_good(book, HARDER_SOLUTIONS);
    let dealt = seeds(book).into_iter().map(|seed| deal(&book.scenario, seed).unwrap());
    let faults: Vec<_> = dealt.map(|case| case.hidden.faults).collect();
    assert!(faults.iter().any(|faults| faults.len() > 1));
    let comes_and_goes = [FaultKind::LooseContact, FaultKind::HotContact];
    assert!(faults.iter().flatten().any(|fault| comes_and_goes.contains(&fault.name.kind)));
}

/// Every other scenario that the program carries has solutions too, each in a folder of its own.
#[test]
fn verif_careful_work_solves_every_scenario_of_the_library() {
    let at_length = ["market-hill", "glasshouse-lane"];
    let others = ScenarioText::carried().into_iter().filter_map(|text| {
        let name = text.scenario_name.clone();
        let is_other = !at_length.contains(&name.as_str());
        is_other.then(|| Book::of(read(text).unwrap(), &format!("tests/solutions/{name}")))
    });
    let worked: Vec<(Book, u64)> = others
        .flat_map(|book| {
            let seeds = seeds(&book);
            assert!(!seeds.is_empty(), "no solution in {}", book.folder.display());
            seeds.into_iter().map(move |seed| (book.clone(), seed))
        })
        .collect();
    none_is_wrong(&worked.iter().map(|(book, seed)| (book, *seed)).collect::<Vec<_>>());
}

fn all_are_good(book: &Book, count: usize) {
    let seeds = seeds(book);
    assert_eq!(seeds.len(), count, "solutions of {seeds:?}");
    none_is_wrong(&seeds.into_iter().map(|seed| (book, seed)).collect::<Vec<_>>());
}

fn none_is_wrong(solutions: &[(&Book, u64)]) {
    let (first, second) = solutions.split_at(solutions.len() / 2);
    // Two halves side by side; they are joined in the order of the solutions.
    let wrong: Vec<String> = std::thread::scope(|scope| {
        let halves = [first, second].map(|half| {
            scope.spawn(move || {
                half.iter().flat_map(|(book, seed)| complaints(book, *seed)).collect::<Vec<_>>()
            })
        });
        halves.into_iter().flat_map(|half| half.join().unwrap()).collect()
    });
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn verif_solutions_cover_every_kind_of_fault_and_none() {
    let book = market_hill();
    let kinds: BTreeSet<_> = seeds(book)
        .into_iter()
        .map(|seed| deal(&book.scenario, seed).unwrap().hidden.faults.first().map(|f| f.name.kind))
        .collect();
    let mut wanted: BTreeSet<_> =
        book.scenario.scenario.faults.iter().map(|prior| Some(prior.kind)).collect();
    wanted.insert(None);
    assert_eq!(kinds, wanted);
}

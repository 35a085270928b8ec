//! The expert on the shipped scenarios: how long it is until it knows what to do first, and how near its
//! bounds come. Readings have their tolerance and parts their spread: what a test can show are the groups
//! of worlds that these leave apart.

use super::stopwatch::{of_this_thread, once, shared};
use faultwright::reasoning::belief::Belief;
use faultwright::reasoning::expert::Expert;
use faultwright::reasoning::plan::budget::{Bounds, Enough};
use faultwright::reasoning::prospect::{First, Prospect};
use faultwright::reasoning::world::Worlds;
use faultwright::reasoning::world_store::WorldStore;
use faultwright::scenario::load::{Loaded, ScenarioText, read};
use faultwright::scenario::suppose::suppositions;
use faultwright::session::setup::Briefing;
use faultwright::vehicle::stroke_memo::StrokeMemo;
use std::num::NonZeroUsize;
use std::sync::Arc;
use std::time::Duration;

/// Work after which the clock is asked.
const SLICE: Enough = Enough { relative: 1e-9, absolute: 1e-9, situations: 1_000_000, work: 2_000 };
const GOAL: Duration = Duration::from_millis(100);
const LATE: Duration = Duration::from_secs(2);

/// Times are the processor's: of the process over the number of threads where they share the work, of the
/// thread where one does it alone.
pub fn show() {
    for text in ScenarioText::carried() {
        let loaded = Arc::new(read(text).expect("a carried scenario"));
        let folder = tempfile::tempdir().expect("a folder to throw away");
        let store = WorldStore::in_folder(folder.path().to_owned());
        let briefing = Arc::new(loaded.briefing());
        let (kept, worlds) = begin(&store, &loaded, &briefing);
        let (read, known) = begin(&store, &loaded, &briefing);
        let size = std::fs::read_dir(folder.path()).expect("its files").flatten();
        let bytes: u64 = size.filter_map(|file| Some(file.metadata().ok()?.len())).sum();
        let (name, count) = (&loaded.text.scenario_name, worlds.worlds.len());
        println!("\n{name}: {count} worlds begun, asked and kept in {}", said(kept));
        println!("  read again in {} ({} kB)", said(read), bytes / 1_000);
        let worlds = forgetful(worlds);
        for (what, worlds) in [("cold", worlds), ("with kept worlds", known)] {
            let mut expert = Expert::new(Arc::clone(&briefing)).with_tests_for(&worlds);
            let belief = Belief::prior(worlds);
            let tests = expert.probes().len();
            let (prepared, prospect) = clock(|| expert.prospect(&belief).expect("a problem"));
            let prospect = prospect.expect("a vehicle that the planner has room for");
            print!("  first decision {what}, {tests} tests: problem made in {}", said(prepared));
            search(prospect, prepared);
            let (whole, value) = once(|| expert.value(&belief).expect("a value"));
            println!(
                "    the value that debriefs use: {} in {} more",
                between(value.cost),
                said(whole)
            );
        }
    }
}

/// The same worlds without what was foreseen, and with no stroke remembered.
fn forgetful(mut worlds: Worlds) -> Worlds {
    let strokes = Arc::new(StrokeMemo::default());
    for world in &mut worlds.worlds {
        world.session.share_strokes(&strokes);
    }
    Worlds::of(worlds.worlds, worlds.priors)
}

fn begin(store: &WorldStore, loaded: &Arc<Loaded>, briefing: &Arc<Briefing>) -> (Duration, Worlds) {
    let supposed = suppositions(loaded);
    let (time, begun) = clock(|| store.begin(briefing, &supposed, &|_, _| {}).expect("worlds"));
    (time, begun.0)
}

/// How long something takes that all threads share.
fn clock<T>(work: impl FnOnce() -> T) -> (Duration, T) {
    let threads = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
    shared(u32::try_from(threads).unwrap_or(u32::MAX), work)
}

/// Searches for two seconds, and says when the step that is best in the end was first found and how near the bounds
/// were then, after a tenth of a second, and at last.
fn search(mut prospect: Prospect, prepared: Duration) {
    let began = of_this_thread();
    let mut found: Option<(First, Duration, Bounds)> = None;
    let mut within = None;
    let mut at_goal = None;
    loop {
        let bounds = prospect.run(&SLICE);
        let spent = of_this_thread().saturating_sub(began);
        let first = prospect.first();
        if found.as_ref().is_none_or(|(best, ..)| *best != first) {
            found = Some((first, spent, bounds));
        }
        if prepared + spent <= GOAL {
            at_goal = Some(bounds);
        }
        if within.is_none() && bounds.gap() <= 0.01 * bounds.upper {
            within = Some(spent);
        }
        if spent >= LATE || bounds.gap() <= 1e-9 * bounds.upper {
            if let Some((_, at, then)) = found {
                let all = prepared + at;
                let met = if all <= GOAL { "met" } else { "NOT MET" };
                println!(
                    ", best step found {} later at {}: {} in all, goal 100 ms {met}",
                    said(at),
                    between(then),
                    said(all)
                );
            }
            if let Some(early) = at_goal {
                println!("    after 100 ms in all {}", between(early));
            }
            let met =
                within.map_or("NOT MET".to_owned(), |time| format!("met after {}", said(time)));
            println!("    after {}: {}, goal 1 % in 2 s {met}", said(spent), between(bounds));
            return;
        }
    }
}

fn said(time: Duration) -> String {
    format!("{:.0} ms", 1e3 * time.as_secs_f64())
}

fn between(bounds: Bounds) -> String {
    super::said(bounds)
}

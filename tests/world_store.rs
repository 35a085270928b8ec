//! Worlds that are kept on disk: with them and without them all is the same to the last bit, and no file
//! in the folder, whatever it holds, changes that.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::reasoning::review::review;
use faultwright::reasoning::world::{Supposition, Worlds};
use faultwright::reasoning::world_store::WorldStore;
use faultwright::scenario::load::demo;
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::{Entry, Session};
use faultwright::session::setup::Briefing;
use faultwright::session::step::Step;
use faultwright::units::Celsius;
use faultwright::wording::step_parser;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use tempfile::TempDir;

/// The briefing of the scenario that the program carries, and every `nth` of its suppositions.
fn few(nth: usize) -> (Arc<Briefing>, Vec<Supposition>) {
    let scenario = demo().unwrap();
    let supposed = suppositions(&scenario).into_iter().step_by(nth).collect();
    (Arc::new(scenario.briefing()), supposed)
}

/// Everything of worlds: weights by their bits, vehicles by their debug text, which writes every number
/// so that it can be read back to the last bit.
fn told(worlds: &Worlds) -> Vec<String> {
    let all = worlds.worlds.iter().zip(&worlds.priors);
    all.map(|(world, prior)| {
        let (faults, state) = (&world.faults, world.session.truth().state());
        format!("{faults:?} {} {:x} {state:?}", world.variant, prior.to_bits())
    })
    .collect()
}

/// What a store gives, how often it told of progress, and whether it could keep it.
fn begun(
    store: &WorldStore,
    briefing: &Arc<Briefing>,
    supposed: &[Supposition],
) -> (Worlds, usize, bool) {
    let heard = AtomicUsize::new(0);
    let count = |_, _| {
        heard.fetch_add(1, Ordering::Relaxed);
    };
    let (worlds, not_kept) = store.begin(briefing, supposed, &count).unwrap();
    (worlds, heard.into_inner(), not_kept.is_none())
}

fn only_file(folder: &Path) -> PathBuf {
    let files: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|it| it.unwrap().path()).collect();
    assert_eq!(files.len(), 1, "{files:?}");
    files[0].clone()
}

/// A session in which something of everything is asked: strokes, codes, readings, a road.
fn log(briefing: &Arc<Briefing>, supposed: &Supposition) -> Vec<Entry> {
    let mut session = Session::begin(Arc::clone(briefing), supposed.hidden.clone()).unwrap();
    let text = "dipstick\nkey on\nread codes\nread test-results\ncommand intake-valve on\n\
                command intake-valve off\nkey off\ndrive town-loop\nkey off\nread codes";
    for line in text.lines() {
        if let Some(step) = step_parser::parse(line.trim(), briefing).unwrap() {
            session.take(&step).unwrap();
        }
    }
    session.take(&Step::Dipstick).unwrap();
    session.log().to_vec()
}

#[test]
fn replay_kept_worlds_are_those_begun_anew_and_so_is_every_review() {
    let (briefing, supposed) = few(17);
    let folder = TempDir::new().unwrap();
    let store = WorldStore::in_folder(folder.path().join("not there yet"));
    let plain = Worlds::begin(&briefing, &supposed, &|_, _| {}).unwrap();
    let first = begun(&store, &briefing, &supposed);
    let second = begun(&store, &briefing, &supposed);
    assert!(plain.worlds.len() > 3, "too few worlds");
    // Begun one by one, then read in one go.
    assert_eq!((first.1, second.1), (supposed.len(), 1));
    assert!(first.2 && second.2);
    assert_eq!(told(&first.0), told(&plain));
    assert_eq!(told(&second.0), told(&plain));
    let log = log(&briefing, &supposed[2]);
    let reviewed = |worlds| format!("{:?}", review(&briefing, worlds, &log, &|_, _| {}).unwrap());
    let wanted = reviewed(plain);
    assert_eq!(reviewed(first.0), wanted);
    assert_eq!(reviewed(second.0), wanted);
}

#[test]
fn limit_a_file_that_is_not_whole_and_ours_is_written_anew() {
    let (briefing, supposed) = few(60);
    let folder = TempDir::new().unwrap();
    let store = WorldStore::in_folder(folder.path().to_owned());
    let wanted = told(&begun(&store, &briefing, &supposed).0);
    let path = only_file(folder.path());
    let whole = fs::read(&path).unwrap();
    let changed = |place: usize| {
        let mut bytes = whole.clone();
        bytes[place] ^= 1;
        bytes
    };
    let line = whole.iter().position(|byte| *byte == b'\n').unwrap();
    let older = String::from_utf8(whole[..=line].to_vec()).unwrap().replace("worlds 1", "worlds 0");
    let spoilt = [
        Vec::new(),
        b"\n".to_vec(),
        vec![0xff; 4_096],
        whole[..line].to_vec(),
        whole[..=line].to_vec(),
        whole[..whole.len() - 1].to_vec(),
        [&whole[..], &[0]].concat(),
        changed(0),
        changed(line - 70),
        changed(line - 1),
        changed(line + 1),
        changed(whole.len() / 2),
        changed(whole.len() - 1),
        [older.as_bytes(), &whole[line + 1..]].concat(),
    ];
    for (number, bytes) in spoilt.into_iter().enumerate() {
        fs::write(&path, bytes).unwrap();
        let (worlds, heard, _) = begun(&store, &briefing, &supposed);
        assert_eq!(heard, supposed.len(), "believed {number}");
        assert_eq!(told(&worlds), wanted, "{number}");
        assert!(fs::read(&path).unwrap() == whole, "not mended {number}");
    }
    assert_eq!(begun(&store, &briefing, &supposed).1, 1);
}

/// What is worked out of other content has another name, and a file under a name that is not its own is not
/// believed.
#[test]
fn limit_worlds_of_another_scenario_are_not_taken() {
    let (briefing, supposed) = few(60);
    let mut warmer = Briefing::clone(&briefing);
    warmer.workshop_temperature = Celsius(21.0);
    let warmer = Arc::new(warmer);
    let (here, there) = (TempDir::new().unwrap(), TempDir::new().unwrap());
    let store = |folder: &TempDir| WorldStore::in_folder(folder.path().to_owned());
    let wanted = told(&begun(&store(&here), &briefing, &supposed).0);
    let other = told(&begun(&store(&there), &warmer, &supposed).0);
    assert_ne!(wanted, other);
    let (ours, theirs) = (only_file(here.path()), only_file(there.path()));
    assert_ne!(ours.file_name(), theirs.file_name());
    fs::copy(&theirs, &ours).unwrap();
    let (worlds, heard, _) = begun(&store(&here), &briefing, &supposed);
    assert_eq!((heard, told(&worlds)), (supposed.len(), wanted));
}

#[test]
fn limit_worlds_that_cannot_be_kept_are_there_all_the_same() {
    let (briefing, supposed) = few(60);
    let folder = TempDir::new().unwrap();
    let file = folder.path().join("a file");
    fs::write(&file, "in the way").unwrap();
    let wanted = told(&begun(&WorldStore::none(), &briefing, &supposed).0);
    let (worlds, _, is_kept) =
        begun(&WorldStore::in_folder(file.join("worlds")), &briefing, &supposed);
    assert!(!is_kept);
    assert_eq!(told(&worlds), wanted);
    assert_eq!(fs::read(&file).unwrap(), b"in the way");
}

#[test]
fn limit_the_folder_does_not_grow_without_end() {
    let (briefing, supposed) = few(200);
    let folder = TempDir::new().unwrap();
    for number in 0..40 {
        fs::write(folder.path().join(format!("{number}.worlds")), "old").unwrap();
    }
    let strange = folder.path().join("somebody's own file");
    fs::write(&strange, "kept").unwrap();
    let store = WorldStore::in_folder(folder.path().to_owned());
    assert!(begun(&store, &briefing, &supposed).2);
    let left = fs::read_dir(folder.path()).unwrap().count();
    assert_eq!(left, 24 + 1, "files that are kept, and what is not ours");
    assert!(strange.exists());
    assert_eq!(begun(&store, &briefing, &supposed).1, 1, "the newest was removed");
}

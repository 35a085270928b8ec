//! A sealed case in the window: begun from its hand-out, gone on with, handed over, and nothing told of it.

use super::*;
use crate::numerics::digest::Digest;
use crate::scenario::seal::{CHANCE, open, seal, text};
use crate::workshop::view::front::ScenarioView;

const SEED: u64 = 4_242_424_242_424_243;
const PASSPHRASE: &str = "correct horse battery";

/// The hand-out of a case, in a folder.
fn handed_out(folder: &Path) -> PathBuf {
    let loaded = Arc::new(load::read(ScenarioText::demo()).unwrap());
    let case = deal(&loaded, SEED).unwrap();
    let file = folder.join("03-anna.case");
    fs::write(&file, text(&seal(&case, "Anna", PASSPHRASE, &[7; CHANCE]).unwrap())).unwrap();
    file
}

#[test]
fn a_sealed_case_is_begun_worked_and_handed_over_and_stays_sealed() {
    let folder = tempfile::tempdir().unwrap();
    let file = handed_out(folder.path());
    let sessions = folder.path().join("sessions");
    fs::create_dir(&sessions).unwrap();
    let mut desk = desk_on(&sessions);
    let carried = front(&desk).scenarios.len();
    act(&mut desk, Action::TypeSeed("no number, and nobody minds".to_owned()));
    act(&mut desk, Action::TypeScenarioFile(file.display().to_string()));
    act(&mut desk, Action::ReadScenarioFile);
    assert_eq!(desk.view().notice, None);
    let view = front(&desk);
    let ScenarioView { level, sealed_for, .. } = &view.scenarios[carried];
    assert_eq!((level, sealed_for.as_deref()), (&None, Some("Anna")));
    assert!(view.is_sealed() && view.is_assessed && view.must_be_assessed());

    act(&mut desk, Action::Begin);
    assert!(case(&desk).is_assessed);
    assert!(case(&desk).kept_at.ends_with("03-anna-1.session"), "{}", case(&desk).kept_at);
    take(&mut desk, "hint question");
    assert!(case(&desk).log[0].lines.iter().any(|line| line.tone == Tone::Refused));
    act(&mut desk, Action::ToFront);
    let listed = &front(&desk).kept.as_ref().unwrap()[0];
    assert_eq!(listed.state, KeptState::Unfinished { steps: 1, is_assessed: true });

    // Another day.
    let path = listed.path.clone();
    let mut desk = desk_on(&sessions);
    act(&mut desk, Action::Open(path.clone()));
    take(&mut desk, "dipstick");
    take(&mut desk, "hand over declined");
    let receipt = front_with_receipt(&desk, &path);
    assert_eq!(front(&desk).kept.as_ref().unwrap()[0].state, KeptState::Sealed { steps: 3 });
    // And once more, for whoever did not write it down.
    let mut desk = desk_on(&sessions);
    assert_eq!(front(&desk).handed_over, None);
    act(&mut desk, Action::Open(path.clone()));
    assert_eq!(front_with_receipt(&desk, &path), receipt);

    // What is on the disk is the case that was sealed, worked without its passphrase.
    let kept = read(&path, ReadMode::Strict).unwrap();
    let sealed = kept.case.sealed.as_deref().unwrap();
    assert_eq!(open(sealed, PASSPHRASE).unwrap().seed, SEED);
    let written = fs::read_to_string(&path).unwrap();
    assert!(!written.contains(&SEED.to_string()) && !written.contains("market-hill"));
}

/// The front page says to whom the file goes and by what it is known again; it says nothing else of the case.
fn front_with_receipt(desk: &Desk, path: &Path) -> Digest {
    assert_eq!(desk.view().notice, None, "nothing went wrong");
    let receipt = read(path, ReadMode::Strict).unwrap().last_chain();
    let said = front(desk).handed_over.as_ref().expect("nothing is said after the hand-over");
    assert!(said.contains(&path.display().to_string()), "{said}");
    assert!(said.contains(&receipt.short()), "{said} has no {}", receipt.short());
    assert!(!said.contains(&SEED.to_string()), "{said}");
    receipt
}

#[test]
fn a_hand_out_that_cannot_be_used_is_told_of_and_nothing_is_begun() {
    let folder = tempfile::tempdir().unwrap();
    let file = handed_out(folder.path());
    let good = fs::read_to_string(&file).unwrap();
    let mut desk = desk_on(folder.path());
    let carried = front(&desk).scenarios.len();
    for (text, said) in [
        ("{\"format\": \"something else\", \"version\": 1}".to_owned(), "is no sealed case"),
        (good.replace("\"version\": 1", "\"version\": 9"), "in version 9"),
        ("{".to_owned(), "is no sealed case"),
    ] {
        fs::write(&file, text).unwrap();
        act(&mut desk, Action::TypeScenarioFile(file.display().to_string()));
        act(&mut desk, Action::ReadScenarioFile);
        let notice = desk.view().notice.unwrap_or_default();
        assert!(notice.contains(said) && notice.contains("03-anna.case"), "{notice}");
        assert_eq!(front(&desk).scenarios.len(), carried);
        act(&mut desk, Action::CloseNotice);
    }

    // Altered inside: it is listed, and refused when it is to be dealt.
    let start = good.find("\"case\": \"").unwrap() + 9;
    let other = if &good[start..=start] == "0" { "1" } else { "0" };
    fs::write(&file, format!("{}{other}{}", &good[..start], &good[start + 1..])).unwrap();
    act(&mut desk, Action::TypeScenarioFile(file.display().to_string()));
    act(&mut desk, Action::ReadScenarioFile);
    act(&mut desk, Action::Begin);
    let notice = desk.view().notice.unwrap_or_default();
    assert!(notice.contains("03-anna.case"), "{notice}");
    front(&desk);
}

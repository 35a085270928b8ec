//! A case written by actions alone: begun, changed in forms and text, saved, dealt and worked.

use crate::scenario::deal::deal;
use crate::scenario::load;
use crate::scenario::schema::Level;
use crate::session::attempt::Session;
use crate::session::setup::Approval;
use crate::session::shelf::PartGrade;
use crate::session::toolbox::{TimeLimit, Tool};
use crate::units::{Minutes, Money};
use crate::vehicle::spec::Id;
use crate::wording::step_parser::parse;
use crate::workshop::desk::tests::{act, desk_on, settle, surroundings, take};
use crate::workshop::desk::{Desk, Surroundings};
use crate::workshop::view::Page;
use crate::workshop::view::action::Action;
use crate::workshop::view::writer::form::{Choice, Deed, Field, Row};
use crate::workshop::view::writer::{
    Asked, HardnessView, Section, Side, WriterAction, WriterDoorView, WriterView,
};
use std::fs;
use std::path::Path;
use std::sync::Arc;

fn door(desk: &Desk) -> &WriterDoorView {
    match desk.view().page {
        Page::WriterDoor(view) => view,
        page => panic!("not where writing is begun: {}", page.name()),
    }
}

fn written(desk: &Desk) -> &WriterView {
    match desk.view().page {
        Page::Writer(view) => view,
        page => panic!("nothing is written: {}", page.name()),
    }
}

fn wanted(desk: &mut Desk, wanted: WriterAction) {
    act(desk, Action::Writer(wanted));
}

fn flat(rows: &[Row]) -> Vec<Row> {
    let inner = |row: &Row| match row {
        Row::Beside(rows) => flat(rows),
        other => vec![other.clone()],
    };
    rows.iter().flat_map(inner).collect()
}

fn field(desk: &Desk, name: &str) -> Field {
    let found = flat(&written(desk).rows).into_iter().find_map(|row| match row {
        Row::Field(field) if field.name == name => Some(field),
        _ => None,
    });
    found.unwrap_or_else(|| panic!("no field {name}"))
}

fn fill(desk: &mut Desk, name: &str, text: &str) {
    let path = field(desk, name).path;
    wanted(desk, WriterAction::Fill { path, text: text.to_owned() });
}

fn choice(desk: &Desk, name: &str) -> Choice {
    let found = flat(&written(desk).rows).into_iter().find_map(|row| match row {
        Row::Choice(choice) if choice.name == name => Some(choice),
        _ => None,
    });
    found.unwrap_or_else(|| panic!("no choice {name}"))
}

fn pick(desk: &mut Desk, name: &str, option: &str) {
    let Choice { path, options, .. } = choice(desk, name);
    let value = options.into_iter().find(|(_, said)| said == option);
    let value = value.unwrap_or_else(|| panic!("{name} has no {option}")).0;
    wanted(desk, WriterAction::Do(Deed::Set { path, value }));
}

fn press(desk: &mut Desk, name: &str) {
    let deeds = flat(&written(desk).rows).into_iter().find_map(|row| match row {
        Row::Deeds(deeds) => deeds.into_iter().find(|(said, _)| said == name),
        _ => None,
    });
    let (_, deed) = deeds.unwrap_or_else(|| panic!("no button {name}"));
    wanted(desk, WriterAction::Do(deed));
}

/// A desk that keeps what is written in a folder, with a small case begun.
fn writing(folder: &Path) -> Desk {
    let mut desk = desk_with_drafts(folder);
    wanted(&mut desk, WriterAction::Open);
    wanted(&mut desk, WriterAction::Begin(0));
    desk
}

fn desk_with_drafts(folder: &Path) -> Desk {
    let settings_file = Some(folder.join("kept/settings.json"));
    let around = Surroundings { settings_file, ..surroundings(&folder.join("sessions")) };
    let mut desk = Desk::new(around, Arc::new(|| {}));
    settle(&mut desk);
    desk
}

fn save_at(desk: &mut Desk, path: &Path) {
    wanted(desk, WriterAction::AskPath);
    wanted(desk, WriterAction::TypePath(path.display().to_string()));
    wanted(desk, WriterAction::SaveThere);
}

/// What `check` warns of is shown too, beside a text without problems, and stops nothing.
#[test]
fn what_is_doubtful_is_shown_and_stops_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    // The small case has no note for instructors, and says so.
    let begun = written(&desk).doubts.clone();
    assert_eq!(begun.len(), 1, "{begun:?}");
    fill(&mut desk, "One sentence for whoever chooses it", "");
    let view = written(&desk);
    assert_eq!(view.problems.as_deref(), Some([].as_slice()));
    assert_eq!(view.doubts.len(), 2, "{:?}", view.doubts);
    let doubt = view.doubts.iter().find(|doubt| !begun.contains(doubt)).unwrap();
    assert!(doubt.place.is_some() && doubt.said.contains("about"), "{doubt:?}");
    assert!(view.trial.can_deal);
    wanted(&mut desk, WriterAction::Undo);
    assert_eq!(written(&desk).doubts, begun);
}

/// Tools, time, the customer's limit and other parts are set and taken back by forms alone; what a newer version of the
/// format brought raises the version that the text names.
#[test]
fn a_case_gets_its_terms_by_forms_alone() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    let begun = written(&desk).text.clone();
    press(&mut desk, "Leave out the scope");
    press(&mut desk, "Leave out the power lead");
    press(&mut desk, "Put the scope back in");
    press(&mut desk, "Set a time limit");
    fill(&mut desk, "Working time (min)", "95");
    wanted(&mut desk, WriterAction::Show(Section::Job));
    press(&mut desk, "Let the customer set a limit");
    fill(&mut desk, "Limit", "120,50");
    wanted(&mut desk, WriterAction::Show(Section::Prices));
    fill(&mut desk, "An hour of waiting", "15");
    fill(&mut desk, "Wait for hd-4470-1 (min)", "90");
    press(&mut desk, "Add a used part");
    fill(&mut desk, "Part used-1: Friction of the spool (N)", "4");
    fill(&mut desk, "Part used-1: Price", "12");
    press(&mut desk, "Add a pattern part");
    pick(&mut desk, "Part pattern-1: Grade", "used");
    press(&mut desk, "Add a pattern part");
    press(&mut desk, "Remove: Part pattern-2");
    assert_eq!(written(&desk).problems.as_deref(), Some([].as_slice()));
    let path = folder.path().join("terms");
    save_at(&mut desk, &path);
    let scenario = load::load(&path.with_extension("ron")).unwrap().scenario;
    assert_eq!(scenario.version, 3);
    let lacks: Vec<Tool> = Tool::ALL.into_iter().filter(|it| !scenario.tools.has(*it)).collect();
    assert_eq!(lacks, [Tool::PowerLead]);
    assert_eq!(scenario.time_limit, TimeLimit::UpTo { minutes: Minutes(95) });
    assert_eq!(scenario.approval, Approval::UpTo { money: Money(12_050) });
    assert_eq!(scenario.shelf.waiting_per_hour, Money(15_00));
    assert_eq!(scenario.shelf.waits[&Id::from("hd-4470-1")], Minutes(90));
    let used = &scenario.shelf.others[&Id::from("used-1")];
    assert_eq!((used.grade, used.price, used.stiction_n), (PartGrade::Used, Money(12_00), 4.0));
    assert_eq!(scenario.shelf.others[&Id::from("pattern-1")].grade, PartGrade::Used);
    assert_eq!(scenario.shelf.others.len(), 2);
    for _ in 0..100 {
        wanted(&mut desk, WriterAction::Undo);
    }
    assert_eq!(written(&desk).text, begun);
}

#[test]
fn a_case_is_made_of_a_small_one_by_forms_alone_saved_dealt_and_worked() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    assert_eq!(written(&desk).problems.as_deref(), Some([].as_slice()));
    assert!(!written(&desk).is_changed);
    fill(&mut desk, "Title", "The \"quick\" one");
    fill(&mut desk, "One sentence for whoever chooses it", "Low oil, or a wire.");
    pick(&mut desk, "Level", "hard");
    wanted(&mut desk, WriterAction::Show(Section::Faults));
    press(&mut desk, "Fault 1: remove");
    press(&mut desk, "Fault 1: remove");
    pick(&mut desk, "Fault 1: Kind", "corroded pin");
    assert_eq!(written(&desk).problems.as_ref().unwrap().len(), 1);
    pick(&mut desk, "Fault 1: Place", "intake control pin");
    fill(&mut desk, "Fault 1: Weight", "2,5");
    fill(&mut desk, "Fault 1: Severity from", "0.5");
    press(&mut desk, "Add a fault");
    wanted(&mut desk, WriterAction::Show(Section::Job));
    press(&mut desk, "Add: History, line 2");
    fill(&mut desk, "History, line 2", "New battery last winter.");
    fill(&mut desk, "Asked since when and when", "Since yesterday.");
    wanted(&mut desk, WriterAction::Show(Section::Prices));
    fill(&mut desk, "Labour for an hour", "70.50");
    assert_eq!(written(&desk).problems.as_deref(), Some([].as_slice()));
    // The remarks of the text that it was begun with are all there.
    let remarks = |text: &str| text.lines().filter(|line| line.contains("//")).count();
    let starter = crate::scenario::writing::starters::starters()[0].text;
    assert_eq!(remarks(&written(&desk).text), remarks(starter));

    let path = folder.path().join("quick-one");
    save_at(&mut desk, &path);
    assert_eq!(desk.view().notice, None);
    assert!(!written(&desk).is_changed);
    assert_eq!(written(&desk).name, "quick-one.ron");
    let path = path.with_extension("ron");
    assert_eq!(fs::read_to_string(&path).unwrap(), written(&desk).text);
    let loaded = Arc::new(load::load(&path).unwrap());
    let scenario = &loaded.scenario;
    assert_eq!((scenario.title.as_str(), scenario.level), ("The \"quick\" one", Level::Hard));
    assert_eq!(scenario.faults.len(), 3);
    assert_eq!((scenario.faults[0].weight, scenario.faults[0].severity), (2.5, (0.5, 1.0)));
    assert_eq!(scenario.job.history[1], "New battery last winter.");
    assert_eq!(scenario.prices.labour_per_hour.0, 7_050);
    let case = deal(&loaded, 3).unwrap();
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
    let events = session.take(&parse("dipstick", &case.briefing).unwrap().unwrap()).unwrap();
    assert!(!events.is_empty());
}

#[test]
fn text_and_forms_follow_each_other_and_forms_rest_while_the_text_cannot_be_read() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    let first = written(&desk).text.clone();
    let changed = first.replace("My first case", "Typed");
    wanted(&mut desk, WriterAction::Type(changed.clone()));
    assert_eq!(field(&desk, "Title").text, "Typed");
    let broken = changed.replace("level: First,", "level: First");
    wanted(&mut desk, WriterAction::Type(broken.clone()));
    let view = written(&desk);
    assert!(!view.is_live);
    let problem = view.problems.as_ref().unwrap()[0].clone();
    let line = 1 + broken[..broken.find("vehicle:").unwrap()].matches('\n').count();
    assert_eq!(problem.place.map(|(line, _)| line), u32::try_from(line).ok());
    // What a form says now would stand in a text that it does not show.
    fill(&mut desk, "Title", "Never");
    press_first_choice(&mut desk);
    assert_eq!(written(&desk).text, broken);
    wanted(&mut desk, WriterAction::GoTo(problem.place.unwrap().0, problem.place.unwrap().1));
    let at = written(&desk).cursor.at;
    let before: String = broken.chars().take(at).collect();
    assert!(broken[before.len()..].trim_start().starts_with("vehicle:"), "{before}");
    while written(&desk).can.0 {
        wanted(&mut desk, WriterAction::Undo);
    }
    assert_eq!(written(&desk).text, first);
    assert!(written(&desk).is_live && !written(&desk).is_changed);
    while written(&desk).can.1 {
        wanted(&mut desk, WriterAction::Redo);
    }
    assert_eq!(written(&desk).text, broken);
}

fn press_first_choice(desk: &mut Desk) {
    let Choice { path, options, .. } = choice(desk, "Level");
    wanted(desk, WriterAction::Do(Deed::Set { path, value: options[2].0.clone() }));
}

#[test]
fn a_field_keeps_half_a_number_and_what_cannot_be_read_never_reaches_the_text() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    wanted(&mut desk, WriterAction::Show(Section::Faults));
    for (typed, weight, is_problem) in [
        ("", 1.0, true),
        ("1", 1.0, false),
        ("1.", 1.0, false),
        ("1.2", 1.2, false),
        ("x", 1.2, true),
    ] {
        fill(&mut desk, "Fault 1: Weight", typed);
        let field = field(&desk, "Fault 1: Weight");
        assert_eq!((field.text.as_str(), field.problem.is_some()), (typed, is_problem));
        let text = &written(&desk).text;
        let read = crate::scenario::writing::reading("t", text).unwrap();
        assert_eq!(read.faults[0].weight, weight, "{typed}");
    }
    // A number that the format has no room for would leave a text that no form can show.
    wanted(&mut desk, WriterAction::Show(Section::Marks));
    fill(&mut desk, "Repair", "70000");
    assert!(field(&desk, "Repair").problem.is_some());
    assert!(written(&desk).is_live);
    wanted(&mut desk, WriterAction::Show(Section::Decoys));
    press(&mut desk, "Add a code");
    fill(&mut desk, "Code 1: Code", "P03");
    assert!(field(&desk, "Code 1: Code").problem.is_some());
    fill(&mut desk, "Code 1: Code", "P0420");
    assert_eq!(field(&desk, "Code 1: Code").problem, None);
    assert!(written(&desk).text.contains("code: \"P0420\""));
    press(&mut desk, "Code 1: remove");
    press(&mut desk, "Add a sound valve with another winding");
    assert_eq!(written(&desk).problems.as_deref(), Some([].as_slice()));
    wanted(&mut desk, WriterAction::Show(Section::Teaching));
    press(&mut desk, "Add a teaching note");
    press(&mut desk, "Add: Trap 2");
    fill(&mut desk, "Trap 2", "Cold oil.");
    wanted(&mut desk, WriterAction::Show(Section::Roads));
    press(&mut desk, "Remove: motorway");
    press(&mut desk, "Add: motorway");
    assert_eq!(written(&desk).problems.as_deref(), Some([].as_slice()));
}

#[test]
fn another_vehicle_says_what_no_longer_fits_and_shows_its_own_bay() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    wanted(&mut desk, WriterAction::Turn(Side::Bay));
    let dray = Arc::clone(&desk.bay().unwrap().model);
    let teal = choice(&desk, "Vehicle").options[1].1.clone();
    pick(&mut desk, "Vehicle", &teal);
    assert_ne!(desk.bay().unwrap().model, dray);
    let problems = written(&desk).problems.clone().unwrap();
    assert!(problems.len() >= 4, "{problems:?}");
    assert!(written(&desk).sheet.iter().any(|line| line.contains("Marlgate Teal")));
    wanted(&mut desk, WriterAction::Show(Section::Prices));
    for (name, _) in flat(&written(&desk).rows).into_iter().flat_map(|row| match row {
        Row::Deeds(deeds) => deeds,
        _ => Vec::new(),
    }) {
        press(&mut desk, &name);
    }
    let left = written(&desk).problems.clone().unwrap();
    assert!(left.len() < problems.len(), "{left:?}");
}

#[test]
fn a_case_is_tried_with_its_fault_shown_and_the_writer_is_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    fill(&mut desk, "Title", "To be tried");
    let before = written(&desk).clone();
    assert_eq!(before.trial.entries.len(), 4);
    wanted(&mut desk, WriterAction::TryEntry(2));
    let Page::Case(case) = desk.view().page else { panic!("{:?}", written(&desk).trial) };
    assert_eq!(case.log.len(), 0);
    assert!(!case.is_assessed);
    let said = desk.view().tried.unwrap().to_owned();
    assert!(said.contains(&before.trial.entries[2]), "{said}");
    take(&mut desk, "dipstick");
    act(&mut desk, Action::SetLanguage("de"));
    assert_ne!(desk.view().tried, Some(said.as_str()));
    act(&mut desk, Action::SetLanguage("en-GB"));
    assert_eq!(desk.view().tried, Some(said.as_str()));
    act(&mut desk, Action::ToFront);
    let after = written(&desk);
    assert_eq!((&after.text, after.is_changed, after.can), (&before.text, true, before.can));
    assert_eq!((&after.rows, &after.problems), (&before.rows, &before.problems));
    assert_eq!(desk.view().tried, None);

    // By a seed, and to the end: its debrief leads back as well.
    for seed in ["one", ""] {
        wanted(&mut desk, WriterAction::TypeSeed(seed.to_owned()));
        wanted(&mut desk, WriterAction::TrySeed);
        assert!(written(&desk).trial.problem.is_some());
    }
    wanted(&mut desk, WriterAction::TypeSeed("5".to_owned()));
    wanted(&mut desk, WriterAction::TrySeed);
    assert!(desk.view().tried.unwrap().contains('5'));
    take(&mut desk, "hand over referred");
    assert!(matches!(desk.view().page, Page::Debrief(view) if view.parts.is_some()));
    act(&mut desk, Action::ToFront);
    assert_eq!(written(&desk).text, before.text);
    // Nobody is offered to go on with what was only tried.
    act(&mut desk, Action::ToFront);
    wanted(&mut desk, WriterAction::Discard);
    let Page::Front(front) = desk.view().page else { panic!("not the front page") };
    assert_eq!(front.kept.as_deref(), Some([].as_slice()));
}

#[test]
fn a_fault_that_is_never_drawn_cannot_be_tried_and_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    wanted(&mut desk, WriterAction::Show(Section::Faults));
    fill(&mut desk, "Fault 2: Weight", "0");
    wanted(&mut desk, WriterAction::TryEntry(1));
    assert!(written(&desk).trial.problem.as_ref().unwrap().contains("weight"));
    // A text with a problem deals nothing.
    fill(&mut desk, "Fault 2: Severity from", "3");
    assert!(!written(&desk).trial.can_deal);
    wanted(&mut desk, WriterAction::TryEntry(0));
    assert!(matches!(desk.view().page, Page::Writer(_)));
}

#[test]
fn how_hard_it_is_stands_beside_what_was_saved_and_can_be_stopped() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    desk.act(Action::Writer(WriterAction::Measure));
    assert!(written(&desk).hardness.under_way.is_some());
    wanted(&mut desk, WriterAction::StopMeasuring);
    assert_eq!(written(&desk).hardness, HardnessView::default());
    // With two faults it does not take long.
    wanted(&mut desk, WriterAction::Show(Section::Faults));
    press(&mut desk, "Fault 3: remove");
    press(&mut desk, "Fault 3: remove");
    wanted(&mut desk, WriterAction::Undo);
    wanted(&mut desk, WriterAction::Redo);
    save_at(&mut desk, &folder.path().join("measured.ron"));
    wanted(&mut desk, WriterAction::Measure);
    let first = written(&desk).hardness.clone();
    assert_eq!(first.problem, None);
    assert_eq!(first.rows.len(), 8);
    assert_eq!(first.rows[1][1], "1.00 bit");
    for [_, saved, now] in &first.rows {
        assert_eq!(saved, now);
    }
    fill(&mut desk, "Fault 1: Weight", "0");
    assert!(written(&desk).hardness.is_old);
    wanted(&mut desk, WriterAction::Measure);
    let second = written(&desk).hardness.clone();
    assert!(!second.is_old);
    assert_eq!(second.rows[1][1..], ["1.00 bit", "0.00 bit"]);
    assert_eq!(second.rows[0][1], first.rows[0][1]);
    wanted(&mut desk, WriterAction::Save);
    assert_eq!(written(&desk).hardness.rows[1][1..], ["0.00 bit", "0.00 bit"]);
}

#[test]
fn leaving_with_changes_asks_and_what_is_let_go_is_not_offered_again() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    act(&mut desk, Action::ToFront);
    assert!(matches!(desk.view().page, Page::Front(_)));
    wanted(&mut desk, WriterAction::Open);
    assert_eq!(door(&desk).last, None);
    wanted(&mut desk, WriterAction::Begin(1));
    fill(&mut desk, "Title", "Half done");
    act(&mut desk, Action::ToFront);
    assert_eq!(written(&desk).asked, Some(Asked::Leave));
    wanted(&mut desk, WriterAction::Stay);
    assert_eq!(written(&desk).asked, None);

    // The program ends badly: nothing was saved, and yet it is all there.
    drop(desk);
    let mut desk = desk_with_drafts(folder.path());
    wanted(&mut desk, WriterAction::Open);
    let last = door(&desk).last.clone().unwrap();
    assert_eq!((last.title.as_str(), last.is_changed, last.path), ("Half done", true, None));
    wanted(&mut desk, WriterAction::GoOn);
    assert_eq!(field(&desk, "Title").text, "Half done");
    assert!(written(&desk).is_changed);
    act(&mut desk, Action::ToFront);
    wanted(&mut desk, WriterAction::Discard);
    assert!(matches!(desk.view().page, Page::Front(_)));
    wanted(&mut desk, WriterAction::Open);
    assert_eq!(door(&desk).last, None);

    // What is saved is gone on with from its file.
    wanted(&mut desk, WriterAction::Begin(0));
    fill(&mut desk, "Title", "Done");
    let path = folder.path().join("done.ron");
    act(&mut desk, Action::ToFront);
    wanted(&mut desk, WriterAction::SaveAndLeave);
    wanted(&mut desk, WriterAction::TypePath(path.display().to_string()));
    wanted(&mut desk, WriterAction::SaveThere);
    assert!(matches!(desk.view().page, Page::Front(_)), "{:?}", desk.view().notice);
    wanted(&mut desk, WriterAction::Open);
    assert!(!door(&desk).last.as_ref().unwrap().is_changed);
    wanted(&mut desk, WriterAction::GoOn);
    assert_eq!(field(&desk, "Title").text, "Done");
}

#[test]
fn nothing_is_written_over_unasked_and_what_cannot_be_written_stays() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = writing(folder.path());
    let path = folder.path().join("mine.ron");
    fs::write(&path, "somebody's").unwrap();
    save_at(&mut desk, &path);
    assert!(matches!(&written(&desk).asked, Some(Asked::Over(over)) if over.ends_with("mine.ron")));
    assert_eq!(fs::read_to_string(&path).unwrap(), "somebody's");
    wanted(&mut desk, WriterAction::SaveOver);
    assert_eq!(fs::read_to_string(&path).unwrap(), written(&desk).text);

    // Somebody else changes the file meanwhile.
    fill(&mut desk, "Title", "Mine");
    fs::write(&path, "changed").unwrap();
    wanted(&mut desk, WriterAction::Save);
    assert!(matches!(written(&desk).asked, Some(Asked::Over(_))));
    wanted(&mut desk, WriterAction::Stay);
    assert_eq!(fs::read_to_string(&path).unwrap(), "changed");
    wanted(&mut desk, WriterAction::Save);
    wanted(&mut desk, WriterAction::SaveOver);
    assert!(!written(&desk).is_changed);

    fill(&mut desk, "Title", "Lost?");
    let text = written(&desk).text.clone();
    save_at(&mut desk, &folder.path().join("no-such-folder/mine.ron"));
    let said = desk.view().notice.unwrap().to_owned();
    assert!(said.contains("no-such-folder"), "{said}");
    assert_eq!((written(&desk).text.as_str(), written(&desk).is_changed), (text.as_str(), true));
    assert_eq!(written(&desk).name, "mine.ron");
}

#[test]
fn a_file_that_is_wrong_is_opened_all_the_same_and_one_that_is_none_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = desk_on(folder.path());
    wanted(&mut desk, WriterAction::Open);
    let open = |desk: &mut Desk, path: &Path| {
        wanted(desk, WriterAction::TypeFile(path.display().to_string()));
        wanted(desk, WriterAction::ReadFile);
    };
    open(&mut desk, &folder.path().join("none.ron"));
    assert!(desk.view().notice.unwrap().contains("none.ron"));
    let path = folder.path().join("half.ron");
    fs::write(&path, "(title: 3").unwrap();
    open(&mut desk, &path);
    assert_eq!(desk.view().notice, None);
    assert!(!written(&desk).is_live);
    assert_eq!(written(&desk).problems.as_ref().map(Vec::len), Some(1));
    assert_eq!(written(&desk).rows, []);
    act(&mut desk, Action::SetLanguage("de"));
    assert!(written(&desk).problems.as_ref().unwrap()[0].said.starts_with("Zeile"));
}

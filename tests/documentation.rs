//! What the documents show is what the program prints.

use faultwright::scenario::load::{ScenarioText, read};
use faultwright::wording::step_parser::parse;
use faultwright::wording::verbs::USAGES;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// Standard output of the real binary, with a home of its own.
fn prints(arguments: &[&str]) -> String {
    let home = tempfile::tempdir().unwrap();
    let output = Command::new(env!("CARGO_BIN_EXE_faultwright"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .env("HOME", home.path())
        .env("XDG_DATA_HOME", home.path())
        .env("XDG_CACHE_HOME", home.path())
        .output()
        .unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).unwrap()
}

/// The session that the README shows stands in the program's output, line for line and in order;
/// a line of three dots leaves something out.
#[test]
fn regress_the_session_of_the_readme_is_the_programs_own() {
    let readme = fs::read_to_string(here("README.md")).unwrap();
    let shown = readme
        .split("```text\n$ faultwright ")
        .nth(1)
        .and_then(|rest| rest.split("\n```").next())
        .expect("the README has a session");
    let mut lines = shown.lines();
    let arguments: Vec<&str> = lines.next().unwrap().split(' ').collect();
    let printed = prints(&arguments);
    let mut rest = printed.lines();
    let mut count = 0;
    for line in lines.filter(|line| !line.is_empty() && line.trim() != "…") {
        assert!(rest.any(|printed| printed == line), "not printed, or not in this place: {line}");
        count += 1;
    }
    assert!(count > 40, "only {count} lines are shown");
}

/// What the help shows can be typed as it stands in every scenario on the vehicle that is taken where none
/// is named; others have other parts.
#[test]
fn limit_every_example_of_the_help_is_a_step_of_the_scenarios_on_the_first_vehicle() {
    let first = ScenarioText::demo().vehicle_text;
    for text in ScenarioText::carried().into_iter().filter(|text| text.vehicle_text == first) {
        let name = text.scenario_name.clone();
        let briefing = read(text).unwrap().briefing();
        for usage in USAGES {
            let step = parse(usage.example, &briefing);
            assert!(matches!(step, Ok(Some(_))), "{name}: {}: {step:?}", usage.example);
        }
    }
}

/// Links between the documents lead somewhere.
#[test]
fn limit_every_link_to_a_file_leads_to_one() {
    let mut documents = vec![here("README.md"), here("DEVELOPERS.md")];
    documents.extend(fs::read_dir(here("docs")).unwrap().map(|entry| entry.unwrap().path()));
    let mut links = 0;
    for document in documents.iter().filter(|path| path.extension().is_some_and(|e| e == "md")) {
        let text = fs::read_to_string(document).unwrap();
        for target in text.split("](").skip(1).filter_map(|rest| rest.split(')').next()) {
            let file = target.split('#').next().unwrap();
            if file.is_empty() || file.contains("://") {
                continue;
            }
            links += 1;
            let path = document.parent().unwrap().join(file);
            assert!(path.exists(), "{}: {target} leads nowhere", document.display());
        }
    }
    assert!(links > 10);
}

//! Every sentence is there, and the ones that matter most say what they should.

use super::events::{every_event, plain_events, reading};
use super::sample::{briefing, code};
use super::steps_of::any_step;
use crate::instruments::multimeter::{Display, MeterFunction, Prefix};
use crate::session::event::{Event, Refusal};
use crate::session::step::{CustomerTopic, ServiceTopic, Step};
use crate::units::{Minutes, Money};
use crate::vehicle::assembly::Obstacle;
use crate::vehicle::spec::Id;
use crate::wording::caption::caption;
use crate::wording::catalogue::Words;
use crate::wording::event_words::line;
use crate::wording::help::{help, help_for};
use crate::wording::parse_problem::{Expected, NumberKind, ParseProblem, ProblemKind};
use crate::wording::place::{PlaceKind, place};
use crate::wording::step_parser::parse;
use crate::wording::verbs::{USAGES, Verb, VerbGroup};
use crate::wording::{code_words, step_words};
use proptest::prelude::*;

fn english() -> Words {
    Words::for_language("en-GB")
}

fn said(event: &Event) -> String {
    line(event, &english(), &briefing())
}

/// A text is whole when it has no message or argument missing and no empty line in it.
fn assert_whole(text: &str) {
    for sign in ["<", ">", "{", "}", "\u{2068}", "\u{2069}", "  :", ": .", "()", "  ,"] {
        assert!(!text.contains(sign), "{sign:?} in {text}");
    }
    for line in text.split('\n') {
        assert!(!line.trim().is_empty(), "an empty line in {text}");
        assert_eq!(line.trim_end(), line, "{text}");
        assert!(!line.ends_with(':') || text.contains(&format!("{line}\n  ")), "{text}");
    }
}

#[test]
fn every_event_is_said_in_whole_sentences() {
    for event in every_event() {
        let text = said(&event);
        assert_whole(&text);
        let first = text.chars().next();
        assert!(first.is_some_and(|c| !c.is_lowercase()), "{text}");
    }
}

#[test]
fn different_events_are_said_differently() {
    let mut texts: Vec<String> = plain_events().iter().map(said).collect();
    let count = texts.len();
    texts.sort();
    texts.dedup();
    assert_eq!(texts.len(), count);
}

#[test]
fn a_missing_message_would_be_noticed() {
    let text = english().say("event-removed", &[]);
    assert!(std::panic::catch_unwind(|| assert_whole(&text)).is_err(), "{text}");
}

#[test]
fn a_reading_shows_what_the_display_shows() {
    let shown = |display, function| said(&reading(display, function));
    let value = |value, decimals, prefix| Display::Value { value, decimals, prefix };
    assert_eq!(
        shown(value(8.6, 1, Prefix::One), MeterFunction::Ohms),
        "Intake valve feed to intake valve control: 8.6 Ω"
    );
    assert_eq!(
        shown(Display::OverLimit, MeterFunction::Ohms),
        "Intake valve feed to intake valve control, ohms: OL, more than the meter can show"
    );
    assert_eq!(said(&Event::Spent { minutes: Minutes(12), money: Money(0) }), "12 min, €0.00");
}

#[test]
fn codes_are_told_with_their_meaning_and_what_has_not_run() {
    let text = said(&Event::Codes {
        stored: vec![code("P0010"), code("P1234")],
        pending: Vec::new(),
        permanent: Vec::new(),
        lamp: true,
        complete: vec![code("P0010"), code("P2088")],
    });
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(
        lines,
        [
            "Stored codes:",
            "  P0010: “A” camshaft position actuator circuit, bank 1",
            "  P1234",
            "No pending codes.",
            "No permanent codes.",
            "The module asks for the engine lamp.",
            "Monitors that have run since the last clearing: P0010, P2088",
            "Monitors that have not run yet: P000A, P000B, P0011, P0012, P0013, P0014, P0015, \
             P0016, P0017, P2089, P2090, P2091",
        ]
    );
    assert_eq!(code_words::code(code("P0524"), &english()), "P0524: engine oil pressure too low");
}

#[test]
fn a_refusal_says_what_to_do_instead() {
    let parts = vec![Id::from("engine-cover"), Id::from("air-duct")];
    let reason = Refusal::Obstacle(Obstacle::Behind(parts));
    assert_eq!(
        said(&Event::Refused { reason }),
        "Not possible: something is in the way. Take off first: engine cover and air duct."
    );
}

#[test]
fn every_caution_gives_way_to_the_makers_procedure() {
    for hazard in super::events::hazards() {
        let text = said(&Event::Caution { hazard });
        assert!(text.contains("maker's procedure"), "{text}");
        assert!(text.chars().count() < 220, "a caution has to be short: {text}");
    }
}

#[test]
fn the_customer_speaks_in_the_words_of_the_job() {
    let answered = |topic| said(&Event::Answered { topic });
    assert_eq!(answered(CustomerTopic::When), "The customer says: Mostly uphill.");
    assert!(answered(CustomerTopic::Repairs).contains("nothing to say"));
    let sheet = said(&Event::JobSheetShown);
    for part in ["Rough at times", "Marlow Estate, 2016", "128400 km", "Oil change 14 months ago"] {
        assert!(sheet.contains(part), "{sheet}");
    }
}

#[test]
fn service_information_holds_every_name_that_a_step_needs() {
    let vehicle = briefing().vehicle;
    let about = |topic| said(&Event::Consulted { topic });
    let wiring = about(ServiceTopic::Wiring);
    for point in &vehicle.test_points {
        assert!(wiring.contains(&format!("  {}: at {}", point.id, point.node)), "{}", point.id);
    }
    for element in &vehicle.harness.elements {
        assert!(wiring.contains(&format!("  {}: ", element.id())), "{}", element.id());
        for node in element.nodes() {
            let is_inside = matches!(
                element,
                crate::vehicle::spec::HarnessElement::Driver { supply, .. }
                    if supply == node
            );
            assert!(is_inside || wiring.contains(node.as_str()), "{node}");
        }
    }
    let procedure = about(ServiceTopic::Procedure);
    let at = |part: &str| procedure.find(&format!("  {part}: ")).unwrap();
    for part in &vehicle.parts {
        for first in &part.behind {
            assert!(at(first.as_str()) < at(part.id.as_str()), "{first} before {}", part.id);
        }
    }
    assert!(procedure.contains("Tighten to 9.5 N m."), "{procedure}");
    let parts = about(ServiceTopic::Parts);
    assert!(
        parts.contains("hd-4470-1: valve for intake valve and exhaust valve, €48.50"),
        "{parts}"
    );
    assert!(
        parts.contains("HD-4470-3: valve for intake valve and exhaust valve, price on request")
    );
    let limits = about(ServiceTopic::Limits);
    assert!(limits.contains("6.9 to 7.9 Ω at 20 °C"), "{limits}");
    assert!(limits.contains("0.39 % for each degree above 20 °C. Multiply both limits by 0.99 at the workshop's 18 °C, by 1.28 at 90 °C"), "{limits}");
    assert!(limits.contains("1.0 l between the marks"), "{limits}");
    let codes = about(ServiceTopic::Codes);
    let drive = codes.find("Performance codes").unwrap();
    assert!(codes.find("P2090").unwrap() < drive && drive < codes.find("P000B").unwrap());
}

/// A window shares the words between its threads.
#[test]
fn words_can_go_to_another_thread() {
    let words = english();
    let text = std::thread::scope(|scope| scope.spawn(|| words.say("help-zero", &[])).join());
    assert_eq!(text.unwrap(), words.say("help-zero", &[]));
}

#[test]
fn an_unnamed_place_is_shown_by_its_own_words() {
    assert_eq!(place(&Id::from("left-rear-bracket"), &english()), "left rear bracket");
    assert_eq!(place(&Id::from("battery-minus"), &english()), "battery negative post");
}

#[test]
fn every_usage_is_in_the_help_and_its_example_is_a_step() {
    let all = help(&english());
    for usage in USAGES {
        let step = parse(usage.example, &briefing()).unwrap().unwrap();
        assert_eq!(step_words::verb(&step), usage.verb, "{}", usage.example);
        assert!(all.contains(usage.example), "{}", usage.example);
        assert!(usage.form.starts_with(usage.verb.word()), "{}", usage.form);
    }
    for group in VerbGroup::ALL {
        assert!(USAGES.iter().any(|usage| usage.group == group));
    }
    let lines: Vec<&str> = all.lines().filter(|line| !line.is_empty()).collect();
    assert_eq!(lines.len(), 1 + VerbGroup::ALL.len() + USAGES.len());
    for line in lines {
        assert_whole(line);
        assert!(line.chars().count() <= 132, "too wide for a terminal: {line}");
    }
}

#[test]
fn every_verb_has_help_of_its_own() {
    for verb in Verb::ALL {
        let text = help_for(verb.word(), &english()).unwrap();
        for usage in USAGES.iter().filter(|usage| usage.verb == verb) {
            assert!(text.contains(&format!("Form: {}\n", usage.form)), "{text}");
        }
        assert_whole(&text);
    }
    assert_eq!(help_for("mea", &english()), help_for("MEASURE", &english()));
    assert!(help_for("read", &english()).unwrap().contains("freeze-frame"));
    for unclear in ["", "m", "fly"] {
        assert_eq!(help_for(unclear, &english()), None, "{unclear}");
    }
}

#[test]
fn every_problem_is_one_whole_sentence_with_place_and_remedy() {
    let words = |texts: &[&str]| texts.iter().map(ToString::to_string).collect::<Vec<_>>();
    let number_kinds =
        [NumberKind::Percent, NumberKind::Seconds, NumberKind::Reading, NumberKind::NotBelowLeast];
    let mut kinds = vec![
        ProblemKind::UnknownWord { nearest: Vec::new() },
        ProblemKind::UnknownWord { nearest: words(&["on"]) },
        ProblemKind::Ambiguous { options: words(&["on", "off"]) },
        ProblemKind::Extra,
        ProblemKind::Missing { expected: Expected::Word },
        ProblemKind::Missing { expected: Expected::Text },
    ];
    kinds.extend(number_kinds.map(|wanted| ProblemKind::BadNumber { wanted }));
    kinds
        .extend(number_kinds.map(|kind| ProblemKind::Missing { expected: Expected::Number(kind) }));
    for what in PlaceKind::ALL {
        kinds.push(ProblemKind::Missing { expected: Expected::Place(what) });
        for known_as in [None, Some(PlaceKind::Route)] {
            kinds.push(ProblemKind::NoSuchPlace { what, nearest: Vec::new(), known_as });
            kinds.push(ProblemKind::NoSuchPlace { what, nearest: words(&["a-b"]), known_as });
        }
    }
    for kind in kinds {
        for allowed in [Vec::new(), words(&["on", "off", "start"])] {
            let found = "xyz\u{7}".to_owned();
            let problem = ParseProblem { column: 7, found, kind: kind.clone(), allowed };
            let sentence = problem.sentence(&english());
            assert_whole(&sentence);
            assert!(sentence.starts_with("At character 7: "), "{sentence}");
            assert!(sentence.ends_with(['.', '?']), "{sentence}");
            assert!(!sentence.contains('\u{7}'), "{sentence}");
        }
    }
}

#[test]
fn a_problem_reads_as_a_person_would_say_it() {
    let sentence = |text: &str| parse(text, &briefing()).unwrap_err().sentence(&english());
    assert_eq!(
        sentence("key sart"),
        "At character 5: “sart” is not a word that can stand here. Did you mean start? You can \
         write off, on, start or crank here."
    );
    assert_eq!(
        sentence("command intake-valve o"),
        "At character 22: “o” is short for more than one word. Write on or off."
    );
    assert_eq!(
        sentence("drive"),
        "At character 7: the step is not complete: a road for a test drive is missing. You can \
         write hill-road or town here."
    );
    assert_eq!(
        sentence("remove intake-connector"),
        "At character 8: “intake-connector” is a connector, but a part that comes off \
         belongs here. You can write air-duct, duct-clamp, engine-cover, exhaust-valve or \
         intake-valve here."
    );
    assert_eq!(
        sentence("suspect open-coil intake-valve 160%"),
        "At character 32: “160%” is not a confidence in per cent. Write a whole number from 0 to \
         100, such as 60%."
    );
    assert_eq!(
        sentence("predict 9 to 7 ohms"),
        "At character 14: “7” is not as great as the value before it. Write the smaller value \
         first."
    );
    assert_eq!(
        sentence("power intake-valve for"),
        "At character 24: the step is not complete: a time in seconds is missing. Write whole \
         seconds from 1 to 65535, such as 2 s."
    );
    // Twelve words are named, the rest is counted.
    let more = format!(" and {} more here.", crate::wording::verbs::Verb::ALL.len() - 12);
    assert!(sentence("frobnicate").contains(&more), "{}", sentence("frobnicate"));
}

proptest! {
    #[test]
    fn prop_every_step_has_a_caption(step in any_step()) {
        let text = caption(&step, &english());
        assert_whole(&text);
        prop_assert!(!text.contains('\n'));
    }
}

#[test]
fn a_caption_names_what_is_done_and_where() {
    let text = |line: &str| caption(&parse(line, &briefing()).unwrap().unwrap(), &english());
    assert_eq!(
        text("measure volts battery-plus battery-minus"),
        "Measure volts: red on battery positive post, black on battery negative post"
    );
    assert_eq!(text("predict 7.0 to 9.25 ohms"), "Predict from 7 to 9.25 \u{3a9}");
    assert_eq!(text("predict over-limit"), "Predict over limit");
    assert_eq!(text("predict over-limit volts"), "Predict over limit V");
    assert_eq!(text("predict above 5 V"), "Predict 5 V or more");
    assert_eq!(text("predict codes P0010"), "Predict that the reader lists P0010");
    assert_eq!(text("look engine-bay"), "Look: under the bonnet");
    let text = caption(&Step::Drive { route: Id::from("hill-road"), stop_after: None }, &english());
    assert_eq!(text, "Road test: hill road");
}

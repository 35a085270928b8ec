//! Typed steps: there and back, abbreviations, mistakes, completion.

use super::sample::briefing;
use super::steps_of::any_step;
use crate::control_module::code::Code;
use crate::faults::{FaultKind, FaultName};
use crate::instruments::multimeter::MeterFunction;
use crate::instruments::test_lamp::Glow;
use crate::physics::stroke::Click;
use crate::session::step::{Bound, Ending, Manner, Quantity, Section, Sign, Step};
use crate::vehicle::spec::Id;
use crate::wording::parse_problem::{Expected, NumberKind, ProblemKind};
use crate::wording::place::PlaceKind;
use crate::wording::step_parser::{complete, parse};
use crate::wording::step_words::{OVER_LIMIT_ONLY, line};
use crate::wording::verbs::Verb;
use proptest::prelude::*;

fn step(text: &str) -> Step {
    match parse(text, &briefing()) {
        Ok(Some(step)) => step,
        other => panic!("{text}: {other:?}"),
    }
}

fn problem(text: &str) -> (usize, String, ProblemKind) {
    match parse(text, &briefing()) {
        Err(problem) => (problem.column, problem.found, problem.kind),
        other => panic!("{text}: {other:?}"),
    }
}

fn predicted(text: &str) -> (f64, Bound, Quantity) {
    match step(text) {
        Step::Predict { least, most, of: Some(of) } => (least, most, of),
        other => panic!("{text}: {other:?}"),
    }
}

#[test]
fn empty_lines_and_comments_are_no_steps() {
    for text in ["", "   ", "# key on", "  # "] {
        assert_eq!(parse(text, &briefing()), Ok(None), "{text:?}");
    }
    assert_eq!(step("dipstick # first of all"), Step::Dipstick);
}

#[test]
fn case_and_abbreviations_do_not_matter() {
    let full = step("measure ohms intake-valve-feed intake-valve-control");
    assert_eq!(
        full,
        Step::Measure {
            function: MeterFunction::Ohms,
            red: Id::from("intake-valve-feed"),
            black: Id::from("intake-valve-control"),
        }
    );
    assert_eq!(step("MEA o INTAKE-VALVE-F intake-valve-c"), full);
    assert_eq!(step("t u"), Step::TopUpOil);
    assert_eq!(step("fit exh hd-4470-3"), step("fit exhaust-valve HD-4470-3"));
}

#[test]
fn a_whole_name_is_not_taken_for_the_start_of_a_longer_one() {
    let red = match step("measure volts intake-valve battery-minus") {
        Step::Measure { red, .. } => red,
        other => panic!("{other:?}"),
    };
    assert_eq!(red, Id::from("intake-valve"));
}

#[test]
fn pulling_is_removing_without_care() {
    let part = Id::from("intake-valve");
    assert_eq!(
        step("pull intake-valve"),
        Step::Remove { part: part.clone(), manner: Manner::Pulled }
    );
    assert_eq!(step("remove intake-valve"), Step::Remove { part, manner: Manner::Careful });
}

#[test]
fn a_pulse_has_whole_seconds_and_perhaps_the_wrong_polarity() {
    let pulse =
        |seconds, reversed| Step::Power { valve: Id::from("intake-valve"), seconds, reversed };
    for text in ["for 2 s", "for 2s", "for 2", "for 2 seconds"] {
        assert_eq!(step(&format!("power intake-valve {text}")), pulse(2, false));
        assert_eq!(step(&format!("power intake-valve {text} rev")), pulse(2, true));
    }
    let seconds = ProblemKind::BadNumber { wanted: NumberKind::Seconds };
    for text in ["0 s", "1.5 s", "-1", "two", "70000"] {
        assert_eq!(problem(&format!("power intake-valve for {text}")).2, seconds, "{text}");
    }
}

#[test]
fn predictions_have_a_unit_with_or_without_a_space() {
    let up_to = Bound::Value;
    for (text, wanted) in [
        ("7.0 to 9.0 ohms", (7.0, up_to(9.0), Quantity::Ohms)),
        ("7ohms to 9ohms", (7.0, up_to(9.0), Quantity::Ohms)),
        ("7 ohms to 9", (7.0, up_to(9.0), Quantity::Ohms)),
        ("7 Ω to 9 Ω", (7.0, up_to(9.0), Quantity::Ohms)),
        ("800 ohms to 1.5 kohms", (800.0, up_to(1_500.0), Quantity::Ohms)),
        ("1 to 2 kohm", (1_000.0, up_to(2_000.0), Quantity::Ohms)),
        ("1 to 2kΩ", (1_000.0, up_to(2_000.0), Quantity::Ohms)),
        ("1 to 2 Mohms", (1e6, up_to(2e6), Quantity::Ohms)),
        ("12 to 12.8 volts", (12.0, up_to(12.8), Quantity::Volts)),
        ("-0.5 to 0.5 V", (-0.5, up_to(0.5), Quantity::Volts)),
        ("250 mV to 1 V", (0.25, up_to(1.0), Quantity::Volts)),
        ("0.5 to 500 mA", (0.000_5, up_to(0.5), Quantity::Amps)),
        ("1 a to 1 a", (1.0, up_to(1.0), Quantity::Amps)),
        ("1.2 to 2 bar", (1.2, up_to(2.0), Quantity::Bar)),
        ("above 5 kohms", (5_000.0, Bound::OverLimit, Quantity::Ohms)),
        ("above 11.5 V", (11.5, Bound::OverLimit, Quantity::Volts)),
        ("over-limit", (OVER_LIMIT_ONLY, Bound::OverLimit, Quantity::Ohms)),
        ("over-limit volts", (OVER_LIMIT_ONLY, Bound::OverLimit, Quantity::Volts)),
    ] {
        assert_eq!(predicted(&format!("predict {text}")), wanted, "{text}");
    }
    let reading = ProblemKind::BadNumber { wanted: NumberKind::Reading };
    for text in [
        "7,5 to 9",
        "1e3 to 2",
        "7 to x",
        "1.2.3 to 4",
        "7 V to 9 ohms",
        "7 to 9lbs",
        "above inf",
        "above -",
        "above 5m",
    ] {
        assert_eq!(problem(&format!("predict {text}")).2, reading, "{text}");
    }
    // A number alone is no reading.
    let unit = ProblemKind::Missing { expected: Expected::Word };
    for text in ["7 to 9", "above 5", "7 to 9 ", "above 5 # ohms"] {
        assert_eq!(problem(&format!("predict {text}")).2, unit, "{text}");
    }
    let huge = format!("predict above {}", "9".repeat(400));
    assert_eq!(problem(&huge).2, reading);
    assert_eq!(
        problem("predict 9 to 7 ohms").2,
        ProblemKind::BadNumber { wanted: NumberKind::NotBelowLeast }
    );
}

#[test]
fn a_sign_is_predicted_by_its_word_and_a_code_by_its_number() {
    let sign = |text: &str| match step(&format!("predict {text}")) {
        Step::PredictSign { sign } => sign,
        other => panic!("{text}: {other:?}"),
    };
    assert_eq!(sign("click dull"), Sign::Click(Click::Dull));
    assert_eq!(sign("glow br"), Sign::Glow(Glow::Bright));
    assert_eq!(sign("codes none"), Sign::NoCodes);
    assert_eq!(sign("codes p0010"), Sign::Code(Code(0x0010)));
    // A code without a meaning in the catalogue is a code as well.
    assert_eq!(step("report P1234"), Step::ReportCode { code: Code(0x1234) });
    for text in ["report", "report P00", "report X0010", "predict click loud", "predict codes P9"] {
        assert!(parse(text, &briefing()).is_err(), "{text}");
    }
    assert!(complete("report P045", &briefing()).contains(&"P0456".to_owned()));
}

#[test]
fn a_confidence_is_whole_per_cent_up_to_a_hundred() {
    let fault = FaultName { kind: FaultKind::OpenCoil, place: Id::from("intake-valve") };
    for text in ["60%", "60 %", "60"] {
        assert_eq!(
            step(&format!("suspect open-coil intake-valve {text}")),
            Step::Suspect { fault: fault.clone(), percent: 60 }
        );
    }
    for text in ["101%", "-1%", "half", "6o%", "60.5%", "300"] {
        let (column, found, kind) = problem(&format!("suspect open-coil intake-valve {text}"));
        assert_eq!((column, found.as_str()), (32, text));
        assert_eq!(kind, ProblemKind::BadNumber { wanted: NumberKind::Percent });
    }
}

#[test]
fn a_fault_is_named_only_where_it_can_be() {
    assert_eq!(step("commit no-fault"), Step::Commit { fault: None });
    assert_eq!(
        step("commit low-oil sump"),
        Step::Commit {
            fault: Some(FaultName { kind: FaultKind::LowOil, place: Id::from("sump") })
        }
    );
    let ProblemKind::NoSuchPlace { what, known_as, .. } = problem("commit low-oil intake-valve").2
    else {
        panic!("a low oil level belongs to the sump");
    };
    assert_eq!((what, known_as), (PlaceKind::FaultPlace, Some(PlaceKind::Part)));
}

#[test]
fn a_text_runs_to_the_end_of_the_line_and_comes_back_as_it_was() {
    let text = |line: &str| match step(line) {
        Step::Write { section: Section::Cause, text } => text,
        other => panic!("{other:?}"),
    };
    assert_eq!(text("write cause  Cylinder #1, 8 Ω  "), "Cylinder #1, 8 Ω");
    assert_eq!(text("write cause #5"), "#5");
    assert_eq!(text(r#"write cause "rough" idle"#), r#""rough" idle"#);
    assert_eq!(text(r#"write cause "a" or "b""#), r#""a" or "b""#);
    assert_eq!(text(r#"write cause "one\ntwo \"three\"""#), "one\ntwo \"three\"");
    assert_eq!(text(r#"write cause """#), "");
    assert_eq!(text("write cause \""), "\"");
    assert_eq!(problem("write cause").2, ProblemKind::Missing { expected: Expected::Text });
}

#[test]
fn handing_over_means_repaired_unless_said_otherwise() {
    for (text, ending) in [
        ("hand over", Ending::Repaired),
        ("hand over repaired", Ending::Repaired),
        ("hand over no-fault", Ending::NoFaultFound),
        ("ha o u", Ending::Unsafe),
    ] {
        assert_eq!(step(text), Step::HandOver { ending });
    }
    let options = vec!["repaired".to_owned(), "referred".to_owned()];
    assert_eq!(problem("ha o r").2, ProblemKind::Ambiguous { options });
}

#[test]
fn a_mistake_is_told_with_its_place_and_the_nearest_word() {
    let (column, found, kind) = problem("  mesaure volts");
    assert_eq!((column, found.as_str()), (3, "mesaure"));
    assert_eq!(kind, ProblemKind::UnknownWord { nearest: vec!["measure".to_owned()] });

    let (column, found, kind) = problem("look intake-vlave-connector");
    assert_eq!((column, found.as_str()), (6, "intake-vlave-connector"));
    assert_eq!(
        kind,
        ProblemKind::NoSuchPlace {
            what: PlaceKind::InView,
            nearest: vec!["intake-connector".to_owned()],
            known_as: None,
        }
    );

    let (column, found, kind) = problem("key");
    assert_eq!((column, found.as_str()), (5, ""));
    assert_eq!(kind, ProblemKind::Missing { expected: Expected::Word });

    assert_eq!(problem("dipstick twice"), (10, "twice".to_owned(), ProblemKind::Extra));
    assert_eq!(
        problem("measure amps").2,
        ProblemKind::Missing { expected: Expected::Place(PlaceKind::TestPoint) }
    );
    assert!(matches!(problem("co intake-valve on").2, ProblemKind::Ambiguous { .. }));
    assert!(matches!(
        problem("remove intake-connector").2,
        ProblemKind::NoSuchPlace { known_as: Some(PlaceKind::Connector), .. }
    ));
}

#[test]
fn completion_offers_what_may_stand_next() {
    let offered = |text: &str| complete(text, &briefing());
    assert_eq!(offered("m"), ["measure", "mend"]);
    assert_eq!(offered("key "), ["off", "on", "start", "crank"]);
    assert_eq!(offered("KEY O"), ["off", "on"]);
    assert_eq!(offered("key on "), [""; 0]);
    assert_eq!(offered("measure v battery-"), ["battery-minus", "battery-plus"]);
    assert_eq!(offered("refit intake-valve "), ["with"]);
    assert_eq!(offered("refit intake-valve with "), ["new-seal"]);
    assert_eq!(offered("power intake-valve for 2 "), ["s", "seconds", "reversed"]);
    assert_eq!(offered("power intake-valve for 2s "), ["reversed"]);
    assert_eq!(offered("commit low-oil "), ["sump"]);
    assert_eq!(offered("fit intake-valve hd"), ["HD-4470-3", "hd-4470-1"]);
    assert_eq!(offered("hand over "), ["repaired", "no-fault", "referred", "unsafe", "declined"]);
    assert!(offered("predict 7 ").contains(&"to".to_owned()));
    for nothing in ["write cause x", "# m", "nonsense ", "key sideways ", "dipstick extra "] {
        assert_eq!(offered(nothing), [""; 0], "{nothing}");
    }
    assert_eq!(offered("").len(), Verb::ALL.len());
}

#[test]
fn what_a_step_offers_never_depends_on_a_fault() {
    // Every kind of place comes from the briefing, which no fault changes; a place of a fault is
    // offered for each kind whether or not the case has it.
    let kinds = complete("suspect ", &briefing());
    assert_eq!(kinds, FaultKind::ALL.map(|kind| kind.word().to_owned()));
}

/// Whether a line has one of its words cut short, and which step it stands for then.
fn shortened(line: &str, word: usize, letters: usize) -> String {
    let words: Vec<&str> = line.split(' ').collect();
    let at = word % words.len();
    let cut: Vec<String> = words
        .iter()
        .enumerate()
        .map(|(index, text)| {
            let keep = if index == at { 1 + letters % text.chars().count() } else { usize::MAX };
            text.chars().take(keep).collect()
        })
        .collect();
    cut.join(" ")
}

proptest! {
    #[test]
    fn prop_a_step_written_and_read_is_the_same_step(step in any_step()) {
        let text = line(&step);
        prop_assert!(!text.contains('\n'));
        prop_assert_eq!(parse(&text, &briefing()), Ok(Some(step)), "{}", text);
    }

    #[test]
    fn prop_an_accepted_abbreviation_means_the_whole_word(
        step in any_step(),
        word in 0usize..6,
        letters in 0usize..30,
    ) {
        // Digits cut short are another number, and a text is no abbreviation.
        prop_assume!(!matches!(
            step,
            Step::Write { .. } | Step::Note { .. } | Step::Predict { .. } | Step::PredictSign { .. }
                | Step::ReportCode { .. } | Step::Suspect { .. } | Step::Power { .. }
                | Step::Drive { stop_after: Some(_), .. }
        ));
        // A name that is the start of another is that name; only then may the step differ.
        let short = shortened(&line(&step), word, letters);
        if let Ok(Some(read)) = parse(&short, &briefing())
            && !short.split(' ').any(is_whole_name_and_start_of_another)
        {
            prop_assert_eq!(read, step, "{}", short);
        }
    }

    #[test]
    fn prop_any_line_is_read_or_refused_in_words(text in "\\PC{0,60}") {
        let words = crate::wording::catalogue::Words::for_language("en-GB");
        if let Err(problem) = parse(&text, &briefing()) {
            let sentence = problem.sentence(&words);
            prop_assert!(problem.column >= 1 && problem.column <= text.chars().count() + 2);
            prop_assert!(!sentence.is_empty() && !sentence.contains('\n'));
        }
        let _ = complete(&text, &briefing());
    }

    #[test]
    fn prop_words_of_the_grammar_in_any_order_never_panic(
        words in proptest::collection::vec(
            prop_oneof![
                Just("measure"), Just("power"), Just("predict"), Just("suspect"), Just("write"),
                Just("for"), Just("to"), Just("above"), Just("intake-valve"), Just("open-coil"),
                Just("7"), Just("60%"), Just("5kΩ"), Just("-"), Just("+.5V"), Just("\""),
                Just("#"), Just("\u{a0}"), Just("é"), Just("\\"), Just("2s"), Just("refit"),
            ],
            0..7,
        ),
    ) {
        let text = words.join(" ");
        let _ = parse(&text, &briefing());
        let _ = complete(&text, &briefing());
    }

    #[test]
    fn prop_every_offered_word_can_stand_there(step in any_step(), cut in 0usize..200) {
        let text = line(&step);
        let end = text.char_indices().map(|(at, _)| at).chain([text.len()]).nth(cut)
            .unwrap_or(text.len());
        let begun = text.get(..end).unwrap_or_default();
        for word in complete(begun, &briefing()) {
            let stem = begun.rsplit_once(' ').map_or(String::new(), |(stem, _)| format!("{stem} "));
            if let Err(problem) = parse(&format!("{stem}{word}"), &briefing()) {
                let is_missing = matches!(problem.kind, ProblemKind::Missing { .. });
                prop_assert!(is_missing, "{}{}: {:?}", stem, word, problem);
            }
        }
    }
}

fn is_whole_name_and_start_of_another(word: &str) -> bool {
    PlaceKind::ALL.into_iter().any(|kind| {
        let names = kind.places(&briefing());
        names.iter().any(|name| name.as_str() == word)
            && names.iter().any(|name| name.as_str() != word && name.as_str().starts_with(word))
    })
}

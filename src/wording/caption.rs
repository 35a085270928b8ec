//! A step in a short phrase, for a list of what was done or a button that does it.

use super::amounts::short_number;
use super::catalogue::Words;
use super::place::{diagnosis, fault, place};
use super::reader_words;
use super::step_words::{OVER_LIMIT_ONLY, meter_function};
use crate::instruments::multimeter::MeterFunction;
use crate::instruments::scope::Signal;
use crate::instruments::test_lamp::Glow;
use crate::physics::stroke::Click;
use crate::session::step::{
    Bound, CustomerTopic, Ending, HintGrade, KeyPosition, Manner, Quantity, Section, ServiceTopic,
    Sign, Step,
};
use crate::vehicle::spec::Id;

/// Digits behind the point of a predicted value, as many as the finest display in volts has.
const PREDICTED_DECIMALS: usize = 4;

/// A step in a short phrase.
#[must_use]
#[expect(clippy::too_many_lines, reason = "one short arm for each kind of step")]
pub fn caption(step: &Step, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    let with_place = |key: &str, id: &Id| words.say(key, &[("place", place(id, words).into())]);
    match step {
        Step::ReadJobSheet => plain("step-read-job-sheet"),
        Step::AskCustomer { topic } => plain(customer_topic_key(*topic)),
        Step::Consult { topic } => plain(service_topic_key(*topic)),
        Step::Look { place } => with_place("step-look", place),
        Step::Dipstick => plain("step-dipstick"),
        Step::Remove { part, manner: Manner::Careful } => with_place("step-remove", part),
        Step::Remove { part, manner: Manner::Pulled } => with_place("step-pull", part),
        Step::Refit { part, new_seal: false } => with_place("step-refit", part),
        Step::Refit { part, new_seal: true } => with_place("step-refit-new-seal", part),
        Step::Unplug { connector } => with_place("step-unplug", connector),
        Step::Plug { connector } => with_place("step-plug", connector),
        Step::Key { position } => plain(key_position_key(*position)),
        Step::Measure { function, red, black } => words.say(
            meter_function_key(*function),
            &[("red", place(red, words).into()), ("black", place(black, words).into())],
        ),
        Step::MeasureFromFront { function, red, black } => {
            let measure = caption(
                &Step::Measure { function: *function, red: red.clone(), black: black.clone() },
                words,
            );
            words.say("step-from-front", &[("measure", measure.into())])
        }
        Step::Wiggle { place: at, function, red, black } => words.say(
            "step-wiggle",
            &[
                ("place", place(at, words).into()),
                ("function", meter_function(*function).into()),
                ("red", place(red, words).into()),
                ("black", place(black, words).into()),
            ],
        ),
        Step::TestLamp { tip, clip } => words.say(
            "step-test-lamp",
            &[("tip", place(tip, words).into()), ("clip", place(clip, words).into())],
        ),
        Step::Clamp { wire } => with_place("step-clamp", wire),
        Step::ZeroClamp => plain("step-zero-clamp"),
        Step::Scope { signal: Signal::CoilCurrent, valve } => {
            with_place("step-scope-current", valve)
        }
        Step::Scope { signal: Signal::DriverPin, valve } => with_place("step-scope-pin", valve),
        Step::ReplaceMeterFuse => plain("step-replace-meter-fuse"),
        Step::ZeroLeads => plain("step-zero-leads"),
        Step::FitGauge => plain("step-fit-gauge"),
        Step::RemoveGauge => plain("step-remove-gauge"),
        Step::ReadGauge { rpm: None, warm: false } => plain("step-read-gauge-idle"),
        Step::ReadGauge { rpm: None, warm: true } => plain("step-read-gauge-idle-warm"),
        Step::ReadGauge { rpm: Some(rpm), warm } => words.say(
            if *warm { "step-read-gauge-held-warm" } else { "step-read-gauge-held" },
            &[("rpm", (*rpm).into())],
        ),
        Step::Power { valve, seconds, reversed } => words.say(
            if *reversed { "step-power-reversed" } else { "step-power" },
            &[("place", place(valve, words).into()), ("seconds", (*seconds).into())],
        ),
        Step::Command { valve, on: true } => with_place("step-command-on", valve),
        Step::Command { valve, on: false } => with_place("step-command-off", valve),
        Step::ReadCodes => plain("step-read-codes"),
        Step::ReadFreezeFrame => plain("step-read-freeze-frame"),
        Step::ReadLiveData => plain("step-read-live-data"),
        Step::ReadLiveItems { items } => {
            let names: Vec<String> = items
                .iter()
                .map(|item| words.say(reader_words::live_item_key(*item), &[]))
                .collect();
            words.say("step-read-live-items", &[("items", words.all_of(&names).into())])
        }
        Step::ReadReadiness => plain("step-read-readiness"),
        Step::ReadTestResults => plain("step-read-test-results"),
        Step::ReadVehicleInformation => plain("step-read-vehicle-information"),
        Step::ClearCodes => plain("step-clear-codes"),
        Step::Drive { route, stop_after: None } => with_place("step-drive", route),
        Step::Drive { route, stop_after: Some(seconds) } => words.say(
            "step-drive-part",
            &[("place", place(route, words).into()), ("seconds", (*seconds).into())],
        ),
        Step::Suspect { fault: name, percent } => words.say(
            "step-suspect",
            &[("fault", fault(name, words).into()), ("percent", (*percent).into())],
        ),
        Step::Predict { least, most, of } => prediction(*least, *most, *of, words),
        Step::PredictSign { sign: Sign::Code(code) } => {
            words.say("step-predict-code", &[("code", code.to_string().into())])
        }
        Step::Note { .. } => plain("step-note"),
        Step::PredictSign { sign } => plain(sign_key(*sign)),
        Step::Commit { fault } => {
            words.say("step-commit", &[("fault", diagnosis(fault.as_ref(), words).into())])
        }
        Step::AskHint { grade } => plain(hint_grade_key(*grade)),
        Step::AskApproval => plain("step-ask-approval"),
        Step::Fit { valve, part_number } => words.say(
            "step-fit",
            &[("place", place(valve, words).into()), ("number", part_number.as_str().into())],
        ),
        Step::Clean { valve } => with_place("step-clean", valve),
        Step::Mend { element } => with_place("step-mend", element),
        Step::Replace { element } => with_place("step-replace", element),
        Step::TopUpOil => plain("step-top-up"),
        Step::ChangeOil { grade } => {
            words.say("step-change-oil", &[("grade", grade.word().into())])
        }
        Step::Write { section, .. } => plain(section_key(*section)),
        Step::ReportCode { code } => {
            words.say("step-report-code", &[("code", code.to_string().into())])
        }
        Step::HandOver { ending } => plain(ending_key(*ending)),
    }
}

fn prediction(least: f64, most: Bound, of: Option<Quantity>, words: &Words) -> String {
    let value = |value| short_number(value, PREDICTED_DECIMALS, words);
    let unit = of.map_or("", unit);
    let text = match most {
        Bound::Value(most) => words.say(
            "step-predict-range",
            &[("least", value(least).into()), ("most", value(most).into()), ("unit", unit.into())],
        ),
        Bound::OverLimit if least >= OVER_LIMIT_ONLY => {
            // Over limit is said of a resistance unless something else is named.
            let unit = if of == Some(Quantity::Ohms) { "" } else { unit };
            words.say("step-predict-over-limit", &[("unit", unit.into())])
        }
        Bound::OverLimit => words
            .say("step-predict-above", &[("least", value(least).into()), ("unit", unit.into())]),
    };
    // Old sessions have predictions without a unit.
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The sign of a quantity's unit.
const fn unit(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Volts => "V",
        Quantity::Ohms => "\u{3a9}",
        Quantity::Amps => "A",
        Quantity::Bar => "bar",
    }
}

const fn sign_key(sign: Sign) -> &'static str {
    match sign {
        Sign::Click(Click::Clear) => "step-predict-click-clear",
        Sign::Click(Click::Dull) => "step-predict-click-dull",
        Sign::Click(Click::None) => "step-predict-click-none",
        Sign::Glow(Glow::Bright) => "step-predict-glow-bright",
        Sign::Glow(Glow::Dim) => "step-predict-glow-dim",
        Sign::Glow(Glow::Dark) => "step-predict-glow-dark",
        Sign::Code(_) | Sign::NoCodes => "step-predict-no-codes",
    }
}

const fn customer_topic_key(topic: CustomerTopic) -> &'static str {
    match topic {
        CustomerTopic::Symptom => "step-ask-symptom",
        CustomerTopic::When => "step-ask-when",
        CustomerTopic::Service => "step-ask-service",
        CustomerTopic::Repairs => "step-ask-repairs",
    }
}

const fn service_topic_key(topic: ServiceTopic) -> &'static str {
    match topic {
        ServiceTopic::Wiring => "step-consult-wiring",
        ServiceTopic::Limits => "step-consult-limits",
        ServiceTopic::Procedure => "step-consult-procedure",
        ServiceTopic::Parts => "step-consult-parts",
        ServiceTopic::Codes => "step-consult-codes",
    }
}

const fn key_position_key(position: KeyPosition) -> &'static str {
    match position {
        KeyPosition::Off => "step-key-off",
        KeyPosition::On => "step-key-on",
        KeyPosition::Start => "step-key-start",
        KeyPosition::Crank => "step-key-crank",
    }
}

const fn meter_function_key(function: MeterFunction) -> &'static str {
    match function {
        MeterFunction::Volts => "step-measure-volts",
        MeterFunction::Ohms => "step-measure-ohms",
        MeterFunction::Amps => "step-measure-amps",
    }
}

const fn section_key(section: Section) -> &'static str {
    match section {
        Section::Concern => "step-write-concern",
        Section::Cause => "step-write-cause",
        Section::Correction => "step-write-correction",
    }
}

const fn ending_key(ending: Ending) -> &'static str {
    match ending {
        Ending::Repaired => "step-hand-over-repaired",
        Ending::NoFaultFound => "step-hand-over-no-fault",
        Ending::Referred => "step-hand-over-referred",
        Ending::Unsafe => "step-hand-over-unsafe",
        Ending::Declined => "step-hand-over-declined",
    }
}

const fn hint_grade_key(grade: HintGrade) -> &'static str {
    match grade {
        HintGrade::Question => "step-hint-question",
        HintGrade::Area => "step-hint-area",
        HintGrade::Kind => "step-hint-kind",
        HintGrade::Step => "step-hint-step",
    }
}

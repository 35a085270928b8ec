//! A step as a line of text that [`parse`](super::step_parser::parse) reads back.

use super::verbs::Verb;
use crate::faults::FaultName;
use crate::instruments::code_reader::LiveItem;
use crate::instruments::multimeter::MeterFunction;
use crate::instruments::scope::Signal;
use crate::instruments::test_lamp::Glow;
use crate::physics::stroke::Click;
use crate::session::step::{
    Bound, CustomerTopic, Ending, KeyPosition, Manner, Quantity, Section, ServiceTopic, Sign, Step,
};

/// Least value of a prediction that only "over limit" meets: beyond what any range of the meter
/// shows, and finite, because a journal cannot hold an infinite number.
pub const OVER_LIMIT_ONLY: f64 = 1e9;

/// Engine speeds at which a gauge is read by a typed step [rpm].
pub const HELD_RPM: [u16; 7] = [1_000, 1_500, 2_000, 2_500, 3_000, 3_500, 4_000];

/// The line that stands for a step.
///
/// ```
/// use faultwright::session::step::{KeyPosition, Step};
/// use faultwright::wording::step_words::line;
///
/// assert_eq!(line(&Step::Key { position: KeyPosition::On }), "key on");
/// ```
#[must_use]
pub fn line(step: &Step) -> String {
    let verb = verb(step).word();
    match step {
        Step::ReadJobSheet => format!("{verb} job-sheet"),
        Step::AskCustomer { topic } => format!("{verb} {}", customer_topic(*topic)),
        Step::Consult { topic } => format!("{verb} {}", service_topic(*topic)),
        Step::Look { place } => format!("{verb} {place}"),
        Step::Dipstick => verb.to_owned(),
        Step::Remove { part, .. } | Step::Refit { part, new_seal: false } => {
            format!("{verb} {part}")
        }
        Step::Refit { part, new_seal: true } => format!("{verb} {part} with new-seal"),
        Step::Unplug { connector } | Step::Plug { connector } => format!("{verb} {connector}"),
        Step::Key { position } => format!("{verb} {}", key_position(*position)),
        Step::Measure { function, red, black } => {
            format!("{verb} {} {red} {black}", meter_function(*function))
        }
        Step::MeasureFromFront { function, red, black } => {
            format!("{verb} {} {red} {black} from-front", meter_function(*function))
        }
        Step::Wiggle { place, function, red, black } => {
            format!("{verb} {place} {} {red} {black}", meter_function(*function))
        }
        Step::TestLamp { tip, clip } => format!("{verb} {tip} {clip}"),
        Step::Clamp { wire } => format!("{verb} {wire}"),
        Step::ZeroClamp => format!("{verb} clamp"),
        Step::Scope { signal: watched, valve } => format!("{verb} {} {valve}", signal(*watched)),
        Step::ReplaceMeterFuse => format!("{verb} {METER_FUSE}"),
        Step::ZeroLeads => format!("{verb} leads"),
        Step::Power { valve, seconds, reversed } => {
            let end = if *reversed { " reversed" } else { "" };
            format!("{verb} {valve} for {seconds} s{end}")
        }
        Step::Command { valve, on } => format!("{verb} {valve} {}", if *on { "on" } else { "off" }),
        Step::ReadCodes | Step::ClearCodes => format!("{verb} codes"),
        Step::ReadFreezeFrame => format!("{verb} freeze-frame"),
        Step::ReadLiveData => format!("{verb} live-data"),
        Step::ReadLiveItems { items } => {
            let words: Vec<&str> = items.iter().map(|item| live_item(*item)).collect();
            format!("{verb} live-data {}", words.join(" "))
        }
        Step::ReadReadiness => format!("{verb} readiness"),
        Step::ReadTestResults => format!("{verb} test-results"),
        Step::ReadVehicleInformation => format!("{verb} vehicle-information"),
        Step::Drive { route, stop_after: None } => format!("{verb} {route}"),
        Step::Drive { route, stop_after: Some(seconds) } => {
            format!("{verb} {route} for {seconds} s")
        }
        Step::Suspect { fault, percent } => format!("{verb} {} {percent}%", fault_words(fault)),
        Step::Predict { least, most, of } => {
            format!("{verb} {}", prediction(*least, *most, *of))
        }
        Step::Note { text } => format!("{verb} {}", written(text)),
        Step::PredictSign { sign } => format!("{verb} {}", sign_words(*sign)),
        Step::Commit { fault } => match fault {
            Some(fault) => format!("{verb} {}", fault_words(fault)),
            None => format!("{verb} no-fault"),
        },
        Step::AskHint { grade } => format!("{verb} {}", grade.word()),
        Step::AskApproval => format!("{verb} approval"),
        Step::Fit { valve, part_number } => format!("{verb} {valve} {part_number}"),
        Step::Clean { valve } => format!("{verb} {valve}"),
        Step::Mend { element } | Step::Replace { element } => format!("{verb} {element}"),
        Step::TopUpOil => format!("{verb} up"),
        Step::FitGauge => format!("{verb} fit"),
        Step::RemoveGauge => format!("{verb} remove"),
        Step::ReadGauge { rpm, warm } => {
            let speed = rpm.map_or_else(|| "idle".to_owned(), |rpm| rpm.to_string());
            format!("{verb} {speed}{}", if *warm { " warm" } else { "" })
        }
        Step::ChangeOil { grade } => format!("{verb} oil {}", grade.word()),
        Step::Write { section: part, text } => {
            format!("{verb} {} {}", section(*part), written(text))
        }
        Step::ReportCode { code } => format!("{verb} {code}"),
        Step::HandOver { ending: Ending::Repaired } => format!("{verb} over"),
        Step::HandOver { ending: other } => format!("{verb} over {}", ending(*other)),
    }
}

/// The verb of a step.
#[must_use]
pub const fn verb(step: &Step) -> Verb {
    match step {
        Step::ReadJobSheet
        | Step::ReadCodes
        | Step::ReadFreezeFrame
        | Step::ReadLiveData
        | Step::ReadLiveItems { .. }
        | Step::ReadReadiness
        | Step::ReadTestResults
        | Step::ReadVehicleInformation => Verb::Read,
        Step::AskCustomer { .. } | Step::AskApproval => Verb::Ask,
        Step::Consult { .. } => Verb::Consult,
        Step::Look { .. } => Verb::Look,
        Step::Dipstick => Verb::Dipstick,
        Step::Remove { manner: Manner::Careful, .. } => Verb::Remove,
        Step::Remove { manner: Manner::Pulled, .. } => Verb::Pull,
        Step::Refit { .. } => Verb::Refit,
        Step::Unplug { .. } => Verb::Unplug,
        Step::Plug { .. } => Verb::Plug,
        Step::Key { .. } => Verb::Key,
        Step::Measure { .. } | Step::MeasureFromFront { .. } => Verb::Measure,
        Step::Wiggle { .. } => Verb::Wiggle,
        Step::TestLamp { .. } => Verb::Lamp,
        Step::Clamp { .. } => Verb::Clamp,
        Step::Scope { .. } => Verb::Scope,
        Step::ZeroLeads | Step::ZeroClamp => Verb::Zero,
        Step::FitGauge | Step::RemoveGauge | Step::ReadGauge { .. } => Verb::Gauge,
        Step::Power { .. } => Verb::Power,
        Step::Command { .. } => Verb::Command,
        Step::ClearCodes => Verb::Clear,
        Step::Drive { .. } => Verb::Drive,
        Step::Suspect { .. } => Verb::Suspect,
        Step::Predict { .. } | Step::PredictSign { .. } => Verb::Predict,
        Step::Note { .. } => Verb::Note,
        Step::Commit { .. } => Verb::Commit,
        Step::AskHint { .. } => Verb::Hint,
        Step::Fit { .. } => Verb::Fit,
        Step::Clean { .. } => Verb::Clean,
        Step::Mend { .. } => Verb::Mend,
        Step::Replace { .. } | Step::ReplaceMeterFuse => Verb::Replace,
        Step::TopUpOil => Verb::Top,
        Step::ChangeOil { .. } => Verb::Change,
        Step::Write { .. } => Verb::Write,
        Step::ReportCode { .. } => Verb::Report,
        Step::HandOver { .. } => Verb::Hand,
    }
}

/// The word for a subject of a question to the customer.
#[must_use]
pub const fn customer_topic(topic: CustomerTopic) -> &'static str {
    match topic {
        CustomerTopic::Symptom => "symptom",
        CustomerTopic::When => "when",
        CustomerTopic::Service => "service",
        CustomerTopic::Repairs => "repairs",
    }
}

/// The word for a subject of service information.
#[must_use]
pub const fn service_topic(topic: ServiceTopic) -> &'static str {
    match topic {
        ServiceTopic::Wiring => "wiring",
        ServiceTopic::Limits => "limits",
        ServiceTopic::Procedure => "procedure",
        ServiceTopic::Parts => "parts",
        ServiceTopic::Codes => "codes",
    }
}

/// The word for a position of the key.
#[must_use]
pub const fn key_position(position: KeyPosition) -> &'static str {
    match position {
        KeyPosition::Off => "off",
        KeyPosition::On => "on",
        KeyPosition::Start => "start",
        KeyPosition::Crank => "crank",
    }
}

/// The word for something that can be chosen from live data.
#[must_use]
pub const fn live_item(item: LiveItem) -> &'static str {
    match item {
        LiveItem::EngineSpeed => "rpm",
        LiveItem::Load => "load",
        LiveItem::RoadSpeed => "speed",
        LiveItem::Coolant => "coolant",
        LiveItem::Oil => "oil",
        LiveItem::Supply => "supply",
        LiveItem::RunTime => "run-time",
    }
}

/// The word for a function of the meter.
#[must_use]
pub const fn meter_function(function: MeterFunction) -> &'static str {
    match function {
        MeterFunction::Volts => "volts",
        MeterFunction::Ohms => "ohms",
        MeterFunction::Amps => "amps",
    }
}

/// The word for the fuse inside the meter, beside those of the vehicle.
pub const METER_FUSE: &str = "meter-fuse";

/// The word for a signal that a scope watches.
#[must_use]
pub const fn signal(signal: Signal) -> &'static str {
    match signal {
        Signal::CoilCurrent => "current",
        Signal::DriverPin => "pin",
    }
}

/// The word for a part of the record.
#[must_use]
pub const fn section(section: Section) -> &'static str {
    match section {
        Section::Concern => "concern",
        Section::Cause => "cause",
        Section::Correction => "correction",
    }
}

/// The word for an ending.
#[must_use]
pub const fn ending(ending: Ending) -> &'static str {
    match ending {
        Ending::Repaired => "repaired",
        Ending::NoFaultFound => "no-fault",
        Ending::Referred => "referred",
        Ending::Unsafe => "unsafe",
        Ending::Declined => "declined",
    }
}

fn fault_words(fault: &FaultName) -> String {
    format!("{} {}", fault.kind.word(), fault.place)
}

/// A prediction without a quantity, as old sessions have it, has no unit here either.
fn prediction(least: f64, most: Bound, of: Option<Quantity>) -> String {
    let unit = of.map_or_else(String::new, |of| format!(" {}", quantity(of)));
    match most {
        Bound::Value(most) => format!("{least} to {most}{unit}"),
        // Over limit is said of a resistance unless something else is named.
        Bound::OverLimit if least >= OVER_LIMIT_ONLY && of == Some(Quantity::Ohms) => {
            "over-limit".to_owned()
        }
        Bound::OverLimit if least >= OVER_LIMIT_ONLY => format!("over-limit{unit}"),
        Bound::OverLimit => format!("above {least}{unit}"),
    }
}

/// The word for a quantity's unit.
#[must_use]
pub const fn quantity(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Volts => "volts",
        Quantity::Ohms => "ohms",
        Quantity::Amps => "amps",
        Quantity::Bar => "bar",
    }
}

fn sign_words(sign: Sign) -> String {
    match sign {
        Sign::Click(predicted) => format!("click {}", click(predicted)),
        Sign::Glow(predicted) => format!("glow {}", glow(predicted)),
        Sign::Code(code) => format!("codes {code}"),
        Sign::NoCodes => "codes none".to_owned(),
    }
}

/// The word for a click.
#[must_use]
pub const fn click(click: Click) -> &'static str {
    match click {
        Click::Clear => "clear",
        Click::Dull => "dull",
        Click::None => "none",
    }
}

/// The word for a test lamp's light.
#[must_use]
pub const fn glow(glow: Glow) -> &'static str {
    match glow {
        Glow::Bright => "bright",
        Glow::Dim => "dim",
        Glow::Dark => "dark",
    }
}

/// A text as it stands, or in quotation marks with its line breaks spelled out, where it would not
/// come back as it was.
fn written(text: &str) -> String {
    let plain = !text.is_empty()
        && text.trim() == text
        && !text.starts_with('"')
        && !text.contains(char::is_control);
    if plain {
        return text.to_owned();
    }
    let mut quoted = String::from('"');
    for character in text.chars() {
        match character {
            '\\' => quoted.push_str("\\\\"),
            '"' => quoted.push_str("\\\""),
            '\n' => quoted.push_str("\\n"),
            '\r' => quoted.push_str("\\r"),
            other => quoted.push(other),
        }
    }
    quoted.push('"');
    quoted
}

/// The text that `written` wrote: a text in quotation marks loses them, any other stays as it is.
#[must_use]
pub fn unwritten(line: &str) -> String {
    let inside = line.strip_prefix('"').and_then(|rest| rest.strip_suffix('"'));
    inside.and_then(unquoted).unwrap_or_else(|| line.to_owned())
}

/// The text between quotation marks, unless a mark inside it shows that they did not enclose it.
fn unquoted(inside: &str) -> Option<String> {
    let mut text = String::with_capacity(inside.len());
    let mut characters = inside.chars();
    while let Some(character) = characters.next() {
        match character {
            '"' => return None,
            '\\' => match characters.next()? {
                'n' => text.push('\n'),
                'r' => text.push('\r'),
                other => text.push(other),
            },
            other => text.push(other),
        }
    }
    Some(text)
}

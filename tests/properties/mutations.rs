//! Carried files in which something was changed at random: read or refused, never anything else.

use faultwright::report::problem_words;
use faultwright::scenario::load::{LoadError, ScenarioText, read_bytes};
use faultwright::scenario::problem::MOST_PROBLEMS;
use faultwright::wording::catalogue::Words;
use proptest::prelude::*;
use proptest::sample::Index;

/// What is done to a file.
#[derive(Debug, Clone)]
enum Mutation {
    /// A byte becomes another.
    Flip { at: Index, to: u8 },
    /// A part is taken out.
    Delete { at: Index, length: usize },
    /// A part stands there twice.
    Double { at: Index, length: usize },
    /// A part of the file stands at another place too.
    Copy { from: Index, length: usize, to: Index },
    /// A word that is hard on readers is put in.
    Insert { at: Index, word: &'static str },
}

const HARD: [&str; 16] = [
    "NaN",
    "-inf",
    "1e999",
    "0x",
    "'",
    "\"",
    "r#\"",
    "/*",
    "#![",
    "Some(",
    "\\u{110000}",
    "\u{202e}",
    "{a:",
    "..",
    "99999999999999999999",
    "()",
];

fn mutation() -> impl Strategy<Value = Mutation> {
    let index = any::<Index>;
    prop_oneof![
        (index(), any::<u8>()).prop_map(|(at, to)| Mutation::Flip { at, to }),
        (index(), 1_usize..80).prop_map(|(at, length)| Mutation::Delete { at, length }),
        (index(), 1_usize..80).prop_map(|(at, length)| Mutation::Double { at, length }),
        (index(), 1_usize..400, index()).prop_map(|(from, length, to)| Mutation::Copy {
            from,
            length,
            to
        }),
        (index(), prop::sample::select(&HARD[..]))
            .prop_map(|(at, word)| Mutation::Insert { at, word }),
    ]
}

fn mutate(bytes: &mut Vec<u8>, mutation: &Mutation) {
    if bytes.is_empty() {
        return;
    }
    let part = |bytes: &[u8], at: &Index, length: usize| {
        let at = at.index(bytes.len());
        at..(at + length).min(bytes.len())
    };
    match mutation {
        Mutation::Flip { at, to } => {
            let at = at.index(bytes.len());
            bytes[at] = *to;
        }
        Mutation::Delete { at, length } => {
            bytes.drain(part(bytes, at, *length));
        }
        Mutation::Double { at, length } => {
            let part = part(bytes, at, *length);
            let (end, copy) = (part.end, bytes[part].to_vec());
            bytes.splice(end..end, copy);
        }
        Mutation::Copy { from, length, to } => {
            let copy = bytes[part(bytes, from, *length)].to_vec();
            let to = to.index(bytes.len());
            bytes.splice(to..to, copy);
        }
        Mutation::Insert { at, word } => {
            let at = at.index(bytes.len());
            bytes.splice(at..at, word.bytes());
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(400) })]

    /// No panic; data, or problems with a place; and what is said of them stays short.
    #[test]
    fn prop_a_mutated_file_is_read_or_refused_with_few_words(
        which in any::<Index>(),
        in_vehicle in any::<bool>(),
        mutations in prop::collection::vec(mutation(), 1..6),
    ) {
        let carried = ScenarioText::carried();
        let text = &carried[which.index(carried.len())];
        let mut scenario = text.scenario_text.clone().into_bytes();
        let mut vehicle = text.vehicle_text.clone().into_bytes();
        for mutation in &mutations {
            mutate(if in_vehicle { &mut vehicle } else { &mut scenario }, mutation);
        }
        if let Err(error) = read_bytes(scenario, vehicle) {
            if let LoadError::Problems { problems, .. } = &error {
                prop_assert!(!problems.is_empty() && problems.len() <= MOST_PROBLEMS);
                prop_assert!(problems.iter().all(|it| it.line >= 1 && it.column >= 1));
                prop_assert!(problems.iter().all(|it| it.text.chars().count() <= 160));
            }
            let words = Words::for_language("en-GB");
            let said = problem_words::load_error(&error, &words);
            prop_assert!(!said.is_empty() && said.len() <= MOST_PROBLEMS + 1);
            for paragraph in &said {
                prop_assert!(paragraph.len() < 4_000, "{paragraph}");
                prop_assert!(!paragraph.contains("flaw-"), "{paragraph}");
            }
        }
    }
}

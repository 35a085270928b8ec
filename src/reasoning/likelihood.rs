//! How well one world's prediction agrees with what was seen.

use super::outcome::Aspect;
use crate::control_module::code::Code;
use crate::numerics::elementary::exp;
use std::collections::{BTreeMap, BTreeSet};

/// Chance that a kind of thing is perceived or noted wrongly.
const MISTAKE: f64 = 0.01;
/// Chance that one code differs from the prediction, for want of a condition that differed.
const CODE_MISTAKE: f64 = 0.03;
/// Likelihood of a quantity that lies anywhere but where it was predicted: what nobody foresaw
/// lowers a world, it never ends it.
const STRAY: f64 = 1e-4;

/// Codes that say something of this vehicle's faults; others come from elsewhere and say nothing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct KnownCodes {
    /// Codes that faults of this vehicle can set.
    pub own: BTreeSet<Code>,
    /// How likely one of them is to stand in the memory although no fault has set it, 0 to 1.
    pub false_ones: BTreeMap<Code, f64>,
}

/// Likelihood of the aspects seen, given those predicted; between zero and one, never zero.
///
/// `spread` is the extra standard deviation of each quantity that comes from severities
/// between the worlds that were simulated; empty means none.
#[must_use]
pub fn of_seen(seen: &[Aspect], predicted: &[Aspect], known: &KnownCodes, spread: &[f64]) -> f64 {
    if seen.len() != predicted.len() {
        return MISTAKE;
    }
    seen.iter()
        .zip(predicted)
        .enumerate()
        .map(|(place, (seen, predicted))| {
            of_aspect(seen, predicted, known, spread.get(place).copied().unwrap_or(0.0))
        })
        .product()
}

fn of_aspect(seen: &Aspect, predicted: &Aspect, known: &KnownCodes, spread: f64) -> f64 {
    match (seen, predicted) {
        (
            Aspect::Quantity { value, sigma: resolution },
            Aspect::Quantity { value: centre, sigma },
        ) => {
            let wide = sigma + spread;
            let off = (value - centre) / wide;
            // Probability of a band one resolution wide, the same band for every world, so that
            // a world that predicts sharply gains over one that allows anything.
            (resolution / (wide + resolution)) * exp(-0.5 * off * off) * (1.0 - STRAY) + STRAY
        }
        (Aspect::Kind { text: seen }, Aspect::Kind { text: predicted }) => {
            if seen == predicted {
                1.0 - MISTAKE
            } else {
                MISTAKE
            }
        }
        (Aspect::Codes { codes: seen }, Aspect::Codes { codes: predicted }) => known
            .own
            .iter()
            .map(|code| {
                if seen.contains(code) == predicted.contains(code) {
                    1.0 - CODE_MISTAKE
                } else {
                    CODE_MISTAKE
                }
            })
            .product(),
        (Aspect::StoredCodes { codes: seen }, Aspect::StoredCodes { codes: predicted }) => known
            .own
            .iter()
            .map(|code| {
                // Whoever left a false code has left it beside whatever the fault has set.
                let left = known.false_ones.get(code).copied().unwrap_or(0.0);
                let appears = left + (1.0 - left) * CODE_MISTAKE;
                match (seen.contains(code), predicted.contains(code)) {
                    (true, true) => 1.0 - CODE_MISTAKE,
                    (false, true) => CODE_MISTAKE,
                    (true, false) => appears,
                    (false, false) => 1.0 - appears,
                }
            })
            .product(),
        _ => STRAY,
    }
}

/// Whether two predictions would be told apart by somebody who sees one of them.
#[must_use]
pub fn differ(first: &[Aspect], second: &[Aspect], known: &KnownCodes) -> bool {
    first.len() != second.len()
        || first.iter().zip(second).any(|pair| match pair {
            (
                Aspect::Quantity { value: a, sigma: sigma_a },
                Aspect::Quantity { value: b, sigma: sigma_b },
            ) => (a - b).abs() > 2.0 * (sigma_a + sigma_b),
            (Aspect::Kind { text: a }, Aspect::Kind { text: b }) => a != b,
            (Aspect::Codes { codes: a }, Aspect::Codes { codes: b })
            | (Aspect::StoredCodes { codes: a }, Aspect::StoredCodes { codes: b }) => {
                known.own.iter().any(|code| a.contains(code) != b.contains(code))
            }
            _ => true,
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn quantity(value: f64) -> Aspect {
        Aspect::Quantity { value, sigma: 0.2 }
    }

    #[test]
    fn limit_nothing_is_impossible_and_agreement_is_best() {
        let known = KnownCodes::default();
        let near = of_seen(&[quantity(8.0)], &[quantity(8.1)], &known, &[]);
        let far = of_seen(&[quantity(8.0)], &[quantity(4_000.0)], &known, &[]);
        assert!(near > 0.3 && far > 0.0 && far < 1e-3);
        let other = of_seen(&[quantity(8.0)], &[Aspect::kind_for_test("over limit")], &known, &[]);
        assert!(other > 0.0 && other < 1e-3);
    }

    #[test]
    fn limit_codes_from_elsewhere_say_nothing() {
        let known = KnownCodes { own: BTreeSet::from([Code(0x0010)]), ..KnownCodes::default() };
        let seen = [Aspect::Codes { codes: BTreeSet::from([Code(0x0442), Code(0x0010)]) }];
        let predicted = [Aspect::Codes { codes: BTreeSet::from([Code(0x0010)]) }];
        assert!(of_seen(&seen, &predicted, &known, &[]) > 0.9);
        assert!(!differ(&seen, &predicted, &known));
    }

    /// A stored code that may be false speaks for its fault only as far as falsehood is unlikely:
    /// 0.97 against 0.3 + 0.7 x 0.03; pending, it speaks in full.
    #[test]
    fn closed_form_a_code_that_may_be_false_says_less() {
        let code = BTreeSet::from([Code(0x0010)]);
        let stored = |codes: &BTreeSet<Code>| [Aspect::StoredCodes { codes: codes.clone() }];
        let pending = |codes: &BTreeSet<Code>| [Aspect::Codes { codes: codes.clone() }];
        let known =
            KnownCodes { own: code.clone(), false_ones: BTreeMap::from([(Code(0x0010), 0.3)]) };
        let none = BTreeSet::new();
        let ratio = |seen: &[Aspect], with: &[Aspect], without: &[Aspect]| {
            of_seen(seen, with, &known, &[]) / of_seen(seen, without, &known, &[])
        };
        let by_stored = ratio(&stored(&code), &stored(&code), &stored(&none));
        assert!((by_stored - 0.97 / 0.321).abs() < 1e-12, "{by_stored}");
        let by_pending = ratio(&pending(&code), &pending(&code), &pending(&none));
        assert!((by_pending - 0.97 / 0.03).abs() < 1e-9, "{by_pending}");
    }

    proptest! {
        #[test]
        fn prop_likelihood_is_a_probability(seen in -1e6..1e6_f64, predicted in -1e6..1e6_f64, spread in 0.0..1e3_f64) {
            let value = of_seen(&[quantity(seen)], &[quantity(predicted)], &KnownCodes::default(), &[spread]);
            prop_assert!(value > 0.0 && value <= 1.0);
        }
    }

    impl Aspect {
        fn kind_for_test(text: &str) -> Self {
            Self::Kind { text: text.to_owned() }
        }
    }
}

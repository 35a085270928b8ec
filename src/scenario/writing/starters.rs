//! Texts to begin a case with: a small one for each carried vehicle, and every carried scenario.

use crate::scenario::carried::SCENARIOS;

/// A small text for each carried vehicle, by the name of the vehicle: it checks clean and deals cases as it is.
const STARTERS: [(&str, &str); 4] = [
    ("harrowfen-dray", include_str!("../../../assets/starters/harrowfen-dray.ron")),
    ("marlgate-teal", include_str!("../../../assets/starters/marlgate-teal.ron")),
    ("coldbeck-heron", include_str!("../../../assets/starters/coldbeck-heron.ron")),
    ("brackenholm-bittern", include_str!("../../../assets/starters/brackenholm-bittern.ron")),
];

/// What a case can be begun with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Starter {
    /// Name of the vehicle, or of the carried scenario.
    pub name: &'static str,
    /// It is a carried scenario, worked out to its end.
    pub is_scenario: bool,
    /// The text.
    pub text: &'static str,
}

/// Everything that a case can be begun with, the small ones first.
#[must_use]
pub fn starters() -> Vec<Starter> {
    let small = STARTERS.map(|(name, text)| Starter { name, is_scenario: false, text });
    let carried = SCENARIOS.map(|it| Starter { name: it.name, is_scenario: true, text: it.text });
    small.into_iter().chain(carried).collect()
}

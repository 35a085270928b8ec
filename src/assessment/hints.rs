//! What hints cost in marks.
//!
//! A pure function of the log and the rubric: what a hint told does not matter, only of what grade it was.
//! As long as the till stands still the evidence is the same, and whoever asks for more pays for the dearest
//! grade alone: to begin with the least costs nothing extra.

use super::rubric::HintPrices;
use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::session::step::HintGrade;
use crate::units::{Minutes, Money};

/// A hint that was asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HintTaken {
    /// The entry of the log.
    pub entry: usize,
    /// Its grade.
    pub grade: HintGrade,
    /// What it added to the price, in points out of a hundred.
    pub points: u8,
}

/// Every hint that was asked for, with its price.
#[must_use]
pub fn hints_taken(log: &[Entry], prices: &HintPrices) -> Vec<HintTaken> {
    let mut taken = Vec::new();
    let mut paid = 0;
    for (entry, logged) in log.iter().enumerate() {
        for event in &logged.events {
            match event {
                Event::Spent { minutes: Minutes(0), money: Money(0) } => {}
                Event::Spent { .. } => paid = 0,
                Event::HintAsked { grade } => {
                    let price = prices.of(*grade);
                    let points = price.saturating_sub(paid);
                    paid = paid.max(price);
                    taken.push(HintTaken { entry, grade: *grade, points });
                }
                _ => {}
            }
        }
    }
    taken
}

/// The price of hints together, in points out of a hundred.
#[must_use]
pub fn price(taken: &[HintTaken]) -> f64 {
    taken.iter().map(|hint| f64::from(hint.points)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::step::Step;

    const PRICES: HintPrices = HintPrices { question: 1, area: 2, kind: 4, step: 8 };

    fn hint(grade: HintGrade) -> Entry {
        Entry { step: Step::AskHint { grade }, events: vec![Event::HintAsked { grade }] }
    }

    fn work(minutes: u32) -> Entry {
        let spent = Event::Spent { minutes: Minutes(minutes), money: Money(0) };
        Entry { step: Step::Dipstick, events: vec![spent] }
    }

    fn paid(log: &[Entry]) -> f64 {
        price(&hints_taken(log, &PRICES))
    }

    #[test]
    fn closed_form_between_two_steps_the_dearest_hint_is_paid_once() {
        use HintGrade::{Area, Kind, Question, Step};
        assert_eq!(paid(&[]), 0.0);
        assert_eq!(paid(&[hint(Question), hint(Area), hint(Kind), hint(Step)]), 8.0);
        assert_eq!(paid(&[hint(Step), hint(Question), hint(Step)]), 8.0);
        assert_eq!(paid(&[hint(Area), work(0), hint(Area)]), 2.0);
        assert_eq!(paid(&[hint(Area), work(3), hint(Area), work(3), hint(Step)]), 12.0);
    }

    /// A hint that was refused was not told and is not paid.
    #[test]
    fn limit_a_refused_hint_costs_nothing() {
        use crate::session::event::Refusal;
        let step = Step::AskHint { grade: HintGrade::Step };
        let refused = Entry { step, events: vec![Event::Refused { reason: Refusal::NoHints }] };
        assert_eq!(paid(&[refused]), 0.0);
    }
}

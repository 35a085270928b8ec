//! How hard the case is: worked out beside the window, and shown beside the value of what was saved last.

use super::Writer;
use crate::reasoning::plan::budget::Bounds;
use crate::reasoning::world_store::WorldStore;
use crate::trial::hardness::{CASES, Hardness, Progress, hardness};
use crate::trial::runner::TrialError;
use crate::trial::text::name;
use crate::wording::amounts::{number, units};
use crate::wording::catalogue::Words;
use crate::workshop::desk::trouble::Trouble;
use crate::workshop::desk::work::{Became, Work};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// What is worked out for a text.
pub struct Measuring {
    text: String,
    currency: String,
    is_over: Arc<AtomicBool>,
    work: Work<Result<Option<Hardness>, TrialError>>,
}

impl Drop for Measuring {
    fn drop(&mut self) {
        self.is_over.store(true, Ordering::Relaxed);
    }
}

/// What was found.
#[derive(Debug, Clone)]
struct Found {
    currency: String,
    hardness: Hardness,
}

/// What is known of the text as it was saved last, and of the one that was asked about last.
#[derive(Default)]
pub struct Known {
    saved: Option<Found>,
    now: Option<(String, Found)>,
}

impl Writer {
    /// Begins to work out how hard the case is, if the text is free of problems.
    pub(super) fn measure(&mut self, store: WorldStore, words: &Arc<Words>) {
        let Some(loaded) = self.loaded.clone().filter(|_| self.measuring.is_none()) else { return };
        let (is_over, words) = (Arc::new(AtomicBool::new(false)), Arc::clone(words));
        let stops = Arc::clone(&is_over);
        let currency = loaded.scenario.prices.currency.clone();
        let text = words.say("writer-measuring", &[]);
        let work = Work::begin(&self.wake, text, move |stage| {
            hardness(&loaded, &store, &|progress| {
                let (key, done, of) = match progress {
                    Progress::Worlds(done, of) => ("progress-worlds", done, of),
                    Progress::Sessions(done, of) => ("writer-measuring-sessions", done, of),
                };
                stage.tell(words.say(key, &[("done", done.into()), ("of", of.into())]), done, of);
                !stops.load(Ordering::Relaxed)
            })
        });
        let text = self.manuscript.text().to_owned();
        self.view.hardness.problem = None;
        self.measuring = Some(Measuring { text, currency, is_over, work });
        self.show_progress();
    }

    /// Stops it.
    pub(super) fn stop_measuring(&mut self) {
        self.measuring = None;
        self.show_progress();
    }

    fn show_progress(&mut self) {
        self.view.hardness.under_way = self.measuring.as_ref().map(|measuring| {
            let busy = measuring.work.busy();
            (busy.text, percent(busy.share.unwrap_or(0.0)))
        });
    }

    /// Hears what has come of it; whether anything has.
    pub(super) fn hear_measured(&mut self, words: &Words) -> bool {
        let Some(measuring) = &self.measuring else { return false };
        let became = measuring.work.look();
        let before = self.view.hardness.under_way.clone();
        match became {
            Became::Pending => {
                self.show_progress();
                return before != self.view.hardness.under_way;
            }
            Became::Lost => {
                self.view.hardness.problem = Some(words.say("window-broke-off", &[]));
            }
            Became::Done(Err(error)) => {
                let trouble = match error {
                    TrialError::Draw(error) => {
                        Trouble::from(crate::scenario::deal::DealError::from(error))
                    }
                    TrialError::Vehicle(error) => Trouble::from(error),
                };
                self.view.hardness.problem = Some(trouble.sentence(words));
            }
            Became::Done(Ok(None)) => {}
            Became::Done(Ok(Some(hardness))) => {
                let found = Found { currency: measuring.currency.clone(), hardness };
                if measuring.text == self.manuscript.saved() {
                    self.hard.saved = Some(found.clone());
                }
                self.hard.now = Some((measuring.text.clone(), found));
            }
        }
        self.stop_measuring();
        self.show_hardness(words);
        true
    }

    /// What was worked out for this text is that of the saved one now.
    pub(super) fn hardness_is_saved(&mut self) {
        if let Some((text, found)) = &self.hard.now
            && text == self.manuscript.saved()
        {
            self.hard.saved = Some(found.clone());
        }
    }

    /// Brings the table to what is known.
    pub(super) fn show_hardness(&mut self, words: &Words) {
        let Known { saved, now } = &self.hard;
        self.view.hardness.is_old =
            now.as_ref().is_some_and(|(text, _)| text != self.manuscript.text());
        let column = |found: Option<&Found>| found.map(|found| values(found, words));
        let (saved, now) = (column(saved.as_ref()), column(now.as_ref().map(|(_, found)| found)));
        let names = || {
            let plain = ["writer-hard-cost", "writer-hard-entropy"].map(|key| words.say(key, &[]));
            let policies = crate::virtual_apprentices::policy::Policy::ALL;
            plain.into_iter().chain(policies.map(|policy| words.say(name(policy), &[])))
        };
        let is_known = saved.is_some() || now.is_some();
        let unknown = words.say("writer-hard-unknown", &[]);
        let value = |column: &Option<Vec<String>>, row: usize| {
            column.as_ref().and_then(|it| it.get(row)).unwrap_or(&unknown).clone()
        };
        self.view.hardness.rows = names()
            .filter(|_| is_known)
            .enumerate()
            .map(|(row, name)| [name, value(&saved, row), value(&now, row)])
            .collect();
    }
}

/// The values in the order of the rows.
fn values(found: &Found, words: &Words) -> Vec<String> {
    let Found { currency, hardness } = found;
    let money = |amount| units(amount, 0, currency, words);
    let range = |bounds: Bounds| {
        let (least, most) = (money(bounds.lower), money(bounds.upper));
        // Bounds that read the same are one figure.
        if least == most {
            return least;
        }
        words.say("writer-hard-range", &[("least", least.into()), ("most", most.into())])
    };
    let bits = number(hardness.entropy, 2, words);
    let plain = [range(hardness.cost), words.say("writer-hard-bits", &[("bits", bits.into())])];
    let worked = hardness.policies.iter().map(|worked| {
        words.say(
            "writer-hard-worked",
            &[
                ("cost", range(worked.cost).into()),
                ("steps", number(worked.steps, 1, words).into()),
                ("right", worked.right.into()),
                ("of", CASES.into()),
            ],
        )
    });
    plain.into_iter().chain(worked).collect()
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "it was just brought into range"
)]
fn percent(share: f32) -> u8 {
    (share.clamp(0.0, 1.0) * 100.0).round() as u8
}

//! The code memory: which codes are pending, confirmed and permanent, with what goes with them.
//!
//! The life of one code is in [`crate::control_module::code_record`]. Here are the parts that all
//! codes share: the freeze frame, the decisions since the last clear, the counters, and the cycle.

use crate::control_module::code::Code;
use crate::control_module::code_record::CodeRecord;
use crate::control_module::code_report::{ClearReport, CodeReport, Readiness, ReportedCode};
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::known_code::{History, KnownCode, PastState, ReadinessGroup};
use crate::control_module::verdict::{Finding, Verdict};
use crate::control_module::warm_up::WarmUp;
use crate::numerics::digest::DigestBuilder;
use crate::units::{Celsius, Seconds, Tick};
use std::collections::BTreeMap;

/// The memory of one module.
#[derive(Debug, Clone, PartialEq)]
pub struct CodeMemory {
    known: BTreeMap<Code, KnownCode>,
    records: BTreeMap<Code, CodeRecord>,
    /// The freeze frame and the code that owns it.
    frame: Option<(Code, FreezeFrame)>,
    /// Decisions since the last clear: whether the monitor passed.
    decisions: BTreeMap<Code, bool>,
    warm_ups_since_clear: u8,
    running_ms_since_clear: u64,
    cycle: WarmUp,
}

impl CodeMemory {
    /// The memory as earlier driving has left it. A code in `history` that is in no list follows
    /// [`KnownCode::general`].
    #[must_use]
    pub fn new(known: impl IntoIterator<Item = KnownCode>, history: &History) -> Self {
        let known: BTreeMap<_, _> = known.into_iter().map(|known| (known.code, known)).collect();
        let mut decisions: BTreeMap<_, _> = known.keys().map(|code| (*code, true)).collect();
        let mut records = BTreeMap::new();
        let mut frame = None;
        for past in &history.codes {
            let rule = rule_of(&known, past.code);
            records.insert(past.code, CodeRecord::from_past(past.state, &rule));
            if matches!(past.state, PastState::Pending | PastState::ConfirmedWithLamp) {
                decisions.insert(past.code, false);
            }
            frame = frame.or(past.freeze_frame.map(|values| (past.code, values)));
        }
        for code in &history.undecided {
            decisions.remove(code);
        }
        Self {
            known,
            records,
            frame,
            decisions,
            warm_ups_since_clear: history.warm_ups_since_clear,
            running_ms_since_clear: u64::from(history.running_seconds_since_clear) * 1_000,
            cycle: WarmUp::default(),
        }
    }

    /// Takes what monitors say, with the values of the moment for the freeze frame.
    pub fn note(&mut self, findings: &[Finding], now: &FreezeFrame) {
        for finding in findings {
            match finding.verdict {
                Verdict::NotRun => {}
                Verdict::Passed => self.note_pass(finding.code),
                Verdict::Failed => self.note_failure(finding.code, now),
            }
        }
    }

    fn note_pass(&mut self, code: Code) {
        self.decisions.insert(code, true);
        if let Some(record) = self.records.get_mut(&code) {
            record.pass();
        }
    }

    fn note_failure(&mut self, code: Code, now: &FreezeFrame) {
        let rule = self.rule(code);
        self.decisions.insert(code, false);
        self.records.entry(code).or_default().fail(&rule);
        // Within one key cycle the frame never comes free, so what takes it here has begun to fail.
        self.frame.get_or_insert((code, *now));
    }

    /// The rule of a code.
    #[must_use]
    pub fn rule(&self, code: Code) -> KnownCode {
        rule_of(&self.known, code)
    }

    /// A start of the engine, with the coolant's temperature.
    pub fn engine_started(&mut self, coolant: Celsius) {
        self.cycle.engine_started(coolant);
    }

    /// The engine has run for another `elapsed_ms` \[ms\].
    pub fn engine_ran(&mut self, elapsed_ms: u64) {
        self.running_ms_since_clear = self.running_ms_since_clear.saturating_add(elapsed_ms);
    }

    /// The coolant's temperature with the engine running.
    pub fn note_coolant(&mut self, coolant: Celsius) {
        if self.cycle.take(coolant) {
            self.warm_ups_since_clear = self.warm_ups_since_clear.saturating_add(1);
        }
    }

    /// Key-off: closes the driving cycle, if the engine was started in it.
    pub fn key_off(&mut self) {
        let driven = self.cycle.is_driving_cycle();
        let warmed_up = self.cycle.is_complete();
        for record in self.records.values_mut() {
            record.key_off(driven, warmed_up);
        }
        self.cycle = WarmUp::default();
        self.drop_blank();
    }

    /// Erases everything but permanent codes, as service $04 and a disconnected battery do, and
    /// begins a new driving cycle.
    pub fn clear(&mut self) -> ClearReport {
        let erased = self.codes_that(|record| record.is_pending() || record.is_confirmed());
        self.records.values_mut().for_each(CodeRecord::clear);
        self.drop_blank();
        self.decisions.clear();
        self.warm_ups_since_clear = 0;
        self.running_ms_since_clear = 0;
        self.cycle = WarmUp::default();
        ClearReport { erased, permanent_left: self.codes_that(CodeRecord::is_permanent) }
    }

    /// Forgets records with nothing in them, and the freeze frame of a code that is no longer
    /// pending or confirmed.
    fn drop_blank(&mut self) {
        self.records.retain(|_, record| !record.is_blank());
        let records = &self.records;
        self.frame = self.frame.filter(|(code, _)| {
            records.get(code).is_some_and(|record| record.is_pending() || record.is_confirmed())
        });
    }

    fn codes_that(&self, has: impl Fn(&CodeRecord) -> bool) -> Vec<Code> {
        self.records.iter().filter(|(_, record)| has(record)).map(|(code, _)| *code).collect()
    }

    /// The freeze frame with the code that owns it.
    #[must_use]
    pub const fn freeze_frame(&self) -> Option<(Code, FreezeFrame)> {
        self.frame
    }

    /// Whether a code is confirmed.
    #[must_use]
    pub fn is_confirmed(&self, code: Code) -> bool {
        self.records.get(&code).is_some_and(CodeRecord::is_confirmed)
    }

    /// Whether any code asks for the warning lamp.
    #[must_use]
    pub fn commands_lamp(&self) -> bool {
        self.records.values().any(CodeRecord::lights_lamp)
    }

    /// Everything for a code reader.
    #[must_use]
    pub fn report(&self) -> CodeReport {
        let reported = |codes: Vec<Code>| {
            let owner = self.frame.map(|(code, _)| code);
            codes
                .into_iter()
                .map(|code| ReportedCode { code, has_freeze_frame: owner == Some(code) })
                .collect()
        };
        CodeReport {
            stored: reported(self.codes_that(CodeRecord::is_confirmed)),
            pending: reported(self.codes_that(CodeRecord::is_pending)),
            permanent: self.codes_that(CodeRecord::is_permanent),
            commands_lamp: self.commands_lamp(),
            readiness: self.readiness(),
            decisions: self
                .decisions
                .iter()
                .map(|(code, passed)| Finding {
                    code: *code,
                    verdict: if *passed { Verdict::Passed } else { Verdict::Failed },
                })
                .collect(),
            warm_ups_since_clear: self.warm_ups_since_clear,
            running_since_clear: Seconds(Tick(self.running_ms_since_clear).as_seconds()),
        }
    }

    fn readiness(&self) -> Vec<Readiness> {
        let mut groups: BTreeMap<ReadinessGroup, bool> = BTreeMap::new();
        for known in self.known.values() {
            if let Some(group) = known.readiness {
                *groups.entry(group).or_insert(true) &= self.decisions.contains_key(&known.code);
            }
        }
        groups.into_iter().map(|(group, is_complete)| Readiness { group, is_complete }).collect()
    }

    /// Adds the state to a fingerprint, field by field in declared order.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.whole(self.records.len() as u64);
        for (code, record) in &self.records {
            digest.whole(code.0.into());
            record.digest(digest);
        }
        digest.whole(self.frame.is_some().into());
        if let Some((code, values)) = &self.frame {
            digest.whole(code.0.into());
            values.digest(digest);
        }
        digest.whole(self.decisions.len() as u64);
        for (code, passed) in &self.decisions {
            digest.whole(code.0.into());
            digest.whole((*passed).into());
        }
        digest.whole(self.warm_ups_since_clear.into());
        digest.whole(self.running_ms_since_clear);
        self.cycle.digest(digest);
    }
}

/// The rule of a code, the general one where the list is silent, so that no finding is lost.
fn rule_of(known: &BTreeMap<Code, KnownCode>, code: Code) -> KnownCode {
    known.get(&code).copied().unwrap_or(KnownCode::general(code))
}

#[cfg(test)]
mod tests;

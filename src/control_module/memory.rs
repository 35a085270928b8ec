//! The code memory: which codes are pending, confirmed and permanent, with what goes with them.
//!
//! The life of one code is in [`crate::control_module::code_record`]. Here are the parts that all
//! codes share: the freeze frame, the decisions since the last clear, the counters, and the cycle.

use crate::control_module::code::Code;
use crate::control_module::code_record::{ClosedCycle, CodeRecord};
use crate::control_module::code_report::{ClearReport, CodeReport, Readiness, ReportedCode};
use crate::control_module::counters::{CounterReport, Counters};
use crate::control_module::drive_pattern::DrivePattern;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::known_code::{History, KnownCode, PastState, ReadinessGroup};
use crate::control_module::similar_conditions::Conditions;
use crate::control_module::test_result::{Measure, TestResult};
use crate::control_module::verdict::{Finding, Verdict};
use crate::control_module::warm_up::WarmUp;
use crate::numerics::digest::DigestBuilder;
use crate::units::{Celsius, KilometresPerHour, Seconds, Tick};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The memory of one module.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CodeMemory {
    known: BTreeMap<Code, KnownCode>,
    records: BTreeMap<Code, CodeRecord>,
    /// The freeze frame and the code that owns it.
    frame: Option<(Code, FreezeFrame)>,
    /// Decisions since the last clear: whether the monitor passed.
    decisions: BTreeMap<Code, bool>,
    /// Figures behind the decisions since the last clear.
    results: BTreeMap<(Code, Measure), TestResult>,
    counters: Counters,
    cycle: WarmUp,
    drive: DrivePattern,
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
        let mut memory = Self {
            known,
            records,
            frame,
            decisions,
            results: BTreeMap::new(),
            counters: Counters::from_past(
                history.warm_ups_since_clear,
                history.running_seconds_since_clear,
                history.kilometres_since_clear,
            ),
            cycle: WarmUp::default(),
            drive: DrivePattern::default(),
        };
        memory.note_results(&history.results);
        memory.counters.note_lamp(memory.commands_lamp());
        memory
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
        let record = self.records.entry(code).or_default();
        record.fail(&rule);
        if rule.is_misfire_or_fuel() {
            record.seen_under(Conditions::of(now));
        }
        self.keep_frame(&rule, now);
        self.counters.note_lamp(self.commands_lamp());
    }

    /// Keeps the values of the first code that fails. Within one key cycle the frame never comes
    /// free, so what takes it here has begun to fail. A code of misfire or of the fuel system takes
    /// it from another code, and from no code of its own rank.
    fn keep_frame(&mut self, rule: &KnownCode, now: &FreezeFrame) {
        let is_free = match self.frame {
            None => true,
            Some((owner, _)) => rule.is_misfire_or_fuel() && !self.rule(owner).is_misfire_or_fuel(),
        };
        if is_free {
            self.frame = Some((rule.code, *now));
        }
    }

    /// Takes the figures behind decisions, in the place of the last ones of the same test. One about
    /// a code that is not decided is not taken.
    pub fn note_results(&mut self, results: &[TestResult]) {
        for result in results {
            if self.decisions.contains_key(&result.code) {
                self.results.insert((result.code, result.measure), *result);
            }
        }
    }

    /// The figures behind the decisions since the last clear, in the order of codes and measures.
    pub fn results(&self) -> impl Iterator<Item = &TestResult> {
        self.results.values()
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

    /// The engine has run for another `elapsed_ms` \[ms\] while the vehicle moved at `speed`.
    pub fn engine_ran(&mut self, elapsed_ms: u64, speed: KilometresPerHour) {
        self.counters.ran(elapsed_ms, speed);
        self.drive.ran(elapsed_ms, speed);
    }

    /// The moment, with the engine running: for codes that are forgotten only in conditions like
    /// those in which they were set.
    pub fn note_conditions(&mut self, now: &FreezeFrame) {
        let conditions = Conditions::of(now);
        self.records.values_mut().for_each(|record| record.meet(&conditions));
    }

    /// The coolant's temperature with the engine running.
    pub fn note_coolant(&mut self, coolant: Celsius) {
        if self.cycle.take(coolant) {
            self.counters.warmed_up();
        }
    }

    /// Key-off: closes the driving cycle, if the engine was started in it.
    pub fn key_off(&mut self) {
        let closed = ClosedCycle {
            is_driving_cycle: self.cycle.is_driving_cycle(),
            is_warm_up: self.cycle.is_complete(),
            is_long_drive: self.drive.is_complete(),
        };
        self.records.values_mut().for_each(|record| record.key_off(closed));
        self.begin_cycle();
        self.drop_blank();
        self.counters.note_lamp(self.commands_lamp());
    }

    fn begin_cycle(&mut self) {
        self.cycle = WarmUp::default();
        self.drive = DrivePattern::default();
    }

    /// Erases everything but permanent codes, as service $04 and a disconnected battery do, and
    /// begins a new driving cycle.
    pub fn clear(&mut self) -> ClearReport {
        let erased = self.codes_that(|record| record.is_pending() || record.is_confirmed());
        self.records.values_mut().for_each(CodeRecord::clear);
        self.drop_blank();
        self.decisions.clear();
        self.results.clear();
        self.counters.clear();
        self.begin_cycle();
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

    /// Whether a code is confirmed and has failed in this driving cycle.
    #[must_use]
    pub fn is_confirmed_and_failing(&self, code: Code) -> bool {
        self.records.get(&code).is_some_and(|record| record.is_confirmed() && record.has_failed())
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
            warm_ups_since_clear: self.counters.report().warm_ups_since_clear,
            running_since_clear: Seconds(Tick(self.counters.running_ms_since_clear()).as_seconds()),
        }
    }

    /// Distances, times and warm-ups since the clear and with the lamp.
    #[must_use]
    pub fn counters(&self) -> CounterReport {
        self.counters.report()
    }

    /// Readiness by group, in the order of the groups that this module has.
    #[must_use]
    pub fn readiness(&self) -> Vec<Readiness> {
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
        digest.whole(self.results.len() as u64);
        self.results.values().for_each(|result| result.digest(digest));
        self.counters.digest(digest);
        self.cycle.digest(digest);
        self.drive.digest(digest);
    }
}

/// The rule of a code, the general one where the list is silent, so that no finding is lost.
fn rule_of(known: &BTreeMap<Code, KnownCode>, code: Code) -> KnownCode {
    known.get(&code).copied().unwrap_or(KnownCode::general(code))
}

#[cfg(test)]
mod tests;

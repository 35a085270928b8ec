use super::*;
use proptest::prelude::*;

const LIMITS: fn() -> CircuitLimits = CircuitLimits::default;
const OPEN: Reading = Reading::Fault(CircuitFault::Open);
const LOW: Reading = Reading::Fault(CircuitFault::Low);
const PERIOD_MS: u64 = 100;

/// A test fed every 100 ms.
struct Bench {
    test: DebouncedTest,
    limits: CircuitLimits,
    tick: Tick,
}

impl Bench {
    fn new(limits: CircuitLimits) -> Self {
        Self { test: DebouncedTest::new(), limits, tick: Tick(0) }
    }

    /// Feeds one reading for as many samples as fill `ms`, the first at once.
    fn feed(&mut self, reading: Reading, ms: u64) -> Verdict {
        for _ in 0..ms / PERIOD_MS {
            self.test.take(reading, PERIOD_MS, self.tick, &self.limits);
            self.tick = Tick(self.tick.0 + PERIOD_MS);
        }
        self.test.verdict(&self.limits)
    }
}

/// A standing fault: believed after the debounce, a verdict when it has then stood for the time to
/// mature, neither a sample sooner nor later.
#[test]
fn closed_form_a_standing_fault_takes_debounce_plus_maturing() {
    let mut bench = Bench::new(LIMITS());
    // The first sample is at 0 ms, so n samples reach to (n - 1) times 100 ms.
    assert_eq!(bench.feed(LOW, 200 + 3_000), Verdict::NotRun);
    assert_eq!(bench.feed(LOW, 100), Verdict::Failed);
    assert_eq!(bench.test.failed(), Some(CircuitFault::Low));
}

#[test]
fn closed_form_a_standing_pass_takes_as_long() {
    let mut bench = Bench::new(LIMITS());
    assert_eq!(bench.feed(Reading::Pass, 3_200), Verdict::NotRun);
    assert_eq!(bench.feed(Reading::Pass, 100), Verdict::Passed);
}

#[test]
fn limit_readings_shorter_than_the_debounce_never_count() {
    let mut bench = Bench::new(LIMITS());
    for _ in 0..500 {
        bench.feed(LOW, 200);
        assert_eq!(bench.feed(Reading::Pass, 100), Verdict::NotRun);
    }
    assert_eq!(bench.test.failing_ms, 0);
    assert_eq!(bench.test.interruptions, 0);
}

/// The counter loses with the same speed as it gains: 1 s up, 0.6 s down, and the 2.6 s that are
/// missing then.
#[test]
fn closed_form_the_counter_goes_up_and_down_alike() {
    let mut bench = Bench::new(CircuitLimits { interruptions_to_mature: None, ..LIMITS() });
    bench.feed(LOW, 200 + 100 + 1_000);
    assert_eq!(bench.test.failing_ms, 1_000);
    bench.feed(Reading::Pass, 200 + 100 + 600);
    assert_eq!(bench.test.failing_ms, 400);
    assert_eq!(bench.feed(LOW, 200 + 2_600), Verdict::NotRun);
    assert_eq!(bench.feed(LOW, 100), Verdict::Failed);
    assert_eq!(bench.feed(Reading::Pass, 200 + 3_000), Verdict::Failed);
    assert_eq!(bench.feed(Reading::Pass, 100), Verdict::NotRun, "healed, but not yet passed");
    assert_eq!(bench.feed(Reading::Pass, 2_900), Verdict::NotRun);
    assert_eq!(bench.feed(Reading::Pass, 100), Verdict::Passed);
}

#[test]
fn limit_a_moment_that_cannot_be_judged_moves_nothing() {
    let mut bench = Bench::new(LIMITS());
    bench.feed(LOW, 1_300);
    assert_eq!(bench.test.failing_ms, 1_000);
    bench.feed(Reading::NotRun, 60_000);
    assert_eq!(bench.test.failing_ms, 1_000);
    bench.feed(LOW, 300);
    assert_eq!(bench.test.failing_ms, 1_000, "believed again only after the debounce");
    assert_eq!(bench.test.interruptions, 1, "a fault that was out of sight did not go away");
    assert_eq!(bench.feed(LOW, 1_900), Verdict::NotRun);
    assert_eq!(bench.feed(LOW, 100), Verdict::Failed);
}

#[test]
fn limit_another_fault_first_heals_the_one_before() {
    let mut bench = Bench::new(LIMITS());
    assert_eq!(bench.feed(LOW, 3_300), Verdict::Failed);
    bench.feed(OPEN, 3_200);
    assert_eq!(bench.test.failed(), Some(CircuitFault::Low));
    bench.feed(OPEN, 100);
    assert_eq!(bench.test.failed(), None);
    bench.feed(OPEN, 2_900);
    assert_eq!(bench.test.failed(), None);
    bench.feed(OPEN, 100);
    assert_eq!(bench.test.failed(), Some(CircuitFault::Open));
}

/// A loose contact: the second interruption longer than the debounce is a verdict.
#[test]
fn limit_interruptions_mature_without_standing() {
    let mut bench = Bench::new(LIMITS());
    bench.feed(Reading::Pass, 1_000);
    assert_eq!(bench.feed(OPEN, 300), Verdict::NotRun);
    bench.feed(Reading::Pass, 5_000);
    assert_eq!(bench.feed(OPEN, 200), Verdict::Passed, "not believed yet");
    assert_eq!(bench.feed(OPEN, 100), Verdict::Failed);

    let mut patient = Bench::new(CircuitLimits { interruptions_to_mature: None, ..LIMITS() });
    for _ in 0..100 {
        assert_ne!(patient.feed(OPEN, 300), Verdict::Failed);
        patient.feed(Reading::Pass, 5_000);
    }
}

/// What matured by interruptions heals no faster than what stood.
#[test]
fn limit_a_loose_contact_heals_like_any_fault() {
    let mut bench = Bench::new(LIMITS());
    for reading in [OPEN, Reading::Pass, OPEN] {
        bench.feed(reading, 300);
    }
    assert_eq!(bench.test.failed(), Some(CircuitFault::Open));
    assert_eq!(bench.feed(Reading::Pass, 3_200), Verdict::Failed);
    assert_eq!(bench.feed(Reading::Pass, 100), Verdict::NotRun);
    bench.feed(LOW, 300);
    assert_eq!(bench.test.failed(), Some(CircuitFault::Low), "and counts on");
}

#[test]
fn limit_faults_that_change_into_each_other_are_no_interruptions() {
    let mut bench = Bench::new(LIMITS());
    for _ in 0..20 {
        bench.feed(LOW, 300);
        assert_ne!(bench.feed(OPEN, 300), Verdict::Failed);
    }
    assert_eq!(bench.test.interruptions, 1);
}

/// The second interruption shows another fault than the one with evidence: it must stand.
#[test]
fn limit_an_interruption_by_another_fault_does_not_mature_it() {
    let mut bench = Bench::new(LIMITS());
    bench.feed(LOW, 1_300);
    bench.feed(Reading::Pass, 300);
    assert_eq!(bench.test.failing_ms, 1_000);
    bench.feed(OPEN, 200 + 100 + 1_000);
    assert_eq!(bench.feed(OPEN, 2_900), Verdict::NotRun);
    assert_eq!(bench.feed(OPEN, 100), Verdict::Failed);
}

#[test]
fn limit_a_believed_fault_makes_a_pass_start_again() {
    let mut bench = Bench::new(LIMITS());
    assert_eq!(bench.feed(Reading::Pass, 3_300), Verdict::Passed);
    assert_eq!(bench.feed(LOW, 300), Verdict::NotRun);
    assert_eq!(bench.feed(Reading::Pass, 3_200), Verdict::NotRun);
    assert_eq!(bench.feed(Reading::Pass, 100), Verdict::Passed);
}

#[test]
fn closed_form_a_healed_fault_leaves_nothing_to_the_next() {
    let mut bench = Bench::new(CircuitLimits { interruptions_to_mature: None, ..LIMITS() });
    bench.feed(LOW, 3_300);
    bench.feed(Reading::Pass, 3_300);
    assert_eq!(bench.feed(OPEN, 3_200), Verdict::NotRun);
    assert_eq!(bench.feed(OPEN, 100), Verdict::Failed);
}

#[test]
fn limit_without_times_the_first_reading_decides() {
    let limits = CircuitLimits { debounce_ms: 0, mature_ms: 0, ..LIMITS() };
    assert_eq!(DebouncedTest::new().verdict(&limits), Verdict::NotRun);
    assert_eq!(Bench::new(limits).feed(OPEN, 100), Verdict::Failed);
    assert_eq!(Bench::new(limits).feed(Reading::Pass, 100), Verdict::Passed);
}

fn any_reading() -> impl Strategy<Value = Reading> {
    prop_oneof![
        Just(Reading::NotRun),
        Just(Reading::Pass),
        Just(OPEN),
        Just(LOW),
        Just(Reading::Fault(CircuitFault::High)),
    ]
}

proptest! {
    /// No failure without enough evidence: without counting interruptions, a test can only have
    /// failed for a fault that was read for at least debounce plus maturing in all.
    #[test]
    fn prop_a_failure_needs_its_evidence(
        runs in prop::collection::vec((any_reading(), 1_u64..40), 1..40),
    ) {
        let mut bench = Bench::new(CircuitLimits { interruptions_to_mature: None, ..LIMITS() });
        let mut read = Vec::new();
        for (reading, samples) in runs {
            bench.feed(reading, samples * PERIOD_MS);
            read.push((reading, samples * PERIOD_MS));
            if let Some(fault) = bench.test.failed() {
                let of_fault: u64 = read
                    .iter()
                    .filter(|(reading, _)| *reading == Reading::Fault(fault))
                    .map(|(_, ms)| ms)
                    .sum();
                prop_assert!(of_fault > 3_200, "{fault:?} after {of_fault} ms");
            }
        }
    }

    /// Equal states have equal fingerprints and, as far as these runs reach, no others.
    #[test]
    fn prop_the_fingerprint_follows_the_state(
        one in prop::collection::vec((any_reading(), 1_u64..40), 0..6),
        two in prop::collection::vec((any_reading(), 1_u64..40), 0..6),
    ) {
        let run = |runs: &[(Reading, u64)]| {
            let mut bench = Bench::new(LIMITS());
            for (reading, samples) in runs {
                bench.feed(*reading, samples * PERIOD_MS);
            }
            let mut digest = DigestBuilder::new("test");
            bench.test.digest(&mut digest);
            (bench.test, digest.finish())
        };
        let (one, two) = (run(&one), run(&two));
        prop_assert_eq!(one.0 == two.0, one.1 == two.1);
    }
}

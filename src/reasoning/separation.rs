//! Which tests tell a fault from its rivals.

use super::belief::cost_of;
use super::likelihood::{KnownCodes, differ};
use super::outcome::{Aspect, aspects};
use super::probe::{Probe, probes, probes_for, steps_to};
use super::world::{Hypothesis, World};
use crate::faults::{FaultKind, FaultName};
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::step::{KeyPosition, Step};
use crate::vehicle::error::VehicleError;
use crate::vehicle::spec::{HarnessElement, VehicleSpec};

/// A test dearer than this share of a come-back is not affordable.
pub(super) const AFFORDABLE_SHARE: f64 = 0.75;

/// How one rival is told apart.
#[derive(Debug, Clone, PartialEq)]
pub struct Separation {
    /// The rival; no fault is "nothing wrong".
    pub rival: Hypothesis,
    /// Tests that tell it apart, cheapest first, as far as they were looked for.
    pub tests: Vec<Step>,
    /// How many tests it takes to be sure.
    pub wanted: usize,
}

impl Separation {
    /// Whether enough tests tell it apart.
    #[must_use]
    pub const fn is_enough(&self) -> bool {
        self.tests.len() >= self.wanted
    }
}

/// Tests that must tell each rival from the truth.
const WANTED_TESTS: usize = 2;

/// How many tests are wanted between two hypotheses: two, but one between contacts of the same
/// connector, which only the eye tells apart, because a probe reaches the harness side alone; and
/// one between hypotheses that have a fault in common: once that is mended, what is left can be
/// looked for anew.
fn wanted(spec: &VehicleSpec, truth: &[FaultName], rival: &[FaultName]) -> usize {
    let connector = |faults: &[FaultName]| match faults {
        [fault] => match spec.element(&fault.place) {
            Some(HarnessElement::Pin { connector, .. }) => Some(connector.clone()),
            _ => None,
        },
        _ => None,
    };
    if truth.iter().any(|fault| rival.contains(fault)) {
        return 1;
    }
    match (connector(truth), connector(rival)) {
        (Some(first), Some(second)) if first == second => 1,
        _ => WANTED_TESTS,
    }
}

/// For every rival, the cheapest affordable tests that tell it from the truth, as many as are
/// wanted; where a contact that minds heat is among the two, on a warm engine too. Rivals come
/// without a history; `history` begins one properly, which is only asked for when instruments alone
/// do not tell enough and what the module remembers must count as a test.
///
/// # Errors
/// [`VehicleError`] when a session cannot be simulated.
pub fn separations<'w>(
    briefing: &Briefing,
    faults: &[FaultName],
    truth: &Session,
    rivals: impl Iterator<Item = (usize, &'w World)>,
    history: &mut dyn FnMut(usize) -> Result<Session, VehicleError>,
) -> Result<Vec<Separation>, VehicleError> {
    let known = KnownCodes { own: briefing.vehicle.own_codes(), ..KnownCodes::default() };
    let most = AFFORDABLE_SHARE * briefing.prices.comeback.as_units();
    let mut tests = Vec::new();
    let mut remembered = None;
    let rivals: Vec<_> = rivals.collect();
    let mut considered = probes(&briefing.vehicle, &briefing.tools);
    let suspected: Vec<_> =
        core::iter::once(faults).chain(rivals.iter().map(|(_, r)| &r.faults[..])).collect();
    considered.extend(probes_for(&briefing.vehicle, &briefing.tools, &suspected));
    for probe in considered {
        if matches!(probe.showing(), Step::ReadCodes) {
            let (_, seen) = make(&probe, truth, briefing)?;
            remembered = Some((probe, seen));
            continue;
        }
        if probe.shows_memory() {
            // Figures of earlier drives need a history too, and say of the codes only by how much.
            continue;
        }
        let (cost, seen) = make(&probe, truth, briefing)?;
        if cost <= most {
            tests.push((cost, probe, seen));
        }
    }
    tests.sort_by(|a, b| a.0.total_cmp(&b.0));
    let minds_heat =
        |faults: &[FaultName]| faults.iter().any(|fault| fault.kind == FaultKind::HotContact);
    let mut warm_tests: Option<Vec<(f64, Probe, Vec<Aspect>)>> = None;
    let mut found = Vec::new();
    for (number, rival) in rivals {
        let wanted = wanted(&briefing.vehicle, faults, &rival.faults);
        let mut told = Vec::new();
        for (_, probe, seen) in &tests {
            if told.len() >= wanted {
                break;
            }
            let (_, shown) = make(probe, &rival.session, briefing)?;
            if differ(seen, &shown, &known) {
                told.push(probe.showing().clone());
            }
        }
        if told.len() < wanted && (minds_heat(faults) || minds_heat(&rival.faults)) {
            if warm_tests.is_none() {
                warm_tests = Some(warm(&tests, truth, briefing)?);
            }
            let rival = warmed(&rival.session, briefing)?;
            for (_, probe, seen) in warm_tests.iter().flatten() {
                if told.len() >= wanted {
                    break;
                }
                let (_, shown) = make(probe, &rival, briefing)?;
                if differ(seen, &shown, &known) && !told.contains(probe.showing()) {
                    told.push(probe.showing().clone());
                }
            }
        }
        if told.len() < wanted
            && let Some((probe, seen)) = &remembered
        {
            let (_, shown) = make(probe, &history(number)?, briefing)?;
            if differ(seen, &shown, &known) {
                told.push(probe.showing().clone());
            }
        }
        found.push(Separation { rival: rival.faults.clone(), tests: told, wanted });
    }
    Ok(found)
}

/// What affordable tests show on a warm engine. The way there is a drive that the job asks for anyway.
fn warm(
    tests: &[(f64, Probe, Vec<Aspect>)],
    cold: &Session,
    briefing: &Briefing,
) -> Result<Vec<(f64, Probe, Vec<Aspect>)>, VehicleError> {
    let warm = warmed(cold, briefing)?;
    tests
        .iter()
        .map(|(cost, probe, _)| Ok((*cost, probe.clone(), make(probe, &warm, briefing)?.1)))
        .collect()
}

/// The same vehicle after the longest of the roads, with the key off.
pub(super) fn warmed(session: &Session, briefing: &Briefing) -> Result<Session, VehicleError> {
    let mut session = session.fork();
    session.take_unlogged(&Step::Dipstick)?;
    if let Some((road, _)) = briefing.routes.iter().max_by_key(|(_, road)| road.minutes) {
        session.take_unlogged(&Step::Drive { route: road.clone(), stop_after: None })?;
    }
    session.take_unlogged(&Step::Key { position: KeyPosition::Off })?;
    Ok(session)
}

/// Makes a test from the present state: its cost and what it shows.
fn make(
    probe: &Probe,
    session: &Session,
    briefing: &Briefing,
) -> Result<(f64, Vec<Aspect>), VehicleError> {
    let mut session = session.fork();
    let way = steps_to(&probe.need, &briefing.vehicle, session.vehicle_in_sight());
    let mut cost = 0.0;
    for step in &way {
        cost += cost_of(&session.take_unlogged(step)?, briefing.prices.labour_per_hour);
    }
    let mut shown = Vec::new();
    for (number, step) in probe.steps.iter().enumerate() {
        let events = session.take_unlogged(step)?;
        cost += cost_of(&events, briefing.prices.labour_per_hour);
        if number == probe.shows {
            shown = aspects(&events);
        }
    }
    Ok((cost, shown))
}

//! Looking back at a moment of a finished session: what another step would have read, told and cost.

use super::judging::{Replayed, worlds};
use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::{Ending, Outcome, store};
use crate::reasoning::onlooker::Onlooker;
use crate::reasoning::what_if::NoWay;
use crate::reasoning::world::Worlds;
use crate::report::{json, what_if_json};
use crate::scenario::draw::Case;
use crate::session::attempt::{Entry, Session};
use crate::session::counterfactual::{before_step, has_moment};
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::wording::{step_parser, what_if_words};
use std::path::Path;
use std::sync::Arc;

/// Rows of the list of everything that could have come next, unless all are asked for.
const ROWS: usize = 10;

/// Answers what the arguments ask of a session file.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let Replayed { case, session, path } = Replayed::of(given, screen)?;
    let number = given.get_one::<u32>("at").map_or(0, |number| *number as usize);
    has_moment(&session, number).map_err(|error| Trouble::of_moment(error, &path))?;
    let mut steps = Vec::new();
    for line in given.get_many::<String>("step").into_iter().flatten() {
        steps.push(step_of(line, &case.briefing)?);
    }
    let format = Format::of(given);
    if format == Format::Json {
        let (name, path) = (&case.scenario.text.scenario_name, path.display().to_string());
        screen.data(&json::header_about("what-if", name, Some(&path)).to_string());
    }
    let looking = LookingBack {
        case: &case,
        session: &session,
        worlds: worlds(&case, &store::world_store(given), screen)?,
        path: &path,
        format,
        shows_all: given.get_flag("all"),
    };
    looking.answer(number, &steps, screen)?;
    Ok(Ending::Done)
}

/// A step that was given as an argument.
fn step_of(line: &str, briefing: &Briefing) -> Result<Step, Trouble> {
    match step_parser::parse(line, briefing) {
        Ok(Some(step)) => Ok(step),
        Ok(None) => Err(Trouble::NoStep),
        Err(problem) => Err(Trouble::WantedStep { problem }),
    }
}

/// A finished session that is looked back at.
pub struct LookingBack<'a> {
    /// Its case.
    pub case: &'a Case,
    /// The finished session.
    pub session: &'a Session,
    /// The worlds at their beginning.
    pub worlds: Worlds,
    /// Its file.
    pub path: &'a Path,
    /// How answers are printed.
    pub format: Format,
    /// Whether the list of what could have come next is printed whole.
    pub shows_all: bool,
}

impl LookingBack<'_> {
    /// What other steps would have brought instead of the step of this number, from 1; without any, what all
    /// tests and repairs would have.
    ///
    /// # Errors
    /// [`Trouble`] when there is no such moment, or a step was not possible then.
    pub fn answer(
        &self,
        number: usize,
        steps: &[Step],
        screen: &mut Screen<'_>,
    ) -> Result<(), Trouble> {
        let no_moment = |error| Trouble::of_moment(error, self.path);
        has_moment(self.session, number).map_err(no_moment)?;
        let briefing = &self.case.briefing;
        screen.progress("progress-what-if", 0, 1);
        let begun = Session::begin(Arc::clone(briefing), self.case.hidden.clone())?;
        let then = before_step(self.session, begun, number).map_err(no_moment)?;
        let mut onlooker = Onlooker::new(briefing, self.worlds.clone());
        onlooker.follow(self.session.log(), number - 1)?;
        let valuation = onlooker.value()?;
        let belief = onlooker.belief().by_hypothesis();
        let moment = what_if_words::Moment {
            number,
            belief: &belief,
            value: valuation.cost,
            best: &valuation.proposal,
        };
        let lines = if steps.is_empty() {
            self.all(&mut onlooker, &then, screen)?
        } else {
            self.one(&mut onlooker, &then, steps, screen)?
        };
        if self.format == Format::Json {
            let step = self.session.log().get(number - 1).map(|entry| &entry.step);
            let best = (valuation.cost, &valuation.proposal);
            screen.data(&what_if_json::moment(number, step, &belief, best).to_string());
        } else {
            for line in what_if_words::moment(&moment, self.session, screen.words) {
                screen.data(&line);
            }
        }
        for line in lines {
            screen.data(&line);
        }
        Ok(())
    }

    fn one(
        &self,
        onlooker: &mut Onlooker,
        then: &Session,
        steps: &[Step],
        screen: &Screen<'_>,
    ) -> Result<Vec<String>, Trouble> {
        let alternative = onlooker.what_if(steps).map_err(|error| match error {
            NoWay::Refused { step, refusal } => Trouble::NotPossible { step, refusal },
            NoWay::Vehicle(source) => Trouble::Simulation { source },
        })?;
        let truth = then.would_follow(&alternative.steps)?;
        Ok(if self.format == Format::Json {
            vec![what_if_json::alternative(&alternative, &truth).to_string()]
        } else {
            what_if_words::alternative(&alternative, &truth, &self.case.briefing, screen.words)
        })
    }

    fn all(
        &self,
        onlooker: &mut Onlooker,
        then: &Session,
        screen: &Screen<'_>,
    ) -> Result<Vec<String>, Trouble> {
        let choices = onlooker.choices()?;
        let truth = |steps: &[Step]| -> Option<Vec<Entry>> { then.would_follow(steps).ok() };
        Ok(if self.format == Format::Json {
            let choices = what_if_json::choices(&choices, &truth);
            choices.iter().map(ToString::to_string).collect()
        } else {
            let most = if self.shows_all { usize::MAX } else { ROWS };
            let briefing = &self.case.briefing;
            what_if_words::choices(&choices, &truth, most, briefing, screen.words)
        })
    }
}

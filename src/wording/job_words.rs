//! The job sheet and the customer's answers, in the scenario's own words.

use super::catalogue::Words;
use crate::session::setup::Briefing;
use crate::session::step::CustomerTopic;

/// The job sheet as the apprentice gets it.
#[must_use]
pub fn job_sheet(briefing: &Briefing, words: &Words) -> String {
    let (vehicle, job) = (&briefing.vehicle, &briefing.job);
    let mut lines = vec![
        words.say("job-title", &[("title", job.title.as_str().into())]),
        words.say(
            "job-vehicle",
            &[
                ("name", vehicle.name.as_str().into()),
                // As text, so that no language puts a thousands mark into a year.
                ("year", vehicle.year.to_string().into()),
                ("engine", vehicle.engine.as_str().into()),
            ],
        ),
        words.say("job-distance", &[("kilometres", job.kilometres.to_string().into())]),
        words.say("job-concern", &[("concern", job.concern.as_str().into())]),
    ];
    if job.history.is_empty() {
        lines.push(words.say("job-no-history", &[]));
    } else {
        lines.push(words.say("job-history", &[]));
        lines.extend(job.history.iter().map(|entry| format!("  {entry}")));
    }
    lines.join("\n")
}

/// What the customer answers.
#[must_use]
pub fn answer(topic: CustomerTopic, briefing: &Briefing, words: &Words) -> String {
    match briefing.job.answers.get(&topic).map(|answer| answer.trim()) {
        None | Some("") => words.say("event-no-answer-from-customer", &[]),
        Some(answer) => words.say("event-answered", &[("answer", answer.into())]),
    }
}

//! The job sheet and the customer's answers, in the scenario's own words.

use super::amounts::minutes;
use super::catalogue::Words;
use crate::session::setup::Briefing;
use crate::session::step::CustomerTopic;
use crate::session::toolbox::{TimeLimit, Tool, Tools};

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
    if let Tools::Only(_) = briefing.tools {
        let mut named = String::new();
        for it in briefing.tools.there() {
            named.push_str(", ");
            named.push_str(&tool(it, words));
        }
        lines.push(words.say("job-tools", &[("tools", named.into())]));
    }
    if let TimeLimit::UpTo { minutes: limit } = briefing.time_limit {
        lines.push(words.say("job-time", &[("time", minutes(limit, words).into())]));
    }
    lines.join("\n")
}

/// The name of a tool.
#[must_use]
pub fn tool(tool: Tool, words: &Words) -> String {
    words.say(
        match tool {
            Tool::Multimeter => "tool-multimeter",
            Tool::TestLamp => "tool-test-lamp",
            Tool::CurrentProbe => "tool-current-probe",
            Tool::Scope => "tool-scope",
            Tool::PressureGauge => "tool-pressure-gauge",
            Tool::PowerLead => "tool-power-lead",
        },
        &[],
    )
}

/// What the customer answers.
#[must_use]
pub fn answer(topic: CustomerTopic, briefing: &Briefing, words: &Words) -> String {
    match briefing.job.answers.get(&topic).map(|answer| answer.trim()) {
        None | Some("") => words.say("event-no-answer-from-customer", &[]),
        Some(answer) => words.say("event-answered", &[("answer", answer.into())]),
    }
}

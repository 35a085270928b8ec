//! What the case is, and the job sheet.

use super::{Form, push, remove};
use crate::scenario::load;
use crate::scenario::schema::{Level, Mode};
use crate::scenario::writing::notation;
use crate::session::step::CustomerTopic;
use crate::workshop::view::writer::form::Row;

pub fn story(form: &mut Form<'_>) {
    let file = form.ground.file;
    let levels = [
        (Level::First, "front-level-first"),
        (Level::Middle, "front-level-middle"),
        (Level::Hard, "front-level-hard"),
    ];
    let levels = levels.map(|(level, key)| (format!("{level:?}"), form.say(key))).to_vec();
    let modes = [(Mode::Practice, "front-practise"), (Mode::Assessed, "front-assessed")];
    let modes = modes.map(|(mode, key)| (format!("{mode:?}"), form.say(key))).to_vec();
    let vehicles = load::carried_vehicles().into_iter().map(|name| {
        let title = load::vehicle_named(name, None).map_or_else(
            || name.to_owned(),
            |vehicle| format!("{}, {}, {}", vehicle.name, vehicle.year, vehicle.engine),
        );
        (notation::text(name), title)
    });
    let rows = [
        form.line("title", "writer-title", &file.title),
        form.lines("about", "writer-about", &file.about),
        form.choice("level", "writer-level", &format!("{:?}", file.level), levels),
        form.choice(
            "vehicle",
            "writer-vehicle",
            &notation::text(&file.vehicle),
            vehicles.collect(),
        ),
        form.choice("mode", "writer-mode", &format!("{:?}", file.mode), modes),
    ];
    form.rows.extend(rows);
    form.remark("writer-vehicle-why");
}

pub fn job(form: &mut Form<'_>) {
    let job = &form.ground.file.job;
    let rows = [
        form.line("job.title", "writer-job-title", &job.title),
        form.lines("job.concern", "writer-job-concern", &job.concern),
        form.whole("job.kilometres", "writer-job-kilometres", job.kilometres),
    ];
    form.rows.extend(rows);
    form.heading(form.say("writer-history"));
    list(form, "job.history", &job.history, "writer-history-line");
    form.heading(form.say("writer-answers"));
    form.remark("writer-answers-why");
    for (topic, word, key) in [
        (CustomerTopic::Symptom, "symptom", "writer-answer-symptom"),
        (CustomerTopic::When, "when", "writer-answer-when"),
        (CustomerTopic::Service, "service", "writer-answer-service"),
        (CustomerTopic::Repairs, "repairs", "writer-answer-repairs"),
    ] {
        let answer = job.answers.get(&topic).map_or("", String::as_str);
        let row = form.lines(format!("job.answers.{word}"), key, answer);
        form.rows.push(row);
    }
}

/// A list of lines that can grow and shrink.
pub fn list(form: &mut Form<'_>, path: &str, lines: &[String], key: &str) {
    for (number, line) in lines.iter().enumerate() {
        let label = form.ground.words.say(key, &[("number", (number + 1).into())]);
        let at = format!("{path}[{number}]");
        let row = form.field(
            at.clone(),
            label.clone(),
            crate::workshop::view::writer::form::Sort::Lines,
            line.clone(),
        );
        form.rows.push(row);
        let away = form.ground.words.say("writer-remove", &[("what", label.into())]);
        form.rows.push(Row::Deeds(vec![(away, remove(at))]));
    }
    let next = form.ground.words.say(key, &[("number", (lines.len() + 1).into())]);
    let more = form.ground.words.say("writer-add", &[("what", next.into())]);
    form.deeds(vec![(more, push(path, notation::text("")))]);
}

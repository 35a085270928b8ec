//! On what terms the job is done: tools, time, the customer's limit, and what else the counter has.

use super::{Form, remove, set};
use crate::scenario::writing::notation;
use crate::session::setup::Approval;
use crate::session::shelf::{OtherPart, PartGrade};
use crate::session::toolbox::{TimeLimit, Tool, Tools};
use crate::units::Minutes;
use crate::wording::job_words;
use crate::workshop::view::writer::form::Deed;

/// A limit and a part to begin with.
const SOME_LIMIT: &str = "UpTo(minutes: 180)";
const SOME_APPROVAL: &str = "UpTo(money: 150_00)";

/// What the case has: tools and time.
pub fn tools_and_time(form: &mut Form<'_>) {
    form.heading(form.say("writer-tools"));
    form.remark("writer-tools-why");
    let file = form.ground.file;
    for tool in Tool::ALL {
        let key = if file.tools.has(tool) { "writer-tool-leave-out" } else { "writer-tool-put-in" };
        let name = job_words::tool(tool, form.ground.words);
        let said = form.ground.words.say(key, &[("tool", name.into())]);
        form.deeds(vec![(said, turn(tool, &file.tools))]);
    }
    form.heading(form.say("writer-time-limit"));
    match file.time_limit {
        TimeLimit::None => {
            let said = form.say("writer-time-limit-set");
            form.deeds(vec![(said, set("time_limit", SOME_LIMIT))]);
        }
        TimeLimit::UpTo { minutes: Minutes(minutes) } => {
            let row = form.whole("time_limit.minutes", "writer-time-limit-minutes", minutes);
            form.rows.push(row);
            let said = form.say("writer-time-limit-remove");
            form.deeds(vec![(said, remove("time_limit"))]);
        }
    }
    form.remark("writer-time-limit-why");
}

/// Puts a tool into the case, or leaves it out.
fn turn(tool: Tool, tools: &Tools) -> Deed {
    let there = Tool::ALL.into_iter().filter(|it| tools.has(*it) != (*it == tool));
    let there: Vec<&str> = there.map(Tool::word).collect();
    if there.len() == Tool::ALL.len() {
        return remove("tools");
    }
    set("tools", format!("Only([{}])", there.join(", ")))
}

/// What the customer approves.
pub fn approval(form: &mut Form<'_>) {
    form.heading(form.say("writer-approval"));
    match form.ground.file.approval {
        Approval::Everything => {
            let said = form.say("writer-approval-limit");
            form.deeds(vec![(said, set("approval", SOME_APPROVAL))]);
        }
        Approval::UpTo { money } => {
            let row = form.money("approval.money", form.say("writer-approval-money"), money);
            form.rows.push(row);
            let said = form.say("writer-approval-everything");
            form.deeds(vec![(said, remove("approval"))]);
        }
    }
    form.remark("writer-approval-why");
}

/// What the counter has besides the maker's own parts.
pub fn shelf(form: &mut Form<'_>) {
    let (shelf, words) = (&form.ground.file.shelf, form.ground.words);
    form.heading(form.say("writer-shelf"));
    form.remark("writer-shelf-why");
    let label = form.say("writer-waiting-per-hour");
    let row = form.money("shelf.waiting_per_hour", label, shelf.waiting_per_hour);
    form.rows.push(row);
    let parts = form.ground.vehicle.map_or(&[][..], |vehicle| &vehicle.valve_parts);
    for part in parts {
        let number = &part.part_number;
        let Minutes(wait) = shelf.waits.get(number).copied().unwrap_or_default();
        let label = words.say("writer-wait", &[("number", number.as_str().into())]);
        let row = form.whole_named(format!("shelf.waits.{number}"), label, wait);
        form.rows.push(row);
    }
    for (number, part) in &shelf.others {
        let what = words.say("writer-other", &[("number", number.as_str().into())]);
        form.heading(what.clone());
        form.group = Some(what.clone());
        other(form, &format!("shelf.others.{number}"), part);
        form.group = None;
        let away = words.say("writer-remove", &[("what", what.into())]);
        form.deeds(vec![(away, remove(format!("shelf.others.{number}")))]);
    }
    let Some(part) = parts.first() else { return };
    for (grade, key) in [("Pattern", "writer-add-pattern"), ("Used", "writer-add-used")] {
        let begin = grade.to_lowercase();
        // One of as many as there are, and one more, is free.
        let number = (1..=shelf.others.len() + 1)
            .map(|n| format!("{begin}-{n}"))
            .find(|it| !shelf.others.keys().any(|number| number.as_str() == it))
            .unwrap_or(begin);
        let stands_for = notation::text(part.part_number.as_str());
        let value = format!("(stands_for: {stands_for}, grade: {grade}, price: 40_00)");
        form.deeds(vec![(form.say(key), set(format!("shelf.others.{number}"), value))]);
    }
}

fn other(form: &mut Form<'_>, path: &str, part: &OtherPart) {
    let at = |field: &str| format!("{path}.{field}");
    let grades = [(PartGrade::Pattern, "writer-pattern"), (PartGrade::Used, "writer-used")];
    let grades = grades.map(|(grade, key)| (format!("{grade:?}"), form.say(key))).to_vec();
    let parts = form.ground.vehicle.map_or(&[][..], |vehicle| &vehicle.valve_parts);
    let named = |number: &str| (notation::text(number), number.to_owned());
    let stands = parts.iter().map(|part| named(part.part_number.as_str())).collect();
    let now = notation::text(part.stands_for.as_str());
    form.beside(vec![
        form.choice(at("grade"), "writer-grade", &format!("{:?}", part.grade), grades),
        form.choice(at("stands_for"), "writer-stands-for", &now, stands),
    ]);
    form.beside(vec![
        form.money(at("price"), form.say("writer-other-price"), part.price),
        form.whole(at("wait"), "writer-other-wait", part.wait.0),
    ]);
    form.rows.push(form.number(at("resistance"), "writer-resistance", part.resistance));
    form.beside(vec![
        form.number(at("screen_blocked"), "writer-screen-blocked", part.screen_blocked),
        form.number(at("stiction_n"), "writer-stiction", part.stiction_n),
    ]);
}

//! Roads, marks and the note for instructors.

use super::job::list;
use super::{Form, push, remove, set};
use crate::assessment::rubric::MarkCategory;
use crate::scenario::schema::Teaching;
use crate::scenario::shared_routes;
use crate::scenario::writing::notation;
use crate::session::step::HintGrade;
use crate::wording::place;
use crate::workshop::view::writer::form::Row;

pub fn roads(form: &mut Form<'_>) {
    let (file, words) = (form.ground.file, form.ground.words);
    let named = file.routes.keys().chain(&file.shared_routes);
    let options =
        named.map(|road| (notation::text(road.as_str()), place::place(road, words))).collect();
    let now = notation::text(file.customers_route.as_str());
    let row = form.choice("customers_route", "writer-customers-road", &now, options);
    form.rows.push(row);
    form.remark("writer-customers-road-why");
    form.heading(form.say("writer-shared-roads"));
    for road in shared_routes::names() {
        let name = place::place(&road, words);
        let at = file.shared_routes.iter().position(|named| *named == road);
        let (key, deed) = match at {
            Some(number) => ("writer-remove", remove(format!("shared_routes[{number}]"))),
            None => ("writer-add", push("shared_routes", notation::text(road.as_str()))),
        };
        let said = words.say(key, &[("what", name.into())]);
        form.deeds(vec![(said, deed)]);
    }
    form.heading(form.say("writer-own-roads"));
    for road in file.routes.keys() {
        form.rows.push(Row::Remark(place::place(road, words)));
    }
    form.remark("writer-own-roads-why");
    form.heading(form.say("writer-workshop"));
    let celsius = file.workshop_temperature.0;
    let row = form.number("workshop_temperature", "writer-temperature", celsius);
    form.rows.push(row);
}

pub fn marks(form: &mut Form<'_>) {
    let rubric = &form.ground.file.rubric;
    form.remark("writer-marks-why");
    let rows = MarkCategory::ALL.map(|category| {
        let path = format!("rubric.weights.{}", category.word());
        form.whole(path, category_key(category), u32::from(rubric.weights.of(category)))
    });
    for pair in rows.chunks(2) {
        form.beside(pair.to_vec());
    }
    let row = form.whole("rubric.pass_percent", "writer-pass-line", u32::from(rubric.pass_percent));
    form.rows.push(row);
    form.heading(form.say("writer-hint-prices"));
    form.remark("writer-hint-prices-why");
    let rows = HintGrade::ALL.map(|grade| {
        let path = format!("rubric.hints.{}", grade.word());
        form.whole(path, hint_key(grade), u32::from(rubric.hints.of(grade)))
    });
    for pair in rows.chunks(2) {
        form.beside(pair.to_vec());
    }
}

const fn category_key(category: MarkCategory) -> &'static str {
    match category {
        MarkCategory::TestChoice => "writer-weight-tests",
        MarkCategory::AccessOrder => "writer-weight-order",
        MarkCategory::Reading => "writer-weight-reading",
        MarkCategory::Calibration => "writer-weight-confidence",
        MarkCategory::Repair => "writer-weight-repair",
        MarkCategory::Proof => "writer-weight-proof",
        MarkCategory::Care => "writer-weight-care",
        MarkCategory::Record => "writer-weight-record",
    }
}

const fn hint_key(grade: HintGrade) -> &'static str {
    match grade {
        HintGrade::Question => "writer-hint-question",
        HintGrade::Area => "writer-hint-area",
        HintGrade::Kind => "writer-hint-kind",
        HintGrade::Step => "writer-hint-step",
    }
}

pub fn teaching(form: &mut Form<'_>) {
    form.remark("writer-teaching-why");
    let note: &Teaching = &form.ground.file.teaching;
    if note.is_empty() {
        let one = notation::text(&form.say("writer-teaching-begin"));
        let value = format!("(teaches: {one}, traps: [{one}], path: [{one}])");
        form.deeds(vec![(form.say("writer-add-teaching"), set("teaching", value))]);
        return;
    }
    let row = form.lines("teaching.teaches", "writer-teaches", &note.teaches);
    form.rows.push(row);
    form.heading(form.say("writer-traps"));
    list(form, "teaching.traps", &note.traps, "writer-trap");
    form.heading(form.say("writer-path"));
    list(form, "teaching.path", &note.path, "writer-path-line");
    form.deeds(vec![(form.say("writer-remove-teaching"), remove("teaching"))]);
}

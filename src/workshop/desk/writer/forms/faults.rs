//! The faults that may be drawn.

use super::{Form, push, remove};
use crate::faults::{FaultKind, FaultName, places};
use crate::scenario::schema::MOST_TOGETHER;
use crate::scenario::writing::notation;
use crate::vehicle::spec::Id;
use crate::wording::place;
use crate::workshop::view::writer::form::Row;

pub fn faults(form: &mut Form<'_>) {
    let file = form.ground.file;
    let words = form.ground.words;
    form.remark("writer-faults-why");
    let total: f64 = file.faults.iter().map(|prior| prior.weight).sum::<f64>() + file.no_fault;
    let possible = form.ground.vehicle.map(places).unwrap_or_default();
    for (number, prior) in file.faults.iter().enumerate() {
        let count = ("number", (number + 1).into());
        let share = if total > 0.0 { prior.weight / total * 100.0 } else { 0.0 };
        form.heading(words.say(
            "writer-fault",
            &[
                count.clone(),
                ("fault", place::diagnoses(&prior.names(), words).into()),
                ("percent", share.round().into()),
            ],
        ));
        let group = words.say("writer-fault-group", &[count]);
        form.group = Some(group.clone());
        let path = format!("faults[{number}]");
        one(form, &path, &prior.names()[0], prior.severity, Some(prior.weight), &possible);
        for (other, part) in prior.also.iter().enumerate() {
            form.group = Some(words.say(
                "writer-also-group",
                &[("number", (number + 1).into()), ("other", (other + 1).into())],
            ));
            let at = format!("{path}.also[{other}]");
            form.rows.push(Row::Remark(words.say("writer-also", &[])));
            one(form, &at, &part.name(), part.severity, None, &possible);
            let away = form.name(&form.say("writer-remove-it"));
            form.deeds(vec![(away, remove(at))]);
        }
        form.group = Some(group);
        let mut deeds = vec![(form.name(&form.say("writer-remove-it")), remove(path.clone()))];
        if prior.also.len() + 1 < MOST_TOGETHER {
            let item = part_text(possible.iter().find(|name| name.place != prior.place), "");
            let more = form.name(&form.say("writer-add-also"));
            deeds.push((more, push(format!("{path}.also"), item)));
        }
        form.deeds(deeds);
        form.group = None;
    }
    let present = |name: &&FaultName| {
        !file.faults.iter().any(|prior| prior.also.is_empty() && prior.names()[0] == **name)
    };
    let next = part_text(possible.iter().find(present), "weight: 1, ");
    form.heading(form.say("writer-more-faults"));
    form.deeds(vec![(form.say("writer-add-fault"), push("faults", next))]);
    let row = form.number("no_fault", "writer-no-fault", file.no_fault);
    form.rows.push(row);
    form.remark("writer-no-fault-why");
}

/// A fault as the text has it, with every severity.
fn part_text(name: Option<&FaultName>, weight: &str) -> String {
    let first = FaultName { kind: FaultKind::LowOil, place: Id::from("sump") };
    let FaultName { kind, place } = name.unwrap_or(&first);
    let place = notation::text(place.as_str());
    format!("(kind: {kind:?}, place: {place}, {weight}severity: (0, 1))")
}

/// The fields of one fault.
fn one(
    form: &mut Form<'_>,
    path: &str,
    name: &FaultName,
    (least, most): (f64, f64),
    weight: Option<f64>,
    possible: &[FaultName],
) {
    let words = form.ground.words;
    let is_there = |kind: FaultKind| possible.iter().any(|name| name.kind == kind);
    let kinds = FaultKind::ALL.into_iter().filter(|kind| is_there(*kind) || *kind == name.kind);
    let kinds = kinds.map(|kind| (format!("{kind:?}"), place::fault_kind(kind, words))).collect();
    let of_kind = possible.iter().filter(|other| other.kind == name.kind);
    let places = of_kind
        .map(|other| (notation::text(other.place.as_str()), place::place(&other.place, words)))
        .collect();
    let now = notation::text(name.place.as_str());
    let rows = vec![
        form.choice(format!("{path}.kind"), "writer-kind", &format!("{:?}", name.kind), kinds),
        form.choice(format!("{path}.place"), "writer-place", &now, places),
    ];
    form.beside(rows);
    let mut rows = Vec::new();
    if let Some(weight) = weight {
        rows.push(form.number(format!("{path}.weight"), "writer-weight", weight));
    }
    rows.push(form.number(format!("{path}.severity[0]"), "writer-severity-from", least));
    rows.push(form.number(format!("{path}.severity[1]"), "writer-severity-to", most));
    form.beside(rows);
}

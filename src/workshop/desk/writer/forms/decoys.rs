//! What is odd and harmless.

use super::{Form, push, remove, set};
use crate::scenario::schema::{CodeOrigin, OtherWinding};
use crate::scenario::writing::notation;
use crate::wording::place;
use crate::workshop::view::writer::form::Sort;

pub fn decoys(form: &mut Form<'_>) {
    form.remark("writer-decoys-why");
    form.heading(form.say("writer-other-winding"));
    winding(form);
    form.heading(form.say("writer-old-codes"));
    codes(form);
}

fn winding(form: &mut Form<'_>) {
    let words = form.ground.words;
    let Some(vehicle) = form.ground.vehicle else {
        form.remark("writer-no-vehicle");
        return;
    };
    let path = "decoys.other_winding";
    let Some(OtherWinding { place, part_number, chance }) = &form.ground.file.decoys.other_winding
    else {
        // A place at which another than the factory's part fits.
        let fitting = vehicle.valves.iter().find_map(|valve| {
            let other = vehicle.valve_parts.iter().find(|part| {
                part.fits.contains(&valve.id) && part.part_number != valve.part_number
            })?;
            Some((notation::text(valve.id.as_str()), notation::text(other.part_number.as_str())))
        });
        match fitting {
            Some((place, number)) => {
                let value = format!("(place: {place}, part_number: {number}, chance: 0.5)");
                form.deeds(vec![(form.say("writer-add-winding"), set(path, value))]);
            }
            None => form.remark("writer-one-winding"),
        }
        return;
    };
    form.group = Some(form.say("writer-other-winding"));
    let valves = vehicle.valves.iter();
    let valves =
        valves.map(|it| (notation::text(it.id.as_str()), place::place(&it.id, words))).collect();
    let numbers = vehicle.valve_parts.iter().filter(|part| part.fits.contains(place));
    let numbers = numbers
        .map(|part| (notation::text(part.part_number.as_str()), part.part_number.to_string()));
    let place = notation::text(place.as_str());
    let number = notation::text(part_number.as_str());
    let rows = vec![
        form.choice(format!("{path}.place"), "writer-place", &place, valves),
        form.choice(
            format!("{path}.part_number"),
            "writer-part-number",
            &number,
            numbers.collect(),
        ),
        form.number(format!("{path}.chance"), "writer-chance", *chance),
    ];
    form.beside(rows);
    form.deeds(vec![(form.name(&form.say("writer-remove-it")), remove(path))]);
    form.group = None;
}

fn codes(form: &mut Form<'_>) {
    let words = form.ground.words;
    let origins = [
        (CodeOrigin::Historical, "writer-code-historical"),
        (CodeOrigin::Present, "writer-code-present"),
        (CodeOrigin::False, "writer-code-false"),
    ];
    for (number, old) in form.ground.file.decoys.old_codes.iter().enumerate() {
        form.group = Some(words.say("writer-old-code", &[("number", (number + 1).into())]));
        let path = format!("decoys.old_codes[{number}]");
        let options = origins.map(|(origin, key)| (format!("{origin:?}"), form.say(key))).to_vec();
        let code = old.code.to_string();
        let label = form.say("writer-code");
        let rows = vec![
            form.field(format!("{path}.code"), label, Sort::Line, code),
            form.choice(
                format!("{path}.origin"),
                "writer-origin",
                &format!("{:?}", old.origin),
                options,
            ),
            form.number(format!("{path}.chance"), "writer-chance", old.chance),
        ];
        form.beside(rows);
        form.deeds(vec![(form.name(&form.say("writer-remove-it")), remove(path))]);
        form.group = None;
    }
    // A misfire has no part in anything that is drawn, on whatever vehicle.
    let item = "(code: \"P0300\", chance: 0.5)";
    form.deeds(vec![(form.say("writer-add-code"), push("decoys.old_codes", item))]);
}

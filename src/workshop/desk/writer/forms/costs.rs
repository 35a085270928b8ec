//! What time and things cost.

use super::{Form, remove, set};
use crate::session::setup::{Prices, StepMinutes};
use crate::units::{Minutes, Money};
use crate::wording::place;

pub fn prices(form: &mut Form<'_>) {
    let prices = &form.ground.file.prices;
    let row = form.line("prices.currency", "writer-currency", &prices.currency);
    form.rows.push(row);
    form.remark("writer-money-why");
    let rows = amounts(prices)
        .map(|(field, key, money)| form.money(format!("prices.{field}"), form.say(key), money));
    for pair in rows.chunks(2) {
        form.beside(pair.to_vec());
    }
    form.heading(form.say("writer-valve-prices"));
    valves(form, prices);
    form.heading(form.say("writer-minutes"));
    let rows = times(&prices.minutes).map(|(field, key, Minutes(minutes))| {
        form.whole(format!("prices.minutes.{field}"), key, minutes)
    });
    for pair in rows.chunks(2) {
        form.beside(pair.to_vec());
    }
}

/// A price for each part that the vehicle can have, and what the list has beside them.
fn valves(form: &mut Form<'_>, prices: &Prices) {
    let words = form.ground.words;
    let parts = form.ground.vehicle.map_or(&[][..], |vehicle| &vehicle.valve_parts);
    for part in parts {
        let number = &part.part_number;
        let path = format!("prices.valves.{number}");
        let named = [("number", number.as_str().into())];
        if let Some(money) = prices.valves.get(number) {
            let label = words.say("writer-valve-price", &named);
            let row = form.money(path, label, *money);
            form.rows.push(row);
        } else {
            form.deeds(vec![(words.say("writer-add-price", &named), set(path, "50_00"))]);
        }
    }
    let strangers = prices
        .valves
        .keys()
        .filter(|&number| !parts.iter().any(|part| part.part_number == *number));
    for number in strangers {
        let what = words.say("writer-valve-price", &[("number", number.as_str().into())]);
        let away = words.say("writer-remove", &[("what", what.into())]);
        form.deeds(vec![(away, remove(format!("prices.valves.{number}")))]);
    }
    for valve in form.ground.vehicle.iter().flat_map(|vehicle| &vehicle.valves) {
        let said = [
            ("place", place::place(&valve.id, words).into()),
            ("number", valve.part_number.as_str().into()),
        ];
        form.rows.push(crate::workshop::view::writer::form::Row::Remark(
            words.say("writer-factory-part", &said),
        ));
    }
}

const fn amounts(prices: &Prices) -> [(&'static str, &'static str, Money); 8] {
    [
        ("labour_per_hour", "writer-labour", prices.labour_per_hour),
        ("seal", "writer-seal", prices.seal),
        ("mending", "writer-mending", prices.mending),
        ("oil_litre", "writer-oil-litre", prices.oil_litre),
        ("oil_filter", "writer-oil-filter", prices.oil_filter),
        ("cleaning", "writer-cleaning", prices.cleaning),
        ("fuel", "writer-fuel", prices.fuel),
        ("comeback", "writer-comeback", prices.comeback),
    ]
}

const fn times(minutes: &StepMinutes) -> [(&'static str, &'static str, Minutes); 21] {
    [
        ("ask", "writer-min-ask", minutes.ask),
        ("consult", "writer-min-consult", minutes.consult),
        ("look", "writer-min-look", minutes.look),
        ("dipstick", "writer-min-dipstick", minutes.dipstick),
        ("key", "writer-min-key", minutes.key),
        ("start", "writer-min-start", minutes.start),
        ("measure", "writer-min-measure", minutes.measure),
        ("fetch_meter", "writer-min-fetch-meter", minutes.fetch_meter),
        ("read_gauge", "writer-min-read-gauge", minutes.read_gauge),
        ("power", "writer-min-power", minutes.power),
        ("connect_reader", "writer-min-connect-reader", minutes.connect_reader),
        ("request", "writer-min-request", minutes.request),
        ("clean", "writer-min-clean", minutes.clean),
        ("mend_pin", "writer-min-mend-pin", minutes.mend_pin),
        ("mend_wire", "writer-min-mend-wire", minutes.mend_wire),
        ("top_up", "writer-min-top-up", minutes.top_up),
        ("change_oil", "writer-min-change-oil", minutes.change_oil),
        ("approval", "writer-min-approval", minutes.approval),
        ("write", "writer-min-write", minutes.write),
        ("hand_over", "writer-min-hand-over", minutes.hand_over),
        ("fetch_part", "writer-min-fetch-part", minutes.fetch_part),
    ]
}

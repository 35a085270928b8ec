//! The check checked: sources planted with one violation each must be refused, for that reason; lawful ones must pass.

use std::collections::{BTreeMap, BTreeSet};

use crate::rules;
use crate::tree::{self, module_path};

fn refusals(file: &str, source: &str) -> Vec<String> {
    let verdict = rules::judge(file, &module_path(file), source);
    verdict.findings.iter().map(ToString::to_string).collect()
}

/// A file, its source, and words that its refusal must hold.
type Planted = (&'static str, &'static str, &'static str);

const UP_THE_HOUSE: &[Planted] = &[
    ("src/physics/coil.rs", "use crate::session::Step;", "may not name `session`"),
    (
        "src/physics/coil.rs",
        "use crate::{units::Volts, vehicle::Harness};",
        "may not name `vehicle`",
    ),
    ("src/physics/coil.rs", "use {crate::{faults::{self, Kind}}};", "may not name `faults`"),
    ("src/physics/coil.rs", "use crate::session as numerics;", "may not name `session`"),
    ("src/physics/coil.rs", "use crate::session::Step as _;", "may not name `session`"),
    ("src/physics/coil.rs", "use super::super::session::Step;", "may not name `session`"),
    ("src/physics/mod.rs", "use super::session::Step;", "may not name `session`"),
    ("src/physics/coil.rs", "use self::super::super::session::*;", "may not name `session`"),
    ("src/physics/coil.rs", "mod tests { use super::super::super::session::Step; }", "`session`"),
    ("src/physics/coil.rs", "use faultwright::session::Step;", "may not name `session`"),
    ("src/physics/coil.rs", "use ::faultwright::session::Step;", "may not name `session`"),
    ("src/physics/coil.rs", "fn f() { crate::session::take(); }", "may not name `session`"),
    ("src/physics/coil.rs", "fn f(s: &crate::session::Step) {}", "may not name `session`"),
    ("src/physics/coil.rs", "fn f() -> Vec<Option<crate::session::Step>> {}", "`session`"),
    ("src/physics/coil.rs", "fn f() { use crate::session; }", "may not name `session`"),
    ("src/physics/coil.rs", "impl crate::session::Taker for Coil {}", "may not name `session`"),
    ("src/physics/coil.rs", "fn f() { <Coil as crate::session::Taker>::f() }", "`session`"),
    ("src/physics/coil.rs", "#[cfg(test)] mod tests { use crate::session::Step; }", "`session`"),
    ("src/physics/coil.rs", "#[derive(crate::session::Taker)] struct Coil;", "`session`"),
    ("src/physics/coil.rs", "#[serde(with = \"crate::session::form\")] struct Coil;", "`session`"),
    ("src/physics/coil.rs", "fn f() { assert!(crate::session::is_open()); }", "`session`"),
    ("src/physics/coil.rs", "fn f() { vec![(1, super::super::session::N)]; }", "`session`"),
    ("src/physics/coil.rs", "macro_rules! m { () => { $crate::session::take() } }", "`session`"),
    (
        "src/physics/coil.rs",
        "m! { use crate::{units, session::{Step}}; }",
        "may not name `session`",
    ),
    ("src/physics/coil.rs", "fn f() { crate::session::note!(1); }", "may not name `session`"),
    ("src/physics/coil.rs", "use crate::control_module::Signal;", "`physics` (row 2"),
    ("src/control_module/mod.rs", "use crate::physics::Coil;", "(row 2: laws of components"),
    ("src/units/mod.rs", "use crate::numerics::lu;", "may not name `numerics`"),
    ("src/workshop/mod.rs", "use crate::command_line::Ending;", "may not name `command_line`"),
    ("src/physics/coil.rs", "use crate::attic::Box;", "has no row in the table"),
    ("src/main.rs", "fn main() { faultwright::workshop::run(); }", "may only call `command_line`"),
    ("src/physics/coil.rs", "fn f( {", "cannot be read"),
];

const LAUNDERED: &[Planted] = &[
    ("src/vehicle/mod.rs", "pub use crate::physics::Coil;", "not its own child"),
    ("src/vehicle/mod.rs", "pub(crate) use crate::physics::Coil;", "not its own child"),
    ("src/vehicle/harness.rs", "pub(super) use super::access::Tree;", "not its own child"),
    ("src/vehicle/mod.rs", "use crate::physics; pub use physics::Coil;", "not its own child"),
    ("src/vehicle/mod.rs", "use crate::physics as p; pub use p::{Coil as C};", "not its own child"),
    ("src/vehicle/mod.rs", "pub use std::collections::BTreeMap;", "from outside"),
    ("src/scenario/mod.rs", "pub use ron::Error;", "from outside"),
    ("src/physics/coil.rs", "use crate as house;", "the crate's root"),
    ("src/physics/coil.rs", "use crate::{self as house};", "the crate's root"),
    ("src/physics/coil.rs", "use faultwright as house;", "the crate's root"),
    ("src/physics/coil.rs", "use super::super as house;", "the crate's root"),
    ("src/physics/mod.rs", "use super::*;", "the crate's root"),
    ("src/physics/coil.rs", "use crate::*;", "the crate's root"),
    ("src/physics/coil.rs", "extern crate self as house;", "second name"),
    ("src/physics/coil.rs", "include!(\"../session/mod.rs\");", "cannot follow"),
    ("src/physics/coil.rs", "#[path = \"../session/mod.rs\"] mod s;", "cannot follow"),
    ("src/physics/coil.rs", "mod helpers { }", "says nothing"),
];

const OUTSIDE: &[Planted] = &[
    ("src/physics/coil.rs", "use std::fs;", "may not name `std::fs`"),
    ("src/physics/coil.rs", "use std::{fmt, fs::File};", "may not name `std::fs::File`"),
    ("src/physics/coil.rs", "fn f() { ::std::fs::read(p); }", "may not name `std::fs::read`"),
    ("src/physics/coil.rs", "fn f() { m!(std::fs::read(p)); }", "may not name `std::fs::read`"),
    ("src/session/mod.rs", "use std::time::Instant;", "clock is the vehicle's"),
    ("src/session/mod.rs", "use core::time::Duration;", "clock is the vehicle's"),
    ("src/wording/mod.rs", "fn f() { std::env::var(n); }", "may not name `std::env::var`"),
    ("src/scenario/mod.rs", "use std::net::TcpStream;", "may not name `std::net::TcpStream`"),
    ("src/session/mod.rs", "fn f() { std::process::exit(1) }", "may not name `std::process::exit`"),
    ("src/vehicle/mod.rs", "fn f() { std::thread::spawn(g); }", "joined in a fixed order"),
    ("src/vehicle/mod.rs", "use std::os::unix::fs::MetadataExt;", "may ask the system"),
    ("src/physics/coil.rs", "use std as s;", "root of the standard library"),
    ("src/physics/coil.rs", "use std::{self as s};", "root of the standard library"),
    ("src/physics/coil.rs", "use std::*;", "root of the standard library"),
    ("src/vehicle/mod.rs", "use std::collections::HashMap;", "may not use `HashMap`"),
    ("src/vehicle/mod.rs", "use std::collections::{BTreeMap, HashSet as Set};", "`HashSet`"),
    (
        "src/vehicle/mod.rs",
        "use std::collections; fn f(m: collections::HashMap<A, B>) {}",
        "`HashMap`",
    ),
    ("src/vehicle/mod.rs", "fn f() { m!(HashSet::new()); }", "may not use `HashSet`"),
    ("src/vehicle/mod.rs", "use std::collections::hash_map::Entry;", "may not use `hash_map`"),
    ("src/session/mod.rs", "use bevy::prelude::*;", "may not name `bevy::prelude`"),
    ("src/report/mod.rs", "use bevy_ecs::world::World;", "may not name `bevy_ecs::world::World`"),
    ("src/report/mod.rs", "use egui;", "may not name `egui`"),
    ("src/records/mod.rs", "use bevy_egui as b;", "may not name `bevy_egui`"),
    ("src/workshop/mod.rs", "use clap::Command;", "may not name `clap::Command`"),
    ("src/session/mod.rs", "fn f() { ron::from_str(t) }", "may not name `ron::from_str`"),
    ("src/report/mod.rs", "use fluent_bundle::FluentBundle;", "sentences live in one place"),
    ("src/scenario/mod.rs", "use unic_langid::LanguageIdentifier;", "sentences live in one place"),
    ("src/session/mod.rs", "use sha2::Sha256;", "one digest"),
    ("src/faults/mod.rs", "use rand_chacha::ChaCha8Rng;", "named streams"),
    ("src/faults/mod.rs", "use rand::{self, Rng};", "named streams"),
    ("src/physics/coil.rs", "fn f() { libm::exp(x); }", "one door"),
    ("src/physics/coil.rs", "use libm as rand; fn f() { rand::exp(x); }", "`libm::exp`"),
    ("src/numerics/mod.rs", "use syn::File;", "only this check reads source"),
];

const LAWFUL: &[(&str, &str)] = &[
    ("src/physics/coil.rs", "use crate::units::Volts; use crate::numerics::lu;"),
    ("src/physics/coil.rs", "use crate::physics::plunger::Gap; use super::plunger;"),
    ("src/physics/mod.rs", "mod coil; pub use coil::Coil; pub use self::coil::{State, gap};"),
    ("src/physics/mod.rs", "pub use crate::physics::coil::Coil; pub(crate) use coil::solve;"),
    ("src/physics/coil.rs", "#[cfg(test)] mod tests { use super::*; use proptest::prelude::*; }"),
    ("src/physics/coil.rs", "pub(crate) fn f() {} pub(in crate::physics) fn g() {}"),
    (
        "src/physics/coil.rs",
        "use std::collections::BTreeMap; use std::fmt; fn f() -> fmt::Result {}",
    ),
    ("src/physics/coil.rs", "impl Coil { fn f(&self) { let rand = self.libm; g(rand, self); } }"),
    ("src/physics/coil.rs", "fn f(session: u8) { debug_assert!(session > 0, \"{}\", session); }"),
    ("src/physics/coil.rs", "fn f() { vec![crate::units::Volts(1.0), Self::rest()]; }"),
    ("src/physics/coil.rs", "/// See [`crate::session`] and `std::fs`.\nstruct Coil;"),
    ("src/physics/coil.rs", "macro_rules! law { ($x:ident) => { $crate::units::$x::new() } }"),
    (
        "src/physics/coil.rs",
        "#[derive(thiserror::Error)] #[error(\"no {0}: std::fs\")] struct E(u8);",
    ),
    ("src/physics/coil.rs", "fn f() { include_str!(\"table.csv\"); env!(\"CARGO_PKG_NAME\"); }"),
    ("src/numerics/elementary.rs", "pub fn exp(x: f64) -> f64 { libm::exp(x) }"),
    ("src/numerics/stream.rs", "use rand_chacha::ChaCha8Rng; use rand::SeedableRng;"),
    ("src/session/journal.rs", "use std::fs::File; use crate::{faults, instruments::Meter};"),
    ("src/scenario/mod.rs", "fn f() { ron::from_str(t); std::fs::read(p); }"),
    ("src/wording/mod.rs", "use fluent_bundle::FluentBundle; use unic_langid::langid;"),
    ("src/reasoning/mod.rs", "use crate::session::Event; fn f() { std::thread::scope(g); }"),
    ("src/workshop/mod.rs", "use bevy::prelude::*; use bevy_egui::egui; use std::time::Instant;"),
    ("src/workshop/mod.rs", "use std::collections::HashMap; use crate::session::Session;"),
    ("src/command_line/mod.rs", "use clap::Command; fn f() { crate::workshop::run(); }"),
    (
        "src/main.rs",
        "fn main() -> std::process::ExitCode { faultwright::command_line::run().into() }",
    ),
];

fn must_be_refused(planted: &[Planted]) {
    let mut passed = Vec::new();
    for (file, source, why) in planted {
        let said = refusals(file, source);
        if !said.iter().any(|said| said.contains(why)) {
            passed.push(format!("{file}: {source}\n    wanted: {why}\n    got: {said:?}"));
        }
    }
    assert!(passed.is_empty(), "not refused as they should be:\n{}", passed.join("\n"));
}

#[test]
fn arrows_up_the_house_are_refused() {
    must_be_refused(UP_THE_HOUSE);
}

#[test]
fn laundered_arrows_are_refused() {
    must_be_refused(LAUNDERED);
}

#[test]
fn forbidden_outsiders_are_refused() {
    must_be_refused(OUTSIDE);
}

#[test]
fn lawful_sources_pass() {
    for (file, source) in LAWFUL {
        assert_eq!(refusals(file, source), Vec::<String>::new(), "{file}: {source}");
    }
}

#[test]
fn a_refusal_names_the_file_and_the_line() {
    let said =
        refusals("src/physics/coil.rs", "use crate::units::Volts;\n\nuse crate::session::Step;\n");
    assert_eq!(said.len(), 1);
    assert!(said[0].starts_with("src/physics/coil.rs:3: "), "{}", said[0]);
}

#[test]
fn a_ring_is_found_and_a_tree_is_none() {
    let graph = |arrows: &[(&str, &[&str])]| -> BTreeMap<String, BTreeSet<String>> {
        let owned = |list: &[&str]| list.iter().map(|&name| name.to_owned()).collect();
        arrows.iter().map(|(from, to)| ((*from).to_owned(), owned(to))).collect()
    };
    let tree = graph(&[("a", &["b", "c"]), ("b", &["c"]), ("c", &[])]);
    assert_eq!(rules::ring(&tree), None);
    let ringed = graph(&[("a", &["b"]), ("b", &["c"]), ("c", &["d", "b"]), ("d", &[])]);
    assert_eq!(rules::ring(&ringed), Some(vec!["b".into(), "c".into(), "b".into()]));
}

#[test]
fn a_tree_that_is_not_the_table_is_refused() {
    let there = |names: &[&str]| names.iter().map(|&name| name.to_owned()).collect();
    let all: Vec<&str> = crate::house::HOUSE.iter().map(|room| room.name).collect();
    assert!(tree::table_against(&there(&all), &[]).is_empty());
    let with_stranger: Vec<&str> = all.iter().copied().chain(["attic"]).collect();
    assert!(tree::table_against(&there(&with_stranger), &[])[0].contains("no row"));
    assert!(tree::table_against(&there(&all), &["units"])[0].contains("take it out of PLANNED"));
    assert!(tree::table_against(&there(&all[1..]), &[])[0].contains("neither there nor"));
    assert!(tree::table_against(&there(&all), &["attic"])[0].contains("the table has not"));
}

#[test]
fn lengths_leave_out_inline_tests_only() {
    let tests = "/// Doc.\n#[cfg(test)]\nmod tests {\n    fn a() {}\n}\n";
    assert_eq!(tree::counted_lines(&format!("fn a() {{}}\nfn b() {{}}\n{tests}")), 2);
    let plain = "#[cfg(unix)]\nmod tests {\n    fn a() {}\n}\n";
    assert_eq!(tree::counted_lines(plain), 4);
}

#[test]
fn names_and_roots_that_hide_things_are_refused() {
    assert_eq!(tree::drawer_in("src/physics/utils.rs"), Some("utils"));
    assert_eq!(tree::drawer_in("src/common/coil.rs"), Some("common"));
    assert_eq!(tree::drawer_in("src/physics/traits/mod.rs"), Some("traits"));
    assert_eq!(tree::drawer_in("src/physics/common_rail.rs"), None);
    assert!(tree::strangers_in_root("//! Doc.\n#![warn(a)]\npub mod units;\n").is_empty());
    for root in ["mod units;", "pub mod units {}", "pub use units::Volts;", "pub fn f() {}"] {
        assert_eq!(tree::strangers_in_root(root).len(), 1, "{root}");
    }
}

#[test]
fn a_place_gives_a_module_path() {
    assert_eq!(module_path("src/lib.rs"), Vec::<String>::new());
    assert_eq!(module_path("src/main.rs"), ["main"]);
    assert_eq!(module_path("src/physics/mod.rs"), ["physics"]);
    assert_eq!(module_path("src/physics/coil/tests.rs"), ["physics", "coil", "tests"]);
}

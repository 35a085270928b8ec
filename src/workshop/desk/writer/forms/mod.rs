//! The forms: which values of the text each part shows, and how what is typed is written.

mod costs;
mod decoys;
mod faults;
mod job;
mod rest;
mod terms;

use crate::scenario::schema::ScenarioFile;
use crate::scenario::writing::notation;
use crate::units::Money;
use crate::vehicle::spec::VehicleSpec;
use crate::wording::catalogue::Words;
use crate::workshop::view::writer::Section;
use crate::workshop::view::writer::form::{Choice, Deed, Field, Row, Sort};
use std::collections::BTreeMap;

/// What forms are made from.
#[derive(Clone, Copy)]
pub struct Ground<'a> {
    /// What the text holds.
    pub file: &'a ScenarioFile,
    /// Its vehicle, where that can be read.
    pub vehicle: Option<&'a VehicleSpec>,
    /// What was typed in fields, by the paths of their values: half a number is none yet, and is not taken away.
    pub typed: &'a BTreeMap<String, Typed>,
    /// The sentences.
    pub words: &'a Words,
}

/// What was typed in a field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Typed {
    /// What the field holds.
    pub text: String,
    /// Why that is not written into the text.
    pub problem: Option<String>,
}

/// The rows of a part of the form.
pub fn rows(section: Section, ground: Ground<'_>) -> Vec<Row> {
    let mut form = Form { ground, group: None, rows: Vec::new() };
    match section {
        Section::Story => {
            job::story(&mut form);
            terms::tools_and_time(&mut form);
        }
        Section::Job => {
            job::job(&mut form);
            terms::approval(&mut form);
        }
        Section::Faults => faults::faults(&mut form),
        Section::Decoys => decoys::decoys(&mut form),
        Section::Prices => {
            costs::prices(&mut form);
            terms::shelf(&mut form);
        }
        Section::Roads => rest::roads(&mut form),
        Section::Marks => rest::marks(&mut form),
        Section::Teaching => rest::teaching(&mut form),
    }
    form.rows
}

/// What is written for something typed in a field; nothing where it is not what the field can hold.
pub fn written(sort: Sort, typed: &str) -> Option<String> {
    match sort {
        Sort::Line | Sort::Lines => Some(notation::text(typed)),
        Sort::Number => notation::typed_number(typed).map(|number| number.to_string()),
        Sort::Whole => notation::typed_whole(typed).map(|number| number.to_string()),
        Sort::Money => notation::typed_money(typed).map(notation::money),
    }
}

/// The sentence for what a field cannot hold.
pub fn misfit(sort: Sort, words: &Words) -> String {
    let key = match sort {
        Sort::Line | Sort::Lines | Sort::Number => "writer-no-number",
        Sort::Whole => "writer-no-whole-number",
        Sort::Money => "writer-no-money",
    };
    words.say(key, &[])
}

/// A part of the form that is being set up.
struct Form<'a> {
    ground: Ground<'a>,
    /// What the names of the fields begin with.
    group: Option<String>,
    rows: Vec<Row>,
}

impl Form<'_> {
    fn say(&self, key: &str) -> String {
        self.ground.words.say(key, &[])
    }

    fn heading(&mut self, text: String) {
        self.rows.push(Row::Heading(text));
    }

    fn remark(&mut self, key: &str) {
        let text = self.say(key);
        self.rows.push(Row::Remark(text));
    }

    /// The name of a field, which the group makes its own.
    fn name(&self, label: &str) -> String {
        match &self.group {
            None => label.to_owned(),
            Some(group) => self.ground.words.say(
                "writer-in-group",
                &[("group", group.as_str().into()), ("label", label.into())],
            ),
        }
    }

    /// A field for a value; `value` is what it holds where nothing else was typed.
    fn field(&self, path: String, label: String, sort: Sort, value: String) -> Row {
        let typed = self.ground.typed.get(&path);
        let (text, problem) = match typed {
            Some(Typed { text, problem: Some(problem) }) => (text.clone(), Some(problem.clone())),
            // As it was typed, as long as it is that value.
            Some(Typed { text, problem: None }) if written(sort, text) == written(sort, &value) => {
                (text.clone(), None)
            }
            _ => (value, None),
        };
        let name = self.name(&label);
        Row::Field(Field { path, name, label, text, sort, problem })
    }

    fn line(&self, path: impl Into<String>, key: &str, value: &str) -> Row {
        self.field(path.into(), self.say(key), Sort::Line, value.to_owned())
    }

    fn lines(&self, path: impl Into<String>, key: &str, value: &str) -> Row {
        self.field(path.into(), self.say(key), Sort::Lines, value.to_owned())
    }

    fn number(&self, path: impl Into<String>, key: &str, value: f64) -> Row {
        self.field(path.into(), self.say(key), Sort::Number, value.to_string())
    }

    fn whole(&self, path: impl Into<String>, key: &str, value: u32) -> Row {
        self.whole_named(path, self.say(key), value)
    }

    fn whole_named(&self, path: impl Into<String>, label: String, value: u32) -> Row {
        self.field(path.into(), label, Sort::Whole, value.to_string())
    }

    fn money(&self, path: impl Into<String>, label: String, value: Money) -> Row {
        self.field(path.into(), label, Sort::Money, notation::money_to_type(value))
    }

    /// One of several; `now` is what the text says.
    fn choice(
        &self,
        path: impl Into<String>,
        key: &str,
        now: &str,
        options: Vec<(String, String)>,
    ) -> Row {
        let label = self.say(key);
        let known = options.iter().find(|(value, _)| value == now);
        let chosen = if let Some((_, name)) = known {
            name.clone()
        } else {
            let now = now.trim_matches('"');
            self.ground.words.say("writer-not-offered", &[("value", now.into())])
        };
        Row::Choice(Choice { path: path.into(), name: self.name(&label), label, chosen, options })
    }

    fn deeds(&mut self, deeds: Vec<(String, Deed)>) {
        self.rows.push(Row::Deeds(deeds));
    }

    fn beside(&mut self, rows: Vec<Row>) {
        self.rows.push(Row::Beside(rows));
    }
}

fn push(list: impl Into<String>, item: impl Into<String>) -> Deed {
    Deed::Push { list: list.into(), item: item.into() }
}

fn remove(path: impl Into<String>) -> Deed {
    Deed::Remove { path: path.into() }
}

fn set(path: impl Into<String>, value: impl Into<String>) -> Deed {
    Deed::Set { path: path.into(), value: value.into() }
}

//! The rules: what each mentioned name resolves to, and whether the module it stands in may name that.

use std::collections::{BTreeMap, BTreeSet};

use crate::findings::Finding;
use crate::house::{
    BINARY, DRAWERS, HOUSE, OUTSIDE, OWN_NAME, UNORDERED, UNORDERED_FROM, purpose_of, row_of,
};
use crate::names::{self, Kind, Mention};
use crate::outside::stands_for;

/// What the check says of one file.
#[derive(Debug, Default)]
pub struct Verdict {
    pub findings: Vec<Finding>,
    /// The modules of the house that this file names, its own not counted.
    pub arrows: BTreeSet<String>,
}

/// What a name turns out to be.
#[derive(Debug, PartialEq, Eq)]
enum Target {
    /// A path in this crate, without `crate`.
    Inside(Vec<String>),
    /// A path in another crate, that crate's name first.
    Outside(Vec<String>),
    /// Something of the file itself, or of the language.
    Local,
}

type Aliases = BTreeMap<(Vec<String>, String), (Vec<String>, bool)>;

/// Judges the source of one file. `at` is the path of its module; the binary's is its own name alone.
pub fn judge(file: &str, at: &[String], source: &str) -> Verdict {
    let mut verdict = Verdict::default();
    let refuse = |line: usize, said: String| Finding { file: file.to_owned(), line, said };
    let parsed = match syn::parse_file(source) {
        Ok(parsed) => parsed,
        Err(error) => {
            let line = error.span().start().line;
            verdict.findings.push(refuse(line, format!("cannot be read: {error}")));
            return verdict;
        }
    };
    let contents = names::read(&parsed, at);
    for (line, what) in contents.smuggled {
        verdict.findings.push(refuse(line, format!("{what}, where this check cannot follow")));
    }
    for (line, name) in contents.modules {
        if DRAWERS.contains(&name.as_str()) {
            let said = format!("`{name}` says nothing about what is inside; name the thing itself");
            verdict.findings.push(refuse(line, said));
        }
    }
    let aliases = aliases_of(&contents.mentions);
    for mention in &contents.mentions {
        let own = mention.at.first().map_or("", String::as_str);
        if let Some(said) = unordered(mention, own) {
            verdict.findings.push(refuse(mention.line, said));
        }
        let complaint = match resolve(&mention.at, &mention.segments, mention.rooted, &aliases, 0) {
            Target::Local => None,
            Target::Inside(path) => {
                if let Some(first) = path.first().filter(|first| *first != own) {
                    verdict.arrows.insert(first.clone());
                }
                arrow(mention, own, &path)
            }
            Target::Outside(path) => outward(mention, own, &path),
        };
        verdict.findings.extend(complaint.map(|said| refuse(mention.line, said)));
    }
    verdict
}

fn aliases_of(mentions: &[Mention]) -> Aliases {
    let mut aliases = Aliases::new();
    for mention in mentions {
        if let Kind::Import { bound: Some(bound), .. } = &mention.kind {
            // `use units::Volts` inside a module that declares `units` binds no other path than its own.
            if mention.segments.first() != Some(bound) {
                let key = (mention.at.clone(), bound.clone());
                aliases.insert(key, (mention.segments.clone(), mention.rooted));
            }
        }
    }
    aliases
}

/// Follows a name to where it leads. `depth` stops a ring of aliases.
fn resolve(
    at: &[String],
    segments: &[String],
    rooted: bool,
    aliases: &Aliases,
    depth: u8,
) -> Target {
    let Some((first, rest)) = segments.split_first() else { return Target::Local };
    if rooted && first != OWN_NAME {
        return Target::Outside(segments.to_vec());
    }
    match first.as_str() {
        OWN_NAME => Target::Inside(rest.to_vec()),
        "crate" if at.first().is_some_and(|own| own == BINARY) => Target::Local,
        "crate" => Target::Inside(rest.to_vec()),
        "self" | "super" => {
            let mut place = at.to_vec();
            let mut left = segments;
            while let Some((word, after)) = left.split_first() {
                match word.as_str() {
                    "self" => {}
                    "super" => drop(place.pop()),
                    _ => break,
                }
                left = after;
            }
            place.extend_from_slice(left);
            Target::Inside(place)
        }
        _ => {
            if let Some((to, rooted)) = aliases.get(&(at.to_vec(), first.clone()))
                && depth < 8
            {
                let longer: Vec<String> = to.iter().chain(rest).cloned().collect();
                return resolve(at, &longer, *rooted, aliases, depth + 1);
            }
            let known = matches!(first.as_str(), "std" | "core" | "alloc")
                || OUTSIDE.iter().any(|row| stands_for(head(row.path), first));
            if known { Target::Outside(segments.to_vec()) } else { Target::Local }
        }
    }
}

fn head(path: &str) -> &str {
    path.split("::").next().unwrap_or(path)
}

/// A name inside the crate: the arrow it draws, and whether it is handed on.
fn arrow(mention: &Mention, own: &str, path: &[String]) -> Option<String> {
    let is_import = matches!(mention.kind, Kind::Import { .. });
    let Some(first) = path.first() else {
        // `self` as a value, and a lone `super` that leads nowhere, draw no arrow.
        return (is_import || mention.segments.len() > 1)
            .then(|| "names the crate's root, behind which an arrow could hide".to_owned());
    };
    if let Kind::Import { shown: true, .. } = mention.kind
        && !path.starts_with(&mention.at)
    {
        return Some(format!(
            "hands on `{}`, which is not its own child; an arrow must be drawn where it is used",
            path.join("::")
        ));
    }
    if first == own {
        return None;
    }
    if own == BINARY {
        let may = first == "command_line";
        return (!may).then(|| format!("the binary may only call `command_line`, not `{first}`"));
    }
    let (Some(from), Some(to)) = (row_of(own), row_of(first)) else {
        return Some(format!("`{own}` names `{first}`, and one of them has no row in the table"));
    };
    (to >= from).then(|| {
        format!(
            "`{own}` (row {from}: {}) may not name `{first}` (row {to}: {})",
            purpose_of(own),
            purpose_of(first)
        )
    })
}

/// A name outside the crate: who may, and whether it is handed on.
fn outward(mention: &Mention, own: &str, path: &[String]) -> Option<String> {
    let mut path = path.to_vec();
    if matches!(path[0].as_str(), "core" | "alloc") {
        "std".clone_into(&mut path[0]);
    }
    let is_import = matches!(mention.kind, Kind::Import { .. });
    // A lone word in an expression or a macro is a variable or a field.
    if path.len() == 1 && !is_import && !mention.rooted {
        return None;
    }
    if let Kind::Import { shown: true, .. } = mention.kind {
        return Some(format!(
            "hands on `{}` from outside; name it where it is used",
            path.join("::")
        ));
    }
    if path.len() == 1 && path[0] == "std" && row_of(own).is_some_and(|row| row < UNORDERED_FROM) {
        return Some(
            "imports the root of the standard library, behind which a part could hide".into(),
        );
    }
    OUTSIDE
        .iter()
        .find(|row| leads(row.path, &path) && !row.may.includes(own))
        .map(|row| format!("`{own}` may not name `{}`: {}", path.join("::"), row.why))
}

/// Whether a row of the outside covers this path.
fn leads(row: &str, path: &[String]) -> bool {
    let mut words = row.split("::");
    let first = words.next().unwrap_or_default();
    stands_for(first, &path[0]) && words.eq(path[1..].iter().take(row.matches("::").count()))
}

fn unordered(mention: &Mention, own: &str) -> Option<String> {
    let row = row_of(own)?;
    let name = mention.segments.iter().find(|word| UNORDERED.contains(&word.as_str()))?;
    (row < UNORDERED_FROM).then(|| {
        format!("`{own}` may not use `{name}`: its order is not the same twice; take a BTree one")
    })
}

/// A ring of arrows, if there is one, in the order in which it is walked.
pub fn ring(arrows: &BTreeMap<String, BTreeSet<String>>) -> Option<Vec<String>> {
    let mut left = arrows.clone();
    // Take away, again and again, every module that names nothing still here; what stays is in a ring or leads to one.
    loop {
        let here: BTreeSet<String> = left.keys().cloned().collect();
        let before = left.len();
        left.retain(|_, to| to.iter().any(|name| here.contains(name)));
        if left.len() == before {
            break;
        }
    }
    let mut walk = vec![left.keys().next()?.clone()];
    loop {
        let last = walk.last()?;
        let next = left.get(last)?.iter().find(|name| left.contains_key(*name))?.clone();
        if let Some(start) = walk.iter().position(|name| *name == next) {
            walk.drain(..start);
            walk.push(next);
            return Some(walk);
        }
        walk.push(next);
    }
}

/// Every row of the table is there once.
pub fn doubled_row() -> Option<&'static str> {
    let mut seen = BTreeSet::new();
    HOUSE.iter().map(|room| room.name).find(|name| !seen.insert(*name))
}

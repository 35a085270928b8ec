//! Trials by virtual apprentices: run, gone on with, joined.

use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::{Ending, Outcome, case, store};
use crate::report::json;
use crate::scenario::load::Loaded;
use crate::trial::file::{self, Gathered};
use crate::trial::row::{Origin, Row, Rows};
use crate::trial::runner::{self, Listener, Plan};
use crate::trial::table::Table;
use crate::trial::{columns, text};
use crate::virtual_apprentices::policy::Policy;
use core::ops::RangeInclusive;
use core::sync::atomic::{AtomicUsize, Ordering};
use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

/// Most seeds of one run.
const MOST_SEEDS: u64 = 1_000_000;

/// Runs a trial or joins the parts of one.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let csv = given.get_one::<PathBuf>("csv");
    let rows = match given.get_many::<PathBuf>("join") {
        Some(parts) => joined(parts, screen)?,
        None => worked(given, csv, screen)?,
    };
    if let Some(path) = csv {
        replace(path, file::text(&rows).as_bytes())?;
    }
    if let Some(path) = given.get_one::<PathBuf>("parquet") {
        let mut bytes = Vec::new();
        columns::write(&rows, &mut bytes)
            .map_err(|error| trouble_at(path)(io::Error::other(error)))?;
        replace(path, &bytes)?;
    }
    show(&rows, given, screen);
    Ok(Ending::Done)
}

fn show(rows: &Rows, given: &clap::ArgMatches, screen: &mut Screen<'_>) {
    let by_case = given.get_flag("by-case");
    let Some(table) = Table::of(rows) else {
        return;
    };
    if Format::of(given) == Format::Json {
        screen.data(&json::header_of("trial").to_string());
        screen.data(&text::json(rows, &table, by_case).to_string());
        return;
    }
    for line in text::report(rows, &table, by_case, screen.words) {
        screen.data(&line);
    }
}

fn trouble_at(path: &Path) -> impl Fn(io::Error) -> Trouble + '_ {
    |source| Trouble::File { path: path.to_owned(), source }
}

/// Puts a whole file in the place of what is there: a reader sees the old or the new and never half.
fn replace(path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(".part");
    let beside = path.with_file_name(name);
    fs::write(&beside, bytes)
        .and_then(|()| fs::rename(&beside, path))
        .map_err(|source| Trouble::File { path: path.to_owned(), source })
}

/// Adds a file's rows; a line that was cut off is told.
fn add(gathered: &mut Gathered, path: &Path, screen: &mut Screen<'_>) -> Result<(), Trouble> {
    let text = fs::read_to_string(path).map_err(trouble_at(path))?;
    let is_torn =
        gathered.add(&text).map_err(|problem| Trouble::Rows { path: path.to_owned(), problem })?;
    if is_torn {
        let path = path.display().to_string();
        let line = screen.words.say("trial-torn", &[("path", path.into())]);
        screen.talk(&line);
    }
    Ok(())
}

fn joined<'p>(
    parts: impl Iterator<Item = &'p PathBuf>,
    screen: &mut Screen<'_>,
) -> Result<Rows, Trouble> {
    let mut gathered = Gathered::default();
    let mut last = PathBuf::new();
    for path in parts {
        add(&mut gathered, path, screen)?;
        last.clone_from(path);
    }
    gathered.finish().map_err(|problem| Trouble::Rows { path: last, problem })
}

/// Seeds from the first to the last, or a single one.
fn seeds(text: &str) -> Option<RangeInclusive<u64>> {
    let (first, last) = match text.split_once("..") {
        Some((first, last)) => (first, last.trim_start_matches('=')),
        None => (text, text),
    };
    let (first, last): (u64, u64) = (first.trim().parse().ok()?, last.trim().parse().ok()?);
    (first <= last && last - first < MOST_SEEDS).then_some(first..=last)
}

fn worked(
    given: &clap::ArgMatches,
    csv: Option<&PathBuf>,
    screen: &mut Screen<'_>,
) -> Result<Rows, Trouble> {
    let text = given.get_one::<String>("seeds").map_or("", String::as_str);
    let seeds = seeds(text).ok_or_else(|| Trouble::Seeds { given: text.to_owned() })?;
    let asked = given.get_many::<String>("policies").into_iter().flatten();
    let asked: BTreeSet<Policy> = asked.filter_map(|word| Policy::of_word(word)).collect();
    let threads = given.get_one::<u16>("threads").and_then(|n| usize::from(*n).try_into().ok());
    let plan = Plan {
        seeds,
        policies: asked.into_iter().collect(),
        is_marked: !given.get_flag("without-marks"),
        threads,
        store: store::world_store(given),
    };
    let loaded = case::scenario(given)?;
    let of = runner::origin(&loaded);
    let before = match csv.filter(|path| path.exists()) {
        Some(path) => there_already(path, &of, plan.is_marked, screen)?,
        None => Vec::new(),
    };
    let keeper = match csv {
        Some(path) => Some(Keeper::begin(path, &of, &before)?),
        None => None,
    };
    let done: BTreeSet<(u64, Policy)> = before.iter().map(Row::place).collect();
    let mut rows = watched(&loaded, &plan, &done, keeper.as_ref(), screen)?;
    if let Some(error) = keeper.and_then(Keeper::error) {
        return Err(trouble_at(csv.map_or(Path::new(""), |path| path))(error));
    }
    rows.rows.extend(before);
    rows.rows.sort_by_key(Row::place);
    Ok(rows)
}

/// The rows that a file holds already. Those without marks count for nothing where marks are asked.
fn there_already(
    path: &Path,
    of: &Origin,
    is_marked: bool,
    screen: &mut Screen<'_>,
) -> Result<Vec<Row>, Trouble> {
    let mut gathered = Gathered::default();
    add(&mut gathered, path, screen)?;
    if gathered.of().is_some_and(|found| found != of) {
        return Err(Trouble::OtherTrial { path: path.to_owned() });
    }
    let mut rows = gathered.finish().map(|rows| rows.rows).unwrap_or_default();
    rows.retain(|row| row.judged.is_some() || !is_marked);
    let said = [("path", path.display().to_string().into()), ("rows", rows.len().into())];
    let line = screen.words.say("trial-resumed", &said);
    screen.talk(&line);
    Ok(rows)
}

/// Runs the trial and shows how far it is.
fn watched(
    loaded: &Arc<Loaded>,
    plan: &Plan,
    done: &BTreeSet<(u64, Policy)>,
    keeper: Option<&Keeper>,
    screen: &mut Screen<'_>,
) -> Result<Rows, Trouble> {
    let seeds = usize::try_from(plan.seeds.end() - plan.seeds.start() + 1).unwrap_or(usize::MAX);
    let of = seeds.saturating_mul(plan.policies.len()) - done_of(plan, done);
    let progress = Progress {
        keeper,
        prepared: AtomicUsize::new(0),
        of_prepared: AtomicUsize::new(0),
        done: AtomicUsize::new(0),
    };
    let rows = std::thread::scope(|scope| {
        let worker = scope.spawn(|| runner::run(loaded, plan, done, &progress));
        while !worker.is_finished() {
            let done = progress.done.load(Ordering::Relaxed);
            let prepared = progress.prepared.load(Ordering::Relaxed);
            let of_prepared = progress.of_prepared.load(Ordering::Relaxed);
            if done > 0 || prepared == of_prepared {
                screen.progress("progress-trial", done, of);
            } else {
                screen.progress("progress-worlds", prepared, of_prepared);
            }
            std::thread::sleep(std::time::Duration::from_millis(50));
        }
        worker.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
    })?;
    Ok(rows)
}

/// How many of the sessions of a plan are done.
fn done_of(plan: &Plan, done: &BTreeSet<(u64, Policy)>) -> usize {
    let asked = |(seed, policy): &&(u64, Policy)| {
        plan.seeds.contains(seed) && plan.policies.contains(policy)
    };
    done.iter().filter(asked).count()
}

/// What the threads tell the one that talks to a person.
struct Progress<'k> {
    keeper: Option<&'k Keeper>,
    prepared: AtomicUsize,
    of_prepared: AtomicUsize,
    done: AtomicUsize,
}

impl Listener for Progress<'_> {
    fn prepared(&self, done: usize, of: usize) {
        self.of_prepared.store(of, Ordering::Relaxed);
        self.prepared.fetch_max(done, Ordering::Relaxed);
    }

    fn done(&self, row: &Row) {
        self.done.fetch_add(1, Ordering::Relaxed);
        if let Some(keeper) = self.keeper {
            keeper.keep(row);
        }
    }

    fn is_over(&self) -> bool {
        self.keeper.is_some_and(Keeper::has_failed)
    }
}

/// A file that gets each row as it comes, so that a run that is stopped loses none that was done.
struct Keeper {
    of: Origin,
    state: Mutex<Result<File, io::Error>>,
}

impl Keeper {
    fn begin(path: &Path, of: &Origin, before: &[Row]) -> Result<Self, Trouble> {
        let rows = Rows { of: of.clone(), rows: before.to_vec() };
        replace(path, file::text(&rows).as_bytes())?;
        let file = File::options().append(true).open(path).map_err(trouble_at(path))?;
        Ok(Self { of: of.clone(), state: Mutex::new(Ok(file)) })
    }

    fn keep(&self, row: &Row) {
        let Ok(mut state) = self.state.lock() else {
            return;
        };
        if let Ok(file) = state.as_mut()
            && let Err(error) = file.write_all(file::line(&self.of, row).as_bytes())
        {
            *state = Err(error);
        }
    }

    fn has_failed(&self) -> bool {
        self.state.lock().is_ok_and(|state| state.is_err())
    }

    fn error(self) -> Option<io::Error> {
        self.state.into_inner().ok().and_then(Result::err)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_seeds_run_from_the_first_to_the_last() {
        assert_eq!(seeds("1..20"), Some(1..=20));
        assert_eq!(seeds("5"), Some(5..=5));
        assert_eq!(seeds("5..=5"), Some(5..=5));
        assert_eq!(seeds("0..999999"), Some(0..=999_999));
        for wrong in ["", "..", "1..", "..3", "3..1", "a..b", "0..1000000", "-1..3"] {
            assert_eq!(seeds(wrong), None, "{wrong}");
        }
    }
}

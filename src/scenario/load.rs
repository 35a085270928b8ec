//! Finding and reading scenario and vehicle files.
//!
//! Inputs: a path, or texts that a session file has kept. Output: data without a known problem.
//! A vehicle is looked for in `vehicles/` beside the scenario, then among those that the program
//! carries; a scenario's own text can lead nowhere else.

use super::carried::{self, Carried, SCENARIOS, VEHICLES};
use super::check;
use super::findings::{Findings, nearest, shown};
use super::outline::Outline;
use super::problem::{FileTrouble, Problem, ProblemKind, Thing};
use super::schema::{CodeOrigin, Mode as ScenarioMode, ScenarioFile, VehicleFile};
use super::{migration, shared_routes, syntax};
use crate::session::journal::Mode;
use crate::session::setup::{Briefing, Route};
use crate::vehicle::spec::{Id, VehicleSpec};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fs;
use std::io::{self, Read as _};
use std::path::Path;

/// Bytes of the largest file that is read.
pub const MOST_BYTES: u64 = 1 << 20;

/// The texts from which a scenario can be read again, whatever becomes of its files.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScenarioText {
    /// Name of the scenario: its file's name without folder and ending.
    pub scenario_name: String,
    /// Text of the scenario file.
    pub scenario_text: String,
    /// Text of the vehicle file that the scenario names.
    pub vehicle_text: String,
}

impl ScenarioText {
    /// The texts of the scenario that is taken where none is named.
    #[must_use]
    pub fn demo() -> Self {
        Self::of(SCENARIOS[0])
    }

    /// The texts of every scenario that the program carries.
    #[must_use]
    pub fn carried() -> Vec<Self> {
        SCENARIOS.into_iter().map(Self::of).collect()
    }

    fn of(carried: Carried) -> Self {
        Self {
            scenario_name: carried.name.to_owned(),
            scenario_text: carried.text.to_owned(),
            vehicle_text: carried::vehicle(carried.vehicle).unwrap_or_default().to_owned(),
        }
    }
}

/// A scenario that was read and found without a problem.
#[derive(Debug, Clone, PartialEq)]
pub struct Loaded {
    /// The texts that it was read from.
    pub text: ScenarioText,
    /// The scenario.
    pub scenario: ScenarioFile,
    /// Its vehicle.
    pub vehicle: VehicleSpec,
}

impl Loaded {
    /// The scenario's own roads and those that it names.
    fn routes(&self) -> BTreeMap<Id, Route> {
        let mut routes = self.scenario.routes.clone();
        let named = self.scenario.shared_routes.iter();
        routes.extend(named.filter_map(|name| Some((name.clone(), shared_routes::route(name)?))));
        routes
    }

    /// What everybody may know of any case of this scenario.
    #[must_use]
    pub fn briefing(&self) -> Briefing {
        Briefing {
            vehicle: self.vehicle.clone(),
            mode: match self.scenario.mode {
                ScenarioMode::Practice => Mode::Practice,
                ScenarioMode::Assessed => Mode::Assessed,
            },
            job: self.scenario.job.clone(),
            approval: self.scenario.approval,
            tools: self.scenario.tools.clone(),
            time_limit: self.scenario.time_limit,
            shelf: self.scenario.shelf.clone(),
            prices: self.scenario.prices.clone(),
            routes: self.routes(),
            customers_route: self.scenario.customers_route.clone(),
            workshop_temperature: self.scenario.workshop_temperature,
            false_codes: self
                .scenario
                .decoys
                .old_codes
                .iter()
                .filter(|old| old.origin == CodeOrigin::False)
                .map(|old| (old.code, old.chance))
                .collect(),
        }
    }
}

/// Why a scenario could not be loaded.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LoadError {
    /// The scenario's file could not be read at all.
    #[error("reading the scenario file {file}: {trouble:?}")]
    Unreadable {
        /// The file.
        file: String,
        /// Why.
        trouble: FileTrouble,
    },
    /// Something is wrong in the scenario or in its vehicle; never empty.
    #[error("checking a scenario: {} problems, the first {:?}", problems.len() + left_off, problems.first())]
    Problems {
        /// The problems: the scenario's, then the vehicle's, each in the order of its text.
        problems: Vec<Problem>,
        /// How many more there are.
        left_off: usize,
    },
}

/// Reads a scenario file and its vehicle. The bare name of a scenario that the program carries, such
/// as `glasshouse-lane`, leads to that one where there is no file of the name.
///
/// # Errors
/// [`LoadError`] when the file cannot be read or when anything in it or its vehicle is wrong.
pub fn load(path: &Path) -> Result<Loaded, LoadError> {
    let file = path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into());
    let scenario_text = match read_limited(path) {
        Ok(text) => text,
        Err(trouble) => {
            let carried = SCENARIOS.into_iter().find(|it| Path::new(it.name) == path);
            return match carried {
                Some(carried) if trouble == FileTrouble::NotFound => {
                    read(ScenarioText::of(carried))
                }
                _ => Err(LoadError::Unreadable { file, trouble }),
            };
        }
    };
    let name = path.file_stem().map_or_else(String::new, |name| name.to_string_lossy().into());
    let folder = path.parent().unwrap_or(Path::new("")).join("vehicles");
    read_with(&file, name, scenario_text, |vehicle| find_vehicle(&folder, vehicle))
}

/// Reads a scenario from texts, such as a session file has kept.
///
/// # Errors
/// [`LoadError`] when a text is too long or anything in it is wrong.
pub fn read(text: ScenarioText) -> Result<Loaded, LoadError> {
    let ScenarioText { scenario_name, scenario_text, vehicle_text } = text;
    let file = format!("{}.ron", shown(&scenario_name));
    if scenario_text.len() as u64 > MOST_BYTES {
        let trouble = FileTrouble::TooLarge { most: MOST_BYTES };
        return Err(LoadError::Unreadable { file, trouble });
    }
    read_with(&file, scenario_name, scenario_text, |_| {
        if vehicle_text.len() as u64 > MOST_BYTES {
            return Err(Lookup::Unreadable(FileTrouble::TooLarge { most: MOST_BYTES }));
        }
        Ok(vehicle_text)
    })
}

/// Reads a scenario whose text is being written. Its vehicle is looked for as that of a file in `folder` would be;
/// where nothing is saved yet, only among those that the program carries.
///
/// # Errors
/// [`LoadError`] when the text is too long or anything in it or its vehicle is wrong.
pub fn read_written(name: &str, text: &str, folder: Option<&Path>) -> Result<Loaded, LoadError> {
    let file = format!("{}.ron", shown(name));
    if text.len() as u64 > MOST_BYTES {
        let trouble = FileTrouble::TooLarge { most: MOST_BYTES };
        return Err(LoadError::Unreadable { file, trouble });
    }
    let find = |vehicle: &str| match folder {
        Some(folder) => find_vehicle(&folder.join("vehicles"), vehicle),
        None => carried::vehicle(vehicle).map(str::to_owned).ok_or_else(|| {
            Lookup::Unknown(nearest(vehicle, VEHICLES.iter().map(|(known, _)| *known)))
        }),
    };
    read_with(&file, name.to_owned(), text.to_owned(), find)
}

/// The text of a scenario file as it stands, right or wrong, for somebody who writes it.
///
/// # Errors
/// [`FileTrouble`] when it cannot be read, is too long or is not UTF-8.
pub fn text_of(path: &Path) -> Result<String, FileTrouble> {
    read_limited(path)
}

/// The vehicle of a name, as [`read_written`] finds it; nothing where there is none that can be read.
#[must_use]
pub fn vehicle_named(name: &str, folder: Option<&Path>) -> Option<VehicleSpec> {
    check::vehicle_name(name).ok()?;
    let text = match folder {
        Some(folder) => find_vehicle(&folder.join("vehicles"), name).ok()?,
        None => carried::vehicle(name)?.to_owned(),
    };
    read_vehicle(name, &text).0
}

/// Names of the vehicles that the program carries.
#[must_use]
pub fn carried_vehicles() -> [&'static str; VEHICLES.len()] {
    VEHICLES.map(|(name, _)| name)
}

/// Reads a scenario from the bytes of its file and of its vehicle's, whatever they are: what [`load`] does, without a folder.
/// The door for tests that throw anything at the reader.
///
/// # Errors
/// [`LoadError`] when the bytes are no text, are too many, or anything in them is wrong.
pub fn read_bytes(scenario: Vec<u8>, vehicle: Vec<u8>) -> Result<Loaded, LoadError> {
    let name = "bytes";
    let file = format!("{name}.ron");
    let text = text_in(scenario)
        .map_err(|trouble| LoadError::Unreadable { file: file.clone(), trouble })?;
    read_with(&file, name.to_owned(), text, |_| text_in(vehicle).map_err(Lookup::Unreadable))
}

/// The scenario that is taken where none is named.
///
/// # Errors
/// None, unless the program was built from a broken scenario; a test holds that.
pub fn demo() -> Result<Loaded, LoadError> {
    read(ScenarioText::demo())
}

/// Why a vehicle's text was not found.
enum Lookup {
    /// No file of that name; the likeliest that exists.
    Unknown(Option<String>),
    /// A link that leads out of the folder.
    Outside,
    /// A file that could not be read.
    Unreadable(FileTrouble),
}

fn read_with(
    file: &str,
    scenario_name: String,
    scenario_text: String,
    vehicle_text: impl FnOnce(&str) -> Result<String, Lookup>,
) -> Result<Loaded, LoadError> {
    let mut outline = Outline::of(&scenario_text);
    let renewed = migration::of_scenario(&scenario_text, &outline);
    if let Some(renewed) = &renewed {
        outline = Outline::of(renewed);
    }
    let texts = (&scenario_text[..], renewed.as_deref().unwrap_or(&scenario_text));
    let scenario: ScenarioFile = syntax::parse(file, texts, &outline)
        .map_err(|problem| LoadError::Problems { problems: vec![*problem], left_off: 0 })?;
    let mut findings = Findings::new(file, &scenario_text, &outline);
    let vehicle_file = format!("vehicles/{}.ron", shown(&scenario.vehicle));
    let vehicle_text = check::vehicle_name(&scenario.vehicle).and_then(|()| {
        vehicle_text(&scenario.vehicle).map_err(|lookup| match lookup {
            Lookup::Unknown(nearest) => ProblemKind::UnknownName {
                thing: Thing::Vehicle,
                found: shown(&scenario.vehicle),
                nearest,
            },
            Lookup::Outside => ProblemKind::LeavesFolder { found: shown(&scenario.vehicle) },
            Lookup::Unreadable(trouble) => {
                ProblemKind::VehicleUnreadable { file: vehicle_file.clone(), trouble }
            }
        })
    });
    let vehicle_text = vehicle_text.map_err(|kind| findings.add("vehicle", kind)).ok();
    let (vehicle, vehicle_problems) = vehicle_text
        .as_deref()
        .map_or((None, (Vec::new(), 0)), |text| read_vehicle(&vehicle_file, text));
    check::scenario(&mut findings, &scenario, vehicle.as_ref());
    let (mut problems, mut left_off) = findings.into_problems();
    problems.extend(vehicle_problems.0);
    left_off += vehicle_problems.1;
    match (vehicle, vehicle_text) {
        (Some(vehicle), Some(vehicle_text)) if problems.is_empty() => {
            let text = ScenarioText { scenario_name, scenario_text, vehicle_text };
            Ok(Loaded { text, scenario, vehicle })
        }
        _ => Err(LoadError::Problems { problems, left_off }),
    }
}

/// A vehicle, as far as its text holds one, and its problems with the number of those left off.
fn read_vehicle(file: &str, text: &str) -> (Option<VehicleSpec>, (Vec<Problem>, usize)) {
    let outline = Outline::of(text);
    match syntax::parse::<VehicleFile>(file, (text, text), &outline) {
        Ok(VehicleFile { vehicle, .. }) => {
            let mut findings = Findings::new(file, text, &outline);
            check::vehicle(&mut findings, &vehicle);
            (Some(vehicle), findings.into_problems())
        }
        Err(problem) => (None, (vec![*problem], 0)),
    }
}

/// The text of a vehicle whose name was checked to be a plain one.
fn find_vehicle(folder: &Path, name: &str) -> Result<String, Lookup> {
    let path = folder.join(format!("{name}.ron"));
    // A name cannot lead out of the folder, but a link in it could.
    if let (Ok(folder), Ok(path)) = (fs::canonicalize(folder), fs::canonicalize(&path))
        && !path.starts_with(folder)
    {
        return Err(Lookup::Outside);
    }
    match read_limited(&path) {
        Ok(text) => return Ok(text),
        Err(FileTrouble::NotFound) => {}
        Err(trouble) => return Err(Lookup::Unreadable(trouble)),
    }
    if let Some(text) = carried::vehicle(name) {
        return Ok(text.to_owned());
    }
    let mut names: Vec<String> = fs::read_dir(folder)
        .map(|entries| entries.filter_map(|entry| vehicle_of(&entry.ok()?.path())).collect())
        .unwrap_or_default();
    names.extend(VEHICLES.iter().map(|(known, _)| (*known).to_owned()));
    // The system lists a folder in any order.
    names.sort();
    Err(Lookup::Unknown(nearest(name, names.iter().map(String::as_str))))
}

/// The name by which a scenario would call this file.
fn vehicle_of(path: &Path) -> Option<String> {
    let is_ron = path.extension().is_some_and(|ending| ending == "ron");
    is_ron.then(|| path.file_stem()?.to_str().map(str::to_owned)).flatten()
}

fn trouble_of(error: &io::Error) -> FileTrouble {
    match error.kind() {
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => FileTrouble::NotFound,
        io::ErrorKind::PermissionDenied => FileTrouble::NotAllowed,
        io::ErrorKind::IsADirectory => FileTrouble::NotAFile,
        _ => FileTrouble::Failed { number: error.raw_os_error() },
    }
}

/// Reads a plain file of limited size as UTF-8.
fn read_limited(path: &Path) -> Result<String, FileTrouble> {
    // Asked before opening, because opening a pipe would wait for its other end.
    if !fs::metadata(path).map_err(|error| trouble_of(&error))?.is_file() {
        return Err(FileTrouble::NotAFile);
    }
    let file = fs::File::open(path).map_err(|error| trouble_of(&error))?;
    let mut bytes = Vec::new();
    file.take(MOST_BYTES + 1).read_to_end(&mut bytes).map_err(|error| trouble_of(&error))?;
    text_in(bytes)
}

/// The text of a file that holds these bytes; a byte order mark at its start is dropped.
fn text_in(bytes: Vec<u8>) -> Result<String, FileTrouble> {
    if bytes.len() as u64 > MOST_BYTES {
        return Err(FileTrouble::TooLarge { most: MOST_BYTES });
    }
    let text = String::from_utf8(bytes).map_err(|error| {
        let good = error.utf8_error().valid_up_to();
        let text = String::from_utf8_lossy(error.as_bytes().get(..good).unwrap_or(&[]));
        let (line, column) = super::findings::line_and_column(&text, text.len());
        FileTrouble::NotUtf8 { line, column }
    })?;
    Ok(text.strip_prefix('\u{feff}').map(str::to_owned).unwrap_or(text))
}

//! The table of the house: every module with its row, and what of the outside each may name.

/// A module of `src/` and the row it lives on.
pub struct Room {
    pub row: u8,
    pub name: &'static str,
    /// What it is, so that a refusal says why and not only that.
    pub is: &'static str,
}

const fn room(row: u8, name: &'static str, is: &'static str) -> Room {
    Room { row, name, is }
}

/// A module imports only from rows below its own, and modules of one row do not see each other.
pub const HOUSE: &[Room] = &[
    room(11, "command_line", "arguments and exit codes; prints, never computes"),
    room(10, "workshop", "the window; draws views, sends steps"),
    room(9, "records", "kept results and their standard exports"),
    room(9, "sound", "what is heard, as samples, and their way to the sound server"),
    room(9, "trial", "a scenario worked by virtual apprentices, and what came of it"),
    room(9, "report", "debrief and marking report"),
    room(8, "scenario", "the scenario file, its checks, the drawing of cases"),
    room(8, "wording", "events and marks in words; the core emits data, never sentences"),
    room(7, "virtual_apprentices", "habits that work a case as a person would, by what is seen"),
    room(7, "assessment", "rubric and marks with their evidence"),
    room(6, "reasoning", "hypotheses and planner; never the hidden state"),
    room(5, "session", "steps in, events out; the only door to the truth"),
    room(4, "faults", "what can be wrong, as a change of parameters"),
    room(4, "instruments", "what a person can sense"),
    room(3, "vehicle", "spec, harness, assembly; translates between physics and control module"),
    room(2, "control_module", "signals in, drives out; it does not know physics"),
    room(2, "physics", "laws of components; it knows no vehicle"),
    room(1, "numerics", "deterministic mathematics"),
    room(0, "units", "what a number means"),
];

/// Modules of the table that have no folder yet. Opening one takes its name out of this list: the test insists.
pub const PLANNED: &[&str] = &["records"];

/// The binary, as the rules see it: it stands above the house and may only call the command line.
pub const BINARY: &str = "main";

/// The crate's own name, under which its documentation examples and its binary know it.
pub const OWN_NAME: &str = "faultwright";

/// Something outside the crate, and the modules that may name it.
pub struct Outside {
    /// A path from the outside crate's root; a trailing `*` in the first segment stands for any ending.
    pub path: &'static str,
    pub may: May,
    pub why: &'static str,
}

/// Who may name something from outside.
pub enum May {
    Any,
    Nobody,
    Only(&'static [&'static str]),
    /// The listed modules, and every module from this row up.
    OnlyOrFrom(&'static [&'static str], u8),
}

const fn outside(path: &'static str, may: May, why: &'static str) -> Outside {
    Outside { path, may, why }
}

const WINDOW: May = May::Only(&["workshop"]);
const FROM_THE_SHELL: May = May::OnlyOrFrom(&[BINARY], 9);

/// Outside crates and parts of the standard library. Every dependency of the manifest has a row, and every row that is no
/// part of the standard library has its dependency: both are checked.
pub const OUTSIDE: &[Outside] = &[
    outside("bevy*", WINDOW, "the core builds and tests without the window"),
    outside("egui*", WINDOW, "the core builds and tests without the window"),
    outside("png", WINDOW, "only the window makes pictures"),
    outside("wgpu", WINDOW, "the core builds and tests without the window"),
    outside("x11_dl", WINDOW, "the core builds and tests without the window"),
    outside("x11rb", WINDOW, "the core builds and tests without the window"),
    outside(
        "terminal_size",
        May::Only(&["command_line"]),
        "only the command line talks to the terminal",
    ),
    outside(
        "cpal",
        May::Only(&["sound"]),
        "one place speaks to the system's own way out for sound",
    ),
    outside("pulseaudio", May::Only(&["sound"]), "one place speaks to the sound server"),
    outside("clap", May::Only(&["command_line"]), "arguments are read at one door"),
    outside("ron", May::Only(&["scenario"]), "one place knows the scenario's notation"),
    outside("fluent*", May::Only(&["wording"]), "sentences live in one place"),
    outside("unic_langid", May::Only(&["wording"]), "sentences live in one place"),
    outside("ciborium", May::Only(&["reasoning"]), "one place knows the notation of kept worlds"),
    outside("argon2", May::Only(&["scenario"]), "one place seals and opens cases"),
    outside("chacha20poly1305", May::Only(&["scenario"]), "one place seals and opens cases"),
    outside(
        "getrandom",
        May::Only(&["command_line"]),
        "chance from the system comes in by one door",
    ),
    outside("sha2", May::Only(&["numerics"]), "one digest, one way to feed it"),
    outside("rand", May::Only(&["numerics"]), "chance comes in named streams only"),
    outside("rand_chacha", May::Only(&["numerics"]), "chance comes in named streams only"),
    outside("libm", May::Only(&["numerics"]), "one door to functions that must agree everywhere"),
    outside("parquet", May::Only(&["trial"]), "one place writes tables for other programs"),
    outside("serde", May::Any, "a derive only; notation is chosen where files are opened"),
    outside(
        "serde_json",
        May::Any,
        "a notation only; where files are opened is fenced by `std::fs`",
    ),
    outside("strsim", May::OnlyOrFrom(&[], 8), "the nearest right word is a matter of words"),
    outside("thiserror", May::Any, "a derive only"),
    outside("proptest", May::Any, "a tool of tests"),
    outside("schemars", May::Any, "a derive only, for the test that writes the formats' page"),
    outside("allocation_counter", May::Nobody, "one test counts what a tick takes from the heap"),
    outside("tempfile", FILES, "only a test of files needs a folder to throw away"),
    outside("syn", May::Nobody, "only this check reads source"),
    outside("proc_macro2", May::Nobody, "only this check reads source"),
    outside("std::fs", FILES, "files are opened where the table says and nowhere else"),
    outside("std::env", FROM_THE_SHELL, "the core's result does not hang on the environment"),
    outside("std::net", FROM_THE_SHELL, "the core talks to nobody"),
    outside("std::time", FROM_THE_SHELL, "the core's clock is the vehicle's"),
    outside("std::process", FROM_THE_SHELL, "the core starts and ends nothing"),
    outside("std::os", FILES, "only what opens files may ask the system about one"),
    outside(
        "std::thread",
        May::OnlyOrFrom(&["reasoning"], 7),
        "threads only where results are joined in a fixed order",
    ),
];

const FILES: May =
    May::OnlyOrFrom(&["session", "reasoning", "wording", "scenario", "report", "records"], 9);

/// Names refused wherever they stand in rows 0 to 8, because the order in which they are walked is not the same twice.
pub const UNORDERED: &[&str] = &["HashMap", "HashSet", "hash_map", "hash_set"];

/// The first row that may use an unordered collection.
pub const UNORDERED_FROM: u8 = 9;

/// Names that say nothing about what is inside, for a file, a folder or a module.
pub const DRAWERS: &[&str] =
    &["util", "utils", "helper", "helpers", "common", "misc", "type", "types", "trait", "traits"];

/// No file is longer than this many lines, tests not counted.
pub const LONGEST_FILE: usize = 600;

/// The row of a module, or nothing when it is not in the table.
pub fn row_of(module: &str) -> Option<u8> {
    if module == BINARY {
        return Some(u8::MAX);
    }
    HOUSE.iter().find(|room| room.name == module).map(|room| room.row)
}

/// What a module is, for a refusal.
pub fn purpose_of(module: &str) -> &'static str {
    HOUSE.iter().find(|room| room.name == module).map_or("the binary", |room| room.is)
}

impl May {
    /// Whether `module` is among those who may.
    pub fn includes(&self, module: &str) -> bool {
        match self {
            May::Any => true,
            May::Nobody => false,
            May::Only(list) => list.contains(&module),
            May::OnlyOrFrom(list, row) => {
                list.contains(&module)
                    || row_of(module).is_some_and(|own| module != BINARY && own >= *row)
            }
        }
    }
}

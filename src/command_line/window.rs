//! Opening the window, or the bench where there is none.

use super::screen::Screen;
use super::{Outcome, bench};
#[cfg(feature = "workshop")]
use crate::workshop::FrameTimes;
use std::io::{self, IsTerminal as _};

/// Opens the window as the arguments say.
#[cfg(feature = "workshop")]
pub fn run(given: Option<&clap::ArgMatches>, screen: &mut Screen<'_>) -> Outcome {
    use super::Ending;
    use super::store;
    use super::trouble::Trouble;
    use crate::reasoning::world_store::WorldStore;
    use crate::sound::player::{Address, Player};
    use crate::wording::catalogue::Words;
    use crate::workshop::{Surroundings, Wanted};
    use std::path::PathBuf;
    use std::sync::Arc;

    #[expect(
        clippy::disallowed_types,
        clippy::disallowed_methods,
        reason = "the clock measures frames and reaches no session"
    )]
    let started = std::time::Instant::now();
    let window = |reason: String| Trouble::Window { reason };
    let language = store::language();
    let said = Words::for_language(&language);
    let pictures = given.and_then(|given| given.get_one::<PathBuf>("screenshots")).cloned();
    if let Some(folder) = &pictures {
        std::fs::create_dir_all(folder)
            .map_err(|error| window(format!("{}: {error}", folder.display())))?;
    }
    // Sessions of pictures are nobody's.
    let aside = pictures
        .is_some()
        .then(|| std::env::temp_dir().join(format!("faultwright-pictures-{}", std::process::id())));
    let sessions = aside.clone();
    let around = Surroundings {
        words: Arc::new(Words::for_language(&language)),
        sessions: Arc::new(move || match &sessions {
            Some(folder) => std::fs::create_dir_all(folder)
                .map(|()| folder.clone())
                .map_err(|error| format!("{}: {error}.", folder.display())),
            None => store::session_folder().map_err(|trouble| trouble.lines(&said).join(" ")),
        }),
        worlds: WorldStore::in_folder(store::usual_world_folder()),
        any_seed: store::any_seed,
        scenario: given.and_then(|given| given.get_one::<PathBuf>("scenario")).cloned(),
        // Pictures show the usual settings and leave the user's own alone.
        settings_file: aside.is_none().then(store::settings_file).flatten(),
        speaker: Arc::new(|gain, told| {
            let servers = Address::all(|name| std::env::var_os(name));
            Box::new(Player::new(servers, gain, told))
        }),
    };
    let measures = given.is_some_and(|given| given.get_flag("frame-times"));
    let wanted = Wanted {
        size: given.and_then(|given| given.get_one::<(u32, u32)>("size")).copied(),
        pictures: pictures.clone(),
        times_from: measures.then_some(started),
    };
    let left =
        crate::workshop::run(around, wanted).map_err(|error| window(error.in_words(screen.words)));
    if let Some(folder) = aside {
        // It may never have been made; what cannot be removed is in the system's folder for such things.
        let _ = std::fs::remove_dir_all(folder);
    }
    let left = left?;
    if measures {
        screen.data(&times(&left.times, screen));
    }
    if let Some(folder) = pictures {
        let saved = left.pictures.map_err(|why| {
            window(screen.words.say("window-pictures-failed", &[("why", why.into())]))
        })?;
        let said = [("count", saved.len().into()), ("folder", folder.display().to_string().into())];
        screen.data(&screen.words.say("window-pictures-saved", &said));
    }
    Ok(Ending::Done)
}

/// How long frames took, in a sentence.
#[cfg(feature = "workshop")]
fn times(times: &FrameTimes, screen: &Screen<'_>) -> String {
    use crate::wording::amounts::number;
    let words = screen.words;
    let said = |time: Option<std::time::Duration>, factor: f64| {
        time.map_or_else(|| "–".to_owned(), |time| number(time.as_secs_f64() * factor, 2, words))
    };
    words.say(
        "window-frame-times",
        &[
            ("adapter", times.adapter.as_str().into()),
            ("first", said(times.first, 1.0).into()),
            ("frames", times.own.len().into()),
            ("middle", said(times.quantile(0.5), 1e3).into()),
            ("most", said(times.quantile(0.99), 1e3).into()),
            ("memory", most_memory().map_or_else(|| "–".to_owned(), |it| it.to_string()).into()),
        ],
    )
}

/// The most memory that this process has held [MB], where the system says it.
#[cfg(feature = "workshop")]
fn most_memory() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    let kilobytes: u64 = line.split_whitespace().next()?.parse().ok()?;
    Some(kilobytes / 1_000)
}

/// This build has no window.
#[cfg(not(feature = "workshop"))]
pub fn run(_: Option<&clap::ArgMatches>, screen: &mut Screen<'_>) -> Outcome {
    use super::trouble::Trouble;
    let reason = screen.words.say("window-not-built", &[]);
    Err(Trouble::Window { reason })
}

/// What the program does without a command: steps on standard input are read; at a terminal or
/// started from a desktop the window opens where there is a display, and the bench where not.
pub fn open_whatever_there_is(screen: &mut Screen<'_>) -> Outcome {
    if !io::stdin().is_terminal() && steps_are_waiting() {
        return bench::run_plain(screen);
    }
    match run(None, screen) {
        Err(super::trouble::Trouble::Window { reason }) => {
            let text = screen.words.say("window-bench-instead", &[("why", reason.into())]);
            screen.talk(&text);
            bench::run_plain(screen)
        }
        other => other,
    }
}

/// A program that a desktop starts has no terminal either, but nothing is sent to it: its
/// standard input is the null device.
fn steps_are_waiting() -> bool {
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt as _;
        std::fs::metadata("/dev/stdin").is_ok_and(|meta| !meta.file_type().is_char_device())
    }
    #[cfg(not(unix))]
    {
        true
    }
}

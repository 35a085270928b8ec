//! The user's settings on disk.
//!
//! A JSON object with a format and a version, so that a later program knows what it reads. It is written whole beside the
//! old one, which it then replaces, so that whoever reads finds one or the other. A file that cannot be read is never
//! written over: the first change of a setting moves it aside.

use crate::wording::catalogue::Words;
use crate::wording::file_words::io_reason;
use crate::workshop::view::settings::{Contrast, Motion, Settings, Shade, TextSize, Volume};
use serde::{Deserialize, Serialize};
use std::fs::{self, File};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};

/// What the file says that it is.
const FORMAT: &str = "faultwright settings";
/// The version that is written, and the only one there has been.
const VERSION: u64 = 1;
/// Bytes of the largest file that is read: far more than every setting takes.
const MOST_BYTES: u64 = 1 << 16;

/// The first thing that is read: whether the rest can be understood.
#[derive(Deserialize)]
struct Head {
    format: String,
    version: u64,
}

/// What stands in the file.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Kept {
    format: String,
    version: u64,
    /// Size of the text [%].
    text_percent: TextSize,
    shade: Shade,
    contrast: Contrast,
    motion: Motion,
    volume: Volume,
    /// Its tag; nothing, or one that the program does not speak, for that of the surroundings.
    language: Option<String>,
}

/// Why a file cannot be used.
#[derive(Debug)]
enum Flaw {
    /// The system does not give it.
    Unreadable(io::Error),
    /// It is none of ours, or was changed by hand; place from 1.
    Broken { line: usize, column: usize },
    /// A later program wrote it.
    Newer { version: u64 },
}

/// Where settings are kept, and how it stands with that.
#[derive(Debug)]
pub struct SettingsFile {
    /// Nowhere, where the surroundings name no folder.
    path: Option<PathBuf>,
    /// There was no file at the start.
    is_first_start: bool,
    /// What is there cannot be read and must not be lost.
    is_foreign: bool,
    /// The user knows that nothing can be kept.
    is_told: bool,
}

impl SettingsFile {
    /// Reads the settings. Where they cannot be read the usual ones hold, and a sentence says why.
    pub fn open(path: Option<PathBuf>, words: &Words) -> (Self, Settings, Option<String>) {
        let mut file = Self { path, is_first_start: false, is_foreign: false, is_told: false };
        let Some(path) = &file.path else { return (file, Settings::default(), None) };
        match read(path) {
            Ok(settings) => (file, settings, None),
            Err(Flaw::Unreadable(error)) if is_none(&error) => {
                file.is_first_start = true;
                (file, Settings::default(), None)
            }
            Err(flaw) => {
                let said = sentence(&flaw, path, words);
                file.is_foreign = true;
                (file, Settings::default(), Some(said))
            }
        }
    }

    /// Whether nobody has kept settings yet.
    pub const fn is_first_start(&self) -> bool {
        self.is_first_start
    }

    /// Keeps the settings; a sentence where that is not possible, the first time only, because the settings hold all the same.
    pub fn keep(&mut self, settings: Settings, words: &Words) -> Option<String> {
        self.is_first_start = false;
        let path = self.path.as_deref()?;
        let error = match write(path, settings, self.is_foreign) {
            Ok(()) => {
                (self.is_foreign, self.is_told) = (false, false);
                return None;
            }
            Err(error) => error,
        };
        (!std::mem::replace(&mut self.is_told, true)).then(|| {
            let path = path.display().to_string();
            let why = io_reason(&error, words);
            words.say("settings-not-kept", &[("path", path.into()), ("why", why.into())])
        })
    }
}

/// There is no file, which is nothing to talk about.
fn is_none(error: &io::Error) -> bool {
    matches!(error.kind(), io::ErrorKind::NotFound | io::ErrorKind::NotADirectory)
}

fn read(path: &Path) -> Result<Settings, Flaw> {
    let mut bytes = Vec::new();
    // Asked before opening, because opening a pipe would wait for its other end.
    let meta = fs::metadata(path).map_err(Flaw::Unreadable)?;
    if meta.is_dir() {
        return Err(Flaw::Unreadable(io::ErrorKind::IsADirectory.into()));
    }
    if !meta.is_file() || meta.len() > MOST_BYTES {
        return Err(Flaw::Broken { line: 1, column: 1 });
    }
    let file = File::open(path).map_err(Flaw::Unreadable)?;
    file.take(MOST_BYTES).read_to_end(&mut bytes).map_err(Flaw::Unreadable)?;
    let broken = |error: serde_json::Error| Flaw::Broken {
        line: error.line().max(1),
        column: error.column().max(1),
    };
    let head: Head = serde_json::from_slice(&bytes).map_err(broken)?;
    if head.format != FORMAT || head.version < VERSION {
        return Err(Flaw::Broken { line: 1, column: 1 });
    }
    if head.version > VERSION {
        return Err(Flaw::Newer { version: head.version });
    }
    let kept: Kept = serde_json::from_slice(&bytes).map_err(broken)?;
    Ok(Settings {
        text: kept.text_percent,
        shade: kept.shade,
        contrast: kept.contrast,
        motion: kept.motion,
        volume: kept.volume,
        language: kept.language.and_then(|tag| known_tag(&tag)),
        ..Settings::default()
    })
}

/// The tag of a language that the program speaks.
fn known_tag(tag: &str) -> Option<&'static str> {
    Words::languages().into_iter().map(|choice| choice.tag).find(|known| *known == tag)
}

fn write(path: &Path, settings: Settings, is_foreign: bool) -> io::Result<()> {
    let Settings { text, shade, contrast, motion, volume, language, are_open: _ } = settings;
    let kept = Kept {
        format: FORMAT.to_owned(),
        version: VERSION,
        text_percent: text,
        shade,
        contrast,
        motion,
        volume,
        language: language.map(str::to_owned),
    };
    let mut text = serde_json::to_string_pretty(&kept)?;
    text.push('\n');
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    let new = beside(path, "new");
    let written = File::create(&new).and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        file.sync_all()
    });
    let moved = written.and_then(|()| {
        if is_foreign {
            fs::rename(path, aside(path))
                // Somebody else took it away meanwhile.
                .or_else(|error| if is_none(&error) { Ok(()) } else { Err(error) })?;
        }
        fs::rename(&new, path)
    });
    if moved.is_err() {
        // It may be half a file, and nobody asks for it.
        let _ = fs::remove_file(&new);
    }
    moved
}

/// A name beside a file: its own with another word behind it.
fn beside(path: &Path, word: &str) -> PathBuf {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(".");
    name.push(word);
    path.with_file_name(name)
}

/// Where a file that cannot be read is moved: a name that nothing has yet.
fn aside(path: &Path) -> PathBuf {
    let mut name = beside(path, "set-aside");
    let mut number = 2_u32;
    while name.exists() {
        name = beside(path, &format!("set-aside-{number}"));
        number += 1;
    }
    name
}

fn sentence(flaw: &Flaw, path: &Path, words: &Words) -> String {
    let name = ("path", path.display().to_string().into());
    let said = match flaw {
        Flaw::Unreadable(error) => {
            words.say("settings-unreadable", &[name, ("why", io_reason(error, words).into())])
        }
        Flaw::Broken { line, column } => words.say(
            "settings-broken",
            &[name, ("line", (*line).into()), ("column", (*column).into())],
        ),
        Flaw::Newer { version } => words.say(
            "settings-newer",
            &[name, ("version", version.to_string().into()), ("known", VERSION.into())],
        ),
    };
    let aside = aside(path).display().to_string();
    let remedy = words.say("settings-usual-hold", &[("aside", aside.into())]);
    format!("{said} {remedy}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words() -> Words {
        Words::for_language("en-GB")
    }

    fn other() -> Settings {
        Settings {
            text: TextSize::Double,
            shade: Shade::Dark,
            contrast: Contrast::High,
            motion: Motion::None,
            volume: Volume::Mute,
            language: Some("de"),
            are_open: false,
        }
    }

    /// The names in a folder, in order.
    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().file_name().to_string_lossy().into())
            .collect();
        names.sort();
        names
    }

    #[test]
    fn replay_settings_come_back_as_they_were_kept() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("new/settings.json");
        let (mut file, settings, said) = SettingsFile::open(Some(path.clone()), &words());
        assert!(file.is_first_start());
        assert_eq!((settings, said), (Settings::default(), None));
        assert!(!path.exists());
        for wanted in [other(), Settings::default(), other()] {
            assert_eq!(file.keep(wanted, &words()), None);
            let (again, settings, said) = SettingsFile::open(Some(path.clone()), &words());
            assert!(!again.is_first_start());
            assert_eq!((settings, said), (wanted, None));
        }
        assert_eq!(names(path.parent().unwrap()), ["settings.json"]);
    }

    #[test]
    fn regress_the_file_is_the_one_that_was_agreed_on() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("settings.json");
        let (mut file, ..) = SettingsFile::open(Some(path.clone()), &words());
        file.keep(other(), &words());
        let text = "{\n  \"format\": \"faultwright settings\",\n  \"version\": 1,\n  \"text_percent\": 200,\n  \
                    \"shade\": \"dark\",\n  \"contrast\": \"high\",\n  \"motion\": \"none\",\n  \
                    \"volume\": \"mute\",\n  \"language\": \"de\"\n}\n";
        assert_eq!(fs::read_to_string(path).unwrap(), text);
    }

    #[test]
    fn limit_a_file_that_cannot_be_read_is_told_and_moved_aside_whole() {
        for (text, told) in [
            ("", "line 1"),
            ("{", "line 1"),
            ("[]", "line 1"),
            ("\u{0}\u{1}", "line 1"),
            ("{\"format\": \"faultwright settings\",\n\"version\": 2, \"font\": 3}", "version 2"),
            (
                "{\"format\": \"faultwright settings\",\n\"version\": 1, \"text_percent\": 110}",
                "line 2",
            ),
            ("{\"format\": \"faultwright settings\",\n\"version\": 1}", "line 2"),
            ("{\"format\": \"something else\", \"version\": 1}", "line 1"),
            ("{\"format\": \"faultwright settings\", \"version\": -1}", "line 1"),
        ] {
            let folder = tempfile::tempdir().unwrap();
            let path = folder.path().join("settings.json");
            fs::write(&path, text).unwrap();
            let (mut file, settings, said) = SettingsFile::open(Some(path.clone()), &words());
            assert_eq!(settings, Settings::default());
            assert!(!file.is_first_start());
            let said = said.unwrap();
            assert!(said.contains(told) && said.contains("settings.json.set-aside"), "{said}");
            assert_eq!(fs::read_to_string(&path).unwrap(), text);

            // What was moved aside before stays as well.
            fs::write(folder.path().join("settings.json.set-aside"), "older").unwrap();
            assert_eq!(file.keep(other(), &words()), None);
            assert_eq!(file.keep(Settings::default(), &words()), None);
            let aside = folder.path().join("settings.json.set-aside-2");
            assert_eq!(fs::read_to_string(aside).unwrap(), text);
            assert_eq!(names(folder.path()).len(), 3);
            let (_, settings, said) = SettingsFile::open(Some(path), &words());
            assert_eq!((settings, said), (Settings::default(), None));
        }
    }

    #[test]
    fn limit_what_is_no_file_is_told_and_nothing_waits_for_it() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("settings.json");
        fs::create_dir(&path).unwrap();
        let (mut file, _, said) = SettingsFile::open(Some(path.clone()), &words());
        assert!(said.unwrap().contains("it is a folder"));
        assert_eq!(file.keep(other(), &words()), None);
        assert_eq!(names(folder.path()), ["settings.json", "settings.json.set-aside"]);
        fs::write(&path, vec![b' '; MOST_BYTES as usize + 1]).unwrap();
        let (_, _, said) = SettingsFile::open(Some(path), &words());
        assert!(said.is_some());
    }

    #[test]
    fn limit_a_place_that_takes_nothing_is_told_once_and_the_settings_hold() {
        let folder = tempfile::tempdir().unwrap();
        let blocker = folder.path().join("taken");
        fs::write(&blocker, "no folder").unwrap();
        let path = blocker.join("settings.json");
        let (mut file, settings, said) = SettingsFile::open(Some(path), &words());
        assert_eq!(settings, Settings::default());
        // It is no folder, so there is no file in it; the rest is told as soon as something is to be kept.
        assert_eq!(said, None);
        let said = file.keep(other(), &words()).unwrap();
        assert!(said.contains("taken"), "{said}");
        assert_eq!(file.keep(Settings::default(), &words()), None);
        // The reason is gone.
        fs::remove_file(&blocker).unwrap();
        assert_eq!(file.keep(other(), &words()), None);
        let (mut nowhere, ..) = SettingsFile::open(None, &words());
        assert_eq!(nowhere.keep(other(), &words()), None);
    }
}

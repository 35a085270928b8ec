//! Saving: whole or not at all, beside the window, and never over what somebody else has written.

use super::{Wish, Writer};
use crate::scenario::load::text_of;
use crate::scenario::problem::FileTrouble;
use crate::scenario::writing::keeping::write_whole;
use crate::wording::catalogue::Words;
use crate::wording::file_words::io_reason;
use crate::workshop::desk::work::{Became, Work};
use crate::workshop::view::writer::{Asked, WriterAction};
use std::io;
use std::path::{Path, PathBuf};

/// The ending of a scenario's file.
const ENDING: &str = "ron";
/// Letters of a name that is offered for a file.
const LONGEST_OFFER: usize = 40;

/// What became of a text that was to be saved.
pub struct Saved {
    path: PathBuf,
    text: String,
    outcome: Outcome,
}

enum Outcome {
    Done,
    /// Something else is there than what was saved last.
    IsOther,
    Failed(io::Error),
}

impl Writer {
    /// Does what is wanted of the file.
    pub(super) fn act_on_file(&mut self, wanted: WriterAction, words: &Words) -> Option<Wish> {
        let asked = self.view.asked.take();
        match (wanted, asked) {
            (WriterAction::Save, _) => self.save(),
            (WriterAction::SaveAndLeave, _) => {
                self.leaves = true;
                self.save();
            }
            (WriterAction::AskPath, _) => {
                self.view.asked = Some(Asked::Path(self.offered_path()));
            }
            (WriterAction::TypePath(text), Some(Asked::Path(_))) => {
                self.view.asked = Some(Asked::Path(text));
            }
            (WriterAction::SaveThere, Some(Asked::Path(text))) => match path_of(&text) {
                Some(path) => {
                    let is_same = self.path.as_ref() == Some(&path);
                    self.save_at(path, is_same, false);
                }
                None => self.view.asked = Some(Asked::Path(text)),
            },
            (WriterAction::SaveOver, Some(Asked::Over(path))) => {
                self.save_at(PathBuf::from(path), false, true);
            }
            (WriterAction::Stay, _) => self.leaves = false,
            (WriterAction::Discard, _) => return Some(self.discard(words)),
            // Nothing that a question is there for.
            (_, asked) => self.view.asked = asked,
        }
        None
    }

    /// Whether the page can be left at once; where it cannot, it asks.
    pub fn may_leave(&mut self) -> bool {
        if self.manuscript.is_changed() {
            self.view.asked = Some(Asked::Leave);
        }
        let may_leave = !self.manuscript.is_changed() && self.saving.is_none();
        if may_leave {
            // What could not be kept before was told then.
            let _ = self.keep_last();
        }
        may_leave
    }

    /// Keeps at once how it is left; what is on its way comes too late.
    fn keep_last(&mut self) -> io::Result<()> {
        self.number = self.drawer.next_number();
        self.drawer.keep(self.number, &self.draft())
    }

    fn save(&mut self) {
        match self.path.clone() {
            Some(path) => self.save_at(path, true, false),
            None => self.view.asked = Some(Asked::Path(self.offered_path())),
        }
    }

    /// Saves beside the window. What is there already is written over where it is what was saved last, or where `over`
    /// says that it may be.
    fn save_at(&mut self, path: PathBuf, is_same: bool, over: bool) {
        if self.saving.is_some() {
            return;
        }
        let text = self.manuscript.text().to_owned();
        let known = is_same.then(|| self.manuscript.saved().to_owned());
        self.saving = Some(Work::begin(&self.wake, String::new(), move |_| {
            let outcome = if !over && is_other(&path, known.as_deref()) {
                Outcome::IsOther
            } else {
                write_whole(&path, &text).map_or_else(Outcome::Failed, |()| Outcome::Done)
            };
            Saved { path, text, outcome }
        }));
    }

    /// Hears whether it was saved: whether anything was heard, and what the desk has to do for it.
    pub(super) fn hear_saved(&mut self, words: &Words) -> (bool, Option<Wish>) {
        let Some(work) = self.saving.take() else { return (false, None) };
        let Saved { path, text, outcome } = match work.look() {
            Became::Pending => {
                self.saving = Some(work);
                return (false, None);
            }
            Became::Lost => {
                self.leaves = false;
                return (true, Some(Wish::Tell(words.say("window-broke-off", &[]))));
            }
            Became::Done(saved) => saved,
        };
        let shown = path.display().to_string();
        let leaves = std::mem::take(&mut self.leaves);
        match outcome {
            Outcome::Done => {
                if self.path.as_ref() != Some(&path) {
                    self.path = Some(path);
                    // Its vehicle may be another one in another folder, and so may what is wrong with it.
                    self.vehicle = None;
                }
                self.manuscript.is_saved(text);
                self.hardness_is_saved();
                // What is wrong may be another thing there.
                self.number = self.drawer.next_number();
                self.view.text.clear();
                self.follow(words);
                (true, (leaves && self.may_leave()).then_some(Wish::Leave))
            }
            Outcome::IsOther => {
                self.leaves = leaves;
                self.view.asked = Some(Asked::Over(shown));
                (true, None)
            }
            Outcome::Failed(error) => {
                let why = io_reason(&error, words);
                let said =
                    words.say("writer-not-saved", &[("path", shown.into()), ("why", why.into())]);
                (true, Some(Wish::Tell(said)))
            }
        }
    }

    /// Lets the changes go.
    fn discard(&mut self, words: &Words) -> Wish {
        let saved = self.manuscript.saved().to_owned();
        self.manuscript.rewrite(&saved, crate::scenario::writing::manuscript::By::Itself);
        self.follow(words);
        // So that nothing is offered again that was let go.
        if let Err(error) = self.keep_last() {
            let why = io_reason(&error, words);
            return Wish::LeaveAndTell(words.say("writer-draft-not-kept", &[("why", why.into())]));
        }
        Wish::Leave
    }

    pub(super) fn show_file(&mut self, words: &Words) {
        let view = &mut self.view;
        view.path = self.path.as_ref().map(|path| path.display().to_string());
        let name = self.path.as_deref().and_then(Path::file_name);
        view.name = name.map_or_else(
            || words.say("writer-new-case", &[]),
            |name| name.to_string_lossy().into_owned(),
        );
        view.is_changed = self.manuscript.is_changed();
        view.can = self.manuscript.can();
    }

    /// Where it is kept; for a text that is kept nowhere yet a name made of its title, at home.
    fn offered_path(&self) -> String {
        if let Some(path) = &self.path {
            return path.display().to_string();
        }
        let title = self.good.as_ref().map_or("", |file| &file.title);
        let mut name = String::new();
        for letter in title.chars().flat_map(char::to_lowercase).take(LONGEST_OFFER) {
            if letter.is_ascii_alphanumeric() {
                name.push(letter);
            } else if !name.is_empty() && !name.ends_with('-') {
                name.push('-');
            }
        }
        let name = name.trim_matches('-');
        let name = if name.is_empty() { super::NEW_NAME } else { name };
        let home = std::env::home_dir().unwrap_or_default();
        home.join(name).with_extension(ENDING).display().to_string()
    }
}

/// The path that was typed, with the ending of a scenario's file where it has none.
fn path_of(typed: &str) -> Option<PathBuf> {
    let typed = typed.trim();
    let path = PathBuf::from(typed);
    path.file_name()?;
    Some(if path.extension().is_none() { path.with_extension(ENDING) } else { path })
}

/// Whether there is a file that does not hold the known text.
fn is_other(path: &Path, known: Option<&str>) -> bool {
    match text_of(path) {
        Ok(text) => known != Some(text.as_str()),
        // There is none, or the writing itself tells why it does not go.
        Err(FileTrouble::NotFound | FileTrouble::NotAllowed | FileTrouble::NotAFile) => false,
        Err(_) => true,
    }
}

//! The writer and the pages around it: how it is come to, left, and left for a while to try the case.

use super::draft::Draft;
use super::trying::Wanted;
use super::{Wish, Writer, door};
use crate::report::problem_words;
use crate::scenario::load::text_of;
use crate::scenario::writing::manuscript::Manuscript;
use crate::scenario::writing::starters::starters;
use crate::workshop::desk::{Desk, Open};
use crate::workshop::view::writer::WriterAction;
use std::path::PathBuf;
use std::sync::Arc;

impl Desk {
    /// Does what is wanted of the writer.
    pub(in crate::workshop::desk) fn act_on_writer(&mut self, wanted: WriterAction) {
        let words = Arc::clone(&self.around.words);
        match (wanted, &mut self.open) {
            (WriterAction::Open, Open::Front(_)) if self.work.is_none() => self.open_door(),
            (WriterAction::Begin(number), Open::WriterDoor(_)) => {
                let Some(starter) = starters().get(number).copied() else { return };
                // It is kept nowhere yet; and yet nothing is lost that was not changed.
                self.write(Manuscript::new(starter.text.to_owned()), None);
            }
            (WriterAction::TypeFile(text), Open::WriterDoor(view)) => view.file = text,
            (WriterAction::ReadFile, Open::WriterDoor(view)) => {
                let path = PathBuf::from(view.file.trim());
                if path.file_name().is_some() {
                    self.open_file(path);
                }
            }
            (WriterAction::GoOn, Open::WriterDoor(_)) => match self.drawer.look() {
                Some(Draft { path, unsaved: Some((saved, text)), .. }) => {
                    self.write(Manuscript::unsaved(text, saved), path);
                }
                Some(Draft { path: Some(path), .. }) => self.open_file(path),
                _ => {}
            },
            (WriterAction::TryEntry(entry), Open::Writer(_)) => self.try_with(Wanted::Entry(entry)),
            (WriterAction::TrySeed, Open::Writer(writer)) => {
                if let Some(seed) = writer.typed_seed(&words) {
                    self.try_with(Wanted::Seed(seed));
                }
            }
            (WriterAction::Measure, Open::Writer(writer)) => {
                writer.measure(self.around.worlds.clone(), &words);
            }
            (wanted, Open::Writer(writer)) => {
                let wish = writer.act(wanted, &words);
                self.fulfil(wish);
            }
            _ => {}
        }
    }

    /// The page on which writing is begun.
    pub(in crate::workshop::desk) fn open_door(&mut self) {
        self.fall_silent();
        self.notice = None;
        self.open = Open::WriterDoor(door::lay(&self.drawer, &self.around.words));
    }

    fn write(&mut self, manuscript: Manuscript, path: Option<PathBuf>) {
        self.notice = None;
        let around = (Arc::clone(&self.wake), self.drawer.clone());
        let writer = Writer::open(manuscript, path, around, &self.around.words);
        self.open = Open::Writer(Box::new(writer));
    }

    /// Opens a file, right or wrong.
    fn open_file(&mut self, path: PathBuf) {
        match text_of(&path) {
            Ok(text) => {
                // The same file from wherever the program is started next.
                let path = std::path::absolute(&path).unwrap_or(path);
                self.write(Manuscript::new(text), Some(path));
            }
            Err(trouble) => {
                let file = path.display().to_string();
                let words = Arc::clone(&self.around.words);
                self.tell(problem_words::file_trouble(&file, trouble, &words));
            }
        }
    }

    /// Does what the writer wishes.
    pub(in crate::workshop::desk) fn fulfil(&mut self, wish: Option<Wish>) {
        match wish {
            Some(Wish::Leave) => self.show_front(),
            Some(Wish::Tell(said)) => self.tell(said),
            Some(Wish::LeaveAndTell(said)) => {
                self.show_front();
                self.tell(said);
            }
            None => {}
        }
    }

    /// Hears what has come of the writer's own work; whether anything has.
    pub(in crate::workshop::desk) fn listen_to_writer(&mut self) -> bool {
        let words = Arc::clone(&self.around.words);
        let Open::Writer(writer) = &mut self.open else { return false };
        let (heard, wish) = writer.listen(&words);
        self.fulfil(wish);
        heard
    }
}

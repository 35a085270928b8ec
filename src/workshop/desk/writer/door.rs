//! Where the writing of a case is begun.

use super::draft::Drawer;
use crate::scenario::load;
use crate::scenario::writing::reading;
use crate::scenario::writing::starters::{Starter, starters};
use crate::wording::catalogue::Words;
use crate::workshop::view::writer::{LastView, StarterView, WriterDoorView};

/// What can be begun with and gone on from.
pub fn lay(drawer: &Drawer, words: &Words) -> WriterDoorView {
    let last = drawer.look().and_then(|draft| {
        let path = draft.path.map(|path| path.display().to_string());
        let is_changed = draft.unsaved.is_some();
        let text = draft.unsaved.map(|(_, text)| text);
        let title = text.and_then(|text| Some(reading("", &text).ok()?.title));
        let title = title.or_else(|| path.clone());
        let title = title.unwrap_or_else(|| words.say("writer-new-case", &[]));
        // A new case of which nothing was changed is none to go on with.
        (is_changed || path.is_some()).then_some(LastView { title, path, is_changed })
    });
    let starters = starters().iter().map(|starter| view(starter, words)).collect();
    WriterDoorView { starters, file: String::new(), last }
}

fn view(starter: &Starter, words: &Words) -> StarterView {
    if starter.is_scenario {
        let read = reading(starter.name, starter.text).ok();
        return match read {
            Some(file) => StarterView { title: file.title, about: file.about },
            None => StarterView { title: starter.name.to_owned(), about: String::new() },
        };
    }
    let vehicle = load::vehicle_named(starter.name, None);
    let vehicle = vehicle.map_or_else(|| starter.name.to_owned(), |vehicle| vehicle.name);
    let named = [("vehicle", vehicle.into())];
    StarterView {
        title: words.say("writer-small-case", &named),
        about: words.say("writer-small-case-why", &[]),
    }
}

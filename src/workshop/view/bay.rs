//! The bay on the page of a case.

use crate::vehicle::spec::Id;
use crate::workshop::bay::camera::{Orbit, Viewpoint};
use crate::workshop::bay::look::best_look;
use crate::workshop::bay::model::{Model, Sort};
use bevy::math::Vec2;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What an eye has found on a thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mark {
    /// Green corrosion on a contact.
    Corrosion,
    /// A terminal spread apart.
    SpreadTerminal,
    /// The strip of a fuse burnt through.
    BlownFuse,
    /// Insulation rubbed through.
    RubbedThrough,
    /// Sludge on the screen.
    Sludge,
    /// A torn seal.
    TornSeal,
    /// A seal that was squeezed before.
    UsedSeal,
    /// Varnish on the spool.
    Varnish,
}

/// What everybody may know of the things in the bay.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Known {
    /// What is off or unplugged.
    pub off: BTreeSet<Id>,
    /// What was found on what.
    pub marks: BTreeMap<Id, BTreeSet<Mark>>,
}

impl Known {
    /// Whether a part is off.
    #[must_use]
    pub fn is_off(&self, part: &Id) -> bool {
        self.off.contains(part)
    }

    /// Whether something was found on a thing.
    #[must_use]
    pub fn has(&self, thing: &Id, mark: Mark) -> bool {
        self.marks.get(thing).is_some_and(|marks| marks.contains(&mark))
    }
}

/// The bay and how it is looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct BayView {
    /// What stands where.
    pub model: Arc<Model>,
    /// What is known of it.
    pub known: Known,
    /// From where it is seen.
    pub orbit: Orbit,
    /// The viewpoint that was asked for last, until the camera is moved by hand.
    pub viewpoint: Option<Viewpoint>,
    /// Whether the camera glides to where it is wanted; by hand it is there at once.
    pub glides: bool,
    /// Everything with a name, in the order of the model.
    pub places: Vec<PlaceView>,
    /// The place that is chosen.
    pub card: Option<CardView>,
}

/// A place in the bay.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlaceView {
    /// Its name in lines.
    pub id: Id,
    /// Its name for people.
    pub name: String,
    /// What it is.
    pub sort: Sort,
    /// It is off or unplugged.
    pub is_off: bool,
}

/// What is known of the chosen place, and what can be done there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardView {
    /// Its name in lines.
    pub id: Id,
    /// Its name for people.
    pub name: String,
    /// How it stands and what was found on it, a line each.
    pub state: Vec<String>,
    /// What is in the way.
    pub blocked: Option<String>,
    /// The line that is being written can go on with it.
    pub fits_line: bool,
    /// What can be done.
    pub steps: Vec<StepAt>,
}

/// Something that can be done at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepAt {
    /// The line.
    pub line: String,
    /// What it does.
    pub meaning: String,
    /// It is a whole step.
    pub is_whole: bool,
}

/// Something that is wanted of the bay.
#[derive(Debug, Clone, PartialEq)]
pub enum BayAction {
    /// Choose a place, or none.
    Choose(Option<Id>),
    /// Choose a place and go and look at it.
    GoTo(Id),
    /// Go to a viewpoint.
    View(Viewpoint),
    /// Turn by a drag, in shares of the picture's height.
    Turn(Vec2),
    /// Shift by a drag, in shares of the picture's height.
    Shift(Vec2),
    /// Come nearer by a factor.
    Nearer(f32),
}

impl BayView {
    /// A bay seen as a whole, everything in place.
    #[must_use]
    pub fn new(model: Arc<Model>, places: Vec<PlaceView>) -> Self {
        let orbit = Viewpoint::Whole.orbit(model.bench);
        Self {
            model,
            known: Known::default(),
            orbit,
            viewpoint: Some(Viewpoint::Whole),
            glides: false,
            places,
            card: None,
        }
    }

    /// The place of a name.
    #[must_use]
    pub fn place(&self, id: &Id) -> Option<&PlaceView> {
        self.places.iter().find(|place| place.id == *id)
    }

    /// Moves the camera as wanted.
    pub fn look(&mut self, wanted: &BayAction) {
        let orbit = self.orbit;
        let (orbit, viewpoint, glides) = match wanted {
            BayAction::View(viewpoint) => {
                (viewpoint.orbit(self.model.bench), Some(*viewpoint), true)
            }
            BayAction::Turn(drag) => (orbit.turned(*drag), None, false),
            BayAction::Shift(drag) => (orbit.shifted(*drag), None, false),
            BayAction::Nearer(factor) => (orbit.nearer(*factor), None, false),
            BayAction::GoTo(id) => {
                let Some(orbit) = best_look(&self.model, &self.known, id) else { return };
                (orbit, None, true)
            }
            BayAction::Choose(_) => return,
        };
        (self.orbit, self.viewpoint, self.glides) = (orbit, viewpoint, glides);
    }
}

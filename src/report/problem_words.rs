//! Problems of scenario files in words: place, fault and remedy.

use crate::scenario::draw::DrawError;
use crate::scenario::load::LoadError;
use crate::wording::catalogue::Words;

/// Every problem of a scenario that could not be loaded, one paragraph each.
#[must_use]
pub fn load_error(error: &LoadError, _words: &Words) -> Vec<String> {
    vec![format!("{error}")]
}

/// Why no case could be dealt.
#[must_use]
pub fn draw_error(error: &DrawError, _words: &Words) -> String {
    format!("{error}")
}

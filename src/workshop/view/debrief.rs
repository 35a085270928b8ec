//! The page that tells what came of a session.

use crate::wording::debrief_words::DebriefWords;

/// What the debrief page shows.
#[derive(Debug, Clone, PartialEq)]
pub struct DebriefView {
    /// Title of the job.
    pub title: String,
    /// The debrief; nothing while it is worked out.
    pub parts: Option<DebriefWords>,
    /// Where the session is kept.
    pub kept_at: String,
}

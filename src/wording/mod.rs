//! Steps, events and problems in words, both ways where people write them.
//!
//! The core emits data. This module turns it into sentences, which come from Fluent catalogues
//! under `assets/locales`, and turns a typed line into a [`Step`](crate::session::step::Step).
//! The words of a typed step are the same in every language, so that a script or a journal can be
//! read anywhere; only sentences are translated.
//!
//! Inputs: steps, events and the briefing. Outputs: text. Nothing here knows the hidden state.

pub mod amounts;
pub mod at_place;
pub mod belief_words;
pub mod caption;
pub mod care_words;
pub mod catalogue;
pub mod code_words;
pub mod course_plot;
pub mod debrief_words;
pub mod defect_words;
pub mod event_words;
pub mod file_words;
pub mod following;
pub mod help;
pub mod hint_words;
pub mod instrument_words;
pub mod job_words;
pub mod lesson_words;
mod limit_words;
pub mod oil_words;
pub mod parse_problem;
pub mod place;
mod predicted;
pub mod proposal_words;
pub mod quoted;
pub mod reader_words;
pub mod refusal_words;
pub mod reviewed_step_words;
pub mod running_words;
pub mod sense_words;
pub mod service_words;
pub mod step_parser;
pub mod step_words;
mod typed_number;
pub mod verbs;
pub mod what_if_words;
mod word_reader;

#[cfg(test)]
mod tests;

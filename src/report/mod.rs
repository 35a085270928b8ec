//! What leaves the program for other programs and for people who were not there.

mod chart;
pub mod debrief_page;
pub mod json;
mod markup;
pub mod problem_words;
pub mod what_if_json;

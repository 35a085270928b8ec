//! What leaves the program for other programs and for people who were not there.

pub mod json;
pub mod problem_words;
pub mod what_if_json;

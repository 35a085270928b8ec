//! Marks with their evidence, and the rubric by which they are weighed.
//!
//! A mark is a pure function of the events, the expert's review of them and the rubric. Each
//! carries the remarks that earned or lost it, and each remark points at the step it is about.
//! Where luck decided, the mark does not: tests are judged by what they could have shown.

pub mod course;
pub mod debrief;
pub mod hints;
pub mod lessons;
pub mod mark;
mod marks;
pub mod rubric;

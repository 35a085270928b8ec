//! Marks with their evidence, and the rubric by which they are weighed.

pub mod rubric;

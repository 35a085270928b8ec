//! Trials: a scenario worked by virtual apprentices, by the thousand.
//!
//! [`runner`] deals the cases of a range of seeds and has every policy work each of them; [`row`] is
//! what comes of one session, [`file`](mod@file) keeps rows as CSV and joins parts from several machines,
//! [`columns`] writes them as Parquet, [`matched`] deals cases that are equally hard, [`table`] sums them up and says how hard the scenario is, and
//! [`text`] puts that in words with a plot. Everything but the rows themselves is worked out from the
//! rows in their order of seed and policy, so that parts give the table of the whole.

pub mod columns;
pub mod facts;
pub mod file;
pub mod hardness;
pub mod matched;
mod plot;
pub mod row;
pub mod runner;
pub mod table;
pub mod text;

//! Tests over the whole of the wording, with a small vehicle of their own.

mod events;
mod file_samples;
mod files;
mod following;
mod sample;
mod steps;
mod steps_of;
mod texts;

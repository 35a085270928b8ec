//! Changes of a text value by value, its history, and files whole or not at all.

mod kept;
mod patched;
mod remembered;

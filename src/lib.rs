//! Faultwright.

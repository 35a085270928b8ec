//! The areas of the page in their order.

use super::row::Row;
use super::{
    battery, circuits, codes, copper, hydraulics, idle, oil, planning, services, solenoids,
};

/// Rows about one thing, with the code that they call.
pub struct Area {
    pub title: &'static str,
    /// Public functions that the rows call, as paths.
    pub calls: &'static str,
    /// What a reader must know besides.
    pub note: &'static str,
    pub rows: Vec<Row>,
}

pub fn all() -> Vec<Area> {
    vec![
        copper::area(),
        circuits::area(),
        battery::area(),
        solenoids::area(),
        oil::area(),
        hydraulics::area(),
        idle::area(),
        codes::area(),
        services::area(),
        planning::area(),
    ]
}

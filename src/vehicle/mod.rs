//! The vehicle: joins physics and control module, which do not know each other, and keeps the order
//! of work in one tick.

pub mod cam_line;
pub mod coil_drive;
pub mod per_cam;
pub mod route;
pub mod run_record;
pub mod running;

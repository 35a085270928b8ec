//! What a number means: typed quantities at public doors, the integer tick, money and minutes.
//!
//! SI units inside (volts, ohms, pascals, degrees Celsius for temperatures that people and coils
//! share); people's units only where something is shown. A formula works on the bare `f64` of a
//! quantity, in a variable whose name carries the unit.

mod quantity;
mod till;
mod time;

pub use quantity::{
    Amperes, Bars, Celsius, CrankDegrees, Henries, Joules, KilometresPerHour, Litres, Millimetres,
    Newtons, Ohms, Rpm, Seconds, Volts, Watts,
};
pub use till::{Minutes, Money};
pub use time::Tick;

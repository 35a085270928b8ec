//! Physical quantities as newtypes over `f64`.

use serde::{Deserialize, Serialize};

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident $unit:literal;)*) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default, Serialize, Deserialize)]
        #[cfg_attr(test, derive(schemars::JsonSchema))]
        #[serde(transparent)]
        pub struct $name(pub f64);

        impl $name {
            /// The unit's symbol as people write it.
            pub const UNIT: &'static str = $unit;
        }
    )*};
}

quantities! {
    /// Electric potential difference [V].
    Volts "V";
    /// Electric current [A].
    Amperes "A";
    /// Electric resistance [ohm], zero or more.
    Ohms "ohm";
    /// Inductance [H].
    Henries "H";
    /// Power [W].
    Watts "W";
    /// Energy [J].
    Joules "J";
    /// Force [N].
    Newtons "N";
    /// Temperature [°C].
    Celsius "°C";
    /// Gauge pressure [bar].
    Bars "bar";
    /// Volume [litre].
    Litres "l";
    /// Length [mm].
    Millimetres "mm";
    /// Engine speed [rpm].
    Rpm "rpm";
    /// Speed of the vehicle [km/h].
    KilometresPerHour "km/h";
    /// Angle at the crankshaft [degrees]; positive is the direction in which the cam moves away
    /// from its rest position.
    CrankDegrees "°CA";
    /// A duration [s].
    Seconds "s";
}

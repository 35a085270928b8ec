//! The oil as a person finds it: on the dipstick, and what is missing up to the mark.

use super::whole::Vehicle;
use crate::numerics::whole::to_u32;
use crate::physics::oil::ViscosityCurve;
use crate::physics::sump::{Dipstick, VOLUMES_AT, Whereabouts};
use crate::units::{Litres, Minutes, Tick};

/// How far below the lower mark the stick ends, in shares of the span between its marks.
const STICK_ENDS: f64 = 0.8;

impl Vehicle {
    /// Level on the dipstick, 0 at the lower mark and 1 at the upper, and whether the stick comes
    /// out dry: it ends four fifths of the span under its lower mark. Soon after the engine stood
    /// still oil is on its way down; hot oil has expanded.
    #[must_use]
    pub fn dipstick(&self) -> (f64, bool) {
        let level = self.stick().level(self.oil_whereabouts());
        (level.max(-STICK_ENDS), level < -STICK_ENDS)
    }

    /// Oil that the stick asks for up to its upper mark as it reads now, stated at 20 °C.
    #[must_use]
    pub fn missing_oil(&self) -> Litres {
        let stick = self.stick();
        let missing_l = stick.upper_mark_l - self.oil_whereabouts().sump_l;
        let expansion = self.oil_curve().expansion(VOLUMES_AT, self.engine.heat().oil);
        Litres((missing_l / expansion).max(0.0))
    }

    fn stick(&self) -> Dipstick {
        Dipstick::between(self.spec.sump.least_litres, self.spec.sump.full_litres)
    }

    /// The oil that is in now, which may be another than that of the last run.
    fn oil_curve(&self) -> ViscosityCurve {
        self.condition.oil.oil().curve().unwrap_or(*self.engine.oil_curve())
    }

    fn oil_whereabouts(&self) -> Whereabouts {
        let since = self.stopped_at.map(|stopped| {
            Minutes(to_u32(Tick(self.now.0.saturating_sub(stopped.0)).as_seconds() / 60.0))
        });
        let fill = Litres(self.condition.oil.litres);
        let heat = self.engine.heat();
        self.stick().whereabouts(&self.engine.spec().sump, fill, since, &self.oil_curve(), heat.oil)
    }
}

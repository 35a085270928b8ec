//! Elements that are not straight lines, each with the straight line that touches it at some point.

use super::device::{DiodeLaw, FilamentLaw, LEAKAGE_S, OhmSource};
use super::network::Element;
use crate::numerics::elementary::{exp, ln};

/// How far off a solution may be that counts as settled [V]: far under any display's last digit.
const SETTLED_V: f64 = 1e-12;
/// The same for a law whose curvature nobody has worked out [V].
const UNMOVED_V: f64 = 1e-9;
/// Current of a diode above which the next point is chosen by its current [A]: about where its own
/// resistance falls below the kilo-ohms of a module's bias. It decides how fast an iteration settles and
/// not where.
const KNEE_A: f64 = 1e-5;

/// A law that is not a straight line.
#[derive(Debug, Clone, Copy)]
enum Law {
    Diode { law: DiodeLaw, scale_v: f64, knee_v: f64 },
    Filament(FilamentLaw),
    OhmMeter(OhmSource),
}

/// An element with the point at which a line touches its law; current flows from its first end to its
/// second.
#[derive(Debug, Clone, Copy)]
pub(super) struct Curve {
    law: Law,
    /// The point [V], [A] and the slope there [S].
    volts: f64,
    amperes: f64,
    siemens: f64,
}

impl Curve {
    /// The element at zero volts; `None` for one that is a straight line.
    pub fn of(element: &Element) -> Option<Self> {
        let law = match *element {
            Element::Diode { law, .. } => {
                let scale_v = law.scale_v();
                let knee_v = scale_v * ln(1.0 + KNEE_A / law.saturation_a);
                Law::Diode { law, scale_v, knee_v }
            }
            Element::Filament { law, .. } => Law::Filament(law),
            Element::OhmMeter { source, .. } => Law::OhmMeter(source),
            _ => return None,
        };
        Some(Self::touching(law))
    }

    /// An ohmmeter's source from its red to its black lead.
    pub fn of_ohm_source(source: OhmSource) -> Self {
        Self::touching(Law::OhmMeter(source))
    }

    fn touching(law: Law) -> Self {
        let mut curve = Self { law, volts: 0.0, amperes: 0.0, siemens: 0.0 };
        if let Law::Diode { law, .. } = law {
            curve.at_junction(law, 0.0, law.saturation_a);
        } else {
            curve.at(0.0);
        }
        curve
    }

    /// Where the line touches [V].
    pub const fn volts(&self) -> f64 {
        self.volts
    }

    /// Slope of the line [S], zero or more.
    pub const fn siemens(&self) -> f64 {
        self.siemens
    }

    /// Current that the line has at zero volts, the other way round [A]: what flows into the first end.
    pub fn offset_a(&self) -> f64 {
        self.siemens * self.volts - self.amperes
    }

    /// Current of the line at a voltage [A].
    pub fn amperes_at(&self, volts: f64) -> f64 {
        self.amperes + self.siemens * (volts - self.volts)
    }

    /// Whether the law at a voltage is where its line says, so that the network is solved.
    pub fn is_settled(&self, volts: f64) -> bool {
        let step_v = volts - self.volts;
        match self.law {
            Law::Diode { law, scale_v, .. } => {
                // An exponential lies off its tangent by half the square of the step; with at least
                // its own conductance across it, the voltage is off by no more.
                step_v * step_v < 2.0 * scale_v * SETTLED_V
                    || law.is_far_in_reverse(volts) && law.is_far_in_reverse(self.volts)
            }
            Law::Filament(_) => step_v.abs() < UNMOVED_V,
            // Two straight lines: settled on the right one, or in the corner between them.
            Law::OhmMeter(source) => {
                source.is_limited(volts) == source.is_limited(self.volts)
                    || step_v.abs() < UNMOVED_V
            }
        }
    }

    /// Touches the law at a voltage.
    pub fn at(&mut self, volts: f64) {
        let (amperes, siemens) = match self.law {
            Law::Diode { law, .. } => law.current(volts),
            Law::Filament(law) => law.current(volts),
            Law::OhmMeter(source) => {
                let (pushed, slope) = source.current(volts);
                (-pushed, -slope)
            }
        };
        (self.volts, self.amperes, self.siemens) = (volts, amperes, siemens);
    }

    /// Touches the law where the network, solved with the line, suggests: for a conducting diode at the
    /// current and not at the voltage, which would throw it far up its exponential, from where it comes
    /// down by one unit of it at a time.
    pub fn near(&mut self, volts: f64) {
        let Law::Diode { law, scale_v, knee_v } = self.law else {
            return self.at(volts);
        };
        if law.is_far_in_reverse(volts) {
            return self.at(volts);
        }
        let amperes = self.amperes_at(volts) - LEAKAGE_S * volts;
        let junction_v = volts - law.series_ohms * amperes;
        if junction_v > knee_v || amperes > KNEE_A {
            let amperes = amperes.max(KNEE_A);
            let grown_a = law.saturation_a + amperes;
            self.at_junction(law, scale_v * ln(grown_a / law.saturation_a), grown_a);
        } else {
            self.at_junction(law, junction_v, law.saturation_a * exp(junction_v / scale_v));
        }
    }

    /// Touches a diode's law where its junction has a voltage, at which the exponential has grown to a
    /// current.
    fn at_junction(&mut self, law: DiodeLaw, junction_v: f64, grown_a: f64) {
        let amperes = grown_a - law.saturation_a;
        let junction_s = grown_a / law.scale_v();
        self.volts = junction_v + law.series_ohms * amperes;
        self.amperes = amperes + LEAKAGE_S * self.volts;
        self.siemens = junction_s / (1.0 + law.series_ohms * junction_s) + LEAKAGE_S;
    }
}

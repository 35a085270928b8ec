//! What a cost lies between, and how long it is worth closing that in.

/// What is enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Enough {
    /// Gap as a share of the upper bound.
    pub relative: f64,
    /// Gap in units of cost.
    pub absolute: f64,
    /// Situations that may be kept.
    pub situations: usize,
    /// Work that may be done from now on: states in beliefs that bounds are worked out for. A
    /// count and not a time, so that the same search stops at the same place everywhere.
    pub work: u64,
}

impl Enough {
    /// Until the bounds meet, but for rounding.
    pub const EXACT: Self =
        Self { relative: 1e-9, absolute: 1e-9, situations: 1_000_000, work: u64::MAX };

    pub(super) fn is_met(&self, bounds: Bounds) -> bool {
        let near = self.absolute.max(self.relative * bounds.upper.abs());
        // Where no policy is known yet, no gap is near; where there is none, nothing is to be found.
        bounds.lower.is_infinite() || (bounds.upper.is_finite() && bounds.gap() <= near)
    }
}

/// What a cost lies between.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bounds {
    /// At least.
    pub lower: f64,
    /// At most; the cost of a policy that exists.
    pub upper: f64,
}

impl Bounds {
    /// Distance.
    #[must_use]
    pub fn gap(&self) -> f64 {
        (self.upper - self.lower).max(0.0)
    }
}

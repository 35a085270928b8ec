//! A root of a continuous function between two bounds.

use thiserror::Error;

/// Why no root was returned. An unconverged value is never passed off as a result.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum RootError {
    /// The function has the same sign at both bounds.
    #[error("finding a root: no change of sign between {low} and {high}")]
    NotBracketed {
        /// Lower bound tried.
        low: f64,
        /// Upper bound tried.
        high: f64,
    },
    /// The bracket was still wider than asked after all iterations.
    #[error("finding a root: bracket still {width} wide after {iterations} iterations")]
    NotConverged {
        /// Width of the bracket that was reached.
        width: f64,
        /// Iterations spent.
        iterations: u32,
    },
}

/// More halvings than an `f64` has bits between any two bounds that occur here.
const MOST_ITERATIONS: u32 = 200;

/// Finds `x` in `[low, high]` with `f(x) = 0` to within `tolerance` by false position with the
/// Illinois correction, which keeps the bracket and never diverges.
///
/// # Errors
/// [`RootError`] when the bounds do not bracket a root or the bracket does not shrink enough.
pub fn between(
    low: f64,
    high: f64,
    tolerance: f64,
    mut f: impl FnMut(f64) -> f64,
) -> Result<f64, RootError> {
    let (mut a, mut b) = (low, high);
    let (mut f_a, mut f_b) = (f(a), f(b));
    if f_a == 0.0 {
        return Ok(a);
    }
    if f_b == 0.0 {
        return Ok(b);
    }
    if (f_a > 0.0) == (f_b > 0.0) || f_a.is_nan() || f_b.is_nan() {
        return Err(RootError::NotBracketed { low, high });
    }
    let mut last_side = 0;
    for iteration in 0..MOST_ITERATIONS {
        if (b - a).abs() <= tolerance {
            return Ok(0.5 * (a + b));
        }
        // Every fourth step halves, so that a bracket with one stuck end still shrinks.
        let x = if iteration % 4 == 3 { 0.5 * (a + b) } else { (a * f_b - b * f_a) / (f_b - f_a) };
        let f_x = f(x);
        if f_x == 0.0 {
            return Ok(x);
        }
        if (f_x > 0.0) == (f_b > 0.0) {
            (b, f_b) = (x, f_x);
            if last_side == 1 {
                f_a *= 0.5;
            }
            last_side = 1;
        } else {
            (a, f_a) = (x, f_x);
            if last_side == -1 {
                f_b *= 0.5;
            }
            last_side = -1;
        }
    }
    Err(RootError::NotConverged { width: (b - a).abs(), iterations: MOST_ITERATIONS })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_square_root_of_two() {
        let root = between(0.0, 2.0, 1e-14, |x| x * x - 2.0).unwrap();
        assert!((root - core::f64::consts::SQRT_2).abs() < 1e-13);
    }

    #[test]
    fn limit_no_change_of_sign_is_refused() {
        assert!(matches!(between(1.0, 2.0, 1e-9, |x| x * x), Err(RootError::NotBracketed { .. })));
    }
}

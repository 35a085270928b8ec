//! The one door to elementary functions.
//!
//! The standard library's `exp`, `ln`, `sin` … may differ in the last bit between platforms;
//! these do not. Everything else in the program is kept from the standard ones by a lint.

/// e to the power `x`.
#[must_use]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Natural logarithm.
#[must_use]
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// `ln(1 + x)`, exact where `x` is small.
#[must_use]
pub fn ln_1p(x: f64) -> f64 {
    libm::log1p(x)
}

/// Logarithm to base ten.
#[must_use]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// `base` to the power `exponent`.
#[must_use]
pub fn pow(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

/// Sine of an angle in radians.
#[must_use]
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}

/// Cosine of an angle in radians.
#[must_use]
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}

/// Hyperbolic tangent.
#[must_use]
pub fn tanh(x: f64) -> f64 {
    libm::tanh(x)
}

/// Error function, for the probability of a band of readings.
#[must_use]
pub fn erf(x: f64) -> f64 {
    libm::erf(x)
}

/// `ln(cosh(x))` without overflow for large `x`.
#[must_use]
pub fn ln_cosh(x: f64) -> f64 {
    let magnitude = x.abs();
    magnitude + libm::log1p(libm::exp(-2.0 * magnitude)) - core::f64::consts::LN_2
}

/// Square root. IEEE 754 demands the correctly rounded result, so the platform's own is portable.
#[must_use]
pub fn sqrt(x: f64) -> f64 {
    x.sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_ln_cosh_is_even_and_linear_far_out() {
        assert_eq!(ln_cosh(-3.0).to_bits(), ln_cosh(3.0).to_bits());
        assert!((ln_cosh(800.0) - (800.0 - core::f64::consts::LN_2)).abs() < 1e-12);
        assert!(ln_cosh(0.0).abs() < 1e-16);
    }
}

//! From a number to a whole one: the nearest that the type holds, zero for what is no number.
#![expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cast from a float saturates, which is what these promise"
)]

/// The whole part.
#[must_use]
pub const fn to_i64(x: f64) -> i64 {
    x as i64
}

/// The whole part, not below zero.
#[must_use]
pub const fn to_u32(x: f64) -> u32 {
    x as u32
}

/// The whole part, not below zero.
#[must_use]
pub const fn to_usize(x: f64) -> usize {
    x as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_what_does_not_fit_is_the_nearest_that_does() {
        assert_eq!(to_i64(-2.9), -2);
        assert_eq!(to_i64(f64::INFINITY), i64::MAX);
        assert_eq!((to_u32(-1.0), to_u32(1e20), to_u32(f64::NAN)), (0, u32::MAX, 0));
        assert_eq!(to_usize(7.99), 7);
    }
}

//! Dense linear systems by LU factors with partial pivoting.
//!
//! Our own rather than a library's, because the order of summation must not depend on the
//! processor. Sizes here are a few dozen unknowns.

use thiserror::Error;

/// Why a system could not be solved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum LinearError {
    /// No pivot of usable size was left in a column: the equations do not determine the unknowns.
    #[error("solving {unknowns} linear equations: no usable pivot in column {column}")]
    Singular {
        /// Number of unknowns.
        unknowns: usize,
        /// First column without a usable pivot.
        column: usize,
    },
}

/// A pivot below this share of the largest entry is taken as zero: about a thousand times the
/// relative precision of `f64`, so that a floating node is told and rounding is not.
pub(super) const PIVOT_SHARE: f64 = 1e-18;

/// Solves `matrix · x = right` in place: `matrix` (row-major, `n × n`) is overwritten by its
/// factors, `right` by the solution.
///
/// # Errors
/// [`LinearError::Singular`] when the equations do not determine the unknowns.
///
/// # Panics
/// When the slices do not fit `n`; callers own both.
pub fn solve_in_place(matrix: &mut [f64], right: &mut [f64], n: usize) -> Result<(), LinearError> {
    assert!(matrix.len() == n * n && right.len() == n, "slices must fit the size");
    let largest = matrix.iter().fold(0.0_f64, |best, entry| best.max(entry.abs()));
    for column in 0..n {
        let mut pivot_row = column;
        let mut pivot_size = matrix[column * n + column].abs();
        for row in column + 1..n {
            let size = matrix[row * n + column].abs();
            if size > pivot_size {
                pivot_row = row;
                pivot_size = size;
            }
        }
        if pivot_size <= largest * PIVOT_SHARE || pivot_size.is_nan() {
            return Err(LinearError::Singular { unknowns: n, column });
        }
        if pivot_row != column {
            for k in 0..n {
                matrix.swap(column * n + k, pivot_row * n + k);
            }
            right.swap(column, pivot_row);
        }
        let pivot = matrix[column * n + column];
        let (above, below) = matrix.split_at_mut((column + 1) * n);
        let pivot_tail = &above[column * n + column + 1..];
        for row in column + 1..n {
            let line = &mut below[(row - column - 1) * n..(row - column) * n];
            let entry = line[column];
            if entry == 0.0 {
                continue;
            }
            let factor = entry / pivot;
            line[column] = factor;
            for (target, source) in line[column + 1..].iter_mut().zip(pivot_tail) {
                *target -= factor * source;
            }
            right[row] -= factor * right[column];
        }
    }
    for row in (0..n).rev() {
        let line = &matrix[row * n..(row + 1) * n];
        let mut sum = right[row];
        for k in row + 1..n {
            sum -= line[k] * right[k];
        }
        right[row] = sum / line[row];
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn closed_form_two_by_two() {
        let mut matrix = [0.0, 2.0, 4.0, 1.0];
        let mut right = [6.0, 11.0];
        solve_in_place(&mut matrix, &mut right, 2).unwrap();
        assert_eq!(right.map(f64::to_bits), [2.0, 3.0].map(f64::to_bits));
    }

    #[test]
    fn limit_a_floating_unknown_is_refused() {
        let mut matrix = [1.0, 0.0, 0.0, 0.0];
        let mut right = [1.0, 0.0];
        assert_eq!(
            solve_in_place(&mut matrix, &mut right, 2),
            Err(LinearError::Singular { unknowns: 2, column: 1 })
        );
    }

    proptest! {
        #[test]
        fn prop_solution_satisfies_the_equations(
            entries in proptest::collection::vec(-1.0_f64..1.0, 36),
            wanted in proptest::collection::vec(-10.0_f64..10.0, 6),
        ) {
            let mut matrix = entries;
            for k in 0..6 {
                matrix[k * 6 + k] += 8.0; // diagonally dominant, hence well conditioned
            }
            let mut right: Vec<f64> = (0..6)
                .map(|row| (0..6).map(|k| matrix[row * 6 + k] * wanted[k]).sum())
                .collect();
            solve_in_place(&mut matrix, &mut right, 6).unwrap();
            for (got, want) in right.iter().zip(&wanted) {
                prop_assert!((got - want).abs() < 1e-12 * 100.0);
            }
        }
    }
}

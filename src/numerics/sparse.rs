//! Sparse linear systems by LU factors with partial pivoting.
//!
//! The same pivots and the same sums in the same order as [`solve_in_place`], to the last bit: all
//! that is left out is arithmetic with zeros. Which entries are not zero stands in the bits of one
//! word for each row and each column, so a system has at most [`MOST_UNKNOWNS`] unknowns; larger ones
//! are handed to the dense solver. A wiring harness has about thirty nodes and three or four entries
//! a row.

use super::linear::{LinearError, PIVOT_SHARE, solve_in_place};
use core::num::NonZeroU64;

/// Unknowns that fit the words that remember where entries are.
pub const MOST_UNKNOWNS: usize = 64;

/// A system of equations that is set up and solved again and again in the same place.
#[derive(Debug, Clone)]
pub struct System {
    unknowns: usize,
    /// Entries, row after row; behind the last one, where what belongs nowhere goes.
    entries: Vec<f64>,
    /// Where entries may be before anything is eliminated.
    pattern: Pattern,
}

/// Which entries may hold something.
#[derive(Debug, Clone)]
struct Pattern {
    /// For each row, a bit for each column.
    rows: [u64; MOST_UNKNOWNS],
    /// For each column, a bit for each row.
    columns: [u64; MOST_UNKNOWNS],
}

/// An entry of a [`System`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place(u32);

impl System {
    /// A system of so many equations, every entry zero.
    #[must_use]
    pub fn new(unknowns: usize) -> Self {
        Self {
            unknowns,
            entries: vec![0.0; unknowns * unknowns + 1],
            pattern: Pattern { rows: [0; MOST_UNKNOWNS], columns: [0; MOST_UNKNOWNS] },
        }
    }

    /// The place of an entry, which may hold something from now on.
    ///
    /// # Panics
    /// When the system has no such row or column.
    #[inline]
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a system of 65,536 unknowns fits no memory"
    )]
    pub fn place(&mut self, row: usize, column: usize) -> Place {
        assert!(row < self.unknowns && column < self.unknowns, "an entry of the system");
        if self.unknowns <= MOST_UNKNOWNS {
            self.pattern.rows[row] |= 1 << column;
            self.pattern.columns[column] |= 1 << row;
        }
        Place((row * self.unknowns + column) as u32)
    }

    /// A place that is no entry: what is added there is lost.
    #[must_use]
    #[inline]
    #[expect(clippy::cast_possible_truncation, reason = "as in `place`")]
    pub const fn nowhere(&self) -> Place {
        Place((self.unknowns * self.unknowns) as u32)
    }

    /// Sets every entry to zero.
    #[inline]
    pub fn clear(&mut self) {
        self.entries.fill(0.0);
    }

    /// Adds to an entry.
    #[inline]
    pub fn add(&mut self, place: Place, value: f64) {
        self.entries[place.0 as usize] += value;
    }

    /// Writes the solution for a right-hand side, which is used up as the entries are.
    ///
    /// # Errors
    /// [`LinearError::Singular`] when the equations do not determine the unknowns.
    ///
    /// # Panics
    /// When the slices have another length than the system; callers own both.
    pub fn solve(&mut self, right: &mut [f64], solution: &mut [f64]) -> Result<(), LinearError> {
        let n = self.unknowns;
        assert!(right.len() == n && solution.len() == n, "slices must fit the system");
        if n > MOST_UNKNOWNS {
            solve_in_place(&mut self.entries[..n * n], right, n)?;
            solution.copy_from_slice(right);
            return Ok(());
        }
        let mut elimination = Elimination::new(&self.pattern);
        let smallest = self.largest() * PIVOT_SHARE;
        for column in 0..n {
            let pivot_row = elimination.bring_pivot(column, smallest, &self.entries, n)?;
            elimination.take_column(column, pivot_row, &mut self.entries, right);
        }
        for place in (0..n).rev() {
            let row = elimination.row_at[place];
            let line = &self.entries[row * n..(row + 1) * n];
            let mut sum = right[row];
            for k in bits(beyond(elimination.filled.rows[row], place)) {
                sum -= line[k] * solution[k];
            }
            solution[place] = sum / line[place];
        }
        Ok(())
    }

    /// The largest entry by magnitude.
    fn largest(&self) -> f64 {
        let mut largest = 0.0_f64;
        let lines = self.entries.chunks_exact(self.unknowns.max(1));
        for (line, filled) in lines.zip(&self.pattern.rows) {
            // Rows do not wait for each other.
            let of_row =
                bits(*filled).fold(0.0_f64, |largest, column| larger(largest, line[column].abs()));
            largest = larger(largest, of_row);
        }
        largest
    }
}

/// The larger of two, the first where the second is no number.
#[inline]
fn larger(first: f64, second: f64) -> f64 {
    if second > first { second } else { first }
}

/// An elimination under way.
struct Elimination {
    /// Where entries may be by now.
    filled: Pattern,
    /// Which row stands where after the exchanges so far, and the other way round.
    row_at: [usize; MOST_UNKNOWNS],
    place_of: [usize; MOST_UNKNOWNS],
    /// Rows that no pivot was taken from yet.
    remaining: u64,
    /// The pivot's row behind its column, put beside the others while they change.
    beside: [(usize, f64); MOST_UNKNOWNS],
}

impl Elimination {
    fn new(pattern: &Pattern) -> Self {
        let row_at = core::array::from_fn(|place| place);
        Self {
            filled: pattern.clone(),
            row_at,
            place_of: row_at,
            remaining: u64::MAX,
            beside: [(0, 0.0); MOST_UNKNOWNS],
        }
    }

    /// Exchanges rows so that the largest entry of the column stands on the diagonal, and returns
    /// its row. Of equal ones the first counts, as if they were looked through in their order.
    #[inline]
    fn bring_pivot(
        &mut self,
        column: usize,
        smallest: f64,
        entries: &[f64],
        n: usize,
    ) -> Result<usize, LinearError> {
        let first = self.row_at[column];
        let mut pivot_place = column;
        let mut pivot_size = entries[first * n + column].abs();
        for row in bits(self.filled.columns[column] & self.remaining & !(1 << first)) {
            let size = entries[row * n + column].abs();
            if size >= pivot_size {
                let place = self.place_of[row];
                if size > pivot_size || place < pivot_place {
                    pivot_place = place;
                    pivot_size = size;
                }
            }
        }
        if pivot_size <= smallest || pivot_size.is_nan() {
            return Err(LinearError::Singular { unknowns: n, column });
        }
        self.row_at.swap(column, pivot_place);
        self.place_of[self.row_at[column]] = column;
        self.place_of[self.row_at[pivot_place]] = pivot_place;
        let row = self.row_at[column];
        self.remaining &= !(1 << row);
        Ok(row)
    }

    /// Takes the column out of every row that remains.
    #[inline]
    fn take_column(
        &mut self,
        column: usize,
        pivot_row: usize,
        entries: &mut [f64],
        right: &mut [f64],
    ) {
        let n = right.len();
        let below = self.filled.columns[column] & self.remaining;
        let tail = beyond(self.filled.rows[pivot_row], column);
        let pivot = entries[pivot_row * n + column];
        let pivot_right = right[pivot_row];
        let mut length = 0;
        for (k, entry) in bits(tail).zip(&mut self.beside) {
            *entry = (k, entries[pivot_row * n + k]);
            length += 1;
        }
        let beside = &self.beside[..length];
        for row in bits(below) {
            let line = &mut entries[row * n..(row + 1) * n];
            if line[column] == 0.0 {
                continue;
            }
            let factor = line[column] / pivot;
            for (k, value) in beside {
                line[*k] -= factor * value;
            }
            right[row] -= factor * pivot_right;
            self.filled.rows[row] |= tail;
        }
        for (k, _) in beside {
            self.filled.columns[*k] |= below;
        }
    }
}

/// The columns of a row behind one column.
#[inline]
const fn beyond(filled: u64, column: usize) -> u64 {
    // Two shifts, because one by all 64 places is none.
    filled >> column >> 1 << column << 1
}

/// The numbers of the bits that are set, rising.
#[inline]
fn bits(word: u64) -> impl Iterator<Item = usize> {
    let mut left = NonZeroU64::new(word);
    core::iter::from_fn(move || {
        let word = left?;
        left = NonZeroU64::new(word.get() & (word.get() - 1));
        Some(word.trailing_zeros() as usize)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Entries in the manner of a network: a few in each row, over eight powers of ten.
    fn sparse_entries(n: usize) -> impl Strategy<Value = Vec<(usize, usize, f64)>> {
        let entry =
            (0..n, 0..n, -1.0_f64..1.0, 0_u32..8).prop_map(|(row, column, value, power)| {
                (row, column, value / f64::from(10_u32.pow(power)))
            });
        proptest::collection::vec(entry, 0..n * 4)
    }

    fn patterns(values: &[f64]) -> Vec<u64> {
        // Adding zero makes a negative zero a plain one, which is all that zeros may differ by.
        values.iter().map(|value| (value + 0.0).to_bits()).collect()
    }

    proptest! {
        #[test]
        fn prop_the_dense_solver_gives_the_same_bits(
            (n, entries, right) in (1_usize..70).prop_flat_map(|n| {
                (Just(n), sparse_entries(n), proptest::collection::vec(-10.0_f64..10.0, n))
            }),
        ) {
            let mut dense = vec![0.0; n * n];
            let mut system = System::new(n);
            let diagonal = (0..n).filter(|k| k % 5 != 0).map(|k| (k, k, 1.5));
            let beside = (1..n).map(|k| (k - 1, k, 0.75)).chain((1..n).map(|k| (k, k - 1, 0.75)));
            for (row, column, value) in entries.into_iter().chain(diagonal).chain(beside) {
                dense[row * n + column] += value;
                let place = system.place(row, column);
                system.add(place, value);
            }
            let (mut wanted, mut used, mut got) = (right.clone(), right, vec![0.0; n]);
            let by_dense = solve_in_place(&mut dense, &mut wanted, n);
            prop_assert_eq!(by_dense, system.solve(&mut used, &mut got));
            if by_dense.is_ok() {
                prop_assert_eq!(patterns(&wanted), patterns(&got));
            }
        }
    }

    #[test]
    fn limit_a_floating_unknown_is_refused() {
        let mut system = System::new(2);
        let place = system.place(0, 0);
        system.add(place, 1.0);
        assert_eq!(
            system.solve(&mut [1.0, 0.0], &mut [0.0; 2]),
            Err(LinearError::Singular { unknowns: 2, column: 1 })
        );
    }

    #[test]
    fn closed_form_rows_are_exchanged_and_the_system_serves_again() {
        let mut system = System::new(2);
        let places = [(0, 1), (1, 0), (1, 1)].map(|(row, column)| system.place(row, column));
        for _ in 0..2 {
            system.clear();
            for (place, value) in places.into_iter().zip([2.0, 4.0, 1.0]) {
                system.add(place, value);
            }
            let nowhere = system.nowhere();
            system.add(nowhere, 100.0);
            let mut solution = [0.0; 2];
            system.solve(&mut [6.0, 11.0], &mut solution).unwrap();
            assert_eq!(solution, [2.0, 3.0]);
        }
    }
}

//! One fixed step of a stiff system of ordinary differential equations.
//!
//! Method: Rosenbrock (linearly implicit Runge-Kutta), four stages, order four, three evaluations of
//! the rate and one of its Jacobian a step, stable at any step on decaying components and damping
//! the infinitely quick ones away. So a coil of a million megohm and a spool in tar cost the same
//! as healthy ones, and need neither a smaller step nor a case of their own.
//!
//! Limits: autonomous systems `y' = f(y)`; a change of supply or of friction starts a new call. The
//! step is the caller's to choose, by halving it until the answer no longer moves.
//!
//! Source: Hairer and Wanner, Solving Ordinary Differential Equations II, section IV.7, the
//! L-stable set of the table of Rosenbrock methods of order four. The coefficients are from memory;
//! what vouches for them are the tests below: the exact stability function and the order.

/// Share of the step in the implicit matrix; this choice makes the method L-stable.
const GAMMA: f64 = 0.57282;
const A: [[f64; 3]; 3] =
    [[0.0, 0.0, 0.0], [2.0, 0.0, 0.0], [1.867_943_637_803_922, 0.234_444_971_139_915_6, 0.0]];
const C: [[f64; 3]; 4] = [
    [0.0, 0.0, 0.0],
    [-7.137_615_036_412_31, 0.0, 0.0],
    [2.580_708_087_951_457, 0.651_595_007_644_797_5, 0.0],
    [-2.137_148_994_382_534, -0.321_466_969_123_762_6, -0.694_974_250_178_177_9],
];
const M: [f64; 4] =
    [2.255_570_073_418_735, 0.287_049_326_218_679_2, 0.435_317_943_184_018, 1.093_502_252_409_163];

/// The state `step_s` seconds after `state`, under `rate`, whose Jacobian at `state` is
/// `jacobian[row][column] = d rate[row] / d state[column]`.
#[must_use]
pub fn step<const N: usize>(
    state: &[f64; N],
    step_s: f64,
    rate: impl Fn(&[f64; N]) -> [f64; N],
    jacobian: &[[f64; N]; N],
) -> [f64; N] {
    let factors = Factors::of(jacobian, 1.0 / (GAMMA * step_s));
    let per_step = 1.0 / step_s;
    let mut stages = [[0.0; N]; 4];
    let mut slope = [0.0; N];
    for stage in 0..4 {
        // The fourth stage looks at the same state as the third.
        if stage < 3 {
            let mut at = *state;
            for (earlier, weight) in stages.iter().zip(A[stage]).take(stage) {
                for k in 0..N {
                    at[k] += weight * earlier[k];
                }
            }
            slope = rate(&at);
        }
        let mut right = slope;
        for (earlier, weight) in stages.iter().zip(C[stage]).take(stage) {
            for k in 0..N {
                right[k] += weight * per_step * earlier[k];
            }
        }
        stages[stage] = factors.solve(right);
    }
    let mut next = *state;
    for (stage, weight) in stages.iter().zip(M) {
        for k in 0..N {
            next[k] += weight * stage[k];
        }
    }
    next
}

/// LU factors with partial pivoting of `diagonal * identity - jacobian`.
struct Factors<const N: usize> {
    rows: [[f64; N]; N],
    order: [usize; N],
}

impl<const N: usize> Factors<N> {
    fn of(jacobian: &[[f64; N]; N], diagonal: f64) -> Self {
        let mut rows = *jacobian;
        let mut order = [0; N];
        for (k, row) in rows.iter_mut().enumerate() {
            for entry in row.iter_mut() {
                *entry = -*entry;
            }
            row[k] += diagonal;
            order[k] = k;
        }
        for column in 0..N {
            let mut best = column;
            for row in column + 1..N {
                if rows[row][column].abs() > rows[best][column].abs() {
                    best = row;
                }
            }
            rows.swap(column, best);
            order.swap(column, best);
            for row in column + 1..N {
                let factor = rows[row][column] / rows[column][column];
                let pivot_row = rows[column];
                rows[row][column] = factor;
                for (entry, above) in rows[row].iter_mut().zip(pivot_row).skip(column + 1) {
                    *entry -= factor * above;
                }
            }
        }
        Self { rows, order }
    }

    fn solve(&self, right: [f64; N]) -> [f64; N] {
        let mut x = [0.0; N];
        for row in 0..N {
            let mut sum = right[self.order[row]];
            for (entry, known) in self.rows[row].iter().zip(x).take(row) {
                sum -= entry * known;
            }
            x[row] = sum;
        }
        for row in (0..N).rev() {
            let mut sum = x[row];
            for (entry, known) in self.rows[row].iter().zip(x).skip(row + 1) {
                sum -= entry * known;
            }
            x[row] = sum / self.rows[row][row];
        }
        x
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::elementary::{cos, exp, sin, sqrt};

    /// What one step of the method makes of `y' = z y` at step one: the power series of
    /// `(1 - gamma z)^4 e^z` up to the fourth power over `(1 - gamma z)^4`, which is the only
    /// rational function of this shape with order four.
    fn stability(z: f64) -> f64 {
        let square = GAMMA * GAMMA;
        let binomial = [1.0, -4.0 * GAMMA, 6.0 * square, -4.0 * square * GAMMA, square * square];
        let factorial = [1.0, 1.0, 2.0, 6.0, 24.0];
        let mut top = 0.0;
        let mut power = 1.0;
        for k in 0..5 {
            top += power * (0..=k).map(|j| binomial[j] / factorial[k - j]).sum::<f64>();
            power *= z;
        }
        let bottom = 1.0 - GAMMA * z;
        top / (bottom * bottom * bottom * bottom)
    }

    #[test]
    fn closed_form_linear_decay_follows_the_stability_function_exactly() {
        for z in [-1e-3, -0.1, -1.0, -7.0, -100.0] {
            let next = step(&[1.0], 0.5, |y| [2.0 * z * y[0]], &[[2.0 * z]])[0];
            assert!((next - stability(z)).abs() < 1e-13, "{z}: {next} {}", stability(z));
        }
    }

    #[test]
    fn limit_an_infinitely_quick_component_is_damped_away() {
        let next = step(&[1.0], 1e-4, |y| [-1e14 * (y[0] - 3.0)], &[[-1e14]])[0];
        assert!((next - 3.0).abs() < 1e-4, "{next}");
    }

    /// Halving the step divides the error by sixteen on a system that is not linear and whose
    /// components feed each other: `r' = r (1 - r^2)`, turning once in two pi seconds.
    #[test]
    fn closed_form_order_four_on_a_spiral() {
        let rate = |y: &[f64; 2]| {
            let grow = 1.0 - y[0] * y[0] - y[1] * y[1];
            [y[0] * grow - y[1], y[1] * grow + y[0]]
        };
        let jacobian = |y: &[f64; 2]| {
            let (a, b) = (y[0], y[1]);
            [
                [1.0 - 3.0 * a * a - b * b, -2.0 * a * b - 1.0],
                [1.0 - 2.0 * a * b, 1.0 - a * a - 3.0 * b * b],
            ]
        };
        let error = |steps: u32| {
            let h = 2.0 / f64::from(steps);
            let mut y = [0.1, 0.0];
            for _ in 0..steps {
                y = step(&y, h, rate, &jacobian(&y));
            }
            // r^2 = 1 / (1 + (1/r0^2 - 1) e^(-2t))
            let radius = sqrt(1.0 / (1.0 + 99.0 * exp(-4.0)));
            (y[0] - radius * cos(2.0)).abs().max((y[1] - radius * sin(2.0)).abs())
        };
        let (coarse, fine) = (error(40), error(80));
        let ratio = coarse / fine;
        // Sixteen in the limit; the next order still shows by a quarter at this step.
        assert!((12.0..20.0).contains(&ratio), "{coarse} {fine} {ratio}");
    }
}

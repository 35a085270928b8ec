//! One seed, many random streams that do not disturb each other.
//!
//! Each consumer asks for a stream by name. Its key is the SHA-256 of the seed and the name, so a
//! new consumer, or one that draws more, shifts no other stream.

use rand::{Rng as _, SeedableRng as _};
use rand_chacha::ChaCha12Rng;
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};

/// A family of random streams that grow from one seed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Streams {
    seed: u64,
}

/// One stream of random numbers.
#[derive(Debug, Clone)]
pub struct Stream {
    source: ChaCha12Rng,
}

impl Streams {
    /// The family of `seed`.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self { seed }
    }

    /// The stream called `name`; the same name gives the same numbers from their start.
    #[must_use]
    pub fn stream(self, name: &str) -> Stream {
        let mut key = Sha256::new();
        key.update(b"faultwright random stream 1\0");
        key.update(self.seed.to_le_bytes());
        key.update(name.as_bytes());
        Stream { source: ChaCha12Rng::from_seed(key.finalize().into()) }
    }
}

/// A stream is its key and the place that it has come to.
impl Serialize for Stream {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        // A stream is not drawn from 2^64 times.
        let place = u64::try_from(self.source.get_word_pos()).map_err(serde::ser::Error::custom)?;
        (self.source.get_seed(), place).serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Stream {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let (seed, place) = <([u8; 32], u64)>::deserialize(deserializer)?;
        let mut source = ChaCha12Rng::from_seed(seed);
        source.set_word_pos(u128::from(place));
        Ok(Self { source })
    }
}

impl Stream {
    /// A number in `[0, 1)` with 53 random bits.
    pub fn unit(&mut self) -> f64 {
        const STEPS: f64 = 9_007_199_254_740_992.0; // 2^53
        (self.source.next_u64() >> 11) as f64 / STEPS
    }

    /// Another stream that has nothing to do with this one and does not move it on: the same stream at
    /// the same place gives the same sibling by that name.
    #[must_use]
    pub fn sibling(&self, name: &str) -> Self {
        Streams::new(self.clone().bits()).stream(name)
    }

    /// Sixty-four random bits, as a seed for another family of streams.
    pub fn bits(&mut self) -> u64 {
        self.source.next_u64()
    }

    /// A number in `[low, high)`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// An index drawn with probability proportional to its weight; `None` when no weight is
    /// positive. Negative weights count as zero.
    pub fn weighted(&mut self, weights: &[f64]) -> Option<usize> {
        let total: f64 = weights.iter().map(|w| w.max(0.0)).sum();
        if total <= 0.0 {
            return None;
        }
        let mut left = self.unit() * total;
        let mut last = None;
        for (index, weight) in weights.iter().enumerate() {
            if *weight > 0.0 {
                last = Some(index);
                if left < *weight {
                    return last;
                }
                left -= weight;
            }
        }
        last
    }

    /// A standard normal number: the sum of twelve uniform ones less six (exact mean and variance,
    /// tails cut at six), which needs no transcendental function.
    pub fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.unit()).sum::<f64>() - 6.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn regress_first_values_of_each_stream_are_pinned() {
        let streams = Streams::new(7);
        assert_eq!(streams.stream("fault draw").unit().to_bits(), FAULT_DRAW);
        assert_eq!(streams.stream("meter").unit().to_bits(), METER);
    }
    const FAULT_DRAW: u64 = 4_585_593_820_718_220_496;
    const METER: u64 = 4_603_458_251_270_456_050;

    #[test]
    fn limit_zero_weights_draw_nothing() {
        assert_eq!(Streams::new(1).stream("x").weighted(&[0.0, -1.0]), None);
        assert_eq!(Streams::new(1).stream("x").weighted(&[0.0, 2.0, 0.0]), Some(1));
    }

    #[test]
    fn closed_form_normal_has_mean_zero_and_variance_one() {
        let mut stream = Streams::new(3).stream("normal");
        let draws: Vec<f64> = (0..20_000).map(|_| stream.normal()).collect();
        let mean = draws.iter().sum::<f64>() / 20_000.0;
        let variance = draws.iter().map(|x| (x - mean) * (x - mean)).sum::<f64>() / 20_000.0;
        assert!(mean.abs() < 4.0 / 20_000.0_f64.sqrt());
        assert!((variance - 1.0).abs() < 0.05);
    }
}

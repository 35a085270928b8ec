//! Which seeds several cases are dealt from.

use crate::numerics::digest::DigestBuilder;

/// Seeds of a set of cases, by their number in it, from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Seeds {
    /// One after the other, from this one on.
    From(u64),
    /// Apart from each other: drawn from this number by a function that nobody turns round, so that whoever gets to know one
    /// of the seeds knows none of the others. For sealed cases.
    Apart(u64),
}

impl Seeds {
    /// The seed of a number in the set.
    #[must_use]
    pub fn at(self, number: u64) -> u64 {
        match self {
            Self::From(first) => first.wrapping_add(number),
            Self::Apart(secret) => {
                let mut builder = DigestBuilder::new("faultwright seeds apart");
                builder.whole(secret);
                builder.whole(number);
                let mut first = [0; 8];
                first.copy_from_slice(&builder.finish().0[..8]);
                u64::from_le_bytes(first)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Seeds;
    use std::collections::BTreeSet;

    #[test]
    fn limit_seeds_follow_each_other_or_have_nothing_to_do_with_each_other() {
        assert_eq!([0, 1, 2].map(|number| Seeds::From(u64::MAX).at(number)), [u64::MAX, 0, 1]);
        let apart: Vec<u64> = (0..1_000).map(|number| Seeds::Apart(7).at(number)).collect();
        assert_eq!(apart.iter().collect::<BTreeSet<_>>().len(), apart.len());
        assert_ne!(apart[0], Seeds::Apart(8).at(0));
        // As many bits change from one to the next as by chance: 32 of 64, and over 999 steps within four standard
        // deviations of the mean, 4 * sqrt(16 / 999) = 0.51 (binomial).
        let changed: u32 = apart.windows(2).map(|two| (two[0] ^ two[1]).count_ones()).sum();
        let mean = f64::from(changed) / 999.0;
        assert!((mean - 32.0).abs() < 0.51, "{mean} bits change");
    }
}

//! A sound as it is drawn: how far its samples go up and down, column by column.

use super::SAMPLES_PER_SECOND;
use super::passage::Passage;

/// Longest time that is drawn [samples]: four seconds; an engine that goes on looks the same after that.
const MOST_SAMPLES: usize = 4 * SAMPLES_PER_SECOND as usize;

/// The outline of a sound.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Outline {
    /// Least and greatest sample of each column, from -1 to 1.
    pub columns: Vec<(f32, f32)>,
}

impl Outline {
    /// The outline of a passage in so many columns; of none, when nothing is heard.
    #[must_use]
    #[expect(clippy::cast_possible_truncation, reason = "a drawing needs no more digits")]
    pub fn of(passage: &Passage, columns: usize) -> Self {
        let samples: Vec<f32> =
            passage.samples().take(MOST_SAMPLES).map(|sample| sample as f32).collect();
        if samples.is_empty() || columns == 0 {
            return Self::default();
        }
        let wide = samples.len().div_ceil(columns);
        let column = |part: &[f32]| {
            part.iter().fold((0.0_f32, 0.0_f32), |(least, most), sample| {
                (least.min(*sample), most.max(*sample))
            })
        };
        Self { columns: samples.chunks(wide).map(column).collect() }
    }
}

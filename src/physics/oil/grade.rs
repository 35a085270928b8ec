//! Grades of engine oil by SAE J300, with typical figures of each.
//!
//! Limits are those of the edition of January 2015, read in public copies of its table. The typical
//! figures of a grade are from memory of data sheets; a test holds each within its limits.

use super::Oil;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A grade of engine oil, named as SAE J300 does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[cfg_attr(test, schemars(extend("enum" = Grade::ALL.map(Grade::word))))]
#[serde(try_from = "String", into = "String")]
pub enum Grade {
    /// SAE 0W-20.
    Sae0W20,
    /// SAE 0W-30.
    Sae0W30,
    /// SAE 5W-30.
    Sae5W30,
    /// SAE 5W-40.
    Sae5W40,
    /// SAE 10W-40.
    Sae10W40,
    /// SAE 15W-40.
    Sae15W40,
    /// SAE 20W-50.
    Sae20W50,
}

/// What an oil is made from, which decides how long it stands heat.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Base {
    /// Refined from crude oil.
    Mineral,
    /// A mixture.
    PartSynthetic,
    /// Hydrocracked or synthesised.
    Synthetic,
}

/// Limits of the kinematic viscosity at 100 °C [mm²/s] of a multigrade oil (SAE J300, JAN 2015):
/// at least both `least`, and less than `below`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HotLimits {
    /// Least viscosity that the winter grade asks for [mm²/s].
    pub winter_least_mm2_s: f64,
    /// Least viscosity of the summer grade [mm²/s].
    pub least_mm2_s: f64,
    /// Viscosity that it must stay below [mm²/s].
    pub below_mm2_s: f64,
}

impl HotLimits {
    /// Whether an oil of that viscosity at 100 °C [mm²/s] may bear the grade's name.
    #[must_use]
    pub fn hold(&self, kv100_mm2_s: f64) -> bool {
        kv100_mm2_s >= self.winter_least_mm2_s
            && kv100_mm2_s >= self.least_mm2_s
            && kv100_mm2_s < self.below_mm2_s
    }
}

/// A name that is no grade of the table.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error(
    "reading an oil grade: got \"{got}\", expected one of 0W-20, 0W-30, 5W-30, 5W-40, 10W-40, 15W-40, 20W-50"
)]
pub struct NoSuchGrade {
    /// The name as given.
    pub got: String,
}

impl Grade {
    /// Every grade of the table, thinner ones first.
    pub const ALL: [Self; 7] = [
        Self::Sae0W20,
        Self::Sae0W30,
        Self::Sae5W30,
        Self::Sae5W40,
        Self::Sae10W40,
        Self::Sae15W40,
        Self::Sae20W50,
    ];

    /// Its name.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sae0W20 => "0W-20",
            Self::Sae0W30 => "0W-30",
            Self::Sae5W30 => "5W-30",
            Self::Sae5W40 => "5W-40",
            Self::Sae10W40 => "10W-40",
            Self::Sae15W40 => "15W-40",
            Self::Sae20W50 => "20W-50",
        }
    }

    /// A typical fresh oil of the grade (from memory of data sheets; within the limits of J300).
    #[must_use]
    pub const fn typical(self) -> Oil {
        let (kv40_mm2_s, kv100_mm2_s, density_15_kg_m3) = match self {
            Self::Sae0W20 => (45.0, 8.5, 845.0),
            Self::Sae0W30 => (57.0, 10.4, 845.0),
            Self::Sae5W30 => return Oil::TYPICAL_5W_30,
            Self::Sae5W40 => (85.0, 14.0, 855.0),
            Self::Sae10W40 => (95.0, 14.2, 870.0),
            Self::Sae15W40 => (108.0, 14.5, 880.0),
            Self::Sae20W50 => (165.0, 18.5, 890.0),
        };
        Oil { kv40_mm2_s, kv100_mm2_s, density_15_kg_m3, thickening: 1.0, dilution: 1.0 }
    }

    /// What oils of the grade are mostly made from: common practice, no source.
    #[must_use]
    pub const fn base(self) -> Base {
        match self {
            Self::Sae0W20 | Self::Sae0W30 | Self::Sae5W30 | Self::Sae5W40 => Base::Synthetic,
            Self::Sae10W40 => Base::PartSynthetic,
            Self::Sae15W40 | Self::Sae20W50 => Base::Mineral,
        }
    }

    /// The limits of its viscosity at 100 °C.
    #[must_use]
    pub const fn hot_limits(self) -> HotLimits {
        let winter_least_mm2_s = match self {
            Self::Sae0W20 | Self::Sae0W30 | Self::Sae5W30 | Self::Sae5W40 => 3.8,
            Self::Sae10W40 => 4.1,
            Self::Sae15W40 | Self::Sae20W50 => 5.6,
        };
        let (least_mm2_s, below_mm2_s) = match self {
            Self::Sae0W20 => (6.9, 9.3),
            Self::Sae0W30 | Self::Sae5W30 => (9.3, 12.5),
            Self::Sae5W40 | Self::Sae10W40 | Self::Sae15W40 => (12.5, 16.3),
            Self::Sae20W50 => (16.3, 21.9),
        };
        HotLimits { winter_least_mm2_s, least_mm2_s, below_mm2_s }
    }

    /// The grade of the table that is furthest from this one: what somebody fills in who takes
    /// whatever stands on the shelf.
    #[must_use]
    pub const fn worst_mistake(self) -> Self {
        match self {
            Self::Sae20W50 => Self::Sae0W20,
            _ => Self::Sae20W50,
        }
    }
}

impl Default for Grade {
    /// The most usual one.
    fn default() -> Self {
        Self::Sae5W30
    }
}

impl TryFrom<String> for Grade {
    type Error = NoSuchGrade;

    fn try_from(got: String) -> Result<Self, NoSuchGrade> {
        Self::ALL.into_iter().find(|grade| grade.word() == got).ok_or(NoSuchGrade { got })
    }
}

impl From<Grade> for String {
    fn from(grade: Grade) -> Self {
        grade.word().to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::oil::viscosity_index;

    /// SAE J300, JAN 2015: the typical oil of each grade may bear its name, and no other summer
    /// grade's.
    #[test]
    fn published_typical_figures_lie_within_j300() {
        for grade in Grade::ALL {
            let oil = grade.typical();
            assert!(grade.hot_limits().hold(oil.kv100_mm2_s), "{grade:?}");
            for other in Grade::ALL {
                let summer = |grade: Grade| grade.word().rsplit('-').next().map(str::to_owned);
                let bears = other.hot_limits().hold(oil.kv100_mm2_s);
                assert_eq!(bears, summer(grade) == summer(other), "{grade:?} {other:?}");
            }
        }
    }

    /// SAE J300, JAN 2015: limits at 100 °C, ends included and excluded as the table says.
    #[test]
    fn published_j300_limits_include_their_lower_end_alone() {
        let limits = Grade::Sae5W30.hot_limits();
        assert!(limits.hold(9.3) && limits.hold(12.49) && !limits.hold(12.5) && !limits.hold(9.29));
        let limits = Grade::Sae0W20.hot_limits();
        assert!(limits.hold(6.9) && !limits.hold(6.89) && !limits.hold(9.3));
    }

    /// Multigrade oils have a high viscosity index: 5W-30 about 150 to 175 (from memory of data
    /// sheets), and a wide name needs a higher one than a narrow one.
    #[test]
    fn closed_form_wide_grades_have_a_higher_index() {
        let index = |grade: Grade| {
            let oil = grade.typical();
            viscosity_index(oil.kv40_mm2_s, oil.kv100_mm2_s).unwrap()
        };
        assert!((150.0..=175.0).contains(&index(Grade::Sae5W30)), "{}", index(Grade::Sae5W30));
        assert!(index(Grade::Sae0W20) > index(Grade::Sae15W40));
        assert!(index(Grade::Sae5W40) > index(Grade::Sae20W50));
    }

    #[test]
    fn limit_a_name_that_is_no_grade_is_refused() {
        assert_eq!(Grade::try_from("5W-30".to_owned()), Ok(Grade::Sae5W30));
        assert!(Grade::try_from("5w-30".to_owned()).is_err());
        for grade in Grade::ALL {
            assert_eq!(Grade::try_from(String::from(grade)), Ok(grade));
        }
    }
}

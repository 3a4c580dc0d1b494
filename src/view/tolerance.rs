//! How far off a view may be: full marks up to one value, none from another, linear between.

use serde::{Deserialize, Serialize};

/// Limits on the absolute value of a measure, in the measure's own unit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Tolerance {
    /// Full marks up to here.
    pub full: f64,
    /// No marks from here on.
    pub none: f64,
}

impl Tolerance {
    /// 1 within `full`, 0 past `none`, linear between; 0 for what is not a number.
    pub fn score(&self, value: f64) -> f64 {
        if value.is_nan() {
            return 0.0;
        }
        ((self.none - value.abs()) / (self.none - self.full)).clamp(0.0, 1.0)
    }
}

/// The tolerances of all criteria. The defaults are common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields, default)]
pub struct Tolerances {
    /// Ray against end plate, degrees.
    pub squared_deg: Tolerance,
    /// Spinous tip off the middle of the pedicles, percent of their spacing.
    pub spinous_percent: Tolerance,
    /// Outline of the process below off the pedicle's middle, percent of the pedicle's width.
    pub facet_percent: Tolerance,
    /// Left and right pedicle apart in the lateral view, mm at the patient.
    pub lateral_mm: Tolerance,
    /// Outline of the process below off the middle of its end plate, percent of half the plate.
    pub mid_plate_percent: Tolerance,
    /// Anterior and posterior sacral foramen apart, mm at the patient.
    pub foramen_mm: Tolerance,
}

impl Default for Tolerances {
    fn default() -> Self {
        Self {
            squared_deg: Tolerance { full: 2.0, none: 8.0 },
            spinous_percent: Tolerance { full: 3.0, none: 15.0 },
            // A ridge can be held to the pedicle's centre no more sharply. At half the width its edge stands under the pedicle's lateral border and
            // covers all of the target.
            facet_percent: Tolerance { full: 15.0, none: 50.0 },
            lateral_mm: Tolerance { full: 2.0, none: 10.0 },
            // Nearly 2 percent a degree here.
            mid_plate_percent: Tolerance { full: 10.0, none: 36.0 },
            foramen_mm: Tolerance { full: 2.0, none: 8.0 },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn linear_between_the_limits() {
        let t = Tolerance { full: 2.0, none: 8.0 };
        assert_eq!([0.0, 2.0, -5.0, 8.0, 100.0].map(|v| t.score(v)), [1.0, 1.0, 0.5, 0.0, 0.0]);
        assert_eq!(t.score(f64::NAN), 0.0);
    }
}

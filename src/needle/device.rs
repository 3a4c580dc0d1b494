//! Needles that can be asked for: gauge, length, bend.
//!
//! Outer diameters lie within ISO 9626's limits (22 G 0.698–0.730 mm, 25 G 0.500–0.530 mm: from memory) at the nominal of
//! published gauge charts (0.7176 and 0.5144 mm: read). Hub colours are ISO 6009's: 22 G black, 25 G orange (memory).
//!
//! Curvature of the path of a bevelled needle, from published deflections by `κ = 2 s / (z² + s²)`:
//! - *muscle*: 4.42–5.90 mm aside at 50 mm in pork (Kopacz & Allen 1995, Anesth Analg 81:630, all bevelled spinal needles: read).
//! - *gel*: 8.89 ± 0.17 mm at 80 mm, 22 G (Rand 2016, Anesth Pain Med 6:e36607: read).
//!
//! No figure for 25 G could be read; it bends a quarter more here. That is an assumption, and the page says so.

use serde::{Deserialize, Serialize};

/// Needle gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, strum::VariantArray)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum Gauge {
    /// 0.7 mm.
    #[serde(rename = "22")]
    G22,
    /// 0.5 mm.
    #[serde(rename = "25")]
    G25,
}

/// What the needle goes through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "lowercase")]
pub enum Medium {
    /// As measured in pork.
    Muscle,
    /// As measured in gel.
    Gel,
}

/// A needle out of its packet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Device {
    /// Gauge.
    pub gauge: Gauge,
    /// Shaft, hub to tip, mm: 90 or 127.
    pub length_mm: u32,
}

/// A length that there is no needle of.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("a needle of {found_mm} mm is not to be had: allowed are 90 and 127 mm")]
pub struct LengthError {
    /// What was asked for.
    pub found_mm: u32,
}

/// Lengths to be had, mm: 3.5 and 5 inches. Common practice, no source.
pub const LENGTHS_MM: [u32; 2] = [90, 127];

impl Default for Device {
    fn default() -> Self {
        Self { gauge: Gauge::G22, length_mm: 90 }
    }
}

impl Device {
    /// This needle, if there is one of its length.
    ///
    /// # Errors
    /// When there is none.
    pub fn checked(self) -> Result<Self, LengthError> {
        if LENGTHS_MM.contains(&self.length_mm) {
            Ok(self)
        } else {
            Err(LengthError { found_mm: self.length_mm })
        }
    }
}

impl Gauge {
    /// All.
    pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;

    /// Outer diameter, mm.
    pub fn outer_mm(self) -> f64 {
        match self {
            Self::G22 => 0.7176,
            Self::G25 => 0.5144,
        }
    }

    /// Inner diameter of a regular wall, mm (gauge chart: read).
    pub fn inner_mm(self) -> f64 {
        match self {
            Self::G22 => 0.413,
            Self::G25 => 0.260,
        }
    }

    /// Colour of the hub after ISO 6009 (memory).
    pub fn hub_colour(self) -> &'static str {
        match self {
            Self::G22 => "black",
            Self::G25 => "orange",
        }
    }

    /// Curvature of the path with the bevel held still, 1/mm.
    pub fn curvature_per_mm(self, medium: Medium) -> f64 {
        let g22 = match medium {
            Medium::Muscle => 1.0 / 250.0,
            Medium::Gel => 1.0 / 364.0,
        };
        match self {
            Self::G22 => g22,
            Self::G25 => 1.25 * g22,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_checked() {
        assert!(Device { length_mm: 127, ..Device::default() }.checked().is_ok());
        let wrong = Device { length_mm: 100, ..Device::default() }.checked().unwrap_err();
        assert_eq!(wrong.to_string(), "a needle of 100 mm is not to be had: allowed are 90 and 127 mm");
    }
}

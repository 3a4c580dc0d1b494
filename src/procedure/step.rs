//! The steps of the procedure, by name: what a lesson asks for and what is scored.

use serde::{Deserialize, Serialize};

/// A step of the procedure, or of a lesson; in the order in which they are done.
#[derive(
    Clone,
    Copy,
    Debug,
    PartialEq,
    Eq,
    Hash,
    PartialOrd,
    Ord,
    Serialize,
    Deserialize,
    strum::IntoStaticStr,
    strum::VariantArray,
)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum StepId {
    NameParts,
    TargetCentred,
    TrueAp,
    Oblique,
    Lateral,
    Target,
    DownTheBeam,
    Steering,
    Depth,
    Contacts,
    Contrast,
    Radiation,
}

impl StepId {
    /// All that a lesson can ask for, in order.
    pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;

    /// Those of a whole procedure, in its order.
    pub const OF_PROCEDURE: [Self; 9] = [
        Self::TrueAp,
        Self::Oblique,
        Self::Target,
        Self::DownTheBeam,
        Self::Steering,
        Self::Depth,
        Self::Contacts,
        Self::Contrast,
        Self::Radiation,
    ];

    /// In the trade's words.
    pub fn name(self) -> &'static str {
        match self {
            Self::NameParts => "Parts named",
            Self::TargetCentred => "Target in the middle",
            Self::TrueAp => "True AP",
            Self::Oblique => "Oblique, squared",
            Self::Lateral => "Lateral",
            Self::Target => "Target",
            Self::DownTheBeam => "Down the beam",
            Self::Steering => "Steering",
            Self::Depth => "Depth",
            Self::Contacts => "What the needle met",
            Self::Contrast => "Contrast",
            Self::Radiation => "Radiation",
        }
    }

    /// The name used in files, such as `true_ap`.
    pub fn id(self) -> &'static str {
        self.into()
    }
}

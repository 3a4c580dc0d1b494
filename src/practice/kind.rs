//! What can be asked, and to which skill it counts.

use crate::anatomy::names::{Level, UnknownName};
use serde::{Deserialize, Serialize};
use std::str::FromStr;

/// A kind of decision.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, strum::IntoStaticStr,
)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
pub enum Kind {
    /// Which way to turn or tilt for a wanted view.
    Way,
    /// By how much, roughly.
    Amount,
    /// Which part of the bone is pointed at.
    Part,
    /// Which view of the procedure a film is good for.
    Step,
    /// Whether a film is a true AP, and if not, why.
    TrueAp,
    /// Where the tip stands on the pedicle's clock face.
    Clock,
    /// Which way a needle will go as its notch stands, or how the notch must stand.
    Notch,
    /// What the contrast filled.
    Spread,
    /// Stop or go on.
    Stop,
}

/// What is learnt: kinds of one skill share a curve.
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
    strum::VariantArray,
    strum::IntoStaticStr,
)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
pub enum Skill {
    /// Setting up the views.
    Views,
    /// Knowing the parts on a film.
    Parts,
    /// Reading and steering the needle.
    Needle,
    /// Reading contrast, and stopping in time.
    Contrast,
}

impl Skill {
    /// All, in the order of the procedure.
    pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;

    /// As in files, such as `views`.
    pub fn name(self) -> &'static str {
        self.into()
    }
}

impl Kind {
    /// All, in the order of the procedure.
    pub const ALL: [Self; 9] = [
        Self::Part,
        Self::TrueAp,
        Self::Way,
        Self::Amount,
        Self::Step,
        Self::Clock,
        Self::Notch,
        Self::Spread,
        Self::Stop,
    ];

    /// As in files and links, such as `true_ap`.
    pub fn name(self) -> &'static str {
        self.into()
    }

    /// Its skill.
    pub fn skill(self) -> Skill {
        match self {
            Self::Way | Self::Amount | Self::Step | Self::TrueAp => Skill::Views,
            Self::Part => Skill::Parts,
            Self::Clock | Self::Notch => Skill::Needle,
            Self::Spread | Self::Stop => Skill::Contrast,
        }
    }
}

/// Levels that are asked about.
const LEVELS: [Level; 6] = [Level::L1, Level::L2, Level::L3, Level::L4, Level::L5, Level::S1];

impl Kind {
    /// The levels at which it is asked. The clock is not asked at S1: the way in there is the posterior opening, and the hours of the pedicle above it
    /// say nothing of where in the opening a tip stands.
    pub fn levels(self) -> &'static [Level] {
        match self {
            Self::Clock => &LEVELS[..5],
            _ => &LEVELS,
        }
    }
}

impl FromStr for Kind {
    type Err = UnknownName;

    fn from_str(text: &str) -> Result<Self, UnknownName> {
        Self::ALL.into_iter().find(|kind| kind.name() == text).ok_or_else(|| UnknownName {
            kind: "kind of question",
            found: text.chars().take(40).collect(),
            allowed: Self::ALL.map(Self::name).join(", "),
        })
    }
}

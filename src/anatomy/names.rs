//! What things are called: levels, sides, parts. The trade's own names, nothing else.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// A vertebral level, cranial to caudal. S1 stands for the whole sacrum.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Level {
    T12,
    L1,
    L2,
    L3,
    L4,
    L5,
    S1,
}

impl Level {
    /// All levels of the model, cranial to caudal.
    pub const ALL: [Self; 7] = [Self::T12, Self::L1, Self::L2, Self::L3, Self::L4, Self::L5, Self::S1];
    /// The levels a lesson can aim at.
    pub const TARGETS: [Self; 6] = [Self::L1, Self::L2, Self::L3, Self::L4, Self::L5, Self::S1];
    /// The vertebrae proper (without the sacrum).
    pub const VERTEBRAE: [Self; 6] = [Self::T12, Self::L1, Self::L2, Self::L3, Self::L4, Self::L5];

    /// 0 for T12 … 6 for S1.
    pub fn index(self) -> usize {
        self as usize
    }

    /// The next level down, if the model has one.
    pub fn below(self) -> Option<Self> {
        Self::ALL.get(self.index() + 1).copied()
    }

    /// The trade's short name, such as `L4`.
    pub fn name(self) -> &'static str {
        ["T12", "L1", "L2", "L3", "L4", "L5", "S1"][self.index()]
    }
}

impl fmt::Display for Level {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// What was asked for by name and is not there.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("unknown {kind} '{found}': allowed are {allowed}")]
pub struct UnknownName {
    /// What kind of thing, such as `level`.
    pub kind: &'static str,
    /// The text that was given.
    pub found: String,
    /// The names that are allowed, comma separated.
    pub allowed: String,
}

/// The start of a text that was refused, as an error shows it: 40 characters at most, on one line.
pub(crate) fn shown(text: &str) -> String {
    text.chars().take(40).map(|c| if c.is_control() { ' ' } else { c }).collect()
}

impl FromStr for Level {
    type Err = UnknownName;

    /// Reads a target level (`L1` … `L5`, `S1`), in either case.
    fn from_str(text: &str) -> Result<Self, UnknownName> {
        Self::TARGETS.into_iter().find(|l| l.name().eq_ignore_ascii_case(text)).ok_or_else(|| UnknownName {
            kind: "level",
            found: text.to_owned(),
            allowed: Self::TARGETS.map(Self::name).join(", "),
        })
    }
}

/// The patient's left or right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "lowercase")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Side {
    Left,
    Right,
}

impl Side {
    /// Left, then right.
    pub const BOTH: [Self; 2] = [Self::Left, Self::Right];

    /// +1 for left (+x), -1 for right.
    pub fn sign(self) -> f64 {
        match self {
            Self::Left => 1.0,
            Self::Right => -1.0,
        }
    }

    /// `left` or `right`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// The other side.
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

impl fmt::Display for Side {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl FromStr for Side {
    type Err = UnknownName;

    fn from_str(text: &str) -> Result<Self, UnknownName> {
        Self::BOTH.into_iter().find(|s| s.name().eq_ignore_ascii_case(text)).ok_or_else(|| UnknownName {
            kind: "side",
            found: text.to_owned(),
            allowed: "left, right".to_owned(),
        })
    }
}

/// A named part of a bone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Part {
    Body,
    UpperEndPlate,
    LowerEndPlate,
    Pedicle,
    Pars,
    Lamina,
    SuperiorArticularProcess,
    InferiorArticularProcess,
    TransverseProcess,
    SpinousProcess,
    Ala,
    MedianCrest,
    IliacWing,
    IliacCrest,
    Rib,
}

impl Part {
    /// All parts.
    pub const ALL: [Self; 15] = [
        Self::Body,
        Self::UpperEndPlate,
        Self::LowerEndPlate,
        Self::Pedicle,
        Self::Pars,
        Self::Lamina,
        Self::SuperiorArticularProcess,
        Self::InferiorArticularProcess,
        Self::TransverseProcess,
        Self::SpinousProcess,
        Self::Ala,
        Self::MedianCrest,
        Self::IliacWing,
        Self::IliacCrest,
        Self::Rib,
    ];

    /// The name used in files and on the command line, such as `superior_articular_process`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Body => "body",
            Self::UpperEndPlate => "upper_end_plate",
            Self::LowerEndPlate => "lower_end_plate",
            Self::Pedicle => "pedicle",
            Self::Pars => "pars",
            Self::Lamina => "lamina",
            Self::SuperiorArticularProcess => "superior_articular_process",
            Self::InferiorArticularProcess => "inferior_articular_process",
            Self::TransverseProcess => "transverse_process",
            Self::SpinousProcess => "spinous_process",
            Self::Ala => "ala",
            Self::MedianCrest => "median_crest",
            Self::IliacWing => "iliac_wing",
            Self::IliacCrest => "iliac_crest",
            Self::Rib => "rib",
        }
    }

    /// The part of the dog in the oblique view, where it has one
    /// (Sharma, BMJ 2012;345:e7564: nose, eye, ear, neck, body, foreleg).
    pub fn dog_name(self) -> Option<&'static str> {
        match self {
            Self::TransverseProcess => Some("nose"),
            Self::Pedicle => Some("eye"),
            Self::SuperiorArticularProcess => Some("ear"),
            Self::Pars => Some("neck"),
            Self::Lamina => Some("body"),
            Self::InferiorArticularProcess => Some("foreleg"),
            _ => None,
        }
    }
}

impl FromStr for Part {
    type Err = UnknownName;

    fn from_str(text: &str) -> Result<Self, UnknownName> {
        let wanted = text.replace(['-', ' '], "_");
        Self::ALL.into_iter().find(|p| p.name().eq_ignore_ascii_case(&wanted)).ok_or_else(|| UnknownName {
            kind: "part",
            found: text.to_owned(),
            allowed: Self::ALL.map(Self::name).join(", "),
        })
    }
}

/// Which part of which bone: the ilium counts as S1, the lowest rib as T12. `side` is `None` in the midline.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[allow(missing_docs, reason = "the names are the documentation")]
pub struct Label {
    pub level: Level,
    pub part: Part,
    pub side: Option<Side>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_read_back() {
        for level in Level::TARGETS {
            assert_eq!(level.name().parse(), Ok(level));
        }
        for part in Part::ALL {
            assert_eq!(part.name().parse(), Ok(part));
        }
        assert_eq!("pedicle".parse(), Ok(Part::Pedicle));
        let refused = "L7".parse::<Level>().unwrap_err().to_string();
        assert_eq!(refused, "unknown level 'L7': allowed are L1, L2, L3, L4, L5, S1");
    }
}

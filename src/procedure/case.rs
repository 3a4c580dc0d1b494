//! What is set: target, way in, needle medium, whether pictures cost exposures, tolerances and pars.

use crate::anatomy::foramen::Approach;
use crate::anatomy::names::Level;
use crate::needle::device::Medium;
use crate::view::criteria::Target;
use crate::view::report::AskedView;
use crate::view::tolerance::{Tolerance, Tolerances};
use glam::DVec3;
use serde::{Deserialize, Serialize};

/// A task. The patient stands beside it: the same case can be set on any.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Case {
    /// Level and side.
    pub target: Target,
    /// Way into the foramen.
    #[serde(default = "subpedicular")]
    pub approach: Approach,
    /// What the needle bends as in.
    #[serde(default = "muscle")]
    pub medium: Medium,
    /// Whether pictures come from exposures only.
    #[serde(default)]
    pub exposures: bool,
    /// Limits of the views.
    #[serde(default)]
    pub views: Tolerances,
    /// Limits of the needle.
    #[serde(default)]
    pub needle: NeedleTolerances,
    /// What a good hand needs.
    #[serde(default)]
    pub par: Par,
    /// How far the table stands at the start from where it brings the target to the isocentre: to the patient's left, back and
    /// head, tenths of a millimetre.
    #[serde(default, skip_serializing_if = "is_centred")]
    #[cfg_attr(feature = "cli", ts(optional, as = "Option<[i32; 3]>"))]
    pub off_centre_mm_tenths: [i32; 3],
}

fn is_centred(mm_tenths: &[i32; 3]) -> bool {
    *mm_tenths == [0; 3]
}

fn subpedicular() -> Approach {
    Approach::Subpedicular
}

fn muscle() -> Medium {
    Medium::Muscle
}

impl Case {
    /// The usual limits for a target.
    pub fn new(target: Target) -> Self {
        Self {
            target,
            approach: Approach::Subpedicular,
            medium: Medium::Muscle,
            exposures: false,
            views: Tolerances::default(),
            needle: NeedleTolerances::default(),
            par: Par::default(),
            off_centre_mm_tenths: [0; 3],
        }
    }

    /// Where the table stands at the start, as a shift against the isocentre, mm.
    pub fn off_centre_mm(&self) -> DVec3 {
        DVec3::from_array(self.off_centre_mm_tenths.map(f64::from)) / 10.0
    }

    /// Whether the target is to be brought to the middle first.
    pub fn is_off_centre(&self) -> bool {
        !is_centred(&self.off_centre_mm_tenths)
    }

    /// What views are measured against, with the way in that has been chosen.
    pub fn asked(&self, approach: Approach) -> AskedView {
        AskedView { target: self.target, approach, tolerances: self.views }
    }

    /// The caution that belongs to the target.
    pub fn caution(&self) -> Caution {
        match (self.target.level, self.approach) {
            (Level::L1 | Level::L2 | Level::L3, Approach::Subpedicular) => Caution::Upper,
            (Level::S1, _) => Caution::Sacral,
            (_, Approach::Infraneural) => Caution::Infraneural,
            _ => Caution::Lower,
        }
    }
}

/// A caution, from the literature on radiculomedullary arteries (Murthy 2010, Pain Med 11:1756: read) and common practice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, strum::VariantArray)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "each says its own sentence")]
pub enum Caution {
    Upper,
    Lower,
    Sacral,
    Infraneural,
}

impl Caution {
    /// All of them.
    pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;

    /// In English, as the page about the model quotes it; the page's own words are in texts, in its languages.
    pub fn sentence(self) -> &'static str {
        match self {
            Self::Upper => {
                "At L3 and above an artery to the spinal cord may run in the upper part of the foramen, more often on the left: \
                 whether the place under the pedicle is the right one there is debated, and a lower, slightly posterior one \
                 may be safer. A dry aspirate does not exclude a vessel. Non-particulate steroid throughout; local policy and \
                 supervision decide."
            }
            Self::Sacral => {
                "Vascular spread is more frequent at S1 than at lumbar levels, and an artery to the spinal cord can be met at any \
                 level: watch the whole injection live. Non-particulate steroid throughout; local policy and supervision decide."
            }
            Self::Infraneural => {
                "The way under the root lies beside the disc: prove depth in the lateral view before each advance. An artery to \
                 the spinal cord can be met at any level. Non-particulate steroid throughout; local policy and supervision decide."
            }
            Self::Lower => {
                "Never pass medial of the pedicle's 6 o'clock before contrast has been seen. Paraplegia has followed injections \
                 down to L5-S1 after a dry aspirate: contrast under live imaging comes first, non-particulate steroid \
                 throughout; stop on paraesthesia or blood. Local policy and supervision decide."
            }
        }
    }
}

/// Limits of what is scored about the needle. The defaults are common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields, default)]
pub struct NeedleTolerances {
    /// Mark outside the area aimed at, mm.
    pub mark_mm: Tolerance,
    /// Shaft against beam, mean over the way in, degrees.
    pub coaxial_deg: Tolerance,
    /// Tip off the mark at the end, mm.
    pub off_mark_mm: Tolerance,
    /// Tip medial of the 6 o'clock line, mm.
    pub medial_mm: Tolerance,
    /// Tip outside the part of the foramen that it should be in, mm.
    pub depth_mm: Tolerance,
}

impl Default for NeedleTolerances {
    fn default() -> Self {
        Self {
            mark_mm: Tolerance { full: 0.5, none: 5.0 },
            coaxial_deg: Tolerance { full: 3.0, none: 10.0 },
            off_mark_mm: Tolerance { full: 2.0, none: 7.0 },
            medial_mm: Tolerance { full: 0.3, none: 3.0 },
            depth_mm: Tolerance { full: 0.5, none: 5.0 },
        }
    }
}

/// Pars: full marks up to them, none from three times as much. The defaults are common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields, default)]
pub struct Par {
    /// Spot pictures and runs of fluoroscopy.
    pub exposures: u32,
    /// Seconds of beam in fluoroscopy.
    pub beam_s: u32,
}

impl Default for Par {
    fn default() -> Self {
        Self { exposures: 20, beam_s: 20 }
    }
}

//! In which space a tip lies: it decides what contrast does.
//!
//! The foraminal epidural space of a level is taken as the room between its pedicle and the next, from the posterior wall back to the
//! articular process, and out to a little past the pedicle's lateral border, where the root's sleeve goes with the nerve. At S1
//! it is the tunnel between the two openings and the canal inside. Borders beyond the named landmarks: derived.

use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Level, Side};
use crate::anatomy::nerves::nearest;
use crate::anatomy::tissues::TissueKind;
use crate::anatomy::vessels::VesselKind;
use glam::DVec3;
use serde::{Deserialize, Serialize};

/// A space.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(tag = "space", rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Compartment {
    /// Around a root, outside dura and vessels: where the injection belongs.
    Perineural {
        level: Level,
        side: Side,
    },
    Intravascular {
        vessel: VesselKind,
    },
    /// The bevel half in a vein and half beside the root.
    Mixed {
        vessel: VesselKind,
        level: Level,
        side: Side,
    },
    Intrathecal,
    /// Between dura and arachnoid.
    Subdural,
    /// In the root or ganglion itself.
    Intraneural {
        level: Level,
        side: Side,
    },
    Intradiscal {
        level: Level,
    },
    /// Between the processes under a level.
    FacetJoint {
        level: Level,
        side: Side,
    },
    Peritoneal,
    Subcutaneous,
    Muscular,
}

/// A pattern of spread as a learner names it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, strum::VariantArray)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the trade's")]
pub enum Pattern {
    Perineural,
    Arterial,
    Venous,
    Mixed,
    Intrathecal,
    Subdural,
    Intraneural,
    Intradiscal,
    FacetJoint,
    Peritoneal,
    Muscular,
}

impl Pattern {
    /// All, in the order of a list.
    pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;

    /// What is seen. Common practice, no source.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Perineural => {
                "stays, outlines the root as a paler band and climbs inside the pedicle along the epidural space"
            }
            Self::Arterial => {
                "a thin line that runs off fast and is gone at once, towards the cord where the artery feeds it"
            }
            Self::Venous => "wider and slower: fills a vein while it is injected and clears when it stops",
            Self::Mixed => "part outlines the root and stays, part runs off along a vein",
            Self::Subdural => {
                "a dense, narrow band with a sharp edge along the inside of the sac, slow to move on"
            }
            Self::FacetJoint => "a dense, small rim within the joint, away from the root",
            Self::Intrathecal => "spreads thin and even within the sac, lies at its front and stays",
            Self::Intraneural => "a thin dense line within the root, with pain",
            Self::Intradiscal => "a dense bun between the end plates",
            Self::Peritoneal => "thin streaks far in front of the column",
            Self::Muscular => "feathery streaks along the muscle's fibres, away from the root",
        }
    }
}

impl Compartment {
    /// The pattern that it shows.
    pub fn pattern(self) -> Pattern {
        match self {
            Self::Perineural { .. } => Pattern::Perineural,
            Self::Intravascular { vessel } if vessel.is_artery() => Pattern::Arterial,
            Self::Intravascular { .. } => Pattern::Venous,
            Self::Mixed { .. } => Pattern::Mixed,
            Self::Subdural => Pattern::Subdural,
            Self::FacetJoint { .. } => Pattern::FacetJoint,
            Self::Intrathecal => Pattern::Intrathecal,
            Self::Intraneural { .. } => Pattern::Intraneural,
            Self::Intradiscal { .. } => Pattern::Intradiscal,
            Self::Peritoneal => Pattern::Peritoneal,
            Self::Subcutaneous | Self::Muscular => Pattern::Muscular,
        }
    }

    /// The vessel that the tip is in, wholly or in part.
    pub fn vessel(self) -> Option<VesselKind> {
        match self {
            Self::Intravascular { vessel } | Self::Mixed { vessel, .. } => Some(vessel),
            _ => None,
        }
    }
}

/// The foraminal space reaches this far out past the pedicle's lateral border, mm at average size.
const OUT_MM: f64 = 5.0;
/// And this far in past its medial border, mm.
const IN_MM: f64 = 4.0;
/// And this far in front of the posterior wall, mm: the nerve's sleeve begins to run forwards.
const FRONT_MM: f64 = 2.0;
/// At S1, further than this from the root's middle is not the tunnel any more, mm: the root keeps to its front half, the back opening is
/// 18 mm from it.
const SACRAL_REACH_MM: f64 = 12.5;

/// This near to a vein's wall the spread is mixed, mm: a third of a 22 G bevel's width. Derived.
const AT_WALL_MM: f64 = 0.25;
/// This far under the dura a bevel's opening can still lift the arachnoid off it, mm. Derived.
const SUBDURAL_MM: f64 = 0.5;
/// Reach of a joint around its middle, and most room between its processes, mm at average size. Derived.
const JOINT_MM: (f64, f64) = (8.0, 4.0);

/// The joint that a point lies in: between the superior process below and the inferior process above.
fn facet_joint(interior: &Interior, p: DVec3) -> Option<(Level, Side)> {
    let (reach, room) = JOINT_MM;
    for level in Level::TARGETS {
        let Some(below) = level.below() else { continue };
        for side in Side::BOTH {
            if p.distance(interior.level(below).side(side).superior_facet) > reach * interior.scale {
                continue;
            }
            let to = |level| {
                let mut bones =
                    interior.tissues().of_kind(TissueKind::Bone).filter(|t| t.level == Some(level));
                bones.next().map_or(f64::INFINITY, |bone| bone.distance_mm(p))
            };
            if to(level) + to(below) < room * interior.scale {
                return Some((level, side));
            }
        }
    }
    None
}

/// The space at a point.
pub fn compartment_at(interior: &Interior, p: DVec3) -> Compartment {
    let holds = |kind: TissueKind| interior.tissues().of_kind(kind).find(|t| t.distance_mm(p) < 0.0);
    if let Some((tube, vessel)) = holds(TissueKind::Vessel).and_then(|t| Some((t, t.vessel?))) {
        // At a vein's wall a part of the bevel's opening is still outside it.
        let at_wall = !vessel.is_artery() && tube.distance_mm(p) > -AT_WALL_MM * interior.scale;
        return match foraminal(interior, p).filter(|_| at_wall) {
            Some((level, side)) => Compartment::Mixed { vessel, level, side },
            None => Compartment::Intravascular { vessel },
        };
    }
    // Where a root leaves it, the sac's sleeve is around the root: the root comes first.
    for kind in [TissueKind::Ganglion, TissueKind::Root] {
        if let Some((level, side)) = holds(kind).and_then(|t| t.level.zip(t.side)) {
            return Compartment::Intraneural { level, side };
        }
    }
    if let Some(sac) = holds(TissueKind::Dura) {
        let under_dura = sac.distance_mm(p) > -SUBDURAL_MM * interior.scale;
        return if under_dura { Compartment::Subdural } else { Compartment::Intrathecal };
    }
    if let Some(level) = holds(TissueKind::Disc).and_then(|t| t.level) {
        return Compartment::Intradiscal { level };
    }
    if interior.tissues().peritoneum_mm(p) < 0.0 {
        return Compartment::Peritoneal;
    }
    if let Some((level, side)) = facet_joint(interior, p) {
        return Compartment::FacetJoint { level, side };
    }
    if let Some((level, side)) = foraminal(interior, p) {
        return Compartment::Perineural { level, side };
    }
    if interior.trunk.fascia.distance_mm(p) > 0.0 {
        return Compartment::Subcutaneous;
    }
    Compartment::Muscular
}

/// The level and side in whose foraminal epidural space a point lies.
pub fn foraminal(interior: &Interior, p: DVec3) -> Option<(Level, Side)> {
    let k = interior.scale;
    for foramen in interior.foramina() {
        let (level, side) = (foramen.level, foramen.side);
        if level == Level::S1 {
            let root = interior.nerves().root(level, side)?;
            let near = nearest(&root.course, p).1 < SACRAL_REACH_MM * k;
            // Inside the bone's outline: in front of the posterior opening.
            let behind = (p - foramen.ring.centre).dot(foramen.subpedicular.normal());
            if near && behind < 0.0 {
                return Some((level, side));
            }
            continue;
        }
        let ring = &foramen.ring;
        let r = p - ring.centre;
        let (deep, tall) = (ring.across.length(), ring.up.length());
        let backwards = r.dot(ring.across) / deep;
        let upwards = r.dot(ring.up) / tall;
        let pedicle = &interior.level(level).side(side).pedicle;
        let left = interior.level(level).upper_plate.left;
        let out = (p - pedicle.centre).dot(left) * side.sign();
        let half_width = pedicle.across.dot(left).abs();
        if backwards.abs() <= deep + FRONT_MM * k
            && upwards.abs() <= tall
            && out <= half_width + OUT_MM * k
            && out >= -half_width - IN_MM * k
        {
            return Some((level, side));
        }
    }
    None
}

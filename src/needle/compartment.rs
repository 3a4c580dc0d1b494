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
    Intrathecal,
    /// In the root or ganglion itself.
    Intraneural {
        level: Level,
        side: Side,
    },
    Intradiscal {
        level: Level,
    },
    Peritoneal,
    Subcutaneous,
    Muscular,
}

/// A pattern of spread as a learner names it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the trade's")]
pub enum Pattern {
    Perineural,
    Intravascular,
    Intrathecal,
    Intraneural,
    Intradiscal,
    Peritoneal,
    Muscular,
}

impl Pattern {
    /// All, in the order of a list.
    pub const ALL: [Self; 7] = [
        Self::Perineural,
        Self::Intravascular,
        Self::Intrathecal,
        Self::Intraneural,
        Self::Intradiscal,
        Self::Peritoneal,
        Self::Muscular,
    ];

    /// What is seen. Common practice, no source.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Perineural => {
                "stays, outlines the root as a paler band and climbs inside the pedicle along the epidural space"
            }
            Self::Intravascular => "runs off along a vessel while it is injected and is gone when it stops",
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
            Self::Intravascular { .. } => Pattern::Intravascular,
            Self::Intrathecal => Pattern::Intrathecal,
            Self::Intraneural { .. } => Pattern::Intraneural,
            Self::Intradiscal { .. } => Pattern::Intradiscal,
            Self::Peritoneal => Pattern::Peritoneal,
            Self::Subcutaneous | Self::Muscular => Pattern::Muscular,
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

/// The space at a point.
pub fn compartment_at(interior: &Interior, p: DVec3) -> Compartment {
    let holds = |kind: TissueKind| interior.tissues.of_kind(kind).find(|t| t.distance_mm(p) < 0.0);
    if let Some(vessel) = holds(TissueKind::Vessel).and_then(|t| t.vessel) {
        return Compartment::Intravascular { vessel };
    }
    // Where a root leaves it, the sac's sleeve is around the root: the root comes first.
    for kind in [TissueKind::Ganglion, TissueKind::Root] {
        if let Some((level, side)) = holds(kind).and_then(|t| t.level.zip(t.side)) {
            return Compartment::Intraneural { level, side };
        }
    }
    if holds(TissueKind::Dura).is_some() {
        return Compartment::Intrathecal;
    }
    if let Some(level) = holds(TissueKind::Disc).and_then(|t| t.level) {
        return Compartment::Intradiscal { level };
    }
    if interior.tissues.peritoneum_mm(p) < 0.0 {
        return Compartment::Peritoneal;
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
    for foramen in &interior.foramina {
        let (level, side) = (foramen.level, foramen.side);
        if level == Level::S1 {
            let root = interior.nerves.root(level, side)?;
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

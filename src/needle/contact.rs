//! What the tip meets, in the order of its travel, each with the sign that it gives.

use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Level, Part, Side};
use crate::anatomy::tissues::TissueKind;
use crate::anatomy::vessels::VesselKind;
use glam::DVec3;
use serde::Serialize;

/// A kind of contact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum ContactKind {
    Skin,
    Fascia,
    Bone,
    Disc,
    Dura,
    Root,
    Ganglion,
    Vessel,
    Peritoneum,
}

impl ContactKind {
    /// All, in the order of their depth.
    pub const ALL: [Self; 9] = [
        Self::Skin,
        Self::Fascia,
        Self::Bone,
        Self::Vessel,
        Self::Root,
        Self::Ganglion,
        Self::Dura,
        Self::Disc,
        Self::Peritoneum,
    ];

    /// The sign by which it is known, in English. Common practice, no source.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Skin => "the skin gives way",
            Self::Fascia => "a slight give: the fascia",
            Self::Bone => "hard stop: bone",
            Self::Disc => "firm, rubbery resistance: the disc",
            Self::Dura => "a give, and clear fluid at the hub: the dura is through",
            Self::Root | Self::Ganglion => "the patient reports pain down the leg: stop and draw back",
            Self::Vessel => "blood at the hub",
            Self::Peritoneum => "loss of resistance far in front: the needle has left the back",
        }
    }

    /// Whether it should not happen on the way to a transforaminal target.
    pub fn is_harm(self) -> bool {
        matches!(
            self,
            Self::Dura | Self::Root | Self::Ganglion | Self::Vessel | Self::Disc | Self::Peritoneum
        )
    }
}

/// One contact.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Contact {
    /// With what.
    pub kind: ContactKind,
    /// Level, where it has one.
    pub level: Option<Level>,
    /// Side, where it has one.
    pub side: Option<Side>,
    /// For bone, which part.
    pub part: Option<Part>,
    /// For vessels, which kind.
    pub vessel: Option<VesselKind>,
    /// Length of needle under the skin, mm.
    pub depth_mm: f64,
    /// Column frame, mm.
    #[serde(skip)]
    pub position: DVec3,
}

/// The contact with tissue number `index` of the patient's list at a point.
pub(super) fn with_tissue(interior: &Interior, index: usize, position: DVec3, depth_mm: f64) -> Contact {
    let tissue = &interior.tissues().list[index];
    let kind = match tissue.kind {
        TissueKind::Bone => ContactKind::Bone,
        TissueKind::Disc => ContactKind::Disc,
        TissueKind::Dura => ContactKind::Dura,
        TissueKind::Root => ContactKind::Root,
        TissueKind::Ganglion => ContactKind::Ganglion,
        TissueKind::Vessel => ContactKind::Vessel,
    };
    let (part, side) =
        tissue.part_at(position).map_or((None, tissue.side), |(part, side)| (Some(part), side));
    Contact { kind, level: tissue.level, side, part, vessel: tissue.vessel, depth_mm, position }
}

/// A contact that belongs to no level.
pub(super) fn of_kind(kind: ContactKind, position: DVec3, depth_mm: f64) -> Contact {
    Contact { kind, level: None, side: None, part: None, vessel: None, depth_mm, position }
}

//! A patient without pictures: landmarks, nerves, foramina, vessels and the fields of all tissues. Enough to score a view, to
//! push a needle and to replay an attempt; nothing in it is meshed.

use super::dimensions::Vertebra;
use super::foramen::{self, Foramen};
use super::landmarks::LevelLandmarks;
use super::names::{Level, Side};
use super::nerves::{self, Nerves};
use super::soft_tissue::Trunk;
use super::tissues::{self, BoneField, Tissues};
use super::vessels::{self, Vessel};

/// What lies under the skin.
#[derive(Clone, Debug)]
pub struct Interior {
    /// T12 … S1.
    pub landmarks: [LevelLandmarks; 7],
    /// Skin and fascia.
    pub trunk: Trunk,
    /// Sac and roots.
    pub nerves: Nerves,
    /// L1 … S1, left then right each.
    pub foramina: Vec<Foramen>,
    /// Great and small.
    pub vessels: Vec<Vessel>,
    /// Everything that a needle can meet.
    pub tissues: Tissues,
    /// Size against the average.
    pub scale: f64,
    /// What chance there is comes from it.
    pub seed: u64,
}

impl Interior {
    /// Gathers it around landmarks and bones.
    pub(super) fn new(
        landmarks: [LevelLandmarks; 7],
        vertebrae: &[Vertebra; 6],
        bones: Vec<BoneField>,
        trunk: Trunk,
        scale: f64,
        seed: u64,
    ) -> Self {
        let nerves = nerves::build(&landmarks, vertebrae, scale);
        let foramina = foramen::build(&landmarks, &nerves, scale);
        let vessels = vessels::build(&landmarks, &foramina, scale, seed);
        let tissues = tissues::build(bones, &landmarks, &nerves, &vessels, &trunk.fascia, scale);
        Self { landmarks, trunk, nerves, foramina, vessels, tissues, scale, seed }
    }

    /// The landmarks of a level.
    pub fn level(&self, level: Level) -> &LevelLandmarks {
        &self.landmarks[level.index()]
    }

    /// The foramen under a pedicle; `None` above L1.
    pub fn foramen(&self, level: Level, side: Side) -> Option<&Foramen> {
        self.foramina.iter().find(|f| f.level == level && f.side == side)
    }
}

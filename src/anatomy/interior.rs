//! A patient without pictures: landmarks, nerves, foramina, vessels and the fields of all tissues. Enough to score a view, to
//! push a needle and to replay an attempt; nothing in it is meshed.
//!
//! Landmarks and skin are there at once. What only a needle meets is made when it is first asked for, since of a view nothing of it is
//! scored.

use super::foramen::{self, Foramen};
use super::landmarks::LevelLandmarks;
use super::names::{Level, Side};
use super::nerves::{self, Nerves};
use super::patient_spec::PatientSpec;
use super::skeleton::Skeleton;
use super::soft_tissue::{self, Trunk};
use super::tissues::{self, BoneField, TissueKind, Tissues};
use super::vessels::{self, Vessel};
use crate::geometry::solid::Solid;
use std::sync::OnceLock;

/// What lies under the skin.
#[derive(Clone, Debug)]
pub struct Interior {
    /// T12 … S1.
    pub landmarks: [LevelLandmarks; 7],
    /// Skin and fascia.
    pub trunk: Trunk,
    /// Size against the average.
    pub scale: f64,
    /// What chance there is comes from it.
    pub seed: u64,
    /// What the bones measure and how they stand.
    pub(super) skeleton: Skeleton,
    deep: OnceLock<Deep>,
}

/// What only a needle meets.
#[derive(Clone, Debug)]
struct Deep {
    nerves: Nerves,
    foramina: Vec<Foramen>,
    vessels: Vec<Vessel>,
    tissues: Tissues,
}

impl Interior {
    /// Of a patient.
    pub fn of(spec: &PatientSpec) -> Self {
        let skeleton = Skeleton::of(spec);
        let landmarks = skeleton.landmarks();
        let scale = skeleton.physique.scale;
        let trunk = soft_tissue::trunk(&landmarks, scale, skeleton.physique.girth);
        Self { landmarks, trunk, scale, seed: spec.seed, skeleton, deep: OnceLock::new() }
    }

    /// Sac and roots.
    pub fn nerves(&self) -> &Nerves {
        &self.deep().nerves
    }

    /// L1 … S1, left then right each.
    pub fn foramina(&self) -> &[Foramen] {
        &self.deep().foramina
    }

    /// Great and small.
    pub fn vessels(&self) -> &[Vessel] {
        &self.deep().vessels
    }

    /// Everything that a needle can meet.
    pub fn tissues(&self) -> &Tissues {
        &self.deep().tissues
    }

    /// The same patient with no vessel that a needle could meet.
    pub fn without_vessels(self) -> Self {
        let mut deep = self.deep().clone();
        deep.tissues.list.retain(|tissue| tissue.kind != TissueKind::Vessel);
        Self { deep: OnceLock::from(deep), ..self }
    }

    fn deep(&self) -> &Deep {
        self.deep.get_or_init(|| {
            let Self { landmarks, trunk, scale, seed, skeleton, .. } = self;
            let nerves = nerves::build(landmarks, &skeleton.physique.vertebrae, *scale);
            let foramina = foramen::build(landmarks, &nerves, *scale);
            let vessels = vessels::build(landmarks, &foramina, *scale, *seed);
            let tissues =
                tissues::build(fields(skeleton), landmarks, &nerves, &vessels, &trunk.fascia, *scale);
            Deep { nerves, foramina, vessels, tissues }
        })
    }

    /// The landmarks of a level.
    pub fn level(&self, level: Level) -> &LevelLandmarks {
        &self.landmarks[level.index()]
    }

    /// The foramen under a pedicle; `None` above L1.
    pub fn foramen(&self, level: Level, side: Side) -> Option<&Foramen> {
        self.foramina().iter().find(|f| f.level == level && f.side == side)
    }
}

/// The field of each bone, mirrored ones a bone of their own.
fn fields(skeleton: &Skeleton) -> Vec<BoneField> {
    let mut fields = Vec::new();
    for bone in skeleton.bones() {
        let mut field = |solid: Solid| fields.push(BoneField { level: bone.level, frame: bone.frame, solid });
        field(bone.solid);
        bone.twin.into_iter().for_each(&mut field);
    }
    fields
}

//! How a patient's bones stand, and each of them as a field before it is meshed.
//!
//! Standing them up is cheap and enough for all landmarks; the fields are made when a picture or a needle asks for them.

use super::column::stack;
use super::landmarks::{self, LevelLandmarks};
use super::names::{Level, Side};
use super::patient_spec::PatientSpec;
use super::physique::Physique;
use super::rib::{self, Rib};
use super::superior_process::{JointState, SuperiorProcess};
use super::vertebra::Below;
use super::{pelvis, sacrum, thoracic, vertebra};
use crate::geometry::frame::{Rigid, rotation_z};
use crate::geometry::solid::Solid;
use glam::DVec3;

/// A bone before meshing.
#[derive(Clone, Debug)]
pub(super) struct UnmeshedBone {
    /// As in [`super::patient::Bone`].
    pub(super) level: Level,
    /// As in [`super::patient::Bone`].
    pub(super) axial: bool,
    /// Lattice spacing that it is meshed with, mm.
    pub(super) spacing_mm: f32,
    /// Where its own frame stands in the column frame.
    pub(super) frame: Rigid,
    /// Its field, own frame.
    pub(super) solid: Solid,
    /// The other side's solid, for bones that come in mirrored pairs and are meshed once.
    pub(super) twin: Option<Solid>,
}

/// Lattice spacing, mm. The coarsest with which a superior process on the mesh stays within 0.4 mm of the one that is scored
/// (`tests/silhouette.rs`) and films do not change to the eye; time of a frame and of a patient goes with the inverse square.
mod spacing_mm {
    pub(super) const LUMBAR: f32 = 1.8;
    /// No needle goes there, and it stands at the edge of a film of L1.
    pub(super) const T12: f32 = 2.4;
    pub(super) const SACRUM: f32 = 2.5;
    pub(super) const WING: f32 = 3.8;
    pub(super) const RIB: f32 = 2.4;
    pub(super) const CONTEXT: f32 = 3.8;
}

/// A patient's dimensions, and where that puts each bone.
#[derive(Clone, Debug)]
pub(super) struct Skeleton {
    /// What every bone measures.
    pub(super) physique: Physique,
    /// T12, L1 … L5, sacrum in the column frame.
    frames: [Rigid; 7],
    ilium: pelvis::Wing,
}

impl Skeleton {
    /// Stands the bones of a patient up.
    pub(super) fn of(spec: &PatientSpec) -> Self {
        let physique = Physique::of(spec);
        let Physique { scale: k, vertebrae, shape, .. } = &physique;
        let on_table = Rigid { rotation: rotation_z(spec.turned_deg.to_radians()), translation: DVec3::ZERO };
        let frames = stack(vertebrae, shape).map(|f| on_table.after(&f));
        let disc_middle = {
            let l5 = &frames[5];
            let up = l5.rotation * DVec3::Z;
            (l5.translation + up * (vertebrae[5].half_height_mm() + shape.disc_height_mm[4] / 2.0)).z
        };
        let crest_z = disc_middle + physique.crest_above_disc_mm * k;
        let ilium = pelvis::Wing::reaching(*k, frames[6].rotation.transpose() * DVec3::Z, crest_z);
        Self { physique, frames, ilium }
    }

    /// T12 … S1.
    pub(super) fn landmarks(&self) -> [LevelLandmarks; 7] {
        let Self { physique, frames, ilium } = self;
        let Physique { scale: k, vertebrae, pelvis, shape, joints, .. } = physique;
        let top = ilium.crest_top;
        let crest_tops = Side::BOTH.map(|s| frames[6].point(DVec3::new(top.x * s.sign(), top.y, top.z)));
        std::array::from_fn(|i| {
            if i < 6 {
                let below = physique.process(i + 1);
                let marks = landmarks::of_vertebra(
                    Level::ALL[i],
                    &vertebrae[i],
                    *k,
                    &joints[i],
                    &frames[i],
                    (&below, &frames[i + 1]),
                );
                LevelLandmarks { slip_mm: shape.slip_mm[i], ..marks }
            } else {
                landmarks::of_sacrum(pelvis, *k, &joints[6], &frames[6], crest_tops)
            }
        })
    }

    /// Every bone as a field: T12, L1 … L5, sacrum, iliac wings, three pairs of ribs, T11 and T10.
    pub(super) fn bones(&self) -> Vec<UnmeshedBone> {
        let Self { physique, frames, ilium } = self;
        let Physique { scale: k, vertebrae, pelvis, joints, .. } = physique;
        let k = *k;
        let mut bones = Vec::new();
        for level in Level::VERTEBRAE {
            let i = level.index();
            let motion = frames[i].inverse().after(&frames[i + 1]);
            let arch = vertebrae.get(i + 1).map_or_else(Vec::new, |d| vertebra::arch(motion, d, k));
            let below = Below { process: physique.process(i + 1), motion, arch };
            let solid = vertebra::solid(&vertebrae[i], k, &joints[i], &below);
            bones.push(UnmeshedBone {
                level,
                axial: true,
                spacing_mm: if level == Level::T12 { spacing_mm::T12 } else { spacing_mm::LUMBAR },
                frame: frames[i],
                solid,
                twin: None,
            });
        }
        let plate = ilium.plate();
        let wings = Side::BOTH.map(|side| ilium.piece(&plate, side));
        bones.push(UnmeshedBone {
            level: Level::S1,
            axial: true,
            spacing_mm: spacing_mm::SACRUM,
            frame: frames[6],
            solid: sacrum::solid(pelvis, k, &joints[6], wings.clone()),
            twin: None,
        });
        let [left, right] = wings.map(pelvis::solid);
        bones.push(UnmeshedBone {
            level: Level::S1,
            axial: false,
            spacing_mm: spacing_mm::WING,
            frame: frames[6],
            solid: left,
            twin: Some(right),
        });
        let [eleventh, tenth] = self.thoracic_context();
        let mut rib = |which, frame| {
            let [left, right] = Side::BOTH.map(|side| rib::solid(which, side, k));
            bones.push(UnmeshedBone {
                level: Level::T12,
                axial: false,
                spacing_mm: spacing_mm::RIB,
                frame,
                solid: left,
                twin: Some(right),
            });
        };
        rib(Rib::Twelfth, frames[0]);
        rib(Rib::Eleventh, eleventh.frame);
        rib(Rib::Tenth, tenth.frame);
        bones.extend([eleventh, tenth]);
        bones
    }

    /// T11 and T10 above T12.
    fn thoracic_context(&self) -> [UnmeshedBone; 2] {
        let physique = &self.physique;
        let k = physique.scale;
        let (mut lower, mut frame) = (physique.vertebrae[0], self.frames[0]);
        let mut process = physique.process(0);
        thoracic::UPWARDS.map(|average| {
            let d = physique.own.vertebra(&average.scaled(k));
            let own_frame = thoracic::above(&lower, &frame, &d, k);
            let below = Below { process, motion: own_frame.inverse().after(&frame), arch: Vec::new() };
            let joint = JointState::default();
            let solid = vertebra::solid(&d, k, &joint, &below);
            process = SuperiorProcess::of_vertebra(&d, k, &joint);
            (lower, frame) = (d, own_frame);
            UnmeshedBone {
                level: Level::T12,
                axial: false,
                spacing_mm: spacing_mm::CONTEXT,
                frame: own_frame,
                solid,
                twin: None,
            }
        })
    }
}

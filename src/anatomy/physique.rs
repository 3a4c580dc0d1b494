//! What a patient measures before any bone is shaped: dimensions of every bone, shape of the column, state of the joints.
//!
//! The build of the specification and the patient's own variation are applied here and nowhere else.
//!
//! Slip (degenerative, L4 on L5, arch whole): the facet joint is more sagittal and the disc lower the further it has gone (23 patients and
//! 40 controls, library record 10078953: read; degrees and shares derived). The inferior process of L4 has slid along the worn joint for a
//! part of the way; for the rest its arch leans back (derived).
//!
//! Transition of L5 (made like the sacrum, Castellvi 1984 type IIb): transverse processes at least 19 mm tall that meet the wings in joints
//! of their own (BMC Musculoskelet Disord 2020, s12891-020-03358-3: read), a low disc below (Konin & Walz 2010, AJNR 31:1778:
//! memory), a body that tapers downwards as the first sacral one does ("rhombus-shaped": Korean J Radiol 2014;15:258: read). How much: derived.

use super::column::{ColumnShape, average_vertebrae};
use super::dimensions::{PEDICLE_BELOW_PLATE_MM, PELVIS, Pelvis, Vertebra};
use super::patient_spec::PatientSpec;
use super::superior_process::{JointState, SuperiorProcess};
use super::variation::Variation;

/// Least height of a disc behind, mm. Derived: that of the lowest discs of films.
const LEAST_OPEN_MM: f64 = 2.3;
/// Share of a disc's lost height by which the tip of the superior process beside it is lower, so that it does not run into the pars
/// above (derived: tips of low discs are worn or bent).
const TIP_WEAR: f64 = 0.8;
/// L5's place in the column.
const L5: usize = 5;

/// Facet plane of the slipped joint turned towards the sagittal plane, degrees a percent of slip.
const SLIP_TURN_DEG: f64 = 0.5;
/// Height lost by the slipped disc, share a percent of slip.
const SLIP_DISC_LOSS: f64 = 0.010;
/// Share of the slip that the inferior process has slid along the joint.
const SLIP_SLIDE: f64 = 0.45;
/// Further than this the joint's edge lets it not slide, mm.
const MOST_SLIDE_MM: f64 = 2.0;
/// Share of the slip that has been worn off the superior process's facet.
const SLIP_WEAR: f64 = 0.20;

/// Height lost by the disc under a joined L5, share.
const TRANSITION_DISC_LOSS: f64 = 0.5;
/// Wedge lost by that disc, share; the disc above takes half of it, the sacral slope the rest.
const TRANSITION_WEDGE_LOSS: f64 = 0.6;
/// How much smaller the lower plate of a joined L5 is, share.
const TRANSITION_TAPER: f64 = 0.10;

/// How much deeper a plate sags in bone without mineral than in the average one, mm: discs sink into weak bodies. At the lowest density
/// that a patient can have, the middle of a body is then still four fifths as high as its posterior wall, where a fracture would begin
/// (Genant 1993, J Bone Miner Res 8:1137: memory).
const PLATES_SUNK_MM: f64 = 2.2;

/// Everything that bones and column are made from.
#[derive(Clone, Debug)]
pub(super) struct Physique {
    /// Size against the average.
    pub(super) scale: f64,
    /// T12, L1 … L5.
    pub(super) vertebrae: [Vertebra; 6],
    /// What of the population's spread is this patient's own.
    pub(super) own: Variation,
    /// The sacrum.
    pub(super) pelvis: Pelvis,
    /// How the bones stand.
    pub(super) shape: ColumnShape,
    /// Joints above T12 … S1.
    pub(super) joints: [JointState; 7],
    /// Crest above the middle of the L4-5 disc, mm.
    pub(super) crest_above_disc_mm: f64,
    /// Thickness of the trunk against the average.
    pub(super) girth: f64,
}

impl Physique {
    /// Of a patient.
    pub(super) fn of(spec: &PatientSpec) -> Self {
        let own = Variation::of(spec.seed, spec.variation);
        let k = spec.size * own.size;
        let average = average_vertebrae(k);
        let mut pelvis = own.pelvis(&PELVIS.scaled(k), &average[L5]);
        let mut vertebrae = average.map(|d| own.vertebra(&d));
        let mut shape = ColumnShape::average(spec.posture);
        shape.sacral_slope_rad += own.sacral_slope_deg.to_radians();
        shape.disc_wedge_rad = own.disc_wedges(shape.disc_wedge_rad);
        for (i, height) in shape.disc_height_mm.iter_mut().enumerate() {
            let low = if i >= 4 { spec.low_disc_height } else { 1.0 };
            // A disc that has lost its height has little left to vary in.
            let left = (2.0 * low - 1.0).clamp(0.0, 1.0);
            *height *= k * (1.0 + left * (own.disc_height - 1.0)) * low;
        }
        for i in 0..6 {
            // A single bend with its apex at L2-L3: lean and turn grow from the sacrum and fade above.
            let share = [0.55, 0.85, 1.0, 0.95, 0.7, 0.35][i];
            shape.side_bend_rad[i] =
                spec.curve_deg.to_radians() * [1.0, 1.0, 0.75, 0.35, 0.0, -0.15][i] * 0.6;
            shape.axial_turn_rad[i] = spec.curve_deg.to_radians() * share * 0.7;
        }
        let mut worn_tips_mm = [0.0; 7];
        let mut joints = [JointState::default(); 7];
        for joint in &mut joints[L5..] {
            joint.swelling_mm = spec.facet_swelling_mm;
        }
        let whole = shape.disc_height_mm;
        slip(spec.slip_percent, &mut vertebrae[L5], &mut shape, &mut joints[L5]);
        transition(spec.transition, &mut vertebrae[L5], &mut shape);
        for i in 0..6 {
            // A disc stays open behind, however low it is.
            let open = (shape.disc_height_mm[i] - LEAST_OPEN_MM * k).max(0.0);
            let wedge = &mut shape.disc_wedge_rad[i];
            *wedge = wedge.min(libm::atan(open / vertebrae[i].posterior_rims_mm()));
            worn_tips_mm[i + 1] = TIP_WEAR * (whole[i] - shape.disc_height_mm[i]);
        }
        if spec.variation != 0.0 {
            let build = Self::of(&PatientSpec { variation: 0.0, ..spec.clone() });
            // A patient's own processes keep under the pedicles above as far as those of the build do.
            let (usual, here) = (build.room_mm(), room_mm(&shape, &vertebrae, &pelvis));
            for i in 0..6 {
                let lower = usual[i] * own.size - (here[i] + worn_tips_mm[i + 1]);
                worn_tips_mm[i + 1] += lower.max(0.0);
            }
        }
        for (d, worn) in vertebrae.iter_mut().zip(worn_tips_mm) {
            d.superior_process_rise_mm -= worn;
            d.plates_sunk_mm = PLATES_SUNK_MM * k * (1.0 - spec.bone_density).max(0.0);
        }
        pelvis.superior_process_rise_mm -= worn_tips_mm[6];
        Self {
            scale: k,
            vertebrae,
            own,
            pelvis,
            shape,
            joints,
            crest_above_disc_mm: spec.crest_above_disc_mm + own.crest_mm,
            girth: spec.girth * own.back_fat,
        }
    }

    fn room_mm(&self) -> [f64; 6] {
        room_mm(&self.shape, &self.vertebrae, &self.pelvis)
    }

    /// The superior processes of a level, with the joint above it.
    pub(super) fn process(&self, level: usize) -> SuperiorProcess {
        let joint = &self.joints[level];
        match self.vertebrae.get(level) {
            Some(d) => SuperiorProcess::of_vertebra(d, self.scale, joint),
            None => SuperiorProcess::of_sacrum(&self.pelvis, self.scale, joint),
        }
    }
}

/// Room between each pedicle's lower edge and the tip of the superior process below, along the posterior wall, mm.
fn room_mm(shape: &ColumnShape, vertebrae: &[Vertebra; 6], pelvis: &Pelvis) -> [f64; 6] {
    std::array::from_fn(|i| {
        let d = &vertebrae[i];
        let rise = vertebrae
            .get(i + 1)
            .map_or(pelvis.superior_process_rise_mm, |below| below.superior_process_rise_mm);
        let open = shape.disc_height_mm[i] - d.posterior_rims_mm() * libm::tan(shape.disc_wedge_rad[i]);
        d.posterior_height_mm - PEDICLE_BELOW_PLATE_MM - d.pedicle_height_mm + open - rise
    })
}

fn slip(percent: f64, below: &mut Vertebra, shape: &mut ColumnShape, joint: &mut JointState) {
    let slip_mm = percent / 100.0 * below.upper_depth_mm;
    shape.slip_mm[L5 - 1] = slip_mm;
    shape.disc_height_mm[L5 - 1] *= 1.0 - SLIP_DISC_LOSS * percent;
    below.facet_plane_deg -= SLIP_TURN_DEG * percent;
    joint.slide_mm = (SLIP_SLIDE * slip_mm).min(MOST_SLIDE_MM);
    joint.worn_mm = SLIP_WEAR * slip_mm;
}

fn transition(share: f64, l5: &mut Vertebra, shape: &mut ColumnShape) {
    l5.transition = share;
    let taper = 1.0 - TRANSITION_TAPER * share;
    l5.lower_width_mm *= taper;
    l5.lower_depth_mm *= taper;
    shape.disc_height_mm[L5] *= 1.0 - TRANSITION_DISC_LOSS * share;
    let lost = shape.disc_wedge_rad[L5] * TRANSITION_WEDGE_LOSS * share;
    shape.disc_wedge_rad[L5] -= lost;
    shape.disc_wedge_rad[L5 - 1] += lost / 2.0;
    shape.sacral_slope_rad -= lost / 2.0;
}

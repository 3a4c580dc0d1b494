//! Everything that page and host tool say about a view, as plain data.

use super::best_view::{Orientation, ViewKind, best_view};
use super::criteria::{
    CriterionId, Target, facet_place, foramen_offset_mm, implied_rotation, lateral_place, plate_angle,
    process_at_mid_plate_percent, rim_gap_mm, spinous_offset_percent,
};
use super::feedback::{Advice, advice, control_of, sentence};
use super::tolerance::{Tolerance, Tolerances};
use crate::anatomy::foramen::Approach;
use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Level, Part, Side};
use crate::anatomy::patient::Patient;
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use serde::Serialize;

/// One criterion, measured.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Criterion {
    /// Which.
    pub id: CriterionId,
    /// In words.
    pub name: &'static str,
    /// Signed measure; `null` where the view does not define it.
    pub value: Option<f64>,
    /// Unit of value and tolerance.
    pub unit: &'static str,
    /// Limits.
    pub tolerance: Tolerance,
    /// 0 to 1.
    pub score: f64,
    /// What to move, when something is to be gained.
    pub advice: Option<Advice>,
    /// What there is to say.
    pub finding: Finding,
    /// The same in English, always there.
    pub sentence: String,
}

/// What there is to say of a criterion.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Finding {
    /// It has full marks.
    Good,
    /// The top of the articular process stands in the pedicle and not under it.
    Overlap,
    /// The advised move puts it right.
    Move,
    /// No move of one control puts it right.
    Stuck,
}

/// What a view is measured against: a whole task's part that views know of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AskedView {
    /// Level and side.
    pub target: Target,
    /// Way into the foramen: it decides which oblique is wanted.
    pub approach: Approach,
    /// Limits.
    pub tolerances: Tolerances,
}

impl AskedView {
    /// The usual way in with the usual limits.
    pub fn usual(target: Target) -> Self {
        Self { target, approach: Approach::Subpedicular, tolerances: Tolerances::default() }
    }

    /// The view that is measured when one is kept as `kind`: under the root the oblique is the steep one.
    pub fn measured(&self, kind: ViewKind) -> ViewKind {
        match (kind, self.approach, self.target.level) {
            (ViewKind::Oblique, Approach::Infraneural, level) if level != Level::S1 => ViewKind::SteepOblique,
            _ => kind,
        }
    }
}

/// A kind of view and how near it is.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct ViewScore {
    /// As which it is kept.
    pub view: ViewKind,
    /// As which it is measured: the way under the root wants the steep oblique.
    pub measured: ViewKind,
    /// The least of its criteria's scores.
    pub score: f64,
    /// The criteria that make it.
    pub criteria: Vec<CriterionId>,
    /// The best view of this kind.
    pub best: Orientation,
    /// Whether the machine's ranges reach it.
    pub reached: bool,
}

/// A landmark in the patient frame and on the detector.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct LandmarkReport {
    /// Such as `pedicle_centre`.
    pub name: &'static str,
    /// Level.
    pub level: Level,
    /// `null` in the midline.
    pub side: Option<Side>,
    /// Patient frame: origin at the target's centre, LPS, mm.
    pub patient_mm: [f64; 3],
    /// Detector, u right and v up, mm.
    pub detector_mm: [f64; 2],
}

/// Where to write the name of a part of the dog.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct DogPart {
    /// The part.
    pub part: Part,
    /// Its name in the dog.
    pub dog_name: &'static str,
    /// Whose it is.
    pub level: Level,
    /// Whose it is.
    pub side: Side,
    /// Detector, mm.
    pub anchor_mm: [f64; 2],
}

/// Further measures of the view, not scored.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Measures {
    /// Rotation of the target implied by its pedicles (Stokes), degrees, > 0 receptor too far to the patient's left.
    pub implied_rotation_deg: f64,
    /// Gap between front and back rim of the upper end plate, mm on the detector.
    pub upper_rim_gap_mm: f64,
    /// Ray against the lower end plate, degrees; `null` on the sacrum.
    pub lower_plate_deg: Option<f64>,
    /// Top of the articular process below the pedicle's 6 o'clock, mm on the detector; `null` on the sacrum.
    pub facet_below_pedicle_mm: Option<f64>,
    /// Ends of the process's outline at the height where it is held against the pedicle, on the detector, mm; `null` on the sacrum.
    pub facet_ends_mm: Option<[[f64; 2]; 2]>,
    /// Crest tops apart in the picture: across the vertebra's image and along it, mm.
    pub crests_apart_mm: [f64; 2],
    /// Edges of the posterior wall apart, mm.
    pub posterior_wall_mm: f64,
    /// Magnification at the target.
    pub magnification: f64,
}

/// Degrees of the C-arm.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct ArmOrientation {
    /// > 0 receptor to the patient's left.
    #[serde(rename = "oblique")]
    pub oblique_deg: f64,
    /// > 0 cephalad.
    #[serde(rename = "tilt")]
    pub tilt_deg: f64,
    /// > 0 clockwise.
    #[serde(rename = "image_rotation")]
    pub image_rotation_deg: f64,
}

/// DICOM positioner angles, degrees.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct DicomAngles {
    /// (0018,1510).
    #[serde(rename = "primary")]
    pub primary_deg: f64,
    /// (0018,1511).
    #[serde(rename = "secondary")]
    pub secondary_deg: f64,
}

/// The whole report.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Report {
    /// Target.
    pub level: Level,
    /// Target.
    pub side: Side,
    /// Patient's name in the list.
    pub patient: String,
    /// Where the C-arm stands.
    pub orientation: ArmOrientation,
    /// The same in DICOM's words.
    pub dicom: DicomAngles,
    /// All criteria that apply to the level.
    pub criteria: Vec<Criterion>,
    /// The views they make.
    pub views: Vec<ViewScore>,
    /// Best oblique view of the target.
    pub best: Orientation,
    /// Not scored.
    pub measures: Measures,
    /// All landmarks.
    pub landmarks: Vec<LandmarkReport>,
    /// Label anchors of the dog's parts.
    pub dog: Vec<DogPart>,
}

/// The criteria that make a view of a level.
pub fn criteria_of_view(level: Level, kind: ViewKind) -> [CriterionId; 2] {
    let turn = match kind {
        ViewKind::TrueAp => CriterionId::SpinousCentred,
        ViewKind::Oblique if level == Level::S1 => CriterionId::ForamenAligned,
        ViewKind::Oblique => CriterionId::FacetUnderPedicle,
        ViewKind::Lateral => CriterionId::Lateral,
        ViewKind::SteepOblique => return [CriterionId::ProcessAtMidPlate, CriterionId::SquaredBelow],
    };
    [turn, CriterionId::Squared]
}

/// The signed value that the control brings to zero.
fn signed_value(interior: &Interior, target: Target, view: &Projection, id: CriterionId) -> f64 {
    let level = interior.level(target.level);
    match id {
        CriterionId::SpinousCentred => spinous_offset_percent(view, level),
        CriterionId::Squared => plate_angle(view, &level.upper_plate).to_degrees(),
        CriterionId::SquaredBelow => target
            .level
            .below()
            .map_or(f64::NAN, |below| plate_angle(view, &interior.level(below).upper_plate).to_degrees()),
        CriterionId::ProcessAtMidPlate => {
            process_at_mid_plate_percent(view, interior, target).unwrap_or(f64::NAN)
        }
        CriterionId::FacetUnderPedicle => {
            facet_place(view, interior, target).map_or(f64::NAN, |f| f.offset_percent)
        }
        CriterionId::Lateral => lateral_place(view, interior, target.level).pedicles_mm[0],
        CriterionId::ForamenAligned => {
            foramen_offset_mm(view, interior, target.side).map_or(f64::NAN, |o| o[0])
        }
    }
}

/// The value that is shown and scored: as above, or the distance where two directions count.
fn scored_value(interior: &Interior, target: Target, view: &Projection, id: CriterionId) -> f64 {
    match id {
        CriterionId::Lateral => lateral_place(view, interior, target.level).apart_mm(),
        CriterionId::ForamenAligned => {
            foramen_offset_mm(view, interior, target.side).map_or(f64::NAN, |o| libm::hypot(o[0], o[1]))
        }
        _ => signed_value(interior, target, view, id),
    }
}

fn tolerance_of(tolerances: &Tolerances, id: CriterionId) -> Tolerance {
    match id {
        CriterionId::SpinousCentred => tolerances.spinous_percent,
        CriterionId::Squared | CriterionId::SquaredBelow => tolerances.squared_deg,
        CriterionId::ProcessAtMidPlate => tolerances.mid_plate_percent,
        CriterionId::FacetUnderPedicle => tolerances.facet_percent,
        CriterionId::Lateral => tolerances.lateral_mm,
        CriterionId::ForamenAligned => tolerances.foramen_mm,
    }
}

/// Measures one criterion.
pub fn criterion(
    interior: &Interior,
    target: Target,
    arm: &CArm,
    id: CriterionId,
    tolerances: &Tolerances,
) -> Criterion {
    let centre = interior.level(target.level).centre;
    let view = Projection::new(arm, centre);
    let value = scored_value(interior, target, &view, id);
    let tolerance = tolerance_of(tolerances, id);
    let mut score = tolerance.score(value);
    let mut overlaps = false;
    if id == CriterionId::FacetUnderPedicle
        && let Some(place) = facet_place(&view, interior, target)
        && place.below_mm < 0.0
    {
        // The top must stand under the eye, not in it: marks fade over the first quarter of the pedicle's height.
        score *= (1.0 + place.below_mm / FACET_OVERLAP_NONE_MM).clamp(0.0, 1.0);
        overlaps = true;
    }
    let signed = |a: &CArm| signed_value(interior, target, &Projection::new(a, centre), id);
    let found = if score < 1.0 { advice(control_of(id), arm, signed) } else { None };
    let (finding, sentence) = match &found {
        _ if score >= 1.0 => (Finding::Good, "Good: within the tolerance.".to_owned()),
        _ if overlaps && tolerance.score(value) >= 1.0 => (
            Finding::Overlap,
            "The top of the process overlaps the pedicle; change the tilt until it stands below.".to_owned(),
        ),
        Some(move_of_one) => (Finding::Move, sentence(move_of_one)),
        None => (
            Finding::Stuck,
            "No move of one control puts this right from here; go back to a true AP first.".to_owned(),
        ),
    };
    Criterion {
        id,
        name: id.name(),
        value: value.is_finite().then_some(value),
        unit: id.unit(),
        tolerance,
        score,
        advice: found,
        finding,
        sentence,
    }
}

/// Overlap of process and pedicle at which the facet criterion gives nothing, mm on the detector. Common practice, no source.
const FACET_OVERLAP_NONE_MM: f64 = 6.0;

/// How a view kept as `kind` scores: by the criterion that scores least.
pub fn view_score(interior: &Interior, asked: &AskedView, kind: ViewKind, arm: &CArm) -> Criterion {
    let [a, b] = criteria_of_view(asked.target.level, asked.measured(kind))
        .map(|id| criterion(interior, asked.target, arm, id, &asked.tolerances));
    if b.score < a.score { b } else { a }
}

/// Says everything about a view. What it says of a view's score is what keeping the view is marked with.
pub fn report(patient: &Patient, asked: &AskedView, arm: &CArm) -> Report {
    let target = asked.target;
    let level = patient.level(target.level);
    let view = Projection::new(arm, level.centre);
    let mut criteria: Vec<Criterion> = Vec::new();
    let views: Vec<ViewScore> = ViewKind::ALL
        .into_iter()
        .map(|kind| {
            let measured = asked.measured(kind);
            let ids = criteria_of_view(target.level, measured);
            for id in ids {
                if criteria.iter().all(|c| c.id != id) {
                    criteria.push(criterion(&patient.interior, target, arm, id, &asked.tolerances));
                }
            }
            let score = criteria.iter().filter(|c| ids.contains(&c.id)).map(|c| c.score).fold(1.0, f64::min);
            let best = best_view(&patient.interior, target, measured, arm);
            ViewScore {
                view: kind,
                measured,
                score,
                criteria: ids.to_vec(),
                best: best.orientation,
                reached: best.reached,
            }
        })
        .collect();
    let (primary_deg, secondary_deg) = arm.dicom_angles_deg();
    let lateral = lateral_place(&view, &patient.interior, target.level);
    let process = facet_place(&view, &patient.interior, target);
    let landmarks = patient
        .interior
        .landmarks
        .iter()
        .flat_map(|l| l.points())
        .map(|l| LandmarkReport {
            name: l.name,
            level: l.level,
            side: l.side,
            patient_mm: (l.position_mm - level.centre).to_array(),
            detector_mm: view.project(l.position_mm).to_array(),
        })
        .collect();
    Report {
        level: target.level,
        side: target.side,
        patient: patient.spec.title(),
        orientation: ArmOrientation {
            oblique_deg: arm.oblique_rad.to_degrees(),
            tilt_deg: arm.tilt_rad.to_degrees(),
            image_rotation_deg: arm.image_rotation_rad.to_degrees(),
        },
        dicom: DicomAngles { primary_deg, secondary_deg },
        best: views[1].best,
        criteria,
        views,
        measures: Measures {
            implied_rotation_deg: implied_rotation(&view, level).to_degrees(),
            upper_rim_gap_mm: rim_gap_mm(&view, &level.upper_plate),
            lower_plate_deg: level.lower_plate.map(|p| plate_angle(&view, &p).to_degrees()),
            facet_below_pedicle_mm: process.map(|f| f.below_mm),
            facet_ends_mm: process.map(|f| f.ends_mm.map(|end| end.to_array())),
            crests_apart_mm: lateral.crests_mm,
            posterior_wall_mm: lateral.posterior_wall_mm,
            magnification: view.magnification_at(level.centre),
        },
        landmarks,
        dog: dog(&patient.interior, target, &view),
    }
}

/// Anchors of the dog's parts: those of the target, and the ear of the level below.
fn dog(interior: &Interior, target: Target, view: &Projection) -> Vec<DogPart> {
    let mut parts = Vec::new();
    let mut add = |part: Part, level: Level, at: Option<glam::DVec3>| {
        if let (Some(dog_name), Some(p)) = (part.dog_name(), at) {
            parts.push(DogPart {
                part,
                dog_name,
                level,
                side: target.side,
                anchor_mm: view.project(p).to_array(),
            });
        }
    };
    let s = interior.level(target.level).side(target.side);
    add(Part::TransverseProcess, target.level, s.transverse_tip.map(|tip| tip.lerp(s.pedicle.centre, 0.3)));
    add(Part::Pedicle, target.level, Some(s.pedicle.centre));
    add(
        Part::SuperiorArticularProcess,
        target.level,
        Some(s.superior_process_tip.lerp(s.superior_facet, 0.4)),
    );
    add(Part::Pars, target.level, s.pars);
    add(Part::Lamina, target.level, s.lamina);
    add(Part::InferiorArticularProcess, target.level, s.inferior_process_tip);
    if let Some(below) = target.level.below() {
        let b = interior.level(below).side(target.side);
        add(Part::SuperiorArticularProcess, below, Some(b.superior_process_tip));
    }
    parts
}

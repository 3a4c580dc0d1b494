//! What each step of the procedure is worth, and why, as remarks that a learner can act on. Everything is computed from the state, the
//! patient's geometry and the lesson's limits.
//!
//! Order and weights of the steps, what is taken off for a contact, where a tip should be and from when on a step counts:
//! common practice, no source.

use super::attempt::{Injected, Kept, Mark, Met, State, view_of};
use super::case::{Case, Par};
use super::gate::{Gate, gate, gates_of};
use super::remark::{self, Across, Along, Remark};
use crate::anatomy::foramen::{Approach, Foramen};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Level, Side};
use crate::imaging::c_arm::CArm;
use crate::needle::compartment::{Compartment, Pattern};
use crate::needle::contact::ContactKind;
use crate::needle::reading::{OPEN_REACH_MM, clock, lateral, off_mark_mm};
use crate::view::best_view::{Orientation, ViewKind, best_view};
use crate::view::report::view_score;
use crate::view::tolerance::Tolerance;
use glam::DVec3;
use serde::{Deserialize, Serialize};

/// A step of the procedure, or of a lesson.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum StepId {
    NameParts,
    TrueAp,
    Oblique,
    Lateral,
    Target,
    DownTheBeam,
    Steering,
    Depth,
    Contacts,
    Contrast,
    Radiation,
}

impl StepId {
    /// All that a lesson can ask for, in order.
    pub const OF_LESSONS: [Self; 11] = [
        Self::NameParts,
        Self::TrueAp,
        Self::Oblique,
        Self::Lateral,
        Self::Target,
        Self::DownTheBeam,
        Self::Steering,
        Self::Depth,
        Self::Contacts,
        Self::Contrast,
        Self::Radiation,
    ];

    /// Those of a whole procedure, in its order.
    pub const ALL: [Self; 9] = [
        Self::TrueAp,
        Self::Oblique,
        Self::Target,
        Self::DownTheBeam,
        Self::Steering,
        Self::Depth,
        Self::Contacts,
        Self::Contrast,
        Self::Radiation,
    ];

    /// In the trade's words.
    pub fn name(self) -> &'static str {
        match self {
            Self::NameParts => "Parts named",
            Self::TrueAp => "True AP",
            Self::Oblique => "Oblique, squared",
            Self::Lateral => "Lateral",
            Self::Target => "Target",
            Self::DownTheBeam => "Down the beam",
            Self::Steering => "Steering",
            Self::Depth => "Depth",
            Self::Contacts => "What the needle met",
            Self::Contrast => "Contrast",
            Self::Radiation => "Radiation",
        }
    }

    /// The name used in files, such as `true_ap`.
    pub fn id(self) -> &'static str {
        match self {
            Self::NameParts => "name_parts",
            Self::TrueAp => "true_ap",
            Self::Oblique => "oblique",
            Self::Lateral => "lateral",
            Self::Target => "target",
            Self::DownTheBeam => "down_the_beam",
            Self::Steering => "steering",
            Self::Depth => "depth",
            Self::Contacts => "contacts",
            Self::Contrast => "contrast",
            Self::Radiation => "radiation",
        }
    }

    fn weight(self) -> f64 {
        match self {
            Self::NameParts | Self::Lateral | Self::TrueAp | Self::Steering | Self::Radiation => 1.0,
            Self::Oblique | Self::Target | Self::DownTheBeam => 1.5,
            Self::Depth | Self::Contacts | Self::Contrast => 2.0,
        }
    }
}

/// One step's marks.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Step {
    /// Which.
    pub id: StepId,
    /// In words.
    pub name: &'static str,
    /// Share of the whole when all steps count.
    pub weight: f64,
    /// 0 to 1; `null` while it has not been done or where it does not count.
    pub score: Option<f64>,
    /// Why: one remark or a few, in the order in which they are said.
    pub reasons: Vec<Remark>,
}

/// All steps and the whole.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Score {
    /// In order.
    pub steps: Vec<Step>,
    /// Weighted mean over the steps that count, 0 to 1; steps not done give nothing.
    pub total: f64,
    /// Whether everything was done.
    pub complete: bool,
    /// What would fail it whatever the marks.
    pub gates: Vec<Gate>,
}

/// Marks of a step and the reasons.
type Marks = (Option<f64>, Vec<Remark>);

/// Not done: no marks, and what there is to do.
fn not_yet(remark: Remark) -> Marks {
    (None, vec![remark])
}

/// Scores an attempt as it stands.
pub fn score(case: &Case, interior: &Interior, state: &State) -> Score {
    let mut steps: Vec<Step> = StepId::ALL.into_iter().map(|id| step(case, interior, state, id)).collect();
    scale_economy(&mut steps);
    let counts = |s: &&Step| s.id != StepId::Radiation || case.exposures;
    let counted: Vec<Step> = steps.iter().filter(counts).cloned().collect();
    let gates = gates_of(&StepId::ALL, &[]);
    Score {
        total: weighed(counted.iter()),
        complete: counted.iter().all(|s| s.score.is_some()),
        gates: gates.into_iter().map(|id| gate(case, interior, state, &counted, id)).collect(),
        steps,
    }
}

/// Little radiation is worth something for what was reached with it: its marks scale with those of the other steps.
pub fn scale_economy(steps: &mut [Step]) {
    let reached = weighed(steps.iter().filter(|s| s.id != StepId::Radiation));
    for step in steps.iter_mut().filter(|s| s.id == StepId::Radiation) {
        if let Some(score) = &mut step.score
            && reached < 1.0
        {
            *score *= reached;
            step.reasons.push(Remark::EconomyScaled { percent: 100.0 * reached });
        }
    }
}

/// Weighted mean over steps, 0 to 1; a step not done gives nothing.
pub fn weighed<'a>(steps: impl Iterator<Item = &'a Step>) -> f64 {
    let (sum, weight) = steps
        .fold((0.0, 0.0), |(sum, weight), s| (sum + s.weight * s.score.unwrap_or(0.0), weight + s.weight));
    if weight > 0.0 { sum / weight } else { 0.0 }
}

/// One step of an attempt as it stands. Naming parts is the lesson's to score (`super::parts`): here it is never done.
pub fn step(case: &Case, interior: &Interior, state: &State, id: StepId) -> Step {
    let (score, reasons) = match id {
        StepId::NameParts => not_yet(Remark::NameParts),
        StepId::TrueAp => kept_view(case, interior, state, ViewKind::TrueAp),
        StepId::Oblique => kept_view(case, interior, state, ViewKind::Oblique),
        StepId::Lateral => kept_view(case, interior, state, ViewKind::Lateral),
        StepId::Target => target(case, interior, state),
        StepId::DownTheBeam => down_the_beam(case, state),
        StepId::Steering => steering(case, interior, state),
        StepId::Depth => depth(case, interior, state),
        StepId::Contacts => contacts(state),
        StepId::Contrast => contrast(case, state),
        StepId::Radiation => radiation(case, state),
    };
    Step { id, name: id.name(), weight: id.weight(), score, reasons }
}

/// The true AP is that which was kept last before the first oblique; the oblique and lateral are those kept last.
fn kept_view(case: &Case, interior: &Interior, state: &State, kind: ViewKind) -> Marks {
    let first_oblique = state.kept.iter().position(|k| k.view == ViewKind::Oblique);
    let in_time = match (kind, first_oblique) {
        (ViewKind::TrueAp, Some(oblique)) => &state.kept[..oblique],
        _ => &state.kept[..],
    };
    let last = |kept: &[Kept]| kept.iter().rev().find(|k| k.view == kind).map(|k| k.arm);
    let (arm, late) = match (last(in_time), last(&state.kept)) {
        (Some(arm), _) => (arm, false),
        (None, Some(arm)) => (arm, true),
        (None, None) => return not_yet(Remark::KeepView { view: kind }),
    };
    // What is kept as the oblique is measured as the oblique that the approach wants.
    let asked = case.asked(state.approach);
    let measured = asked.measured(kind);
    let worst = view_score(interior, &asked, kind, &arm);
    let mut reasons = vec![if worst.score >= 1.0 {
        Remark::ViewRight { view: measured }
    } else {
        Remark::ViewOff { criterion: worst.id, finding: worst.finding, advice: worst.advice }
    }];
    if late {
        reasons.push(Remark::KeptLate);
    }
    (Some(if late { 0.5 * worst.score } else { worst.score }), reasons)
}

/// The point of the area's plane that was marked.
pub(super) fn marked_point(case: &Case, interior: &Interior, state: &State) -> Option<DVec3> {
    let Mark { uv, arm } = state.mark?;
    let view = view_of(&arm, case, interior);
    state.area(case, interior)?.meets(view.source, view.ray_through(uv))
}

/// Level and side of the foramen whose area is nearest to a point.
pub(super) fn place_of(interior: &Interior, approach: Approach, p: DVec3) -> Option<(Level, Side)> {
    let nearest = interior.foramina.iter().min_by(|a, b| {
        let to = |f: &&Foramen| f.area(approach).centre().distance(p);
        to(a).total_cmp(&to(b))
    })?;
    Some((nearest.level, nearest.side))
}

fn target(case: &Case, interior: &Interior, state: &State) -> Marks {
    let (Some(Mark { uv, arm }), Some(area)) = (state.mark, state.area(case, interior)) else {
        return not_yet(Remark::MarkOnOblique);
    };
    let view = view_of(&arm, case, interior);
    let ray = view.ray_through(uv);
    let Some(at) = area.meets(view.source, ray) else {
        return (Some(0.0), vec![Remark::MarkAlongPlane]);
    };
    let outside = area.distance_mm(at);
    let mut score = case.needle.mark_mm.score(outside.max(0.0));
    let named = remark::Area::of(case.target.level, state.approach);
    let mut reasons = vec![if outside <= case.needle.mark_mm.full {
        Remark::MarkInside { area: named }
    } else {
        let (along, across) = direction(case, interior, at - area.centre());
        Remark::MarkOutside { mm: outside, area: named, along, across }
    }];
    if state.approach == Approach::Subpedicular && case.target.level != Level::S1 {
        let six = interior.level(case.target.level).side(case.target.side).pedicle.centre;
        let medial =
            -(at - six).dot(interior.level(case.target.level).upper_plate.left) * case.target.side.sign();
        if medial > case.needle.medial_mm.full {
            score = score.min(case.needle.medial_mm.score(medial));
            reasons.push(Remark::MarkMedial { mm: medial });
        }
    }
    // Bone between the skin and the target: the ray from the target towards the receptor.
    if let Some((bone, _)) = interior.tissues.bone_along(at, ray, OPEN_REACH_MM) {
        score *= 0.5;
        reasons.push(Remark::MarkBehindBone { level: interior.tissues.list[bone].level });
    }
    (Some(score), reasons)
}

/// Which way a point lies off: the larger of the two, or both where neither is twice the other.
fn direction(case: &Case, interior: &Interior, off: DVec3) -> (Along, Across) {
    let plate = &interior.level(case.target.level).upper_plate;
    let lateral = off.dot(plate.left) * case.target.side.sign();
    let cranial = off.dot(plate.normal);
    let along = if cranial > 0.0 { Along::High } else { Along::Low };
    let across = if lateral > 0.0 { Across::Lateral } else { Across::Medial };
    if lateral.abs() > 2.0 * cranial.abs() {
        (Along::None, across)
    } else if cranial.abs() > 2.0 * lateral.abs() {
        (along, Across::None)
    } else {
        (along, across)
    }
}

fn down_the_beam(case: &Case, state: &State) -> Marks {
    if state.held.travel_mm < LEAST_TRAVEL_MM {
        return not_yet(Remark::BeamNotYet);
    }
    let mean = state.held.degree_mm / state.held.travel_mm;
    let score = case.needle.coaxial_deg.score(mean);
    let reason = if score >= 1.0 { Remark::BeamHeld { deg: mean } } else { Remark::BeamOff { deg: mean } };
    (Some(score), vec![reason])
}

/// Travel along the beam before it is scored, mm.
const LEAST_TRAVEL_MM: f64 = 5.0;

/// The tip that is scored: where contrast went in last, else where it stands once it is deep.
pub(super) fn final_tip(state: &State) -> Option<DVec3> {
    match state.injected.last() {
        Some(last) => Some(last.bolus.tip),
        None => state.needle.as_ref().filter(|n| n.depth_mm() > DEEP_MM).map(|n| n.tip().position),
    }
}

/// A needle is being steered from this depth on, mm.
pub(super) const DEEP_MM: f64 = 30.0;

fn steering(case: &Case, interior: &Interior, state: &State) -> Marks {
    let (Some(tip), Some(mark)) = (final_tip(state), state.mark) else {
        return not_yet(Remark::SteerNotYet);
    };
    let view = view_of(&mark.arm, case, interior);
    let off = off_mark_mm(&view, mark.uv, tip);
    let distance = libm::hypot(off[0], off[1]);
    let score = case.needle.off_mark_mm.score(distance);
    let mut reasons =
        vec![if score >= 1.0 { Remark::Steered { mm: distance } } else { Remark::Strayed { mm: distance } }];
    // What was decided counts, not how often the hub was turned: drift seen, and the notch turned towards it.
    let all = state.turns.len();
    let blind = state.turns.iter().filter(|t| !t.decided()).count();
    if blind > 0 {
        reasons.push(Remark::TurnedBlind { blind, all });
    }
    let decided = if all == 0 { 1.0 } else { (all - blind) as f64 / all as f64 };
    (Some(score * decided), reasons)
}

/// Where a tip should be, as [low, high] of each reading.
struct Place {
    /// In the foramen, 0 under the upper pedicle to 1.
    height: [f64; 2],
    /// Behind the posterior body line, mm.
    behind_wall_mm: [f64; 2],
    /// Medial of 6 o'clock, mm.
    medial_mm: [f64; 2],
}

/// How far medial of 6 o'clock a tip may be before contrast, mm.
pub(super) fn medial_limit_mm(case: &Case, approach: Approach) -> f64 {
    match (approach, case.target.level) {
        (Approach::Infraneural, level) if level != Level::S1 => INFRANEURAL_MEDIAL_MM,
        _ => 0.0,
    }
}

/// Under the root the place lies further in. Common practice, no source.
const INFRANEURAL_MEDIAL_MM: f64 = 4.0;

/// `border_mm`: from 6 o'clock out to the pedicle's lateral border.
fn place(approach: Approach, border_mm: f64) -> Place {
    match approach {
        Approach::Subpedicular => {
            Place { height: [-0.05, 0.5], behind_wall_mm: [-0.5, 9.0], medial_mm: [-border_mm, 0.0] }
        }
        Approach::Infraneural => Place {
            height: [0.45, 1.05],
            behind_wall_mm: [-0.5, 9.0],
            medial_mm: [-16.0, INFRANEURAL_MEDIAL_MM],
        },
    }
}

fn beyond(value: f64, [low, high]: [f64; 2]) -> f64 {
    (low - value).max(value - high).max(0.0)
}

/// A part of a step's marks and its reason.
type Part = (f64, Remark);

/// Where a tip stands in the best AP and the best lateral view, each with its marks; at S1 in the opening and along the tunnel.
pub(super) fn tip_place(case: &Case, interior: &Interior, state: &State, tip: DVec3) -> [Part; 2] {
    match case.target.level {
        Level::S1 => sacral_place(case, interior, tip),
        _ => foraminal_place(case, interior, state, best_pair(case, interior), tip),
    }
}

/// The best AP and the best lateral view.
fn best_pair(case: &Case, interior: &Interior) -> [Orientation; 2] {
    PROVING.map(|kind| best_view(interior, case.target, kind, &CArm::default()).orientation)
}

/// The views that prove depth.
const PROVING: [ViewKind; 2] = [ViewKind::TrueAp, ViewKind::Lateral];

/// Whether depth has been seen in AP and in lateral.
pub(super) fn depth_seen(case: &Case, interior: &Interior, state: &State) -> [bool; 2] {
    proven(case, state, best_pair(case, interior))
}

/// What the views say about where a tip is.
fn depth(case: &Case, interior: &Interior, state: &State) -> Marks {
    let Some(tip) = final_tip(state) else {
        return not_yet(Remark::DepthNotYet);
    };
    let place = tip_place(case, interior, state, tip);
    let worst = place.iter().fold(1.0, |least, part| f64::min(least, part.0));
    let mut scores: Vec<f64> = place.iter().map(|part| part.0).collect();
    let mut reasons: Vec<Remark> = place.into_iter().map(|part| part.1).collect();
    for (seen, view) in depth_seen(case, interior, state).into_iter().zip(PROVING) {
        scores.push(if seen { 1.0 } else { 0.0 });
        if !seen {
            reasons.push(Remark::Unproven { view });
        }
    }
    let mean = scores.iter().sum::<f64>() / scores.len() as f64;
    // A tip in the wrong place is not made good by having looked.
    (Some(mean.min(worst * 0.5 + 0.5)), reasons)
}

/// Where the tip stands in the first sacral foramen: in the upper lateral part, since the root runs down and out through it, and just past
/// the opening's plane. Common practice, no source.
fn sacral_place(case: &Case, interior: &Interior, tip: DVec3) -> [Part; 2] {
    let side = case.target.side;
    let Some(foramen) = interior.foramen(Level::S1, side) else {
        return [(0.0, Remark::SacralOutside), (0.0, Remark::SacralOutside)];
    };
    let (ring, plate) = (&foramen.ring, &interior.level(Level::S1).upper_plate);
    let outwards = plate.left * side.sign();
    let off = tip - ring.centre;
    let (wide, tall) = (ring.across.length().max(1e-6), ring.up.length().max(1e-6));
    let across = if ring.across.dot(outwards) < 0.0 { -ring.across } else { ring.across } / wide;
    let up = if ring.up.dot(plate.normal) < 0.0 { -ring.up } else { ring.up } / tall;
    let (out, high) = (off.dot(across), off.dot(up));
    // The root's side of the line from the upper medial to the lower lateral border, and the opening's own border.
    let root_side = (-(out / wide + high / tall) * 0.5 * (wide + tall) / std::f64::consts::SQRT_2).max(0.0);
    let beyond_rim = ((libm::hypot(out / wide, high / tall) - 1.0) * 0.5 * (wide + tall)).max(0.0);
    let aside = root_side.max(beyond_rim);
    let full = case.needle.depth_mm.full;
    let place = if aside <= full {
        Remark::SacralUpper
    } else if beyond_rim > root_side {
        Remark::SacralOutside
    } else {
        Remark::SacralLow { mm: aside }
    };
    let normal = foramen.subpedicular.normal();
    let inside_mm = -off.dot(normal);
    let low = -SACRAL_BEHIND_MM;
    let off_depth = beyond(inside_mm, [low, SACRAL_DEEP_MM * interior.scale]);
    let depth = if off_depth <= full {
        Remark::SacralInside
    } else if inside_mm < low {
        Remark::SideShallow { mm: off_depth }
    } else {
        Remark::SacralDeep { mm: off_depth }
    };
    [(case.needle.depth_mm.score(aside), place), (case.needle.depth_mm.score(off_depth), depth)]
}

/// Behind the opening's plane by less than this the tip is at it, mm. Derived: the bevel's own length.
const SACRAL_BEHIND_MM: f64 = 0.5;
/// Past the plane of the posterior opening a tip should not go further, mm at average size: halfway through the bone. Derived.
const SACRAL_DEEP_MM: f64 = 9.0;

/// Where the tip stands in the best AP and in the best lateral view.
fn foraminal_place(
    case: &Case,
    interior: &Interior,
    state: &State,
    best: [Orientation; 2],
    tip: DVec3,
) -> [Part; 2] {
    let (level, side) = (case.target.level, case.target.side);
    let [from_behind, from_side] = best.map(|orientation| {
        let arm = CArm::at_degrees(orientation.oblique_deg, orientation.tilt_deg).unwrap_or_default();
        view_of(&arm, case, interior)
    });
    let landmarks = interior.level(level);
    let pedicle = &landmarks.side(side).pedicle;
    let place = place(state.approach, pedicle.across.dot(landmarks.upper_plate.left).abs());
    let ap = clock(&from_behind, interior, level, side, tip);
    let too_medial = (ap.medial_mm - place.medial_mm[1]).max(0.0);
    let too_lateral = (place.medial_mm[0] - ap.medial_mm).max(0.0);
    let ap_score = case.needle.medial_mm.score(too_medial).min(case.needle.depth_mm.score(too_lateral));
    let ap_reason = if too_medial > case.needle.medial_mm.full {
        Remark::ApMedial { mm: too_medial }
    } else if too_lateral > case.needle.depth_mm.full {
        Remark::ApShort { mm: too_lateral }
    } else {
        Remark::ApAt { hour: ap.hour }
    };
    let side_view = lateral(&from_side, interior, level, side, tip);
    let span = 2.0 * interior.foramen(level, side).map_or(10.0, |f| f.ring.up.length());
    let off_height = beyond(side_view.height, place.height) * span;
    let off_depth = beyond(side_view.behind_wall_mm, place.behind_wall_mm);
    let full = case.needle.depth_mm.full;
    let side_reason = if off_depth > full && side_view.behind_wall_mm < place.behind_wall_mm[0] {
        Remark::SideDeep { mm: side_view.behind_wall_mm.abs() }
    } else if off_depth > full {
        Remark::SideShallow { mm: off_depth }
    } else if off_height > full {
        let along = if side_view.height < place.height[0] { Along::High } else { Along::Low };
        Remark::SideOff { mm: off_height, along }
    } else {
        Remark::SideInside
    };
    [(ap_score, ap_reason), (case.needle.depth_mm.score(off_height.max(off_depth)), side_reason)]
}

/// How near to the best view of its kind a picture must be to prove depth, degrees.
const PROVING_DEG: f64 = 12.0;
/// And how near to the final depth the needle must have been, mm.
const PROVING_MM: f64 = 12.0;

/// Whether an AP and a lateral picture, `best` each, were taken with the needle near its final depth.
fn proven(case: &Case, state: &State, best: [Orientation; 2]) -> [bool; 2] {
    let pictures: Vec<(CArm, f64)> = if case.exposures {
        state.taken.iter().filter_map(|t| t.depth_mm.map(|d| (t.arm, d))).collect()
    } else {
        state.looked.clone()
    };
    let deepest = pictures.iter().map(|p| p.1).fold(0.0, f64::max);
    let end = state.needle.as_ref().map_or(deepest, |n| n.depth_mm());
    let seen = |near: fn(f64) -> f64, best: Orientation| {
        pictures.iter().any(|(arm, depth)| {
            let turn = (arm.oblique.to_degrees() - best.oblique_deg).abs();
            (depth - end).abs() <= PROVING_MM && near(turn) <= PROVING_DEG
        })
    };
    let [ap, lateral] = best;
    // A lateral from the other side is as good.
    [seen(|turn| turn, ap), seen(|turn| turn.min((turn - 180.0).abs()), lateral)]
}

/// What a contact takes off when it is answered by drawing back, and when it is pushed through.
fn cost(kind: ContactKind) -> (f64, f64) {
    match kind {
        ContactKind::Root | ContactKind::Ganglion => (0.4, 1.0),
        ContactKind::Dura => (0.6, 1.0),
        // Cannot be foreseen: drawn back from, it costs nothing.
        ContactKind::Vessel => (0.0, 0.4),
        ContactKind::Disc => (0.4, 0.6),
        ContactKind::Peritoneum => (0.7, 1.0),
        ContactKind::Skin | ContactKind::Fascia | ContactKind::Bone => (0.0, 0.0),
    }
}

/// The view that depth was not proven in, if there is one.
pub(super) fn unproven(case: &Case, interior: &Interior, state: &State) -> Option<ViewKind> {
    let seen = depth_seen(case, interior, state);
    PROVING.into_iter().zip(seen).find_map(|(kind, seen)| (!seen).then_some(kind))
}

/// Pushed on further than this after a contact counts as pushed through, mm.
pub(super) const PUSHED_MM: f64 = 2.0;

fn contacts(state: &State) -> Marks {
    if state.needles == 0 || final_tip(state).is_none() {
        return not_yet(Remark::NothingMetYet);
    }
    let harms: Vec<&Met> = state.met.iter().filter(|m| m.contact.kind.is_harm() && m.shown).collect();
    if harms.is_empty() {
        return (Some(1.0), vec![Remark::NothingMet]);
    }
    let mut score = 1.0;
    let mut reasons = Vec::new();
    for met in harms {
        let (answered, through) = cost(met.contact.kind);
        let pushed = met.pushed_on_mm > PUSHED_MM;
        score -= if pushed { through } else { answered };
        reasons.push(Remark::Harm {
            kind: met.contact.kind,
            level: met.contact.level,
            mm: met.contact.depth_mm,
            pushed_mm: pushed.then_some(met.pushed_on_mm),
        });
    }
    (Some(score.max(0.0)), reasons)
}

fn contrast(case: &Case, state: &State) -> Marks {
    let Some(last) = state.injected.last() else {
        return not_yet(Remark::ContrastNotYet);
    };
    let all = |f: fn(&Injected) -> bool| state.injected.iter().all(f);
    let mut score = 0.0;
    let mut reasons = Vec::new();
    let mut part = |good: bool, weight: f64, bad: Remark| {
        if good {
            score += weight;
        } else {
            reasons.push(bad);
        }
    };
    part(all(|i| i.aspirated), 0.2, Remark::AspirateFirst);
    part(all(|i| i.live), 0.3, Remark::InjectLive);
    let right = matches!(
        last.bolus.compartment,
        Compartment::Perineural { level, side } if level == case.target.level && side == case.target.side
    );
    part(right, 0.3, Remark::WrongPlace);
    let named = all(|i| i.named == Some(i.bolus.compartment.pattern()));
    let unnamed = last.named.is_none();
    part(named, 0.2, if unnamed { Remark::NamePattern } else { Remark::NamedWrongly });
    if reasons.is_empty() {
        reasons.push(Remark::ContrastGood);
    }
    if state.injected.iter().any(|i| i.bolus.compartment.pattern() == Pattern::Intraneural) {
        score = f64::min(score, 0.2);
        reasons.push(Remark::ContrastInRoot);
    }
    (Some(score), reasons)
}

fn radiation(case: &Case, state: &State) -> Marks {
    if !case.exposures {
        return not_yet(Remark::PicturesFree);
    }
    if state.taken.is_empty() {
        return not_yet(Remark::NoExposure);
    }
    let (pictures, beam_s) = spent(state);
    let within = |value: f64, par: u32| {
        let par = f64::from(par.max(1));
        Tolerance { full: par, none: 3.0 * par }.score(value)
    };
    let score = within(f64::from(pictures), case.par.exposures).min(within(beam_s, case.par.beam_s));
    let Par { exposures: par_pictures, beam_s: par_beam_s } = case.par;
    (Some(score), vec![Remark::Spent { pictures, beam_s, par_pictures, par_beam_s }])
}

/// Pictures (a run counts once) and seconds of fluoroscopy.
pub fn spent(state: &State) -> (u32, f64) {
    let pictures = state.taken.iter().filter(|t| !t.goes_on).count() as u32;
    (pictures, state.taken.iter().map(|t| t.beam_s).sum())
}

//! What each step of the procedure is worth, and why, in words that a learner can act on. Everything is computed from the state, the
//! patient's geometry and the lesson's limits.
//!
//! Order and weights of the steps, what is taken off for a contact, where a tip should be and from when on a step counts:
//! common practice, no source.

use super::attempt::{Injected, Kept, Mark, Met, State, view_of};
use super::case::Case;
use crate::anatomy::foramen::Approach;
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Level;
use crate::imaging::c_arm::CArm;
use crate::needle::compartment::{Compartment, Pattern, foraminal};
use crate::needle::contact::ContactKind;
use crate::needle::reading::{OPEN_REACH_MM, clock, lateral, off_mark_mm};
use crate::view::best_view::{Orientation, ViewKind, best_view};
use crate::view::report::view_score;
use crate::view::tolerance::Tolerance;
use glam::DVec3;
use serde::{Deserialize, Serialize};

/// A step of the procedure, or of a lesson.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
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
pub struct Step {
    /// Which.
    pub id: StepId,
    /// In words.
    pub name: &'static str,
    /// Share of the whole when all steps count.
    pub weight: f64,
    /// 0 to 1; `null` while it has not been done or where it does not count.
    pub score: Option<f64>,
    /// Why, one or two sentences.
    pub reason: String,
}

/// All steps and the whole.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Score {
    /// In order.
    pub steps: Vec<Step>,
    /// Weighted mean over the steps that count, 0 to 1; steps not done give nothing.
    pub total: f64,
    /// Whether everything was done.
    pub complete: bool,
}

/// Marks of a step and the reason.
type Marks = (Option<f64>, String);

/// Scores an attempt as it stands.
pub fn score(case: &Case, interior: &Interior, state: &State) -> Score {
    let steps: Vec<Step> = StepId::ALL.into_iter().map(|id| step(case, interior, state, id)).collect();
    let counts = |s: &&Step| s.id != StepId::Radiation || case.exposures;
    let complete = steps.iter().filter(counts).all(|s| s.score.is_some());
    Score { total: weighed(steps.iter().filter(counts)), complete, steps }
}

/// Weighted mean over steps, 0 to 1; a step not done gives nothing.
pub fn weighed<'a>(steps: impl Iterator<Item = &'a Step>) -> f64 {
    let (sum, weight) = steps
        .fold((0.0, 0.0), |(sum, weight), s| (sum + s.weight * s.score.unwrap_or(0.0), weight + s.weight));
    if weight > 0.0 { sum / weight } else { 0.0 }
}

/// One step of an attempt as it stands. Naming parts is the lesson's to score (`super::parts`): here it is never done.
pub fn step(case: &Case, interior: &Interior, state: &State, id: StepId) -> Step {
    let (score, reason) = match id {
        StepId::NameParts => (None, "Name the parts that are asked for.".to_owned()),
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
    Step { id, name: id.name(), weight: id.weight(), score, reason }
}

/// A number of millimetres in words, to a tenth.
fn mm(value: f64) -> String {
    format!("{:.1} mm", value.abs())
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
        (None, None) => return (None, format!("Set up the {} view and keep it.", kind.in_words())),
    };
    // What is kept as the oblique is measured as the oblique that the approach wants.
    let measured = if kind == ViewKind::Oblique { case.oblique(state.approach) } else { kind };
    let worst = view_score(interior, case.target, measured, &arm, &case.views);
    let mut reason = if worst.score >= 1.0 {
        format!("The {} view is right: all its criteria are within their tolerance.", measured.in_words())
    } else {
        format!("{}: {}", worst.name, worst.sentence)
    };
    if late {
        reason.push_str(" It was kept only after the oblique: the true AP comes first.");
    }
    (Some(if late { 0.5 * worst.score } else { worst.score }), reason)
}

fn target(case: &Case, interior: &Interior, state: &State) -> Marks {
    let (Some(Mark { uv, arm }), Some(area)) = (state.mark, state.area(case, interior)) else {
        return (None, "Mark the target on the oblique picture.".to_owned());
    };
    let view = view_of(&arm, case, interior);
    let ray = view.ray_through(uv);
    let Some(at) = area.meets(view.source, ray) else {
        return (
            Some(0.0),
            "The picture runs along the plane of the target: mark it on the oblique view.".to_owned(),
        );
    };
    let outside = area.distance_mm(at);
    let mut score = case.needle.mark_mm.score(outside.max(0.0));
    let place = place_name(case, state);
    let mut reason = if outside <= case.needle.mark_mm.full {
        format!("The mark lies in the {place}.")
    } else {
        format!(
            "The mark lies {} outside the {place}; {}.",
            mm(outside),
            direction(case, interior, at - area.centre())
        )
    };
    if state.approach == Approach::Subpedicular && case.target.level != Level::S1 {
        let six = interior.level(case.target.level).side(case.target.side).pedicle.centre;
        let medial =
            -(at - six).dot(interior.level(case.target.level).upper_plate.left) * case.target.side.sign();
        if medial > case.needle.medial_mm.full {
            score = score.min(case.needle.medial_mm.score(medial));
            reason.push_str(&format!(" It is {} medial of the pedicle's 6 o'clock.", mm(medial)));
        }
    }
    // Bone between the skin and the target: the ray from the target towards the receptor.
    if let Some((bone, _)) = interior.tissues.bone_along(at, ray, OPEN_REACH_MM) {
        let tissue = &interior.tissues.list[bone];
        let level = tissue.level.map_or("bone", Level::name);
        score *= 0.5;
        reason.push_str(&format!(" Bone of {level} stands in the way of a needle down this beam."));
    }
    (Some(score), reason)
}

fn place_name(case: &Case, state: &State) -> &'static str {
    match (case.target.level, state.approach) {
        (Level::S1, _) => "opening of the first sacral foramen",
        (_, Approach::Subpedicular) => "triangle under the pedicle",
        (_, Approach::Infraneural) => "triangle under the root",
    }
}

/// Which way a point lies off, in words: medial or lateral, cranial or caudal.
fn direction(case: &Case, interior: &Interior, off: DVec3) -> String {
    let plate = &interior.level(case.target.level).upper_plate;
    let lateral = off.dot(plate.left) * case.target.side.sign();
    let cranial = off.dot(plate.normal);
    let across = if lateral > 0.0 { "lateral" } else { "medial" };
    let along = if cranial > 0.0 { "high" } else { "low" };
    if lateral.abs() > 2.0 * cranial.abs() {
        format!("it is too far {across}")
    } else if cranial.abs() > 2.0 * lateral.abs() {
        format!("it is too {along}")
    } else {
        format!("it is too {along} and too far {across}")
    }
}

fn down_the_beam(case: &Case, state: &State) -> Marks {
    if state.held.travel_mm < LEAST_TRAVEL_MM {
        return (None, "Put the hub over the tip until the needle is a dot, then advance.".to_owned());
    }
    let mean = state.held.degree_mm / state.held.travel_mm;
    let score = case.needle.coaxial_deg.score(mean);
    let reason = if score >= 1.0 {
        format!("The needle was held down the beam: {mean:.1} degrees off on the mean.")
    } else {
        format!(
            "The needle stood {mean:.1} degrees off the beam on the mean: put the hub over the tip while it is shallow."
        )
    };
    (Some(score), reason)
}

/// Travel along the beam before it is scored, mm.
const LEAST_TRAVEL_MM: f64 = 5.0;

/// The tip that is scored: where contrast went in last, else where it stands once it is deep.
fn final_tip(state: &State) -> Option<DVec3> {
    match state.injected.last() {
        Some(last) => Some(last.bolus.tip),
        None => state.needle.as_ref().filter(|n| n.depth_mm() > DEEP_MM).map(|n| n.tip().position),
    }
}

/// A needle is being steered from this depth on, mm.
const DEEP_MM: f64 = 30.0;

fn steering(case: &Case, interior: &Interior, state: &State) -> Marks {
    let (Some(tip), Some(mark)) = (final_tip(state), state.mark) else {
        return (None, "Steer the tip onto the mark.".to_owned());
    };
    let view = view_of(&mark.arm, case, interior);
    let off = off_mark_mm(&view, mark.uv, tip);
    let distance = libm::hypot(off[0], off[1]);
    let score = case.needle.off_mark_mm.score(distance);
    let reason = if score >= 1.0 {
        format!("The tip ended {} from the mark.", mm(distance))
    } else {
        format!(
            "The tip ended {} from the mark: turn the notch towards the side it has strayed to, since it drifts away from the notch.",
            mm(distance)
        )
    };
    (Some(score), reason)
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

fn place(approach: Approach) -> Place {
    match approach {
        Approach::Subpedicular => {
            Place { height: [-0.05, 0.5], behind_wall_mm: [-0.5, 9.0], medial_mm: [-14.0, 0.0] }
        }
        Approach::Infraneural => {
            Place { height: [0.45, 1.05], behind_wall_mm: [-0.5, 9.0], medial_mm: [-16.0, 4.0] }
        }
    }
}

fn beyond(value: f64, [low, high]: [f64; 2]) -> f64 {
    (low - value).max(value - high).max(0.0)
}

/// A part of a step's marks and its reason.
type Part = (f64, String);

/// What the views say about where a tip is.
fn depth(case: &Case, interior: &Interior, state: &State) -> Marks {
    let Some(tip) = final_tip(state) else {
        return (None, "Bring the tip into the foramen, and prove it in AP and lateral.".to_owned());
    };
    let best = [ViewKind::TrueAp, ViewKind::Lateral]
        .map(|kind| best_view(interior, case.target, kind, &CArm::default()).orientation);
    let place = match case.target.level {
        Level::S1 => vec![sacral_place(case, interior, tip)],
        _ => foraminal_place(case, interior, state, best, tip).to_vec(),
    };
    let worst = place.iter().fold(1.0, |least, part| f64::min(least, part.0));
    let mut scores: Vec<f64> = place.iter().map(|part| part.0).collect();
    let mut reasons: Vec<String> = place.into_iter().map(|part| part.1).collect();
    for (seen, what) in proven(case, state, best).into_iter().zip(["an AP", "a lateral"]) {
        scores.push(if seen { 1.0 } else { 0.0 });
        if !seen {
            reasons.push(format!("The depth was not proven in {what} view with the needle in place."));
        }
    }
    let mean = scores.iter().sum::<f64>() / scores.len() as f64;
    // A tip in the wrong place is not made good by having looked.
    (Some(mean.min(worst * 0.5 + 0.5)), reasons.join(" "))
}

/// Whether the tip lies in the sacral foramen.
fn sacral_place(case: &Case, interior: &Interior, tip: DVec3) -> Part {
    if foraminal(interior, tip) == Some((Level::S1, case.target.side)) {
        (1.0, "The tip lies in the first sacral foramen.".to_owned())
    } else {
        (0.0, "The tip does not lie in the first sacral foramen.".to_owned())
    }
}

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
    let place = place(state.approach);
    let ap = clock(&from_behind, interior, level, side, tip);
    let too_medial = (ap.medial_mm - place.medial_mm[1]).max(0.0);
    let too_lateral = (place.medial_mm[0] - ap.medial_mm).max(0.0);
    let ap_score = case.needle.medial_mm.score(too_medial).min(case.needle.depth_mm.score(too_lateral));
    let ap_reason = if too_medial > case.needle.medial_mm.full {
        format!("In AP the tip is {} medial of where it may be before contrast.", mm(too_medial))
    } else if too_lateral > case.needle.depth_mm.full {
        format!("In AP the tip is {} short of the foramen.", mm(too_lateral))
    } else {
        format!("In AP the tip stands at {}.", hour(ap.hour))
    };
    let side_view = lateral(&from_side, interior, level, side, tip);
    let span = 2.0 * interior.foramen(level, side).map_or(10.0, |f| f.ring.up.length());
    let off_height = beyond(side_view.height, place.height) * span;
    let off_depth = beyond(side_view.behind_wall_mm, place.behind_wall_mm);
    let full = case.needle.depth_mm.full;
    let side_reason = if off_depth > full && side_view.behind_wall_mm < place.behind_wall_mm[0] {
        let deep = mm(side_view.behind_wall_mm);
        format!("In the lateral view it is {deep} in front of the posterior body line: too deep.")
    } else if off_depth > full {
        format!("In the lateral view it is {} short of the foramen: not deep enough.", mm(off_depth))
    } else if off_height > full {
        let way = if side_view.height < place.height[0] { "high" } else { "low" };
        format!("In the lateral view it is {} too {way} in the foramen.", mm(off_height))
    } else {
        "In the lateral view it lies in its part of the foramen.".to_owned()
    };
    [(ap_score, ap_reason), (case.needle.depth_mm.score(off_height.max(off_depth)), side_reason)]
}

/// Nearest half hour, such as `6 o'clock` or `half past 6`.
fn hour(hour: f64) -> String {
    let halves = libm::round(hour * 2.0) as u32;
    let whole = if halves / 2 == 0 { 12 } else { halves / 2 };
    if halves % 2 == 1 { format!("half past {whole}") } else { format!("{whole} o'clock") }
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

/// Pushed on further than this after a contact counts as pushed through, mm.
const PUSHED_MM: f64 = 2.0;

fn contacts(state: &State) -> Marks {
    if state.needles == 0 || final_tip(state).is_none() {
        return (None, "Nothing has been met yet.".to_owned());
    }
    let harms: Vec<&Met> = state.met.iter().filter(|m| m.contact.kind.is_harm()).collect();
    if harms.is_empty() {
        return (Some(1.0), "The needle met nothing that it should not have.".to_owned());
    }
    let mut score = 1.0;
    let mut reasons = Vec::new();
    for met in harms {
        let (answered, through) = cost(met.contact.kind);
        let pushed = met.pushed_on_mm > PUSHED_MM;
        score -= if pushed { through } else { answered };
        let level = met.contact.level.map_or(String::new(), |l| format!(" of {l}"));
        reasons.push(format!(
            "{}{level} at {:.0} mm: {}{}.",
            contact_name(met.contact.kind),
            met.contact.depth_mm,
            met.contact.kind.sign(),
            if pushed { format!(", and pushed on {}", mm(met.pushed_on_mm)) } else { String::new() }
        ));
    }
    (Some(score.max(0.0)), reasons.join(" "))
}

fn contact_name(kind: ContactKind) -> &'static str {
    match kind {
        ContactKind::Skin => "Skin",
        ContactKind::Fascia => "Fascia",
        ContactKind::Bone => "Bone",
        ContactKind::Disc => "Disc",
        ContactKind::Dura => "Dura",
        ContactKind::Root => "Root",
        ContactKind::Ganglion => "Ganglion",
        ContactKind::Vessel => "Vessel",
        ContactKind::Peritoneum => "Peritoneum",
    }
}

fn contrast(case: &Case, state: &State) -> Marks {
    let Some(last) = state.injected.last() else {
        return (None, "Inject contrast under live imaging before anything else.".to_owned());
    };
    let all = |f: fn(&Injected) -> bool| state.injected.iter().all(f);
    let mut score = 0.0;
    let mut reasons = Vec::new();
    let mut part = |good: bool, weight: f64, bad: &str| {
        if good {
            score += weight;
        } else {
            reasons.push(bad.to_owned());
        }
    };
    part(all(|i| i.aspirated), 0.2, "Aspirate before each injection.");
    part(all(|i| i.live), 0.3, "Inject under live imaging: a vessel shows only while it flows.");
    let right = matches!(
        last.bolus.compartment,
        Compartment::Perineural { level, side } if level == case.target.level && side == case.target.side
    );
    part(right, 0.3, "The last contrast went to the wrong place: reposition before anything else goes in.");
    let named = all(|i| i.named == Some(i.bolus.compartment.pattern()));
    let unnamed = last.named.is_none();
    part(named, 0.2, if unnamed { "Name the pattern that you see." } else { "A pattern was named wrongly." });
    if reasons.is_empty() {
        reasons.push("Aspirated, injected live, along the right root, and named as what it is.".to_owned());
    }
    if state.injected.iter().any(|i| i.bolus.compartment.pattern() == Pattern::Intraneural) {
        score = f64::min(score, 0.2);
        reasons.push("Contrast went into the root itself: stop on pain.".to_owned());
    }
    (Some(score), reasons.join(" "))
}

fn radiation(case: &Case, state: &State) -> Marks {
    if !case.exposures {
        return (None, "Pictures are free here; with exposures on they are counted.".to_owned());
    }
    if state.taken.is_empty() {
        return (None, "No exposure yet.".to_owned());
    }
    let (pictures, beam_s) = spent(state);
    let within = |value: f64, par: u32| {
        let par = f64::from(par.max(1));
        Tolerance { full: par, none: 3.0 * par }.score(value)
    };
    let score = within(f64::from(pictures), case.par.exposures).min(within(beam_s, case.par.beam_s));
    let reason = format!(
        "{pictures} exposures and {beam_s:.1} s of fluoroscopy; par is {} and {} s.",
        case.par.exposures, case.par.beam_s
    );
    (Some(score), reason)
}

/// Pictures (a run counts once) and seconds of fluoroscopy.
pub fn spent(state: &State) -> (u32, f64) {
    let pictures = state.taken.iter().filter(|t| !t.goes_on).count() as u32;
    (pictures, state.taken.iter().map(|t| t.beam_s).sum())
}

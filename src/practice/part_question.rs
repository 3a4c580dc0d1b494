//! Which part is this? A dot on the film; what lies under it is asked of the bones' own fields along the ray.
//!
//! The true part lies under the dot and under a circle of [`WELL_INSIDE_MM`] about it; no other part that is offered lies under any ray
//! within [`LEAST_MM`] of it, in front or behind. So a pedicle is never offered beside the body that it stands before.

use super::draft::{Draft, Setting, between, one_of, shuffle};
use super::question::{Asked, Choice, Margin};
use super::view_question::{best, moved, view_at};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Label, Level, Part, Side};
use crate::anatomy::seeded::Numbers;
use crate::imaging::projection::Projection;
use crate::procedure::pointing::bone_part;
use crate::view::best_view::ViewKind;
use crate::view::criteria::Target;
use glam::{DVec2, DVec3};

/// Circle under which the true part must lie, mm at the patient.
pub const WELL_INSIDE_MM: f64 = 1.2;
/// Circle within which no other part that is offered may lie, mm at the patient.
pub const LEAST_MM: f64 = 3.0;
/// Rays of a circle.
const RAYS: u32 = 8;
/// How far before and behind the vertebra a ray is followed, mm.
const REACH_MM: f64 = 75.0;
/// Step inside bone, mm.
const STEP_MM: f64 = 0.6;

/// A place on a bone that can be pointed at.
type Place = (Part, Level, Option<Side>, DVec3);

/// The places of a target: its dog, its spinous process, and the ear of the level below; at S1 those of the sacrum and the dog of L5 over it.
fn places(interior: &Interior, target: Target) -> Vec<Place> {
    if target.level == Level::S1 {
        let mut list = sacral_places(interior, target.side);
        list.extend(lumbar_places(interior, Target { level: Level::L5, ..target }));
        return list;
    }
    let mut list = lumbar_places(interior, target);
    if let Some(below) = target.level.below() {
        let b = interior.level(below).side(target.side);
        let at = b.superior_process_tip.lerp(b.superior_facet, 0.4);
        list.push((Part::SuperiorArticularProcess, below, Some(target.side), at));
    }
    list
}

/// Out from the S1 pedicle to the middle of the ala, mm at average size. A choice, no source: what lies under the dot is found on the bone.
const ALA_OUT_MM: f64 = 18.0;

/// The sacrum's own parts. Its pedicle is no part of its own: it melts into body and ala.
fn sacral_places(interior: &Interior, side: Side) -> Vec<Place> {
    let own = interior.level(Level::S1);
    let s = own.side(side);
    let out = own.upper_plate.left * (side.sign() * ALA_OUT_MM * interior.scale);
    vec![
        (
            Part::SuperiorArticularProcess,
            Level::S1,
            Some(side),
            s.superior_process_tip.lerp(s.superior_facet, 0.4),
        ),
        (Part::Ala, Level::S1, Some(side), s.pedicle.centre + out),
        (Part::MedianCrest, Level::S1, None, own.spinous_tip.lerp(own.posterior_wall, 0.15)),
    ]
}

/// The parts of a lumbar vertebra.
fn lumbar_places(interior: &Interior, target: Target) -> Vec<Place> {
    let (own, side) = (interior.level(target.level), target.side);
    let s = own.side(side);
    let mut list: Vec<Place> = vec![
        (Part::Pedicle, target.level, Some(side), s.pedicle.centre),
        (
            Part::SuperiorArticularProcess,
            target.level,
            Some(side),
            s.superior_process_tip.lerp(s.superior_facet, 0.4),
        ),
        (Part::SpinousProcess, target.level, None, own.spinous_tip.lerp(own.posterior_wall, 0.15)),
    ];
    let others = [
        (Part::TransverseProcess, s.transverse_tip.map(|tip| tip.lerp(s.pedicle.centre, 0.3))),
        (Part::Pars, s.pars),
        (Part::Lamina, s.lamina),
        (
            Part::InferiorArticularProcess,
            s.inferior_process_tip.map(|tip| tip.lerp(s.lamina.unwrap_or(tip), 0.25)),
        ),
    ];
    list.extend(others.into_iter().filter_map(|(part, at)| Some((part, target.level, Some(side), at?))));
    list
}

/// How a point inside bone is recognised.
#[derive(Clone, Copy, PartialEq)]
enum By {
    /// The part whose surface is nearest: what the outline shows.
    Surface,
    /// Every part that reaches there, under others too.
    Body,
}

/// What a ray runs through, its labels by their bones' own names.
fn along(interior: &Interior, view: &Projection, uv: DVec2, around: DVec3, by: By) -> Vec<Label> {
    let ray = view.ray_through(uv);
    let middle = (around - view.source).dot(ray);
    let mut found = Vec::new();
    let mut t = middle - REACH_MM;
    while t < middle + REACH_MM {
        let p = view.source + ray * t;
        let (bone, distance) = interior.tissues().nearest_bone(p, 20.0);
        if distance >= 0.0 {
            t += distance.max(STEP_MM);
            continue;
        }
        t += STEP_MM;
        let tissue = &interior.tissues().list[bone];
        let Some(level) = tissue.level else { continue };
        let mut note = |(part, side)| {
            let label = bone_part(Label { level, part, side });
            if !found.contains(&label) {
                found.push(label);
            }
        };
        match by {
            By::Surface => tissue.part_at(p).into_iter().for_each(&mut note),
            By::Body => tissue.parts_holding(p).for_each(&mut note),
        }
    }
    found
}

/// The centre and the rays of a circle, radius in mm at `around`.
fn circle(view: &Projection, uv: DVec2, around: DVec3, radius_mm: f64) -> impl Iterator<Item = DVec2> {
    let radius = radius_mm * view.magnification_at(around);
    (0..RAYS).map(move |i| {
        let (s, c) = libm::sincos(f64::from(i) / f64::from(RAYS) * std::f64::consts::TAU);
        uv + DVec2::new(c, s) * radius
    })
}

/// Which part is this?
pub(super) fn part(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let kind = one_of(numbers, &[ViewKind::TrueAp, ViewKind::Oblique, ViewKind::Oblique]);
    let aim = best(setting, kind)?;
    let view_angles = moved(aim, between(numbers, [-4.0, 4.0]), between(numbers, [-4.0, 4.0]))?;
    let view = view_at(setting, view_angles);
    let interior = setting.interior;
    let list = places(interior, setting.target);
    let (part, level, side, at) = one_of(numbers, &list);
    let uv = view.project(at);
    let is =
        |label: &Label| label.part == part && label.level == level && (side.is_none() || label.side == side);
    let inside = std::iter::once(uv)
        .chain(circle(&view, uv, at, WELL_INSIDE_MM))
        .all(|uv| along(interior, &view, uv, at, By::Surface).iter().any(is));
    if !inside {
        return None;
    }
    let mut under = along(interior, &view, uv, at, By::Body);
    for radius in [0.5 * LEAST_MM, LEAST_MM] {
        for uv in circle(&view, uv, at, radius) {
            under.extend(along(interior, &view, uv, at, By::Body));
        }
    }
    let is_under = |labels: &[Label], part: Part, level: Level| {
        labels.iter().any(|l| l.part == part && l.level == level)
    };
    let mut others: Vec<(Part, Level)> = list
        .iter()
        .map(|&(p, l, ..)| (p, l))
        .chain([(Part::Body, setting.target.level)])
        .filter(|&(p, l)| (p, l) != (part, level) && !is_under(&under, p, l))
        .collect();
    if others.len() < 3 {
        return None;
    }
    shuffle(numbers, &mut others);
    others.truncate(3);
    // How far out nothing that is offered comes under the circle, up to twice the least.
    let mut has = LEAST_MM;
    while has < 2.0 * LEAST_MM
        && circle(&view, uv, at, has + 1.0).all(|uv| {
            along(interior, &view, uv, at, By::Body).iter().all(|l| !others.contains(&(l.part, l.level)))
        })
    {
        has += 1.0;
    }
    let margin = Margin { has, least: LEAST_MM, unit: "mm" };
    let mut draft = Draft::new(view_angles, Asked::Part, margin);
    draft.dot_mm = Some(uv.to_array());
    let right = Choice::Part { part, level };
    let mut choices: Vec<Choice> =
        others.into_iter().map(|(part, level)| Choice::Part { part, level }).collect();
    choices.push(right);
    shuffle(numbers, &mut choices);
    draft.answered(choices, right)
}

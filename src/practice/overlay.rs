//! What is drawn over a question's film: before the answer what the question points at, after it the reason. Detector, mm, v up; a point is a
//! line of one.

use super::question::{Asked, Choice, Question, arm_at};
use crate::anatomy::interior::Interior;
use crate::anatomy::landmarks::{Plate, Ring};
use crate::anatomy::names::{Label, Level};
use crate::anatomy::patient::Patient;
use crate::imaging::outline::OutlineTracer;
use crate::imaging::projection::Projection;
use crate::procedure::pointing::bone_part;
use crate::view::best_view::{Orientation, ViewKind};
use crate::view::criteria::{facet_place, process_at_mid_plate_percent};
use glam::{DVec2, DVec3};
use serde::Serialize;

/// What a line stands for; how it looks is the page's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum What {
    /// What the question points at.
    Dot,
    /// The hub as one looks down on it, with the notch: from the hub's middle outwards.
    Notch,
    /// The ring of the target's pedicle.
    Pedicle,
    /// From the pedicle's centre to its 6 o'clock and on.
    Six,
    /// Front rim of the upper end plate.
    FrontRim,
    /// Its back rim.
    BackRim,
    /// From the middle of the pedicles to the spinous tip.
    Spinous,
    /// Outline of the articular process below, where it is held against the pedicle.
    Process,
    /// The tip.
    Tip,
    /// From where the tip would have gone straight to where it went.
    Went,
    /// The two pedicles of a lateral view.
    Pair,
    /// An opening of the first sacral foramen.
    Opening,
    /// Outline of the part that was asked for.
    Part,
}

/// A line over the film.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Mark {
    /// What it stands for.
    pub what: What,
    /// Points, mm.
    pub line: Vec<[f64; 2]>,
}

/// The outlines of the part that was asked for; nothing for other questions.
pub fn asked_part(question: &Question, patient: &Patient, at: Orientation) -> Vec<Mark> {
    let Choice::Part { part, level } = question.right() else { return Vec::new() };
    let side = question.target.side;
    let is = |label: Label| {
        let label = bone_part(label);
        (label.part, label.level) == (part, level) && label.side.is_none_or(|own| own == side)
    };
    let view = Projection::new(&arm_at(at), patient.level(question.target.level).centre);
    let lines = OutlineTracer::default().trace(patient, &view);
    let line = |points: Vec<[f32; 2]>| points.into_iter().map(|p| p.map(f64::from)).collect();
    lines
        .into_iter()
        .filter(|o| is(o.label))
        .map(|o| Mark { what: What::Part, line: line(o.points) })
        .collect()
}

/// Points of a ring.
const RING_POINTS: u32 = 48;
/// Length of the notch's line on the detector, mm.
const NOTCH_MM: f64 = 9.0;

fn ring(view: &Projection, ring: &Ring) -> Vec<[f64; 2]> {
    (0..=RING_POINTS)
        .map(|i| f64::from(i) / f64::from(RING_POINTS) * std::f64::consts::TAU)
        .map(|angle| view.project(ring.point(angle)).to_array())
        .collect()
}

/// Half of a plate's rim: `sign` 1 the back one, -1 the front one.
fn rim(view: &Projection, plate: &Plate, sign: f64) -> Vec<[f64; 2]> {
    (0..=RING_POINTS / 2)
        .map(|i| f64::from(i) / f64::from(RING_POINTS / 2) * std::f64::consts::PI)
        .map(|angle| {
            let (s, c) = libm::sincos(angle);
            let p = plate.centre
                + plate.left * (plate.half_width * c)
                + plate.back * (sign * plate.half_depth * s);
            view.project(p).to_array()
        })
        .collect()
}

/// The lines of a film at an orientation, before or after the answer.
pub fn marks(question: &Question, interior: &Interior, at: Orientation, answered: bool) -> Vec<Mark> {
    let view = Projection::new(&arm_at(at), interior.level(question.target.level).centre);
    let mut list = Vec::new();
    // Where it was pointed belongs to the film that it was pointed on.
    if let Some(dot) = question.dot_mm
        && at == question.view
    {
        list.push(Mark { what: What::Dot, line: vec![dot] });
    }
    // As the notch stands, and after the answer as it must stand.
    let asks_notch = matches!(question.asked, Asked::NotchAhead { .. } | Asked::NotchWanted { .. });
    let turned = question.needle_after.as_ref().filter(|_| answered).or(question.needle.as_ref());
    if let Some(needle) = turned.filter(|_| asks_notch) {
        let hub = view.project(needle.hub());
        let notch = needle.notch_at_hub();
        let way = DVec2::new(notch.dot(view.right), notch.dot(view.up)).normalize_or(DVec2::Y);
        list.push(Mark { what: What::Notch, line: vec![hub.to_array(), (hub + way * NOTCH_MM).to_array()] });
    }
    if answered {
        reason(question, interior, &view, &mut list);
    }
    list
}

fn reason(question: &Question, interior: &Interior, view: &Projection, list: &mut Vec<Mark>) {
    let target = question.target;
    let level = interior.level(target.level);
    let pedicle = level.side(target.side).pedicle;
    let mut add = |what, line| list.push(Mark { what, line });
    let point = |p: DVec3| vec![view.project(p).to_array()];
    let wanted = match question.asked {
        Asked::Way { wanted } | Asked::Amount { wanted, .. } => Some(wanted),
        Asked::TrueAp => Some(ViewKind::TrueAp),
        Asked::Step => [ViewKind::TrueAp, ViewKind::Oblique, ViewKind::Lateral]
            .into_iter()
            .find(|kind| matches!(question.right(), Choice::View { view } if view == *kind))
            .or(Some(ViewKind::Oblique)),
        _ => None,
    };
    if let Some(wanted) = wanted {
        let below = target.level.below().filter(|_| wanted == ViewKind::SteepOblique);
        let plate = &below.map_or(level, |below| interior.level(below)).upper_plate;
        add(What::FrontRim, rim(view, plate, -1.0));
        add(What::BackRim, rim(view, plate, 1.0));
        match wanted {
            ViewKind::TrueAp => {
                let middle = level.sides.iter().map(|s| s.pedicle.centre).sum::<DVec3>() / 2.0;
                level.sides.iter().for_each(|s| add(What::Pedicle, ring(view, &s.pedicle)));
                add(
                    What::Spinous,
                    vec![view.project(middle).to_array(), view.project(level.spinous_tip).to_array()],
                );
            }
            ViewKind::Lateral => level.sides.iter().for_each(|s| add(What::Pair, ring(view, &s.pedicle))),
            ViewKind::SteepOblique => {
                if let Some(percent) = process_at_mid_plate_percent(view, interior, target) {
                    // From the middle of the plate to the middle of the process.
                    let aside = plate.left * (plate.half_width * percent / 100.0);
                    let ends = [plate.centre, plate.centre + aside].map(|p| view.project(p).to_array());
                    add(What::Process, ends.to_vec());
                }
            }
            ViewKind::Oblique if target.level == Level::S1 => {
                let side = level.side(target.side);
                for opening in [side.anterior_foramen, side.posterior_foramen].into_iter().flatten() {
                    add(What::Opening, ring(view, &opening));
                }
            }
            ViewKind::Oblique => {
                add(What::Pedicle, ring(view, &pedicle));
                if let Some(place) = facet_place(view, interior, target) {
                    add(What::Process, place.ends_mm.map(|end| end.to_array()).to_vec());
                }
            }
        }
    }
    // At S1 the pedicle's clock decides nothing.
    if matches!(question.asked, Asked::Clock | Asked::Stop { .. }) && target.level != Level::S1 {
        add(What::Pedicle, ring(view, &pedicle));
        let six = view.project(pedicle.centre - pedicle.up);
        let centre = view.project(pedicle.centre);
        add(What::Six, vec![centre.to_array(), (centre + (six - centre) * 2.4).to_array()]);
    }
    if let Some(needle) = &question.needle
        && !matches!(question.asked, Asked::NotchAhead { .. } | Asked::NotchWanted { .. })
    {
        add(What::Tip, point(needle.tip().position));
    }
    if let (Some(before), Some(after)) = (&question.needle, &question.needle_after) {
        let straight = before.tip().position + before.tip().axis() * (after.depth_mm() - before.depth_mm());
        add(
            What::Went,
            vec![view.project(straight).to_array(), view.project(after.tip().position).to_array()],
        );
        add(What::Tip, point(after.tip().position));
    }
}

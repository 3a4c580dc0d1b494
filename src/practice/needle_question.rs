//! Questions about the needle. Truth: the tip's reading in the AP film ([`reading::clock`]), and where the needle goes when it is pushed on as
//! it stands ([`Needle::advance`]).
//!
//! Margins: *clock*: the reading is nearer to its hour than to any other that is offered by at least 1.3 hours, so within 21 minutes of it. *notch*: the tip goes within 25
//! degrees of the direction, where the next begins at 45, and at least a millimetre. A choice, no source.
//!
//! The clock is not asked of a tip under the root: 20 mm and more below the pedicle's centre (a test below) it is off the clock's
//! reach, and five millimetres aside are half an hour, so that every place there reads about 6. At S1: see [`super::kind::Kind::levels`].

use super::draft::{Draft, Setting, between, one_of, sign};
use super::question::{Asked, Choice, Fact, Margin, OnScreen};
use super::view_question::{best, moved, view_at};
use crate::anatomy::foramen::Approach;
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Level;
use crate::anatomy::seeded::Numbers;
use crate::imaging::projection::Projection;
use crate::needle::contact::ContactKind;
use crate::needle::device::{Device, Gauge, Medium};
use crate::needle::reading;
use crate::needle::shaft::Needle;
use crate::view::best_view::ViewKind;
use crate::view::report::AskedView;
use glam::{DVec2, DVec3};

/// Least difference of an hour to the next that is offered, hours.
const CLOCK_LEAST_H: f64 = 1.3;
/// A tip nearer to the pedicle's centre, or further from it, has no place on its clock, mm.
const CLOCK_REACH_MM: [f64; 2] = [4.0, 20.0];
/// Most between where the tip goes and the direction that it is said to go, degrees.
const NOTCH_MOST_DEG: f64 = 25.0;
/// Least drift, mm.
const DRIFT_LEAST_MM: f64 = 1.0;
/// How far the needle is pushed on, mm.
const AHEAD_MM: f64 = 28.0;

/// A needle along the ray through a point, `short_mm` short of it, spun so that it goes straight.
pub(super) fn down_the_beam(
    interior: &Interior,
    view: &Projection,
    aim: DVec3,
    short_mm: f64,
) -> Option<Needle> {
    let ray = view.ray_to(aim);
    let [_, leaves] = interior.trunk.skin.crossings_mm(view.source, ray)?;
    let entry = view.source + ray * leaves;
    let depth = entry.distance(aim) - short_mm;
    let length_mm = if depth > 75.0 { 127 } else { 90 };
    if !(5.0..f64::from(length_mm) - 3.0).contains(&depth) {
        return None;
    }
    let mut needle = Needle::at_skin(Device { gauge: Gauge::G22, length_mm }, entry, -ray);
    needle.advance(interior, Medium::Muscle, depth, 1.0);
    Some(needle)
}

/// The nearest of the four directions, and how far off it a direction [right, up] is, degrees.
pub(super) fn nearest_way(direction: DVec2) -> (OnScreen, f64) {
    let degrees = libm::atan2(direction.x, direction.y).to_degrees();
    let quarter = libm::round(degrees / 90.0);
    let off = (degrees - 90.0 * quarter).abs();
    (OnScreen::ALL[(quarter as i64).rem_euclid(4) as usize], off)
}

/// Unit vector [right, up] of a direction.
pub(super) fn unit(to: OnScreen) -> DVec2 {
    match to {
        OnScreen::Head => DVec2::Y,
        OnScreen::PatientsRight => DVec2::X,
        OnScreen::Feet => DVec2::NEG_Y,
        OnScreen::PatientsLeft => DVec2::NEG_X,
    }
}

/// Where is the tip by the clock?
pub(super) fn clock(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let (interior, target) = (setting.interior, setting.target);
    let (ap, oblique) = (best(setting, ViewKind::TrueAp)?, best(setting, ViewKind::Oblique)?);
    let view_angles = moved(ap, between(numbers, [-0.6, 0.6]), between(numbers, [-1.5, 1.5]))?;
    let level = interior.level(target.level);
    let plate = &level.upper_plate;
    let out = plate.left * target.side.sign();
    // From lateral over 6 o'clock to a little medial of it.
    let (s, c) = libm::sincos(between(numbers, [-20.0, 125.0]).to_radians());
    let radius = between(numbers, [6.0, 14.0]);
    let pedicle = level.side(target.side).pedicle.centre;
    let aim = pedicle + out * (c * radius) - plate.normal * (s * radius)
        + plate.back * between(numbers, [-3.0, 4.0]);
    let needle = down_the_beam(interior, &view_at(setting, oblique), aim, 0.0)?;
    let view = view_at(setting, view_angles);
    let tip = needle.tip().position;
    let read = reading::clock(&view, interior, target.level, target.side, tip);
    let off = (view.project(tip) - view.project(pedicle)) / view.magnification_at(pedicle);
    if !(CLOCK_REACH_MM[0]..CLOCK_REACH_MM[1]).contains(&off.length()) {
        return None;
    }
    let hour = libm::round(read.hour);
    // Two hours apart, the right one at any place among the four.
    let first = hour - 2.0 * libm::floor(4.0 * numbers.unit());
    let on_face = |h: f64| {
        let h = (h as i64).rem_euclid(12) as u32;
        if h == 0 { 12 } else { h }
    };
    let choices: Vec<Choice> =
        (0..4).map(|i| Choice::Hour { hour: on_face(first + 2.0 * f64::from(i)) }).collect();
    let own = (read.hour - hour).abs();
    let margin = Margin { has: (2.0 - own) - own, least: CLOCK_LEAST_H, unit: "hours" };
    let mut draft = Draft::new(view_angles, Asked::Clock, margin);
    draft.needle = Some(needle);
    let lateral_mm = -read.medial_mm;
    let below_mm = -off.dot(crate::view::image_axes::image_axes(&view, plate).cranial);
    draft.seen = vec![Fact::Tip { lateral_mm, below_mm }];
    draft.reason = vec![Fact::Hour { hour: read.hour }, Fact::Tip { lateral_mm, below_mm }];
    draft.answered(choices, Choice::Hour { hour: on_face(hour) })
}

/// Turns the hub until the notch looks along a direction [right, up], to the degree.
fn turn_to(needle: &mut Needle, view: &Projection, towards: DVec2) {
    let looks = |n: &Needle| {
        let notch = n.notch_at_hub();
        DVec2::new(notch.dot(view.right), notch.dot(view.up)).normalize_or(DVec2::Y)
    };
    let step = 1.0_f64.to_radians();
    let (mut best, mut at) = (f64::NEG_INFINITY, 0);
    for i in 0..360 {
        let cosine = looks(needle).dot(towards);
        if cosine > best {
            (best, at) = (cosine, i);
        }
        needle.turn(step);
    }
    needle.turn(f64::from(at) * step);
}

/// Pushed on as it stands; where the tip then is, off the straight way, mm at the tip [right, up]. `None` when it met bone.
fn pushed(interior: &Interior, view: &Projection, needle: &Needle) -> Option<(Needle, DVec2)> {
    let mut after = needle.clone();
    let contacts = after.advance(interior, Medium::Muscle, AHEAD_MM, 0.0);
    if contacts.iter().any(|c| c.kind == ContactKind::Bone) || after.on_bone() {
        return None;
    }
    let straight = needle.tip().position + needle.tip().axis() * AHEAD_MM;
    let at = after.tip().position;
    Some((after, (view.project(at) - view.project(straight)) / view.magnification_at(at)))
}

/// Which way will it go with the notch here, or where must the notch look.
pub(super) fn notch(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let (interior, target) = (setting.interior, setting.target);
    // One in three goes under the root, where there is such a way.
    let approach = if target.level != Level::S1 && numbers.unit() < 1.0 / 3.0 {
        Approach::Infraneural
    } else {
        Approach::Subpedicular
    };
    let asked = AskedView { approach, ..AskedView::usual(target) };
    let oblique = best(setting, asked.measured(ViewKind::Oblique))?;
    let view_angles = moved(oblique, between(numbers, [-2.0, 2.0]), between(numbers, [-2.0, 2.0]))?;
    let view = view_at(setting, view_angles);
    let aim = interior.foramen(target.level, target.side)?.area(approach).centre();
    let mut needle = down_the_beam(interior, &view, aim, AHEAD_MM + between(numbers, [4.0, 14.0]))?;
    if needle.on_bone() {
        return None;
    }
    let (s, c) = libm::sincos(sign(numbers) * between(numbers, [0.0, 14.0]).to_radians());
    let jitter = DVec2::new(c, s);
    let choices = OnScreen::ALL.map(|to| Choice::Screen { to }).to_vec();
    if numbers.unit() < 0.5 {
        let notch = one_of(numbers, &OnScreen::ALL);
        turn_to(&mut needle, &view, jitter.rotate(unit(notch)));
        let (after, drift) = pushed(interior, &view, &needle)?;
        let (to, off) = nearest_way(drift);
        if drift.length() < DRIFT_LEAST_MM || off > NOTCH_MOST_DEG {
            return None;
        }
        let margin = Margin { has: 45.0 - off, least: 45.0 - NOTCH_MOST_DEG, unit: "degrees" };
        let mut draft = Draft::new(view_angles, Asked::NotchAhead { notch }, margin);
        (draft.needle, draft.needle_after) = (Some(needle), Some(after));
        draft.seen = vec![Fact::Notch { looks: notch }];
        draft.reason = vec![Fact::Notch { looks: notch }, Fact::Drifted { to, mm: drift.length() }];
        return draft.answered(choices, Choice::Screen { to });
    }
    // All four tried; the one that goes there best must be clear of the next.
    let to = one_of(numbers, &OnScreen::ALL);
    let mut tried = Vec::new();
    for looks in OnScreen::ALL {
        let mut turned = needle.clone();
        turn_to(&mut turned, &view, jitter.rotate(unit(looks)));
        let (after, drift) = pushed(interior, &view, &turned)?;
        if drift.length() < DRIFT_LEAST_MM {
            return None;
        }
        let off = libm::acos(drift.normalize_or(DVec2::ZERO).dot(unit(to)).clamp(-1.0, 1.0)).to_degrees();
        tried.push((off, looks, after, drift.length()));
    }
    tried.sort_by(|a, b| a.0.total_cmp(&b.0));
    let next = tried[1].0;
    let (off, looks, after, mm) = tried.swap_remove(0);
    let margin = Margin { has: (next - off) / 2.0, least: 45.0 - NOTCH_MOST_DEG, unit: "degrees" };
    // On the film the notch looks elsewhere, a quarter of a turn off.
    let stands = -unit(looks).perp();
    turn_to(&mut needle, &view, stands);
    let mut draft = Draft::new(view_angles, Asked::NotchWanted { to }, margin);
    (draft.needle, draft.needle_after) = (Some(needle), Some(after));
    draft.seen = vec![Fact::Notch { looks: nearest_way(stands).0 }];
    draft.reason = vec![Fact::Notch { looks }, Fact::Drifted { to, mm }];
    draft.answered(choices, Choice::Screen { to: looks })
}

#[cfg(test)]
mod tests {
    use super::super::stage::STAGES;
    use super::*;
    use crate::anatomy::names::Side;
    use crate::anatomy::patient_spec::PatientSpec;
    use crate::view::criteria::Target;

    /// Why the clock is not asked under the root.
    #[test]
    fn under_the_root_the_clock_says_little() {
        let interior = &Interior::of(&PatientSpec::all()[0]);
        for level in [Level::L1, Level::L2, Level::L3, Level::L4, Level::L5] {
            let target = Target { level, side: Side::Left };
            let setting = Setting { stage: &STAGES[0], interior, target, wish: 0.0 };
            let view = view_at(&setting, best(&setting, ViewKind::TrueAp).unwrap());
            let pedicle = interior.level(level).side(Side::Left).pedicle.centre;
            let aim = interior.foramen(level, Side::Left).unwrap().area(Approach::Infraneural).centre();
            let off = (view.project(aim) - view.project(pedicle)) / view.magnification_at(pedicle);
            assert!(off.length() > CLOCK_REACH_MM[1], "{level}: {}", off.length());
        }
    }
}

//! What the learner reads off the pictures about the needle, as numbers from the projected geometry.
//!
//! - *coaxial*: angle between shaft and the ray through the tip, and where the hub falls against the tip on the detector. Down the
//!   beam both are zero and the needle shows as a dot.
//! - *clock* (AP): the tip against the pedicle's projected ring, 12 cranial, 3 to the patient's right: lateral is 9 on the left
//!   pedicle and 3 on the right one (common practice, no source).
//! - *lateral*: height in the foramen, 0 under the pedicle to 1 on the next one, and how far behind the posterior body line.
//! - *off target*: the tip against the mark on the oblique picture, mm at the tip's depth.

use super::shaft::Needle;
use crate::anatomy::foramen::Area;
use crate::anatomy::interior::Interior;
use crate::anatomy::names::{Level, Side};
use crate::imaging::projection::Projection;
use crate::view::criteria::ring_span;
use crate::view::image_axes::{image_axes, plate_cranial};
use glam::{DVec2, DVec3};
use serde::Serialize;

/// Needle against beam.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Coaxial {
    /// Shaft outside the skin against the ray through the tip, degrees.
    pub angle_deg: f64,
    /// Hub from tip on the detector, [right, up], mm.
    pub hub_offset_mm: [f64; 2],
}

/// Reads it.
pub fn coaxial(view: &Projection, needle: &Needle) -> Coaxial {
    let tip = needle.tip().position;
    let shaft = (tip - needle.hub()).normalize_or(needle.direction());
    // The needle goes in against the beam.
    let along = -shaft.dot(view.ray_to(tip));
    let aside = shaft.cross(view.ray_to(tip)).length();
    let offset = view.project(needle.hub()) - view.project(tip);
    Coaxial { angle_deg: libm::atan2(aside, along).to_degrees(), hub_offset_mm: offset.to_array() }
}

/// The turn of the needle about the skin, degrees [right, up] of the hub on the screen, that brings the hub over the tip: what it stands
/// off on the detector, over the length of the needle as the beam enlarges it at the skin. Nearly so with one turn; exact in the limit.
pub fn hub_over_tip_deg(view: &Projection, needle: &Needle) -> [f64; 2] {
    let length = f64::from(needle.device.length_mm) * view.magnification_at(needle.entry);
    coaxial(view, needle).hub_offset_mm.map(|o| -libm::atan(o / length).to_degrees())
}

/// Hour of a direction [right, up] on a clock face, 0 < h <= 12, 12 up.
pub fn hour(direction: DVec2) -> f64 {
    let turns = libm::atan2(direction.x, direction.y) / std::f64::consts::TAU;
    let hour = 12.0 * (turns - libm::floor(turns));
    if hour == 0.0 { 12.0 } else { hour }
}

/// Tip against the pedicle's ring in an AP picture.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Clock {
    /// Hour, 0 < h <= 12.
    pub hour: f64,
    /// Medial of the pedicle's 6 o'clock line, mm at the pedicle; < 0 lateral.
    pub medial_mm: f64,
    /// Below the pedicle's lower border, mm at the pedicle; < 0 over the ring.
    pub below_mm: f64,
}

/// Reads it.
pub fn clock(view: &Projection, interior: &Interior, level: Level, side: Side, tip: DVec3) -> Clock {
    let landmarks = interior.level(level);
    let ring = &landmarks.side(side).pedicle;
    let axes = image_axes(view, &landmarks.upper_plate);
    let scale = view.magnification_at(ring.centre);
    let r = (view.project(tip) - view.project(ring.centre)) / scale;
    let (left, up) = (r.dot(axes.left), r.dot(axes.cranial));
    let (six, _) = ring_span(view, ring, axes.cranial);
    Clock {
        hour: hour(DVec2::new(-left, up)),
        medial_mm: -left * side.sign(),
        below_mm: (six - view.project(tip).dot(axes.cranial)) / scale,
    }
}

/// Tip against foramen and posterior body line in a lateral picture.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct LateralReading {
    /// 0 at the upper pedicle's lower border, 1 at the lower pedicle's upper border.
    pub height: f64,
    /// Behind the posterior body line, mm at the tip; < 0 in front of it.
    pub behind_wall_mm: f64,
}

/// Reads it: on the sacrum the height is that above the foramina, over their spacing from the plate.
pub fn lateral(
    view: &Projection,
    interior: &Interior,
    level: Level,
    side: Side,
    tip: DVec3,
) -> LateralReading {
    let landmarks = interior.level(level);
    let plate = &landmarks.upper_plate;
    let cranial = plate_cranial(view, plate);
    let across = cranial.perp();
    // Backwards is to whichever side the image of the plate's back falls.
    let backwards = view.project(plate.centre + plate.back * 10.0) - view.project(plate.centre);
    let across = if backwards.dot(across) < 0.0 { -across } else { across };
    let at = |p| view.project(p);
    let (top, bottom) = match level.below() {
        Some(below) => {
            let (upper, lower) = (landmarks.side(side).pedicle, interior.level(below).side(side).pedicle);
            (upper.centre - upper.up, lower.centre + lower.up)
        }
        None => {
            let s = landmarks.side(side);
            (s.pedicle.centre - s.pedicle.up, s.pedicle.centre - s.pedicle.up * 3.0)
        }
    };
    let span = (at(top) - at(bottom)).dot(cranial);
    let wall = landmarks.posterior_wall;
    LateralReading {
        height: (at(top) - at(tip)).dot(cranial) / if span.abs() < 1e-6 { 1e-6 } else { span },
        behind_wall_mm: (at(tip) - at(wall)).dot(across) / view.magnification_at(tip),
    }
}

/// Tip off a mark on the detector, mm at the tip's depth, [right, up].
pub fn off_mark_mm(view: &Projection, mark: DVec2, tip: DVec3) -> [f64; 2] {
    ((view.project(tip) - mark) / view.magnification_at(tip)).to_array()
}

/// Grid of [`open_mm2`], mm, and how many steps it goes to each side.
const OPEN_GRID_MM: (f64, i32) = (0.5, 40);

/// Part of an area that the beam reaches past all bone between it and the receptor, as the beam sees it, mm².
pub fn open_mm2(view: &Projection, interior: &Interior, area: &Area) -> f64 {
    let (step_mm, half) = OPEN_GRID_MM;
    let (centre, normal) = (area.centre(), area.normal());
    let u = (area.corners[1] - area.corners[0]).normalize();
    let v = normal.cross(u);
    let open = (-half..half)
        .flat_map(|i| (-half..half).map(move |j| (f64::from(i) * step_mm, f64::from(j) * step_mm)))
        .map(|(a, b)| centre + u * a + v * b)
        .filter(|&p| area.distance_mm(p) < 0.0)
        .filter(|&p| interior.tissues().bone_along(p, view.ray_to(p), OPEN_REACH_MM).is_none())
        .count();
    open as f64 * step_mm * step_mm * normal.dot(view.ray_to(centre)).abs()
}

/// Bone is looked for this far towards the receptor, mm: past the skin of any patient.
pub const OPEN_REACH_MM: f64 = 150.0;

/// Where the tip stands against its line down the beam, and where the notch looks.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Drift {
    /// Off the line, mm at the tip, [right, up].
    pub off_mm: [f64; 2],
    /// Off the line a little further on, going as it goes now, mm.
    pub ahead_mm: [f64; 2],
    /// Whether there is a drift that can be seen, and the notch looks towards it: the tip drifts away from the notch.
    pub answered: bool,
}

impl Drift {
    /// Which way the tip strays so far that it can be seen: where it is off, else where it is going.
    pub fn strays(&self) -> Option<DVec2> {
        let (off, ahead) = (DVec2::from_array(self.off_mm), DVec2::from_array(self.ahead_mm));
        if ahead.length() >= AHEAD_SEEN_MM {
            Some(ahead)
        } else {
            (off.length() >= OFF_SEEN_MM).then_some(off)
        }
    }
}

/// So far ahead a drift is judged, mm. A choice, no source.
const AHEAD_MM: f64 = 20.0;
/// Off the line by this the tip is seen to be off, mm: most of a 22 G needle's width. A choice, no source.
const OFF_SEEN_MM: f64 = 0.5;
/// Off the line by this further on, the needle is seen to lean, mm: 3 degrees. A choice, no source.
const AHEAD_SEEN_MM: f64 = 1.0;
/// The notch looks towards a drift within this cosine: 60 degrees.
const TOWARDS_COSINE: f64 = 0.5;

/// Reads it against a mark's beam.
pub fn drift(view: &Projection, mark: DVec2, needle: &Needle) -> Drift {
    let tip = needle.tip();
    let on_screen = |v: DVec3| DVec2::new(v.dot(view.right), v.dot(view.up));
    let ray = view.ray_to(tip.position);
    let axis = tip.axis();
    // The needle goes against the beam: what is aside of the ray, per mm of way.
    let lean = on_screen(axis - ray * axis.dot(ray));
    let off = DVec2::from_array(off_mark_mm(view, mark, tip.position));
    let ahead = off + lean * AHEAD_MM;
    let mut drift = Drift { off_mm: off.to_array(), ahead_mm: ahead.to_array(), answered: false };
    let notch = on_screen(needle.notch()).normalize_or(DVec2::ZERO);
    let towards = |way: DVec2, least: f64| {
        way.length() >= least && way.normalize_or(DVec2::ZERO).dot(notch) >= TOWARDS_COSINE
    };
    drift.answered = towards(off, OFF_SEEN_MM) || towards(ahead, AHEAD_SEEN_MM);
    drift
}

/// How far medial of the pedicle's 6 o'clock line a tip lies in the patient, mm, < 0 lateral; `None` while it is behind the canal, and on the
/// sacrum, which has its own rule.
pub fn medial_of_six_mm(interior: &Interior, level: Level, side: Side, tip: DVec3) -> Option<f64> {
    level.below()?;
    let landmarks = interior.level(level);
    let plate = &landmarks.upper_plate;
    let deep = (tip - landmarks.posterior_wall).dot(plate.back) < CANAL_MM * interior.scale;
    let six = landmarks.side(side).pedicle.centre;
    deep.then(|| -(tip - six).dot(plate.left) * side.sign())
}

/// Behind the posterior wall by less than this a tip is at the canal's depth, mm at average size: the canal is 15 to 20 mm deep.
const CANAL_MM: f64 = 14.0;

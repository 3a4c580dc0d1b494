//! What is written down of what was done: marks, kept views, pictures, contacts, turns of the hub, injections.

use crate::imaging::c_arm::CArm;
use crate::needle::compartment::Pattern;
use crate::needle::contact::Contact;
use crate::needle::contrast::Bolus;
use crate::needle::reading::Drift;
use crate::view::best_view::ViewKind;
use glam::DVec2;

/// A place marked on a picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// On the detector, [right, up], mm.
    pub uv: DVec2,
    /// The C-arm of that picture.
    pub arm: CArm,
}

/// A view that was kept.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KeptView {
    /// As which.
    pub view: ViewKind,
    /// From where.
    pub arm: CArm,
}

/// A picture: a spot, or a run of fluoroscopy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Picture {
    /// When.
    pub tick: u32,
    /// From where.
    pub arm: CArm,
    /// Depth of the needle then, mm; `None` without one.
    pub depth_mm: Option<f64>,
    /// Beam time of fluoroscopy, s; 0 for a spot.
    pub beam_s: f64,
    /// Whether it goes on from the picture before it.
    pub goes_on: bool,
}

/// A contact of the needle, and what was done about it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ContactRecord {
    /// When.
    pub tick: u32,
    /// What.
    pub contact: Contact,
    /// How far the tip was pushed on from there before it was drawn back, mm.
    pub pushed_on_mm: f64,
    /// Whether it was drawn back at all.
    pub drawn_back: bool,
    /// Whether anything more was done with the needle before that.
    pub went_on: bool,
    /// Whether there was a sign of it: a vessel bleeds or does not.
    pub shown: bool,
}

/// A turn of the hub under the skin, as it stood when the needle was next pushed on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// How deep, mm.
    pub depth_mm: f64,
    /// Where tip and line stood to each other.
    pub drift: Drift,
    /// Whether that could be seen: the needle at this depth on a picture near the mark's beam.
    pub seen: bool,
}

impl Turn {
    /// Whether it was decided: drift was there, it was seen, and the notch was turned towards it.
    pub fn decided(&self) -> bool {
        self.seen && self.drift.answered
    }
}

/// An injection.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Injected {
    /// Where and how much.
    pub bolus: Bolus,
    /// Whether suction came first at this place.
    pub aspirated: bool,
    /// Whether all of it was watched live.
    pub live: bool,
    /// Whether some of it was.
    pub watched: bool,
    /// Whether blood stood at the hub.
    pub on_blood: bool,
    /// What the learner called it.
    pub named: Option<Pattern>,
}

/// How straight down the beam the needle has been held.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Held {
    /// Sum of angle times travel, degree mm.
    pub degree_mm: f64,
    /// Travel, mm.
    pub travel_mm: f64,
}

/// What suction gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Aspirate {
    Nothing,
    Blood,
    ClearFluid,
}

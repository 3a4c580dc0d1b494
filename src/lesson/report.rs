//! Everything that page and host tool say about the needle, as plain data.

use super::attempt::{Aspirate, Attempt, State, seconds, view_of};
use super::case::Case;
use crate::anatomy::foramen::Approach;
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Level;
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use crate::needle::compartment::Pattern;
use crate::needle::contact::Contact;
use crate::needle::device::{Device, Medium};
use crate::needle::reading::{Clock, Coaxial, LateralReading, clock, coaxial, hour, lateral, off_mark_mm};
use crate::needle::shaft::Needle;
use crate::view::best_view::ViewKind;
use crate::view::report::{Criterion, criteria_of_view, criterion};
use glam::{DVec2, DVec3};
use serde::Serialize;

/// The needle as it stands, against the present view.
#[derive(Clone, Debug, Serialize)]
pub struct NeedleReport {
    /// Gauge and length.
    pub device: Device,
    /// Colour of the hub (ISO 6009).
    pub hub_colour: &'static str,
    /// Under the skin, mm.
    pub depth_mm: f64,
    /// Still outside, mm.
    pub outside_mm: f64,
    /// Roll of the hub, degrees clockwise from above, 0 with the notch to the head.
    pub roll_deg: f64,
    /// Where the notch looks on the screen, as an hour, 12 up.
    pub notch_hour: f64,
    /// Patient frame (origin: the target's centre), mm.
    pub tip_patient_mm: [f64; 3],
    /// The same of the hub.
    pub hub_patient_mm: [f64; 3],
    /// On the detector, [right, up], mm.
    pub tip_mm: [f64; 2],
    /// On the detector.
    pub hub_mm: [f64; 2],
    /// Where it goes in, on the detector.
    pub entry_mm: [f64; 2],
    /// Against the present beam.
    pub coaxial: Coaxial,
    /// Against the pedicle's ring as this view shows it; meant for AP views.
    pub clock: Clock,
    /// Against foramen and body line as this view shows them; meant for lateral views.
    pub lateral: LateralReading,
    /// Tip off the mark along the mark's beam, [right, up] of that picture, mm at the tip.
    pub off_mark_mm: Option<[f64; 2]>,
    /// Whether the stylet is in.
    pub stylet: bool,
    /// Whether the tip stands on bone.
    pub on_bone: bool,
    /// What the medium bends it by, mm aside over 50 mm.
    pub drift_mm_in_50: f64,
}

/// A contact and when.
#[derive(Clone, Debug, Serialize)]
pub struct MetReport {
    /// Tick.
    pub tick: u32,
    /// What.
    #[serde(flatten)]
    pub contact: Contact,
    /// The sign that it gives.
    pub sign: &'static str,
    /// Whether it should not have happened.
    pub harm: bool,
}

/// An injection, as far as the learner may know of it.
#[derive(Clone, Debug, Serialize)]
pub struct InjectionReport {
    /// ml.
    pub volume_ml: f64,
    /// Since its last drop, s.
    pub age_s: f64,
    /// Suction came first.
    pub aspirated: bool,
    /// Watched live.
    pub live: bool,
    /// What the learner called it.
    pub named: Option<Pattern>,
    /// What it was; only once it has been named.
    pub pattern: Option<Pattern>,
    /// What such a pattern looks like; only once it has been named.
    pub sign: Option<&'static str>,
}

/// The procedure as it stands.
#[derive(Clone, Debug, Serialize)]
pub struct ProcedureReport {
    /// Way into the foramen.
    pub approach: Approach,
    /// What the needle bends as in.
    pub medium: Medium,
    /// Whether pictures cost exposures.
    pub exposures: bool,
    /// The caution that belongs to the target.
    pub caution: &'static str,
    /// Views kept so far.
    pub kept: Vec<ViewKind>,
    /// The mark as the present view shows its place in the target's plane, mm on the detector.
    pub mark_mm: Option<[f64; 2]>,
    /// Corners of the area to aim at, on the detector.
    pub area_mm: Vec<[f64; 2]>,
    /// The needle.
    pub needle: Option<NeedleReport>,
    /// Contacts, in order.
    pub met: Vec<MetReport>,
    /// What the last suction gave, until the needle moved.
    pub aspirated: Option<Aspirate>,
    /// Injections, in order.
    pub injected: Vec<InjectionReport>,
    /// The criteria of the oblique view that the approach wants, in the present view.
    pub oblique: Vec<Criterion>,
    /// The next thing to do, in words.
    pub hint: String,
    /// Finished.
    pub finished: bool,
    /// Actions in the log.
    pub actions: usize,
}

/// Says it, with the C-arm as it stands.
pub fn procedure_report(attempt: &Attempt, interior: &Interior, arm: &CArm, tick: u32) -> ProcedureReport {
    let view = &view_of(arm, &attempt.case, interior);
    let (case, state) = (&attempt.case, &attempt.state);
    let on_plane = state.mark.and_then(|mark| {
        let beam = view_of(&mark.arm, case, interior);
        state.area(case, interior)?.meets(beam.source, beam.ray_through(mark.uv))
    });
    ProcedureReport {
        approach: state.approach,
        medium: case.medium,
        exposures: case.exposures,
        caution: Case { approach: state.approach, ..*case }.caution(),
        kept: ViewKind::ALL.into_iter().filter(|&kind| state.kept(kind).is_some()).collect(),
        mark_mm: on_plane.map(|p| view.project(p).to_array()),
        area_mm: state
            .area(case, interior)
            .map_or(Vec::new(), |a| a.corners.iter().map(|&p| view.project(p).to_array()).collect()),
        needle: state.needle.as_ref().map(|n| needle_report(case, state, interior, n, view)),
        met: state
            .met
            .iter()
            .map(|m| MetReport {
                tick: m.tick,
                contact: m.contact,
                sign: m.contact.kind.sign(),
                harm: m.contact.kind.is_harm(),
            })
            .collect(),
        aspirated: state.aspirated,
        injected: state
            .injected
            .iter()
            .map(|i| InjectionReport {
                volume_ml: i.bolus.volume_ml,
                age_s: seconds(tick) - i.bolus.ended_s,
                aspirated: i.aspirated,
                live: i.live,
                named: i.named,
                pattern: i.named.map(|_| i.bolus.compartment.pattern()),
                sign: i.named.map(|_| i.bolus.compartment.pattern().sign()),
            })
            .collect(),
        oblique: criteria_of_view(case.target.level, case.oblique(state.approach))
            .map(|id| criterion(interior, case.target, arm, id, &case.views))
            .to_vec(),
        hint: hint(case, state, interior, view),
        finished: state.finished,
        actions: attempt.log.len(),
    }
}

fn on_screen(view: &Projection, direction: DVec3) -> DVec2 {
    DVec2::new(direction.dot(view.right), direction.dot(view.up))
}

/// Says everything about a needle against a view.
pub fn needle_report(
    case: &Case,
    state: &State,
    interior: &Interior,
    needle: &Needle,
    view: &Projection,
) -> NeedleReport {
    let (level, side) = (case.target.level, case.target.side);
    let tip = needle.tip().position;
    let curvature = needle.device.gauge.curvature_per_mm(case.medium);
    NeedleReport {
        device: needle.device,
        hub_colour: needle.device.gauge.hub_colour(),
        depth_mm: needle.depth_mm(),
        outside_mm: f64::from(needle.device.length_mm) - needle.depth_mm(),
        roll_deg: needle.roll.to_degrees(),
        notch_hour: hour(on_screen(view, needle.notch_at_hub())),
        tip_patient_mm: (tip - interior.level(level).centre).to_array(),
        hub_patient_mm: (needle.hub() - interior.level(level).centre).to_array(),
        tip_mm: view.project(tip).to_array(),
        hub_mm: view.project(needle.hub()).to_array(),
        entry_mm: view.project(needle.entry).to_array(),
        coaxial: coaxial(view, needle),
        clock: clock(view, interior, level, side, tip),
        lateral: lateral(view, interior, level, side, tip),
        off_mark_mm: state.mark.map(|mark| off_mark_mm(&view_of(&mark.arm, case, interior), mark.uv, tip)),
        stylet: state.stylet,
        on_bone: needle.on_bone(),
        drift_mm_in_50: (1.0 - libm::cos(libm::asin(50.0 * curvature))) / curvature,
    }
}

/// A direction on the screen in words.
fn way(direction: DVec2) -> &'static str {
    const WAYS: [&str; 8] = [
        "up",
        "up and to the right",
        "to the right",
        "down and to the right",
        "down",
        "down and to the left",
        "to the left",
        "up and to the left",
    ];
    WAYS[(libm::round(hour(direction) / 1.5) as usize) % 8]
}

/// The next thing to do, as a teacher beside the learner would say it.
fn hint(case: &Case, state: &State, interior: &Interior, view: &Projection) -> String {
    for kind in [ViewKind::TrueAp, ViewKind::Oblique] {
        if state.kept(kind).is_none() {
            return format!("Set up the {} view and keep it.", kind.in_words());
        }
    }
    let Some(mark) = state.mark else {
        return match (case.target.level, state.approach) {
            (Level::S1, _) => "Mark the target: the opening of the first sacral foramen.",
            (_, Approach::Subpedicular) => {
                "Mark the target just under the pedicle, lateral to its 6 o'clock, past the articular process."
            }
            (_, Approach::Infraneural) => {
                "Mark the target just above the upper end plate of the level below, beside the articular process."
            }
        }
        .to_owned();
    };
    let Some(needle) = &state.needle else {
        return "Set a needle on the skin over the mark.".to_owned();
    };
    let beam = view_of(&mark.arm, case, interior);
    let now = coaxial(&beam, needle);
    if needle.depth_mm() < 20.0 && now.angle_deg > 2.0 {
        let off = DVec2::from_array(now.hub_offset_mm);
        return format!(
            "The hub stands {} of the tip on the oblique picture: move it {}, about {:.0} degrees, until the needle is a dot.",
            way(off).trim_start_matches("to the "),
            way(-off),
            now.angle_deg
        );
    }
    if state.injected.last().is_some_and(|i| i.named.is_none()) {
        return "Look at the spread and name its pattern.".to_owned();
    }
    if let Some(last) = state.injected.last() {
        return match last.bolus.compartment.pattern() {
            Pattern::Perineural => "Good spread along the root: finish.".to_owned(),
            _ => "Wrong place: draw back, reposition, and prove it again.".to_owned(),
        };
    }
    if needle.on_bone() {
        return "Bone: draw back a little, turn the notch towards the bone so that the bevel leads away, and advance.".to_owned();
    }
    let off = DVec2::from_array(off_mark_mm(&beam, mark.uv, needle.tip().position));
    if off.length() > 1.5 {
        return format!(
            "The tip has strayed {:.1} mm {}: turn the notch to {:.0} o'clock, towards that side, and advance; it drifts away from the notch.",
            off.length(),
            way(off),
            libm::round(hour(off)).max(1.0)
        );
    }
    let lateral_seen = on_screen(view, interior.level(case.target.level).upper_plate.left).length() < 0.4;
    if lateral_seen {
        let reading = lateral(view, interior, case.target.level, case.target.side, needle.tip().position);
        return format!(
            "The tip is {:.0} mm {} the posterior body line.",
            reading.behind_wall_mm.abs(),
            if reading.behind_wall_mm > 0.0 { "behind" } else { "in front of" }
        );
    }
    "Advance a little, and prove the depth in AP and lateral before it is deep.".to_owned()
}

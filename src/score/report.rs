//! Everything that page and host tool say about the needle, as plain data.

use super::depth::depth_seen;
use super::needle_path::DEEP_MM;
use super::remark::{Area, Remark, Way};
use super::rubric::step;
use super::target_centred::next_move;
use super::tip_place::{best_pair, tip_place};
use crate::anatomy::foramen::Approach;
use crate::anatomy::interior::Interior;
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use crate::needle::compartment::Pattern;
use crate::needle::contact::{Contact, ContactKind};
use crate::needle::device::{Device, Medium};
use crate::needle::reading::{Clock, Coaxial, LateralReading, clock, coaxial, hour, lateral, off_mark_mm};
use crate::needle::shaft::Needle;
use crate::procedure::action::seconds;
use crate::procedure::attempt::Attempt;
use crate::procedure::beam::view_of;
use crate::procedure::case::{Case, Caution};
use crate::procedure::record::Aspirate;
use crate::procedure::state::State;
use crate::procedure::step::StepId;
use crate::view::best_view::ViewKind;
use glam::{DVec2, DVec3};
use serde::Serialize;
use std::borrow::Cow;

/// The needle as it stands, against the present view.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
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
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct ContactReport {
    /// Tick.
    pub tick: u32,
    /// What.
    #[serde(flatten)]
    pub contact: Contact,
    /// Whether it should not have happened.
    pub harm: bool,
}

/// An injection, as far as the learner may know of it.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct InjectionReport {
    /// ml.
    pub volume_ml: f64,
    /// Since its last drop, s.
    pub age_s: f64,
    /// Suction came first.
    pub aspirated: bool,
    /// Watched live, all of it.
    pub live: bool,
    /// Watched live, some of it.
    pub watched: bool,
    /// What the learner called it.
    pub named: Option<Pattern>,
    /// What it was; only once it has been named.
    pub pattern: Option<Pattern>,
}

/// A step and whether it may end by itself.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Progress {
    /// Which.
    pub id: StepId,
    /// Whether its aim is met.
    pub done: bool,
    /// Whether it was done and has no marks: worth asking once whether that was meant.
    pub at_nothing: bool,
    /// Its marks, 0 to 1.
    pub score: Option<f64>,
}

/// Where the tip stands, as the marks say it.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct TipReport {
    /// In AP; at S1 in the opening.
    pub ap: Remark,
    /// In the lateral view; at S1 along the tunnel.
    pub lateral: Remark,
    /// Whether both have full marks.
    pub in_place: bool,
    /// Whether an AP was seen with the needle there.
    pub ap_seen: bool,
    /// The same of a lateral.
    pub lateral_seen: bool,
}

/// What the patient says and the hub shows, until the needle is drawn back.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Signs {
    /// Blood at the hub.
    pub blood: bool,
    /// Pain down the leg.
    pub paraesthesia: bool,
    /// Clear fluid at the hub.
    pub clear_fluid: bool,
}

/// The procedure as it stands.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct ProcedureReport {
    /// Way into the foramen.
    pub approach: Approach,
    /// What the needle bends as in.
    pub medium: Medium,
    /// Whether pictures cost exposures.
    pub exposures: bool,
    /// The caution that belongs to the target.
    pub caution: Caution,
    /// Views kept so far.
    pub kept: Vec<ViewKind>,
    /// The mark as the present view shows its place in the target's plane, mm on the detector.
    pub mark_mm: Option<[f64; 2]>,
    /// Corners of the area to aim at, on the detector.
    pub area_mm: Vec<[f64; 2]>,
    /// The needle.
    pub needle: Option<NeedleReport>,
    /// Contacts, in order.
    pub met: Vec<ContactReport>,
    /// What the last suction gave, until the needle moved.
    pub aspirated: Option<Aspirate>,
    /// Injections, in order.
    pub injected: Vec<InjectionReport>,
    /// The steps that end by themselves.
    pub progress: Vec<Progress>,
    /// Where the tip stands; `None` while it is not deep.
    pub tip: Option<TipReport>,
    /// What is reported and seen now.
    pub signs: Signs,
    /// The next thing to do.
    pub hint: Remark,
    /// Finished.
    pub finished: bool,
    /// Actions in the log.
    pub actions: usize,
    /// Whether an action was taken back that can be done again.
    pub can_redo: bool,
}

/// Says it, with the C-arm as it stands.
pub fn procedure_report(attempt: &Attempt, interior: &Interior, arm: &CArm, tick: u32) -> ProcedureReport {
    let view = &view_of(arm, &attempt.case, interior);
    let (case, state) = (&attempt.case, &attempt.state);
    let tip = tip_report(case, state, interior);
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
            .contacts
            .iter()
            // A vessel that does not bleed is not noticed.
            .filter(|m| m.shown || state.finished)
            .map(|m| ContactReport { tick: m.tick, contact: m.contact, harm: m.contact.kind.is_harm() })
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
                watched: i.watched,
                named: i.named,
                pattern: i.named.map(|_| i.bolus.compartment.pattern()),
            })
            .collect(),
        progress: progress(case, state, interior, tip.as_ref()),
        signs: signs(state),
        hint: hint(case, state, interior, tip.as_ref()),
        tip,
        finished: state.finished,
        actions: attempt.log.len(),
        can_redo: attempt.can_redo(),
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
        roll_deg: needle.roll_rad.to_degrees(),
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

/// The state as the next action makes it: where pictures are free, the view that the C-arm rests in is looked at when something is done in
/// it, so it counts as seen while the C-arm rests there.
fn looked_now<'a>(case: &Case, state: &'a State) -> Cow<'a, State> {
    match &state.needle {
        Some(needle) if !case.exposures => {
            let mut next = state.clone();
            next.looked.push((state.arm, needle.depth_mm()));
            Cow::Owned(next)
        }
        _ => Cow::Borrowed(state),
    }
}

/// Where the tip stands once it is deep.
fn tip_report(case: &Case, state: &State, interior: &Interior) -> Option<TipReport> {
    let needle = state.needle.as_ref().filter(|n| n.depth_mm() > DEEP_MM)?;
    let best = best_pair(case, interior);
    let [(ap_score, ap), (lateral_score, lateral)] =
        tip_place(case, interior, state, best, needle.tip().position);
    let [ap_seen, lateral_seen] = depth_seen(case, &looked_now(case, state), best);
    Some(TipReport { ap, lateral, in_place: ap_score >= 1.0 && lateral_score >= 1.0, ap_seen, lateral_seen })
}

/// The steps that a page closes when their aim is met.
const CLOSING: [StepId; 9] = [
    StepId::TargetCentred,
    StepId::TrueAp,
    StepId::Oblique,
    StepId::Lateral,
    StepId::Target,
    StepId::DownTheBeam,
    StepId::Steering,
    StepId::Depth,
    StepId::Contrast,
];

fn progress(case: &Case, state: &State, interior: &Interior, tip: Option<&TipReport>) -> Vec<Progress> {
    CLOSING
        .into_iter()
        .map(|id| {
            let score = step(case, interior, state, id).score;
            let injected = state.injected.last();
            let done = match id {
                StepId::TargetCentred => score.is_some_and(|s| s >= 1.0),
                // Deep, and on the line.
                StepId::Steering => score.is_some_and(|s| s >= 1.0) && tip.is_some(),
                StepId::Depth => {
                    injected.is_some() || tip.is_some_and(|t| t.in_place && t.ap_seen && t.lateral_seen)
                }
                StepId::Contrast => injected.is_some_and(|i| i.watched && i.named.is_some()),
                _ => score.is_some(),
            };
            Progress { id, done, at_nothing: done && score.is_none_or(|s| s <= 0.0), score }
        })
        .collect()
}

fn signs(state: &State) -> Signs {
    let there =
        |is: fn(ContactKind) -> bool| state.contacts.iter().any(|m| is(m.contact.kind) && !m.drawn_back);
    Signs {
        blood: state.blood,
        paraesthesia: there(|k| matches!(k, ContactKind::Root | ContactKind::Ganglion)),
        // Once asked, suction says what the tip lies in; until then the dura that was gone through does.
        clear_fluid: match state.aspirated {
            Some(sucked) => sucked == Aspirate::ClearFluid,
            None => there(|k| k == ContactKind::Dura),
        },
    }
}

/// The next thing to do, as a teacher beside the learner would say it: from where the attempt stands, and from nothing else.
fn hint(case: &Case, state: &State, interior: &Interior, tip: Option<&TipReport>) -> Remark {
    if let Some(next) = next_move(state).filter(|_| case.is_off_centre()) {
        return next;
    }
    for kind in [ViewKind::TrueAp, ViewKind::Oblique] {
        if state.kept(kind).is_none() {
            return Remark::KeepView { view: kind };
        }
    }
    let Some(mark) = state.mark else {
        return Remark::MarkArea { area: Area::of(case.target.level, state.approach) };
    };
    let Some(needle) = &state.needle else {
        return Remark::PlaceNeedle;
    };
    let signs = signs(state);
    for (sign, answer) in [
        (signs.paraesthesia, Remark::PainAnswer),
        (signs.clear_fluid, Remark::ClearFluidAnswer),
        (signs.blood, Remark::BloodAnswer),
    ] {
        if sign {
            return answer;
        }
    }
    let beam = view_of(&mark.arm, case, interior);
    let now = coaxial(&beam, needle);
    if needle.depth_mm() < 20.0 && now.angle_deg > 2.0 {
        let off = DVec2::from_array(now.hub_offset_mm);
        return Remark::HubOff { off: Way::nearest(off), to: Way::nearest(-off), deg: now.angle_deg };
    }
    if let Some(last) = state.injected.last().filter(|i| i.bolus.tip == needle.tip().position) {
        return match (last.named, last.bolus.compartment.pattern()) {
            (None, _) => Remark::NameSpread,
            (_, Pattern::Perineural) => Remark::SpreadGood,
            _ => Remark::SpreadWrong,
        };
    }
    if needle.on_bone() {
        return Remark::OnBone;
    }
    if let Some(tip) = tip.filter(|t| t.in_place) {
        return match (tip.ap_seen, tip.lateral_seen, state.aspirated) {
            (false, ..) => Remark::LookIn { view: ViewKind::TrueAp },
            (_, false, _) => Remark::LookIn { view: ViewKind::Lateral },
            (.., None) => Remark::AspirateNow,
            _ => Remark::InjectNow,
        };
    }
    let off = DVec2::from_array(off_mark_mm(&beam, mark.uv, needle.tip().position));
    if off.length() > 1.5 {
        return Remark::TipStrayed { mm: off.length(), way: Way::nearest(off), hour: hour(off) };
    }
    match tip {
        Some(TipReport { lateral: Remark::SideShallow { mm }, .. }) => Remark::AdvanceBy { mm: *mm },
        Some(TipReport { lateral: Remark::SideDeep { mm } | Remark::SacralDeep { mm }, .. })
        | Some(TipReport { ap: Remark::ApMedial { mm }, .. }) => Remark::DrawBackBy { mm: *mm },
        Some(TipReport { ap: Remark::ApShort { mm }, .. }) => Remark::AdvanceBy { mm: *mm },
        Some(tip) if !tip.lateral_seen => Remark::LookIn { view: ViewKind::Lateral },
        Some(tip) if matches!(tip.lateral, Remark::SideInside | Remark::SacralInside) => tip.ap.clone(),
        Some(tip) => tip.lateral.clone(),
        None => Remark::Advance,
    }
}

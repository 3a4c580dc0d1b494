//! Gates: what fails an attempt whatever its marks, since a pass means safe.
//!
//! [`HELD_TO`] says which gate a lesson is held to by the steps it asks for; a lesson file can name further ones. Each is a question of the
//! state with a reason in names and values. What counts as harm: common practice, no source; blood as [`crate::needle::aspirate`].

use super::contacts::PUSHED_MM;
use super::depth::unproven;
use super::marks::Step;
use super::needle_path::final_tip;
use super::radiation::spent;
use super::remark::Remark;
use super::target::{marked_point, place_of};
use super::tip_place::medial_limit_mm;
use crate::anatomy::interior::Interior;
use crate::needle::compartment::Compartment;
use crate::needle::contact::ContactKind;
use crate::procedure::case::Case;
use crate::procedure::record::Injected;
use crate::procedure::state::State;
use crate::procedure::step::StepId;
use crate::view::best_view::ViewKind;
use crate::view::report::view_score;
use serde::{Deserialize, Serialize};

/// A gate.
#[derive(
    Clone,
    Copy,
    Debug,
    PartialEq,
    Eq,
    Hash,
    PartialOrd,
    Ord,
    Serialize,
    Deserialize,
    strum::IntoStaticStr,
    strum::VariantArray,
)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
pub enum GateId {
    /// Every step was done.
    Complete,
    /// The views were reached, and depth was seen in AP and lateral.
    Views,
    /// Mark and tip are at the right level and side.
    Target,
    /// No root or ganglion was pushed through.
    Root,
    /// The dura was not gone through.
    Dura,
    /// On paraesthesia the needle was drawn back before anything else.
    Paraesthesia,
    /// Not medial of 6 o'clock before contrast was seen.
    Medial,
    /// Nothing was injected with blood at the hub.
    Blood,
    /// Contrast was seen live before the end.
    ContrastLive,
    /// The last contrast went where it was wanted.
    Compartment,
    /// The hub was turned for what was seen.
    Steering,
    /// Suction came before each injection.
    Aspirated,
    /// Each pattern was named rightly.
    PatternNamed,
    /// Pictures and beam time within par.
    WithinPar,
    /// One needle was enough.
    OneNeedle,
}

/// What a lesson is held to when it asks for any of the steps; always where no step is named.
pub const HELD_TO: [(GateId, &[StepId]); 11] = [
    (GateId::Complete, &[]),
    (GateId::Views, &[StepId::TrueAp, StepId::Oblique, StepId::Lateral, StepId::Depth]),
    (GateId::Target, &NEEDLE),
    (GateId::Root, &NEEDLE),
    (GateId::Dura, &NEEDLE),
    (GateId::Paraesthesia, &NEEDLE),
    (GateId::Medial, &NEEDLE),
    (GateId::Blood, &NEEDLE),
    (GateId::ContrastLive, &[StepId::Contrast]),
    (GateId::Compartment, &[StepId::Contrast]),
    (GateId::Steering, &[StepId::Steering]),
];

/// Steps that a needle is needed for.
const NEEDLE: [StepId; 6] = [
    StepId::Target,
    StepId::DownTheBeam,
    StepId::Steering,
    StepId::Depth,
    StepId::Contacts,
    StepId::Contrast,
];

/// What only a lesson file names, and a step that it then must ask for.
pub const FURTHER: [(GateId, StepId); 4] = [
    (GateId::Aspirated, StepId::Contrast),
    (GateId::PatternNamed, StepId::Contrast),
    (GateId::WithinPar, StepId::Radiation),
    (GateId::OneNeedle, StepId::DownTheBeam),
];

impl GateId {
    /// The name used in files, such as `contrast_live`.
    pub fn id(self) -> &'static str {
        self.into()
    }

    /// All of them, in order.
    pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;
}

/// The gates of a lesson that asks for these steps and names these further ones.
pub fn gates_of(steps: &[StepId], named: &[GateId]) -> Vec<GateId> {
    let asked = |wanted: &[StepId]| wanted.is_empty() || wanted.iter().any(|s| steps.contains(s));
    let usual = HELD_TO.iter().filter(|(_, wanted)| asked(wanted)).map(|g| g.0);
    usual.chain(FURTHER.iter().map(|g| g.0).filter(|id| named.contains(id))).collect()
}

/// How an attempt stands at a gate.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Gate {
    /// Which.
    pub id: GateId,
    /// Whether it lets the attempt pass.
    pub passed: bool,
    /// Why, or why not.
    pub reason: Remark,
}

/// A view kept with less than this of its marks was not reached. A choice, no source.
const REACHED: f64 = 0.5;
/// Beyond the line by less than this the eye cannot tell, mm. A choice, no source.
const MEDIAL_EYE_MM: f64 = 1.0;
/// From so many turns of the hub on, less than half of them decided is blind turning. A choice, no source.
const BLIND_TURNS: usize = 3;

/// Asks a gate. `steps` are the lesson's, marked.
pub fn gate(case: &Case, interior: &Interior, state: &State, steps: &[Step], id: GateId) -> Gate {
    let failure = match id {
        GateId::Complete => incomplete(steps),
        GateId::Views => views(case, interior, state, steps),
        GateId::Target => target(case, interior, state),
        GateId::Root => through(state, |k| matches!(k, ContactKind::Root | ContactKind::Ganglion), PUSHED_MM),
        GateId::Dura => through(state, |k| k == ContactKind::Dura, -1.0),
        GateId::Paraesthesia => ignored(state),
        GateId::Medial => medial(case, state),
        GateId::Blood => state.injected.iter().any(|i| i.on_blood).then_some(Remark::InjectedOnBlood),
        GateId::ContrastLive => match state.injected.last() {
            None => Some(Remark::ContrastNotYet),
            Some(last) => (!last.watched).then_some(Remark::InjectLive),
        },
        GateId::Compartment => compartment(case, state),
        GateId::Steering => blind(state),
        GateId::Aspirated => every(state, |i| i.aspirated, Remark::AspirateFirst),
        GateId::PatternNamed => {
            every(state, |i| i.named == Some(i.bolus.compartment.pattern()), Remark::NamedWrongly)
        }
        GateId::WithinPar => {
            let (pictures, beam_s) = spent(state);
            let (par_pictures, par_beam_s) = (case.par.exposures, case.par.beam_s);
            let over = pictures > par_pictures || beam_s > f64::from(par_beam_s);
            over.then_some(Remark::Spent { pictures, beam_s, par_pictures, par_beam_s })
        }
        GateId::OneNeedle => (state.needles > 1).then_some(Remark::NeedlesUsed { needles: state.needles }),
    };
    Gate { id, passed: failure.is_none(), reason: failure.unwrap_or(Remark::GateHeld) }
}

fn incomplete(steps: &[Step]) -> Option<Remark> {
    let left = steps.iter().filter(|s| s.score.is_none()).count();
    (left > 0).then_some(Remark::StepsLeft { left, all: steps.len() })
}

fn views(case: &Case, interior: &Interior, state: &State, steps: &[Step]) -> Option<Remark> {
    let asked = |id: StepId| steps.iter().any(|s| s.id == id);
    let kept = [
        (StepId::TrueAp, ViewKind::TrueAp),
        (StepId::Oblique, ViewKind::Oblique),
        (StepId::Lateral, ViewKind::Lateral),
    ];
    for (_, view) in kept.into_iter().filter(|(id, _)| asked(*id)) {
        let Some(arm) = state.kept(view) else { return Some(Remark::ViewMissed { view }) };
        if view_score(interior, &case.asked(state.approach), view, &arm).score < REACHED {
            return Some(Remark::ViewMissed { view });
        }
    }
    let view = asked(StepId::Depth).then(|| unproven(case, interior, state)).flatten()?;
    Some(Remark::Unproven { view })
}

/// At which level and side mark and tip are: those of the nearest foramen.
fn target(case: &Case, interior: &Interior, state: &State) -> Option<Remark> {
    let (wanted_level, wanted_side) = (case.target.level, case.target.side);
    let places = [marked_point(case, interior, state), final_tip(state)];
    places.into_iter().flatten().find_map(|p| {
        let (level, side) = place_of(interior, state.approach, p)?;
        let wrong = (level, side) != (wanted_level, wanted_side);
        wrong.then_some(Remark::OtherTarget { level, side, wanted_level, wanted_side })
    })
}

fn through(state: &State, is: impl Fn(ContactKind) -> bool, least_mm: f64) -> Option<Remark> {
    let found = state.contacts.iter().find(|m| is(m.contact.kind) && m.pushed_on_mm > least_mm)?;
    Some(Remark::Harm {
        kind: found.contact.kind,
        level: found.contact.level,
        mm: found.contact.depth_mm,
        pushed_mm: Some(found.pushed_on_mm),
    })
}

fn ignored(state: &State) -> Option<Remark> {
    let hurts = |k| matches!(k, ContactKind::Root | ContactKind::Ganglion);
    let found = state.contacts.iter().find(|m| hurts(m.contact.kind) && m.went_on)?;
    Some(Remark::PainIgnored { mm: found.contact.depth_mm })
}

fn medial(case: &Case, state: &State) -> Option<Remark> {
    let beyond = state.medial_mm? - medial_limit_mm(case, state.approach);
    (beyond > MEDIAL_EYE_MM).then_some(Remark::MedialBeforeContrast { mm: beyond })
}

fn compartment(case: &Case, state: &State) -> Option<Remark> {
    let Some(last) = state.injected.last() else { return Some(Remark::ContrastNotYet) };
    let wanted = case.target;
    let right = matches!(last.bolus.compartment,
        Compartment::Perineural { level, side } if (level, side) == (wanted.level, wanted.side));
    (!right).then_some(Remark::WrongPlace)
}

fn blind(state: &State) -> Option<Remark> {
    let all = state.turns.len();
    let blind = state.turns.iter().filter(|t| !t.decided()).count();
    (all >= BLIND_TURNS && 2 * blind > all).then_some(Remark::TurnedBlind { blind, all })
}

fn every(state: &State, good: fn(&Injected) -> bool, bad: Remark) -> Option<Remark> {
    (!state.injected.iter().all(good)).then_some(bad)
}

//! Questions about the views. Truth: the best view of the wanted kind by [`best_view`] against where the C-arm stands, and the criteria's own
//! values against their tolerances.
//!
//! Margins: *way*: the wanted move is at least 5 degrees larger than what the other control wants. *amount*: within a fifth of the amount
//! that is right, whose neighbours are half and double of it, and the view has not full marks already. *step*: the view that it is good for is within
//! seven tenths of full marks' limit, every other would get at most two fifths of the marks. *true AP*: what is good is within seven tenths of
//! full marks' limit, what is not at least three tenths past the limit at which marks end. All a choice, no source.
//!
//! The views have their own rules where the way in is another: at S1 the oblique lays the front opening of the first foramen over its back one; for the
//! way under the root (asked as the steep oblique of a lumbar level) the process below stands at the middle of its own end plate, which is squared
//! instead of the target's. The margins are the same.

use super::draft::{Draft, Setting, between, one_of, sign};
use super::question::{ApFinding, Asked, Choice, Fact, Margin, Move, arm_at, tenths};
use crate::anatomy::names::Level;
use crate::anatomy::seeded::Numbers;
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use crate::view::best_view::{Orientation, ViewKind, best_view};
use crate::view::criteria::{
    CriterionId, facet_place, foramen_offset_mm, lateral_place, process_at_mid_plate_percent,
    spinous_offset_percent,
};
use crate::view::image_axes::plate_cranial;
use crate::view::report::{AskedView, criteria_of_view, criterion, view_score};
use crate::view::tolerance::Tolerances;

/// Least difference of the two controls, degrees.
const WAY_LEAST_DEG: f64 = 5.0;
/// An amount is at most this share off its answer.
const AMOUNT_OFF: f64 = 0.2;
/// Amounts that are offered, degrees: each double the one before.
const AMOUNTS_DEG: [u32; 4] = [4, 8, 16, 32];
/// Of the limit of full marks, at most; of the limit at which marks end, at least.
const GOOD_BAD: (f64, f64) = (0.7, 1.3);
/// Least difference in marks between the view that a film is good for and any other.
const STEP_LEAST: f64 = 0.6;

/// The best view of a kind, if the machine reaches it.
pub(super) fn best(setting: &Setting<'_>, kind: ViewKind) -> Option<Orientation> {
    let found = best_view(setting.interior, setting.target, kind, &CArm::default());
    found.reached.then_some(found.orientation)
}

/// Moved by degrees of turn and tilt, to a tenth; `None` outside the machine's ranges.
pub(super) fn moved(from: Orientation, turn_deg: f64, tilt_deg: f64) -> Option<Orientation> {
    let at =
        tenths(Orientation { oblique_deg: from.oblique_deg + turn_deg, tilt_deg: from.tilt_deg + tilt_deg });
    CArm::at_degrees(at.oblique_deg, at.tilt_deg).ok().map(|_| at)
}

/// The projection of a film.
pub(super) fn view_at(setting: &Setting<'_>, at: Orientation) -> Projection {
    Projection::new(&arm_at(at), setting.interior.level(setting.target.level).centre)
}

/// Value over the limit of full marks, and over the limit at which marks end.
fn shares(setting: &Setting<'_>, at: Orientation, id: CriterionId) -> (f64, f64) {
    let found = criterion(setting.interior, setting.target, &arm_at(at), id, &Tolerances::default());
    let value = found.value.unwrap_or(f64::INFINITY).abs();
    // A process over the pedicle is not good, however well its edge stands.
    let overlaps = value <= found.tolerance.full && found.score < 1.0;
    (if overlaps { f64::INFINITY } else { value / found.tolerance.full }, value / found.tolerance.none)
}

/// The worse of a view's two criteria, over its limit of full marks.
fn worst(setting: &Setting<'_>, at: Orientation, kind: ViewKind) -> f64 {
    criteria_of_view(setting.target.level, kind)
        .map(|id| shares(setting, at, id).0)
        .into_iter()
        .fold(0.0, f64::max)
}

/// How the front rim of a level's upper plate stands over the back rim, mm at the plate, > 0 to the head.
fn front_over_back_mm(setting: &Setting<'_>, level: Level, view: &Projection) -> f64 {
    let plate = &setting.interior.level(level).upper_plate;
    let (front, back) =
        (plate.centre - plate.back * plate.half_depth, plate.centre + plate.back * plate.half_depth);
    let apart = view.project(front) - view.project(back);
    apart.dot(plate_cranial(view, plate)) / view.magnification_at(plate.centre)
}

/// What is seen of a view of a kind.
fn seen(setting: &Setting<'_>, at: Orientation, kind: ViewKind) -> Vec<Fact> {
    let view = view_at(setting, at);
    let level = setting.interior.level(setting.target.level);
    let turn = match kind {
        ViewKind::TrueAp => Some(spinous_offset_percent(&view, level))
            .filter(|p| p.is_finite())
            .map(|percent| Fact::Spinous { percent }),
        ViewKind::Lateral => Some(Fact::Lateral {
            mm: lateral_place(&view, setting.interior, setting.target.level).apart_mm(),
        }),
        ViewKind::SteepOblique => process_at_mid_plate_percent(&view, setting.interior, setting.target)
            .map(|percent| Fact::MidPlate { percent }),
        ViewKind::Oblique if setting.target.level == Level::S1 => {
            foramen_offset_mm(&view, setting.interior, setting.target.side)
                .map(|[mm, _]| Fact::Openings { mm })
        }
        ViewKind::Oblique => facet_place(&view, setting.interior, setting.target)
            .map(|f| Fact::Process { percent: f.offset_percent }),
    };
    let rims = match setting.target.level.below().filter(|_| kind == ViewKind::SteepOblique) {
        Some(below) => Fact::RimsBelow { mm: front_over_back_mm(setting, below, &view) },
        None => Fact::Rims { mm: front_over_back_mm(setting, setting.target.level, &view) },
    };
    turn.into_iter().chain([rims]).collect()
}

/// The larger of two wanted moves, and by how much it is the larger, degrees.
fn larger(turn_deg: f64, tilt_deg: f64) -> (Move, f64, f64) {
    let towards = match (turn_deg.abs() > tilt_deg.abs(), turn_deg > 0.0, tilt_deg > 0.0) {
        (true, true, _) => Move::Left,
        (true, false, _) => Move::Right,
        (false, _, true) => Move::Cephalad,
        (false, _, false) => Move::Caudad,
    };
    (towards, turn_deg.abs().max(tilt_deg.abs()), (turn_deg.abs() - tilt_deg.abs()).abs())
}

/// The views that moves are asked for; the way under the root is a lumbar one.
fn wanted_views(level: Level) -> &'static [ViewKind] {
    const ALL: [ViewKind; 4] =
        [ViewKind::TrueAp, ViewKind::Oblique, ViewKind::Oblique, ViewKind::SteepOblique];
    if level == Level::S1 { &ALL[..2] } else { &ALL }
}

/// Which way to turn or tilt.
pub(super) fn way(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let wanted = one_of(numbers, wanted_views(setting.target.level));
    let aim = best(setting, wanted)?;
    let off = sign(numbers) * between(numbers, setting.stage.off_deg);
    let aside = between(numbers, [-0.8, 0.8]);
    let turning = numbers.unit() < 0.5;
    let view = if turning { moved(aim, off, aside) } else { moved(aim, aside, off) }?;
    let (to, degrees, has) = larger(aim.oblique_deg - view.oblique_deg, aim.tilt_deg - view.tilt_deg);
    // The criteria say the same: one is far out, the other is met.
    let [of_turn, of_tilt] =
        criteria_of_view(setting.target.level, wanted).map(|id| shares(setting, view, id));
    let (out, within) = if turning { (of_turn, of_tilt) } else { (of_tilt, of_turn) };
    if out.0 < 1.5 || within.1 > 0.6 {
        return None;
    }
    let margin = Margin { has, least: WAY_LEAST_DEG, unit: "degrees" };
    let mut draft = Draft::new(view, Asked::Way { wanted }, margin);
    draft.seen = seen(setting, view, wanted);
    draft.reason = draft.seen.iter().copied().chain([Fact::Needed { to, degrees }]).collect();
    draft.truth = aim;
    let all = [Move::Left, Move::Right, Move::Cephalad, Move::Caudad].map(|to| Choice::Turn { to });
    draft.answered(all.to_vec(), Choice::Turn { to })
}

/// By how much.
pub(super) fn amount(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let wanted = one_of(numbers, wanted_views(setting.target.level));
    let aim = best(setting, wanted)?;
    let turning = numbers.unit() < 0.6;
    let offered = match (turning, wanted) {
        // So far a tilt would leave nothing of the view.
        (false, _) => &AMOUNTS_DEG[..3],
        // Full marks of the steep oblique reach some degrees to each side: the smallest turn would not be clear.
        (true, ViewKind::SteepOblique) => &AMOUNTS_DEG[1..],
        (true, _) => &AMOUNTS_DEG[..],
    };
    let about = one_of(numbers, offered);
    let size = f64::from(about) * between(numbers, [1.0 - AMOUNT_OFF, 1.0 + AMOUNT_OFF]);
    let off = sign(numbers) * size;
    let view = if turning { moved(aim, off, 0.0) } else { moved(aim, 0.0, off) }?;
    let (to, degrees, _) = larger(aim.oblique_deg - view.oblique_deg, aim.tilt_deg - view.tilt_deg);
    // Where the criterion has full marks already, nothing has to be moved.
    let [of_turn, of_tilt] =
        criteria_of_view(setting.target.level, wanted).map(|id| shares(setting, view, id));
    if if turning { of_turn.0 } else { of_tilt.0 } < 1.0 / GOOD_BAD.0 {
        return None;
    }
    let share = degrees / f64::from(about);
    // As a share of the answer: how much nearer it is than the next one, which is half or double of it.
    let has = (2.0 / share).min(share / 0.5) / share.max(1.0 / share);
    let margin = Margin { has, least: 1.3, unit: "times nearer than the next" };
    let mut draft = Draft::new(view, Asked::Amount { wanted, to }, margin);
    draft.seen = seen(setting, view, wanted);
    draft.reason = vec![Fact::Needed { to, degrees }];
    draft.truth = aim;
    draft.answered(AMOUNTS_DEG.map(|about| Choice::Degrees { about }).to_vec(), Choice::Degrees { about })
}

/// Which view a film is good for.
pub(super) fn step(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let kinds = [ViewKind::TrueAp, ViewKind::Oblique, ViewKind::Lateral];
    let meant = setting.wished(&[0, 1, 2, 3]);
    let view = match kinds.get(meant) {
        Some(&kind) => {
            moved(best(setting, kind)?, between(numbers, [-0.5, 0.5]), between(numbers, [-1.0, 1.0]))?
        }
        None => no_view(setting, numbers)?,
    };
    let asked = AskedView::usual(setting.target);
    let mut has = 1.0_f64;
    for (i, &kind) in kinds.iter().enumerate() {
        if i == meant {
            if worst(setting, view, kind) > GOOD_BAD.0 {
                return None;
            }
        } else {
            has = has.min(1.0 - view_score(setting.interior, &asked, kind, &arm_at(view)).score);
        }
    }
    let margin = Margin { has, least: STEP_LEAST, unit: "of full marks" };
    let mut draft = Draft::new(view, Asked::Step, margin);
    let mut facts = seen(setting, view, ViewKind::TrueAp);
    facts.extend(seen(setting, view, ViewKind::Oblique).first());
    facts.extend(seen(setting, view, ViewKind::Lateral).first());
    // Away from an AP the middle of the pedicles says nothing.
    facts.retain(|fact| !matches!(fact, Fact::Spinous { percent } | Fact::Process { percent } if percent.abs() > 300.0));
    (draft.seen, draft.reason) = (facts.clone(), facts);
    draft.truth = best(setting, kinds.get(meant).copied().unwrap_or(ViewKind::Oblique))?;
    let choices: Vec<Choice> =
        kinds.iter().map(|&view| Choice::View { view }).chain([Choice::NoView]).collect();
    let right = choices[meant];
    draft.answered(choices, right)
}

/// A film that is good for nothing: between AP and oblique, or at one of them with the plate not squared.
fn no_view(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Orientation> {
    let (ap, oblique) = (best(setting, ViewKind::TrueAp)?, best(setting, ViewKind::Oblique)?);
    if numbers.unit() < 0.5 {
        let share = between(numbers, [0.35, 0.65]);
        return moved(
            ap,
            share * (oblique.oblique_deg - ap.oblique_deg),
            share * (oblique.tilt_deg - ap.tilt_deg),
        );
    }
    let from = one_of(numbers, &[ap, oblique]);
    moved(from, 0.0, sign(numbers) * between(numbers, [11.0, 15.0]))
}

/// Whether a film is a true AP.
pub(super) fn true_ap(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let aim = best(setting, ViewKind::TrueAp)?;
    let all = [ApFinding::TrueAp, ApFinding::SpinousToLeft, ApFinding::SpinousToRight, ApFinding::NotSquared];
    let finding = setting.wished(&all);
    // Easier stages stand further off.
    let far = 0.5 * setting.stage.off_deg[1];
    let view = match finding {
        ApFinding::TrueAp => moved(aim, between(numbers, [-0.5, 0.5]), between(numbers, [-1.2, 1.2])),
        ApFinding::NotSquared => moved(
            aim,
            between(numbers, [-0.4, 0.4]),
            sign(numbers) * between(numbers, [10.5, 11.0 + 0.5 * far]),
        ),
        // Turned to the patient's left, the receptor sees the spinous process to the right.
        ApFinding::SpinousToLeft => {
            moved(aim, -between(numbers, [9.0, 9.0 + far]), between(numbers, [-1.2, 1.2]))
        }
        ApFinding::SpinousToRight => {
            moved(aim, between(numbers, [9.0, 9.0 + far]), between(numbers, [-1.2, 1.2]))
        }
    }?;
    let [spinous, squared] =
        criteria_of_view(setting.target.level, ViewKind::TrueAp).map(|id| shares(setting, view, id));
    let (good, bad) = GOOD_BAD;
    let offset =
        spinous_offset_percent(&view_at(setting, view), setting.interior.level(setting.target.level));
    let (found, has) = if spinous.1 > squared.1 && spinous.0 > 1.0 {
        let side = if offset > 0.0 { ApFinding::SpinousToLeft } else { ApFinding::SpinousToRight };
        (side, (spinous.1 / bad).min(good / squared.0))
    } else if squared.0 > 1.0 {
        (ApFinding::NotSquared, (squared.1 / bad).min(good / spinous.0))
    } else {
        (ApFinding::TrueAp, good / spinous.0.max(squared.0))
    };
    let margin = Margin { has, least: 1.0, unit: "times its limit" };
    let mut draft = Draft::new(view, Asked::TrueAp, margin);
    draft.seen = seen(setting, view, ViewKind::TrueAp);
    draft.reason = draft.seen.clone();
    draft.truth = aim;
    draft.answered(all.map(|ap| Choice::Ap { ap }).to_vec(), Choice::Ap { ap: found })
}

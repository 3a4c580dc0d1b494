//! Questions about contrast, and whether to go on. Truth: the space that the tip lies in ([`compartment_at`]), and how far medial of the
//! pedicle's 6 o'clock it stands.
//!
//! Margins: *spread*: all of a small ball about the tip lies in spaces of the same pattern, and of patterns that look alike only one is offered.
//! One root's space in three is filled from the way under the root. At S1 that space is the tunnel in front of the posterior opening; the sac, the
//! disc and the joint are not filled there, but offered. *stop*: the same, and the tip is at least 1.5 mm to one side of the 6 o'clock line where that
//! decides. A choice, no source.
//!
//! Not asked: stop without contrast under the root, since a tip up to 4 mm medial of 6 o'clock may still go on there and the film does not
//! show which way in was meant; stop without contrast at S1, where the pedicle's 6 o'clock decides nothing; stop for the sac at S1, which no
//! straight needle from its side reached in 400 tries on 20 patients (a test below).

use super::draft::{Draft, Setting, between, one_of, shuffle};
use super::needle_question::down_the_beam;
use super::question::{Asked, Choice, Decision, Fact, Injection, Margin};
use super::view_question::{best, moved, view_at};
use crate::anatomy::foramen::Approach;
use crate::anatomy::names::{Level, Side};
use crate::anatomy::seeded::Numbers;
use crate::anatomy::vessels::VesselKind;
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use crate::needle::compartment::{Compartment, Pattern, compartment_at};
use crate::needle::contrast::Bolus;
use crate::needle::reading;
use crate::needle::shaft::Needle;
use crate::view::best_view::{Orientation, ViewKind};
use glam::DVec3;

/// Ball about the tip that must lie in spaces of one pattern, mm: more than a 22 G bevel's half width.
const BALL_MM: f64 = 0.4;
/// Balls that are tried, mm.
const BALLS_MM: [f64; 6] = [0.1, 0.2, 0.3, 0.4, 0.6, 0.8];
/// Least distance from the 6 o'clock line where that decides, mm.
const MEDIAL_LEAST_MM: f64 = 1.5;
/// The tip comes this near to where it was sent, mm.
const REACHED_MM: f64 = 0.25;
/// Ways that are tried to a point.
const WAYS: usize = 14;

/// Patterns that look alike: of a row at most one is offered.
pub const ALIKE: [&[Pattern]; 6] = [
    &[Pattern::Perineural, Pattern::Intraneural],
    &[Pattern::Venous, Pattern::Arterial, Pattern::Mixed],
    &[Pattern::Intrathecal, Pattern::Subdural],
    &[Pattern::Muscular, Pattern::Peritoneal],
    &[Pattern::Intradiscal],
    &[Pattern::FacetJoint],
];

/// Where a tip must be for a pattern.
fn place(setting: &Setting<'_>, numbers: &mut Numbers, pattern: Pattern) -> Option<DVec3> {
    let (interior, target) = (setting.interior, setting.target);
    let level = interior.level(target.level);
    let plate = &level.upper_plate;
    let out = plate.left * target.side.sign();
    let foramen = interior.foramen(target.level, target.side)?;
    let mut about = |mm: f64| {
        DVec3::new(between(numbers, [-mm, mm]), between(numbers, [-mm, mm]), between(numbers, [-mm, mm]))
    };
    if target.level == Level::S1 {
        return sacral_place(setting, numbers, pattern);
    }
    match pattern {
        Pattern::Perineural => {
            let off = about(2.0);
            let approach =
                one_of(numbers, &[Approach::Subpedicular, Approach::Subpedicular, Approach::Infraneural]);
            Some(foramen.area(approach).centre() + off)
        }
        Pattern::Arterial | Pattern::Venous => {
            let wanted = |kind: VesselKind| match pattern {
                Pattern::Venous => kind == VesselKind::ForaminalVein,
                _ => matches!(kind, VesselKind::SegmentalArtery | VesselKind::RadiculomedullaryArtery),
            };
            let here = |v: &&crate::anatomy::vessels::Vessel| {
                wanted(v.kind) && v.level == Some(target.level) && v.side == Some(target.side)
            };
            let nodes: Vec<DVec3> = interior
                .vessels()
                .iter()
                .filter(here)
                .flat_map(|v| v.course.iter().map(|n| n.point))
                .collect();
            (!nodes.is_empty()).then(|| one_of(numbers, &nodes))
        }
        Pattern::Intrathecal => {
            let height = (foramen.ring.centre - level.centre).dot(plate.normal);
            let middle = level.posterior_wall + plate.normal * height + plate.back * 8.0;
            let sac = &interior.nerves().sac;
            let near =
                sac.iter().min_by(|a, b| a.point.distance(middle).total_cmp(&b.point.distance(middle)))?;
            Some(near.point + out * (0.45 * near.half_width_mm) + about(1.5))
        }
        Pattern::Muscular => Some(
            foramen.subpedicular.centre()
                + plate.back * between(numbers, [22.0, 34.0])
                + out * between(numbers, [8.0, 16.0]),
        ),
        Pattern::Intradiscal => {
            let below = interior.level(target.level.below()?).upper_plate;
            let middle = (level.lower_plate?.centre + below.centre) / 2.0;
            Some(middle + out * between(numbers, [4.0, 10.0]) + plate.back * between(numbers, [0.0, 5.0]))
        }
        Pattern::FacetJoint => {
            let below = interior.level(target.level.below()?).side(target.side);
            Some(below.superior_facet + about(1.5))
        }
        _ => None,
    }
}

/// At S1: in the tunnel in front of the posterior opening, in a vein there, or in the muscle behind it.
fn sacral_place(setting: &Setting<'_>, numbers: &mut Numbers, pattern: Pattern) -> Option<DVec3> {
    let (interior, side) = (setting.interior, setting.target.side);
    let opening = &interior.foramen(Level::S1, side)?.subpedicular;
    let mut about = |mm: f64| {
        DVec3::new(between(numbers, [-mm, mm]), between(numbers, [-mm, mm]), between(numbers, [-mm, mm]))
    };
    match pattern {
        Pattern::Perineural => {
            let off = about(1.5);
            Some(opening.centre() - opening.normal() * between(numbers, [2.0, 9.0]) + off)
        }
        Pattern::Muscular => {
            let off = about(6.0);
            Some(opening.centre() + opening.normal() * between(numbers, [9.0, 20.0]) + off)
        }
        Pattern::Venous => {
            let here = interior.vessels().iter().filter(|v| {
                v.kind == VesselKind::ForaminalVein && v.level == Some(Level::S1) && v.side == Some(side)
            });
            let nodes: Vec<DVec3> = here.flat_map(|v| v.course.iter().map(|n| n.point)).collect();
            (!nodes.is_empty()).then(|| one_of(numbers, &nodes))
        }
        _ => None,
    }
}

/// From where a place can be reached, degrees of turn to the side and of tilt: the sac between the laminae, all else from the side.
fn ways(pattern: Pattern) -> [[f64; 2]; 2] {
    match pattern {
        Pattern::Intrathecal => [[-6.0, 24.0], [-35.0, 35.0]],
        _ => [[-12.0, 55.0], [-25.0, 25.0]],
    }
}

/// A straight needle from behind whose tip comes to a point past all bone, from whichever way is free.
fn reach(setting: &Setting<'_>, numbers: &mut Numbers, aim: DVec3, ways: [[f64; 2]; 2]) -> Option<Needle> {
    let side: Side = setting.target.side;
    (0..WAYS).find_map(|_| {
        let oblique_deg = side.sign() * between(numbers, ways[0]);
        let tilt_deg = between(numbers, ways[1]);
        let arm = CArm::at_degrees(oblique_deg, tilt_deg).ok()?;
        let needle = down_the_beam(setting.interior, &Projection::new(&arm, aim), aim, 0.0)?;
        (needle.tip().position.distance(aim) < REACHED_MM).then_some(needle)
    })
}

/// The largest ball about a tip in spaces of its own pattern, mm.
fn clear_mm(interior: &crate::anatomy::interior::Interior, tip: DVec3) -> f64 {
    let own = compartment_at(interior, tip).pattern();
    let mut clear = 0.0;
    for radius in BALLS_MM {
        let round = (-1..=1).flat_map(|x| (-1..=1).flat_map(move |y| (-1..=1).map(move |z| (x, y, z))));
        let same = round
            .filter(|&direction| direction != (0, 0, 0))
            .map(|(x, y, z)| DVec3::new(f64::from(x), f64::from(y), f64::from(z)).normalize() * radius)
            .all(|off| compartment_at(interior, tip + off).pattern() == own);
        if !same {
            break;
        }
        clear = radius;
    }
    clear
}

/// What is injected where, and when it is looked at.
fn injected(setting: &Setting<'_>, tip: DVec3) -> Injection {
    let compartment = compartment_at(setting.interior, tip);
    // Into a vessel less, and faster: the syringe is small and the blood takes it away. A choice, no source.
    let (volume_ml, lasts_s, after_s) = match compartment {
        Compartment::Intravascular { .. } => (0.5, 0.8, 4.0),
        Compartment::FacetJoint { .. } => (0.6, 3.0, 4.0),
        _ => (1.2, 4.0, 4.0),
    };
    Injection {
        bolus: Bolus { tip, compartment, volume_ml, begun_s: 0.0, ended_s: lasts_s },
        during_s: lasts_s,
        later_s: lasts_s + after_s,
    }
}

/// What is asked for, more often what is wanted.
const LUMBAR_PATTERNS: [Pattern; 8] = [
    Pattern::Perineural,
    Pattern::Perineural,
    Pattern::Venous,
    Pattern::Arterial,
    Pattern::Intrathecal,
    Pattern::Muscular,
    Pattern::Intradiscal,
    Pattern::FacetJoint,
];
/// At S1.
const SACRAL_PATTERNS: [Pattern; 3] = [Pattern::Perineural, Pattern::Venous, Pattern::Muscular];

/// A needle whose tip lies where contrast shows a pattern.
fn needle_in(setting: &Setting<'_>, numbers: &mut Numbers, pattern: Pattern) -> Option<Needle> {
    let aim = place(setting, numbers, pattern)?;
    let needle = reach(setting, numbers, aim, ways(pattern))?;
    let found = compartment_at(setting.interior, needle.tip().position).pattern();
    (found == pattern).then_some(needle)
}

/// A film on which contrast alone decides.
fn with_contrast(
    setting: &Setting<'_>,
    view: Orientation,
    asked: Asked,
    needle: Needle,
    pattern: Pattern,
) -> Draft {
    let tip = needle.tip().position;
    let margin = Margin { has: clear_mm(setting.interior, tip), least: BALL_MM, unit: "mm" };
    let mut draft = Draft::new(view, asked, margin);
    draft.injection = Some(injected(setting, tip));
    draft.needle = Some(needle);
    draft.seen = vec![Fact::Contrast { pattern }];
    draft.reason = draft.seen.clone();
    draft
}

/// What did the contrast fill?
pub(super) fn spread(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let pattern = if setting.target.level == Level::S1 {
        setting.wished(&SACRAL_PATTERNS)
    } else {
        setting.wished(&LUMBAR_PATTERNS)
    };
    let needle = needle_in(setting, numbers, pattern)?;
    let ap = best(setting, ViewKind::TrueAp)?;
    let view = moved(ap, between(numbers, [-2.0, 2.0]), between(numbers, [-2.0, 2.0]))?;
    let mut rows: Vec<&[Pattern]> = ALIKE.into_iter().filter(|row| !row.contains(&pattern)).collect();
    shuffle(numbers, &mut rows);
    let mut choices: Vec<Choice> = rows
        .iter()
        .take(3)
        .map(|row| Choice::Pattern { pattern: row[0] })
        .chain([Choice::Pattern { pattern }])
        .collect();
    shuffle(numbers, &mut choices);
    let mut draft = with_contrast(setting, view, Asked::Spread, needle, pattern);
    draft.truth = best(setting, ViewKind::Lateral)?;
    draft.answered(choices, Choice::Pattern { pattern })
}

/// Stop or go on at S1, by the contrast alone.
fn sacral_stop(setting: &Setting<'_>, numbers: &mut Numbers, all: &[Decision]) -> Option<Draft> {
    let decision = setting.wished(&[Decision::GoOn, Decision::StopVessel]);
    let pattern = if decision == Decision::GoOn { Pattern::Perineural } else { Pattern::Venous };
    let needle = needle_in(setting, numbers, pattern)?;
    let ap = best(setting, ViewKind::TrueAp)?;
    let view = moved(ap, between(numbers, [-0.6, 0.6]), between(numbers, [-1.5, 1.5]))?;
    let draft = with_contrast(setting, view, Asked::Stop { contrast: true }, needle, pattern);
    draft.answered(
        all.iter().map(|&decision| Choice::Decide { decision }).collect(),
        Choice::Decide { decision },
    )
}

/// Stop or go on?
pub(super) fn stop(setting: &Setting<'_>, numbers: &mut Numbers) -> Option<Draft> {
    let all = [Decision::GoOn, Decision::StopMedial, Decision::StopVessel, Decision::StopSac];
    let (interior, target) = (setting.interior, setting.target);
    let level = interior.level(target.level);
    if target.level == Level::S1 {
        return sacral_stop(setting, numbers, &all);
    }
    let decision = setting.wished(&all);
    let contrast = match decision {
        Decision::GoOn => numbers.unit() < 0.5,
        Decision::StopMedial => false,
        _ => true,
    };
    let plate = &level.upper_plate;
    let aim = match (decision, contrast) {
        (Decision::GoOn | Decision::StopMedial, false) => {
            let ring = &level.side(target.side).pedicle;
            let aside = between(numbers, [2.0, 6.0]) * if decision == Decision::GoOn { 1.0 } else { -1.0 };
            let down = ring.up.length() + between(numbers, [1.0, 5.0]);
            ring.centre + plate.left * (target.side.sign() * aside) - plate.normal * down
                + plate.back * between(numbers, [-2.0, 4.0])
        }
        (Decision::StopVessel, _) => {
            let pattern = one_of(numbers, &[Pattern::Venous, Pattern::Arterial]);
            place(setting, numbers, pattern)?
        }
        (Decision::StopSac, _) => place(setting, numbers, Pattern::Intrathecal)?,
        _ => place(setting, numbers, Pattern::Perineural)?,
    };
    let through = if decision == Decision::StopSac { Pattern::Intrathecal } else { Pattern::Perineural };
    let needle = reach(setting, numbers, aim, ways(through))?;
    let tip = needle.tip().position;
    let ap = best(setting, ViewKind::TrueAp)?;
    let view_angles = moved(ap, between(numbers, [-0.6, 0.6]), between(numbers, [-1.5, 1.5]))?;
    let view = view_at(setting, view_angles);
    let read = reading::clock(&view, interior, target.level, target.side, tip);
    let medial = reading::medial_of_six_mm(interior, target.level, target.side, tip)?;
    let pattern = compartment_at(interior, tip).pattern();
    let clear = clear_mm(interior, tip);
    // Picture and anatomy must say the same of the 6 o'clock line.
    let lateral = (-read.medial_mm).min(-medial);
    let (found, has, least) = if contrast {
        let found = match pattern {
            Pattern::Perineural if lateral >= MEDIAL_LEAST_MM => Decision::GoOn,
            // One reason to stop, not two.
            Pattern::Venous | Pattern::Arterial if lateral >= MEDIAL_LEAST_MM => Decision::StopVessel,
            Pattern::Intrathecal => Decision::StopSac,
            _ => return None,
        };
        (found, clear, BALL_MM)
    } else if pattern == Pattern::Perineural && lateral > 0.0 {
        (Decision::GoOn, lateral, MEDIAL_LEAST_MM)
    } else {
        (Decision::StopMedial, read.medial_mm.min(medial), MEDIAL_LEAST_MM)
    };
    let margin = Margin { has, least, unit: "mm" };
    let mut draft = Draft::new(view_angles, Asked::Stop { contrast }, margin);
    draft.injection = contrast.then(|| injected(setting, tip));
    draft.needle = Some(needle);
    let below_mm = -((view.project(tip) - view.project(level.side(target.side).pedicle.centre))
        .dot(crate::view::image_axes::image_axes(&view, plate).cranial)
        / view.magnification_at(tip));
    draft.seen = vec![Fact::Tip { lateral_mm: -read.medial_mm, below_mm }];
    if contrast {
        draft.seen.push(Fact::Contrast { pattern });
    }
    draft.reason =
        if contrast { vec![Fact::Contrast { pattern }] } else { vec![Fact::Medial { mm: read.medial_mm }] };
    draft.answered(
        all.map(|decision| Choice::Decide { decision }).to_vec(),
        Choice::Decide { decision: found },
    )
}

#[cfg(test)]
mod tests {
    use super::super::stage::{STAGES, patient};
    use super::*;
    use crate::anatomy::interior::Interior;
    use crate::view::criteria::Target;

    /// Why stop for the sac is not asked at S1.
    #[test]
    fn the_sac_is_not_reached_at_s1() {
        let (mut tried, mut reached, mut inside) = (0, 0, 0);
        for seed in 0..20 {
            let mut numbers = Numbers::stream(seed, 0x5ac);
            let stage = &STAGES[seed as usize % STAGES.len()];
            let interior = &Interior::of(&patient(stage, &mut numbers));
            let target = Target { level: Level::S1, side: Side::BOTH[seed as usize % 2] };
            let setting = Setting { stage, interior, target, wish: 0.0 };
            let opening = interior.foramen(Level::S1, target.side).unwrap().subpedicular.centre();
            let near = interior
                .nerves()
                .sac
                .iter()
                .min_by(|a, b| a.point.distance(opening).total_cmp(&b.point.distance(opening)))
                .unwrap();
            let out = interior.level(Level::S1).upper_plate.left * target.side.sign();
            for _ in 0..20 {
                tried += 1;
                let aim = near.point + out * (near.half_width_mm * between(&mut numbers, [0.0, 0.8]));
                inside += u32::from(compartment_at(interior, aim).pattern() == Pattern::Intrathecal);
                reached +=
                    u32::from(reach(&setting, &mut numbers, aim, [[0.0, 60.0], [-35.0, 35.0]]).is_some());
            }
        }
        println!("{tried} tried, {inside} in the sac, {reached} reached");
        assert!(reached * 20 < tried, "{reached} of {tried}");
    }
}

//! Criteria, advice and best view on the whole model.

use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::{CriterionId, Target, plate_angle};
use downbeam::view::feedback::Control;
use downbeam::view::report::{AskedView, Report, criterion, report};
use downbeam::view::tolerance::Tolerances;
use proptest::prelude::*;
use std::sync::LazyLock;

static PATIENT: LazyLock<Patient> = LazyLock::new(|| Patient::new(&PatientSpec::named("average").unwrap()));

fn at(patient: &Patient, target: Target, oblique_deg: f64, tilt_deg: f64) -> Report {
    report(patient, &AskedView::usual(target), &CArm::at_degrees(oblique_deg, tilt_deg).unwrap())
}

#[test]
fn best_views_give_full_marks_for_every_patient_level_and_side() {
    for spec in PatientSpec::all() {
        let patient = Patient::new(spec);
        for level in Level::TARGETS {
            for side in Side::BOTH {
                let target = Target { level, side };
                let rest = at(&patient, target, 0.0, 0.0);
                for (i, kind) in ViewKind::ALL.into_iter().enumerate() {
                    assert!(rest.views[i].reached, "{} {level} {side} {kind:?}", spec.name);
                    let best = rest.views[i].best;
                    let there = at(&patient, target, best.oblique_deg, best.tilt_deg);
                    assert_eq!(there.views[i].score, 1.0, "{} {level} {side} {kind:?} {best:?}", spec.name);
                }
            }
        }
    }
}

/// Three degrees off the best oblique is still one; away from it the value grows without a turn, to both sides and up to the plain AP; and as far
/// from a steep oblique as ten degrees is seen in the marks (common practice, no source).
#[test]
fn the_oblique_is_told_from_the_ap() {
    for level in Level::TARGETS.into_iter().filter(|&level| level != Level::S1) {
        let target = Target { level, side: Side::Left };
        let interior = &PATIENT.interior;
        let tolerances = Tolerances::default();
        let rest = CArm::at_degrees(0.0, 0.0).unwrap();
        for (kind, id) in [
            (ViewKind::Oblique, CriterionId::FacetUnderPedicle),
            (ViewKind::SteepOblique, CriterionId::ProcessAtMidPlate),
        ] {
            let best = best_view(interior, target, kind, &rest).orientation;
            let at = |oblique_deg: f64| {
                let arm = CArm::at_degrees(oblique_deg, best.tilt_deg).unwrap();
                criterion(interior, target, &arm, id, &tolerances)
            };
            let off = |degrees: f64| at(best.oblique_deg + degrees).score;
            assert!(off(3.0) == 1.0 && off(-3.0) == 1.0, "{level} {kind:?}: {} {}", off(3.0), off(-3.0));
            let values: Vec<f64> =
                (-4..=8).map(|i| at(best.oblique_deg + 5.0 * f64::from(i)).value.unwrap()).collect();
            assert!(values.is_sorted_by(|a, b| a > b), "{level} {kind:?}: {values:?}");
            if kind == ViewKind::SteepOblique {
                assert!(off(-best.oblique_deg) < 0.05, "{level} {kind:?}: {}", off(-best.oblique_deg));
                assert!(
                    off(10.0) < 0.8 && off(-10.0) < 0.8,
                    "{level} {kind:?}: {} {}",
                    off(10.0),
                    off(-10.0)
                );
            } else {
                assert!(
                    at(0.0).value.unwrap() > tolerances.facet_percent.full,
                    "{level}: {:?}",
                    at(0.0).value
                );
            }
        }
    }
}

/// A mirror-image target has the mirror-image best view in the straight patient.
#[test]
fn left_and_right_are_mirror_images() {
    for level in Level::TARGETS {
        let [l, r] = Side::BOTH.map(|side| at(&PATIENT, Target { level, side }, 0.0, 0.0).best);
        assert!(
            (l.oblique_deg + r.oblique_deg).abs() < 1e-6 && (l.tilt_deg - r.tilt_deg).abs() < 1e-6,
            "{level}"
        );
    }
}

/// The ray through the plate is used, not the central ray: with the table moved so that the plate leaves the centre, another tilt
/// squares it (common practice, no source; the size by the pinhole: atan(50 / 700) is 4.1 degrees).
#[test]
fn squaring_is_judged_by_the_ray_through_the_plate() {
    let centre = PATIENT.level(Level::L4).centre;
    let plate = PATIENT.level(Level::L4).upper_plate;
    let straight = CArm::default();
    let moved = CArm { table_shift_mm: glam::DVec3::Z * 50.0, ..straight };
    let change = plate_angle(&Projection::new(&moved, centre), &plate)
        - plate_angle(&Projection::new(&straight, centre), &plate);
    assert!((change.abs().to_degrees() - 4.1).abs() < 0.2, "{}", change.to_degrees());
}

#[test]
fn facet_criterion_wants_the_top_below_the_pedicle() {
    let target = Target { level: Level::L4, side: Side::Left };
    let best = at(&PATIENT, target, 0.0, 0.0).best;
    let score = |tilt_deg: f64| {
        let report = at(&PATIENT, target, best.oblique_deg, best.tilt_deg + tilt_deg);
        report.criteria.iter().find(|c| c.id == CriterionId::FacetUnderPedicle).unwrap().score
    };
    assert_eq!(score(0.0), 1.0);
    // Far enough caudad or cephalad the process rides up into the eye.
    assert!(score(-45.0).min(score(45.0)) < 1.0);
}

#[test]
fn report_speaks_of_the_target_frame() {
    let target = Target { level: Level::L3, side: Side::Right };
    let report = at(&PATIENT, target, 12.0, -4.0);
    let centre = report.landmarks.iter().find(|l| l.name == "body_centre" && l.level == Level::L3).unwrap();
    assert!(centre.patient_mm.iter().all(|x| x.abs() < 1e-9));
    assert!(centre.detector_mm.iter().all(|x| x.abs() < 1e-9));
    assert!(
        (report.dicom.primary_deg - 168.0).abs() < 1e-9 && (report.dicom.secondary_deg + 4.0).abs() < 1e-9
    );
    assert_eq!(report.dog.len(), 7);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Whatever the orientation: scores are scores, and following the advice brings the value to its zero.
    #[test]
    fn advice_leads_to_the_zero(
        oblique_deg in -60.0_f64..60.0,
        tilt_deg in -30.0_f64..30.0,
        level in prop::sample::select(Level::TARGETS.to_vec()),
        left in any::<bool>(),
    ) {
        let target = Target { level, side: if left { Side::Left } else { Side::Right } };
        let here = at(&PATIENT, target, oblique_deg, tilt_deg);
        for c in &here.criteria {
            prop_assert!((0.0..=1.0).contains(&c.score));
            prop_assert!(!c.sentence.is_empty());
            let Some(advice) = c.advice else { continue };
            let sign = if matches!(advice.direction, "left" | "cephalad") { 1.0 } else { -1.0 };
            let (o, t) = match advice.control {
                Control::Oblique => (oblique_deg + sign * advice.amount_deg, tilt_deg),
                Control::Tilt => (oblique_deg, tilt_deg + sign * advice.amount_deg),
            };
            if o.abs() > 110.0 || t.abs() > 50.0 {
                continue;
            }
            let there = at(&PATIENT, target, o, t);
            let after = there.criteria.iter().find(|k| k.id == c.id).unwrap();
            // The lateral and foramen values are distances of which one control moves one part.
            let zero = !matches!(c.id, CriterionId::Lateral | CriterionId::ForamenAligned);
            let (before, after) = (c.value.unwrap_or(f64::MAX).abs(), after.value.unwrap_or(f64::MAX).abs());
            prop_assert!(if zero { after < 0.05 } else { after <= before * 1.02 + 0.1 }, "{:?}: {} -> {}", c.id, before, after);
        }
    }
}

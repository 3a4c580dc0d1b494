//! What the page shows of a view is what keeping it is marked with: for every lesson, with its own patient, way in and limits, at the best
//! view and off it.

mod common;

use common::Hand;
use common::learner::{course, shipped};
use downbeam::anatomy::foramen::Approach;
use downbeam::anatomy::patient::Patient;
use downbeam::lesson::draw::drawn;
use downbeam::procedure::action::Action;
use downbeam::procedure::step::StepId;
use downbeam::score::rubric::step;
use downbeam::view::best_view::ViewKind;
use downbeam::view::report::report;

#[test]
fn the_report_is_what_is_marked() {
    let (mut compared, mut between) = (0, 0);
    for id in course() {
        let lesson = shipped(&id);
        let drawn = drawn(&lesson, "one report").unwrap();
        let patient = Patient::new(&drawn.spec);
        for approach in [drawn.case.approach, Approach::Infraneural] {
            let case = downbeam::procedure::case::Case { approach, ..drawn.case };
            let asked = case.asked(approach);
            for view in ViewKind::ALL {
                // From where the lesson begins: its table need not have the target at the isocentre.
                let arm = Hand::new(case, &patient.interior).attempt.state.arm;
                let best =
                    report(&patient, &asked, &arm).views.into_iter().find(|v| v.view == view).unwrap().best;
                for off in
                    [[0.0, 0.0], [2.0, 0.0], [-2.0, 0.0], [0.0, 2.0], [5.0, 0.0], [-5.0, 0.0], [0.0, 5.0]]
                {
                    let tenths = |deg: f64| (deg * 10.0).round() as i32;
                    let (oblique_tenths, tilt_tenths) =
                        (tenths(best.oblique_deg + off[0]), tenths(best.tilt_deg + off[1]));
                    let mut hand = Hand::new(case, &patient.interior);
                    hand.act(Action::Orient { oblique_tenths, tilt_tenths });
                    let said = report(&patient, &asked, &hand.attempt.state.arm);
                    let shown = said.views.iter().find(|v| v.view == view).unwrap().score;
                    hand.act(Action::Keep { view });
                    let marked = match view {
                        ViewKind::TrueAp => StepId::TrueAp,
                        ViewKind::Lateral => StepId::Lateral,
                        _ => StepId::Oblique,
                    };
                    let marks = step(&case, &patient.interior, &hand.attempt.state, marked).score.unwrap();
                    assert_eq!(
                        shown.to_bits(),
                        marks.to_bits(),
                        "{id} {approach:?} {view:?} {off:?}: {shown} {marks}"
                    );
                    compared += 1;
                    between += u32::from(shown > 0.0 && shown < 1.0);
                    if off == [0.0, 0.0] {
                        assert!(shown > 0.9, "{id} {approach:?} {view:?}: {shown}");
                    }
                }
            }
        }
    }
    assert!(compared > 500 && between > 60, "{compared} {between}");
}

//! Hands that do harm: none passes a lesson, however well it does the rest, and each is stopped by its gate.

mod common;

use common::Hand;
use common::learner::{course, is_of_needle, log, shipped};
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::nerves::Node;
use downbeam::lesson::draw::{Interiors, drawn};
use downbeam::lesson::file::Lesson;
use downbeam::lesson::marks::lesson_score;
use downbeam::needle::contact::ContactKind;
use downbeam::needle::device::Gauge;
use downbeam::procedure::action::{Action, Event};
use downbeam::procedure::attempt::Attempt;
use downbeam::procedure::case::Case;
use downbeam::procedure::record::Aspirate;
use downbeam::procedure::step::StepId;
use downbeam::score::gate::GateId;
use downbeam::view::best_view::ViewKind;
use downbeam::view::criteria::Target;
use glam::DVec3;

type Harm = fn(&Lesson, &Case, &Interior) -> Vec<Event>;

/// Each hand, the gate that is to tell it, and the steps of which a lesson must ask for one so that it applies.
const HANDS: [(&str, Harm, GateId, &[StepId]); 14] = [
    ("nothing done", |_, _, _| vec![Event(0, Action::Finish)], GateId::Complete, StepId::ALL),
    ("through the root", through_root, GateId::Root, &[StepId::Contacts]),
    ("through the dura", through_dura, GateId::Dura, &[StepId::Contacts]),
    ("paraesthesia ignored", pain_ignored, GateId::Paraesthesia, &[StepId::Contacts]),
    ("blood ignored", blood_ignored, GateId::Blood, &[StepId::Contrast]),
    ("medial before contrast", medial, GateId::Medial, &[StepId::Contrast]),
    ("no contrast", no_contrast, GateId::ContrastLive, &[StepId::Contrast]),
    ("contrast not live", not_live, GateId::ContrastLive, &[StepId::Contrast]),
    ("wrong compartment left", left_in_muscle, GateId::Compartment, &[StepId::Contrast]),
    ("wrong side", wrong_side, GateId::Target, &[StepId::Target]),
    ("wrong level", wrong_level, GateId::Target, &[StepId::Target]),
    ("views skipped", no_views, GateId::Views, &[StepId::TrueAp, StepId::Oblique]),
    ("views at nothing", straight_views, GateId::Views, &[StepId::Oblique]),
    ("blind turning", blind, GateId::Steering, &[StepId::Steering]),
];

#[test]
fn no_harmful_hand_passes() {
    let mut interiors = Interiors::default();
    let mut caught = [0_u32; HANDS.len()];
    let mut problems = Vec::new();
    for id in course() {
        let lesson = shipped(&id);
        let drawn = drawn(&lesson, "harm").unwrap();
        let interior = interiors.of(&drawn.spec);
        for (i, (name, harm, gate, applies)) in HANDS.into_iter().enumerate() {
            let not_live = name == "contrast not live" && !drawn.case.exposures;
            let elsewhere = matches!(gate, GateId::Medial) && drawn.case.target.level == Level::S1;
            if !applies.iter().any(|s| lesson.steps.contains(s)) || not_live || elsewhere {
                continue;
            }
            let mut attempt = Attempt::new(drawn.case);
            for event in harm(&lesson, &drawn.case, interior) {
                // What cannot be done without what was left out is left out too.
                let _ = attempt.apply(interior, event);
            }
            let score = lesson_score(&lesson, &drawn, interior, &attempt.state);
            if score.passed {
                problems.push(format!("{name} passes {id} with {}", score.total));
            }
            caught[i] += u32::from(score.gates.iter().any(|g| g.id == gate && !g.passed));
        }
    }
    for (n, (name, _, gate, _)) in caught.iter().zip(HANDS) {
        println!("{name}: caught by {} in {n} lessons", gate.id());
        if *n == 0 {
            problems.push(format!("{name} is never caught by {}", gate.id()));
        }
    }
    assert!(problems.is_empty(), "\n{}", problems.join("\n"));
}

fn begun<'a>(case: &Case, interior: &'a Interior) -> Hand<'a> {
    let mut hand = Hand::new(*case, interior);
    hand.set_up(ViewKind::TrueAp);
    hand.set_up(ViewKind::Oblique);
    hand
}

/// Takes the needle out and does all the rest well.
fn then_well(mut hand: Hand<'_>) -> Vec<Event> {
    if hand.attempt.state.needle.is_some() {
        hand.act(Action::Remove);
    }
    hand.looks = true;
    hand.inject_everything();
    hand.attempt.log
}

fn along(course: &[Node]) -> Vec<DVec3> {
    let steps = (0..=6).map(|i| f64::from(i) / 6.0);
    course.windows(2).flat_map(|p| steps.clone().map(|t| p[0].point.lerp(p[1].point, t))).collect()
}

/// At a root of the target, met by the first of its points that a needle reaches; the rest of the way is `on`.
fn at_root(case: &Case, interior: &Interior, on: fn(&mut Hand<'_>)) -> Vec<Event> {
    let root = interior.nerves().root(case.target.level, case.target.side).unwrap();
    for aim in along(&root.course) {
        let mut hand = begun(case, interior);
        hand.looks = false;
        hand.drive_to(Gauge::G22, aim);
        if hand.hurts() {
            on(&mut hand);
            return then_well(hand);
        }
    }
    begun(case, interior).attempt.log
}

fn through_root(_: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    at_root(case, interior, |hand| hand.act(Action::Advance { mm_tenths: 60, spin_percent: 0 }))
}

fn pain_ignored(_: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    at_root(case, interior, |hand| hand.act(Action::Inject { ml_hundredths: 20 }))
}

fn through_dura(_: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    // Between the laminae of the level and the next, from the midline.
    let middle = interior.level(case.target.level).centre;
    let near = || interior.nerves().sac.iter().filter(move |n| (n.point - middle).z.abs() < 45.0);
    for node in near() {
        let mut hand = Hand::new(*case, interior);
        hand.set_up(ViewKind::TrueAp);
        hand.looks = false;
        hand.drive_to(Gauge::G22, node.point);
        if hand.attempt.state.contacts.iter().any(|m| m.contact.kind == ContactKind::Dura) {
            return then_well(hand);
        }
    }
    for node in near() {
        // Where the laminae close the way, from the side through the foramen.
        let mut hand = begun(case, interior);
        hand.looks = false;
        hand.drive_to(
            Gauge::G22,
            node.point + node.left * (case.target.side.sign() * node.half_width_mm * 0.6),
        );
        if hand.attempt.state.contacts.iter().any(|m| m.contact.kind == ContactKind::Dura) {
            return then_well(hand);
        }
    }
    Hand::new(*case, interior).attempt.log
}

fn blood_ignored(_: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    let here = |level, side| level == Some(case.target.level) && side == Some(case.target.side);
    for aim in interior.vessels().iter().filter(|v| here(v.level, v.side)).flat_map(|v| along(&v.course)) {
        let mut hand = begun(case, interior);
        hand.looks = false;
        hand.drive_to(Gauge::G22, aim);
        hand.act(Action::Aspirate);
        if hand.attempt.state.aspirated == Some(Aspirate::Blood) {
            hand.inject();
            return then_well(hand);
        }
    }
    begun(case, interior).attempt.log
}

fn medial(_: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    let landmarks = interior.level(case.target.level);
    let pedicle = landmarks.side(case.target.side).pedicle;
    let inwards = landmarks.upper_plate.left * -case.target.side.sign();
    for (medial, down) in [(5.0, 4.0), (6.0, 7.0), (8.0, 10.0), (7.0, 13.0), (6.0, 16.0), (9.0, 20.0)] {
        let mut hand = begun(case, interior);
        hand.looks = false;
        let under = pedicle.centre - pedicle.up + inwards * medial - landmarks.upper_plate.normal * down;
        hand.drive_to(Gauge::G22, under);
        if hand.attempt.state.medial_mm.is_some_and(|mm| mm > 6.0) {
            return then_well(hand);
        }
    }
    begun(case, interior).attempt.log
}

fn well_without(
    lesson: &Lesson,
    case: &Case,
    interior: &Interior,
    left_out: fn(&Action) -> bool,
) -> Vec<Event> {
    let mut log = well(lesson, case, interior);
    log.retain(|e| !left_out(&e.1));
    log
}

fn well(lesson: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    let drawn = downbeam::lesson::draw::Drawn { case: *case, ..drawn(lesson, "harm").unwrap() };
    log(lesson, &drawn, interior, 0)
}

fn no_contrast(lesson: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    well_without(lesson, case, interior, |a| matches!(a, Action::Inject { .. } | Action::Name { .. }))
}

fn not_live(lesson: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    well_without(lesson, case, interior, |a| matches!(a, Action::Fluoroscopy { .. }))
}

fn no_views(lesson: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    well_without(lesson, case, interior, |a| matches!(a, Action::Keep { .. }))
}

fn straight_views(lesson: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    let mut log = well(lesson, case, interior);
    for Event(_, action) in &mut log {
        if let Action::Orient { oblique_tenths, .. } = action {
            *oblique_tenths = 0;
        }
    }
    log
}

fn left_in_muscle(_: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    let mut hand = Hand::new(*case, interior);
    hand.inject_carefully();
    hand.act(Action::Withdraw { mm_tenths: 250 });
    hand.act(Action::Aspirate);
    hand.inject();
    hand.act(Action::Finish);
    hand.attempt.log
}

fn elsewhere(lesson: &Lesson, case: &Case, interior: &Interior, level: Level, side: Side) -> Vec<Event> {
    // A picture's middle is the target's: the table makes good for it, as on the page.
    let other = Case { target: Target { level, side }, approach: case.approach, ..*case };
    let shift = (interior.level(case.target.level).centre - interior.level(level).centre) * 10.0;
    let [left_mm_tenths, back_mm_tenths, head_mm_tenths] = shift.to_array().map(|mm| mm.round() as i32);
    let mut log = well(lesson, &other, interior);
    if level != case.target.level {
        log.insert(0, Event(0, Action::MoveTable { left_mm_tenths, back_mm_tenths, head_mm_tenths }));
    }
    log
}

fn wrong_side(lesson: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    let side = if case.target.side == Side::Left { Side::Right } else { Side::Left };
    elsewhere(lesson, case, interior, case.target.level, side)
}

fn wrong_level(lesson: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    let level = if case.target.level == Level::L4 { Level::L3 } else { Level::L4 };
    elsewhere(lesson, case, interior, level, case.target.side)
}

fn blind(lesson: &Lesson, case: &Case, interior: &Interior) -> Vec<Event> {
    if !lesson.steps.iter().any(|s| is_of_needle(*s)) {
        return Vec::new();
    }
    let mut hand = Hand { looks: false, ..Hand::new(*case, interior) };
    hand.inject_everything();
    hand.attempt.log
}

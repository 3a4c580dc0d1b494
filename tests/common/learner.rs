//! A learner who does a whole lesson with the careful hand.

use super::Hand;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Label, Level, Part};
use downbeam::class::receipt::Receipt;
use downbeam::lesson::draw::{Drawn, Interiors, drawn};
use downbeam::lesson::file::Lesson;
use downbeam::lesson::marks::exercise;
use downbeam::needle::device::Gauge;
use downbeam::procedure::action::{Action, Event};
use downbeam::procedure::step::StepId;
use downbeam::view::best_view::ViewKind;
use std::path::{Path, PathBuf};

pub fn lessons_folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("www/lessons")
}

/// A lesson that ships.
pub fn shipped(id: &str) -> Lesson {
    let path = lessons_folder().join(id).with_extension("json");
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    Lesson::from_json(&text).unwrap_or_else(|e| panic!("{id}: {e}"))
}

/// Ids of the lessons that ship, in the order of the course.
pub fn course() -> Vec<String> {
    let text = std::fs::read_to_string(lessons_folder().join("index.json")).unwrap();
    let index: serde_json::Value = serde_json::from_str(&text).unwrap();
    index["lessons"].as_array().unwrap().iter().map(|id| id.as_str().unwrap().to_owned()).collect()
}

/// The log of a lesson done well. `misses` parts are named wrongly once.
pub fn log(lesson: &Lesson, drawn: &Drawn, interior: &Interior, misses: usize) -> Vec<Event> {
    log_with(lesson, drawn, interior, misses, Gauge::G22)
}

/// The same with another needle.
pub fn log_with(
    lesson: &Lesson,
    drawn: &Drawn,
    interior: &Interior,
    mut misses: usize,
    gauge: Gauge,
) -> Vec<Event> {
    let mut hand = Hand { gauge, ..Hand::new(drawn.case, interior) };
    if lesson.steps.contains(&StepId::TargetCentred) {
        hand.act(Action::MoveTable { left_mm_tenths: 0, back_mm_tenths: 0, head_mm_tenths: 0 });
    }
    while let Some(label) = exercise(lesson, drawn, &hand.attempt.state.pointed).asks() {
        let wrong = Label { level: Level::T12, part: Part::Rib, side: None };
        let Label { level, part, side } = if misses > 0 { wrong } else { label };
        misses = misses.saturating_sub(1);
        hand.act(Action::Point { level, part, side });
    }
    if lesson.steps.iter().any(|s| *s > StepId::Lateral) && lesson.steps.iter().any(|s| is_of_needle(*s)) {
        hand.inject_everything();
    } else {
        for (step, view) in [
            (StepId::TrueAp, ViewKind::TrueAp),
            (StepId::Oblique, ViewKind::Oblique),
            (StepId::Lateral, ViewKind::Lateral),
        ] {
            if lesson.steps.contains(&step) {
                hand.set_up(view);
            }
        }
        hand.act(Action::Finish);
    }
    hand.attempt.log
}

pub fn is_of_needle(step: StepId) -> bool {
    step > StepId::Lateral && step != StepId::Radiation
}

/// What a careful learner hands in.
pub fn receipt(lesson: &Lesson, code: &str) -> Receipt {
    let mut interiors = Interiors::default();
    let drawn = drawn(lesson, code).unwrap();
    let log = log(lesson, &drawn, interiors.of(&drawn.spec), 0);
    Receipt::of(lesson, code, &log, &mut interiors).unwrap()
}

/// Whole numbers from `-span` to `span` without a pattern to speak of, the same for the same seed: what a hand is off by.
pub fn strays(seed: u32) -> impl FnMut(i32) -> i32 {
    let mut state = seed;
    move |span| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        ((i64::from(state >> 8) * i64::from(2 * span + 1)) >> 24) as i32 - span
    }
}

/// An action of a less careful hand: turns off by up to `orient` and rolls by up to `roll`, tenths of a degree, marks by up to `mark`, hundredths of
/// a millimetre.
pub fn strayed(
    action: Action,
    stray: &mut impl FnMut(i32) -> i32,
    orient: i32,
    mark: i32,
    roll: i32,
) -> Action {
    match action {
        Action::Orient { oblique_tenths, tilt_tenths } => Action::Orient {
            oblique_tenths: oblique_tenths + stray(orient),
            tilt_tenths: tilt_tenths + stray(orient),
        },
        Action::Mark { u_mm_hundredths, v_mm_hundredths } => Action::Mark {
            u_mm_hundredths: u_mm_hundredths + stray(mark),
            v_mm_hundredths: v_mm_hundredths + stray(mark),
        },
        Action::Roll { deg_tenths } => Action::Roll { deg_tenths: deg_tenths + stray(roll) },
        other => other,
    }
}

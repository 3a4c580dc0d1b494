//! The page's handle on practice: the learner's progress, the question that is open with its film, and rounds of a class. No logic but calls.

mod class_desk;
mod receipt_check;

use super::canvas::put_grey;
use super::exchange::to_js;
use super::practice_values::{AnswerReport, AskedCard, Overview, Shown, SkillCurve};
use crate::anatomy::patient::{Patient, PatientBuilder};
use crate::imaging::outline::OutlineTracer;
use crate::imaging::projection::Projection;
use crate::practice::curve::{RATES, chance_of_reached};
use crate::practice::film::{Films, Moment};
use crate::practice::kind::{Kind, Skill};
use crate::practice::overlay::{asked_part, marks};
use crate::practice::practice_receipt::PracticeReceipt;
use crate::practice::progress::{Answer, AskedFilm, Progress};
use crate::practice::question::{Question, arm_at};
use crate::practice::round::{DAILY_COUNT, question};
use crate::practice::schedule::Card;
use crate::practice::stage::stage;
use crate::procedure::pointing::{bone_part, has_part};
use crate::view::best_view::Orientation;
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d;

/// A learner at practice.
#[wasm_bindgen]
#[derive(Debug, Default)]
pub struct PracticeRoom {
    progress: Progress,
    open: Option<Open>,
    films: Option<Films>,
    pixels: Vec<u8>,
}

/// The question that is open.
#[derive(Debug)]
struct Open {
    question: Question,
    /// Seed of the learner's own round and place in it; none in a round of a class.
    from: Option<(u32, u16)>,
    coming: Option<PatientBuilder>,
    patient: Option<Patient>,
}

fn no_question() -> JsError {
    JsError::new("no question is open")
}

#[wasm_bindgen]
impl PracticeRoom {
    /// With nothing answered yet.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// Takes up kept progress (`practice::progress`); on an error nothing has changed.
    pub fn load(&mut self, json: &str) -> Result<(), JsError> {
        self.progress = Progress::from_json(json)?;
        Ok(())
    }

    /// All answers as a file.
    #[wasm_bindgen(js_name = toJson)]
    pub fn to_json(&self) -> String {
        self.progress.to_json()
    }

    /// The receipt of a learner's answers (`practice::practice_receipt`).
    pub fn receipt(&self, learner: &str) -> Result<String, JsError> {
        Ok(PracticeReceipt::of(&self.progress, learner)?.to_json())
    }

    /// Takes in another file's answers; how many were new.
    pub fn merge(&mut self, json: &str) -> Result<usize, JsError> {
        Ok(self.progress.merge(&Progress::from_json(json)?))
    }

    /// How the learner stands on a day (number since 1970): due, begun, stages, curves.
    #[wasm_bindgen(unchecked_return_type = "values.Overview")]
    pub fn overview(&self, day: u32) -> Result<JsValue, JsError> {
        let schedule = self.progress.schedule();
        let (begun, cards) = schedule.begun();
        to_js(&Overview {
            due: schedule.due(day),
            begun,
            cards,
            answers: self.progress.answers().len(),
            stages: Kind::ALL.map(|kind| (kind, self.progress.stage(kind))).to_vec(),
            skills: Skill::ALL
                .iter()
                .map(|&skill| SkillCurve { skill, curve: self.progress.curve(skill) })
                .collect(),
            acceptable: RATES.acceptable,
            unacceptable: RATES.unacceptable,
            by_chance: chance_of_reached(RATES.unacceptable, 60, &RATES),
        })
    }

    /// The day's round: `[{kind, skill, level, side, stage}]`.
    #[wasm_bindgen(js_name = dailyRound, unchecked_return_type = "values.AskedCard[]")]
    pub fn daily_round(&self, day: u32, seed: u32) -> Result<JsValue, JsError> {
        let cards = self.progress.schedule().round(day, DAILY_COUNT, u64::from(seed));
        let asked = |card: &Card| AskedCard {
            kind: card.kind,
            skill: card.kind.skill(),
            level: card.level,
            side: card.side,
            stage: self.progress.stage(card.kind),
        };
        to_js(&cards.iter().map(asked).collect::<Vec<_>>())
    }

    /// Opens a question of a round and plans its patient; [`Self::shape_bone`] then makes the bones.
    #[wasm_bindgen(unchecked_return_type = "values.ShownQuestion")]
    pub fn begin(
        &mut self,
        seed: u32,
        index: usize,
        kind: &str,
        level: &str,
        side: &str,
        stage: u8,
    ) -> Result<JsValue, JsError> {
        let card = Card { kind: kind.parse()?, level: level.parse()?, side: side.parse()? };
        let asked = question(u64::from(seed), index, card, stage);
        self.opened(asked, u16::try_from(index).ok().map(|index| (seed, index)))
    }

    /// Shapes the next bone; the share that is done.
    #[wasm_bindgen(js_name = shapeBone)]
    pub fn shape_bone(&mut self) -> f64 {
        let Some(open) = &mut self.open else { return 1.0 };
        let Some(coming) = &mut open.coming else { return 1.0 };
        let share = coming.step();
        if share >= 1.0 {
            open.patient = open.coming.take().map(PatientBuilder::finish);
        }
        share
    }

    /// Draws the open question's film on a canvas, which takes its size: `moment` is `asked`, `later` or `answered`.
    pub fn draw(
        &mut self,
        canvas: &CanvasRenderingContext2d,
        oblique_deg: f64,
        tilt_deg: f64,
        moment: &str,
        bone_dark: bool,
        pixels: u32,
    ) -> Result<(), JsValue> {
        let moment = match moment {
            "later" => Moment::Later,
            "answered" => Moment::Answered,
            _ => Moment::Asked,
        };
        let at = orientation(oblique_deg, tilt_deg)?;
        let size = pixels.clamp(128, 1024) as usize / 32 * 32;
        let open = self.open.as_ref().ok_or_else(no_question)?;
        let patient = open.patient.as_ref().ok_or_else(|| JsError::new("the patient is not shaped yet"))?;
        if self.films.as_ref().is_none_or(|films| films.size() != size) {
            self.films = None;
        }
        let films = self.films.get_or_insert_with(|| Films::new(size));
        let grey = films.draw(patient, &open.question, at, moment, bone_dark);
        put_grey(canvas, &mut self.pixels, grey, size)
    }

    /// What is drawn over the film: `[{what, line: [[u, v], …]}]`, mm on the detector, v up.
    #[wasm_bindgen(unchecked_return_type = "values.Mark[]")]
    pub fn marks(&self, oblique_deg: f64, tilt_deg: f64, answered: bool) -> Result<JsValue, JsValue> {
        let open = self.open.as_ref().ok_or_else(no_question)?;
        let patient = open.patient.as_ref().ok_or_else(|| JsError::new("the patient is not shaped yet"))?;
        let at = orientation(oblique_deg, tilt_deg)?;
        let mut list = marks(&open.question, &patient.interior, at, answered);
        if answered {
            list.extend(asked_part(&open.question, patient, at));
        }
        Ok(to_js(&list)?)
    }

    /// Outlines of the target and its neighbours: `[[u, v, u, v, …], …]`, tenths of a mm on the detector.
    #[wasm_bindgen(unchecked_return_type = "number[][]")]
    pub fn outlines(&self, oblique_deg: f64, tilt_deg: f64) -> Result<JsValue, JsValue> {
        let open = self.open.as_ref().ok_or_else(no_question)?;
        let patient = open.patient.as_ref().ok_or_else(|| JsError::new("the patient is not shaped yet"))?;
        let target = open.question.target;
        let view =
            Projection::new(&arm_at(orientation(oblique_deg, tilt_deg)?), patient.level(target.level).centre);
        let lines: Vec<Vec<i32>> = OutlineTracer::default()
            .trace(patient, &view)
            .into_iter()
            .filter(|o| {
                let label = bone_part(o.label);
                label.level.index().abs_diff(target.level.index()) <= 1 && has_part(label.level, label.part)
            })
            .map(|o| o.points.iter().flatten().map(|x| libm::roundf(x * 10.0) as i32).collect())
            .collect();
        Ok(to_js(&lines)?)
    }

    /// What an answer is worth: `{right, answer, reason, margin, truth}`. Nothing is kept.
    #[wasm_bindgen(js_name = answerReport, unchecked_return_type = "values.AnswerReport")]
    pub fn answer_report(&self, choice: usize) -> Result<JsValue, JsError> {
        let q = &self.open.as_ref().ok_or_else(no_question)?.question;
        to_js(&AnswerReport {
            right: choice == q.answer,
            answer: q.answer,
            reason: &q.reason,
            margin: q.margin,
            truth: q.truth,
        })
    }

    /// Keeps an answer to the open question: `at` in milliseconds since 1970, `day` the number of the learner's day.
    pub fn record(&mut self, choice: usize, at: f64, day: u32) -> Result<(), JsError> {
        let Open { question: q, from, .. } = self.open.as_ref().ok_or_else(no_question)?;
        let asked = from.zip(u8::try_from(choice).ok()).map(|((seed, index), choice)| AskedFilm {
            seed,
            index,
            choice,
        });
        let answer = Answer {
            at: if at.is_finite() { at.max(0.0) as u64 } else { 0 },
            day,
            kind: q.kind,
            level: q.target.level,
            side: q.target.side,
            stage: q.stage,
            right: choice == q.answer,
            asked,
        };
        self.progress.add(answer);
        Ok(())
    }
}

impl PracticeRoom {
    /// Makes a question the open one.
    fn opened(&mut self, asked: Option<Question>, from: Option<(u32, u16)>) -> Result<JsValue, JsError> {
        let question = asked.ok_or_else(|| JsError::new("no clear question was found for this seed"))?;
        let coming = Some(PatientBuilder::new(&question.spec));
        let open = self.open.insert(Open { question, from, coming, patient: None });
        let q = &open.question;
        to_js(&Shown {
            kind: q.kind,
            skill: q.kind.skill(),
            stage: q.stage,
            level: q.target.level,
            side: q.target.side,
            asked: q.asked,
            choices: &q.choices,
            seen: &q.seen,
            view: q.view,
            outlines: stage(q.stage).outlines,
            contrast: q.injection.is_some(),
        })
    }
}

fn orientation(oblique_deg: f64, tilt_deg: f64) -> Result<Orientation, JsError> {
    crate::imaging::c_arm::CArm::at_degrees(oblique_deg, tilt_deg)?;
    Ok(Orientation { oblique_deg, tilt_deg })
}

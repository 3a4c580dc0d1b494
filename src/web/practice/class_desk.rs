//! The handle's part for a round of a class: its questions, the learner's code, what the teacher takes in, figures, and the link as a picture.

use super::super::practice_values::{CodesReport, Counts, Picture};
use super::{PracticeRoom, to_js};
use crate::practice::answer_code::{Answers, write};
use crate::practice::class_round::{Intake, csv, table};
use crate::practice::round::ClassRound;
use qrcodegen::{QrCode, QrCodeEcc};
use wasm_bindgen::prelude::*;

/// A round and what has come in.
#[wasm_bindgen]
#[derive(Debug)]
pub struct ClassDesk {
    round: ClassRound,
    intake: Intake,
    /// The place of each question's right choice, found when it is first wanted.
    key: Option<Vec<usize>>,
}

/// Light modules around a code (ISO/IEC 18004: four; memory).
const QUIET_MODULES: i32 = 4;

#[wasm_bindgen]
impl ClassDesk {
    /// The round of a name, such as `1.48213.2.8`.
    #[wasm_bindgen(constructor)]
    pub fn new(name: &str) -> Result<Self, JsError> {
        Ok(Self { round: name.parse()?, intake: Intake::default(), key: None })
    }

    /// The name of a round of a seed, a stage and so many questions.
    pub fn named(seed: u32, stage: u8, count: u8) -> Result<String, JsError> {
        let name = ClassRound { seed, stage, count }.to_string();
        // Only what can be read back.
        let round: ClassRound = name.parse()?;
        Ok(round.to_string())
    }

    /// How many questions.
    pub fn count(&self) -> usize {
        usize::from(self.round.count)
    }

    /// Opens a question of the round in a practice room; as [`PracticeRoom::begin`].
    #[wasm_bindgen(unchecked_return_type = "values.ShownQuestion")]
    pub fn begin(&self, room: &mut PracticeRoom, index: usize) -> Result<JsValue, JsError> {
        room.opened(self.round.question(index), None)
    }

    /// The code of a learner's answers: the choice by its place, 255 where there is none.
    pub fn code(&self, tag: u16, choices: &[u8]) -> String {
        let choices = choices.iter().map(|c| (*c < 4).then_some(*c)).collect();
        write(&self.round, &Answers { tag, choices })
    }

    /// Takes in all codes of a text: `{learners, refused: [sentence]}`.
    #[wasm_bindgen(unchecked_return_type = "values.CodesReport")]
    pub fn take(&mut self, text: &str) -> Result<JsValue, JsError> {
        self.intake.take(&self.round, text);
        to_js(&CodesReport { learners: self.intake.learners(), refused: &self.intake.refused })
    }

    /// How often each choice of a question was taken: `{counts, none}`.
    #[wasm_bindgen(unchecked_return_type = "values.Counts")]
    pub fn counts(&self, index: usize) -> Result<JsValue, JsError> {
        let (counts, none) = self.intake.counts(index);
        to_js(&Counts { counts, none })
    }

    fn key(&mut self) -> &[usize] {
        let round = self.round;
        self.key.get_or_insert_with(|| {
            let answer = |i: usize| round.question(i).map_or(usize::MAX, |q| q.answer);
            (0..usize::from(round.count)).map(answer).collect()
        })
    }

    /// The figures: `[{question, kind, place, answered, right, difficulty, discrimination}]`, a question each, then a kind each.
    #[wasm_bindgen(unchecked_return_type = "values.Row[]")]
    pub fn figures(&mut self) -> Result<JsValue, JsError> {
        let key = self.key().to_vec();
        to_js(&table(&self.round, &self.intake, &key))
    }

    /// The figures as CSV.
    pub fn csv(&mut self) -> String {
        let key = self.key().to_vec();
        csv(&self.round, &table(&self.round, &self.intake, &key))
    }

    /// A text as a QR code: the path of its dark modules for an SVG whose view box is `0 0 size size`, as `{size, path}`, with the quiet zone
    /// that the standard asks for.
    #[wasm_bindgen(js_name = pictureCode, unchecked_return_type = "values.CodePicture")]
    pub fn picture_code(text: &str) -> Result<JsValue, JsError> {
        let code = QrCode::encode_text(text, QrCodeEcc::Medium)
            .map_err(|_| JsError::new("the link is too long for a picture code"))?;
        let dark = (0..code.size()).flat_map(|y| (0..code.size()).map(move |x| (x, y)));
        let path = dark
            .filter(|&(x, y)| code.get_module(x, y))
            .map(|(x, y)| format!("M{} {}h1v1h-1z", x + QUIET_MODULES, y + QUIET_MODULES))
            .collect();
        to_js(&Picture { size: code.size() + 2 * QUIET_MODULES, path })
    }
}

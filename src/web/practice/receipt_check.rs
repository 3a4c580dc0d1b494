//! The handle's part for receipts of practice: read, asked again a question at a time, and told.

use super::super::practice_values::CheckedPractice;
use super::{PracticeRoom, to_js};
use crate::practice::practice_receipt::{PracticeReceipt, PracticeVerdict};
use wasm_bindgen::prelude::*;

/// A receipt under check.
#[wasm_bindgen]
#[derive(Debug)]
pub struct PracticeCheck {
    receipt: PracticeReceipt,
    verdict: PracticeVerdict,
    done: usize,
}

#[wasm_bindgen]
impl PracticeCheck {
    /// Reads a receipt.
    #[wasm_bindgen(constructor)]
    pub fn new(json: &str) -> Result<Self, JsError> {
        let receipt = PracticeReceipt::from_json(json)?;
        let verdict = receipt.at_once();
        let done = if verdict == PracticeVerdict::Verified { 0 } else { receipt.answers.len() };
        Ok(Self { receipt, verdict, done })
    }

    /// Whether a text is meant as such a receipt.
    #[wasm_bindgen(js_name = isMeant)]
    pub fn is_meant(text: &str) -> bool {
        PracticeReceipt::is_meant(text)
    }

    /// Asks the next question again; whether that was the last.
    pub fn step(&mut self) -> bool {
        if self.done < self.receipt.answers.len() {
            if let Some(why) = self.receipt.problem_of(self.done) {
                self.verdict = PracticeVerdict::Altered(why);
                self.done = self.receipt.answers.len();
            }
            self.done += 1;
        }
        self.done >= self.receipt.answers.len()
    }

    /// What was found so far: `{learner, status, note}`.
    #[wasm_bindgen(unchecked_return_type = "values.CheckedPractice")]
    pub fn finding(&self) -> Result<JsValue, JsError> {
        let note = match &self.verdict {
            PracticeVerdict::Verified => "",
            PracticeVerdict::Altered(why) => why,
            PracticeVerdict::UnknownEngine(version) => version,
        };
        to_js(&CheckedPractice { learner: &self.receipt.learner, status: self.verdict.name(), note })
    }

    /// Its answers in a practice room, for the curves.
    pub fn room(&self) -> PracticeRoom {
        PracticeRoom { progress: self.receipt.progress(), ..PracticeRoom::default() }
    }

    /// Of receipts the other learner's (by its place) with which each shares most answers: `[other, how many, …]`, -1 and 0 where there is none.
    pub fn shared(receipts: Vec<String>) -> Vec<i32> {
        let read: Vec<PracticeReceipt> =
            receipts.iter().filter_map(|text| PracticeReceipt::from_json(text).ok()).collect();
        let found = crate::practice::practice_receipt::shared(&read.iter().collect::<Vec<_>>());
        found.into_iter().flat_map(|s| s.map_or([-1, 0], |(other, n)| [other as i32, n as i32])).collect()
    }
}

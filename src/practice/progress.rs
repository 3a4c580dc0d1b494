//! What is kept of a learner: every answer, in order. All else (what is due, how hard the next question is, the curves) is computed from it, so
//! that an export holds everything, and two exports put together are the union of both.

use super::curve::{Curve, RATES, curve};
use super::kind::{Kind, Skill};
use super::schedule::{Card, Schedule};
use super::stage::STAGES;
use crate::anatomy::names::{Level, Side, shown};
use crate::lesson::read_error::sentence;
use serde::{Deserialize, Serialize};

/// Name of the format.
pub const FORMAT: &str = "downbeam-practice-1";
/// Answers that are kept: at nine a day more than six years. Older ones go.
pub const MOST_ANSWERS: usize = 20_000;
/// Largest file that is read, bytes.
pub const MOST_BYTES: usize = 4 << 20;

/// One answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Answer {
    /// When, in milliseconds since 1970: tells answers apart and orders them.
    pub at: u64,
    /// Number of the day where the learner was, since 1970.
    pub day: u32,
    /// What was asked.
    pub kind: Kind,
    /// Where.
    pub level: Level,
    /// On which side.
    pub side: Side,
    /// How hard.
    pub stage: u8,
    /// Whether it was right.
    pub right: bool,
    /// What was asked and picked; answers of earlier versions have none, and are in no receipt.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "cli", ts(optional))]
    pub asked: Option<AskedFilm>,
}

/// The film that was asked and the answer that was picked: with these a question can be asked again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct AskedFilm {
    /// Seed of the round.
    pub seed: u32,
    /// Which question of the round, from 0.
    pub index: u16,
    /// The choice by its place, from 0.
    pub choice: u8,
}

/// The file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Progress {
    format: String,
    /// In order of time.
    answers: Vec<Answer>,
}

/// A file that is none of ours, or broken.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "the message is the documentation")]
pub enum ProgressError {
    #[error("this is no file of practice: {0}")]
    Unreadable(String),
    #[error("the file is of the format '{0}': this page reads {FORMAT}")]
    Format(String),
    #[error("answer {number} is of {what}, which is not asked")]
    Answer { number: usize, what: String },
    #[error("the file has {0} bytes: allowed are {MOST_BYTES}")]
    TooLong(usize),
}

/// The number (from 1) of the first answer to what is not asked, and what that is.
pub(super) fn not_asked(answers: &[Answer]) -> Option<(usize, String)> {
    answers.iter().enumerate().find_map(|(i, answer)| {
        if !answer.kind.levels().contains(&answer.level) {
            return Some((i + 1, format!("level {}", answer.level)));
        }
        (usize::from(answer.stage) >= STAGES.len()).then(|| (i + 1, format!("stage {}", answer.stage)))
    })
}

impl Default for Progress {
    fn default() -> Self {
        Self { format: FORMAT.to_owned(), answers: Vec::new() }
    }
}

impl Progress {
    /// Reads a file.
    ///
    /// # Errors
    /// What is wrong with it, in one sentence.
    pub fn from_json(text: &str) -> Result<Self, ProgressError> {
        if text.len() > MOST_BYTES {
            return Err(ProgressError::TooLong(text.len()));
        }
        let mut read: Self =
            serde_json::from_str(text).map_err(|error| ProgressError::Unreadable(sentence(&error)))?;
        if read.format != FORMAT {
            return Err(ProgressError::Format(shown(&read.format)));
        }
        if let Some((number, what)) = not_asked(&read.answers) {
            return Err(ProgressError::Answer { number, what });
        }
        read.tidy();
        Ok(read)
    }

    /// Of these answers.
    pub fn of(answers: impl IntoIterator<Item = Answer>) -> Self {
        let mut all = Self { answers: answers.into_iter().collect(), ..Self::default() };
        all.tidy();
        all
    }

    /// As a file.
    pub fn to_json(&self) -> String {
        // Plain fields without maps: cannot fail.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// In order of time, each once, the oldest dropped when there are too many.
    fn tidy(&mut self) {
        self.answers.sort();
        self.answers.dedup();
        let excess = self.answers.len().saturating_sub(MOST_ANSWERS);
        self.answers.drain(..excess);
    }

    /// The answers, in order of time.
    pub fn answers(&self) -> &[Answer] {
        &self.answers
    }

    /// Takes an answer.
    pub fn add(&mut self, answer: Answer) {
        self.answers.push(answer);
        self.tidy();
    }

    /// Takes in all answers of another file; how many were new.
    pub fn merge(&mut self, other: &Self) -> usize {
        let before = self.answers.len();
        self.answers.extend_from_slice(&other.answers);
        self.tidy();
        self.answers.len().saturating_sub(before)
    }

    /// What is due.
    pub fn schedule(&self) -> Schedule {
        let mut schedule = Schedule::default();
        for a in &self.answers {
            schedule.answer(Card { kind: a.kind, level: a.level, side: a.side }, a.day, a.right);
        }
        schedule
    }

    /// How hard the next question of a kind is: harder after four right in a row at a stage, easier after two wrong of the last three there. A
    /// choice, no source.
    pub fn stage(&self, kind: Kind) -> u8 {
        let mut stage = 0_u8;
        let mut here: Vec<bool> = Vec::new();
        for answer in self.answers.iter().filter(|a| a.kind == kind) {
            here.push(answer.right);
            let last = |n: usize| &here[here.len().saturating_sub(n)..];
            if here.len() >= 4 && last(4).iter().all(|right| *right) && usize::from(stage) + 1 < STAGES.len()
            {
                stage += 1;
                here.clear();
            } else if here.len() >= 3 && last(3).iter().filter(|right| !**right).count() >= 2 && stage > 0 {
                stage -= 1;
                here.clear();
            }
        }
        stage
    }

    /// The curve of a skill.
    pub fn curve(&self, skill: Skill) -> Curve {
        curve(self.answers.iter().filter(|a| a.kind.skill() == skill).map(|a| a.right), &RATES)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answer(at: u64, kind: Kind, right: bool) -> Answer {
        Answer {
            at,
            day: (at / 86_400) as u32,
            kind,
            level: Level::L4,
            side: Side::Left,
            stage: 0,
            right,
            asked: None,
        }
    }

    #[test]
    fn a_file_reads_back_and_two_become_their_union() {
        let mut a = Progress::default();
        let mut b = Progress::default();
        (0..5).for_each(|i| a.add(answer(10 * i, Kind::Way, true)));
        (3..8).for_each(|i| b.add(answer(10 * i, Kind::Way, true)));
        assert_eq!(Progress::from_json(&a.to_json()), Ok(a.clone()));
        assert_eq!((a.merge(&b), a.answers().len(), a.merge(&b)), (3, 8, 0));
        assert!(a.answers().windows(2).all(|w| w[0].at < w[1].at));
    }

    #[test]
    fn broken_files_are_refused_in_one_sentence() {
        let good = r#"{"format":"downbeam-practice-1","answers":[{"at":1,"day":0,"kind":"way","level":"L4","side":"left","stage":0,"right":true}]}"#;
        assert!(Progress::from_json(good).is_ok());
        for (from, to) in [
            ("practice-1", "practice-9"),
            ("\"L4\"", "\"T12\""),
            ("\"stage\":0", "\"stage\":6"),
            ("\"way\"", "\"why\""),
            ("}]}", "}]"),
            ("\"day\":0", "\"day\":-1"),
            ("\"right\":true", "\"right\":true,\"x\":1"),
        ] {
            let said = Progress::from_json(&good.replace(from, to)).unwrap_err().to_string();
            assert!(!said.contains('\n') && said.len() < 300, "{said}");
        }
        assert!(matches!(Progress::from_json(&" ".repeat(MOST_BYTES + 1)), Err(ProgressError::TooLong(_))));
    }

    #[test]
    fn questions_get_harder_after_four_right_and_easier_after_two_wrong() {
        let mut p = Progress::default();
        let mut at = 0;
        let mut give = |p: &mut Progress, rights: &[bool]| {
            for right in rights {
                at += 1;
                p.add(answer(at, Kind::Clock, *right));
            }
            p.stage(Kind::Clock)
        };
        assert_eq!(give(&mut p, &[true, true, true]), 0);
        assert_eq!(give(&mut p, &[true]), 1);
        assert_eq!(give(&mut p, &[true, false, true, true]), 1);
        assert_eq!(give(&mut p, &[true, true]), 2);
        assert_eq!(give(&mut p, &[false, false]), 2);
        assert_eq!(give(&mut p, &[true]), 1);
        assert_eq!(give(&mut p, &[true; 40]), 5);
        assert_eq!(p.stage(Kind::Way), 0);
    }
}

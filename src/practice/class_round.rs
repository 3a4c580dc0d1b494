//! A class round as the teacher's page takes it in: codes in any text, counts a choice, and figures a question and kind.

use super::answer_code::{Answers, read};
use super::item_figures::{Figures, figures, together};
use super::kind::Kind;
use super::round::ClassRound;
use serde::Serialize;
use std::collections::BTreeMap;

/// Most learners that a page takes in.
pub const MOST_LEARNERS: usize = 500;
/// Choices of a question.
const CHOICES: usize = 4;

/// What came in.
#[derive(Clone, Debug, Default)]
pub struct Intake {
    /// The last code of each learner's tag.
    answers: BTreeMap<u16, Answers>,
    /// What could not be taken in, a sentence each.
    pub refused: Vec<String>,
}

impl Intake {
    /// Takes in all codes of a text: a line, a comma or a semicolon between two. A learner's later code takes the place of the earlier.
    pub fn take(&mut self, round: &ClassRound, text: &str) {
        self.refused.clear();
        for piece in text.split(['\n', '\r', ',', ';', '\t']).map(str::trim).filter(|piece| !piece.is_empty())
        {
            match read(round, piece) {
                Ok(_) if self.answers.len() >= MOST_LEARNERS => {
                    self.refused.push(format!("a class has at most {MOST_LEARNERS} learners"));
                    return;
                }
                Ok(answers) => {
                    self.answers.insert(answers.tag, answers);
                }
                Err(error) => self.refused.push(error.to_string()),
            }
        }
    }

    /// How many learners.
    pub fn learners(&self) -> usize {
        self.answers.len()
    }

    /// How often each choice of a question was taken, and how many have not answered it.
    pub fn counts(&self, index: usize) -> ([u32; CHOICES], u32) {
        let mut counts = ([0; CHOICES], 0);
        for answers in self.answers.values() {
            match answers.choices.get(index).copied().flatten().and_then(|c| counts.0.get_mut(usize::from(c)))
            {
                Some(count) => *count += 1,
                None => counts.1 += 1,
            }
        }
        counts
    }

    /// Marks, a row a learner: right where the choice is that of the key.
    fn marks(&self, key: &[usize]) -> Vec<Vec<Option<bool>>> {
        let mark = |answers: &Answers| {
            key.iter()
                .zip(&answers.choices)
                .map(|(right, choice)| choice.map(|c| usize::from(c) == *right))
                .collect()
        };
        self.answers.values().map(mark).collect()
    }
}

/// A row of the table of figures.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Row {
    /// Number of the question from 1; `None` for a whole kind.
    pub question: Option<usize>,
    /// Its kind.
    pub kind: Kind,
    /// Level and side, such as `L4 left`; empty for a whole kind.
    pub place: String,
    /// Figures.
    #[serde(flatten)]
    pub figures: Figures,
}

/// The figures of a round: a row a question, then a row a kind. `key` has the place of the right choice of each question.
pub fn table(round: &ClassRound, intake: &Intake, key: &[usize]) -> Vec<Row> {
    let (cards, marks) = (round.cards(), intake.marks(key));
    let mut rows: Vec<Row> = figures(&marks)
        .into_iter()
        .zip(&cards)
        .enumerate()
        .map(|(i, (figures, card))| Row {
            question: Some(i + 1),
            kind: card.kind,
            place: format!("{} {}", card.level, card.side),
            figures,
        })
        .collect();
    for kind in Kind::ALL {
        if cards.iter().any(|card| card.kind == kind) {
            let figures = together(&marks, |j| cards.get(j).is_some_and(|card| card.kind == kind));
            rows.push(Row { question: None, kind, place: String::new(), figures });
        }
    }
    rows
}

/// The table as CSV (RFC 4180), numbers with a point.
pub fn csv(round: &ClassRound, rows: &[Row]) -> String {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let number = |value: Option<f64>| value.map_or(String::new(), |v| format!("{v:.3}"));
    let head =
        ["round", "question", "kind", "place", "stage", "answered", "right", "difficulty", "discrimination"];
    // A vector takes every write.
    let _ = writer.write_record(head);
    for row in rows {
        let _ = writer.write_record([
            round.to_string(),
            row.question.map_or("all".to_owned(), |q| q.to_string()),
            row.kind.name().to_owned(),
            row.place.clone(),
            round.stage.to_string(),
            row.figures.answered.to_string(),
            row.figures.right.to_string(),
            number(row.figures.difficulty),
            number(row.figures.discrimination),
        ]);
    }
    String::from_utf8(writer.into_inner().unwrap_or_default()).unwrap_or_default()
}

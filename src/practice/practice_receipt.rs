//! A learner's practice as a receipt, for a class's curves: every answer with the seed that its film was drawn from and the choice that was picked. Who reads
//! it asks each question again and sees whether that choice was the right one.
//!
//! Limits: it shows that the answers fit the questions and the claim fits the answers, not who answered, nor whether answers were left out. Answers
//! kept by versions that noted no seed are not in it.

use super::kind::Skill;
use super::progress::{Answer, Progress, not_asked};
use super::round::question;
use super::schedule::Card;
use crate::anatomy::names::shown;
use crate::class::receipt::{Engine, MOST_BYTES};
use crate::class::table::{CsvStyle, table};
use crate::lesson::draw::{CodeError, code};
use crate::lesson::read_error::sentence;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

/// Name of the format.
pub const FORMAT: &str = "downbeam-practice-receipt-2";
/// Most answers of one, the newest: at nine a day seven months. So it stays under the size of receipts, and is asked again in seconds.
pub const MOST_ANSWERS: usize = 2_000;

/// The receipt.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PracticeReceipt {
    format: String,
    /// Which drew the films.
    pub engine: Engine,
    /// The learner's code.
    pub learner: String,
    /// In order of time, each with what was asked.
    pub answers: Vec<Answer>,
    /// What the answers come to.
    pub claim: PracticeClaim,
}

/// Counts as they are claimed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PracticeClaim {
    /// Answers.
    pub answers: usize,
    /// Right ones.
    pub right: usize,
}

/// A file that is no receipt of practice, or broken.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "the message is the documentation")]
pub enum PracticeReceiptError {
    #[error("this is no receipt of practice: {0}")]
    Unreadable(String),
    #[error("the file is of the format '{0}': allowed is {FORMAT}")]
    Format(String),
    #[error("learner: {0}")]
    Code(#[from] CodeError),
    #[error("answer {number} is of {what}, which is not asked")]
    Answer { number: usize, what: String },
    #[error("answer {0} does not say what was asked")]
    NothingAsked(usize),
    #[error("it has {0} answers: allowed are {MOST_ANSWERS}")]
    TooMany(usize),
    #[error("the file has {0} bytes: allowed are {MOST_BYTES}")]
    TooLong(usize),
}

/// What a check says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PracticeVerdict {
    /// Each answer is what it says, and so are the counts.
    Verified,
    /// Not; why, in a sentence.
    Altered(String),
    /// Another version drew the films: its version.
    UnknownEngine(String),
}

impl PracticeVerdict {
    /// As in tables.
    pub fn name(&self) -> &'static str {
        match self {
            Self::Verified => "verified",
            Self::Altered(_) => "altered",
            Self::UnknownEngine(_) => "unknown_engine",
        }
    }
}

impl PracticeReceipt {
    /// Of what was practised; answers that say nothing of what was asked are left out.
    ///
    /// # Errors
    /// When the code is none.
    pub fn of(progress: &Progress, learner: &str) -> Result<Self, CodeError> {
        let learner = code(learner)?.to_owned();
        let mut answers: Vec<Answer> =
            progress.answers().iter().filter(|a| a.asked.is_some()).copied().collect();
        answers.drain(..answers.len().saturating_sub(MOST_ANSWERS));
        let claim = counted(&answers);
        Ok(Self { format: FORMAT.to_owned(), engine: Engine::this(), learner, answers, claim })
    }

    /// Whether a text is meant as one: the name of the format stands in it, as text of JSON.
    pub fn is_meant(text: &str) -> bool {
        text.contains("\"downbeam-practice-receipt-")
    }

    /// Reads one.
    ///
    /// # Errors
    /// What is wrong with it, in one sentence.
    pub fn from_json(text: &str) -> Result<Self, PracticeReceiptError> {
        if text.len() > MOST_BYTES {
            return Err(PracticeReceiptError::TooLong(text.len()));
        }
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let read: Self =
            serde_json::from_str(text).map_err(|error| PracticeReceiptError::Unreadable(sentence(&error)))?;
        if read.format != FORMAT {
            return Err(PracticeReceiptError::Format(shown(&read.format)));
        }
        code(&read.learner)?;
        if read.answers.len() > MOST_ANSWERS {
            return Err(PracticeReceiptError::TooMany(read.answers.len()));
        }
        if let Some((number, what)) = not_asked(&read.answers) {
            return Err(PracticeReceiptError::Answer { number, what });
        }
        if let Some(i) = read.answers.iter().position(|a| a.asked.is_none()) {
            return Err(PracticeReceiptError::NothingAsked(i + 1));
        }
        Ok(read)
    }

    /// As a file, an answer a line.
    pub fn to_json(&self) -> String {
        // Plain fields without maps: cannot fail.
        serde_json::to_string(self).unwrap_or_default().replace("{\"at\":", "\n{\"at\":") + "\n"
    }

    /// The answers, for curves.
    pub fn progress(&self) -> Progress {
        Progress::of(self.answers.iter().copied())
    }

    /// Asks one of the questions again; a sentence where its answer is not what it says. It takes some ms.
    pub fn problem_of(&self, i: usize) -> Option<String> {
        let answer = self.answers.get(i)?;
        let asked = answer.asked?;
        let card = Card { kind: answer.kind, level: answer.level, side: answer.side };
        let Some(again) = question(u64::from(asked.seed), usize::from(asked.index), card, answer.stage)
        else {
            return Some(format!("answer {}: no question comes of its seed", i + 1));
        };
        let right = usize::from(asked.choice) == again.answer;
        let says = |right: bool| if right { "right" } else { "wrong" };
        (right != answer.right)
            .then(|| format!("answer {} is said to be {} and is {}", i + 1, says(answer.right), says(right)))
    }

    /// What has to be true before questions are asked again: the engine, the counts, each answer once and in order.
    pub fn at_once(&self) -> PracticeVerdict {
        if self.engine.scoring != Engine::this().scoring {
            return PracticeVerdict::UnknownEngine(self.engine.version.clone());
        }
        let own = counted(&self.answers);
        if own != self.claim {
            let PracticeClaim { answers, right } = self.claim;
            return PracticeVerdict::Altered(format!(
                "{right} of {answers} are claimed to be right; its answers come to {} of {}",
                own.right, own.answers
            ));
        }
        if !self.answers.is_sorted_by(|a, b| a < b) {
            return PracticeVerdict::Altered("its answers are not in order of time, each once".to_owned());
        }
        // The page asks each question of a round once: who knows the answer must not be asked it again.
        let mut films = BTreeSet::new();
        let again =
            self.answers.iter().position(|a| a.asked.is_some_and(|x| !films.insert((x.seed, x.index))));
        if let Some(i) = again {
            return PracticeVerdict::Altered(format!("the film of answer {} was asked before", i + 1));
        }
        PracticeVerdict::Verified
    }

    /// Asks every question again.
    pub fn verify(&self) -> PracticeVerdict {
        match self.at_once() {
            PracticeVerdict::Verified => (0..self.answers.len())
                .find_map(|i| self.problem_of(i))
                .map_or(PracticeVerdict::Verified, PracticeVerdict::Altered),
            other => other,
        }
    }
}

/// Receipts that were checked, as a table for spreadsheets: a row a learner and skill.
pub fn curves_csv(checked: &[(PracticeReceipt, PracticeVerdict)], style: CsvStyle) -> String {
    let head = ["learner", "status", "skill", "answers", "wrong", "reached_at", "standing", "note"];
    let rows = checked.iter().flat_map(|(receipt, verdict)| {
        let progress = receipt.progress();
        let note = match verdict {
            PracticeVerdict::Verified => Value::Null,
            PracticeVerdict::Altered(why) => why.as_str().into(),
            PracticeVerdict::UnknownEngine(version) => format!("drawn by version {version}").into(),
        };
        Skill::ALL
            .iter()
            .map(|&skill| {
                let curve = progress.curve(skill);
                vec![
                    receipt.learner.as_str().into(),
                    verdict.name().into(),
                    skill.name().into(),
                    curve.answers.into(),
                    curve.wrong.into(),
                    curve.reached.map_or(Value::Null, Value::from),
                    curve.standing().map_or(Value::Null, |v| v.name().into()),
                    note.clone(),
                ]
            })
            .collect::<Vec<_>>()
    });
    table(std::iter::once(head.map(Value::from).to_vec()).chain(rows), style)
}

/// Of each receipt the other learner's receipt (by its place) with which it shares most answers, and how many: rounds begin with a number drawn by
/// chance from four thousand million, so that two learners who share one have it from each other.
pub fn shared(receipts: &[&PracticeReceipt]) -> Vec<Option<(usize, usize)>> {
    let mut holders: BTreeMap<(u32, u16), Vec<usize>> = BTreeMap::new();
    for (i, receipt) in receipts.iter().enumerate() {
        for asked in receipt.answers.iter().filter_map(|a| a.asked) {
            let list = holders.entry((asked.seed, asked.index)).or_default();
            if list.last() != Some(&i) {
                list.push(i);
            }
        }
    }
    let mut counts: Vec<BTreeMap<usize, usize>> = vec![BTreeMap::new(); receipts.len()];
    for list in holders.values().filter(|list| list.len() > 1) {
        for &i in list {
            for &j in list.iter().filter(|&&j| receipts[j].learner != receipts[i].learner) {
                *counts[i].entry(j).or_default() += 1;
            }
        }
    }
    counts.into_iter().map(|own| own.into_iter().max_by_key(|&(j, n)| (n, Reverse(j)))).collect()
}

fn counted(answers: &[Answer]) -> PracticeClaim {
    PracticeClaim { answers: answers.len(), right: answers.iter().filter(|a| a.right).count() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::names::{Level, Side};
    use crate::practice::kind::Kind;
    use crate::practice::progress::AskedFilm;

    /// Four answers as the page keeps them: right, wrong, right, right.
    fn practised() -> Progress {
        let kinds = [
            (Kind::Way, Level::S1),
            (Kind::Step, Level::L4),
            (Kind::Clock, Level::L2),
            (Kind::Notch, Level::S1),
        ];
        let answers = kinds.into_iter().enumerate().map(|(i, (kind, level))| {
            let (seed, index) = (77, i as u16);
            let asked = question(u64::from(seed), i, Card { kind, level, side: Side::Left }, 1).unwrap();
            let choice = if i == 1 { (asked.answer + 1) % 4 } else { asked.answer } as u8;
            let asked = Some(AskedFilm { seed, index, choice });
            Answer {
                at: 10 + i as u64,
                day: 1,
                kind,
                level,
                side: Side::Left,
                stage: 1,
                right: i != 1,
                asked,
            }
        });
        let old = Answer {
            at: 1,
            day: 0,
            kind: Kind::Way,
            level: Level::L4,
            side: Side::Left,
            stage: 0,
            right: true,
            asked: None,
        };
        Progress::of(answers.chain([old]))
    }

    #[test]
    fn a_receipt_is_asked_again_and_what_was_changed_is_found() {
        let receipt = PracticeReceipt::of(&practised(), " anna ").unwrap();
        assert_eq!(
            (receipt.learner.as_str(), receipt.claim),
            ("anna", PracticeClaim { answers: 4, right: 3 })
        );
        let text = receipt.to_json();
        assert!(PracticeReceipt::is_meant(&text));
        assert_eq!(PracticeReceipt::from_json(&text), Ok(receipt.clone()));
        assert_eq!(receipt.verify(), PracticeVerdict::Verified);
        // The wrong one is said to be right, with and without the count.
        let mut better = receipt.clone();
        better.answers[1].right = true;
        assert!(matches!(better.verify(), PracticeVerdict::Altered(why) if why.contains("are claimed")));
        better.claim.right = 4;
        let why = "answer 2 is said to be right and is wrong".to_owned();
        assert_eq!(better.verify(), PracticeVerdict::Altered(why));
        // Another choice, another film, a harder stage: the answer is not the one that it was.
        let mut other = receipt.clone();
        other.answers[0].asked =
            other.answers[0].asked.map(|a| AskedFilm { choice: (a.choice + 1) % 4, ..a });
        assert!(matches!(other.verify(), PracticeVerdict::Altered(_)));
        // The same good answer many times.
        let mut padded = receipt.clone();
        padded.answers.insert(1, padded.answers[0]);
        padded.claim = counted(&padded.answers);
        assert!(matches!(padded.verify(), PracticeVerdict::Altered(why) if why.contains("each once")));
        let mut later = receipt.clone();
        later.engine.scoring = "0".repeat(16);
        assert!(matches!(later.verify(), PracticeVerdict::UnknownEngine(_)));
    }

    #[test]
    fn one_film_answered_again_and_again_is_told() {
        let mut receipt = PracticeReceipt::of(&practised(), "anna").unwrap();
        let first = receipt.answers[0];
        receipt.answers = (0..5).map(|i| Answer { at: 20 + i, ..first }).collect();
        receipt.claim = counted(&receipt.answers);
        assert!(matches!(receipt.verify(), PracticeVerdict::Altered(why) if why.contains("asked before")));
    }

    #[test]
    fn answers_of_another_are_told() {
        let own = PracticeReceipt::of(&practised(), "anna").unwrap();
        let copy = PracticeReceipt { learner: "bo".to_owned(), ..own.clone() };
        let mut honest = PracticeReceipt { learner: "cem".to_owned(), ..own.clone() };
        honest.answers.iter_mut().for_each(|a| a.asked = a.asked.map(|x| AskedFilm { seed: 5, ..x }));
        assert_eq!(shared(&[&own, &copy, &honest, &own]), [Some((1, 4)), Some((0, 4)), None, Some((1, 4))]);
        let csv = curves_csv(&[(own.clone(), own.verify())], CsvStyle::default());
        assert_eq!(csv.lines().count(), 5);
        assert!(csv.contains("\"anna\",\"verified\",\"views\",2,1,"), "{csv}");
    }

    #[test]
    fn broken_receipts_are_refused_in_one_sentence() {
        let good = PracticeReceipt::of(&practised(), "anna").unwrap().to_json();
        for (from, to) in [
            ("receipt-2", "receipt-1"),
            ("\"L2\"", "\"S1\""),
            ("\"clock\"", "\"why\""),
            ("\"stage\":1", "\"stage\":9"),
            ("\"seed\":77", "\"seed\":-1"),
            ("\"anna\"", "\"a\\u0007\""),
            ("}]", "}"),
            (",\"asked\":{\"seed\":77,\"index\":0,", ",\"x\":{\"seed\":77,\"index\":0,"),
        ] {
            let said = PracticeReceipt::from_json(&good.replace(from, to)).unwrap_err().to_string();
            assert!(!said.contains('\n') && said.len() < 300, "{said}");
        }
    }
}

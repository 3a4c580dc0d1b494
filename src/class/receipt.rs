//! The receipt: what a learner hands in, and how it is checked.
//!
//! It proves that this log, run by this engine on this lesson and this learner's patient, gives this score. It does not prove who did
//! it, that a person did it, or when: a page can keep no secret, so there is no signature in it. Identity comes from
//! where the file is handed in.

use crate::anatomy::names::{Level, Side, shown};
use crate::lesson::digest::sha256_hex;
use crate::lesson::draw::{self, CodeError, Drawn, Interiors, drawn};
use crate::lesson::file::Lesson;
use crate::lesson::marks::{LessonScore, ReplayError, lesson_score, replay};
use crate::lesson::read_error::ReadError;
use crate::procedure::action::Event;
use crate::procedure::attempt::Attempt;
use crate::procedure::log_line;
use crate::procedure::step::StepId;
use crate::score::engine;
use crate::score::gate::GateId;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The format that is read and written.
pub const FORMAT: u32 = 1;
/// Longest receipt, bytes.
pub const MOST_BYTES: usize = 512 * 1024;
/// Most events in a log: an hour of two a second.
const MOST_EVENTS: usize = 7200;

/// A receipt.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Receipt {
    /// Version of this format: 1.
    #[cfg_attr(feature = "cli", schemars(range(min = 1, max = 1)))]
    pub format: u32,
    /// What scored it.
    pub engine: Engine,
    /// Which lesson.
    pub lesson: LessonName,
    /// The learner's code; no name is asked for.
    #[cfg_attr(feature = "cli", schemars(length(max = 64)))]
    pub learner: String,
    /// What was drawn for that learner.
    pub drawn: DrawnName,
    /// What was done, a line an action: its tick, its name, its values.
    #[cfg_attr(
        feature = "cli",
        schemars(length(max = 7200), inner(length(max = 120), regex(pattern = crate::procedure::log_line::pattern())))
    )]
    pub log: Vec<String>,
    /// What that is said to score.
    pub claim: Claim,
}

/// An engine.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Engine {
    /// For people.
    pub version: String,
    /// For the check: the fingerprint of what it scores.
    pub scoring: String,
}

impl Engine {
    /// This one.
    pub fn this() -> Self {
        Self { version: engine::VERSION.to_owned(), scoring: engine::SCORING.to_owned() }
    }
}

/// A lesson by name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LessonName {
    /// Its id.
    pub id: String,
    /// `Lesson::hash`.
    #[cfg_attr(feature = "cli", schemars(regex(pattern = "^[0-9a-f]{64}$")))]
    pub sha256: String,
}

/// What was drawn, by name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct DrawnName {
    /// Patient.
    pub patient: String,
    /// Its seed.
    pub seed: u64,
    /// Level.
    pub level: Level,
    /// Side.
    pub side: Side,
}

impl DrawnName {
    fn of(drawn: &Drawn) -> Self {
        let target = drawn.case.target;
        let patient = drawn.spec.name.to_owned();
        Self { patient, seed: drawn.spec.seed, level: target.level, side: target.side }
    }
}

/// A score as it is claimed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Claim {
    /// 0 to 1.
    #[cfg_attr(feature = "cli", schemars(range(min = 0.0, max = 1.0)))]
    pub total: f64,
    /// Whether every step was done.
    pub complete: bool,
    /// Whether the pass mark was reached.
    pub passed: bool,
    /// 0 to 1 by step; `null` where it was not done.
    pub steps: BTreeMap<StepId, Option<f64>>,
    /// Whether each gate let it pass; receipts of earlier engines have none.
    #[serde(default)]
    #[cfg_attr(
        feature = "cli",
        schemars(extend("propertyNames" = serde_json::json!({ "enum": GateId::ALL })))
    )]
    pub gates: BTreeMap<GateId, bool>,
}

impl Claim {
    fn of(score: &LessonScore) -> Self {
        let steps = score.steps.iter().map(|s| (s.id, s.score)).collect();
        let gates = score.gates.iter().map(|g| (g.id, g.passed)).collect();
        Self { total: score.total, complete: score.complete, passed: score.passed, steps, gates }
    }
}

/// Why no receipt can be made.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[allow(missing_docs, reason = "the messages are the documentation")]
pub enum MakeError {
    #[error("{0}")]
    Code(#[from] CodeError),
    #[error("{0}")]
    Patient(#[from] crate::anatomy::patient_field::PatientError),
    #[error("{0}")]
    Log(#[from] ReplayError),
    #[error("the log has {found} actions: a receipt holds {MOST_EVENTS}")]
    TooLong { found: usize },
}

impl Receipt {
    /// The receipt of an attempt.
    ///
    /// # Errors
    /// When code, lesson or log cannot be used.
    pub fn of(
        lesson: &Lesson,
        learner: &str,
        log: &[Event],
        interiors: &mut Interiors,
    ) -> Result<Self, MakeError> {
        let learner = draw::code(learner)?;
        if log.len() > MOST_EVENTS {
            return Err(MakeError::TooLong { found: log.len() });
        }
        let drawn = drawn(lesson, learner)?;
        let interior = interiors.of(&drawn.spec);
        let attempt = replay(lesson, &drawn, interior, log)?;
        Ok(Self {
            format: FORMAT,
            engine: Engine::this(),
            lesson: LessonName { id: lesson.id.clone(), sha256: lesson.hash() },
            learner: learner.to_owned(),
            drawn: DrawnName::of(&drawn),
            log: log.iter().map(log_line::write).collect(),
            claim: Claim::of(&lesson_score(lesson, &drawn, interior, &attempt.state)),
        })
    }

    /// Reads a receipt.
    ///
    /// # Errors
    /// Why it cannot be read, in one sentence with its place.
    pub fn from_json(text: &str) -> Result<Self, ReadError> {
        let receipt: Self = crate::lesson::read_error::read(text, "receipt", FORMAT, MOST_BYTES)?;
        let rule = |path: &str, problem: String| Err(ReadError::at(path, problem));
        if let Err(error) = draw::code(&receipt.learner) {
            return rule("learner", error.to_string());
        }
        if receipt.log.len() > MOST_EVENTS {
            return rule("log", format!("found {} actions: allowed are {MOST_EVENTS}", receipt.log.len()));
        }
        Ok(receipt)
    }

    /// As a file, indented: an event a line.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default() + "\n"
    }

    /// The log as events.
    ///
    /// # Errors
    /// At the first line that is none.
    pub fn events(&self) -> Result<Vec<Event>, ReadError> {
        self.log
            .iter()
            .enumerate()
            .map(|(i, line)| {
                log_line::read(line)
                    .map_err(|problem| ReadError::at(format!("log[{i}]"), problem.to_string()))
            })
            .collect()
    }

    /// What two copies of one log have in common (`super::log_likeness::essence`).
    pub fn log_hash(&self) -> String {
        sha256_hex(super::log_likeness::essence(&self.log).as_bytes())
    }
}

/// The lessons that receipts are checked against, by hash.
#[derive(Clone, Debug, Default)]
pub struct Lessons(BTreeMap<String, Lesson>);

impl Lessons {
    /// Adds one; the same lesson again changes nothing.
    pub fn add(&mut self, lesson: Lesson) {
        self.0.insert(lesson.hash(), lesson);
    }

    /// That of a receipt.
    pub fn named(&self, name: &LessonName) -> Option<&Lesson> {
        self.0.get(&name.sha256).filter(|l| l.id == name.id)
    }

    /// All of them, by hash.
    pub fn all(&self) -> impl Iterator<Item = &Lesson> {
        self.0.values()
    }
}

impl FromIterator<Lesson> for Lessons {
    fn from_iter<I: IntoIterator<Item = Lesson>>(lessons: I) -> Self {
        let mut all = Self::default();
        lessons.into_iter().for_each(|l| all.add(l));
        all
    }
}

/// What a check found.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// The log gives the score that is claimed.
    Verified(Replayed),
    /// It does not: what is wrong, and what the log gives if it can be replayed.
    Altered(Vec<String>, Option<Replayed>),
    /// Another engine scored it; this one cannot say.
    UnknownEngine(String),
    /// The lesson is not among those given.
    UnknownLesson(String),
    /// It is no receipt.
    Unreadable(ReadError),
}

/// A replay.
#[derive(Clone, Debug, PartialEq)]
pub struct Replayed {
    /// Its score.
    pub score: LessonScore,
    /// Spot pictures and runs of fluoroscopy.
    pub pictures: u32,
    /// Beam time of fluoroscopy, s.
    pub beam_s: f64,
    /// From start to the last action, s.
    pub duration_s: f64,
}

impl Replayed {
    fn of(lesson: &Lesson, drawn: &Drawn, interiors: &mut Interiors, attempt: &Attempt) -> Self {
        let score = lesson_score(lesson, drawn, interiors.of(&drawn.spec), &attempt.state);
        let (pictures, beam_s) = crate::score::radiation::spent(&attempt.state);
        Self { score, pictures, beam_s, duration_s: crate::procedure::action::seconds(attempt.state.tick) }
    }
}

/// Checks a receipt by replaying it.
pub fn verify(receipt: &Receipt, lessons: &Lessons, interiors: &mut Interiors) -> Verdict {
    if receipt.engine.scoring != engine::SCORING {
        let Engine { version, scoring } = &receipt.engine;
        return Verdict::UnknownEngine(format!(
            "scored by engine {} ({}), and this is {} ({}): check it with that version",
            shown(version),
            shown(scoring),
            engine::VERSION,
            engine::SCORING
        ));
    }
    let Some(lesson) = lessons.named(&receipt.lesson) else {
        let other = lessons.all().any(|l| l.id == receipt.lesson.id);
        let id = shown(&receipt.lesson.id);
        return Verdict::UnknownLesson(if other {
            format!("lesson '{id}' is here, but asks something else: it or the receipt has been changed")
        } else {
            format!("lesson '{id}' is not among those given")
        });
    };
    let mut wrong = Vec::new();
    // A checked lesson names only patients that there are.
    let Ok(drawn) = drawn(lesson, &receipt.learner) else {
        return Verdict::UnknownLesson(format!("the patient of lesson '{}' is not known here", lesson.id));
    };
    let own = DrawnName::of(&drawn);
    if receipt.drawn != own {
        wrong.push(format!(
            "it tells of {}, and this learner's code draws {}",
            in_words(&receipt.drawn),
            in_words(&own)
        ));
    }
    let events = match receipt.events() {
        Ok(events) => events,
        Err(error) => {
            wrong.push(error.to_string());
            return Verdict::Altered(wrong, None);
        }
    };
    let attempt = match replay(lesson, &drawn, interiors.of(&drawn.spec), &events) {
        Ok(attempt) => attempt,
        Err(error) => {
            wrong.push(format!("the log cannot be replayed on this learner's patient: {error}"));
            return Verdict::Altered(wrong, None);
        }
    };
    let replayed = Replayed::of(lesson, &drawn, interiors, &attempt);
    wrong.extend(differences(&receipt.claim, &Claim::of(&replayed.score)));
    if wrong.is_empty() { Verdict::Verified(replayed) } else { Verdict::Altered(wrong, Some(replayed)) }
}

fn in_words(drawn: &DrawnName) -> String {
    format!("{} {}, patient {} with seed {}", drawn.level, drawn.side, shown(&drawn.patient), drawn.seed)
}

/// What a claim says otherwise than the replay; scores must agree to the last bit.
fn differences(claim: &Claim, own: &Claim) -> Vec<String> {
    let mut found = Vec::new();
    let differ = |a: Option<f64>, b: Option<f64>| a.map(f64::to_bits) != b.map(f64::to_bits);
    let percent = |score: Option<f64>| score.map_or("nothing".to_owned(), |s| format!("{:.2} %", 100.0 * s));
    let said = |a: Option<f64>, b: Option<f64>| {
        let (a, b) = (percent(a), percent(b));
        if a == b {
            "a little more or less than".to_owned() + " the log gives"
        } else {
            format!("{a}, and the log gives {b}")
        }
    };
    for &id in StepId::ALL {
        match (claim.steps.get(&id), own.steps.get(&id)) {
            (Some(&a), Some(&b)) if differ(a, b) => {
                found.push(format!("{} is claimed as {}", id.name(), said(a, b)))
            }
            (Some(_), None) => {
                found.push(format!("{} is claimed, and the lesson does not ask for it", id.name()))
            }
            (None, Some(_)) => found.push(format!("{} is missing from the claim", id.name())),
            _ => {}
        }
    }
    if differ(Some(claim.total), Some(own.total)) {
        found.push(format!("the total is claimed as {}", said(Some(claim.total), Some(own.total))));
    }
    for &id in GateId::ALL {
        let said = |passed: Option<&bool>| match passed {
            Some(true) => "passed",
            Some(false) => "failed",
            None => "not asked",
        };
        let (a, b) = (claim.gates.get(&id), own.gates.get(&id));
        if a != b {
            found.push(format!("gate {} is claimed as {}, and is {}", id.id(), said(a), said(b)));
        }
    }
    if claim.complete != own.complete {
        found.push(format!("complete is claimed as {}, and is {}", claim.complete, own.complete));
    }
    if claim.passed != own.passed {
        found.push(format!("passed is claimed as {}, and is {}", claim.passed, own.passed));
    }
    found
}

/// Reads and checks; the receipt too, if there is one.
pub fn verify_text(text: &str, lessons: &Lessons, interiors: &mut Interiors) -> (Option<Receipt>, Verdict) {
    match Receipt::from_json(text) {
        Ok(receipt) => {
            let verdict = verify(&receipt, lessons, interiors);
            (Some(receipt), verdict)
        }
        Err(error) => (None, Verdict::Unreadable(error)),
    }
}

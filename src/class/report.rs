//! The receipts of a class: a row each, tables for other programs, and which step fails whom.
//!
//! Rows come in the order in which the receipts were given; nothing in here depends on the order of a hash map or on the clock.

use super::log_likeness;
use super::receipt::{Lessons, Receipt, Replayed, Verdict, verify_text};
use super::receipt_text;
use crate::lesson::draw::Interiors;
use crate::lesson::file::Lesson;
use crate::procedure::step::StepId;
use crate::score::gate::{GateId, gates_of};
use serde::Serialize;
use std::collections::BTreeMap;

/// How a receipt came out.
#[derive(
    Clone,
    Copy,
    Debug,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    strum::IntoStaticStr,
    strum::VariantArray,
)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
#[allow(missing_docs, reason = "described at `super::receipt::Verdict`")]
pub enum Status {
    Verified,
    Altered,
    UnknownEngine,
    UnknownLesson,
    Unreadable,
}

impl Status {
    /// All of them.
    pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;

    /// The name used in files.
    pub fn id(self) -> &'static str {
        self.into()
    }

    /// In words, such as `unknown engine`.
    pub fn name(self) -> String {
        self.id().replace('_', " ")
    }
}

/// A receipt's row. Scores are those of the replay, never the claim's.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Where it came from: a file's name.
    pub source: String,
    /// The line in it, from 1, where each line is a receipt.
    pub line: Option<u64>,
    /// How it came out.
    pub status: Status,
    /// What is wrong, in words; empty when nothing is.
    pub note: String,
    /// What the receipt declares; `None` when it could not be read.
    pub declared: Option<Declared>,
    /// What its log gives; `None` when it was not or could not be replayed.
    pub replayed: Option<Replayed>,
    /// Number (from 1) of a row with the same log under another learner's code.
    pub same_log_as: Option<usize>,
    /// Of long logs: the row of another learner's log that it is most alike, number (from 1) and share in common (0 to 1); none where the log
    /// is the same, and none under `super::log_likeness::ALIKE`.
    pub alike: Option<(usize, f64)>,
    /// Number (from 1) of an earlier row with the same log under the same code.
    pub repeat_of: Option<usize>,
}

/// What a receipt declares, before any check.
#[derive(Clone, Debug, PartialEq)]
pub struct Declared {
    /// The learner's code.
    pub learner: String,
    /// Id of the lesson.
    pub lesson: String,
    /// Its hash.
    pub lesson_sha256: String,
    /// Patient.
    pub patient: String,
    /// Seed.
    pub seed: u64,
    /// Level.
    pub level: &'static str,
    /// Side.
    pub side: &'static str,
    /// The claimed total.
    pub claimed: f64,
    /// Actions in the log.
    pub actions: usize,
    /// `Receipt::log_hash`.
    pub log_hash: String,
    /// `super::log_likeness::runs` of its log.
    pub runs: Vec<u32>,
}

impl Declared {
    fn of(receipt: Receipt) -> Self {
        Self {
            log_hash: receipt.log_hash(),
            runs: log_likeness::runs(&receipt.log),
            actions: receipt.log.len(),
            learner: receipt.learner.trim().to_owned(),
            lesson: receipt.lesson.id,
            lesson_sha256: receipt.lesson.sha256,
            patient: receipt.drawn.patient,
            seed: receipt.drawn.seed,
            level: receipt.drawn.level.name(),
            side: receipt.drawn.side.name(),
            claimed: receipt.claim.total,
        }
    }
}

/// Checks one receipt.
pub fn row(source: &str, line: Option<u64>, text: &str, lessons: &Lessons, interiors: &mut Interiors) -> Row {
    let (receipt, verdict) = verify_text(&receipt_text::receipt_in(text), lessons, interiors);
    let (status, note, replayed) = match verdict {
        Verdict::Verified(replayed) => (Status::Verified, String::new(), Some(replayed)),
        Verdict::Altered(wrong, replayed) => (Status::Altered, wrong.join("; "), replayed),
        Verdict::UnknownEngine(why) => (Status::UnknownEngine, why, None),
        Verdict::UnknownLesson(why) => (Status::UnknownLesson, why, None),
        Verdict::Unreadable(error) => (Status::Unreadable, error.to_string(), None),
    };
    let declared = receipt.map(Declared::of);
    let (source, same_log_as) = (source.to_owned(), None);
    Row { source, line, status, note, declared, replayed, same_log_as, alike: None, repeat_of: None }
}

/// The row of what could not even be read as text.
pub fn unreadable(source: &str, line: Option<u64>, why: String) -> Row {
    let (status, source) = (Status::Unreadable, source.to_owned());
    let (declared, replayed, same_log_as) = (None, None, None);
    Row { source, line, status, note: why, declared, replayed, same_log_as, alike: None, repeat_of: None }
}

/// All rows, each knowing its doubles.
#[derive(Clone, Debug, Default)]
pub struct ClassReport {
    /// In the order given.
    pub rows: Vec<Row>,
}

impl ClassReport {
    /// Looks for doubles among the rows.
    pub fn of(mut rows: Vec<Row>) -> Self {
        let mut by_log: BTreeMap<(String, String), Vec<usize>> = BTreeMap::new();
        for (i, row) in rows.iter().enumerate() {
            if let Some(declared) = row.declared.as_ref().filter(|t| t.actions > 0) {
                by_log.entry((declared.lesson.clone(), declared.log_hash.clone())).or_default().push(i);
            }
        }
        for alike in by_log.values().filter(|alike| alike.len() > 1) {
            let learner = |i: usize| rows[i].declared.as_ref().map(|t| t.learner.as_str());
            let first = alike[0];
            // The first of each code, and the first of another code than the very first's.
            let mut first_of: BTreeMap<Option<&str>, usize> = BTreeMap::new();
            let mut found = Vec::new();
            let other = alike.iter().copied().find(|&i| learner(i) != learner(first));
            for &i in alike {
                let same_code = first_of.get(&learner(i)).copied();
                first_of.entry(learner(i)).or_insert(i);
                let other_code = if learner(i) == learner(first) { other } else { Some(first) };
                found.push((i, other_code, same_code));
            }
            for (i, other_code, same_code) in found {
                rows[i].same_log_as = other_code.map(|j| j + 1);
                rows[i].repeat_of = same_code.map(|j| j + 1);
            }
        }
        find_alike(&mut rows);
        Self { rows }
    }

    /// How many are much like another learner's, though not the same.
    pub fn alike(&self) -> usize {
        self.rows.iter().filter(|r| r.alike.is_some()).count()
    }

    /// How many came out how.
    pub fn count(&self, status: Status) -> usize {
        self.rows.iter().filter(|r| r.status == status).count()
    }

    /// How many share their log with another learner's.
    pub fn copies(&self) -> usize {
        self.rows.iter().filter(|r| r.same_log_as.is_some()).count()
    }

    /// Each lesson's class, by lesson id.
    pub fn summary(&self, lessons: &Lessons) -> Vec<LessonSummary> {
        let mut found: Vec<LessonSummary> = lessons
            .all()
            .filter_map(|lesson| {
                let hash = lesson.hash();
                let of_lesson = |row: &&Row| row.declared.as_ref().is_some_and(|t| t.lesson_sha256 == hash);
                let rows: Vec<&Row> = self.rows.iter().filter(of_lesson).collect();
                if rows.is_empty() {
                    return None;
                }
                Some(summary_of(lesson, &rows))
            })
            .collect();
        found.sort_by(|a, b| a.lesson.cmp(&b.lesson));
        found
    }
}

/// Notes for each row the other learner's log that it is most alike, lesson by lesson.
fn find_alike(rows: &mut [Row]) {
    let mut by_lesson: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    for (i, row) in rows.iter().enumerate() {
        if let Some(declared) = row.declared.as_ref().filter(|t| !t.runs.is_empty()) {
            by_lesson.entry(&declared.lesson).or_default().push(i);
        }
    }
    let mut found = Vec::new();
    for of_lesson in by_lesson.into_values() {
        let logs: Vec<(&str, &[u32])> = of_lesson
            .iter()
            .filter_map(|&i| rows[i].declared.as_ref())
            .map(|t| (t.learner.as_str(), t.runs.as_slice()))
            .collect();
        let nearest = log_likeness::nearest(&logs);
        found.extend(
            of_lesson
                .iter()
                .zip(nearest)
                .filter_map(|(&i, near)| near.map(|(j, share)| (i, of_lesson[j], share))),
        );
    }
    for (i, j, share) in found {
        if rows[i].same_log_as.is_none() {
            rows[i].alike = Some((j + 1, share));
        }
    }
}

/// A lesson's class. Of a learner with several verified receipts the best counts.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct LessonSummary {
    /// Id.
    pub lesson: String,
    /// English title.
    pub title: String,
    /// Receipts, verified or not.
    pub receipts: usize,
    /// Verified ones.
    pub verified: usize,
    /// Learners with a verified receipt.
    pub learners: usize,
    /// Of them, those who passed.
    pub passed: usize,
    /// Mean over the learners, 0 to 1.
    pub mean_total: f64,
    /// Learners by total: under 10 percent, under 20, … and from 90 on.
    pub histogram: [usize; 10],
    /// By step, in order.
    pub steps: Vec<StepSummary>,
    /// Gates, in order.
    pub gates: Vec<GateSummary>,
}

/// A gate's class.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct GateSummary {
    /// Which.
    pub id: GateId,
    /// Codes of the learners whom it did not let pass.
    pub failed: Vec<String>,
}

/// A step's class.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct StepSummary {
    /// Which.
    pub id: StepId,
    /// In words.
    pub name: &'static str,
    /// Mean over the learners, 0 to 1; a step not done gives nothing.
    pub mean: f64,
    /// First quartile, median and third quartile over the learners, 0 to 1 (Hyndman & Fan 1996, Am Stat 50:361, type 7, as most
    /// programs have it: from memory).
    pub quartiles: [f64; 3],
    /// Learners by quarter of the marks: under 0.25, under 0.5, under 0.75, and above.
    pub bands: [usize; 4],
    /// Codes of the learners whose marks in this step lie under the lesson's pass mark.
    pub below_pass: Vec<String>,
}

fn summary_of(lesson: &Lesson, rows: &[&Row]) -> LessonSummary {
    let (steps, gates) = (&lesson.steps, gates_of(&lesson.steps, &lesson.gates));
    let mut best: BTreeMap<String, &Replayed> = BTreeMap::new();
    let verified = rows.iter().filter(|r| r.status == Status::Verified);
    for (row, declared, replayed) in
        verified.clone().filter_map(|r| Some((r, r.declared.as_ref()?, r.replayed.as_ref()?)))
    {
        // Without a code learners are distinguished by where their receipt lies.
        let code = if declared.learner.is_empty() {
            format!("(no code) {}", place(row))
        } else {
            declared.learner.clone()
        };
        let there = best.entry(code).or_insert(replayed);
        // A pass comes before a higher total that a gate has failed.
        let rank = |r: &Replayed| (r.score.passed, r.score.total);
        if rank(replayed) > rank(there) {
            *there = replayed;
        }
    }
    let learners = best.len();
    let mean = |sum: f64| if learners == 0 { 0.0 } else { sum / learners as f64 };
    let of_step = |replayed: &Replayed, id: StepId| {
        replayed.score.steps.iter().find(|s| s.id == id).and_then(|s| s.score).unwrap_or(0.0)
    };
    let steps = steps
        .iter()
        .map(|&id| StepSummary {
            id,
            name: id.name(),
            mean: mean(best.values().map(|r| of_step(r, id)).sum()),
            quartiles: quartiles(best.values().map(|r| of_step(r, id)).collect()),
            bands: best.values().fold([0; 4], |mut bands, r| {
                bands[band(of_step(r, id))] += 1;
                bands
            }),
            below_pass: best
                .iter()
                .filter(|(_, r)| of_step(r, id) * 100.0 < f64::from(lesson.pass_mark))
                .map(|(code, _)| code.clone())
                .collect(),
        })
        .collect();
    LessonSummary {
        lesson: lesson.id.clone(),
        title: lesson.title.in_language("en").to_owned(),
        receipts: rows.len(),
        verified: verified.count(),
        learners,
        passed: best.values().filter(|r| r.score.passed).count(),
        mean_total: mean(best.values().map(|r| r.score.total).sum()),
        histogram: best.values().fold([0; 10], |mut counts, r| {
            counts[((r.score.total * 10.0 + 1e-9) as usize).min(9)] += 1;
            counts
        }),
        steps,
        gates: gates
            .into_iter()
            .map(|id| GateSummary {
                id,
                failed: best
                    .iter()
                    .filter(|(_, r)| r.score.gates.iter().any(|g| g.id == id && !g.passed))
                    .map(|(code, _)| code.clone())
                    .collect(),
            })
            .collect(),
    }
}

/// Quartiles with straight lines between the values; zeros without any.
fn quartiles(mut values: Vec<f64>) -> [f64; 3] {
    values.sort_by(f64::total_cmp);
    let Some(last) = values.len().checked_sub(1) else { return [0.0; 3] };
    [0.25, 0.5, 0.75].map(|share| {
        let place = share * last as f64;
        let low = place as usize;
        values[low] + (place - low as f64) * (values[(low + 1).min(last)] - values[low])
    })
}

/// The quarter of the marks that a share lies in, 0 to 3; full marks are in the last.
fn band(marks: f64) -> usize {
    [0.25, 0.5, 0.75].iter().filter(|&&from| marks >= from).count()
}

/// `file` or `file:line`.
pub fn place(row: &Row) -> String {
    row.line.map_or_else(|| row.source.clone(), |line| format!("{}:{line}", row.source))
}

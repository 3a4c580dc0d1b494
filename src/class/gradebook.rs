//! The class by learner: each one's tries at each lesson in the order in which they were given, the best of them, who has handed in
//! nothing, and what should be looked at; and that as a table for a gradebook, a row a learner.

use super::list::{ClassList, Member};
use super::report::{ClassReport, Row, Status};
use super::table::{CsvStyle, table};
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeMap;

/// A learner's term.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Learner {
    /// The code.
    pub code: String,
    /// The name; none where the code is on no list.
    pub name: Option<String>,
    /// By lesson, in the order of [`Class::lessons`].
    pub lessons: Vec<Tries>,
    /// Numbers (from 1) of rows that should be looked at: altered, or like another learner's.
    pub look_at: Vec<usize>,
}

/// A learner's tries at a lesson.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Tries {
    /// Numbers (from 1) of their rows, in the order given, whatever became of them.
    pub rows: Vec<usize>,
    /// Total of each verified one, 0 to 1, in that order.
    pub totals: Vec<f64>,
    /// Number of the best verified row: a pass before any fail, then the higher total, then the earlier.
    pub best: Option<usize>,
    /// Its total, 0 to 1.
    pub total: Option<f64>,
    /// Whether it passed; none without a verified one.
    pub passed: Option<bool>,
}

/// A class by learner.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Class {
    /// Ids of the lessons that there are receipts of, in order.
    pub lessons: Vec<String>,
    /// Those of the list in its order, then the others by code.
    pub learners: Vec<Learner>,
    /// Codes of the list without any receipt.
    pub missing: Vec<String>,
}

impl Class {
    /// Of a report; `list` may be empty.
    pub fn of(report: &ClassReport, list: &ClassList) -> Self {
        let mut by_code: BTreeMap<&str, Vec<(usize, &Row)>> = BTreeMap::new();
        let mut lessons: Vec<String> = Vec::new();
        for (i, row) in report.rows.iter().enumerate() {
            let Some(declared) = &row.declared else { continue };
            by_code.entry(&declared.learner).or_default().push((i + 1, row));
            if row.replayed.is_some() && !lessons.contains(&declared.lesson) {
                lessons.push(declared.lesson.clone());
            }
        }
        lessons.sort();
        let none = Vec::new();
        let listed = list.members().iter().map(|Member { code, name }| (code.as_str(), Some(name.clone())));
        let others = by_code.keys().filter(|code| list.name(code).is_none()).map(|code| (*code, None));
        let learners = listed
            .chain(others)
            .map(|(code, name)| learner(code, name, by_code.get(code).unwrap_or(&none), &lessons))
            .collect();
        let missing = list
            .members()
            .iter()
            .filter(|m| !by_code.contains_key(m.code.as_str()))
            .map(|m| m.code.clone())
            .collect();
        Self { lessons, learners, missing }
    }

    /// As a gradebook: a row a learner, a heading first. Of each lesson the best try in percent to a tenth (empty where nothing verified was
    /// handed in), whether it passed, and how many tries there were; then the mean over all lessons, nothing counting as 0.
    pub fn gradebook(&self, style: CsvStyle) -> String {
        let mut heading = vec!["code".to_owned(), "name".to_owned()];
        for lesson in &self.lessons {
            heading.extend(["percent", "passed", "tries"].map(|what| format!("{lesson} {what}")));
        }
        heading.extend(["mean percent", "rows to look at"].map(str::to_owned));
        let rows = self.learners.iter().map(|learner| {
            let mut row: Vec<Value> =
                vec![learner.code.as_str().into(), learner.name.as_deref().unwrap_or_default().into()];
            for tries in &learner.lessons {
                row.push(tries.total.map(percent).into());
                row.push(tries.passed.map(|passed| if passed { "yes" } else { "no" }).into());
                row.push(tries.rows.len().into());
            }
            let sum: f64 = learner.lessons.iter().filter_map(|t| t.total).sum();
            let mean = (!self.lessons.is_empty()).then(|| percent(sum / self.lessons.len() as f64));
            row.push(mean.into());
            row.push(learner.look_at.iter().map(ToString::to_string).collect::<Vec<_>>().join(" ").into());
            row
        });
        table(std::iter::once(heading.into_iter().map(Value::from).collect()).chain(rows), style)
    }
}

/// To a tenth, rounded down, so that nobody just under a mark is shown that mark.
fn percent(share: f64) -> f64 {
    (share * 1000.0 + 1e-6).floor() / 10.0
}

fn learner(code: &str, name: Option<String>, rows: &[(usize, &Row)], lessons: &[String]) -> Learner {
    let is_odd =
        |row: &Row| row.status == Status::Altered || row.same_log_as.is_some() || row.alike.is_some();
    let look_at = rows.iter().filter(|(_, row)| is_odd(row)).map(|(n, _)| *n).collect();
    let lessons = lessons
        .iter()
        .map(|lesson| {
            tries(rows.iter().filter(|(_, r)| r.declared.as_ref().is_some_and(|t| t.lesson == *lesson)))
        })
        .collect();
    Learner { code: code.to_owned(), name, lessons, look_at }
}

fn tries<'a>(rows: impl Iterator<Item = &'a (usize, &'a Row)>) -> Tries {
    let mut found = Tries::default();
    let mut rank = (false, -1.0);
    // The same log handed in twice is one try, the one that is verified if either is.
    let mut counted: Vec<(&str, bool)> = Vec::new();
    for (n, row) in rows {
        let log = row.declared.as_ref().map_or("", |t| t.log_hash.as_str());
        let score = row.replayed.as_ref().map(|r| &r.score).filter(|_| row.status == Status::Verified);
        match counted.iter_mut().find(|(other, _)| *other == log) {
            Some((_, true)) => continue,
            Some((_, verified)) if score.is_some() => *verified = true,
            Some(_) => continue,
            None => {
                counted.push((log, score.is_some()));
                found.rows.push(*n);
            }
        }
        let Some(score) = score else { continue };
        found.totals.push(score.total);
        if (score.passed, score.total) > rank {
            rank = (score.passed, score.total);
            (found.best, found.total, found.passed) = (Some(*n), Some(score.total), Some(score.passed));
        }
    }
    found
}

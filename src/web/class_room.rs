//! A class on the teacher's page: receipts and lessons as texts in, rows, summary and tables out. Nothing leaves the page.

use super::exchange::to_js;
use super::values::{ClassEntry, RowEntry, RowStep};
use crate::class::gradebook::Class;
use crate::class::list::ClassList;
use crate::class::receipt::{Lessons, Receipt};
use crate::class::receipt_text;
use crate::class::report::{ClassReport, Row, Status, row, unreadable};
use crate::class::table::{self, CsvStyle, Separator};
use crate::lesson::draw::{Drawn, Interiors, drawn};
use crate::lesson::file::Lesson;
use crate::lesson::link;
use crate::procedure::attempt_file::AttemptFile;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::*;

/// A receipt's text and where it came from.
#[derive(Debug)]
struct Given {
    source: String,
    line: Option<u64>,
    text: Result<String, String>,
}

/// Receipts of a class and the lessons they are checked against.
#[wasm_bindgen]
#[derive(Debug, Default)]
pub struct ClassRoom {
    lessons: Lessons,
    interiors: Interiors,
    list: ClassList,
    given: Vec<Given>,
    rows: Vec<Row>,
}

fn style(separator: &str, byte_order_mark: bool) -> CsvStyle {
    let found = Separator::ALL.into_iter().find(|(name, _)| *name == separator);
    CsvStyle { separator: found.map_or(Separator::Comma, |(_, separator)| separator), byte_order_mark }
}

impl RowEntry {
    fn of(row: &Row) -> Self {
        let (declared, score) = (row.declared.as_ref(), row.replayed.as_ref().map(|r| &r.score));
        let steps = score.iter().flat_map(|s| &s.steps);
        Self {
            source: row.source.clone(),
            line: row.line,
            status: row.status.id(),
            note: row.note.clone(),
            learner: declared.map(|t| t.learner.clone()),
            lesson: declared.map(|t| t.lesson.clone()),
            patient: declared.map(|t| format!("{} {}, {} {}", t.level, t.side, t.patient, t.seed)),
            total: score.map(|s| s.total),
            passed: score.map(|s| s.passed),
            complete: score.map(|s| s.complete),
            steps: steps.map(|s| RowStep { id: s.id.id(), name: s.id.name(), score: s.score }).collect(),
            gates_failed: score.map_or(Vec::new(), |s| table::failed(&s.gates)),
            same_log_as: row.same_log_as,
            alike: row.alike.map(|(row, _)| row),
            alike_share: row.alike.map(|(_, share)| share),
            repeat_of: row.repeat_of,
        }
    }
}

#[wasm_bindgen]
impl ClassRoom {
    /// An empty class.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a lesson file; returns its title. What has been checked is to be checked again.
    #[wasm_bindgen(js_name = addLesson)]
    pub fn add_lesson(&mut self, json: &str, language: &str) -> Result<String, JsError> {
        Ok(self.take_up(Lesson::from_json(json)?, language))
    }

    /// Adds the lesson of a link; returns its title.
    #[wasm_bindgen(js_name = addLink)]
    pub fn add_link(&mut self, link: &str, language: &str) -> Result<String, JsError> {
        Ok(self.take_up(link::lesson(link)?, language))
    }

    /// Whether a file of a folder may hold receipts, by its name and the first bytes of it.
    #[wasm_bindgen(js_name = mayHold)]
    pub fn may_hold(name: &str, beginning: &[u8]) -> bool {
        receipt_text::may_hold(name, beginning)
    }

    /// Whether a file is a receipt a line, by its name and its first line that is not blank.
    #[wasm_bindgen(js_name = isLines)]
    pub fn is_lines(name: &str, first_line: &[u8]) -> bool {
        receipt_text::is_lines(name, first_line)
    }

    /// Adds a receipt from a file, or from a line (from 1) of one.
    #[wasm_bindgen(js_name = addReceipt)]
    pub fn add_receipt(&mut self, source: String, line: Option<u32>, text: String) {
        self.given.push(Given { source, line: line.map(u64::from), text: Ok(text) });
    }

    /// Adds a row for a file, or a line of one, that could not be read as text, with the reason.
    #[wasm_bindgen(js_name = addUnreadable)]
    pub fn add_unreadable(&mut self, source: String, line: Option<u32>, why: String) {
        self.given.push(Given { source, line: line.map(u64::from), text: Err(why) });
    }

    /// Checks at most so many receipts more. Returns how many are left.
    pub fn check(&mut self, most: usize) -> usize {
        for Given { source, line, text } in self.given.iter().skip(self.rows.len()).take(most) {
            self.rows.push(match text {
                Ok(text) => row(source, *line, text, &self.lessons, &mut self.interiors),
                Err(why) => unreadable(source, *line, why.clone()),
            });
        }
        self.given.len() - self.rows.len()
    }

    /// Rows, counts by status, and each lesson's class, as a plain object.
    #[wasm_bindgen(unchecked_return_type = "values.ClassEntry")]
    pub fn report(&self) -> Result<JsValue, JsError> {
        let report = self.whole();
        to_js(&ClassEntry {
            rows: report.rows.iter().map(RowEntry::of).collect(),
            counts: Status::ALL.iter().map(|&s| (s.id(), report.count(s))).collect(),
            copies: report.copies(),
            lessons: report.summary(&self.lessons),
        })
    }

    /// The rows as CSV: `separator` is comma, semicolon or tab.
    pub fn csv(&self, separator: &str, bom: bool) -> String {
        table::csv(&self.whole(), style(separator, bom))
    }

    /// Takes a class list (CSV of code and name); returns how many learners are on it.
    #[wasm_bindgen(js_name = setList)]
    pub fn set_list(&mut self, text: &str) -> Result<usize, JsError> {
        self.list = ClassList::from_csv(text)?;
        Ok(self.list.members().len())
    }

    /// Deals out codes to names, a name a line, by a seed that must come from chance: the list as CSV, which is also taken.
    #[wasm_bindgen(js_name = dealCodes)]
    pub fn deal_codes(&mut self, names: &str, seed: u64, separator: &str) -> Result<String, JsError> {
        self.list = ClassList::dealt(names, seed)?;
        Ok(table::list(&self.list, style(separator, true)))
    }

    /// The class by learner, as a plain object.
    #[wasm_bindgen(unchecked_return_type = "values.Class")]
    pub fn learners(&self) -> Result<JsValue, JsError> {
        to_js(&Class::of(&self.whole(), &self.list))
    }

    /// The class by learner as CSV, a row a learner: `separator` is comma, semicolon or tab.
    pub fn gradebook(&self, separator: &str, bom: bool) -> String {
        Class::of(&self.whole(), &self.list).gradebook(style(separator, bom))
    }

    /// What was done in a row's receipt (its number from 1), as the page opens an attempt; nothing where its log cannot be replayed.
    #[wasm_bindgen(unchecked_return_type = "values.AttemptFile | null")]
    pub fn attempt(&self, number: usize) -> Result<JsValue, JsError> {
        to_js(&self.attempt_of(number))
    }

    /// The lesson of a row's receipt, as a file; nothing where it is not known.
    #[wasm_bindgen(js_name = lessonOf)]
    pub fn lesson_of(&self, number: usize) -> Option<String> {
        Some(self.lessons.named(&self.receipt_of(number)?.lesson)?.to_json())
    }

    /// The learner's code of a row's receipt.
    #[wasm_bindgen(js_name = learnerOf)]
    pub fn learner_of(&self, number: usize) -> Option<String> {
        Some(self.receipt_of(number)?.learner)
    }

    /// The rows as NDJSON.
    pub fn ndjson(&self) -> String {
        table::ndjson(&self.whole())
    }

    /// Forgets the receipts; the lessons stay.
    pub fn clear(&mut self) {
        self.given.clear();
        self.rows.clear();
    }

    fn receipt_of(&self, number: usize) -> Option<Receipt> {
        let given = self.given.get(number.checked_sub(1)?)?;
        Receipt::from_json(&receipt_text::receipt_in(given.text.as_ref().ok()?)).ok()
    }

    fn attempt_of(&self, number: usize) -> Option<AttemptFile> {
        let receipt = self.receipt_of(number)?;
        let lesson = self.lessons.named(&receipt.lesson)?;
        let Drawn { spec, case, .. } = drawn(lesson, &receipt.learner).ok()?;
        let log = receipt.events().ok()?;
        Some(AttemptFile::of(&spec, case, log))
    }

    fn whole(&self) -> ClassReport {
        ClassReport::of(self.rows.clone())
    }

    fn take_up(&mut self, lesson: Lesson, language: &str) -> String {
        let title = lesson.title.in_language(language).to_owned();
        self.lessons.add(lesson);
        self.rows.clear();
        title
    }
}

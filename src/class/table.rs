//! The rows of a class as CSV (RFC 4180) for spreadsheets and as NDJSON (a JSON object a line) for everything else. One table
//! makes both.

use super::list::ClassList;
use super::report::{ClassReport, Row, Status};
use crate::procedure::step::StepId;
use crate::score::gate::Gate;
use crate::score::marks::Step;
use serde_json::{Map, Value};

/// A column: its name, what it tells, and what stands in it for a row of a number.
type Column = (&'static str, &'static str, Cell);

/// What stands in a column; its type is what the schema of a row is made from.
#[derive(Clone, Copy)]
enum Cell {
    /// A number that counts or names, from 0.
    Whole(fn(usize, &Row) -> Option<u64>),
    /// A share, 0 to 1.
    Share(fn(&Row) -> Option<f64>),
    /// Any other number.
    Number(fn(&Row) -> Option<f64>),
    /// Yes or no.
    Flag(fn(&Row) -> Option<bool>),
    /// Text, always there.
    Text(fn(&Row) -> String),
    /// Text of a row that could be read.
    TextIfRead(fn(&Row) -> Option<String>),
    /// How the receipt came out.
    Came(fn(&Row) -> Status),
}

impl Cell {
    fn value(self, number: usize, row: &Row) -> Value {
        match self {
            Self::Whole(of) => of(number, row).into(),
            Self::Share(of) | Self::Number(of) => of(row).into(),
            Self::Flag(of) => of(row).into(),
            Self::Text(of) => of(row).into(),
            Self::TextIfRead(of) => of(row).into(),
            Self::Came(of) => of(row).id().into(),
        }
    }
}

/// A number of a place or of things as JSON has it.
fn whole(n: usize) -> Option<u64> {
    u64::try_from(n).ok()
}

/// Columns before the steps.
const FIRST: [Column; 15] = [
    ("row", "Number of the row, from 1", Cell::Whole(|number, _| whole(number))),
    ("source", "The file", Cell::Text(|r| r.source.clone())),
    ("line", "The line in it, from 1, where each line is a receipt", Cell::Whole(|_, r| r.line)),
    ("status", "How the receipt came out", Cell::Came(|r| r.status)),
    ("learner", "The learner's code", Cell::TextIfRead(|r| r.declared.as_ref().map(|t| t.learner.clone()))),
    ("lesson", "Id of the lesson", Cell::TextIfRead(|r| r.declared.as_ref().map(|t| t.lesson.clone()))),
    ("patient", "Patient", Cell::TextIfRead(|r| r.declared.as_ref().map(|t| t.patient.clone()))),
    ("seed", "Its seed", Cell::Whole(|_, r| r.declared.as_ref().map(|t| t.seed))),
    ("level", "Level", Cell::TextIfRead(|r| r.declared.as_ref().map(|t| t.level.to_owned()))),
    ("side", "Side", Cell::TextIfRead(|r| r.declared.as_ref().map(|t| t.side.to_owned()))),
    ("total", "What the log scores", Cell::Share(|r| r.replayed.as_ref().map(|p| p.score.total))),
    (
        "claimed",
        "What the receipt says that it scores",
        Cell::Number(|r| r.declared.as_ref().map(|t| t.claimed)),
    ),
    ("passed", "Whether the log passes", Cell::Flag(|r| r.replayed.as_ref().map(|p| p.score.passed))),
    (
        "complete",
        "Whether every step was done",
        Cell::Flag(|r| r.replayed.as_ref().map(|p| p.score.complete)),
    ),
    (
        "gates_failed",
        "Gates that let it not pass, blanks between",
        Cell::TextIfRead(|r| r.replayed.as_ref().map(|p| failed(&p.score.gates).join(" "))),
    ),
];

/// Columns after the steps.
const LAST: [Column; 10] = [
    (
        "not_done",
        "Steps asked for and not done, blanks between",
        Cell::TextIfRead(|r| r.replayed.as_ref().map(|p| not_done(&p.score.steps))),
    ),
    (
        "pictures",
        "Spot pictures and runs",
        Cell::Whole(|_, r| r.replayed.as_ref().map(|p| p.pictures.into())),
    ),
    ("beam_s", "Beam time of fluoroscopy, s", Cell::Number(|r| r.replayed.as_ref().map(|p| p.beam_s))),
    (
        "duration_s",
        "From start to the last action, s",
        Cell::Number(|r| r.replayed.as_ref().map(|p| p.duration_s)),
    ),
    ("actions", "Actions in the log", Cell::Whole(|_, r| r.declared.as_ref().and_then(|t| whole(t.actions)))),
    (
        "same_log_as",
        "Row with the same log under another code",
        Cell::Whole(|_, r| r.same_log_as.and_then(whole)),
    ),
    (
        "alike",
        "Row of another learner's log much like this one",
        Cell::Whole(|_, r| r.alike.and_then(|(row, _)| whole(row))),
    ),
    (
        "alike_share",
        "What the two have in common",
        Cell::Share(|r| r.alike.map(|(_, share)| (share * 100.0).round() / 100.0)),
    ),
    ("repeat_of", "Earlier row with the same log and code", Cell::Whole(|_, r| r.repeat_of.and_then(whole))),
    ("note", "What is wrong, in words", Cell::Text(|r| r.note.clone())),
];

/// Steps that were asked for and not done, by name.
fn not_done(steps: &[Step]) -> String {
    let left: Vec<&str> = steps.iter().filter(|s| s.score.is_none()).map(|s| s.id.id()).collect();
    left.join(" ")
}

/// Gates that failed, by name.
pub fn failed(gates: &[Gate]) -> Vec<&'static str> {
    gates.iter().filter(|g| !g.passed).map(|g| g.id.id()).collect()
}

/// Marks of a step: none where the lesson does not ask for it, 0 where it was not done.
fn marks(row: &Row, id: StepId) -> Value {
    let step = row.replayed.as_ref().and_then(|p| p.score.steps.iter().find(|s| s.id == id));
    step.map(|s| s.score.unwrap_or(0.0)).into()
}

fn cells(number: usize, row: &Row) -> impl Iterator<Item = (&'static str, Value)> {
    let of = move |(name, _, cell): Column| (name, cell.value(number, row));
    let steps = StepId::ALL.iter().map(move |&id| (id.id(), marks(row, id)));
    FIRST.into_iter().map(of).chain(steps).chain(LAST.into_iter().map(of))
}

/// The JSON Schema of an object of [`ndjson`], from the columns' types.
#[cfg(feature = "cli")]
pub(crate) fn row_schema() -> Value {
    use serde_json::json;
    let schema = |cell: Cell| match cell {
        Cell::Whole(_) => json!({ "type": ["integer", "null"], "minimum": 0 }),
        Cell::Share(_) => share(),
        Cell::Number(_) => json!({ "type": ["number", "null"] }),
        Cell::Flag(_) => json!({ "type": ["boolean", "null"] }),
        Cell::Text(_) => json!({ "type": "string" }),
        Cell::TextIfRead(_) => json!({ "type": ["string", "null"] }),
        Cell::Came(_) => json!({ "enum": Status::ALL }),
    };
    let column = |(name, tells, cell): Column| (name, tells.to_owned(), schema(cell));
    let step = |id: StepId| (id.id(), format!("Marks of the step: {}", id.name()), share());
    let steps = StepId::ALL.iter().copied().map(step);
    let mut properties = Map::new();
    for (name, tells, mut schema) in
        FIRST.into_iter().map(column).chain(steps).chain(LAST.into_iter().map(column))
    {
        schema["description"] = tells.into();
        properties.insert(name.to_owned(), schema);
    }
    // Only a receipt whose log could be replayed has marks, and only one that could be read has a code.
    let replayed = json!({ "required": ["total"], "properties": { "total": { "type": "number" }, "learner": { "type": "string" } } });
    let unread = json!({ "properties": { "total": { "type": "null" }, "learner": { "type": "null" } } });
    let when = |status: Status, then: &Value| json!({ "if": { "properties": { "status": { "const": status.id() } } }, "then": then });
    json!({
        "type": "object",
        "required": properties.keys().collect::<Vec<_>>(),
        "properties": properties,
        "additionalProperties": false,
        "allOf": [when(Status::Verified, &replayed), when(Status::Unreadable, &unread)],
    })
}

/// A share, or none.
#[cfg(feature = "cli")]
fn share() -> Value {
    serde_json::json!({ "type": ["number", "null"], "minimum": 0, "maximum": 1 })
}

/// How a table is written for a spreadsheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct CsvStyle {
    /// Between the cells.
    pub separator: Separator,
    /// A byte order mark in front: some spreadsheets take the text for another coding without it.
    pub byte_order_mark: bool,
}

/// What stands between the cells of a table.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Separator {
    /// As RFC 4180 has it.
    #[default]
    Comma,
    /// As spreadsheets want it where numbers have a decimal comma; numbers are written with one.
    Semicolon,
    /// A tabulator.
    Tab,
}

impl Separator {
    /// All of them, by name.
    pub const ALL: [(&'static str, Self); 3] =
        [("comma", Self::Comma), ("semicolon", Self::Semicolon), ("tab", Self::Tab)];

    fn sign(self) -> char {
        match self {
            Self::Comma => ',',
            Self::Semicolon => ';',
            Self::Tab => '\t',
        }
    }
}

/// As CSV, with a heading. Lines end with CR LF; every text stands in quotes.
///
/// A text that a spreadsheet would take for a formula gets an apostrophe in front, since learners write the texts: also behind what another
/// spreadsheet would take for the end of a cell.
pub fn csv(report: &ClassReport, style: CsvStyle) -> String {
    let names = FIRST
        .iter()
        .map(|c| c.0)
        .chain(StepId::ALL.iter().map(|id| id.id()))
        .chain(LAST.iter().map(|c| c.0))
        .map(Value::from);
    let rows =
        report.rows.iter().enumerate().map(|(i, row)| cells(i + 1, row).map(|(_, value)| value).collect());
    table(std::iter::once(names.collect()).chain(rows), style)
}

/// A class list as CSV.
pub fn list(list: &ClassList, style: CsvStyle) -> String {
    let rows = list.members().iter().map(|m| vec![m.code.as_str().into(), m.name.as_str().into()]);
    table(std::iter::once(vec!["code".into(), "name".into()]).chain(rows), style)
}

/// Rows of values as CSV.
pub(crate) fn table(rows: impl Iterator<Item = Vec<Value>>, style: CsvStyle) -> String {
    let mut text = String::from(if style.byte_order_mark { "\u{feff}" } else { "" });
    for row in rows {
        for (j, value) in row.into_iter().enumerate() {
            if j > 0 {
                text.push(style.separator.sign());
            }
            match value {
                Value::Null => {}
                Value::String(cell) => text.push_str(&quoted(&cell)),
                Value::Number(number) if style.separator == Separator::Semicolon => {
                    text.push_str(&number.to_string().replace('.', ","));
                }
                value => text.push_str(&value.to_string()),
            }
        }
        text.push_str("\r\n");
    }
    text
}

/// A text in quotes, in which nothing is a formula.
fn quoted(cell: &str) -> String {
    let mut text = String::from("\"");
    // At the beginning of what may be read as a cell: its first sign that is no blank or quotation mark decides.
    let mut begins = true;
    for c in cell.chars() {
        if begins && matches!(c, '=' | '+' | '-' | '@' | '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}') {
            text.push('\'');
        }
        if matches!(c, ',' | ';' | '|' | '\t' | '\r' | '\n') {
            begins = true;
        } else if !matches!(c, ' ' | '"' | '\u{a0}') {
            begins = false;
        }
        text.push(c);
        if c == '"' {
            text.push(c);
        }
    }
    text.push('"');
    text
}

/// As NDJSON.
pub fn ndjson(report: &ClassReport) -> String {
    let mut text = String::new();
    for (i, row) in report.rows.iter().enumerate() {
        let object: Map<String, Value> =
            cells(i + 1, row).map(|(name, value)| (name.to_owned(), value)).collect();
        text.push_str(&Value::Object(object).to_string());
        text.push('\n');
    }
    text
}

#[cfg(test)]
mod tests {
    #[test]
    fn cells_are_quoted_and_never_formulas() {
        for (cell, written) in [
            ("anna", "\"anna\""),
            ("a,b", "\"a,b\""),
            ("say \"ah\"", "\"say \"\"ah\"\"\""),
            ("=1+1", "\"'=1+1\""),
            ("-2", "\"'-2\""),
            ("x;=cmd|' /C calc'!A0", "\"x;'=cmd|' /C calc'!A0\""),
            ("x\t @SUM(1)", "\"x\t '@SUM(1)\""),
            ("\"=1\"", "\"\"\"'=1\"\"\""),
            ("a-b", "\"a-b\""),
            ("", "\"\""),
        ] {
            assert_eq!(super::quoted(cell), written);
        }
    }
}

//! The rows of a class as CSV (RFC 4180) for spreadsheets and as NDJSON (a JSON object a line) for everything else. One table
//! makes both.

use super::class_list::ClassList;
use super::class_report::{ClassReport, Row};
use super::score::StepId;
use serde_json::{Map, Value};

/// A column: its name, and what stands in it for a row of a number.
type Column = (&'static str, fn(usize, &Row) -> Value);

/// Columns before the steps, and what stands in them.
const FIRST: [Column; 15] = [
    ("row", |number, _| number.into()),
    ("source", |_, r| r.source.as_str().into()),
    ("line", |_, r| r.line.into()),
    ("status", |_, r| r.status.id().into()),
    ("learner", |_, r| r.told.as_ref().map(|t| t.learner.as_str()).into()),
    ("lesson", |_, r| r.told.as_ref().map(|t| t.lesson.as_str()).into()),
    ("patient", |_, r| r.told.as_ref().map(|t| t.patient.as_str()).into()),
    ("seed", |_, r| r.told.as_ref().map(|t| t.seed).into()),
    ("level", |_, r| r.told.as_ref().map(|t| t.level).into()),
    ("side", |_, r| r.told.as_ref().map(|t| t.side).into()),
    ("total", |_, r| r.replayed.as_ref().map(|p| p.score.total).into()),
    ("claimed", |_, r| r.told.as_ref().map(|t| t.claimed).into()),
    ("passed", |_, r| r.replayed.as_ref().map(|p| p.score.passed).into()),
    ("complete", |_, r| r.replayed.as_ref().map(|p| p.score.complete).into()),
    ("gates_failed", |_, r| r.replayed.as_ref().map(|p| failed(&p.score.gates).join(" ")).into()),
];

/// Columns after the steps.
const LAST: [Column; 10] = [
    ("not_done", |_, r| r.replayed.as_ref().map(|p| not_done(&p.score.steps)).into()),
    ("pictures", |_, r| r.replayed.as_ref().map(|p| p.pictures).into()),
    ("beam_s", |_, r| r.replayed.as_ref().map(|p| p.beam_s).into()),
    ("duration_s", |_, r| r.replayed.as_ref().map(|p| p.duration_s).into()),
    ("actions", |_, r| r.told.as_ref().map(|t| t.actions).into()),
    ("same_log_as", |_, r| r.same_log_as.into()),
    ("alike", |_, r| r.alike.map(|(row, _)| row).into()),
    ("alike_share", |_, r| r.alike.map(|(_, share)| (share * 100.0).round() / 100.0).into()),
    ("repeat_of", |_, r| r.repeat_of.into()),
    ("note", |_, r| r.note.as_str().into()),
];

/// Steps that were asked for and not done, by name.
fn not_done(steps: &[super::score::Step]) -> String {
    let left: Vec<&str> = steps.iter().filter(|s| s.score.is_none()).map(|s| s.id.id()).collect();
    left.join(" ")
}

/// Gates that failed, by name.
pub fn failed(gates: &[super::gate::Gate]) -> Vec<&'static str> {
    gates.iter().filter(|g| !g.passed).map(|g| g.id.id()).collect()
}

/// Marks of a step: none where the lesson does not ask for it, 0 where it was not done.
fn marks(row: &Row, id: StepId) -> Value {
    let step = row.replayed.as_ref().and_then(|p| p.score.steps.iter().find(|s| s.id == id));
    step.map(|s| s.score.unwrap_or(0.0)).into()
}

fn cells(number: usize, row: &Row) -> impl Iterator<Item = (&'static str, Value)> {
    let of = move |(name, value): Column| (name, value(number, row));
    let steps = StepId::OF_LESSONS.into_iter().map(move |id| (id.id(), marks(row, id)));
    FIRST.into_iter().map(of).chain(steps).chain(LAST.into_iter().map(of))
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
        .chain(StepId::OF_LESSONS.map(StepId::id))
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
                plain => text.push_str(&plain.to_string()),
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

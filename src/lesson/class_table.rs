//! The rows of a class as CSV (RFC 4180) for spreadsheets and as NDJSON (a JSON object a line) for everything else. One table
//! makes both.

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
const LAST: [Column; 8] = [
    ("not_done", |_, r| r.replayed.as_ref().map(|p| not_done(&p.score.steps)).into()),
    ("pictures", |_, r| r.replayed.as_ref().map(|p| p.pictures).into()),
    ("beam_s", |_, r| r.replayed.as_ref().map(|p| p.beam_s).into()),
    ("duration_s", |_, r| r.replayed.as_ref().map(|p| p.duration_s).into()),
    ("actions", |_, r| r.told.as_ref().map(|t| t.actions).into()),
    ("same_log_as", |_, r| r.same_log_as.into()),
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

/// As CSV, with a heading. Lines end with CR LF.
///
/// A text that a spreadsheet would take for a formula gets an apostrophe in front, since learners write the texts.
pub fn csv(report: &ClassReport) -> String {
    let names =
        FIRST.iter().map(|c| c.0).chain(StepId::OF_LESSONS.map(StepId::id)).chain(LAST.iter().map(|c| c.0));
    let mut text = names.collect::<Vec<_>>().join(",") + "\r\n";
    for (i, row) in report.rows.iter().enumerate() {
        for (j, (_, value)) in cells(i + 1, row).enumerate() {
            if j > 0 {
                text.push(',');
            }
            match value {
                Value::Null => {}
                Value::String(cell) => text.push_str(&quoted(&cell)),
                plain => text.push_str(&plain.to_string()),
            }
        }
        text.push_str("\r\n");
    }
    text
}

fn quoted(cell: &str) -> String {
    let guard = if cell.starts_with(['=', '+', '-', '@', '\t', '\r']) { "'" } else { "" };
    if guard.is_empty() && !cell.contains(['"', ',', '\n', '\r']) {
        return cell.to_owned();
    }
    format!("\"{guard}{}\"", cell.replace('"', "\"\""))
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
            ("anna", "anna"),
            ("a,b", "\"a,b\""),
            ("say \"ah\"", "\"say \"\"ah\"\"\""),
            ("=1+1", "\"'=1+1\""),
            ("-2", "\"'-2\""),
            ("", ""),
        ] {
            assert_eq!(super::quoted(cell), written);
        }
    }
}

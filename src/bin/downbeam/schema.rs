//! `schema`: the JSON Schema of something that Downbeam reads or writes.

use crate::command::{Command, print, word};
use crate::view;
use downbeam::anatomy::names::UnknownName;
use downbeam::class::schema::{receipt_schema, report_row_schema};
use downbeam::lesson::schema::lesson_schema;
use lexopt::Parser;

pub(crate) const COMMAND: Command = Command {
    name: "schema",
    summary: "The JSON Schema of lessons, receipts, report rows, views",
    usage: "Usage: downbeam schema NAME\n\n\
            Prints a JSON Schema (draft 2020-12), made from the types that are read and written:\n\n\
            lesson      A lesson file, as check reads it\n\
            receipt     What a learner hands in\n\
            report-row  A line of grade --ndjson\n\
            view        What view --json prints\n\n\
            The same stand as NAME.schema.json beside the lessons of the page.\n",
    run,
};

/// Writes a schema as text.
type Writer = fn() -> String;

/// The schemas by name.
pub(crate) const SCHEMAS: [(&str, Writer); 4] = [
    ("lesson", lesson_schema),
    ("receipt", receipt_schema),
    ("report-row", report_row_schema),
    ("view", view::schema),
];

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let allowed = SCHEMAS.map(|(name, _)| name).join(", ");
    let asked = word(&COMMAND, parser, "name", &allowed)?;
    let Some((_, schema)) = SCHEMAS.into_iter().find(|(name, _)| *name == asked) else {
        return Err(UnknownName { kind: "schema", found: asked, allowed }.into());
    };
    print(&schema())
}

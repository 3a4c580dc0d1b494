//! `patients`: who can be asked for by name, and what can be changed about them.

use crate::command::{Command, print, unknown};
use downbeam::anatomy::patient::PatientSpec;
use downbeam::anatomy::patient_field::FIELDS;
use lexopt::{Arg, Parser};
use serde_json::json;
use std::fmt::Write;

pub(crate) const COMMAND: Command = Command {
    name: "patients",
    summary: "The patients by name, and what can be changed about them",
    usage: "Usage: downbeam patients [--json]\n\n\
            Lists the patients that view, mesh and lessons know by name, and the fields that can be changed:\n\
            with '--with curve_deg=9' on the command line, with \"changed\": {\"curve_deg\": 9} in a lesson's patient.\n\n\
            --json          One JSON object: patients, fields\n",
    run,
};

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let mut json = false;
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("json") => json = true,
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    print(&if json { as_json() } else { as_text() })
}

fn as_json() -> String {
    let patient = |spec: &PatientSpec| {
        let values: serde_json::Map<_, _> =
            FIELDS.iter().map(|field| (field.name.to_owned(), json!((field.get)(spec)))).collect();
        json!({ "name": spec.name, "sentence": spec.description, "seed": spec.seed, "fields": values })
    };
    let fields: Vec<_> = FIELDS
        .iter()
        .map(|f| {
            json!({ "name": f.name, "unit": f.unit, "low": f.low, "high": f.high, "sentence": f.sentence })
        })
        .collect();
    let patients: Vec<_> = PatientSpec::all().iter().map(patient).collect();
    json!({ "patients": patients, "fields": fields }).to_string() + "\n"
}

fn as_text() -> String {
    let mut text = String::from("Patients:\n");
    for spec in PatientSpec::all() {
        let _ = writeln!(text, "  {:<13} {}", spec.name, spec.description);
    }
    text += "\nWhat can be changed about each:\n";
    for field in &FIELDS {
        let range = format!("{} to {}", field.low, field.high);
        let _ = writeln!(text, "  {:<20} {range:<12} {}", field.name, field.unit);
        let _ = writeln!(text, "  {:<20} {}", "", field.sentence);
    }
    text
}

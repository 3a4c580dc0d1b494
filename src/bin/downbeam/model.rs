//! `model`: the model's own numbers as JSON, for the page about it (`www/model.html`): what the meshes measure, where the best
//! views are, what the beam and the needle do, and what the limits of the marks are. All of it is computed here and now.

mod beam;
mod bones;
mod column;
mod contrast;
mod marks;
mod needle;
mod nerves;
mod views;

use crate::command::{Command, print, unknown};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::score::engine;
use lexopt::Parser;
use serde_json::{Value, json};

pub(crate) const COMMAND: Command = Command {
    name: "model",
    summary: "The model's own numbers as JSON, for the page about it",
    usage: "Usage: downbeam model\n\n\
            Prints what the meshes measure, the best views of every patient and level, what beam, needle and dose do,\n\
            and the limits of the marks, as one JSON object. The page about the model shows them; to bring it up to date:\n\
            downbeam model > www/model.json\n",
    run,
};

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    if let Some(argument) = parser.next()? {
        return Err(unknown(&COMMAND, &argument).into());
    }
    print(&as_json())
}

/// A key a line, so that a change of one shows as such.
fn as_json() -> String {
    let average = Patient::new(&PatientSpec::all()[0]);
    let parts: [(&str, Value); 13] = [
        ("engine", json!({ "version": engine::VERSION, "fingerprint": engine::SCORING })),
        ("patients", patients()),
        ("fields", fields()),
        ("mesh", bones::mesh(&average)),
        ("bones", bones::measured(&average)),
        ("column", column::numbers()),
        ("nerves", nerves::numbers(&average.interior)),
        ("views", views::numbers()),
        ("spread", views::spread()),
        ("beam", beam::numbers(&average)),
        ("needle", needle::numbers()),
        ("marks", marks::numbers(&average.interior)),
        ("contrast", contrast::numbers(&average.interior)),
    ];
    let lines: Vec<String> = parts.iter().map(|(key, value)| format!("\"{key}\": {value}")).collect();
    format!("{{\n{}\n}}\n", lines.join(",\n"))
}

fn patients() -> Value {
    let all = PatientSpec::all().iter();
    all.map(|spec| json!({ "name": spec.name, "sentence": spec.description })).collect()
}

fn fields() -> Value {
    use downbeam::anatomy::patient_field::FIELDS;
    let all = FIELDS.iter();
    all.map(
        |f| json!({ "name": f.name, "unit": f.unit, "low": f.low, "high": f.high, "sentence": f.sentence }),
    )
    .collect()
}

/// To so many digits after the point: more would be noise, and the last bits differ between machines' printing of nothing real.
fn round(x: f64, digits: i32) -> f64 {
    let factor = libm::pow(10.0, f64::from(digits));
    // Without a negative zero, which JSON would show.
    libm::round(x * factor) / factor + 0.0
}

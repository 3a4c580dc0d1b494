//! The patient that the command line asks for: a name, some fields changed, a seed.

use crate::command::{UsageError, text};
use downbeam::anatomy::patient_field::{PatientError, field};
use downbeam::anatomy::patient_spec::PatientSpec;
use lexopt::Parser;
use std::collections::BTreeMap;

/// What was asked for.
#[derive(Default)]
pub(crate) struct AskedPatient {
    name: Option<PatientSpec>,
    changes: BTreeMap<String, f64>,
    seed: Option<u64>,
}

impl AskedPatient {
    /// Reads one of the options that ask for a patient; `false` when it is none of them.
    pub(crate) fn read(&mut self, option: &str, parser: &mut Parser) -> anyhow::Result<bool> {
        match option {
            "patient" => self.name = Some(PatientSpec::named(&text(parser, "--patient")?)?),
            "with" => {
                let (name, value) = change(&text(parser, "--with")?)?;
                self.changes.insert(name, value);
            }
            "patient-seed" => {
                let found = text(parser, "--patient-seed")?;
                let seed = found.parse::<u32>().map_err(|_| {
                    UsageError(format!(
                        "--patient-seed wants a whole number from 0 to {}, not '{found}'",
                        u32::MAX
                    ))
                })?;
                self.seed = Some(u64::from(seed));
            }
            _ => return Ok(false),
        }
        Ok(true)
    }

    /// The patient.
    pub(crate) fn spec(&self) -> Result<PatientSpec, PatientError> {
        let name = self.name.as_ref().map_or("average", |spec| spec.name);
        PatientSpec::asked(name, self.seed, &self.changes)
    }
}

/// `curve_deg=9`.
fn change(found: &str) -> anyhow::Result<(String, f64)> {
    let wrong = || UsageError(format!("--with wants FIELD=NUMBER, such as curve_deg=9, not '{found}'"));
    let (name, value) = found.split_once('=').ok_or_else(wrong)?;
    let value = value.trim().parse::<f64>().map_err(|_| wrong())?;
    field(name.trim()).and_then(|field| field.check(value)).map_err(PatientError::from)?;
    Ok((name.trim().to_owned(), value))
}

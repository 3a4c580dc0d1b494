//! An attempt as a file: the patient, what is set, and the log, which is the whole of what a replay needs.
//!
//! The log is written as receipts have it, a line an action.

use super::action::Event;
use super::attempt::Attempt;
use super::case::Case;
use super::log_line;
use crate::anatomy::patient::PatientSpec;
use serde::de::{self, Deserializer};
use serde::{Deserialize, Serialize, Serializer};
use std::collections::BTreeMap;

/// An attempt as it is handed on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct AttemptFile {
    /// Name of the patient.
    pub patient: String,
    /// The patient's seed, if it is not the named patient's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "cli", ts(optional))]
    pub seed: Option<u64>,
    /// What is not as the named patient has it, by field, each in its unit.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    #[cfg_attr(feature = "cli", ts(optional, as = "Option<BTreeMap<String, f64>>"))]
    pub changed: BTreeMap<String, f64>,
    /// What is set.
    pub case: Case,
    /// What was done.
    #[cfg_attr(feature = "cli", ts(as = "Vec<String>"))]
    #[serde(serialize_with = "written", deserialize_with = "read")]
    #[cfg_attr(feature = "cli", ts(as = "Vec<String>"))]
    pub log: Vec<Event>,
}

impl AttemptFile {
    /// Of a log at a case on a patient.
    pub fn of(spec: &PatientSpec, case: Case, log: Vec<Event>) -> Self {
        let own = PatientSpec::named(spec.name).is_ok_and(|named| named.seed == spec.seed);
        Self {
            patient: spec.name.to_owned(),
            seed: (!own).then_some(spec.seed),
            changed: spec.differences().into_iter().map(|(name, value)| (name.to_owned(), value)).collect(),
            case,
            log,
        }
    }

    /// Of an attempt on a patient.
    pub fn of_attempt(spec: &PatientSpec, attempt: &Attempt) -> Self {
        Self::of(spec, attempt.case, attempt.log.clone())
    }

    /// The patient that it is of; `None` when there is none of that name or a number is out of range.
    pub fn spec(&self) -> Option<PatientSpec> {
        PatientSpec::asked(&self.patient, self.seed, &self.changed).ok()
    }
}

fn written<S: Serializer>(log: &[Event], to: S) -> Result<S::Ok, S::Error> {
    to.collect_seq(log.iter().map(log_line::write))
}

fn read<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<Event>, D::Error> {
    let lines = Vec::<String>::deserialize(from)?;
    lines.iter().map(|line| log_line::read(line).map_err(de::Error::custom)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::names::{Level, Side};
    use crate::procedure::action::Action;
    use crate::view::criteria::Target;

    #[test]
    fn what_is_written_is_read_back_and_what_is_no_log_is_told() {
        let case = Case::new(Target { level: Level::L4, side: Side::Left });
        let log =
            vec![Event(3, Action::Orient { oblique_tenths: -250, tilt_tenths: 57 }), Event(9, Action::Spot)];
        let file = AttemptFile::of(&PatientSpec::named("average").unwrap(), case, log);
        let written = serde_json::to_value(&file).unwrap();
        assert_eq!(written["log"], serde_json::json!(["3 orient -250 57", "9 spot"]));
        assert_eq!(serde_json::from_value::<AttemptFile>(written.clone()).unwrap(), file);
        let mut bad = written;
        for (log, said) in [
            (serde_json::json!(["9 fly"]), "unknown action 'fly'"),
            (serde_json::json!([9]), "expected a string"),
        ] {
            bad["log"] = log;
            let error = serde_json::from_value::<AttemptFile>(bad.clone()).unwrap_err().to_string();
            assert!(error.contains(said), "{error}");
        }
    }
}

//! What can be changed about a named patient, and patients so changed: one table of names, units, ranges and sentences, from which
//! lesson files, their schema, the command line and all errors take theirs.
//!
//! Ranges are those that `tests/patients.rs` holds the model to: within them, alone or together, no bone runs into another, every landmark
//! stands on its bone and the views can be made (or the test says which cannot).

use super::names::{UnknownName, shown};
use super::patient_spec::PatientSpec;
use std::collections::BTreeMap;

/// A number of a patient that can be asked for.
#[derive(Debug)]
pub struct Field {
    /// Such as `curve_deg`.
    pub name: &'static str,
    /// Unit in words, such as `degrees`.
    pub unit: &'static str,
    /// Lowest allowed.
    pub low: f64,
    /// Highest allowed.
    pub high: f64,
    /// What it is, without a full stop.
    pub sentence: &'static str,
    /// Reads it.
    pub get: fn(&PatientSpec) -> f64,
    put: fn(&mut PatientSpec, f64),
}

macro_rules! field {
    ($name:ident, $unit:literal, $low:literal..$high:literal, $sentence:literal) => {
        Field {
            name: stringify!($name),
            unit: $unit,
            low: $low,
            high: $high,
            sentence: $sentence,
            get: |spec| spec.$name,
            put: |spec, value| spec.$name = value,
        }
    };
}

/// How many there are.
pub const FIELD_COUNT: usize = 11;

/// All of them.
pub static FIELDS: [Field; FIELD_COUNT] = [
    field!(size, "times the average", 0.85..1.15, "Size of everything"),
    field!(
        turned_deg,
        "degrees",
        -15.0..15.0,
        "Turn on the table about the long axis, > 0 front towards the right"
    ),
    field!(
        bone_density,
        "times the average",
        0.3..1.3,
        "Density of the marrow's bone; cortices thin with its square root"
    ),
    field!(
        curve_deg,
        "degrees",
        -12.0..12.0,
        "Sideways curve, > 0 leaning to the left above; the levels turn along with it"
    ),
    field!(low_disc_height, "times the average", 0.6..1.1, "Height of the two lowest discs"),
    field!(facet_swelling_mm, "mm", 0.0..1.5, "Growth of the two lowest pairs of facet joints"),
    field!(girth, "times the average", 0.75..1.6, "Thickness of the trunk: fat under the skin"),
    field!(
        slip_percent,
        "percent of the plate's depth",
        0.0..25.0,
        "Forward slip of L4 on L5 with its arch whole"
    ),
    field!(
        crest_above_disc_mm,
        "mm",
        -10.0..25.0,
        "Top of the iliac crests above the middle of the L4-5 disc"
    ),
    field!(
        transition,
        "from free to joined",
        0.0..1.0,
        "How far L5 is made like a part of the sacrum; at 1 its transverse processes meet the sacrum's wings"
    ),
    field!(
        variation,
        "times the population's spread",
        0.0..1.0,
        "How much this patient's own dimensions differ from the build's, drawn by the seed"
    ),
];

/// A field that is not there, or a number that it does not take.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[allow(missing_docs, reason = "the message is the documentation")]
pub enum FieldError {
    #[error("unknown field '{found}' of a patient: allowed are {allowed}")]
    Unknown { found: String, allowed: String },
    #[error("{name} of {value} {unit} is not possible: allowed are {low} to {high}")]
    OutOfRange { name: &'static str, value: f64, unit: &'static str, low: f64, high: f64 },
}

/// The field of that name.
///
/// # Errors
/// When there is none; the error names those that there are.
pub fn field(name: &str) -> Result<&'static Field, FieldError> {
    FIELDS.iter().find(|field| field.name == name).ok_or_else(|| FieldError::Unknown {
        found: shown(name),
        allowed: FIELDS.each_ref().map(|field| field.name).join(", "),
    })
}

impl Field {
    /// Whether a number is allowed, and if not, what is.
    ///
    /// # Errors
    /// When the number is out of range, or none at all (NaN).
    pub fn check(&self, value: f64) -> Result<(), FieldError> {
        let Self { name, unit, low, high, .. } = *self;
        // A NaN is inside no range.
        if (low..=high).contains(&value) {
            Ok(())
        } else {
            Err(FieldError::OutOfRange { name, value, unit, low, high })
        }
    }

    fn change(&self, spec: &mut PatientSpec, value: f64) -> Result<(), FieldError> {
        self.check(value)?;
        // Zero has two signs; a patient and its key have one.
        (self.put)(spec, value + 0.0);
        Ok(())
    }
}

impl PatientSpec {
    /// The same patient with some fields changed, each by its name and in its unit ([`FIELDS`]).
    ///
    /// # Errors
    /// At the first that is no field or out of its range.
    pub fn changed<'a>(
        mut self,
        changes: impl IntoIterator<Item = (&'a str, f64)>,
    ) -> Result<Self, FieldError> {
        for (name, value) in changes {
            field(name)?.change(&mut self, value)?;
        }
        Ok(self)
    }

    /// The patient of a name with another seed, if one is given, and some fields changed.
    ///
    /// # Errors
    /// As [`Self::named`] and [`Self::changed`].
    pub fn asked(
        name: &str,
        seed: Option<u64>,
        changes: &BTreeMap<String, f64>,
    ) -> Result<Self, PatientError> {
        let named = Self::named(name)?;
        let spec = Self { seed: seed.unwrap_or(named.seed), ..named };
        Ok(spec.changed(changes.iter().map(|(name, &value)| (name.as_str(), value)))?)
    }

    /// What tells this patient from all others: name, seed and the fields' bits.
    pub fn key(&self) -> (&'static str, u64, [u64; FIELD_COUNT]) {
        (self.name, self.seed, FIELDS.each_ref().map(|field| (field.get)(self).to_bits()))
    }

    /// What is not as the named patient has it: fields with their values.
    pub fn differences(&self) -> Vec<(&'static str, f64)> {
        let named = self.named_like();
        let other = FIELDS.iter().filter(|field| (field.get)(self) != (field.get)(named));
        other.map(|field| (field.name, (field.get)(self))).collect()
    }

    /// Name and differences, such as `curved with curve_deg 9`.
    pub fn title(&self) -> String {
        let other: Vec<String> =
            self.differences().iter().map(|(name, value)| format!("{name} {value}")).collect();
        if other.is_empty() {
            self.name.to_owned()
        } else {
            format!("{} with {}", self.name, other.join(", "))
        }
    }
}

/// A patient that was asked for and cannot be.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error(transparent)]
#[allow(missing_docs, reason = "each says its own sentence")]
pub enum PatientError {
    Name(#[from] UnknownName),
    Field(#[from] FieldError),
}

//! Who lies on the table for a learner: patient, level, side and seed, drawn by the learner's code where the lesson leaves them open.
//!
//! The draw is SHA-256 of lesson id and code, cut into 32-bit numbers. A log copied from another learner meets another patient.

use super::digest::sha256;
use super::file::{Lesson, PatientDraw, SeedFrom};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Side;
use crate::anatomy::patient::PatientSpec;
use crate::anatomy::patient_field::{FIELD_COUNT, PatientError};
use crate::anatomy::seeded::Numbers;
use crate::procedure::case::Case;
use crate::procedure::step::StepId;
use crate::view::criteria::Target;
use std::collections::BTreeMap;

/// Longest code of a learner, characters.
const MOST_CODE: usize = 64;

/// A learner's code that cannot be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "a learner's code of {found} characters, or with control characters, cannot be used: allowed are {MOST_CODE} characters of text"
)]
pub struct CodeError {
    found: usize,
}

/// A learner's code without the blanks around it.
///
/// # Errors
/// When it is too long or holds control characters.
pub fn code(text: &str) -> Result<&str, CodeError> {
    let text = text.trim();
    let found = text.chars().count();
    if found > MOST_CODE || text.chars().any(char::is_control) { Err(CodeError { found }) } else { Ok(text) }
}

/// What a learner gets.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The patient.
    pub spec: PatientSpec,
    /// The task.
    pub case: Case,
    /// For what else is drawn in the lesson, such as the order of the parts.
    pub order_seed: u64,
}

impl PatientDraw {
    /// The patient of one of the names, with a seed.
    ///
    /// # Errors
    /// As [`drawn`].
    pub fn spec(&self, name: &str, seed: u32) -> Result<PatientSpec, PatientError> {
        let named = PatientSpec::named(name)?;
        let variation = if self.seed_from.is_some() { 1.0 } else { named.variation };
        let spec = PatientSpec { seed: u64::from(seed), variation, ..named };
        Ok(spec.changed(self.changed.list())?)
    }
}

/// Draws.
///
/// # Errors
/// When a name in the lesson is no patient's, or a number of it is out of range; a checked lesson has none.
pub fn drawn(lesson: &Lesson, code: &str) -> Result<Drawn, PatientError> {
    let digest = sha256(format!("downbeam draw 1\n{}\n{}", lesson.id, code.trim()).as_bytes());
    let number = |i: usize| digest[4 * i..4 * i + 4].iter().fold(0_u32, |n, &b| n << 8 | u32::from(b));
    let pick = |i: usize, among: usize| number(i) as usize % among.max(1);
    let names = lesson.patient.names();
    let name = names.get(pick(1, names.len())).map_or("", String::as_str);
    let seed = match lesson.patient.seed_from {
        Some(SeedFrom::Learner) => number(0),
        None => lesson.patient.seed.unwrap_or(0),
    };
    let spec = lesson.patient.spec(name, seed)?;
    let (levels, sides) = (lesson.level.all(), lesson.side.all());
    let level = levels.get(pick(2, levels.len())).map_or(crate::anatomy::names::Level::L4, |&l| l.into());
    let side = sides.get(pick(3, sides.len())).copied().unwrap_or(Side::Left);
    let order_seed = u64::from(number(4));
    let mut case = lesson.case(Target { level, side });
    if lesson.steps.contains(&StepId::TargetCentred) {
        case.off_centre_mm_tenths = off_centre_mm_tenths(order_seed);
    }
    Ok(Drawn { spec, case, order_seed })
}

/// How far off the middle a table can stand at the start, mm, least and most: across, in height, along. At its furthest the
/// vertebra still shows at the edge of the film; at its least the height alone is worth nothing. Common practice, no source.
const OFF_CENTRE_MM: [(f64, f64); 3] = [(15.0, 40.0), (32.0, 50.0), (15.0, 40.0)];

/// Where the table stands at the start where it has to be brought to the middle: to the patient's left, back and head.
fn off_centre_mm_tenths(seed: u64) -> [i32; 3] {
    let mut numbers = Numbers::stream(seed, OFF_CENTRE_STREAM);
    OFF_CENTRE_MM.map(|(least, most)| {
        let mm = least + (most - least) * numbers.unit();
        let way = if numbers.unit() < 0.5 { -1.0 } else { 1.0 };
        (libm::round(way * mm) * 10.0) as i32
    })
}

/// Its stream of the learner's numbers.
const OFF_CENTRE_STREAM: u64 = 41;

/// Patients without meshes, each planned once; as many as fit are kept.
#[derive(Debug, Default)]
pub struct Interiors(BTreeMap<(&'static str, u64, [u64; FIELD_COUNT]), Interior>);

/// Patients kept at once: about 60 kB each.
const KEPT: usize = 64;

impl Interiors {
    /// The inside of a patient.
    pub fn of(&mut self, spec: &PatientSpec) -> &Interior {
        let key = spec.key();
        if self.0.len() >= KEPT && !self.0.contains_key(&key) {
            self.0.clear();
        }
        self.0.entry(key).or_insert_with(|| Interior::of(spec))
    }
}

//! The plain values that pass between engine and page, beside those that the layers below have already. Each is data and nothing else;
//! the page's types are made of these very definitions (`super::declarations`). Units are in names or docs.

use crate::anatomy::foramen::Approach;
use crate::anatomy::names::{Label, Level, Part, Side};
use crate::class::report::LessonSummary;
use crate::imaging::clearance::Hit;
use crate::imaging::dose::{DicomItem, DoseTotals};
use crate::imaging::exposure::{MAGNIFICATIONS, PULSE_RATES_PER_S, Technique};
use crate::lesson::file::{LessonPart, Mode};
use crate::lesson::marks::LessonScore;
use crate::needle::device::Medium;
use crate::procedure::case::{Case, Par};
use crate::score::gate::GateId;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

// --- Patients ---

/// A patient as the page lists it.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct PatientEntry {
    /// As it is asked for.
    pub name: &'static str,
    /// What it is, in English.
    pub sentence: &'static str,
}

/// What is asked of a patient beside its name.
#[derive(Debug, Default, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[cfg_attr(feature = "cli", ts(optional_fields))]
#[serde(deny_unknown_fields, default)]
pub struct AskedPatient {
    /// Instead of the named patient's own.
    pub seed: Option<u32>,
    /// Fields that are not as the named patient has them, each in its own unit.
    #[cfg_attr(feature = "cli", ts(optional, as = "Option<BTreeMap<String, f64>>"))]
    pub changed: BTreeMap<String, f64>,
}

// --- C-arm and exposures ---

/// What the controls allow, lowest and highest, degrees.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Ranges {
    /// > 0 receptor to the patient's left.
    pub oblique_deg: (f64, f64),
    /// > 0 cephalad.
    pub tilt_deg: (f64, f64),
    /// Of the picture, > 0 clockwise.
    pub rotation_deg: (f64, f64),
    /// Of the table, each way.
    pub table_mm: (f64, f64),
    /// A target that lies this near to the isocentre every way is in the middle.
    pub middle_mm: f64,
}

/// How far a way of C-arm and table goes.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Reach {
    /// Where it ends, > 0 receptor to the patient's left.
    pub oblique_deg: f64,
    /// > 0 cephalad.
    pub tilt_deg: f64,
    /// The table there: to the patient's left, up, and to the head.
    pub table_mm: [f64; 3],
    /// What stopped it.
    pub hit: Option<Hit>,
}

/// The dose record's sums and the technique of the last exposure.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct DoseReadout {
    /// The sums.
    #[serde(flatten)]
    pub totals: DoseTotals,
    /// `null` before there is one.
    pub last: Option<Technique>,
}

/// The dose record in DICOM's terms and units.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct DicomRecord {
    /// What the figures are and are not.
    pub statement: &'static str,
    /// The figures.
    pub items: Vec<DicomItem>,
}

/// What the beam can be set to.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct BeamChoices {
    /// Pulses a second of fluoroscopy.
    #[cfg_attr(feature = "cli", ts(as = "Vec<u32>"))]
    pub pulses_per_s: [u32; PULSE_RATES_PER_S.len()],
    /// Magnification modes.
    #[cfg_attr(feature = "cli", ts(as = "Vec<f64>"))]
    pub magnification: [f64; MAGNIFICATIONS.len()],
    /// Lowest and highest share of the field that a pair of shutters opens.
    pub open: (f64, f64),
}

// --- Outlines ---

/// How a kind of line is stroked.
#[derive(Clone, Debug, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Pen {
    /// CSS colour.
    pub colour: String,
    /// Canvas pixels.
    pub width_px: f64,
    /// Dash and gap, canvas pixels; empty for a solid line.
    pub dash_px: Vec<f64>,
}

/// How the outlines look on a canvas of `canvas_px` by `canvas_px` pixels.
#[derive(Clone, Debug, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS), ts(rename = "OutlineStyle"))]
#[serde(deny_unknown_fields)]
pub struct Style {
    /// Side of the canvas.
    pub canvas_px: f64,
    /// Drawn under the strong lines, `width_px` wider on either side, so that they show on dark and light.
    pub halo: Pen,
    /// Other bones.
    pub context: Pen,
    /// The target's body and plates.
    pub target: Pen,
    /// The target's posterior elements.
    pub posterior: Pen,
    /// The superior articular process of the level below.
    pub below: Pen,
    /// A part to be picked out from all others, and how.
    #[serde(default)]
    #[cfg_attr(feature = "cli", ts(optional))]
    pub chosen: Option<Chosen>,
}

/// A part that stands out.
#[derive(Clone, Debug, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Chosen {
    /// Whose it is.
    pub level: Level,
    /// Which.
    pub part: Part,
    /// `null` in the midline.
    #[cfg_attr(feature = "cli", ts(optional = nullable))]
    pub side: Option<Side>,
    /// How it is stroked.
    pub pen: Pen,
}

/// A part's line in parallel projection: whose it is, and its points `[x, y, x, y, …]`, tenths of a mm from the target's centre.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct PartLine(pub Label, pub Vec<i32>);

// --- Attempts (a whole one is `procedure::attempt_file::AttemptFile`) ---

/// What the page can set of a case; what it leaves out is the usual.
#[derive(Debug, Default, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS), ts(optional_fields))]
#[serde(deny_unknown_fields, default)]
pub struct CaseOptions {
    /// Way into the foramen.
    pub approach: Option<Approach>,
    /// What the needle bends as in.
    pub medium: Option<Medium>,
    /// Whether pictures come from exposures only.
    #[cfg_attr(feature = "cli", ts(optional, as = "Option<bool>"))]
    pub exposures: bool,
}

// --- Lessons ---

/// A step as the page lists it.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct StepEntry {
    /// As a lesson file names it.
    pub id: &'static str,
    /// In English.
    pub name: &'static str,
}

/// A lesson as the page tells of it.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS), ts(rename = "LessonEntry"))]
pub struct LessonEntry<'a> {
    /// Its name in files.
    pub id: &'a str,
    /// In the language that was asked for, where the lesson has it.
    pub title: &'a str,
    /// As the title.
    pub intro: &'a str,
    /// Guided, practice or assessment.
    pub mode: Mode,
    /// What it asks for, in order.
    pub steps: Vec<StepEntry>,
    /// Whether the way into the foramen is the learner's to choose.
    pub open_approach: bool,
    /// Whether pictures come from exposures only.
    pub exposures: bool,
    /// What fails it whatever the marks.
    pub gates: Vec<GateId>,
    /// Percent.
    pub pass_mark: u32,
    /// Whether what is drawn depends on the learner's code.
    pub asks_code: bool,
    /// Of its canonical form.
    pub sha256: String,
}

/// What a learner's code draws.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct DrawnEntry {
    /// By name.
    pub patient: &'static str,
    /// As `beginPatient` takes it, like `changed`.
    pub seed: u32,
    /// What is not as the named patient has it.
    pub changed: BTreeMap<&'static str, f64>,
    /// Level.
    #[cfg_attr(feature = "cli", ts(as = "Level"))]
    pub level: &'static str,
    /// Side.
    #[cfg_attr(feature = "cli", ts(as = "Side"))]
    pub side: &'static str,
    /// The code without the blanks around it.
    pub learner: String,
    /// As `beginCase` takes it.
    pub case: Case,
}

/// Where the naming of parts stands.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct ExerciseEntry {
    /// What is asked now, as `point` takes it.
    pub asks: Option<Label>,
    /// Parts found.
    pub found: usize,
    /// Parts asked for.
    pub all: usize,
    /// Whether the last answer was right; `null` before the first.
    pub right: Option<bool>,
    /// What was asked when the last answer was given.
    pub was: Option<Label>,
    /// The last answer.
    pub said: Option<Label>,
}

/// Where a log stands in a lesson.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Standing {
    /// The marks.
    #[serde(flatten)]
    pub score: LessonScore,
    /// `null` where no parts are asked for.
    pub exercise: Option<ExerciseEntry>,
}

/// What a lesson file can name, and what holds where it says nothing.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Choices {
    /// Of the file.
    pub format: u32,
    /// All there are.
    pub steps: Vec<StepEntry>,
    /// As a lesson file names them.
    pub parts: &'static [LessonPart],
    /// All there are.
    pub patients: Vec<PatientEntry>,
    /// Cranial to caudal.
    #[cfg_attr(feature = "cli", ts(as = "Vec<Level>"))]
    pub levels: Vec<&'static str>,
    /// In the order of the file.
    pub tolerances: Vec<ToleranceEntry>,
    /// What a good hand needs.
    pub par: Par,
    /// Those that a lesson file can name.
    pub gates: Vec<GateId>,
}

/// A tolerance and its usual value.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct ToleranceEntry {
    /// As a lesson file names it.
    pub name: &'static str,
    /// What holds when a lesson says nothing.
    #[cfg_attr(feature = "cli", ts(as = "crate::view::tolerance::Tolerance"))]
    pub usual: serde_json::Value,
}

// --- Classes ---

/// What the page shows of a class.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct ClassEntry {
    /// A receipt each.
    pub rows: Vec<RowEntry>,
    /// Receipts by status.
    pub counts: BTreeMap<&'static str, usize>,
    /// Receipts whose log another one has.
    pub copies: usize,
    /// Each lesson's class.
    pub lessons: Vec<LessonSummary>,
}

/// A receipt as the page shows it.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct RowEntry {
    /// The file.
    pub source: String,
    /// Its line there, from 1.
    pub line: Option<u64>,
    /// Such as `verified`.
    pub status: &'static str,
    /// Why, in English.
    pub note: String,
    /// The learner's code.
    pub learner: Option<String>,
    /// The lesson's name.
    pub lesson: Option<String>,
    /// What was drawn.
    pub patient: Option<String>,
    /// The replay's, 0 to 1.
    pub total: Option<f64>,
    /// The replay's.
    pub passed: Option<bool>,
    /// The replay's.
    pub complete: Option<bool>,
    /// The replay's.
    pub steps: Vec<RowStep>,
    /// What failed it.
    pub gates_failed: Vec<&'static str>,
    /// The row (from 1) with the very same log.
    pub same_log_as: Option<usize>,
    /// The row (from 1) whose log is most alike.
    pub alike: Option<usize>,
    /// How much alike, 0 to 1.
    pub alike_share: Option<f64>,
    /// The row (from 1) that this one is handed in again of.
    pub repeat_of: Option<usize>,
}

/// A step of a row.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct RowStep {
    /// Which.
    pub id: &'static str,
    /// In English.
    pub name: &'static str,
    /// 0 to 1.
    pub score: Option<f64>,
}

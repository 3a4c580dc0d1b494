//! Downbeam computes what a C-arm shows of a lumbar spine at any orientation, and says how good the view is.
//!
//! It is meant for teaching fluoroscopy-guided lumbar injections: which view it is, which control to move and how far, how a needle
//! goes in, and what an attempt is worth. **Not for clinical use:** never plan or guide a procedure with it; follow local policy,
//! supervised training and licensed practice.
//!
//! # A view and its report
//!
//! ```
//! use downbeam::{AskedView, CArm, Level, Patient, PatientSpec, Side, Target, report};
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! let patient = Patient::new(&PatientSpec::named("average")?);
//! let asked = AskedView::usual(Target { level: Level::L4, side: Side::Left });
//!
//! // From straight above, and from where the report says that the oblique is best.
//! let straight = report(&patient, &asked, &CArm::default());
//! let best = report(&patient, &asked, &CArm::at_degrees(straight.best.oblique_deg, straight.best.tilt_deg)?);
//! let oblique = |report: &downbeam::Report| report.views[1].score;
//! assert!(oblique(&best) == 1.0 && oblique(&straight) < 1.0);
//! # Ok(())
//! # }
//! ```
//!
//! # A film
//!
//! ```
//! use downbeam::{CArm, Level, Look, Patient, PatientSpec, Projection, Radiograph, Scene};
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! let patient = Patient::new(&PatientSpec::named("average")?);
//! let arm = CArm::at_degrees(20.0, 5.0)?.sampled(128);
//! let beam = Projection::new(&arm, patient.level(Level::L4).centre);
//! let grey = Radiograph::new(&arm).render(Scene::of(&patient), &beam, &Look::default()).to_vec();
//! assert_eq!(grey.len(), 128 * 128); // row 0 at the top
//! # Ok(())
//! # }
//! ```
//!
//! # An attempt and its marks
//!
//! A lesson draws its patient by the learner's code. What is done is a log of whole numbers, which replays to the same bits natively
//! and in WebAssembly; a receipt carries it.
//!
//! ```
//! use downbeam::{Action, Event, Interiors, Lesson, Lessons, Receipt, Verdict, ViewKind, verify};
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! let lesson = Lesson::from_json(r#"{
//!     "format": 1, "id": "true-ap", "title": { "en": "True AP" }, "intro": { "en": "Centre it, square it." },
//!     "mode": "practice", "steps": ["true_ap"], "patient": { "name": "average", "seed_from": "learner" },
//!     "level": "L4", "side": "left", "pass_mark": 75
//! }"#)?;
//! let log = [
//!     Event(40, Action::Orient { oblique_tenths: 0, tilt_tenths: 120 }), // ticks are twentieths of a second
//!     Event(90, Action::Keep { view: ViewKind::TrueAp }),
//!     Event(95, Action::Finish),
//! ];
//! let mut interiors = Interiors::default();
//! let receipt = Receipt::of(&lesson, "am1", &log, &mut interiors)?;
//! let lessons: Lessons = [lesson].into_iter().collect();
//! assert!(matches!(verify(&receipt, &lessons, &mut interiors), Verdict::Verified(_)));
//! # Ok(())
//! # }
//! ```
//!
//! # Frame and units
//!
//! Millimetres and radians inside; degrees only in names that end in `_deg`, on screen and in files.
//! Patient axes are DICOM's LPS: +x to the patient's left, +y posterior, +z cranial. The *column frame*
//! has those axes and its origin at the centre of the S1 end plate; the *patient frame* shown to users has its
//! origin at the centre of the target vertebra's body. The patient lies prone, the source is under the table.
//!
//! # Where to find what
//!
//! - What is shown: [`imaging::projection`] (the cone beam), [`imaging::c_arm`] (angles, distances, the table), [`imaging::outline`],
//!   [`imaging::radiograph`] (the film) and [`imaging::dose`].
//! - What is seen: [`anatomy::dimensions`] (published numbers and their sources), [`anatomy::patient`] (all meshes of one spine),
//!   [`anatomy::patient_spec`] (who there is, and what can be changed), [`anatomy::landmarks`]; shapes and meshing in [`geometry`].
//! - How good a view is: [`view::criteria`], [`view::best_view`], [`view::report`].
//! - The needle: [`needle::shaft`] (its way through tissue), [`needle::motion`], [`needle::device`] (gauges and bevels),
//!   [`needle::contact`] (what it meets), [`needle::contrast`] (what it injects).
//! - What a learner does: [`procedure::action`], [`procedure::attempt`] (a log and where it leads), [`procedure::case`].
//! - What that is worth: [`score::rubric`] (marks by step), [`score::gate`] (what no marks make up for), [`score::remark`] (why), [`score::report`].
//! - Lessons, classes, questions: [`lesson::file`], [`class::receipt`], [`class::report`], [`practice`].
//!
//! # Layers
//!
//! A module uses only modules to its left:
//!
//! ```text
//! geometry <- anatomy <- imaging <- view <- needle <- procedure <- score <- lesson <- class <- practice
//!     practice <- web   (wasm-bindgen lives there only)
//!     practice <- bin   (files, processes, sockets live there only)
//! ```
//!
//! # Features
//!
//! - `cli` (default): the host tool `downbeam` and the JSON Schemas.
//! - `practice` (default): rounds of short questions.
//! - `room`, `lessons`: which of the page's handles are in a WebAssembly module.

pub mod anatomy;
pub mod class;
pub mod geometry;
pub mod imaging;
pub mod lesson;
pub mod needle;
#[cfg(feature = "practice")]
pub mod practice;
pub mod procedure;
pub mod score;
pub mod view;
#[cfg(any(target_arch = "wasm32", feature = "cli"))]
pub mod web;

pub use anatomy::names::{Level, Side};
pub use anatomy::patient::{Patient, PatientSpec};
pub use class::receipt::{Lessons, Receipt, Verdict, verify};
pub use imaging::c_arm::CArm;
pub use imaging::projection::Projection;
pub use imaging::radiograph::{Look, Radiograph, Scene};
pub use lesson::draw::Interiors;
pub use lesson::file::Lesson;
pub use lesson::read_error::ReadError;
pub use procedure::action::{Action, Event};
pub use view::best_view::{ViewKind, best_view};
pub use view::criteria::Target;
pub use view::report::{AskedView, Report, report};

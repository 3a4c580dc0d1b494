//! The page's handles on the engine: the only code that knows wasm-bindgen.
//!
//! They make three modules, so that the first picture waits for nothing that it does not need: `room` (feature `room`) has patient,
//! C-arm, picture and needle; `lessons` (feature `lessons`) reads lessons, links and receipts, scores and checks, and is
//! loaded when there is a lesson or a class; `practice` (feature `practice`) has the rounds of questions with their films, and is loaded by
//! the page of practice alone.
//!
//! What passes is plain data (`values`), of whose types the build makes TypeScript declarations (`declarations`); these two are there
//! natively as well, for the build.

#[cfg(feature = "cli")]
pub mod declarations;
#[cfg(feature = "practice")]
pub mod practice_values;
pub mod values;

#[cfg(all(target_arch = "wasm32", any(feature = "room", feature = "practice")))]
mod canvas;
#[cfg(all(target_arch = "wasm32", feature = "lessons"))]
mod class_room;
#[cfg(target_arch = "wasm32")]
mod exchange;
#[cfg(all(target_arch = "wasm32", feature = "lessons"))]
mod lesson_choices;
#[cfg(all(target_arch = "wasm32", feature = "lessons"))]
mod lesson_desk;
#[cfg(all(target_arch = "wasm32", feature = "practice"))]
mod practice;
#[cfg(all(target_arch = "wasm32", feature = "room"))]
mod room;

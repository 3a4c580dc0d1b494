//! Which engine scored something.
//!
//! Receipts carry the crate's version, for people, and [`SCORING`], for the check: a fingerprint of what fixed attempts score, step
//! by step, and of where tissues lie, to the last bit. `tests/scoring.rs` replays those attempts and fails while the constant is not what they give, so
//! no change of anatomy, needle or rubric can keep the name of the engine before it. A release that scores alike verifies alike.

/// SHA-256 over the scores of the attempts in `tests/scoring` and the tissues of the named patients on a grid, first 16 digits.
pub const SCORING: &str = "3b5d960de644b9cd";

/// The crate's version.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

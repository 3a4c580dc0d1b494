//! The schedule against reference vectors of its own model: those that the repository of the `fsrs` crate tests itself against (`src/inference.rs`,
//! version 6.6.2: read), and the model's formulas as its authors publish them for FSRS-6 ("The Algorithm", from memory), written out here.

#![allow(clippy::disallowed_methods, reason = "recomputed with the standard library's functions on purpose")]

use downbeam::practice::schedule::{LONGEST_DAYS, Memory, after};
use fsrs::DEFAULT_PARAMETERS;

/// The crate's own vector: again, good, good, good, good, good after 0, 1, 3, 8, 21 … days with the default parameters ends at this state.
#[test]
fn the_models_own_vector() {
    let days_and_ratings = [(0, 1), (0, 3), (1, 3), (3, 3), (8, 3), (21, 3)];
    let mut memory: Option<Memory> = None;
    let mut day = 100;
    for (days, rating) in days_and_ratings {
        day += days;
        memory = Some(after(memory, day, rating == 3));
    }
    let memory = memory.unwrap();
    assert!(
        (memory.stability_days - 53.62691).abs() < 1e-3 && (memory.difficulty - 6.357_486_7).abs() < 1e-4,
        "{memory:?}"
    );
}

/// FSRS-6's formulas, written out: first state, recall, lapse, same day, and the interval at 90 %, which is the stability.
#[test]
fn the_published_formulas() {
    let w: Vec<f64> = DEFAULT_PARAMETERS.iter().map(|w| f64::from(*w)).collect();
    let first_difficulty = |grade: f64| w[4] - (w[5] * (grade - 1.0)).exp() + 1.0;
    let good = after(None, 50, true);
    let again = after(None, 50, false);
    assert!(
        (f64::from(good.stability_days) - w[2]).abs() < 1e-4
            && (f64::from(again.stability_days) - w[0]).abs() < 1e-4
    );
    assert!((f64::from(good.difficulty) - first_difficulty(3.0)).abs() < 1e-3, "{good:?}");
    let decay = -w[20];
    let factor = 0.9_f64.powf(1.0 / decay) - 1.0;
    let (s, d) = (f64::from(good.stability_days), f64::from(good.difficulty));
    let days = 6.0;
    let r = (1.0 + factor * days / s).powf(decay);
    let recalled = s * (1.0 + w[8].exp() * (11.0 - d) * s.powf(-w[9]) * ((w[10] * (1.0 - r)).exp() - 1.0));
    let next = after(Some(good), 56, true);
    assert!((f64::from(next.stability_days) - recalled).abs() < 1e-2, "{next:?} {recalled}");
    assert_eq!(next.due_day - 56, (recalled.round() as u32).clamp(1, LONGEST_DAYS));
    let lapsed = w[11] * d.powf(-w[12]) * ((s + 1.0).powf(w[13]) - 1.0) * (w[14] * (1.0 - r)).exp();
    let wrong = after(Some(good), 56, false);
    assert!((f64::from(wrong.stability_days) - lapsed.min(s)).abs() < 1e-2, "{wrong:?} {lapsed}");
    // Difficulty: damped step, then towards that of an easy first answer.
    let step = |grade: f64| {
        let moved = d + (-w[6] * (grade - 3.0)) * (10.0 - d) / 9.0;
        (w[7] * first_difficulty(4.0) + (1.0 - w[7]) * moved).clamp(1.0, 10.0)
    };
    assert!(
        (f64::from(wrong.difficulty) - step(1.0)).abs() < 1e-2
            && (f64::from(next.difficulty) - step(3.0)).abs() < 1e-2
    );
}

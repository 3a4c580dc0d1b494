//! Limits, weights and run lengths of the practice curves as JSON, for `tests/reference/test_curves.py`, which computes them by Markov chains.
//!
//! `cargo run --release --example run_lengths`: for each pair of rates the limits and weights, and for who fails at either rate, over 20,000 made-up
//! rows of answers, after how many answers the CUSUM first meets a limit, how often that is the upper one, and after how many the LC-CUSUM says
//! "reached" (rows that are cut at [`MOST`] answers are counted apart).

use downbeam::practice::curve::{RATES, Rates, Verdict, chance_of_reached, curve, learning_weight, limits};
use serde_json::{Value, json};

const ROWS: usize = 20_000;
const MOST: usize = 600;

/// A row's own numbers in [0, 1): a 64-bit linear congruential generator (Knuth's MMIX constants: from memory).
fn numbers(seed: u64) -> impl Iterator<Item = f64> {
    std::iter::successors(Some(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1), |s| {
        Some(s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407))
    })
    .skip(4)
    .map(|s| (s >> 11) as f64 / (1_u64 << 53) as f64)
}

fn run(failing: f64, rates: &Rates) -> Value {
    let (mut lengths, mut squares, mut unacceptable) = (0.0, 0.0, 0_usize);
    let (mut reached, mut reached_squares, mut never) = (0.0, 0.0, 0_usize);
    for row in 0..ROWS {
        let found = curve(numbers(row as u64).take(MOST).map(|x| x >= failing), rates);
        let (at, verdict) = found.verdicts[0];
        lengths += at as f64;
        squares += (at * at) as f64;
        unacceptable += usize::from(verdict == Verdict::Unacceptable);
        match found.reached {
            Some(at) => {
                reached += at as f64;
                reached_squares += (at * at) as f64;
            }
            None => never += 1,
        }
    }
    let n = ROWS as f64;
    json!({
        "failing": failing, "rows": ROWS, "most": MOST,
        "mean": lengths / n, "variance": squares / n - (lengths / n) * (lengths / n), "unacceptable": unacceptable as f64 / n,
        "reached_sum": reached, "reached_squares": reached_squares, "never": never,
        "chance_in_60": chance_of_reached(failing, 60, rates),
    })
}

fn main() {
    let published = Rates { acceptable: 0.10, unacceptable: 0.20, ..RATES };
    let all: Vec<Value> = [RATES, published]
        .iter()
        .map(|rates| {
            json!({
                "rates": rates, "limits": limits(rates),
                "weights": [learning_weight(true, rates), learning_weight(false, rates)],
                "runs": [run(rates.acceptable, rates), run(rates.unacceptable, rates)],
            })
        })
        .collect();
    println!("{}", json!(all));
}

//! What a row of right and wrong answers shows: two cumulative sum charts.
//!
//! - *CUSUM* for learning a procedure, as papers on training in anaesthesia draw it (Kestin 1995, Br J Anaesth 75:805; de Oliveira Filho 2002,
//!   Anesth Analg 95:411: both from memory; formulas read in a lecture that restates them). With acceptable failure rate p0, unacceptable p1, and
//!   errors α, β: `P = ln(p1/p0)`, `Q = ln((1-p0)/(1-p1))`, `s = Q/(P+Q)`, `h0 = ln((1-α)/β)/(P+Q)`, `h1 = ln((1-β)/α)/(P+Q)`. A right answer takes
//!   `s` off, a wrong one adds `1 - s`. Falling by h0 says that the rate is acceptable, rising by h1 that it is not; the sum then begins again at 0.
//!   Each stretch is Wald's sequential probability ratio test (Wald 1945, Ann Math Stat 16:117: from memory).
//! - *LC-CUSUM*, for the moment at which competence is reached (Biau & Porcher 2010, Stat Med 29:1900, doi 10.1002/sim.3947: abstract read; Biau
//!   2008, Br J Surg 95:925: abstract read; the weights as a paper that uses it states them: read): `S = max(0, S + W)`, `W = ln((1-p0)/(1-p1))` for a
//!   right answer, `W = ln(p0/p1)` for a wrong one; it says "reached" at S ≥ h. The null hypothesis is that the learner is *not* competent.
//!
//! Step and limits are held to the likelihoods that they stand for, multiplied out, by `tests/practice_curve.rs`; run lengths of both to Markov
//! chains, and those to published run lengths, by `tests/reference/test_curves.py`.
//!
//! What it shows: whether a run of answers is more like one rate or like the other. What it cannot: whether the questions are the right ones, how
//! somebody does at the table, or, after the signal, that the skill stays. With four choices who guesses fails three times in four. Brachial plexus
//! blocks of 32 residents gave LC-CUSUM a sensitivity of 85 % and a specificity of 67 % (abstract read): not for decisions about people.

use serde::Serialize;

/// What a chart is drawn against.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Rates {
    /// p0, acceptable share of wrong answers.
    pub acceptable: f64,
    /// p1, unacceptable share.
    pub unacceptable: f64,
    /// α, chance of calling an acceptable rate unacceptable.
    pub alpha: f64,
    /// β, chance of calling an unacceptable rate acceptable.
    pub beta: f64,
    /// h of the LC-CUSUM.
    pub reached_at: f64,
}

/// The rates of all skills here: one wrong in seven is acceptable, two in five are not. A choice, no source; α and β as usual in the papers. With
/// this h, who still fails two in five is told "reached" within 60 answers with a chance of 4 % (`tests/practice_curve.rs` computes it).
pub const RATES: Rates =
    Rates { acceptable: 0.15, unacceptable: 0.40, alpha: 0.1, beta: 0.1, reached_at: 4.8 };

/// Step and limits of the CUSUM.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Limits {
    /// Taken off for a right answer; a wrong one adds one less this.
    pub s: f64,
    /// A fall by this: acceptable.
    pub h0: f64,
    /// A rise by this: unacceptable.
    pub h1: f64,
}

/// See the module.
pub fn limits(rates: &Rates) -> Limits {
    let p = libm::log(rates.unacceptable / rates.acceptable);
    let q = libm::log((1.0 - rates.acceptable) / (1.0 - rates.unacceptable));
    Limits {
        s: q / (p + q),
        h0: libm::log((1.0 - rates.alpha) / rates.beta) / (p + q),
        h1: libm::log((1.0 - rates.beta) / rates.alpha) / (p + q),
    }
}

/// What a CUSUM said at an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, strum::IntoStaticStr)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Verdict {
    Acceptable,
    Unacceptable,
}

/// Both charts of a row of answers.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Curve {
    /// Answers.
    pub answers: usize,
    /// Wrong ones.
    pub wrong: usize,
    /// Limits of the CUSUM.
    pub limits: Limits,
    /// h of the LC-CUSUM.
    pub reached_at: f64,
    /// The CUSUM after each answer; where a limit was met, its value before it begins again.
    pub cusum: Vec<f64>,
    /// Numbers of the answers (from 1) at which it met a limit.
    pub verdicts: Vec<(usize, Verdict)>,
    /// The LC-CUSUM after each answer.
    pub learning: Vec<f64>,
    /// Number of the answer (from 1) at which it first said "reached".
    pub reached: Option<usize>,
}

/// Draws both.
pub fn curve(right: impl IntoIterator<Item = bool>, rates: &Rates) -> Curve {
    let limits = limits(rates);
    let mut curve = Curve {
        answers: 0,
        wrong: 0,
        limits,
        reached_at: rates.reached_at,
        cusum: Vec::new(),
        verdicts: Vec::new(),
        learning: Vec::new(),
        reached: None,
    };
    let (mut sum, mut learning) = (0.0, 0.0);
    for right in right {
        curve.answers += 1;
        curve.wrong += usize::from(!right);
        sum += if right { -limits.s } else { 1.0 - limits.s };
        curve.cusum.push(sum);
        let limit = if sum <= -limits.h0 {
            Some(Verdict::Acceptable)
        } else {
            (sum >= limits.h1).then_some(Verdict::Unacceptable)
        };
        if let Some(verdict) = limit {
            curve.verdicts.push((curve.answers, verdict));
            sum = 0.0;
        }
        learning = f64::max(0.0, learning + learning_weight(right, rates));
        curve.learning.push(learning);
        if curve.reached.is_none() && learning >= rates.reached_at {
            curve.reached = Some(curve.answers);
        }
    }
    curve
}

/// W of the LC-CUSUM.
pub fn learning_weight(right: bool, rates: &Rates) -> f64 {
    let Rates { acceptable: p0, unacceptable: p1, .. } = *rates;
    if right { libm::log((1.0 - p0) / (1.0 - p1)) } else { libm::log(p0 / p1) }
}

impl Verdict {
    /// As in tables.
    pub fn name(self) -> &'static str {
        self.into()
    }
}

impl Curve {
    /// The last limit that the CUSUM met.
    pub fn standing(&self) -> Option<Verdict> {
        self.verdicts.last().map(|v| v.1)
    }
}

/// Chance that the LC-CUSUM has said "reached" within so many answers of somebody who fails at a rate: exactly, over all rows of answers. A row
/// is known by its right and wrong answers since the sum last stood at 0.
pub fn chance_of_reached(failure_rate: f64, answers: usize, rates: &Rates) -> f64 {
    let weights = [learning_weight(true, rates), learning_weight(false, rates)];
    let value = |&(right, wrong): &(u32, u32)| f64::from(right) * weights[0] + f64::from(wrong) * weights[1];
    let mut here = std::collections::BTreeMap::from([((0_u32, 0_u32), 1.0_f64)]);
    let mut reached = 0.0;
    for _ in 0..answers {
        let mut next = std::collections::BTreeMap::new();
        for ((right, wrong), chance) in here {
            for (state, share) in
                [((right + 1, wrong), 1.0 - failure_rate), ((right, wrong + 1), failure_rate)]
            {
                let sum = value(&state);
                if sum >= rates.reached_at {
                    reached += chance * share;
                } else {
                    let state = if sum <= 0.0 { (0, 0) } else { state };
                    *next.entry(state).or_insert(0.0) += chance * share;
                }
            }
        }
        here = next;
    }
    reached
}

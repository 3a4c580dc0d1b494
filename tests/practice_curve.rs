//! The curves against published values, against a second way of computing, by simulation, and over a fortnight of two learners.

#![allow(clippy::disallowed_methods, reason = "recomputed with the standard library's functions on purpose")]

use downbeam::practice::curve::{RATES, Rates, Verdict, chance_of_reached, curve, learning_weight, limits};
use downbeam::practice::kind::{Kind, Skill};
use downbeam::practice::progress::{Answer, Progress};

/// Numbers for simulations: splitmix64 (Steele 2014: from memory).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / 9_007_199_254_740_992.0
    }
}

fn rates(acceptable: f64, unacceptable: f64) -> Rates {
    Rates { acceptable, unacceptable, alpha: 0.1, beta: 0.1, reached_at: 2.0 }
}

/// Rates of published charts of trainees, their limits by the formulas in another form: `h = ln((1-α)/β) / ln(OR)` with the odds ratio
/// `OR = p1 (1-p0) / (p0 (1-p1))`, since `P + Q = ln(OR)`. Rates: epidurals 10 % and 20 % (the papers' usual pair), cannulation of the bile duct 20 %
/// and 35 % (HPB 2009, 11:565: abstract read), gastrostomy 5 % and 15 % (PMC4188705: abstract read).
#[test]
fn limits_of_published_charts() {
    for (p0, p1) in [(0.10, 0.20), (0.20, 0.35), (0.05, 0.15)] {
        let found = limits(&rates(p0, p1));
        let odds: f64 = p1 * (1.0 - p0) / (p0 * (1.0 - p1));
        assert!((found.h0 - 9.0_f64.ln() / odds.ln()).abs() < 1e-12 && (found.h1 - found.h0).abs() < 1e-12);
        assert!((found.s - ((1.0 - p0) / (1.0 - p1)).ln() / odds.ln()).abs() < 1e-12);
        // A rate between the two neither rises nor falls at s: s lies between them.
        assert!(found.s > p0 && found.s < p1, "{found:?}");
    }
    // With 10 % and 20 %, α = β = 0.1 that is ln(9/8) / ln(9/4) = 0.1452 and ln 9 / ln(9/4) = 2.7095: the usual charts' 0.15 and 2.71.
    let usual = limits(&rates(0.10, 0.20));
    assert!((usual.s - 0.1452).abs() < 5e-5 && (usual.h0 - 2.7095).abs() < 5e-5, "{usual:?}");
}

/// Step and limits against what they stand for: the chart meets a limit at that answer at which the likelihoods of all answers since it began, multiplied
/// out under either rate, are (1-β)/α times or β/(1-α) times each other. No logarithm and none of the formulas.
#[test]
fn the_chart_meets_its_limits_where_the_likelihoods_do() {
    let mut chance = Chance(3);
    let mut verdicts = [0, 0];
    for (p0, p1) in [(0.10, 0.20), (0.20, 0.35), (RATES.acceptable, RATES.unacceptable)] {
        for failing in [p0, p1] {
            let row: Vec<bool> = (0..4_000).map(|_| chance.next() >= failing).collect();
            let found = curve(row.iter().copied(), &rates(p0, p1)).verdicts;
            let mut ratio = 1.0;
            let mut by_hand = Vec::new();
            for (i, right) in row.iter().enumerate() {
                ratio *= if *right { (1.0 - p1) / (1.0 - p0) } else { p1 / p0 };
                let verdict = if ratio <= 1.0 / 9.0 {
                    Verdict::Acceptable
                } else if ratio >= 9.0 {
                    Verdict::Unacceptable
                } else {
                    continue;
                };
                by_hand.push((i + 1, verdict));
                verdicts[usize::from(verdict == Verdict::Unacceptable)] += 1;
                ratio = 1.0;
            }
            assert_eq!(found, by_hand, "{p0} {p1}");
        }
    }
    assert!(verdicts.iter().all(|n| *n > 50), "{verdicts:?}");
}

/// LC-CUSUM of oocyte retrievals (bio-protocol 9325945: read): p0 = 0.4, deviance 0.15, h = 6; success ln(0.6/0.45), failure ln(0.4/0.55).
#[test]
fn weights_of_a_published_learning_curve() {
    let published = Rates { acceptable: 0.40, unacceptable: 0.55, ..RATES };
    assert!((learning_weight(true, &published) - 0.2877).abs() < 5e-5);
    assert!((learning_weight(false, &published) + 0.3185).abs() < 5e-5);
}

/// A worked row by hand: s = 0.2 would be 5 right a wrong one. Right takes s off, wrong adds 1 - s; after a limit it begins at 0 again.
#[test]
fn a_worked_row() {
    let l = limits(&RATES);
    let found = curve([true, true, false, false, false], &RATES);
    let by_hand = [-l.s, -2.0 * l.s, 1.0 - 3.0 * l.s, 2.0 - 4.0 * l.s];
    for (a, b) in found.cusum.iter().zip(by_hand) {
        assert!((a - b).abs() < 1e-12);
    }
    assert_eq!((found.answers, found.wrong), (5, 3));
    let first_over = found.cusum.iter().position(|s| *s >= l.h1).map(|i| i + 1);
    assert_eq!(first_over.map(|at| (at, Verdict::Unacceptable)), found.verdicts.first().copied());
    // Right answers alone: reached after the fewest that can do it.
    let fewest = (RATES.reached_at / learning_weight(true, &RATES)).ceil() as usize;
    assert_eq!(curve([true; 40], &RATES).reached, Some(fewest));
}

/// Wald's test keeps its errors: at p0 the first limit met is the wrong one in at most α, at p1 in at most β (Wald 1945: α' + β' ≤ α + β, and each
/// near it; the overshoot of a coarse sum makes both smaller). And Wald's formula for the mean length holds within the overshoot.
#[test]
fn run_lengths_by_simulation() {
    let l = limits(&RATES);
    let mut chance = Chance(7);
    for (rate, wrong) in
        [(RATES.acceptable, Verdict::Unacceptable), (RATES.unacceptable, Verdict::Acceptable)]
    {
        let (mut errors, mut lengths) = (0, 0);
        let runs = 20_000;
        for _ in 0..runs {
            let row: Vec<bool> = (0..400).map(|_| chance.next() >= rate).collect();
            let (at, verdict) = curve(row, &RATES).verdicts[0];
            errors += usize::from(verdict == wrong);
            lengths += at;
        }
        let (error, mean) = (errors as f64 / f64::from(runs), lengths as f64 / f64::from(runs));
        assert!(error < 0.1 && error > 0.02, "{rate}: {error}");
        // Wald's mean length: (expected end of the sum) / (mean step), without overshoot a lower bound.
        let step = rate * (1.0 - l.s) - (1.0 - rate) * l.s;
        let end =
            if wrong == Verdict::Unacceptable { 0.1 * l.h1 - 0.9 * l.h0 } else { 0.9 * l.h1 - 0.1 * l.h0 };
        assert!(mean > end / step * 0.98 && mean < end / step * 1.6, "{rate}: {mean} {}", end / step);
    }
}

/// The exact chance of "reached" against simulation, and the figures that the module and the page state.
#[test]
fn chances_of_the_learning_curve() {
    let mut chance = Chance(11);
    for (rate, answers) in [(0.40, 60), (0.15, 30), (0.25, 40), (0.75, 60)] {
        let exact = chance_of_reached(rate, answers, &RATES);
        let runs = 20_000;
        let unacceptable = (0..runs).filter(|_| {
            let row: Vec<bool> = (0..answers).map(|_| chance.next() >= rate).collect();
            curve(row, &RATES).reached.is_some()
        });
        let simulated = unacceptable.count() as f64 / f64::from(runs);
        // Three standard errors.
        let allowed = 3.0 * (exact * (1.0 - exact) / f64::from(runs)).sqrt() + 1e-9;
        println!("failing at {rate}: {exact:.4} within {answers} answers");
        assert!((exact - simulated).abs() <= allowed, "{rate}: {exact} {simulated}");
    }
    let inadequate = chance_of_reached(0.40, 60, &RATES);
    assert!((inadequate - 0.04).abs() < 0.01, "the module says 4 %: {inadequate}");
    assert!(chance_of_reached(0.75, 500, &RATES) < 1e-4, "who guesses");
    assert!(chance_of_reached(0.10, 60, &RATES) > 0.9, "who is good");
}

/// A fortnight of daily rounds, as the schedule sets them: one learner improves with each question of a kind, one guesses among four.
#[test]
fn a_fortnight_tells_who_learns_from_who_guesses() {
    let fortnight = |seed: u64, chance_of_right: &dyn Fn(usize) -> f64| {
        let mut chance = Chance(seed);
        let mut progress = Progress::default();
        for day in 20_000..20_014_u32 {
            for (i, card) in progress.schedule().round(day, 9, seed + u64::from(day)).into_iter().enumerate()
            {
                let seen = progress.answers().iter().filter(|a| a.kind == card.kind).count();
                let right = chance.next() < chance_of_right(seen);
                let (kind, level, side) = (card.kind, card.level, card.side);
                let at = u64::from(day) * 86_400 + 30_000 + i as u64 * 30;
                progress.add(Answer {
                    at,
                    day,
                    kind,
                    level,
                    side,
                    stage: progress.stage(kind),
                    right,
                    asked: None,
                });
            }
        }
        progress
    };
    // From a guess towards 97 %: two thirds of the way after five questions of a kind. Made up.
    let improves = |seen: usize| 0.25 + 0.72 * (1.0 - (-(seen as f64) / 4.5).exp());
    let guesses = |_: usize| 0.25;
    let runs = 100;
    let (mut reached, mut guessed, mut good, mut bad, mut harder) = (0, 0, 0, 0, 0);
    for seed in 0..runs {
        let (learner, guesser) = (fortnight(seed, &improves), fortnight(seed, &guesses));
        assert_eq!((learner.answers().len(), guesser.answers().len()), (126, 126));
        for &skill in Skill::ALL {
            guessed += u32::from(guesser.curve(skill).reached.is_some());
        }
        reached += u32::from(learner.curve(Skill::Views).reached.is_some());
        good += u32::from(learner.curve(Skill::Views).standing() == Some(Verdict::Acceptable));
        bad += u32::from(guesser.curve(Skill::Views).standing() == Some(Verdict::Unacceptable));
        let stages = |p: &Progress| Kind::ALL.map(|kind| u32::from(p.stage(kind))).iter().sum::<u32>();
        harder += u32::from(stages(&learner) > stages(&guesser));
        // What comes back sooner: the guesser has more due after a week off.
        let due = |p: &Progress| p.schedule().due(20_021);
        assert!(due(&guesser) > 0 && due(&learner) > 0);
    }
    println!(
        "of {runs}: learner reached {reached}, acceptable {good}; guesser reached {guessed}, unacceptable {bad}; harder {harder}"
    );
    assert!(reached >= 90 && good >= 85, "{reached} {good}");
    assert_eq!((guessed, bad), (0, runs as u32));
    assert!(harder >= 98, "{harder}");
}

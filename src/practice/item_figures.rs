//! What a class's answers say about a question: how hard it is and how well it tells strong from weak learners. Classical test theory (Crocker &
//! Algina, Introduction to classical and modern test theory, 1986: from memory).
//!
//! - *difficulty*: share of right answers, 0 to 1 (a high number is an easy question).
//! - *discrimination*: correlation of this question's mark with the sum of all others (corrected item-total, a point-biserial correlation); not
//!   said where everybody answered alike. With ten learners chance alone gives ±0.6 (two standard errors, 1/√n each): read it over several classes.

use serde::Serialize;

/// Figures of one question or kind.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Figures {
    /// Answers.
    pub answered: usize,
    /// Right ones.
    pub right: usize,
    /// `right / answered`; `None` without answers.
    pub difficulty: Option<f64>,
    /// See the module.
    pub discrimination: Option<f64>,
}

/// Of each column of a table of marks, a row a learner, `None` where not answered (counts as nothing for the learner's sum).
pub fn figures(marks: &[Vec<Option<bool>>]) -> Vec<Figures> {
    let columns = marks.iter().map(Vec::len).max().unwrap_or(0);
    (0..columns).map(|i| column(marks, |j| j == i)).collect()
}

/// Of several columns taken together, such as those of one kind: answers are put one under the other, each against its learner's other columns.
pub fn together(marks: &[Vec<Option<bool>>], belongs: impl Fn(usize) -> bool) -> Figures {
    column(marks, belongs)
}

fn column(marks: &[Vec<Option<bool>>], belongs: impl Fn(usize) -> bool) -> Figures {
    let mut pairs: Vec<(f64, f64)> = Vec::new();
    for row in marks {
        let others =
            row.iter().enumerate().filter(|(j, _)| !belongs(*j)).filter(|(_, m)| **m == Some(true)).count();
        for (_, mark) in row.iter().enumerate().filter(|(j, _)| belongs(*j)) {
            if let Some(right) = mark {
                pairs.push((f64::from(u8::from(*right)), others as f64));
            }
        }
    }
    let right = pairs.iter().filter(|p| p.0 > 0.5).count();
    Figures {
        answered: pairs.len(),
        right,
        difficulty: (!pairs.is_empty()).then(|| right as f64 / pairs.len() as f64),
        discrimination: correlation(&pairs),
    }
}

/// Pearson's; `None` where one of the two does not vary.
fn correlation(pairs: &[(f64, f64)]) -> Option<f64> {
    let n = pairs.len() as f64;
    let mean = |f: fn(&(f64, f64)) -> f64| pairs.iter().map(f).sum::<f64>() / n;
    let (mx, my) = (mean(|p| p.0), mean(|p| p.1));
    let sum = |f: &dyn Fn(f64, f64) -> f64| pairs.iter().map(|p| f(p.0 - mx, p.1 - my)).sum::<f64>();
    let (xx, yy, xy) = (sum(&|x, _| x * x), sum(&|_, y| y * y), sum(&|x, y| x * y));
    (xx > 1e-12 && yy > 1e-12).then(|| xy / libm::sqrt(xx * yy))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against Python's `statistics.correlation` of each column with the sum of the others.
    #[test]
    fn figures_of_a_small_class() {
        let marks: Vec<Vec<Option<bool>>> = [
            [1, 1, 1, 1, 0],
            [1, 1, 0, 1, 1],
            [1, 0, 1, 0, 1],
            [0, 1, 0, 0, 0],
            [1, 0, 0, 0, 0],
            [0, 0, 1, 0, 0],
        ]
        .iter()
        .map(|row| row.iter().map(|m| Some(*m == 1)).collect())
        .collect();
        let expected = [
            (2.0 / 3.0, 0.426_401),
            (0.5, 0.137_361),
            (0.5, -0.124_035),
            (1.0 / 3.0, std::f64::consts::FRAC_1_SQRT_2),
            (1.0 / 3.0, 0.306_186),
        ];
        for (found, (difficulty, discrimination)) in figures(&marks).iter().zip(expected) {
            assert!((found.difficulty.unwrap() - difficulty).abs() < 1e-6, "{found:?}");
            assert!((found.discrimination.unwrap() - discrimination).abs() < 1e-6, "{found:?}");
        }
        let both = together(&marks, |j| j < 2);
        assert_eq!((both.answered, both.right), (12, 7));
        assert!((both.discrimination.unwrap() - 0.345_271).abs() < 1e-6, "{both:?}");
    }

    #[test]
    fn nothing_is_said_where_nothing_varies() {
        let all_right = vec![vec![Some(true), Some(true)], vec![Some(true), Some(false)]];
        let found = figures(&all_right);
        assert_eq!((found[0].difficulty, found[0].discrimination), (Some(1.0), None));
        let unanswered = figures(&[vec![None, Some(true)], vec![None, Some(false)]]);
        assert_eq!((unanswered[0].answered, unanswered[0].difficulty), (0, None));
        assert!(figures(&[]).is_empty());
    }
}

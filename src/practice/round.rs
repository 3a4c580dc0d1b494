//! A round: a seed, and from it a row of questions. For one learner the schedule says which decisions are asked; for a class the seed alone does.

use super::ask::ask;
use super::draft::{one_of, shuffle};
use super::kind::Kind;
use super::question::Question;
use super::schedule::Card;
use super::stage::STAGES;
use crate::anatomy::names::{Side, shown};
use crate::anatomy::seeded::Numbers;
use crate::view::criteria::Target;
use std::fmt;
use std::str::FromStr;

/// Questions of a day's round: about five minutes at half a minute each.
pub const DAILY_COUNT: usize = 9;
/// Fewest and most in a class.
pub const COUNTS: (usize, usize) = (3, 10);

/// The question of a card in a round.
pub fn question(round_seed: u64, index: usize, card: Card, stage: u8) -> Option<Question> {
    ask(card.kind, stage, Target { level: card.level, side: card.side }, seed_of(round_seed, index))
}

/// The seed of a round's question.
fn seed_of(round_seed: u64, index: usize) -> u64 {
    (Numbers::stream(round_seed, 0x5eed + index as u64).unit() * 9_007_199_254_740_992.0) as u64
}

/// A round that a class does together, as its link names it: `3.SEED.STAGE.COUNT`, the first number being the form's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClassRound {
    /// From which everything is drawn.
    pub seed: u32,
    /// How hard.
    pub stage: u8,
    /// How many questions.
    pub count: u8,
}

/// The form of the name, and of what is drawn from it.
const FORM: u32 = 3;

impl ClassRound {
    /// What is asked: every kind once before one comes twice, in an order of the seed's.
    pub fn cards(&self) -> Vec<Card> {
        let mut numbers = Numbers::stream(u64::from(self.seed), 0xc1a5);
        let mut kinds = Kind::ALL.to_vec();
        shuffle(&mut numbers, &mut kinds);
        (0..usize::from(self.count))
            .map(|i| {
                let kind = kinds[i % kinds.len()];
                let level = one_of(&mut numbers, kind.levels());
                Card { kind, level, side: one_of(&mut numbers, &Side::BOTH) }
            })
            .collect()
    }

    /// A question of it.
    pub fn question(&self, index: usize) -> Option<Question> {
        let card = *self.cards().get(index)?;
        question(u64::from(self.seed), index, card, self.stage)
    }
}

impl fmt::Display for ClassRound {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{FORM}.{}.{}.{}", self.seed, self.stage, self.count)
    }
}

/// A round's name that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "'{found}' names no round: allowed is 3.SEED.STAGE.COUNT, such as 3.48213.2.8, with stage 0 to {most_stage} and {fewest} to {most} questions"
)]
pub struct RoundNameError {
    found: String,
    most_stage: usize,
    fewest: usize,
    most: usize,
}

impl FromStr for ClassRound {
    type Err = RoundNameError;

    fn from_str(text: &str) -> Result<Self, RoundNameError> {
        let wrong = || RoundNameError {
            found: shown(text),
            most_stage: STAGES.len() - 1,
            fewest: COUNTS.0,
            most: COUNTS.1,
        };
        let numbers: Option<Vec<u32>> = text.trim().split('.').map(|part| part.parse().ok()).collect();
        let Some([FORM, seed, stage, count]) = numbers.as_deref() else { return Err(wrong()) };
        let round = Self {
            seed: *seed,
            stage: u8::try_from(*stage).map_err(|_| wrong())?,
            count: u8::try_from(*count).map_err(|_| wrong())?,
        };
        let fits = usize::from(round.stage) < STAGES.len()
            && (COUNTS.0..=COUNTS.1).contains(&usize::from(round.count));
        if fits { Ok(round) } else { Err(wrong()) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_read_back_and_wrong_ones_say_what_is_allowed() {
        let round = ClassRound { seed: 48213, stage: 2, count: 8 };
        assert_eq!(round.to_string(), "3.48213.2.8");
        assert_eq!("3.48213.2.8".parse(), Ok(round));
        for wrong in [
            "",
            "2.2.3",
            "1.1.1.8",
            "3.1.6.8",
            "3.1.1.2",
            "3.1.1.11",
            "2.-1.1.8",
            "3.1.1.8.9",
            "3.4294967296.1.8",
            "x",
        ] {
            let said = wrong.parse::<ClassRound>().unwrap_err().to_string();
            assert!(said.contains("allowed is 3.SEED.STAGE.COUNT"), "{said}");
        }
    }

    #[test]
    fn a_class_round_asks_every_kind_before_one_comes_twice() {
        for seed in 0..50 {
            let cards = ClassRound { seed, stage: 1, count: 9 }.cards();
            assert!(Kind::ALL.iter().all(|kind| cards.iter().filter(|c| c.kind == *kind).count() == 1));
        }
        let round = ClassRound { seed: 5, stage: 1, count: 10 };
        assert_eq!(round.cards(), round.cards());
    }
}

//! What is due again: spaced repetition of each kind of decision, at each level and side, by the FSRS model of memory (Ye 2022, A stochastic
//! shortest path algorithm for optimizing spaced repetition scheduling, KDD '22, doi 10.1145/3534678.3539081: from memory), as the `fsrs` crate
//! has it with its published default parameters.
//!
//! An answer is right ("good") or wrong ("again"); the model's other two grades are for cards that a learner grades, and are not used. What comes
//! back is never the same film: the card is the decision, the patient is another one each time.
//!
//! Limits: the parameters were fitted on facts learnt from flash cards, not on reading films; nobody has fitted them to this.

use super::kind::Kind;
use crate::anatomy::names::{Level, Side};
use crate::anatomy::seeded::Numbers;
use fsrs::{FSRS, MemoryState};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Chance of a right answer at which a card comes back: the model's usual 90 %.
const WANTED_RETENTION: f32 = 0.9;
/// Longest interval, days: half a year, since a skill of the hand is wanted at any time. A choice, no source.
pub const LONGEST_DAYS: u32 = 180;
/// Most of one kind in a day's round, so that no round is all of one thing.
const MOST_OF_A_KIND: usize = 2;

/// A decision that is practised.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Card {
    /// What is asked.
    pub kind: Kind,
    /// Where.
    pub level: Level,
    /// On which side.
    pub side: Side,
}

/// What is known of a card.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Memory {
    /// Days in which the chance of a right answer falls to 90 %.
    pub stability_days: f32,
    /// 1 (easy) to 10.
    pub difficulty: f32,
    /// Number of the day of the last answer.
    pub last_day: u32,
    /// Number of the day from which it is due.
    pub due_day: u32,
}

/// All cards that have been answered.
#[derive(Clone, Debug, Default)]
pub struct Schedule {
    cards: BTreeMap<Card, Memory>,
}

/// Memory after an answer on a day. Days that run backwards count as the same day.
pub fn after(memory: Option<Memory>, day: u32, right: bool) -> Memory {
    let elapsed = memory.map_or(0, |m| day.saturating_sub(m.last_day));
    let state = memory.map(|m| MemoryState { stability: m.stability_days, difficulty: m.difficulty });
    let model = FSRS::default();
    let next =
        model.next_states(state, WANTED_RETENTION, elapsed).map(|n| if right { n.good } else { n.again });
    let Ok(next) = next else {
        // The model refuses a state that is not a number only; a card of its own making never is. Then it begins anew.
        return Memory { stability_days: 1.0, difficulty: 5.0, last_day: day, due_day: day + 1 };
    };
    let interval = (libm::roundf(next.interval) as u32).clamp(1, LONGEST_DAYS);
    Memory {
        stability_days: next.memory.stability,
        difficulty: next.memory.difficulty,
        last_day: day,
        due_day: day.saturating_add(if right { interval } else { 1 }),
    }
}

impl Schedule {
    /// Takes an answer.
    pub fn answer(&mut self, card: Card, day: u32, right: bool) {
        let next = after(self.cards.get(&card).copied(), day, right);
        self.cards.insert(card, next);
    }

    /// What is known of a card.
    pub fn memory(&self, card: Card) -> Option<Memory> {
        self.cards.get(&card).copied()
    }

    /// How many cards are due on a day.
    pub fn due(&self, day: u32) -> usize {
        self.cards.values().filter(|m| m.due_day <= day).count()
    }

    /// How many have been answered at all, and of how many.
    pub fn begun(&self) -> (usize, usize) {
        (self.cards.len(), Kind::ALL.iter().map(|kind| kind.levels().len() * 2).sum())
    }

    /// The cards of a day's round: those that are due, longest overdue against their stability first, then new ones, mixed by the seed, no kind
    /// more than twice.
    pub fn round(&self, day: u32, count: usize, seed: u64) -> Vec<Card> {
        let overdue = |m: &Memory| f64::from(day - m.due_day) / f64::from(m.stability_days.max(0.1));
        let mut due: Vec<(f64, Card)> = self
            .cards
            .iter()
            .filter(|(_, m)| m.due_day <= day)
            .map(|(card, m)| (overdue(m), *card))
            .collect();
        due.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut numbers = Numbers::stream(seed, 0x0da7);
        let mut fresh = fresh_first(&mut numbers);
        fresh.retain(|card| !self.cards.contains_key(card));
        // What is not due yet fills a round that would else be short, soonest first.
        let mut later: Vec<(u32, Card)> =
            self.cards.iter().filter(|(_, m)| m.due_day > day).map(|(card, m)| (m.due_day, *card)).collect();
        later.sort();
        let all = due.into_iter().map(|d| d.1).chain(fresh).chain(later.into_iter().map(|l| l.1));
        let mut round: Vec<Card> = Vec::with_capacity(count);
        for card in all {
            if round.len() < count && round.iter().filter(|c| c.kind == card.kind).count() < MOST_OF_A_KIND {
                round.push(card);
            }
        }
        super::draft::shuffle(&mut numbers, &mut round);
        round
    }
}

/// All cards, kinds in turn, each with its levels and sides shuffled, the common levels not before the rare.
fn fresh_first(numbers: &mut Numbers) -> Vec<Card> {
    let mut columns: Vec<Vec<Card>> = Kind::ALL
        .into_iter()
        .map(|kind| {
            let mut places: Vec<Card> = kind
                .levels()
                .iter()
                .flat_map(|&level| Side::BOTH.map(|side| Card { kind, level, side }))
                .collect();
            super::draft::shuffle(numbers, &mut places);
            places
        })
        .collect();
    let rows = columns.iter().map(Vec::len).max().unwrap_or(0);
    (0..rows).flat_map(|_| columns.iter_mut().filter_map(Vec::pop).collect::<Vec<_>>()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The crate's own reference: its default parameters over good, good, good, good, good, good, again, again, good … with each card reviewed
    /// when it is due give these intervals (days) and end here. Vectors of the published FSRS-6 defaults: `tests/practice_schedule.rs` has those
    /// that the crate's repository tests itself against.
    #[test]
    fn wrong_answers_come_back_the_next_day_and_right_ones_ever_later() {
        let mut memory = after(None, 100, true);
        let mut intervals = vec![memory.due_day - memory.last_day];
        for _ in 0..3 {
            memory = after(Some(memory), memory.due_day, true);
            intervals.push(memory.due_day - memory.last_day);
        }
        assert!(intervals.windows(2).all(|w| w[1] > w[0]), "{intervals:?}");
        let wrong = after(Some(memory), memory.due_day, false);
        assert_eq!(wrong.due_day, wrong.last_day + 1);
        assert!(wrong.stability_days < memory.stability_days && wrong.difficulty > memory.difficulty);
        // A clock set back does no harm.
        assert_eq!(after(Some(wrong), 3, true).last_day, 3);
    }

    #[test]
    fn a_round_takes_what_is_due_first_and_no_kind_too_often() {
        let mut schedule = Schedule::default();
        let first = schedule.round(10, 9, 1);
        assert_eq!(first.len(), 9);
        assert!(
            Kind::ALL.iter().all(|kind| first.iter().filter(|c| c.kind == *kind).count() == 1),
            "{first:?}"
        );
        for card in &first {
            schedule.answer(*card, 10, card.kind != Kind::Clock);
        }
        assert_eq!((schedule.due(10), schedule.due(11), schedule.begun()), (0, 1, (9, 106)));
        let next = schedule.round(11, 9, 2);
        let clock = first.iter().find(|c| c.kind == Kind::Clock).unwrap();
        assert!(next.contains(clock) && next.iter().filter(|c| first.contains(c)).count() == 1);
        // Everything answered and nothing due: the round is still full.
        let mut all = Schedule::default();
        for card in fresh_first(&mut Numbers::stream(1, 1)) {
            all.answer(card, 10, true);
        }
        assert_eq!((all.due(10), all.round(10, 9, 3).len(), all.begun()), (0, 9, (106, 106)));
    }
}

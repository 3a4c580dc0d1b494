//! An attempt that can be stood at anywhere: its log is replayed once, and the state is kept at intervals, so that any moment is a few
//! actions away from one that is kept.

use super::action::{ActionError, Event};
use super::attempt::Attempt;
use super::case::Case;
use crate::anatomy::interior::Interior;

/// So many actions lie between two states that are kept. A choice: a state is some kilobytes, an action some ten microseconds.
const EVERY: usize = 16;

/// A log and its states.
#[derive(Clone, Debug)]
pub struct TimeLine {
    log: Vec<Event>,
    /// After 0, `EVERY`, 2 `EVERY` … actions.
    kept: Vec<Attempt>,
}

impl TimeLine {
    /// Replays a log.
    ///
    /// # Errors
    /// At the first action that cannot be done.
    pub fn new(case: Case, interior: &Interior, log: &[Event]) -> Result<Self, ActionError> {
        let mut attempt = Attempt::new(case);
        let mut kept = vec![attempt.clone()];
        for (done, &event) in (1..).zip(log) {
            attempt.apply(interior, event)?;
            if done % EVERY == 0 {
                kept.push(attempt.clone());
            }
        }
        Ok(Self { log: log.to_vec(), kept })
    }

    /// The attempt after its first `done` actions; after all of them where there are fewer.
    ///
    /// # Errors
    /// Never in a log that was replayed: an action is the same each time.
    pub fn at(&self, interior: &Interior, done: usize) -> Result<Attempt, ActionError> {
        let done = done.min(self.log.len());
        let mut attempt = self.kept[done / EVERY].clone();
        for &event in &self.log[attempt.log.len()..done] {
            attempt.apply(interior, event)?;
        }
        Ok(attempt)
    }

    /// How many actions there are.
    pub fn actions(&self) -> usize {
        self.log.len()
    }
}

//! An attempt: a pure state machine. The state after an action depends on the case, the patient's interior and the actions so far, and
//! on nothing else: no clock, no chance. Undo, resume and replay are replays of the log.

use super::action::{Action, ActionError, Event};
use super::case::Case;
use super::state::State;
use crate::anatomy::interior::Interior;
use crate::imaging::c_arm::CArm;

/// A case, its log and where it stands.
#[derive(Clone, Debug)]
pub struct Attempt {
    /// What is set.
    pub case: Case,
    /// What was done.
    pub log: Vec<Event>,
    /// What was undone last, nearest first.
    undone: Vec<Event>,
    /// Where that leads.
    pub state: State,
}

impl Attempt {
    /// Nothing done yet.
    pub fn new(case: Case) -> Self {
        Self { case, log: Vec::new(), undone: Vec::new(), state: State::new(&case) }
    }

    /// Does an action and writes it down.
    ///
    /// # Errors
    /// When it cannot be done; nothing has changed then.
    pub fn apply(&mut self, interior: &Interior, event: Event) -> Result<(), ActionError> {
        self.state.apply(&self.case, interior, event)?;
        self.log.push(event);
        self.undone.clear();
        Ok(())
    }

    /// Writes down where C-arm, picture and table stand, as far as they have moved since the last action: in tenths of a degree and of a
    /// millimetre, so that the log alone leads to the same state. After the end nothing is written.
    ///
    /// # Errors
    /// When the machine does not reach where `arm` stands.
    pub fn settle(&mut self, interior: &Interior, tick: u32, arm: &CArm) -> Result<(), ActionError> {
        if self.state.finished {
            return Ok(());
        }
        let known = self.state.arm;
        let tenths = |value: f64| libm::round(value * 10.0) as i32;
        let mut moves = Vec::new();
        if (arm.oblique_rad, arm.tilt_rad) != (known.oblique_rad, known.tilt_rad) {
            let (oblique_tenths, tilt_tenths) =
                (tenths(arm.oblique_rad.to_degrees()), tenths(arm.tilt_rad.to_degrees()));
            moves.push(Action::Orient { oblique_tenths, tilt_tenths });
        }
        if arm.image_rotation_rad != known.image_rotation_rad {
            moves.push(Action::RotateImage { deg_tenths: tenths(arm.image_rotation_rad.to_degrees()) });
        }
        if arm.table_shift_mm != known.table_shift_mm {
            let [left_mm_tenths, back_mm_tenths, head_mm_tenths] = arm.table_shift_mm.to_array().map(tenths);
            moves.push(Action::MoveTable { left_mm_tenths, back_mm_tenths, head_mm_tenths });
        }
        moves.into_iter().try_for_each(|action| self.apply(interior, Event(tick, action)))
    }

    /// A whole log; stops at the first action that cannot be done.
    ///
    /// # Errors
    /// At the first action that cannot be done.
    pub fn replay(case: Case, interior: &Interior, log: &[Event]) -> Result<Self, ActionError> {
        let mut attempt = Self::new(case);
        for &event in log {
            attempt.apply(interior, event)?;
        }
        Ok(attempt)
    }

    /// Takes the last action back; `false` when there is none. What radiation has been spent stays spent.
    pub fn undo(&mut self, interior: &Interior) -> bool {
        let Some(at) = self.log.iter().rposition(|e| !is_exposure(e.1)) else { return false };
        let undone = self.log.remove(at);
        self.undone.push(undone);
        self.again(interior);
        true
    }

    /// Whether there is anything to do again.
    pub fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }

    /// Does again what was undone last; `false` when there is nothing.
    pub fn redo(&mut self, interior: &Interior) -> bool {
        let Some(Event(_, action)) = self.undone.pop() else { return false };
        let event = Event(self.state.tick, action);
        if self.state.apply(&self.case, interior, event).is_err() {
            return false;
        }
        self.log.push(event);
        true
    }

    fn again(&mut self, interior: &Interior) {
        let mut state = State::new(&self.case);
        // An action that no longer can be done without the undone one goes as well.
        self.log.retain(|&event| state.apply(&self.case, interior, event).is_ok());
        self.state = state;
    }
}

fn is_exposure(action: Action) -> bool {
    matches!(action, Action::Spot | Action::Fluoroscopy { .. })
}

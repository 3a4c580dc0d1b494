//! Where an attempt stands, and what an action makes of it: a pure function of the case, the patient's interior and the actions so far.

use super::action::{Action, ActionError, Event, TICKS_PER_S, seconds};
use super::beam::view_of;
use super::case::Case;
use super::record::{Aspirate, ContactRecord, Held, Injected, KeptView, Mark, Picture, Turn};
use crate::anatomy::foramen::{Approach, Area};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Label;
use crate::imaging::c_arm::CArm;
use crate::imaging::inclusion::Inclusion;
use crate::imaging::projection::Projection;
use crate::needle::device::Device;
use crate::needle::shaft::Needle;
use crate::needle::shape;
use crate::view::best_view::ViewKind;

/// Where an attempt stands.
#[derive(Clone, Debug)]
pub struct State {
    /// The C-arm.
    pub arm: CArm,
    /// Tick of the last action.
    pub tick: u32,
    /// Way into the foramen.
    pub approach: Approach,
    /// Kept views, in order.
    pub kept: Vec<KeptView>,
    /// The mark.
    pub mark: Option<Mark>,
    /// The needle.
    pub needle: Option<Needle>,
    /// Stylet in the needle.
    pub stylet: bool,
    /// What the needle has touched, in order.
    pub contacts: Vec<ContactRecord>,
    /// Needles that were used.
    pub needles: u32,
    /// Pictures.
    pub pictures: Vec<Picture>,
    /// Where the C-arm was looked through from with the needle in, and how deep it was then, mm; only where pictures are free.
    pub looked: Vec<(CArm, f64)>,
    /// Injections.
    pub injected: Vec<Injected>,
    /// What the last suction gave, until the needle moves.
    pub aspirated: Option<Aspirate>,
    /// Whether blood stands at the hub, until the needle moves.
    pub blood: bool,
    /// Along the beam.
    pub held: Held,
    /// Turns of the hub under the skin.
    pub turns: Vec<Turn>,
    /// Turned since it was last pushed on.
    pub(super) turned: bool,
    /// How far medial of the pedicle's 6 o'clock the tip came before contrast was seen, mm; `None` while it was not deep.
    pub medial_mm: Option<f64>,
    /// Parts pointed at, in order.
    pub pointed: Vec<Label>,
    /// The last pulses of fluoroscopy end at this tick; 0 before the first.
    pub(super) pulsed_until: u32,
    /// Finished.
    pub finished: bool,
}

/// A view that the C-arm stays in for this long has been looked at, ticks. A choice, no source.
const LOOK: u32 = TICKS_PER_S;

impl State {
    /// The needle as a film shows it, with or without its stylet; empty where there is none.
    pub fn needle_bodies(&self) -> Vec<Inclusion> {
        self.needle.as_ref().map_or(Vec::new(), |needle| shape::needle(needle, self.stylet))
    }

    /// What was injected as a film of a tick shows it.
    pub fn contrast_bodies(&self, interior: &Interior, tick: u32) -> Vec<Inclusion> {
        let spread = |injected: &Injected| injected.bolus.spread(interior, seconds(tick));
        self.injected.iter().flat_map(|injected| shape::contrast(spread(injected))).collect()
    }

    /// Nothing done yet.
    pub fn new(case: &Case) -> Self {
        Self {
            arm: CArm { table_shift_mm: case.off_centre_mm(), ..CArm::default() },
            tick: 0,
            approach: case.approach,
            kept: Vec::new(),
            mark: None,
            needle: None,
            stylet: true,
            contacts: Vec::new(),
            needles: 0,
            pictures: Vec::new(),
            looked: Vec::new(),
            injected: Vec::new(),
            aspirated: None,
            blood: false,
            held: Held::default(),
            turns: Vec::new(),
            turned: false,
            medial_mm: None,
            pointed: Vec::new(),
            pulsed_until: 0,
            finished: false,
        }
    }

    /// The beam as the C-arm stands.
    pub fn view(&self, case: &Case, interior: &Interior) -> Projection {
        view_of(&self.arm, case, interior)
    }

    /// The area that is aimed at.
    pub fn area<'a>(&self, case: &Case, interior: &'a Interior) -> Option<&'a Area> {
        interior.foramen(case.target.level, case.target.side).map(|f| f.area(self.approach))
    }

    /// The view of a kind that was kept last.
    pub fn kept(&self, view: ViewKind) -> Option<CArm> {
        self.kept.iter().rev().find(|k| k.view == view).map(|k| k.arm)
    }

    /// Does one action. On an error nothing has changed.
    ///
    /// # Errors
    /// When the action cannot be done as the attempt stands, or one of its values is out of range.
    pub fn apply(&mut self, case: &Case, interior: &Interior, event: Event) -> Result<(), ActionError> {
        let Event(tick, action) = event;
        if tick < self.tick {
            return Err(ActionError::Backwards { found: tick, last: self.tick });
        }
        if self.finished {
            return Err(ActionError::Finished);
        }
        let before = (self.arm, self.needle.as_ref().map(Needle::depth_mm));
        self.act(case, interior, tick, action)?;
        // A view is looked at when something is done in it, or when it is held for a while.
        if let (false, (arm, Some(depth))) = (case.exposures, before)
            && (!matches!(action, Action::Orient { .. }) || tick - self.tick >= LOOK)
            && self.looked.last() != Some(&(arm, depth))
        {
            self.looked.push((arm, depth));
        }
        self.tick = tick;
        Ok(())
    }

    fn act(
        &mut self,
        case: &Case,
        interior: &Interior,
        tick: u32,
        action: Action,
    ) -> Result<(), ActionError> {
        match action {
            Action::Orient { oblique_tenths, tilt_tenths } => {
                self.arm =
                    self.arm.turned_to(f64::from(oblique_tenths) / 10.0, f64::from(tilt_tenths) / 10.0)?;
            }
            Action::RotateImage { deg_tenths } => {
                self.arm = self.arm.with_image_rotation(f64::from(deg_tenths) / 10.0)?
            }
            Action::MoveTable { left_mm_tenths, back_mm_tenths, head_mm_tenths } => {
                self.move_table([left_mm_tenths, back_mm_tenths, head_mm_tenths])?
            }
            Action::Spot => self.expose(tick, 0.0),
            Action::Fluoroscopy { pulses, pulses_per_s } => self.pulse(tick, pulses, pulses_per_s)?,
            Action::Keep { view } => self.kept.push(KeptView { view, arm: self.arm }),
            Action::Recall { view } => {
                self.arm = self.kept(view).ok_or(ActionError::NotKept(view.in_words()))?;
            }
            Action::Mark { u_mm_hundredths, v_mm_hundredths } => {
                self.mark([u_mm_hundredths, v_mm_hundredths])?
            }
            Action::Choose { approach } => self.approach = approach,
            Action::Place { gauge, length_mm } => self.place(case, interior, Device { gauge, length_mm })?,
            Action::Angle { right_deg_tenths, up_deg_tenths } => {
                self.angle(case, interior, right_deg_tenths, up_deg_tenths)?
            }
            Action::Roll { deg_tenths } => self.roll(deg_tenths)?,
            Action::Advance { mm_tenths, spin_percent } => {
                self.advance(case, interior, tick, mm_tenths, spin_percent)?
            }
            Action::Withdraw { mm_tenths } => self.withdraw(interior, mm_tenths)?,
            Action::Remove => self.remove()?,
            Action::Aspirate => self.aspirate(interior)?,
            Action::Inject { ml_hundredths } => self.inject(case, interior, tick, ml_hundredths)?,
            Action::Name { pattern } => {
                let last = self.injected.last_mut().ok_or(ActionError::NothingInjected)?;
                last.named = Some(pattern);
            }
            Action::Point { level, part, side } => self.pointed.push(Label { level, part, side }),
            Action::Finish => self.finished = true,
        }
        Ok(())
    }
}

pub(super) fn in_range(
    what: &'static str,
    found: i64,
    low: i64,
    high: i64,
    unit: &'static str,
) -> Result<(), ActionError> {
    if (low..=high).contains(&found) {
        Ok(())
    } else {
        Err(ActionError::OutOfRange { what, found, low, high, unit })
    }
}

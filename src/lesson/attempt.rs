//! An attempt: a pure state machine. The state after an action depends on the case, the patient's interior and the actions so far, and
//! on nothing else: no clock, no chance. Undo, resume and replay are replays of the log.

use super::action::{Action, ActionError, Event, TICKS_PER_S};
use super::case::Case;
use crate::anatomy::foramen::{Approach, Area};
use crate::anatomy::interior::Interior;
use crate::anatomy::names::Label;
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use crate::needle::aspirate::{blood_at, shows};
use crate::needle::compartment::{Compartment, Pattern, compartment_at};
use crate::needle::contact::{Contact, ContactKind};
use crate::needle::contrast::Bolus;
use crate::needle::device::Device;
use crate::needle::reading::{Drift, coaxial, drift, medial_of_six_mm};
use crate::needle::shaft::Needle;
use crate::view::best_view::ViewKind;
use glam::{DVec2, DVec3};

/// A place marked on a picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// On the detector, [right, up], mm.
    pub uv: DVec2,
    /// The C-arm of that picture.
    pub arm: CArm,
}

/// A view that was kept.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kept {
    /// As which.
    pub view: ViewKind,
    /// From where.
    pub arm: CArm,
}

/// A picture that was taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taken {
    /// When.
    pub tick: u32,
    /// From where.
    pub arm: CArm,
    /// Depth of the needle then, mm; `None` without one.
    pub depth_mm: Option<f64>,
    /// Beam time of fluoroscopy, s; 0 for a spot.
    pub beam_s: f64,
    /// Whether it goes on from the picture before it.
    pub goes_on: bool,
}

/// A contact and when.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Met {
    /// When.
    pub tick: u32,
    /// What.
    pub contact: Contact,
    /// How far the tip was pushed on from there before it was drawn back, mm.
    pub pushed_on_mm: f64,
    /// Whether it was drawn back at all.
    pub drawn_back: bool,
    /// Whether anything more was done with the needle before that.
    pub went_on: bool,
    /// Whether there was a sign of it: a vessel bleeds or does not.
    pub shown: bool,
}

/// A turn of the hub under the skin, as it stood when the needle was next pushed on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// How deep, mm.
    pub depth_mm: f64,
    /// Where tip and line stood to each other.
    pub drift: Drift,
    /// Whether that could be seen: the needle at this depth on a picture near the mark's beam.
    pub seen: bool,
}

impl Turn {
    /// Whether it was decided: drift was there, it was seen, and the notch was turned towards it.
    pub fn decided(&self) -> bool {
        self.seen && self.drift.answered
    }
}

/// An injection.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Injected {
    /// Where and how much.
    pub bolus: Bolus,
    /// Whether suction came first at this place.
    pub aspirated: bool,
    /// Whether all of it was watched live.
    pub live: bool,
    /// Whether some of it was.
    pub watched: bool,
    /// Whether blood stood at the hub.
    pub on_blood: bool,
    /// What the learner called it.
    pub named: Option<Pattern>,
}

/// How straight down the beam the needle has been held.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Held {
    /// Sum of angle times travel, degree mm.
    pub degree_mm: f64,
    /// Travel, mm.
    pub travel_mm: f64,
}

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
    pub kept: Vec<Kept>,
    /// The mark.
    pub mark: Option<Mark>,
    /// The needle.
    pub needle: Option<Needle>,
    /// Stylet in the needle.
    pub stylet: bool,
    /// What the needle has met, in order.
    pub met: Vec<Met>,
    /// Needles that were used.
    pub needles: u32,
    /// Pictures.
    pub taken: Vec<Taken>,
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
    turned: bool,
    /// How far medial of the pedicle's 6 o'clock the tip came before contrast was seen, mm; `None` while it was not deep.
    pub medial_mm: Option<f64>,
    /// Parts pointed at, in order.
    pub pointed: Vec<Label>,
    /// The last pulses of fluoroscopy end at this tick; 0 before the first.
    pulsed_until: u32,
    /// Finished.
    pub finished: bool,
}

/// What suction gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Aspirate {
    Nothing,
    Blood,
    ClearFluid,
}

/// Live imaging is taken to last this long past its last pulse, ticks. A choice, no source.
const LIVE_GRACE: u32 = TICKS_PER_S;
/// A pulse may come this late and still be of the same press, ticks: pictures take their time to draw. A choice, no source.
const LATE_PULSE: u32 = TICKS_PER_S / 2;
/// A view that the C-arm stays in for this long has been looked at, ticks. A choice, no source.
const LOOK: u32 = TICKS_PER_S;
/// Of the way in, this depth on counts for the beam, mm: before it the learner is still aligning. Common practice, no source.
const HELD_FROM_MM: f64 = 8.0;
/// Up to this depth, mm: beyond it bends are corrected by the bevel, not by the hub.
const HELD_TO_MM: f64 = 50.0;
/// A turn of the hub steers from this depth on, mm: before it the notch is only being set.
const TURNED_FROM_MM: f64 = 5.0;
/// A picture shows the tip against its line when it was taken this near to the mark's beam, degrees, and with the needle this near to the
/// depth, mm. Choices, no source.
const SEEN_WITHIN_DEG: f64 = 30.0;
/// See [`SEEN_WITHIN_DEG`].
const SEEN_WITHIN_MM: f64 = 1.0;
/// Furthest the table can be moved, tenths of a millimetre.
const TABLE_RANGE: i32 = 4000;
/// Most contrast at once, hundredths of a millilitre.
const MOST_VOLUME: u32 = 1000;

fn in_range(
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

impl State {
    /// Nothing done yet.
    pub fn new(case: &Case) -> Self {
        Self {
            arm: CArm::default(),
            tick: 0,
            approach: case.approach,
            kept: Vec::new(),
            mark: None,
            needle: None,
            stylet: true,
            met: Vec::new(),
            needles: 0,
            taken: Vec::new(),
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
            Action::Orient { oblique, tilt } => {
                self.arm = self.arm.turned_to(f64::from(oblique) / 10.0, f64::from(tilt) / 10.0)?;
            }
            Action::RotateImage { by } => self.arm = self.arm.with_image_rotation(f64::from(by) / 10.0)?,
            Action::MoveTable { left, back, head } => {
                for moved in [left, back, head] {
                    let range = i64::from(TABLE_RANGE);
                    in_range("a table shift", i64::from(moved), -range, range, "tenths of a millimetre")?;
                }
                self.arm.table_shift_mm =
                    DVec3::new(f64::from(left), f64::from(back), f64::from(head)) / 10.0;
            }
            Action::Spot => self.take(tick, 0.0),
            Action::Fluoroscopy { pulses, rate } => {
                in_range("a run", i64::from(pulses), 1, 18_000, "pulses")?;
                in_range("a pulse rate", i64::from(rate), 1, 30, "pulses a second")?;
                self.take(tick, f64::from(pulses) / f64::from(rate));
                let lasts = (pulses * TICKS_PER_S).div_ceil(rate);
                self.pulsed_until = tick.saturating_add(lasts);
            }
            Action::Keep { view } => self.kept.push(Kept { view, arm: self.arm }),
            Action::Recall { view } => {
                let kept = self.kept(view).ok_or(ActionError::NotKept(view.in_words()))?;
                self.arm = kept;
            }
            Action::Mark { u, v } => {
                let half = (self.arm.half_field_mm() * 100.0) as i64;
                for at in [u, v] {
                    in_range("a mark", i64::from(at), -half, half, "hundredths of a millimetre")?;
                }
                let uv = DVec2::new(f64::from(u), f64::from(v)) / 100.0;
                self.mark = Some(Mark { uv, arm: self.arm });
            }
            Action::Choose { approach } => self.approach = approach,
            Action::Place { gauge, length_mm } => {
                let device = Device { gauge, length_mm }.checked()?;
                let mark = self.mark.ok_or(ActionError::NoMark)?;
                let view = view_of(&mark.arm, case, interior);
                let entry = skin_entry(interior, &view, mark.uv).ok_or(ActionError::OffPatient)?;
                self.needle = Some(Needle::at_skin(device, entry, DVec3::NEG_Y));
                self.needles += 1;
                self.stylet = true;
                self.moved();
                self.held = Held::default();
                self.turns.clear();
                self.turned = false;
            }
            Action::Angle { right, up } => {
                for by in [right, up] {
                    in_range("a turn of the needle", i64::from(by), -900, 900, "tenths of a degree")?;
                }
                let view = self.view(case, interior);
                let needle = self.needle.as_mut().ok_or(ActionError::NoNeedle)?;
                // The hub goes where it is pushed: about the screen's up for right, about its left for up.
                for (axis, by) in [(view.up, right), (-view.right, up)] {
                    needle.re_angle(interior, axis, (f64::from(by) / 10.0).to_radians());
                }
                self.moved();
            }
            Action::Roll { by } => {
                in_range("a turn of the hub", i64::from(by), -36_000, 36_000, "tenths of a degree")?;
                let needle = self.needle.as_mut().ok_or(ActionError::NoNeedle)?;
                needle.turn((f64::from(by) / 10.0).to_radians());
                self.turned |= needle.depth_mm() >= TURNED_FROM_MM;
            }
            Action::Advance { by, spin } => {
                in_range("an advance", i64::from(by), 1, 2000, "tenths of a millimetre")?;
                in_range("a share of spinning", i64::from(spin), 0, 100, "percent")?;
                self.advance(case, interior, tick, f64::from(by) / 10.0, f64::from(spin) / 100.0)?;
            }
            Action::Withdraw { by } => {
                in_range("a withdrawal", i64::from(by), 1, 2000, "tenths of a millimetre")?;
                let needle = self.needle.as_mut().ok_or(ActionError::NoNeedle)?;
                needle.withdraw(interior, f64::from(by) / 10.0);
                for met in &mut self.met {
                    met.drawn_back = true;
                }
                self.moved();
            }
            Action::Remove => {
                self.needle.take().ok_or(ActionError::NoNeedle)?;
                for met in &mut self.met {
                    met.drawn_back = true;
                }
                self.moved();
            }
            Action::Aspirate => {
                let needle = self.needle.as_ref().ok_or(ActionError::NoNeedle)?;
                if needle.depth_mm() == 0.0 {
                    return Err(ActionError::AtSkin);
                }
                let tip = needle.tip().position;
                self.stylet = false;
                self.aspirated = Some(match compartment_at(interior, tip) {
                    Compartment::Intrathecal => Aspirate::ClearFluid,
                    // What stands at the hub comes with suction too.
                    _ if self.blood || blood_at(interior, tip) => Aspirate::Blood,
                    _ => Aspirate::Nothing,
                });
                self.blood = self.aspirated == Some(Aspirate::Blood);
            }
            Action::Inject { volume } => self.inject(case, interior, tick, volume)?,
            Action::Name { pattern } => {
                let last = self.injected.last_mut().ok_or(ActionError::NothingInjected)?;
                last.named = Some(pattern);
            }
            Action::Point { level, part, side } => self.pointed.push(Label { level, part, side }),
            Action::Finish => self.finished = true,
        }
        Ok(())
    }

    fn take(&mut self, tick: u32, beam_s: f64) {
        let depth_mm = self.needle.as_ref().map(Needle::depth_mm);
        // One press of the pedal is one exposure wherever the C-arm goes meanwhile, as in the dose log: an irradiation event of
        // DICOM's lasts as long as the switch is held, and has angles of its end for that (113739, 113740).
        let goes_on = beam_s > 0.0
            && tick <= self.pulsed_until.saturating_add(LATE_PULSE)
            && self.taken.last().is_some_and(|last| last.beam_s > 0.0);
        self.taken.push(Taken { tick, arm: self.arm, depth_mm, beam_s, goes_on });
    }

    /// After any move of the needle what was sucked says nothing more.
    fn moved(&mut self) {
        self.aspirated = None;
        self.blood = false;
    }

    /// Whether the needle at this depth can be seen against its line.
    fn sees(&self, case: &Case, arm: &CArm, depth_mm: f64) -> bool {
        let near = |a: &CArm| {
            let off = |a: f64, b: f64| (a - b).abs().to_degrees() <= SEEN_WITHIN_DEG;
            off(a.oblique, arm.oblique) && off(a.tilt, arm.tilt)
        };
        if case.exposures {
            let here = |t: &&Taken| t.depth_mm.is_some_and(|d| (d - depth_mm).abs() <= SEEN_WITHIN_MM);
            self.taken.iter().rev().take_while(here).any(|t| near(&t.arm))
        } else {
            near(&self.arm)
        }
    }

    fn advance(
        &mut self,
        case: &Case,
        interior: &Interior,
        tick: u32,
        length_mm: f64,
        duty: f64,
    ) -> Result<(), ActionError> {
        // The beam that the needle is held along is that of the mark, wherever the C-arm stands now.
        let along = self.mark.map(|mark| view_of(&mark.arm, case, interior));
        if let (true, Some(needle), Some(mark), Some(view)) = (self.turned, &self.needle, self.mark, &along) {
            let depth_mm = needle.depth_mm();
            let seen = self.sees(case, &mark.arm, depth_mm);
            self.turns.push(Turn { depth_mm, drift: drift(view, mark.uv, needle), seen });
            self.turned = false;
        }
        let needle = self.needle.as_mut().ok_or(ActionError::NoNeedle)?;
        let before = needle.depth_mm();
        let contacts = needle.advance(interior, case.medium, length_mm, duty);
        let pushed = needle.depth_mm() - before;
        let counted = needle.depth_mm().min(HELD_TO_MM) - before.max(HELD_FROM_MM);
        if let Some(view) = along.filter(|_| counted > 0.0) {
            self.held.degree_mm += coaxial(&view, needle).angle_deg * counted;
            self.held.travel_mm += counted;
        }
        for met in self.met.iter_mut().filter(|m| !m.drawn_back) {
            met.pushed_on_mm += pushed;
            met.went_on = true;
        }
        let depth = needle.depth_mm();
        let tip = needle.tip().position;
        self.moved();
        if !self.injected.iter().any(|i| i.watched)
            && let Some(medial) = medial_of_six_mm(interior, case.target.level, case.target.side, tip)
        {
            self.medial_mm = Some(self.medial_mm.map_or(medial, |most| most.max(medial)));
        }
        self.met.extend(contacts.into_iter().map(|contact| Met {
            tick,
            contact,
            pushed_on_mm: if contact.kind == ContactKind::Bone { 0.0 } else { depth - contact.depth_mm },
            drawn_back: false,
            went_on: false,
            shown: contact.kind != ContactKind::Vessel || shows(interior, contact.position, true),
        }));
        // Blood stands at the hub while the tip is in the vessel that it met.
        let bleeds =
            self.met.iter().rev().any(|m| m.tick == tick && m.contact.kind == ContactKind::Vessel && m.shown);
        self.blood = bleeds && compartment_at(interior, tip).vessel().is_some();
        Ok(())
    }

    fn inject(
        &mut self,
        case: &Case,
        interior: &Interior,
        tick: u32,
        volume: u32,
    ) -> Result<(), ActionError> {
        in_range("an injection", i64::from(volume), 1, i64::from(MOST_VOLUME), "hundredths of a millilitre")?;
        let needle = self.needle.as_ref().ok_or(ActionError::NoNeedle)?;
        if needle.depth_mm() == 0.0 {
            return Err(ActionError::AtSkin);
        }
        let tip = needle.tip().position;
        let now_s = seconds(tick);
        // A free picture is live by nature.
        let live = !case.exposures
            || (self.pulsed_until > 0 && tick <= self.pulsed_until.saturating_add(LIVE_GRACE));
        let aspirated = self.aspirated.is_some();
        self.stylet = false;
        for met in self.met.iter_mut().filter(|m| !m.drawn_back) {
            met.went_on = true;
        }
        // More at the same place adds to what is there.
        let last = self.injected.last_mut().filter(|i| i.bolus.tip == tip && i.named.is_none());
        if let Some(there) = last {
            there.bolus.volume_ml += f64::from(volume) / 100.0;
            there.bolus.ended_s = now_s;
            there.live &= live;
            there.watched |= live;
            there.on_blood |= self.blood;
        } else {
            let mut bolus = Bolus::at(interior, tip, now_s);
            bolus.volume_ml = f64::from(volume) / 100.0;
            let (watched, on_blood) = (live, self.blood);
            self.injected.push(Injected { bolus, aspirated, live, watched, on_blood, named: None });
        }
        Ok(())
    }
}

/// Seconds of a tick.
pub fn seconds(tick: u32) -> f64 {
    f64::from(tick) / f64::from(TICKS_PER_S)
}

/// The beam of a C-arm over the case's target.
pub fn view_of(arm: &CArm, case: &Case, interior: &Interior) -> Projection {
    Projection::new(arm, interior.level(case.target.level).centre)
}

/// Where the ray of a point on the detector leaves the skin on its way to the receptor, column frame, mm.
pub fn skin_entry(interior: &Interior, view: &Projection, uv: DVec2) -> Option<DVec3> {
    let ray = view.ray_through(uv);
    interior.trunk.skin.crossings_mm(view.source, ray).map(|[_, leaves]| view.source + ray * leaves)
}

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
    pub fn apply(&mut self, interior: &Interior, event: Event) -> Result<(), ActionError> {
        self.state.apply(&self.case, interior, event)?;
        self.log.push(event);
        self.undone.clear();
        Ok(())
    }

    /// A whole log; stops at the first action that cannot be done.
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

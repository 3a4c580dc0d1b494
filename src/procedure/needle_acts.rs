//! What is done with the needle.

use super::action::ActionError;
use super::beam::{skin_entry, view_of};
use super::case::Case;
use super::record::{ContactRecord, Held, Picture, Turn};
use super::state::{State, in_range};
use crate::anatomy::interior::Interior;
use crate::imaging::c_arm::CArm;
use crate::needle::aspirate::shows;
use crate::needle::compartment::compartment_at;
use crate::needle::contact::ContactKind;
use crate::needle::device::Device;
use crate::needle::reading::{coaxial, drift, medial_of_six_mm};
use crate::needle::shaft::Needle;
use glam::DVec3;

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

impl State {
    /// Sets a needle on the skin over the mark.
    pub(super) fn place(
        &mut self,
        case: &Case,
        interior: &Interior,
        device: Device,
    ) -> Result<(), ActionError> {
        let device = device.checked()?;
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
        Ok(())
    }

    /// Moves the hub on the screen, tenths of a degree about the skin.
    pub(super) fn angle(
        &mut self,
        case: &Case,
        interior: &Interior,
        right_deg_tenths: i32,
        up_deg_tenths: i32,
    ) -> Result<(), ActionError> {
        for deg_tenths in [right_deg_tenths, up_deg_tenths] {
            in_range("a turn of the needle", i64::from(deg_tenths), -900, 900, "tenths of a degree")?;
        }
        let view = self.view(case, interior);
        let needle = self.needle.as_mut().ok_or(ActionError::NoNeedle)?;
        // The hub goes where it is pushed: about the screen's up for right, about its left for up.
        for (axis, deg_tenths) in [(view.up, right_deg_tenths), (-view.right, up_deg_tenths)] {
            needle.re_angle(interior, axis, (f64::from(deg_tenths) / 10.0).to_radians());
        }
        self.moved();
        Ok(())
    }

    /// Turns the hub, tenths of a degree clockwise from above.
    pub(super) fn roll(&mut self, deg_tenths: i32) -> Result<(), ActionError> {
        in_range("a turn of the hub", i64::from(deg_tenths), -36_000, 36_000, "tenths of a degree")?;
        let needle = self.needle.as_mut().ok_or(ActionError::NoNeedle)?;
        needle.turn((f64::from(deg_tenths) / 10.0).to_radians());
        self.turned |= needle.depth_mm() >= TURNED_FROM_MM;
        Ok(())
    }

    /// Pushes the needle, `spin_percent` of the way spinning.
    pub(super) fn advance(
        &mut self,
        case: &Case,
        interior: &Interior,
        tick: u32,
        mm_tenths: u32,
        spin_percent: u8,
    ) -> Result<(), ActionError> {
        in_range("an advance", i64::from(mm_tenths), 1, 2000, "tenths of a millimetre")?;
        in_range("a share of spinning", i64::from(spin_percent), 0, 100, "percent")?;
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
        let contacts = needle.advance(
            interior,
            case.medium,
            f64::from(mm_tenths) / 10.0,
            f64::from(spin_percent) / 100.0,
        );
        let pushed = needle.depth_mm() - before;
        let counted = needle.depth_mm().min(HELD_TO_MM) - before.max(HELD_FROM_MM);
        if let Some(view) = along.filter(|_| counted > 0.0) {
            self.held.degree_mm += coaxial(&view, needle).angle_deg * counted;
            self.held.travel_mm += counted;
        }
        for contact in self.contacts.iter_mut().filter(|m| !m.drawn_back) {
            contact.pushed_on_mm += pushed;
            contact.went_on = true;
        }
        let depth = needle.depth_mm();
        let tip = needle.tip().position;
        self.moved();
        if !self.injected.iter().any(|i| i.watched)
            && let Some(medial) = medial_of_six_mm(interior, case.target.level, case.target.side, tip)
        {
            self.medial_mm = Some(self.medial_mm.map_or(medial, |most| most.max(medial)));
        }
        self.contacts.extend(contacts.into_iter().map(|contact| ContactRecord {
            tick,
            contact,
            pushed_on_mm: if contact.kind == ContactKind::Bone { 0.0 } else { depth - contact.depth_mm },
            drawn_back: false,
            went_on: false,
            shown: contact.kind != ContactKind::Vessel || shows(interior, contact.position, true),
        }));
        // Blood stands at the hub while the tip is in the vessel that it met.
        let bleeds = self
            .contacts
            .iter()
            .rev()
            .any(|m| m.tick == tick && m.contact.kind == ContactKind::Vessel && m.shown);
        self.blood = bleeds && compartment_at(interior, tip).vessel().is_some();
        Ok(())
    }

    /// Draws the needle back along its path, tenths of a millimetre.
    pub(super) fn withdraw(&mut self, interior: &Interior, mm_tenths: u32) -> Result<(), ActionError> {
        in_range("a withdrawal", i64::from(mm_tenths), 1, 2000, "tenths of a millimetre")?;
        let needle = self.needle.as_mut().ok_or(ActionError::NoNeedle)?;
        needle.withdraw(interior, f64::from(mm_tenths) / 10.0);
        self.drawn_back();
        Ok(())
    }

    /// Takes the needle out.
    pub(super) fn remove(&mut self) -> Result<(), ActionError> {
        self.needle.take().ok_or(ActionError::NoNeedle)?;
        self.drawn_back();
        Ok(())
    }

    fn drawn_back(&mut self) {
        for contact in &mut self.contacts {
            contact.drawn_back = true;
        }
        self.moved();
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
            off(a.oblique_rad, arm.oblique_rad) && off(a.tilt_rad, arm.tilt_rad)
        };
        if case.exposures {
            let here = |t: &&Picture| t.depth_mm.is_some_and(|d| (d - depth_mm).abs() <= SEEN_WITHIN_MM);
            self.pictures.iter().rev().take_while(here).any(|t| near(&t.arm))
        } else {
            near(&self.arm)
        }
    }
}

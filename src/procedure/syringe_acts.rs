//! What is done with the syringe: suction and contrast.

use super::action::{ActionError, TICKS_PER_S, seconds};
use super::case::Case;
use super::record::{Aspirate, Injected};
use super::state::{State, in_range};
use crate::anatomy::interior::Interior;
use crate::needle::aspirate::blood_at;
use crate::needle::compartment::{Compartment, compartment_at};
use crate::needle::contrast::Bolus;

/// Live imaging is taken to last this long past its last pulse, ticks. A choice, no source.
const LIVE_GRACE: u32 = TICKS_PER_S;

/// Most contrast at once, hundredths of a millilitre.
const MOST_ML_HUNDREDTHS: u32 = 1000;

impl State {
    /// Sucks on the syringe.
    pub(super) fn aspirate(&mut self, interior: &Interior) -> Result<(), ActionError> {
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
        Ok(())
    }

    /// Injects contrast, hundredths of a millilitre.
    pub(super) fn inject(
        &mut self,
        case: &Case,
        interior: &Interior,
        tick: u32,
        ml_hundredths: u32,
    ) -> Result<(), ActionError> {
        in_range(
            "an injection",
            i64::from(ml_hundredths),
            1,
            i64::from(MOST_ML_HUNDREDTHS),
            "hundredths of a millilitre",
        )?;
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
        for contact in self.contacts.iter_mut().filter(|m| !m.drawn_back) {
            contact.went_on = true;
        }
        // More at the same place adds to what is there.
        let last = self.injected.last_mut().filter(|i| i.bolus.tip == tip && i.named.is_none());
        if let Some(there) = last {
            there.bolus.volume_ml += f64::from(ml_hundredths) / 100.0;
            there.bolus.ended_s = now_s;
            there.live &= live;
            there.watched |= live;
            there.on_blood |= self.blood;
        } else {
            let mut bolus = Bolus::at(interior, tip, now_s);
            bolus.volume_ml = f64::from(ml_hundredths) / 100.0;
            let (watched, on_blood) = (live, self.blood);
            self.injected.push(Injected { bolus, aspirated, live, watched, on_blood, named: None });
        }
        Ok(())
    }
}

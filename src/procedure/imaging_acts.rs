//! What is done with table, pedal and mark.

use super::action::{ActionError, TICKS_PER_S};
use super::record::{Mark, Picture};
use super::state::{State, in_range};
use crate::needle::shaft::Needle;
use glam::{DVec2, DVec3};

/// A pulse may come this late and still be of the same press, ticks: pictures take their time to draw. A choice, no source.
const LATE_PULSE: u32 = TICKS_PER_S / 2;

/// Furthest the table can be moved, tenths of a millimetre.
const TABLE_RANGE_MM_TENTHS: i32 = 4000;

impl State {
    /// Sets the table's shift [left, back, head].
    pub(super) fn move_table(&mut self, mm_tenths: [i32; 3]) -> Result<(), ActionError> {
        for moved in mm_tenths {
            let range = i64::from(TABLE_RANGE_MM_TENTHS);
            in_range("a table shift", i64::from(moved), -range, range, "tenths of a millimetre")?;
        }
        self.arm.table_shift_mm = DVec3::from_array(mm_tenths.map(f64::from)) / 10.0;
        Ok(())
    }

    /// A run of pulses.
    pub(super) fn pulse(&mut self, tick: u32, pulses: u32, pulses_per_s: u32) -> Result<(), ActionError> {
        in_range("a run", i64::from(pulses), 1, 18_000, "pulses")?;
        in_range("a pulse rate", i64::from(pulses_per_s), 1, 30, "pulses a second")?;
        self.expose(tick, f64::from(pulses) / f64::from(pulses_per_s));
        let lasts = (pulses * TICKS_PER_S).div_ceil(pulses_per_s);
        self.pulsed_until = tick.saturating_add(lasts);
        Ok(())
    }

    /// Writes down a picture taken with the C-arm as it stands.
    pub(super) fn expose(&mut self, tick: u32, beam_s: f64) {
        let depth_mm = self.needle.as_ref().map(Needle::depth_mm);
        // One press of the pedal is one exposure wherever the C-arm goes meanwhile, as in the dose log: an irradiation event of
        // DICOM's lasts as long as the switch is held, and has angles of its end for that (113739, 113740).
        let goes_on = beam_s > 0.0
            && tick <= self.pulsed_until.saturating_add(LATE_PULSE)
            && self.pictures.last().is_some_and(|last| last.beam_s > 0.0);
        self.pictures.push(Picture { tick, arm: self.arm, depth_mm, beam_s, goes_on });
    }

    /// Marks a place on the detector, [right, up].
    pub(super) fn mark(&mut self, mm_hundredths: [i32; 2]) -> Result<(), ActionError> {
        let half = (self.arm.half_field_mm() * 100.0) as i64;
        for at in mm_hundredths {
            in_range("a mark", i64::from(at), -half, half, "hundredths of a millimetre")?;
        }
        let [u, v] = mm_hundredths.map(f64::from);
        let uv = DVec2::new(u, v) / 100.0;
        self.mark = Some(Mark { uv, arm: self.arm });
        Ok(())
    }
}

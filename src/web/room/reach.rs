//! How far the C-arm and the table can go before one would hit the other.

use super::super::values::Reach;
use super::{TeachingRoom, tenths, to_js};
use crate::imaging::c_arm::CArm;
use crate::imaging::clearance::Lying;
use glam::DVec3;
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
impl TeachingRoom {
    /// The way from where C-arm and table stand to another place, degrees and mm (`imaging::clearance`): where it ends, and what stopped it.
    #[wasm_bindgen(unchecked_return_type = "values.Reach")]
    pub fn reach(
        &self,
        oblique_deg: f64,
        tilt_deg: f64,
        left_mm: f64,
        up_mm: f64,
        head_mm: f64,
    ) -> Result<JsValue, JsError> {
        let table_shift_mm = DVec3::new(tenths(left_mm), tenths(up_mm), tenths(head_mm));
        let to = CArm { table_shift_mm, ..self.arm.turned_to(tenths(oblique_deg), tenths(tilt_deg))? };
        let centre = self.patient.level(self.target.level).centre;
        let reach = Lying::new(&self.patient.interior.trunk, centre).reach(&self.arm, &to);
        to_js(&Reach {
            oblique_deg: tenths(reach.arm.oblique_rad.to_degrees()),
            tilt_deg: tenths(reach.arm.tilt_rad.to_degrees()),
            table_mm: reach.arm.table_shift_mm.to_array().map(tenths),
            hit: reach.hit,
        })
    }

    /// How far the table has moved the patient, as [`TeachingRoom::set_table_shift`] takes it.
    #[wasm_bindgen(js_name = tableShift)]
    pub fn table_shift(&self) -> Vec<f64> {
        self.arm.table_shift_mm.to_array().to_vec()
    }
}

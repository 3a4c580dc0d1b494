//! The handle's part for the film at rest: the free picture at the screen's own sharpness, made in steps so that a hand that begins to move
//! never waits for it.

use super::{TeachingRoom, film_pixels, put_grey};
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use crate::imaging::radiograph::{Radiograph, Scene};
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d;

/// Rows that a step develops.
const ROWS: usize = 64;

/// A picture in the making.
#[derive(Debug, Default)]
pub(super) struct Still {
    radiograph: Option<Radiograph>,
    view: Option<Projection>,
}

#[wasm_bindgen]
impl TeachingRoom {
    /// Begins a free picture of what stands under the C-arm now; `pixels` as in `drawRadiograph`, `tick` as in `showNeedleAt`.
    #[wasm_bindgen(js_name = beginStill)]
    pub fn begin_still(&mut self, pixels: u32, tick: Option<u32>) -> Result<(), JsValue> {
        let pixels = film_pixels(Some(pixels))?;
        self.show_needle_at(tick);
        let view = self.view_of(&self.arm);
        let scene = Scene { patient: &self.patient, inclusions: self.procedure.inclusions() };
        let mut radiograph = Radiograph::new(&CArm::default().sampled(pixels));
        radiograph.begin(scene, &view);
        self.still = Still { radiograph: Some(radiograph), view: Some(view) };
        Ok(())
    }

    /// Does the next step of it, a few milliseconds; `true` once only [`Self::show_still`] is left. Begins nothing by itself: after a change of
    /// patient, C-arm or needle it goes on with what stood when it began, so begin anew.
    #[wasm_bindgen(js_name = stepStill)]
    pub fn step_still(&mut self) -> bool {
        let scene = Scene { patient: &self.patient, inclusions: self.procedure.inclusions() };
        match (&mut self.still.radiograph, &self.still.view) {
            (Some(radiograph), Some(view)) => {
                !radiograph.add_next(scene, view) && !radiograph.develop_some(ROWS)
            }
            _ => true,
        }
    }

    /// Draws it as `drawRadiograph` does. Nothing where none was begun.
    #[wasm_bindgen(js_name = showStill)]
    pub fn show_still(&mut self, canvas: &CanvasRenderingContext2d, bone_dark: bool) -> Result<(), JsValue> {
        let look = self.look(bone_dark);
        // Taken out, so that its memory is free for a spot picture.
        let Some(mut radiograph) = std::mem::take(&mut self.still).radiograph else { return Ok(()) };
        radiograph.develop();
        let size = radiograph.size();
        put_grey(canvas, &mut self.pixels, radiograph.show_attenuation(&look), size)
    }
}

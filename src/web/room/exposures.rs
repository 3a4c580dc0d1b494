//! The handle's part for exposures: taking them, showing the last one, and what they cost.
//!
//! One [`Radiograph`] a magnification mode and kind of exposure, made when it is first asked for: the detector's pixels belong to both. A spot
//! picture has the detector's own (`SPOT_PIXELS`), a pulse of fluoroscopy four of them put together.

use super::super::values::{BeamChoices, DicomRecord, DoseReadout};
use super::{TeachingRoom, put_grey, to_js, understood};
use crate::imaging::dose::{DoseLog, LABEL};
use crate::imaging::exposure::{
    BeamSettings, ExposureKind, MAGNIFICATIONS, OPEN_RANGE, PULSE_RATES_PER_S, Technique,
};
use crate::imaging::projection::Projection;
use crate::imaging::radiograph::{Radiograph, Scene};
use crate::procedure::action::Action;
use crate::view::criteria::Target;
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d;

/// Most pulses in one call: a second of the fastest rate.
const MOST_PULSES: u32 = 30;

/// The session's exposures.
#[derive(Debug, Default)]
pub(super) struct Exposures {
    /// By magnification, fluoroscopy before spot.
    modes: [Option<Radiograph>; 2 * MAGNIFICATIONS.len()],
    log: DoseLog,
    count: u64,
    last: Option<Technique>,
    picture: Option<LastPicture>,
    /// Settings of the run of fluoroscopy that is on.
    run: Option<BeamSettings>,
}

/// Where the last picture was taken.
#[derive(Clone, Copy, Debug)]
struct LastPicture {
    mode: usize,
    view: Projection,
    target: Target,
}

impl Exposures {
    /// The last picture no longer shows what is on the table.
    pub(super) fn forget_picture(&mut self) {
        self.release();
        self.picture = None;
    }

    fn release(&mut self) {
        self.run = None;
        self.log.release();
        for radiograph in self.modes.iter_mut().flatten() {
            radiograph.release();
        }
    }
}

#[wasm_bindgen]
impl TeachingRoom {
    /// One spot picture, or `pulses` (1 to 30) more pulses of a run of fluoroscopy, drawn into the top left of a canvas.
    /// `settings` as in `imaging::exposure::BeamSettings`; what it leaves out is that type's default.
    pub fn expose(
        &mut self,
        canvas: &CanvasRenderingContext2d,
        #[wasm_bindgen(unchecked_param_type = "Partial<values.BeamSettings>")] settings: JsValue,
        pulses: u32,
        bone_dark: bool,
        tick: Option<u32>,
    ) -> Result<(), JsValue> {
        let settings: BeamSettings = understood("exposure settings", &settings)?;
        let settings = settings.checked().map_err(JsError::from)?;
        if !(1..=MOST_PULSES).contains(&pulses) {
            let text = format!("{pulses} pulses at once are not possible: allowed are 1 to {MOST_PULSES}");
            return Err(JsError::new(&text).into());
        }
        let pulses = if settings.kind == ExposureKind::Spot { 1 } else { pulses };
        // `checked` lets only the table's modes through.
        let mode = MAGNIFICATIONS.iter().position(|&m| m == settings.magnification).unwrap_or(0);
        let mode = 2 * mode + usize::from(settings.kind == ExposureKind::Spot);
        let arm = settings.on_detector(&self.arm);
        let view = self.view_of(&arm);
        let look = self.look(bone_dark);
        let tick = tick.unwrap_or(self.procedure.attempt.state.tick);
        if !self.procedure.attempt.state.finished {
            let action = match settings.kind {
                ExposureKind::Spot => Action::Spot,
                ExposureKind::Fluoroscopy => {
                    Action::Fluoroscopy { pulses, pulses_per_s: settings.pulses_per_s }
                }
            };
            self.do_action(tick, action)?;
        }
        self.show_needle_at(Some(tick));
        let scene = Scene { patient: &self.patient, inclusions: self.procedure.inclusions() };
        let exposures = &mut self.exposures;
        if exposures.run != Some(settings) {
            exposures.release();
        }
        exposures.count += 1;
        let radiograph = exposures.modes[mode].get_or_insert_with(|| Radiograph::new(&arm));
        let exposure = radiograph.expose(scene, &view, &look, &settings, pulses, exposures.count);
        put_grey(canvas, &mut self.pixels, radiograph.grey(), radiograph.size())?;
        exposures.last = Some(exposure.technique);
        exposures.picture = Some(LastPicture { mode, view, target: self.target });
        exposures.run = (settings.kind == ExposureKind::Fluoroscopy).then_some(settings);
        exposures.log.record(exposure.irradiation);
        Ok(())
    }

    /// Ends a run of fluoroscopy: its last picture stays.
    pub fn release(&mut self) {
        self.exposures.release();
    }

    /// Draws the last exposure again, as [`TeachingRoom::expose`] did.
    #[wasm_bindgen(js_name = showHeld)]
    pub fn show_held(&mut self, canvas: &CanvasRenderingContext2d, bone_dark: bool) -> Result<(), JsValue> {
        let look = self.look(bone_dark);
        let held = self.exposures.picture.and_then(|picture| self.exposures.modes[picture.mode].as_mut());
        let radiograph = held.ok_or_else(no_picture)?;
        radiograph.show_held(&look);
        put_grey(canvas, &mut self.pixels, radiograph.grey(), radiograph.size())
    }

    /// Draws the outlines of the last exposure, wherever the C-arm stands by now; `style` as in `drawOutlines`.
    #[wasm_bindgen(js_name = drawHeldOutlines)]
    pub fn draw_held_outlines(
        &mut self,
        canvas: &CanvasRenderingContext2d,
        #[wasm_bindgen(unchecked_param_type = "values.OutlineStyle")] style: JsValue,
    ) -> Result<(), JsValue> {
        let LastPicture { view, target, .. } = self.exposures.picture.ok_or_else(no_picture)?;
        let style = understood("outline style", &style)?;
        self.outlines.draw(canvas, &self.patient, target, &view, &style)
    }

    /// The part whose outline is nearest to a place on the detector (mm, right and up of its middle) in the picture that is shown,
    /// live or the last exposure: `{level, part, side}`, or null when there is none within `reach_mm`.
    #[wasm_bindgen(js_name = partAt, unchecked_return_type = "values.Label | null")]
    pub fn part_at(&mut self, u_mm: f64, v_mm: f64, reach_mm: f64, held: bool) -> Result<JsValue, JsValue> {
        let view = self.shown_view(held)?;
        Ok(to_js(&self.outlines.nearest(&self.patient, &view, [u_mm, v_mm], reach_mm))?)
    }

    /// The parts in the picture that is shown that a lesson can ask for, bone by bone: `[{level, part, side}]`.
    #[wasm_bindgen(js_name = partsShown, unchecked_return_type = "values.Label[]")]
    pub fn parts_shown(&mut self, held: bool) -> Result<JsValue, JsValue> {
        let view = self.shown_view(held)?;
        Ok(to_js(&self.outlines.parts(&self.patient, &view))?)
    }

    /// The record's sums (`imaging::dose::DoseTotals`) and `last`, the technique of the last exposure or null.
    #[wasm_bindgen(unchecked_return_type = "values.DoseReadout")]
    pub fn dose(&self) -> Result<JsValue, JsError> {
        to_js(&DoseReadout { totals: self.exposures.log.totals(), last: self.exposures.last })
    }

    /// The record in DICOM's terms and units: `{statement, items}`.
    #[wasm_bindgen(js_name = doseDicom, unchecked_return_type = "values.DicomRecord")]
    pub fn dose_dicom(&self) -> Result<JsValue, JsError> {
        to_js(&DicomRecord { statement: LABEL, items: self.exposures.log.dicom(&self.arm) })
    }

    /// Begins a new record. The last picture stays.
    #[wasm_bindgen(js_name = resetDose)]
    pub fn reset_dose(&mut self) {
        self.exposures.release();
        self.exposures.log = DoseLog::default();
        self.exposures.last = None;
    }

    /// What the beam can be set to: `{pulses_per_s, magnification, open}`, `open` as lowest and highest share of the field.
    #[wasm_bindgen(js_name = beamChoices, unchecked_return_type = "values.BeamChoices")]
    pub fn beam_choices() -> Result<JsValue, JsError> {
        to_js(&BeamChoices {
            pulses_per_s: PULSE_RATES_PER_S,
            magnification: MAGNIFICATIONS,
            open: OPEN_RANGE,
        })
    }
}

impl TeachingRoom {
    /// The view of the picture that is shown: live, or the last exposure's.
    fn shown_view(&self, held: bool) -> Result<Projection, JsValue> {
        if !held {
            return Ok(self.view_of(&self.arm));
        }
        self.exposures.picture.map(|picture| picture.view).ok_or_else(no_picture)
    }
}

fn no_picture() -> JsValue {
    JsError::new("there is no picture yet: make an exposure first").into()
}

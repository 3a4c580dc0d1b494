//! The page's handle on patient, C-arm, picture and needle. No state but what the engine needs, no logic but calls; whatever the page
//! passes in is checked by the layers below and comes back as one sentence in a JS `Error`.

mod exposures;
mod film_data;
mod outline_paint;
mod parts_seen;
mod procedure;
mod reach;
mod still;

use super::canvas::put_grey;
use super::exchange::{patients, to_js, understood};
use super::values::{AskedPatient, Ranges};
use crate::anatomy::names::Level;
use crate::anatomy::patient::{Patient, PatientBuilder, PatientSpec};
use crate::imaging::c_arm::CArm;
use crate::imaging::projection::Projection;
use crate::imaging::radiograph::{Look, Radiograph, Scene};
use crate::score::target_centred::OFF_MM;
use crate::view::criteria::Target;
use crate::view::report;
use exposures::Exposures;
use glam::DVec3;
use outline_paint::OutlinePaint;
use procedure::Procedure;
use still::Still;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d;

/// A patient on the table under a C-arm, and what is aimed at.
#[wasm_bindgen]
#[derive(Debug)]
pub struct TeachingRoom {
    patient: Patient,
    target: Target,
    arm: CArm,
    /// The live picture, at the size that was asked for last.
    radiograph: Radiograph,
    still: Still,
    /// The picture as the canvas wants it, RGBA.
    pixels: Vec<u8>,
    outlines: OutlinePaint,
    exposures: Exposures,
    procedure: Procedure,
    /// A patient in the making.
    coming: Option<PatientBuilder>,
    /// Window width against the automatic one, and how much brighter, in automatic widths.
    window: (f32, f32),
}

impl TeachingRoom {
    fn look(&self, bone_dark: bool) -> Look {
        let (window, brightness) = self.window;
        // Where bone is white, a brighter picture has its window lower.
        Look { bone_dark, window, level: if bone_dark { brightness } else { -brightness }, ..Look::default() }
    }
}

#[wasm_bindgen]
impl TeachingRoom {
    /// Shapes the patient and sets the C-arm straight above the target. `asked` may be left out: `{seed, changed: {field: number}}` as in
    /// a lesson's `patient` changes the one of that name.
    #[wasm_bindgen(constructor)]
    pub fn new(
        patient: &str,
        level: &str,
        side: &str,
        #[wasm_bindgen(unchecked_optional_param_type = "values.AskedPatient")] asked: JsValue,
    ) -> Result<Self, JsValue> {
        let spec = asked_patient(patient, &asked)?;
        let target = target(level, side)?;
        let arm = CArm::default();
        Ok(Self {
            patient: Patient::new(&spec),
            target,
            arm,
            radiograph: Radiograph::new(&arm),
            still: Still::default(),
            pixels: Vec::new(),
            outlines: OutlinePaint::default(),
            exposures: Exposures::default(),
            procedure: Procedure::new(target),
            coming: None,
            window: (1.0, 0.0),
        })
    }

    /// Another patient under the same C-arm, `asked` as in the constructor. The last exposure is not of this one, so it goes.
    #[wasm_bindgen(js_name = setPatient)]
    pub fn set_patient(
        &mut self,
        name: &str,
        #[wasm_bindgen(unchecked_optional_param_type = "values.AskedPatient")] asked: JsValue,
    ) -> Result<(), JsValue> {
        self.patient = Patient::new(&asked_patient(name, &asked)?);
        self.exposures.forget_picture();
        self.begin_again();
        Ok(())
    }

    /// Plans another patient, `asked` as in the constructor; [`Self::shape_bone`] then makes it a bone a call, while the last one stays.
    #[wasm_bindgen(js_name = beginPatient)]
    pub fn begin_patient(
        &mut self,
        name: &str,
        #[wasm_bindgen(unchecked_optional_param_type = "values.AskedPatient")] asked: JsValue,
    ) -> Result<(), JsValue> {
        self.coming = Some(PatientBuilder::new(&asked_patient(name, &asked)?));
        Ok(())
    }

    /// Shapes the next bone of the patient that was begun. Returns the share done; at 1 the patient has been changed.
    #[wasm_bindgen(js_name = shapeBone)]
    pub fn shape_bone(&mut self) -> f64 {
        let Some(coming) = &mut self.coming else { return 1.0 };
        let share = coming.step();
        if share >= 1.0
            && let Some(whole) = self.coming.take()
        {
            self.patient = whole.finish();
            self.exposures.forget_picture();
            self.begin_again();
        }
        share
    }

    /// Another level or side; the isocentre moves to it.
    #[wasm_bindgen(js_name = setTarget)]
    pub fn set_target(&mut self, level: &str, side: &str) -> Result<(), JsError> {
        self.target = target(level, side)?;
        self.begin_again();
        Ok(())
    }

    /// Degrees: oblique to the patient's left, tilt cephalad.
    #[wasm_bindgen(js_name = setOrientation)]
    pub fn set_orientation(&mut self, oblique_deg: f64, tilt_deg: f64) -> Result<(), JsError> {
        self.arm = self.arm.turned_to(tenths(oblique_deg), tenths(tilt_deg))?;
        Ok(())
    }

    /// Degrees clockwise.
    #[wasm_bindgen(js_name = setImageRotation)]
    pub fn set_image_rotation(&mut self, degrees: f64) -> Result<(), JsError> {
        self.arm = self.arm.with_image_rotation(tenths(degrees))?;
        Ok(())
    }

    /// Contrast against the automatic window (0.5 to 2) and brightness (-0.5 to 0.5, in automatic window widths).
    #[wasm_bindgen(js_name = setWindow)]
    pub fn set_window(&mut self, contrast: f32, brightness: f32) -> Result<(), JsError> {
        // A NaN is inside no range.
        if !((0.5..=2.0).contains(&contrast) && (-0.5..=0.5).contains(&brightness)) {
            return Err(JsError::new(&format!(
                "contrast {contrast} with brightness {brightness} is not possible: allowed are 0.5 to 2 and -0.5 to 0.5"
            )));
        }
        self.window = (1.0 / contrast, brightness);
        Ok(())
    }

    /// How far the table has moved the patient: to the patient's left, up and to the head, mm.
    #[wasm_bindgen(js_name = setTableShift)]
    pub fn set_table_shift(&mut self, left_mm: f64, up_mm: f64, head_mm: f64) -> Result<(), JsError> {
        // A NaN is inside no range.
        if ![left_mm, up_mm, head_mm].iter().all(|mm| mm.abs() <= TABLE_RANGE_MM) {
            return Err(JsError::new(&format!(
                "table shift of {left_mm}, {up_mm}, {head_mm} mm is not possible: allowed are -{TABLE_RANGE_MM} to {TABLE_RANGE_MM} mm each way"
            )));
        }
        self.arm.table_shift_mm = DVec3::new(tenths(left_mm), tenths(up_mm), tenths(head_mm));
        Ok(())
    }

    /// Draws the free live picture on a canvas, which takes its size, with what `showNeedleAt` has put there of needle and contrast.
    /// `pixels`: along an edge, 128 to 1024 in steps of 32; 512 when it is left out.
    #[wasm_bindgen(js_name = drawRadiograph)]
    pub fn draw_radiograph(
        &mut self,
        canvas: &CanvasRenderingContext2d,
        bone_dark: bool,
        pixels: Option<u32>,
    ) -> Result<(), JsValue> {
        let pixels = film_pixels(pixels)?;
        if self.radiograph.size() != pixels {
            self.radiograph = Radiograph::new(&CArm::default().sampled(pixels));
        }
        let view = self.view_of(&self.arm);
        let look = self.look(bone_dark);
        let size = self.radiograph.size();
        let scene = Scene { patient: &self.patient, inclusions: self.procedure.inclusions() };
        put_grey(canvas, &mut self.pixels, self.radiograph.render(scene, &view, &look), size)
    }

    /// Draws the outlines over a square canvas of any size; `style` as in `outline_paint::Style`.
    #[wasm_bindgen(js_name = drawOutlines)]
    pub fn draw_outlines(
        &mut self,
        canvas: &CanvasRenderingContext2d,
        #[wasm_bindgen(unchecked_param_type = "values.OutlineStyle")] style: JsValue,
    ) -> Result<(), JsValue> {
        let style = understood("outline style", &style)?;
        let view = self.view_of(&self.arm);
        self.outlines.draw(canvas, &self.patient, self.target, &view, &style)
    }

    /// The whole report, as a plain object (see `view::report::Report`), with the way in and the limits of what is open.
    #[wasm_bindgen(unchecked_return_type = "values.Report")]
    pub fn report(&self) -> Result<JsValue, JsError> {
        let attempt = &self.procedure.attempt;
        to_js(&report::report(&self.patient, &attempt.case.asked(attempt.state.approach), &self.arm))
    }

    /// The patients that can be asked for: `[{name, sentence}]`.
    #[wasm_bindgen(unchecked_return_type = "values.PatientEntry[]")]
    pub fn patients() -> Result<JsValue, JsError> {
        to_js(&patients())
    }

    /// The levels that can be aimed at, cranial to caudal.
    #[wasm_bindgen(unchecked_return_type = "values.Level[]")]
    pub fn levels() -> Vec<String> {
        Level::TARGETS.map(|level| level.name().to_owned()).to_vec()
    }

    /// The ranges of the controls: `{oblique_deg, tilt_deg, rotation_deg}`, each `[low, high]`.
    #[wasm_bindgen(unchecked_return_type = "values.Ranges")]
    pub fn ranges() -> Result<JsValue, JsError> {
        to_js(&Ranges {
            oblique_deg: CArm::OBLIQUE_RANGE_DEG,
            tilt_deg: CArm::TILT_RANGE_DEG,
            rotation_deg: (-180.0, 180.0),
            table_mm: (-TABLE_RANGE_MM, TABLE_RANGE_MM),
            middle_mm: OFF_MM.full,
        })
    }

    /// The projection of a machine set over the target.
    fn view_of(&self, arm: &CArm) -> Projection {
        Projection::new(arm, self.patient.level(self.target.level).centre)
    }
}

/// How far the table goes each way, mm. Common practice, no source.
const TABLE_RANGE_MM: f64 = 150.0;

/// To the nearest tenth, as the log keeps it.
fn tenths(value: f64) -> f64 {
    libm::round(value * 10.0) / 10.0
}

fn target(level: &str, side: &str) -> Result<Target, JsError> {
    Ok(Target { level: level.parse()?, side: side.parse()? })
}

/// The size of a live picture, or a sentence about it.
fn film_pixels(asked: Option<u32>) -> Result<usize, JsError> {
    let pixels = asked.unwrap_or(512);
    if (128..=1024).contains(&pixels) && pixels.is_multiple_of(32) {
        return Ok(pixels as usize);
    }
    Err(JsError::new(&format!(
        "a film of {pixels} pixels is not possible: allowed are 128 to 1024 in steps of 32"
    )))
}

/// The patient of a name, changed as asked (nothing when undefined).
fn asked_patient(name: &str, asked: &JsValue) -> Result<PatientSpec, JsValue> {
    let AskedPatient { seed, changed } =
        if asked.is_undefined() { AskedPatient::default() } else { understood("patient", asked)? };
    Ok(PatientSpec::asked(name, seed.map(u64::from), &changed).map_err(JsError::from)?)
}

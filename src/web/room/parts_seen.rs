//! The handle's part for the drawings of C-arm and patient: the bones as an onlooker sees them, and the place that is aimed at.

use super::super::values::PartLine;
use super::{TeachingRoom, to_js};
use crate::anatomy::names::Level;
use crate::imaging::onlooker::{onlooker, parts_seen};
use crate::procedure::beam::view_of;
use crate::procedure::pointing::{bone_part, has_part};
use glam::DVec3;
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
impl TeachingRoom {
    /// Lines of the target's bone and its neighbours in parallel projection: `[[{level, part, side}, [x, y, x, y, …]], …]`, tenths of a
    /// mm from the target's centre along the two screen axes. `axes`: right and up in the patient's frame, three numbers each; lines
    /// are cut `half_mm` from the centre. Costs about as much as the picture's outlines.
    #[wasm_bindgen(js_name = partsFrom, unchecked_return_type = "values.PartLine[]")]
    pub fn parts_from(&self, axes: &[f64], half_mm: f64) -> Result<JsValue, JsValue> {
        let centre = self.patient.level(self.target.level).centre;
        let view = match axes {
            &[a, b, c, d, e, f] => onlooker(centre, DVec3::new(a, b, c), DVec3::new(d, e, f), half_mm),
            _ => None,
        };
        let view = view.ok_or_else(|| JsError::new("an onlooker needs two axes of three numbers each"))?;
        let wanted = |level: Level| level.index().abs_diff(self.target.level.index()) <= 1;
        let tenths = |x: f32| libm::roundf(x * 10.0) as i32;
        let lines: Vec<PartLine> = parts_seen(&self.patient, &view)
            .into_iter()
            .map(|o| (bone_part(o.label), o.points))
            .filter(|(label, _)| wanted(label.level) && has_part(label.level, label.part))
            .map(|(label, points)| PartLine(label, points.iter().flatten().map(|&x| tenths(x)).collect()))
            .collect();
        Ok(to_js(&lines)?)
    }

    /// What is aimed at, mm from the target's centre in the patient's frame: where the mark's beam meets the plane of the area, or, before
    /// there is a mark, the area's middle. Empty where there is neither.
    #[wasm_bindgen(js_name = aimPoint)]
    pub fn aim_point(&self) -> Vec<f64> {
        let (attempt, interior) = (&self.procedure.attempt, &self.patient.interior);
        let Some(area) = attempt.state.area(&attempt.case, interior) else { return Vec::new() };
        let marked = attempt.state.mark.and_then(|mark| {
            let beam = view_of(&mark.arm, &attempt.case, interior);
            area.meets(beam.source, beam.ray_through(mark.uv))
        });
        let point = marked.unwrap_or_else(|| area.centre()) - self.patient.level(self.target.level).centre;
        point.to_array().to_vec()
    }
}

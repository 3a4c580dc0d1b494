//! Strokes the outlines on a canvas: every bone faint, the target's posterior elements and the articular process of the level
//! below strong, told apart by width and dash as well as by colour.

use crate::anatomy::names::{Label, Level, Part};
use crate::anatomy::patient::Patient;
use crate::geometry::polyline::Point;
use crate::imaging::outline::OutlineTracer;
use crate::imaging::projection::Projection;
use crate::view::criteria::Target;
use serde::Deserialize;
use wasm_bindgen::JsValue;
use web_sys::js_sys::Array;
use web_sys::{CanvasRenderingContext2d, Path2d};

/// How a kind of line is stroked.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Pen {
    /// CSS colour.
    colour: String,
    /// Canvas pixels.
    width_px: f64,
    /// Dash and gap, canvas pixels; empty for a solid line.
    dash_px: Vec<f64>,
}

/// How the outlines look on a canvas of `canvas_px` by `canvas_px` pixels.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Style {
    canvas_px: f64,
    /// Drawn under the strong lines, `width_px` wider on either side, so that they show on dark and light.
    halo: Pen,
    context: Pen,
    target: Pen,
    posterior: Pen,
    below: Pen,
}

/// The kinds of line, in the order in which they are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    /// Every other bone.
    Context,
    /// The target's body and plates.
    Target,
    /// The target's posterior elements; of S1 the whole sacrum.
    Posterior,
    /// The superior articular process of the level below, on the target's side.
    Below,
}

const KINDS: [Kind; 4] = [Kind::Context, Kind::Target, Kind::Posterior, Kind::Below];

/// Points nearer than this to the last one drawn, in canvas pixels, add nothing to the eye and much to the stroke's cost.
const LEAST_STEP_PX: f64 = 0.75;

/// Buffers of the outlines from frame to frame.
#[derive(Debug, Default)]
pub(super) struct OutlinePaint {
    tracer: OutlineTracer,
}

impl OutlinePaint {
    /// Traces and strokes.
    pub(super) fn draw(
        &mut self,
        canvas: &CanvasRenderingContext2d,
        patient: &Patient,
        target: Target,
        view: &Projection,
        style: &Style,
    ) -> Result<(), JsValue> {
        let paths = [Path2d::new()?, Path2d::new()?, Path2d::new()?, Path2d::new()?];
        let half = style.canvas_px / 2.0;
        let scale = half / view.half_field_mm;
        for outline in self.tracer.trace(patient, view) {
            let path = &paths[kind_of(outline.label, target) as usize];
            add_line(path, &outline.points, outline.closed(), half, scale);
        }
        canvas.save();
        canvas.set_line_join("round");
        for (kind, path) in KINDS.into_iter().zip(&paths) {
            let pen = match kind {
                Kind::Context => &style.context,
                Kind::Target => &style.target,
                Kind::Posterior => &style.posterior,
                Kind::Below => &style.below,
            };
            let dashes = Array::from_iter(pen.dash_px.iter().map(|&d| JsValue::from_f64(d)));
            if matches!(kind, Kind::Posterior | Kind::Below) {
                canvas.set_line_dash(&Array::new())?;
                canvas.set_stroke_style_str(&style.halo.colour);
                canvas.set_line_width(pen.width_px + 2.0 * style.halo.width_px);
                canvas.stroke_with_path(path);
            }
            canvas.set_line_dash(&dashes)?;
            canvas.set_stroke_style_str(&pen.colour);
            canvas.set_line_width(pen.width_px);
            canvas.stroke_with_path(path);
        }
        canvas.restore();
        Ok(())
    }
}

fn kind_of(label: Label, target: Target) -> Kind {
    let below_side = |side| side == Some(target.side);
    match label.part {
        // The wings count to S1 and the ribs to T12, but neither is aimed at.
        Part::IliacWing | Part::IliacCrest | Part::Rib => Kind::Context,
        Part::SuperiorArticularProcess
            if target.level.below() == Some(label.level) && below_side(label.side) =>
        {
            Kind::Below
        }
        _ if label.level != target.level => Kind::Context,
        // The sacrum is one piece around its foramina: split, their rims would change looks every few millimetres.
        _ if target.level == Level::S1 => Kind::Posterior,
        Part::Body | Part::UpperEndPlate | Part::LowerEndPlate => Kind::Target,
        _ => Kind::Posterior,
    }
}

/// Adds a line to a path in canvas pixels, leaving out points that nobody could tell apart.
fn add_line(path: &Path2d, points: &[Point], closed: bool, half: f64, scale: f64) {
    let at = |p: &Point| [half + f64::from(p[0]) * scale, half - f64::from(p[1]) * scale];
    let Some((first, rest)) = points.split_first() else { return };
    let mut last = at(first);
    path.move_to(last[0], last[1]);
    for (i, point) in rest.iter().enumerate() {
        let [x, y] = at(point);
        let far = (x - last[0]).abs().max((y - last[1]).abs()) >= LEAST_STEP_PX;
        if far || i + 1 == rest.len() {
            path.line_to(x, y);
            last = [x, y];
        }
    }
    if closed {
        path.close_path();
    }
}

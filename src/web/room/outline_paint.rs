//! Strokes the outlines on a canvas: every bone faint, the target's posterior elements and the articular process of the level
//! below strong, told apart by width and dash as well as by colour.

use super::super::values::{Chosen, Pen, Style};
use crate::anatomy::names::{Label, Level, Part};
use crate::anatomy::patient::Patient;
use crate::geometry::polyline::{Point, needed_points};
use crate::imaging::outline::{Outline, OutlineTracer};
use crate::imaging::projection::Projection;
use crate::procedure::pointing::{bone_part, has_part};
use crate::view::criteria::Target;
use glam::DVec2;
use std::collections::BTreeMap;
use wasm_bindgen::JsValue;
use web_sys::js_sys::Array;
use web_sys::{CanvasRenderingContext2d, Path2d};

impl Chosen {
    fn is(&self, label: Label) -> bool {
        let label = bone_part(label);
        (self.level, self.part, self.side) == (label.level, label.part, label.side)
    }
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

/// Points without which a line runs elsewhere by less than this, in canvas pixels, add nothing to the eye and much to the stroke's cost.
const LEAST_OFF_PX: f64 = 0.2;

/// Buffers of the outlines from frame to frame.
#[derive(Debug, Default)]
pub(super) struct OutlinePaint {
    tracer: OutlineTracer,
    needed: Vec<usize>,
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
        let chosen_path = Path2d::new()?;
        let half = style.canvas_px / 2.0;
        let scale = half / view.half_field_mm;
        for outline in self.tracer.trace(patient, view) {
            let chosen = style.chosen.as_ref().is_some_and(|chosen| chosen.is(outline.label));
            let path = if chosen { &chosen_path } else { &paths[kind_of(outline.label, target) as usize] };
            needed_points(&outline.points, (LEAST_OFF_PX / scale) as f32, &mut self.needed);
            add_line(path, self.needed.iter().map(|&i| outline.points[i]), outline.closed(), half, scale);
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
            let strong = matches!(kind, Kind::Posterior | Kind::Below);
            stroke(canvas, path, pen, strong.then_some(&style.halo))?;
        }
        if let Some(Chosen { pen, .. }) = &style.chosen {
            stroke(canvas, &chosen_path, pen, Some(&style.halo))?;
        }
        canvas.restore();
        Ok(())
    }

    /// The part whose outline runs nearest to a place on the detector, of those that can be asked for, within `reach_mm`.
    pub(super) fn nearest(
        &mut self,
        patient: &Patient,
        view: &Projection,
        at_mm: [f64; 2],
        reach_mm: f64,
    ) -> Option<Label> {
        let named = |o: Outline| Outline { label: bone_part(o.label), ..o };
        let askable = self.tracer.trace(patient, view).into_iter().map(named);
        let askable = askable.filter(|o| has_part(o.label.level, o.label.part));
        let far = |o: &Outline| {
            o.points.windows(2).map(|w| distance_mm(at_mm, w[0], w[1])).fold(f64::INFINITY, f64::min)
        };
        let nearest = askable.map(|o| (far(&o), o.label)).min_by(|a, b| a.0.total_cmp(&b.0));
        nearest.filter(|(distance, _)| *distance <= reach_mm).map(|(_, label)| label)
    }

    /// The parts that can be asked for and whose outlines are in the picture, from the screen's left to its right, bone by bone.
    pub(super) fn parts(&mut self, patient: &Patient, view: &Projection) -> Vec<Label> {
        let mut middles: BTreeMap<Label, (f64, usize)> = BTreeMap::new();
        for outline in self.tracer.trace(patient, view) {
            if has_part(outline.label.level, outline.label.part) {
                let (sum, count) = middles.entry(outline.label).or_default();
                *sum += outline.points.iter().map(|p| f64::from(p[0])).sum::<f64>();
                *count += outline.points.len();
            }
        }
        let mut parts: Vec<(Label, f64)> =
            middles.into_iter().map(|(label, (sum, count))| (label, sum / count as f64)).collect();
        parts.sort_by(|a, b| a.0.level.cmp(&b.0.level).then(a.1.total_cmp(&b.1)));
        parts.into_iter().map(|(label, _)| label).collect()
    }
}

fn stroke(
    canvas: &CanvasRenderingContext2d,
    path: &Path2d,
    pen: &Pen,
    halo: Option<&Pen>,
) -> Result<(), JsValue> {
    if let Some(halo) = halo {
        canvas.set_line_dash(&Array::new())?;
        canvas.set_stroke_style_str(&halo.colour);
        canvas.set_line_width(pen.width_px + 2.0 * halo.width_px);
        canvas.stroke_with_path(path);
    }
    canvas.set_line_dash(&Array::from_iter(pen.dash_px.iter().map(|&d| JsValue::from_f64(d))))?;
    canvas.set_stroke_style_str(&pen.colour);
    canvas.set_line_width(pen.width_px);
    canvas.stroke_with_path(path);
    Ok(())
}

/// From a place to a piece of a line, mm.
fn distance_mm(at: [f64; 2], a: Point, b: Point) -> f64 {
    let at = DVec2::from(at);
    let [a, b] = [a, b].map(|p| DVec2::new(f64::from(p[0]), f64::from(p[1])));
    let along = b - a;
    let share = ((at - a).dot(along) / along.length_squared().max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
    at.distance(a + share * along)
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

/// Adds a line to a path in canvas pixels.
fn add_line(path: &Path2d, mut points: impl Iterator<Item = Point>, closed: bool, half: f64, scale: f64) {
    let at = |p: Point| (half + f64::from(p[0]) * scale, half - f64::from(p[1]) * scale);
    let Some((x, y)) = points.next().map(at) else { return };
    path.move_to(x, y);
    for (x, y) in points.map(at) {
        path.line_to(x, y);
    }
    if closed {
        path.close_path();
    }
}

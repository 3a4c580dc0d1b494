//! Directions on the detector that belong to a vertebra and not to the screen: the images of its upper end plate's left and normal.

use crate::anatomy::landmarks::Plate;
use crate::imaging::projection::Projection;
use glam::DVec2;

/// Unit direction on the detector of the plate's left.
pub fn plate_direction(view: &Projection, plate: &Plate) -> DVec2 {
    let left = view.project(plate.centre + plate.left * plate.half_width);
    let right = view.project(plate.centre - plate.left * plate.half_width);
    (left - right).normalize_or(DVec2::NEG_X)
}

/// Coordinates on the detector along a vertebra's own image: a vector r there is `left · l + cranial · c`, where l and c are the unit
/// images of the plate's left and of its normal. Away from a squared view those are not perpendicular, and what lies under
/// what is still said along them.
#[derive(Clone, Copy, Debug)]
pub struct ImageAxes {
    /// `r.dot(left)` is the coordinate to the vertebra's left, mm.
    pub left: DVec2,
    /// `r.dot(cranial)` is the coordinate cranially, mm.
    pub cranial: DVec2,
}

/// The axes of a plate's image.
pub fn image_axes(view: &Projection, plate: &Plate) -> ImageAxes {
    let l = plate_direction(view, plate);
    let c = plate_cranial(view, plate);
    // Near a lateral view the two run together; the floor keeps the coordinates finite.
    let cross = l.perp_dot(c);
    let cross = if cross.abs() < 0.02 { 0.02_f64.copysign(cross) } else { cross };
    ImageAxes { left: -c.perp() / cross, cranial: l.perp() / cross }
}

/// Unit image of a plate's normal on the detector.
pub fn plate_cranial(view: &Projection, plate: &Plate) -> DVec2 {
    (view.project(plate.centre + plate.normal * 10.0) - view.project(plate.centre)).normalize_or(DVec2::Y)
}

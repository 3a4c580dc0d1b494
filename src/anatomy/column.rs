//! The column: where each level's frame stands, from the sacrum up.
//!
//! Column frame: patient axes, origin at the centre of the S1 plate. Each step up crosses a disc (height along the
//! mean normal of its two plates, wedge between them, and a slip along it where there is one) and half a body. The sagittal tilt τ of a plate is the tilt of the
//! C-arm that squares it: normal = (0, -sin τ, cos τ).
//!
//! Check by hand (prone, slope 28): L5 mid-plane 28 - 12.6 - 6.2 / 2 = 12.3 degrees.

use super::dimensions::{self, Vertebra};
use super::names::Level;
use crate::geometry::frame::{Rigid, rotation_x, rotation_y, rotation_z};
use glam::DVec3;
use serde::{Deserialize, Serialize};

/// How the patient's column is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Posture {
    /// Face down on the table, as for an injection.
    Prone,
    /// Upright.
    Standing,
}

/// What shapes a column.
#[derive(Clone, Debug, PartialEq)]
pub struct ColumnShape {
    /// Sacral slope, radians.
    pub sacral_slope_rad: f64,
    /// Disc wedges T12-L1 … L5-S1, radians, > 0 lordotic.
    pub disc_wedge_rad: [f64; 6],
    /// Disc heights T12-L1 … L5-S1, mm.
    pub disc_height_mm: [f64; 6],
    /// Turn of each level against the sacrum about its own axis, T12 … L5, radians, > 0 turns the front to the right
    /// (+x towards +y).
    pub axial_turn_rad: [f64; 6],
    /// Sideways bend of each level against the sacrum, T12 … L5, radians, > 0 leans the top to the left.
    pub side_bend_rad: [f64; 6],
    /// Forward slip of each level over the one below, T12 … L5, mm.
    pub slip_mm: [f64; 6],
}

impl ColumnShape {
    /// The average column in a posture.
    pub fn average(posture: Posture) -> Self {
        let (wedge_deg, slope_deg) = match posture {
            Posture::Prone => (dimensions::DISC_WEDGE_PRONE_DEG, dimensions::SACRAL_SLOPE_PRONE_DEG),
            Posture::Standing => (dimensions::DISC_WEDGE_STANDING_DEG, dimensions::SACRAL_SLOPE_STANDING_DEG),
        };
        Self {
            sacral_slope_rad: slope_deg.to_radians(),
            disc_wedge_rad: wedge_deg.map(f64::to_radians),
            disc_height_mm: dimensions::DISC_HEIGHT_MM,
            axial_turn_rad: [0.0; 6],
            side_bend_rad: [0.0; 6],
            slip_mm: [0.0; 6],
        }
    }
}

/// Frames of T12 … L5 and S1 in the column frame.
pub fn stack(vertebrae: &[Vertebra; 6], shape: &ColumnShape) -> [Rigid; 7] {
    let mut frames = [Rigid::IDENTITY; 7];
    let mut tilt_rad = shape.sacral_slope_rad;
    frames[6] = Rigid { rotation: rotation_x(tilt_rad), translation: DVec3::ZERO };
    let mut plate = DVec3::ZERO;
    let mut lateral = rotation_y(0.0);
    for level in (0..6).rev() {
        let d = &vertebrae[level];
        let disc = shape.disc_height_mm[level];
        let wedge_rad = shape.disc_wedge_rad[level];
        // The lordosis in the vertebra's own wedge: its plates stand half of it above and below the mid-plane.
        let half_wedge_rad = d.wedge() / 2.0;
        let turn = rotation_y(shape.side_bend_rad[level]) * rotation_x(tilt_rad - wedge_rad - half_wedge_rad);
        let rotation = turn * rotation_z(shape.axial_turn_rad[level]);
        let disc_axis = lateral_mean(lateral, rotation_y(shape.side_bend_rad[level]))
            * rotation_x(tilt_rad - wedge_rad / 2.0)
            * DVec3::Z;
        // Backwards along the disc, from the level below.
        let back = frames[level + 1].rotation * DVec3::Y;
        let back = (back - disc_axis * back.dot(disc_axis)).normalize();
        let lower_plate = plate + disc_axis * disc - back * shape.slip_mm[level];
        let centre = lower_plate + rotation * DVec3::Z * d.half_height_mm();
        frames[level] = Rigid { rotation, translation: centre };
        plate = centre + rotation * DVec3::Z * d.half_height_mm();
        tilt_rad -= wedge_rad + 2.0 * half_wedge_rad;
        lateral = rotation_y(shape.side_bend_rad[level]);
    }
    frames
}

/// Mean of two turns that differ little, as a matrix that is a rotation to first order.
fn lateral_mean(a: glam::DMat3, b: glam::DMat3) -> glam::DMat3 {
    (a + b) * 0.5
}

/// Sagittal tilt that squares a plate with this normal, radians.
pub fn tilt_of_normal(normal: DVec3) -> f64 {
    libm::atan2(-normal.y, normal.z)
}

/// The six average vertebrae, sized by `factor`.
pub fn average_vertebrae(factor: f64) -> [Vertebra; 6] {
    let mut list = [None; 6];
    for level in Level::VERTEBRAE {
        list[level.index()] = dimensions::vertebra(level);
    }
    list.map(|v| v.unwrap_or_else(|| unreachable!("the table has a row for every vertebra")).scaled(factor))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tilts_deg(posture: Posture, slope_deg: f64) -> [f64; 7] {
        let shape = ColumnShape { sacral_slope_rad: slope_deg.to_radians(), ..ColumnShape::average(posture) };
        stack(&average_vertebrae(1.0), &shape).map(|f| tilt_of_normal(f.rotation * DVec3::Z).to_degrees())
    }

    /// anatomy.md section 5, end-plate tilt of the mid-planes (derived from Sci Rep 2022 Table 2 and PMC6680033).
    #[test]
    fn mid_planes_stand_as_published() {
        for (posture, slope, expected) in [
            (Posture::Prone, 28.0, [-11.0, -9.0, -6.0, -1.0, 12.0]),
            (Posture::Standing, 41.0, [-11.0, -9.0, -2.5, 8.0, 22.5]),
        ] {
            let tilts = tilts_deg(posture, slope);
            for (i, e) in expected.iter().enumerate() {
                assert!((tilts[i + 1] - e).abs() < 1.0, "{posture:?} L{}: {}", i + 1, tilts[i + 1]);
            }
        }
    }
}

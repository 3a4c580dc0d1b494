//! The cone beam: points in the column frame to points on the detector.
//!
//! `(u, v) = SID / (SOD + p·d) · (p·right, p·up)` with p from the isocentre, u to the screen's right, v up, mm. The screen is
//! seen from the receptor, head up: forward f = -d, right = f × z, up = right × f; then the picture's own rotation.

use super::c_arm::CArm;
use glam::{DVec2, DVec3};

/// A C-arm set over a point of the patient.
#[derive(Clone, Copy, Debug)]
pub struct Projection {
    /// Focal spot, column frame, mm.
    pub source: DVec3,
    /// Isocentre, column frame, mm.
    pub isocentre: DVec3,
    /// Unit vector from source to receptor.
    pub d: DVec3,
    /// Unit vector to the screen's right.
    pub right: DVec3,
    /// Unit vector up the screen.
    pub up: DVec3,
    /// Source to isocentre, mm.
    pub sod_mm: f64,
    /// Source to detector, mm.
    pub sid_mm: f64,
    /// Half the detector's edge, mm.
    pub half_field_mm: f64,
}

impl Projection {
    /// `centre` is the point (column frame, mm) that the isocentre is set to before the table moves.
    pub fn new(arm: &CArm, centre: DVec3) -> Self {
        let d = arm.receptor_direction();
        let forward = -d;
        let right = forward.cross(DVec3::Z).normalize_or(-DVec3::X);
        let up = right.cross(forward);
        // The picture turns clockwise: the screen's axes turn the other way in the scene.
        let (s, c) = libm::sincos(arm.image_rotation_rad);
        let isocentre = centre - arm.table_shift_mm;
        Self {
            source: isocentre - d * arm.sod_mm,
            isocentre,
            d,
            right: right * c + up * s,
            up: up * c - right * s,
            sod_mm: arm.sod_mm,
            sid_mm: arm.sid_mm,
            half_field_mm: arm.half_field_mm(),
        }
    }

    /// Where a point falls on the detector, mm. Points at or behind the source fall at infinity.
    pub fn project(&self, p: DVec3) -> DVec2 {
        let r = p - self.isocentre;
        let scale = self.sid_mm / (self.sod_mm + r.dot(self.d)).max(1e-6);
        DVec2::new(r.dot(self.right), r.dot(self.up)) * scale
    }

    /// Unit direction of the ray through a point of the patient.
    pub fn ray_to(&self, p: DVec3) -> DVec3 {
        (p - self.source).normalize_or(self.d)
    }

    /// Unit direction of the ray to a point of the detector, mm.
    pub fn ray_through(&self, uv: DVec2) -> DVec3 {
        (self.d * self.sid_mm + self.right * uv.x + self.up * uv.y).normalize()
    }

    /// Whether any of a ball (column frame, mm) can fall inside the square field.
    pub fn sees(&self, centre: DVec3, radius: f64) -> bool {
        let r = centre - self.source;
        let depth = r.dot(self.d);
        // The four sides of the beam are planes through the source; a ball is out when it lies beyond one of them.
        let slope = self.half_field_mm / self.sid_mm;
        let reach = depth * slope + radius * libm::sqrt(1.0 + slope * slope);
        depth > -radius && r.dot(self.right).abs() <= reach && r.dot(self.up).abs() <= reach
    }

    /// Whether any of a ball can fall on the rows of the field, inside it or to its left.
    pub fn rows_see(&self, centre: DVec3, radius: f64) -> bool {
        let r = centre - self.source;
        let depth = r.dot(self.d);
        let slope = self.half_field_mm / self.sid_mm;
        let reach = depth * slope + radius * libm::sqrt(1.0 + slope * slope);
        depth > -radius && r.dot(self.up).abs() <= reach && r.dot(self.right) <= reach
    }

    /// Magnification at a point.
    pub fn magnification_at(&self, p: DVec3) -> f64 {
        self.sid_mm / (self.sod_mm + (p - self.isocentre).dot(self.d)).max(1e-6)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn patients_left_is_screen_left_and_head_is_up() {
        let view = Projection::new(&CArm::default(), DVec3::ZERO);
        assert!(view.project(DVec3::X * 10.0).x < -15.0);
        assert!(view.project(DVec3::Z * 10.0).y > 15.0);
        assert_eq!(view.project(DVec3::Y * 10.0), DVec2::ZERO);
    }

    /// Worked case: an object 50 mm nearer the detector is magnified 1100 / 750 = 1.4667.
    #[test]
    fn magnification_falls_towards_the_detector() {
        let view = Projection::new(&CArm::default(), DVec3::ZERO);
        let uv = view.project(DVec3::new(-10.0, 50.0, 0.0));
        assert!((uv.x - 14.667).abs() < 1e-3);
    }

    #[test]
    fn receptor_to_the_left_moves_what_is_behind_to_the_right() {
        let arm = CArm::at_degrees(30.0, 0.0).unwrap();
        let view = Projection::new(&arm, DVec3::ZERO);
        assert!(view.project(DVec3::Y * 20.0).x > 0.0);
    }

    #[test]
    fn picture_turns_clockwise() {
        let arm = CArm::default().with_image_rotation(90.0).unwrap();
        let uv = Projection::new(&arm, DVec3::ZERO).project(DVec3::Z * 10.0);
        assert!(uv.x > 15.0 && uv.y.abs() < 1e-9, "{uv}");
    }

    #[test]
    fn rays_and_points_agree() {
        let arm = CArm::at_degrees(-25.0, 14.0).unwrap();
        let view = Projection::new(&arm, DVec3::new(3.0, -2.0, 9.0));
        let p = DVec3::new(20.0, 11.0, -6.0);
        assert!((view.ray_to(p) - view.ray_through(view.project(p))).length() < 1e-12);
    }
}

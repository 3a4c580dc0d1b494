//! The C-arm: where source and receptor stand.
//!
//! Orientation is said of the receptor: oblique θ > 0 towards the patient's left, tilt φ > 0 cephalad. Receptor direction
//! from the isocentre: `d = (sin θ cos φ, cos θ cos φ, sin φ)`. The patient is prone, the source under the table.
//!
//! In DICOM's words (PS3.3 C.8.7.5.1.2, angles of the receptor with respect to the patient):
//! primary angle = 180° - θ wrapped to ±180°, secondary angle = φ.

use glam::DVec3;

/// Where the C-arm stands. Default: θ = φ = 0 over the target, 512 pixels of 0.4 mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CArm {
    /// θ, radians, > 0 receptor to the patient's left.
    pub oblique_rad: f64,
    /// φ, radians, > 0 receptor cephalad.
    pub tilt_rad: f64,
    /// Turn of the picture on the screen, radians, > 0 clockwise.
    pub image_rotation_rad: f64,
    /// How far the table has moved the patient against the isocentre, patient axes, mm.
    pub table_shift_mm: DVec3,
    /// Source to isocentre, mm.
    pub sod_mm: f64,
    /// Source to detector, mm.
    pub sid_mm: f64,
    /// Detector pixels along an edge.
    pub pixels: usize,
    /// Pixel pitch at the detector, mm.
    pub pixel_mm: f64,
}

/// An orientation that the machine cannot take.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{control} of {found_deg} degrees is not possible: allowed are {low_deg} to {high_deg} degrees")]
pub struct OrientationError {
    /// `oblique`, `tilt` or `image rotation`.
    pub control: &'static str,
    /// What was asked for.
    pub found_deg: f64,
    /// Lowest allowed.
    pub low_deg: f64,
    /// Highest allowed.
    pub high_deg: f64,
}

impl Default for CArm {
    fn default() -> Self {
        Self {
            oblique_rad: 0.0,
            tilt_rad: 0.0,
            image_rotation_rad: 0.0,
            table_shift_mm: DVec3::ZERO,
            sod_mm: 700.0,
            sid_mm: 1100.0,
            pixels: 512,
            pixel_mm: 0.4,
        }
    }
}

fn within(control: &'static str, found_deg: f64, range: (f64, f64)) -> Result<f64, OrientationError> {
    // A NaN is inside no range.
    if found_deg >= range.0 && found_deg <= range.1 {
        Ok(found_deg.to_radians())
    } else {
        Err(OrientationError { control, found_deg, low_deg: range.0, high_deg: range.1 })
    }
}

impl CArm {
    /// Orbital range, degrees: from one side of the table to a little past the other. Common practice, no source.
    pub const OBLIQUE_RANGE_DEG: (f64, f64) = (-110.0, 110.0);
    /// Tilt range that table and patient leave, degrees. Common practice, no source.
    pub const TILT_RANGE_DEG: (f64, f64) = (-50.0, 50.0);

    /// The default machine at an orientation in degrees.
    ///
    /// # Errors
    /// When the machine does not reach the orientation.
    pub fn at_degrees(oblique_deg: f64, tilt_deg: f64) -> Result<Self, OrientationError> {
        Self::default().turned_to(oblique_deg, tilt_deg)
    }

    /// This machine at another orientation, degrees.
    ///
    /// # Errors
    /// When the machine does not reach the orientation.
    pub fn turned_to(self, oblique_deg: f64, tilt_deg: f64) -> Result<Self, OrientationError> {
        Ok(Self {
            oblique_rad: within("oblique", oblique_deg, Self::OBLIQUE_RANGE_DEG)?,
            tilt_rad: within("tilt", tilt_deg, Self::TILT_RANGE_DEG)?,
            ..self
        })
    }

    /// This machine with the picture turned, degrees clockwise.
    ///
    /// # Errors
    /// When it is turned by more than 180 degrees.
    pub fn with_image_rotation(self, degrees: f64) -> Result<Self, OrientationError> {
        Ok(Self { image_rotation_rad: within("image rotation", degrees, (-180.0, 180.0))?, ..self })
    }

    /// Unit vector from the isocentre to the receptor.
    pub fn receptor_direction(&self) -> DVec3 {
        let (so, co) = libm::sincos(self.oblique_rad);
        let (st, ct) = libm::sincos(self.tilt_rad);
        DVec3::new(so * ct, co * ct, st)
    }

    /// DICOM positioner primary and secondary angle, degrees.
    pub fn dicom_angles_deg(&self) -> (f64, f64) {
        (wrapped(180.0 - self.oblique_rad.to_degrees()), self.tilt_rad.to_degrees())
    }

    /// The default machine at DICOM positioner angles, degrees.
    ///
    /// # Errors
    /// When the machine does not reach the orientation.
    pub fn from_dicom_deg(primary: f64, secondary: f64) -> Result<Self, OrientationError> {
        Self::at_degrees(wrapped(180.0 - primary), secondary)
    }

    /// Magnification of what lies in the isocentre.
    pub fn magnification(&self) -> f64 {
        self.sid_mm / self.sod_mm
    }

    /// The same field with another number of pixels along an edge.
    pub fn sampled(self, pixels: usize) -> Self {
        Self { pixel_mm: self.pixels as f64 * self.pixel_mm / pixels as f64, pixels, ..self }
    }

    /// Half the detector's edge, mm.
    pub fn half_field_mm(&self) -> f64 {
        self.pixels as f64 * self.pixel_mm / 2.0
    }
}

/// An angle wrapped to (-180, 180].
fn wrapped(degrees: f64) -> f64 {
    let turned = degrees.rem_euclid(360.0);
    if turned > 180.0 { turned - 360.0 } else { turned }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rows of PS3.3 C.8.7.5.1.2 as worked in the reference table: (primary, secondary, d).
    #[test]
    fn dicom_rows() {
        for (primary, secondary, d) in [
            (180.0, 0.0, [0.0, 1.0, 0.0]),
            (-155.0, 0.0, [-0.423, 0.906, 0.0]),
            (155.0, 0.0, [0.423, 0.906, 0.0]),
            (180.0, 15.0, [0.0, 0.966, 0.259]),
            (90.0, 0.0, [1.0, 0.0, 0.0]),
            (-90.0, 0.0, [-1.0, 0.0, 0.0]),
        ] {
            let arm = CArm::from_dicom_deg(primary, secondary).unwrap();
            assert!(
                (arm.receptor_direction() - DVec3::from_array(d)).length() < 1e-3,
                "{primary} {secondary}"
            );
            let back = arm.dicom_angles_deg();
            assert!((back.0 - primary).abs() < 1e-9 && (back.1 - secondary).abs() < 1e-9, "{back:?}");
        }
    }

    #[test]
    fn impossible_orientations_are_refused_in_words() {
        assert_eq!(
            CArm::at_degrees(130.0, 0.0).unwrap_err().to_string(),
            "oblique of 130 degrees is not possible: allowed are -110 to 110 degrees"
        );
        assert!(CArm::at_degrees(f64::NAN, 0.0).is_err());
        assert!(CArm::at_degrees(0.0, f64::INFINITY).is_err());
    }

    /// Worked case: 512 x 0.4 mm, SID 1100, SOD 700 gives magnification 1.5714 and a field of 130.3 mm at the isocentre.
    #[test]
    fn magnification_of_the_worked_case() {
        let arm = CArm::default();
        assert!((arm.magnification() - 1.5714).abs() < 1e-4);
        assert!((2.0 * arm.half_field_mm() / arm.magnification() - 130.3).abs() < 0.05);
    }
}

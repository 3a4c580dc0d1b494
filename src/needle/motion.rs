//! How a bevelled tip moves: it follows a screw.
//!
//! The tip advances along its own axis and is turned towards its drift direction, away from the bevel's face, by a constant
//! curvature κ (the unicycle of Webster 2006, Int J Rob Res 25:509). In the tip's frame the twist of a step ds is
//! `v = (0, 0, ds)`, `ω = κ ds · (axis × drift)`; its exponential is taken in closed form, so that one step of 10 mm and ten of
//! 1 mm end in the same place. Spinning for a share `duty` of the way leaves `κ (1 - duty)` (Minhas 2007: memory).
//!
//! The frame does not roll about its axis (a Bishop frame); the hub's roll is kept beside it, and the shaft is taken as stiff
//! against torsion: what the hub turns, the tip turns.

use glam::{DMat3, DVec3};

/// A tip: where it is and how it stands. Columns of `frame`: two directions across, then the axis, in the direction of travel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tip {
    /// Column frame, mm.
    pub position: DVec3,
    /// Orthonormal, right-handed.
    pub frame: DMat3,
}

impl Tip {
    /// A tip that looks along `axis`, its first direction across as near to `reference` as can be.
    pub fn looking(position: DVec3, axis: DVec3, reference: DVec3) -> Self {
        let axis = axis.normalize_or(DVec3::NEG_Y);
        let first = (reference - axis * reference.dot(axis)).normalize_or(axis.any_orthonormal_vector());
        Self { position, frame: DMat3::from_cols(first, axis.cross(first), axis) }
    }

    /// Unit direction of travel.
    pub fn axis(&self) -> DVec3 {
        self.frame.z_axis
    }

    /// Unit direction across at `roll_rad` from the first towards the second.
    pub fn across(&self, roll_rad: f64) -> DVec3 {
        let (s, c) = libm::sincos(roll_rad);
        self.frame.x_axis * c + self.frame.y_axis * s
    }

    /// The tip after `length_mm` more, bending with `curvature_per_mm` towards [`Self::across`] of `roll_rad`.
    pub fn advanced(&self, length_mm: f64, curvature_per_mm: f64, roll_rad: f64) -> Self {
        let angle_rad = curvature_per_mm * length_mm;
        let (s, c) = libm::sincos(angle_rad);
        // Chord of the arc along the axis and across; series where the division would lose all digits.
        let (along, aside) = if angle_rad.abs() < 1e-4 {
            (length_mm * (1.0 - angle_rad * angle_rad / 6.0), length_mm * angle_rad / 2.0)
        } else {
            (s / curvature_per_mm, (1.0 - c) / curvature_per_mm)
        };
        let towards = self.across(roll_rad);
        let axis = self.axis();
        let position = self.position + axis * along + towards * aside;
        let turned_axis = axis * c + towards * s;
        let turned_towards = towards * c - axis * s;
        let still = axis.cross(towards);
        let (sr, cr) = libm::sincos(roll_rad);
        // Back from (towards, still) to the frame's own directions; orthonormal again against drift of the last bits.
        let first = turned_towards * cr - still * sr;
        let axis = turned_axis.normalize();
        let first = (first - axis * first.dot(axis)).normalize();
        Self { position, frame: DMat3::from_cols(first, axis.cross(first), axis) }
    }
}

/// Curvature that is left when the needle spins for a share of the way.
pub fn spun(curvature_per_mm: f64, duty: f64) -> f64 {
    curvature_per_mm * (1.0 - duty.clamp(0.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn start() -> Tip {
        Tip::looking(DVec3::new(3.0, 80.0, -4.0), DVec3::new(0.1, -1.0, 0.2), DVec3::Z)
    }

    #[test]
    fn one_long_step_is_many_short_ones() {
        let (k, roll) = (1.0 / 250.0, 0.7);
        let long = start().advanced(80.0, k, roll);
        let mut tip = start();
        for _ in 0..800 {
            tip = tip.advanced(0.1, k, roll);
        }
        assert!(tip.position.distance(long.position) < 1e-9);
        assert!(tip.axis().distance(long.axis()) < 1e-12);
    }

    /// A circle of radius R: after z along the tangent it is R - sqrt(R² - z²) aside.
    #[test]
    fn the_path_is_a_circle() {
        let (radius, roll) = (250.0, 2.0);
        let from = start();
        let arc = radius * libm::asin(50.0 / radius);
        let to = from.advanced(arc, 1.0 / radius, roll);
        let moved = to.position - from.position;
        assert!((moved.dot(from.axis()) - 50.0).abs() < 1e-10);
        assert!(
            (moved.dot(from.across(roll)) - (radius - libm::sqrt(radius * radius - 2500.0))).abs() < 1e-10
        );
    }

    /// The duty law against what it stands for: a whole turn in its share of every fifth of a millimetre, the rest without.
    #[test]
    fn duty_cycle_is_the_mean_of_spinning_and_not() {
        let k = 1.0 / 250.0;
        for duty in [0.25, 0.5, 0.75] {
            let mut tip = start();
            const PERIOD_MM: f64 = 0.2;
            for _ in 0..400 {
                let spinning = duty * PERIOD_MM;
                let steps = 40;
                for i in 0..steps {
                    let roll = std::f64::consts::TAU * (f64::from(i) + 0.5) / f64::from(steps);
                    tip = tip.advanced(spinning / f64::from(steps), k, 0.3 + roll);
                }
                tip = tip.advanced(PERIOD_MM - spinning, k, 0.3);
            }
            let law = start().advanced(80.0, spun(k, duty), 0.3);
            assert!(
                tip.position.distance(law.position) < 0.02,
                "{duty}: {}",
                tip.position.distance(law.position)
            );
        }
    }
}

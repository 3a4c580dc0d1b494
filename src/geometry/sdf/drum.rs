//! The vertebral body: a waisted drum with a kidney-shaped section, wedged, with concave end plates.

use super::smooth_max;
use glam::Vec3;

/// A body in its own frame: origin at its centre, +y posterior, +z cranial, mid-plane z = 0.
///
/// Section: `(X² + Y²)² - 2 q X² Y² = 1` (an ellipse at q = 0, a superellipse of power 4 at q = 1) with `X = x / a(z)`,
/// `Y = (y - shift(z) + dent) / b(z)`, where the half-axes run from the lower to the upper plate and shrink by `waist` between them:
/// by `waist (1 - s²)(1 + flat s²)` at s from -1 to 1, so that with `flat` near 1 the waist is long and the rims stand out as lips.
/// `dent` lets the posterior wall stand out on both sides of the midline, which is thereby hollow; `shift` moves the waist backwards.
/// Plates: planes tilted by half the wedge, sunk by `c (1 - ρ² / ρ₁²)²` inside the rim ρ₁.
#[derive(Clone, Debug)]
pub struct Drum {
    /// Half width (left-right) at the lower and the upper plate, mm.
    pub half_width: [f32; 2],
    /// Half depth (front-back) at the lower and the upper plate, mm.
    pub half_depth: [f32; 2],
    /// Height at the posterior wall, mm.
    pub posterior_height: f32,
    /// Height at the anterior wall, mm.
    pub anterior_height: f32,
    /// How much narrower and how much less deep the middle is, 0 to 1.
    pub waist: [f32; 2],
    /// 0: the waist is a parabola; 1: longer, with lips at the rims.
    pub waist_flat: f32,
    /// How far the waist stands behind the rims' middle, mm.
    pub waist_shift: f32,
    /// Squareness of the section, 0 (ellipse) to 1 (power 4).
    pub squareness: f32,
    /// Sag of the lower and of the upper plate at its centre below the rim, mm.
    pub plate_sag: [f32; 2],
    /// Hollow of the posterior wall in the midline against its sides, mm.
    pub posterior_dent: f32,
    /// How many times thicker the cortex is at the plates than at the walls.
    pub plate_cortex_ratio: f32,
}

/// Which surface of a drum is nearest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum DrumSurface {
    Wall,
    LowerPlate,
    UpperPlate,
}

/// Inner edge of the bony rim as a fraction of the plate's radius (Wang 2012: central plate about 70 % of the
/// diameter; the sag fades to nothing a little outside it).
const RIM_FRACTION: f32 = 0.84;
/// Radius of the edge between plate and wall, mm.
const EDGE_MM: f32 = 1.6;

impl Drum {
    /// Mean half height, mm.
    pub fn half_height(&self) -> f32 {
        (self.posterior_height + self.anterior_height) / 4.0
    }

    /// Slope dz/dy of the upper plate; the lower one has the opposite slope.
    fn plate_slope(&self) -> f32 {
        let depth = self.half_depth[0] + self.half_depth[1];
        (self.posterior_height - self.anterior_height) / (2.0 * depth)
    }

    #[inline(always)]
    fn terms(&self, p: Vec3) -> [f32; 3] {
        let half_height = self.half_height();
        let s = (p.z / half_height).clamp(-1.0, 1.0);
        let t = 0.5 * (s + 1.0);
        let narrow = (1.0 - s * s) * (1.0 + self.waist_flat * s * s);
        let between =
            |half: [f32; 2], waist: f32| (half[0] + t * (half[1] - half[0])) * (1.0 - waist * narrow);
        let a = between(self.half_width, self.waist[0]);
        let b = between(self.half_depth, self.waist[1]);
        let (per_a, per_b) = (1.0 / a, 1.0 / b);
        let x = p.x * per_a;
        let behind = (p.y * per_b).clamp(0.0, 1.0);
        let shoulder = (1.0 - 1.7 * x * x).max(0.0);
        let y =
            (p.y - self.waist_shift * narrow - self.posterior_dent * behind * (1.0 - shoulder * shoulder))
                * per_b;
        let (xx, yy) = (x * x, y * y);
        let sum = xx + yy;
        let root = (sum * sum - 2.0 * self.squareness * xx * yy).max(1e-12).sqrt().sqrt();
        let gx = x * (sum - self.squareness * yy) * per_a;
        let gy = y * (sum - self.squareness * xx) * per_b;
        // Deep inside, the gradient says nothing: the walls are far.
        let wall = (root - 1.0) * (root * root * root) / ((gx * gx + gy * gy).sqrt() + 1e-9);
        let wall = wall.max(-0.8 * a.min(b));

        let slope = self.plate_slope();
        let cosine = 1.0 / (1.0 + slope * slope).sqrt();
        let sunk = (1.0 - sum * (1.0 / (RIM_FRACTION * RIM_FRACTION))).max(0.0);
        let sunk = sunk * sunk * (3.0 - 2.0 * sunk);
        let upper = (p.z - half_height - slope * p.y + self.plate_sag[1] * sunk) * cosine;
        let lower = (-p.z - half_height - slope * p.y + self.plate_sag[0] * sunk) * cosine;
        [wall, lower, upper]
    }

    /// Distance in mm and the cortex factor (1 at the walls, more at the plates).
    #[inline(always)]
    pub fn sample(&self, p: Vec3) -> (f32, f32) {
        let [wall, lower, upper] = self.terms(p);
        let plate = lower.max(upper);
        let toward_plate = (0.5 + 0.5 * (plate - wall) / 3.0).clamp(0.0, 1.0);
        let cortex = 1.0 + (self.plate_cortex_ratio - 1.0) * toward_plate;
        (smooth_max(wall, plate, EDGE_MM), cortex)
    }

    /// [`Self::sample`] of many points, free of branches so that the compiler can take several at a time.
    pub fn samples(&self, points: &[Vec3], distance: &mut [f32], cortex: &mut [f32]) {
        for ((&p, d), c) in points.iter().zip(distance).zip(cortex) {
            (*d, *c) = self.sample(p);
        }
    }

    /// The surface that a point on or near the drum belongs to.
    pub fn surface(&self, p: Vec3) -> DrumSurface {
        let [wall, lower, upper] = self.terms(p);
        if wall >= lower && wall >= upper {
            DrumSurface::Wall
        } else if upper >= lower {
            DrumSurface::UpperPlate
        } else {
            DrumSurface::LowerPlate
        }
    }

    /// A ball that holds the drum.
    pub fn ball(&self) -> (Vec3, f32) {
        let a = self.half_width[0].max(self.half_width[1]);
        let b = self.half_depth[0].max(self.half_depth[1]) + self.posterior_dent;
        let h = self.posterior_height.max(self.anterior_height) / 2.0;
        // The squircle bulges past the ellipse by at most a tenth.
        (Vec3::ZERO, 1.1 * (a * a + b * b).sqrt().max((a * a + h * h).sqrt()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drum() -> Drum {
        Drum {
            half_width: [24.0, 23.0],
            half_depth: [17.5, 17.5],
            posterior_height: 27.5,
            anterior_height: 28.7,
            waist: [0.1; 2],
            waist_flat: 0.0,
            waist_shift: 0.0,
            squareness: 0.55,
            plate_sag: [1.5, 0.7],
            posterior_dent: 1.5,
            plate_cortex_ratio: 1.5,
        }
    }

    #[test]
    fn heights_and_sag() {
        let d = drum();
        // Just inside the edge the plates are their planes: 28.7 mm apart in front, 27.5 mm behind.
        let gap = |y: f32| {
            let (mut low, mut high) = (10.0_f32, 18.0_f32);
            for _ in 0..40 {
                let mid = 0.5 * (low + high);
                if d.terms(Vec3::new(0.0, y, mid))[2] < 0.0 { low = mid } else { high = mid }
            }
            low
        };
        assert!((gap(-17.5) - 28.7 / 2.0).abs() < 0.02);
        assert!((gap(0.0) - (28.1 / 2.0 - 0.7)).abs() < 0.02);
    }

    #[test]
    fn surfaces_are_told_apart() {
        let d = drum();
        assert_eq!(d.surface(Vec3::new(0.0, -17.5, 0.0)), DrumSurface::Wall);
        assert_eq!(d.surface(Vec3::new(0.0, 0.0, 13.5)), DrumSurface::UpperPlate);
        assert_eq!(d.surface(Vec3::new(0.0, 0.0, -13.0)), DrumSurface::LowerPlate);
    }
}

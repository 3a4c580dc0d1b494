//! A curved plate with a polygonal outline: the iliac wing.

use super::smooth_max;
use glam::{Mat3, Vec2, Vec3};

/// A plate in a frame (s, t, n): outline in the (s, t) plane, middle surface `n = bow · (s - s0)² + lean · (t - t0)²`.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// mm.
    pub origin: Vec3,
    /// Unit axes s, t, n as columns.
    pub axes: Mat3,
    /// Corners in (s, t), mm, counter-clockwise or clockwise.
    pub outline: Vec<Vec2>,
    /// Half thickness inside, mm.
    pub half_thickness: f32,
    /// Half thickness at the edge, mm: the border is a bead.
    pub edge_half_thickness: f32,
    /// How far the bead reaches inwards, mm.
    pub bead_width: f32,
    /// Where the middle surface touches the plane, (s0, t0), mm.
    pub flat_at: Vec2,
    /// Curvature terms of the middle surface along s and t, 1/mm.
    pub bow: Vec2,
}

impl Sheet {
    /// First-order distance, mm.
    pub fn distance(&self, p: Vec3) -> f32 {
        let r = p - self.origin;
        let q = Vec2::new(r.dot(self.axes.x_axis), r.dot(self.axes.y_axis));
        let e = q - self.flat_at;
        let n = r.dot(self.axes.z_axis) - self.bow.dot(e * e);
        let slope = 2.0 * self.bow * e;
        let across = 1.0 / (1.0 + slope.length_squared()).sqrt();
        let edge = polygon_distance(&self.outline, q);
        let bead = (1.0 + edge / self.bead_width).clamp(0.0, 1.0);
        let half = self.half_thickness + (self.edge_half_thickness - self.half_thickness) * bead * bead;
        smooth_max(edge, (n.abs() - half) * across, 3.0)
    }

    /// Whether a point lies in the upper border's bead: within the bead's width of the outline and above `t0`.
    pub fn on_upper_border(&self, p: Vec3) -> bool {
        let r = p - self.origin;
        let q = Vec2::new(r.dot(self.axes.x_axis), r.dot(self.axes.y_axis));
        q.y > self.flat_at.y && polygon_distance(&self.outline, q) > -self.bead_width
    }

    /// A ball that holds the plate.
    pub fn ball(&self) -> (Vec3, f32) {
        let middle = self.outline.iter().sum::<Vec2>() / self.outline.len() as f32;
        let e = middle - self.flat_at;
        let lift = self.bow.dot(e * e);
        let mut radius = 0.0_f32;
        for &corner in &self.outline {
            let e = corner - self.flat_at;
            let rise = (self.bow.dot(e * e) - lift).abs().max(10.0);
            radius = radius.max((corner - middle).extend(rise).length());
        }
        let centre = self.origin + self.axes * Vec3::new(middle.x, middle.y, lift);
        (centre, radius + self.edge_half_thickness)
    }
}

/// Signed distance to a simple polygon, negative inside; exact.
fn polygon_distance(corners: &[Vec2], p: Vec2) -> f32 {
    let mut nearest = f32::MAX;
    let mut inside = false;
    let mut previous = corners[corners.len() - 1];
    for &corner in corners {
        let edge = previous - corner;
        let r = p - corner;
        let off = r - edge * (r.dot(edge) / edge.length_squared()).clamp(0.0, 1.0);
        nearest = nearest.min(off.length_squared());
        if (corner.y > p.y) != (previous.y > p.y) && p.x < edge.x * (p.y - corner.y) / edge.y + corner.x {
            inside = !inside;
        }
        previous = corner;
    }
    if inside { -nearest.sqrt() } else { nearest.sqrt() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn polygon_distance_of_a_square() {
        let square = [Vec2::ZERO, Vec2::new(10.0, 0.0), Vec2::new(10.0, 10.0), Vec2::new(0.0, 10.0)];
        assert_eq!(polygon_distance(&square, Vec2::new(5.0, 5.0)), -5.0);
        assert_eq!(polygon_distance(&square, Vec2::new(13.0, 14.0)), 5.0);
        assert_eq!(polygon_distance(&square, Vec2::new(5.0, -2.0)), 2.0);
    }
}

//! A curved plate with an outline and a thickness of its own everywhere: the iliac wing.

use glam::{Mat3, Vec2, Vec3};
use std::sync::Arc;

/// Spacing of the table that a plate is looked up in, mm.
const SPACING_MM: f32 = 4.0;
/// The thinnest that a plate may be, half of it, mm.
const LEAST_HALF_MM: f32 = 1.6;

/// A plate in a frame (s, t, n): within its outline in the (s, t) plane it is `half` thick on both sides of the middle surface
/// `n = middle(s, t)`, and its border is round, of the radius that `half` has there.
///
/// Distance to the outline, middle and half thickness are tabled when the plate is made, so that a sample costs one bilinear look-up.
#[derive(Clone, Debug)]
pub struct Sheet {
    origin: Vec3,
    axes: Mat3,
    /// Shared by the copies of a plate.
    table: Arc<Table>,
    bead: Bead,
    /// Middle and half diagonal of the box around it, in its own frame.
    ball: (Vec3, f32),
}

/// The upper border: how far it reaches in from the outline, and above which `t`, mm.
#[derive(Clone, Copy, Debug)]
pub struct Bead {
    /// mm.
    pub width: f32,
    /// mm.
    pub above: f32,
}

/// Distance to the outline (negative inside), middle and half thickness at one place, mm, with the middle's slopes.
struct Place {
    edge: f32,
    middle: f32,
    half: f32,
    slope: Vec2,
}

#[derive(Clone, Debug)]
struct Table {
    corner: Vec2,
    columns: usize,
    rows: usize,
    values: Vec<[f32; 3]>,
}

impl Sheet {
    /// A plate in the frame `origin`, `axes` (s, t, n as columns; mm) with the closed polygon `outline` in (s, t). `shape` gives
    /// middle and half thickness at a place, mm.
    pub fn new(
        origin: Vec3,
        axes: Mat3,
        outline: &[Vec2],
        bead: Bead,
        shape: impl Fn(Vec2) -> (f32, f32),
    ) -> Self {
        let low = outline.iter().fold(Vec2::MAX, |a, &b| a.min(b)) - 2.0 * SPACING_MM;
        let high = outline.iter().fold(Vec2::MIN, |a, &b| a.max(b)) + 2.0 * SPACING_MM;
        let size = ((high - low) / SPACING_MM).ceil().as_uvec2();
        let (columns, rows) = (size.x as usize + 1, size.y as usize + 1);
        let values = (0..columns * rows)
            .map(|i| {
                let q = low + SPACING_MM * Vec2::new((i % columns) as f32, (i / columns) as f32);
                let (middle, half) = shape(q);
                [polygon_distance(outline, q), middle, half.max(LEAST_HALF_MM)]
            })
            .collect::<Vec<_>>();
        let inside = || values.iter().filter(|v| v[0] < SPACING_MM);
        let span = |value: fn(&[f32; 3]) -> f32| {
            inside().map(value).fold((f32::MAX, f32::MIN), |(a, b), x| (a.min(x), b.max(x)))
        };
        let (floor, _) = span(|v| v[1] - v[2]);
        let (_, roof) = span(|v| v[1] + v[2]);
        let box_half = ((high - low) / 2.0).extend((roof - floor) / 2.0);
        let centre = ((high + low) / 2.0).extend((roof + floor) / 2.0);
        let table = Arc::new(Table { corner: low, columns, rows, values });
        Self { origin, axes, table, bead, ball: (centre, box_half.length()) }
    }

    /// The same plate in another frame; a mirrored one makes it the other side's.
    pub fn placed(&self, origin: Vec3, axes: Mat3) -> Self {
        Self { origin, axes, ..self.clone() }
    }

    /// The strip of the plate that is its upper border.
    pub fn upper_border(&self) -> Self {
        let mut strip = self.clone();
        let Table { corner, columns, values, .. } = Arc::make_mut(&mut strip.table);
        for (i, value) in values.iter_mut().enumerate() {
            let t = corner.y + SPACING_MM * (i / *columns) as f32;
            value[0] = value[0].max(-self.bead.width - value[0]).max(self.bead.above - t);
        }
        strip
    }

    /// First-order distance, mm.
    pub fn distance(&self, p: Vec3) -> f32 {
        let q = self.local(p);
        let Place { edge, middle, half, slope } = self.table.at(q.truncate());
        // Steeper than a plane, the middle surface is nearer than straight down.
        let n = (q.z - middle) / (1.0 + slope.length_squared()).sqrt();
        let past = (edge + half).max(0.0);
        (past * past + n * n).sqrt() - half
    }

    /// Whether a point lies in the upper border.
    pub fn on_upper_border(&self, p: Vec3) -> bool {
        let q = self.local(p).truncate();
        q.y > self.bead.above && self.table.at(q).edge > -self.bead.width
    }

    /// A ball that holds the plate.
    pub fn ball(&self) -> (Vec3, f32) {
        (self.origin + self.axes * self.ball.0, self.ball.1)
    }

    fn local(&self, p: Vec3) -> Vec3 {
        let r = p - self.origin;
        Vec3::new(r.dot(self.axes.x_axis), r.dot(self.axes.y_axis), r.dot(self.axes.z_axis))
    }
}

impl Table {
    fn at(&self, q: Vec2) -> Place {
        let u = (q - self.corner) / SPACING_MM;
        let most = Vec2::new((self.columns - 1) as f32, (self.rows - 1) as f32);
        let within = u.clamp(Vec2::ZERO, most);
        let cell = within.floor().min(most - 1.0);
        let f = within - cell;
        let first = cell.x as usize + self.columns * cell.y as usize;
        let [a, b, c, d] = [first, first + 1, first + self.columns, first + self.columns + 1]
            .map(|i| Vec3::from_array(self.values[i]));
        let (low, high) = (a.lerp(b, f.x), c.lerp(d, f.x));
        let value = low.lerp(high, f.y);
        // Beyond the table the outline is further by as much as the point lies outside.
        let beyond = (u - within).length() * SPACING_MM;
        let slope = Vec2::new((b - a).lerp(d - c, f.y).y, (high - low).y) / SPACING_MM;
        Place { edge: value.x + beyond, middle: value.y, half: value.z, slope }
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

    #[test]
    fn plate_is_as_thick_as_asked_and_ends_round_at_its_outline() {
        let square = [Vec2::ZERO, Vec2::new(60.0, 0.0), Vec2::new(60.0, 60.0), Vec2::new(0.0, 60.0)];
        let bead = Bead { width: 9.0, above: 30.0 };
        let plate = Sheet::new(Vec3::ZERO, Mat3::IDENTITY, &square, bead, |q| (0.1 * q.x, 4.0));
        // On a slope of 0.1 the wall is 4 mm away from the middle surface, measured square to it.
        let lift = 4.0 * 1.01_f32.sqrt();
        for wall in [Vec3::new(30.0, 30.0, 3.0 + lift), Vec3::new(30.0, 30.0, 3.0 - lift)] {
            assert!(plate.distance(wall).abs() < 1e-3, "{wall}");
        }
        assert!(plate.distance(Vec3::new(30.0, 60.0, 3.0)).abs() < 1e-3);
        assert!(plate.distance(Vec3::new(30.0, 90.0, 3.0)) > 29.0);
        assert!(plate.on_upper_border(Vec3::new(30.0, 55.0, 3.0)));
        assert!(!plate.on_upper_border(Vec3::new(30.0, 45.0, 3.0)));
        let strip = plate.upper_border();
        assert!(strip.distance(Vec3::new(30.0, 55.5, 3.0)) < 0.0);
        assert!(strip.distance(Vec3::new(30.0, 45.0, 3.0)) > 4.0);
    }
}

//! One bone: shapes melted together, then carved by its neighbours.
//!
//! The field is the smooth union of the pieces (each with its own blend radius), a facet cutting its own piece only,
//! minus the carves: `d = smax(d, gap - carve)`. The cortical thickness is blended with the same weights, so the
//! marrow space is where `d + cortex < 0`. One field answers the mesh, the film and the needle.

use super::sdf::{Shape, smooth_max, smooth_min};
use glam::Vec3;

/// A surface that cuts one piece: a joint facet. Outside is where `normal · r > curvature · (tangent · r)²`.
#[derive(Clone, Copy, Debug)]
pub struct Facet {
    /// A point of the facet, mm.
    pub point: Vec3,
    /// Unit normal out of the bone.
    pub normal: Vec3,
    /// Unit direction across the facet in which it is curved.
    pub tangent: Vec3,
    /// Half the inverse radius, 1/mm; > 0 is a hollow facet.
    pub curvature: f32,
}

impl Facet {
    /// First-order signed distance, positive on the joint's side, mm.
    pub fn distance(&self, p: Vec3) -> f32 {
        let r = p - self.point;
        let t = r.dot(self.tangent);
        let slope = 2.0 * self.curvature * t;
        (r.dot(self.normal) - self.curvature * t * t) / (1.0 + slope * slope).sqrt()
    }
}

/// One shape of a bone.
#[derive(Clone, Debug)]
pub struct Piece {
    /// The shape, in the bone's own frame, mm.
    pub shape: Shape,
    /// The caller's number for the part that this piece belongs to.
    pub tag: u8,
    /// Nominal cortical thickness, mm.
    pub cortex_mm: f32,
    /// Blend radius with what came before, mm.
    pub blend_mm: f32,
    /// The facet that cuts it, if it carries one.
    pub facet: Option<Facet>,
    hung_at: Vec3,
    ball: (Vec3, f32),
}

/// Radius of a facet's rim, mm.
const FACET_EDGE_MM: f32 = 1.2;

impl Piece {
    /// A piece without a facet.
    pub fn new(shape: Shape, tag: u8, cortex_mm: f32, blend_mm: f32) -> Self {
        Self::hung(shape, tag, cortex_mm, blend_mm, Vec3::ZERO)
    }

    /// A piece whose shape's own origin stands at `at` (mm) in the bone's frame.
    pub fn hung(shape: Shape, tag: u8, cortex_mm: f32, blend_mm: f32, at: Vec3) -> Self {
        let (centre, radius) = shape.ball();
        Self { shape, tag, cortex_mm, blend_mm, facet: None, hung_at: at, ball: (centre + at, radius) }
    }

    /// The point in the shape's own frame.
    pub fn shape_point(&self, p: Vec3) -> Vec3 {
        p - self.hung_at
    }

    /// The same piece cut by `facet`.
    pub fn with_facet(self, facet: Facet) -> Self {
        Self { facet: Some(facet), ..self }
    }

    /// Signed distance (mm) and cortical thickness (mm).
    pub fn sample(&self, p: Vec3) -> (f32, f32) {
        let (d, cortex) = self.shape.sample(self.shape_point(p));
        let d = match &self.facet {
            Some(facet) => smooth_max(d, facet.distance(p), FACET_EDGE_MM),
            None => d,
        };
        (d, cortex * self.cortex_mm)
    }
}

impl Piece {
    /// [`Self::sample`] of many points; `local` is scratch of the same length.
    fn samples(&self, points: &[Vec3], local: &mut [Vec3], distance: &mut [f32], cortex: &mut [f32]) {
        for (q, &p) in local.iter_mut().zip(points) {
            *q = self.shape_point(p);
        }
        self.shape.samples(local, distance, cortex);
        if let Some(facet) = &self.facet {
            for (d, &p) in distance.iter_mut().zip(points) {
                *d = smooth_max(*d, facet.distance(p), FACET_EDGE_MM);
            }
        }
    }
}

/// Something taken away: a canal, or the neighbour's process with the joint space around it.
#[derive(Clone, Debug)]
pub struct Carve {
    /// The shape to take away, with its own facet if it has one.
    pub piece: Piece,
    /// How far around it, mm.
    pub gap_mm: f32,
}

/// Field value at a point.
#[derive(Clone, Copy, Debug)]
pub struct Sample {
    /// Signed distance to the bone's surface, negative inside, mm.
    pub distance: f32,
    /// Thickness of the cortex under the nearest surface, mm.
    pub cortex: f32,
    /// Index of the piece whose own surface is nearest.
    pub nearest: u8,
}

/// A bone in its own frame.
#[derive(Clone, Debug, Default)]
pub struct Solid {
    /// Melted together in this order.
    pub pieces: Vec<Piece>,
    /// Taken away afterwards.
    pub carves: Vec<Carve>,
}

/// Far outside everything, mm.
pub const FAR_MM: f32 = 1.0e3;
/// Radius of the edge where a carve meets the surface, mm.
const CARVE_EDGE_MM: f32 = 1.0;

/// What rounding can make of a distance, mm.
const ROUNDING_MM: f32 = 1e-3;

/// Most points that are sampled in one go.
pub const AT_ONCE: usize = 64;

/// Pieces further apart than this do not blend, mm.
const WIDEST_BLEND_MM: f32 = 8.0;

/// How much further than its blend radius a piece is kept, mm: a lattice edge across the surface, so that values on both its ends stay.
const NARROW_MM: f32 = 2.0;

/// Which pieces and carves can matter in a region; indices into the solid's lists.
#[derive(Clone, Debug, Default)]
pub struct Active {
    /// Piece indices.
    pub pieces: Vec<u8>,
    /// Carve indices.
    pub carves: Vec<u8>,
}

impl Solid {
    /// Everything active.
    pub fn all(&self) -> Active {
        Active {
            pieces: (0..self.pieces.len() as u8).collect(),
            carves: (0..self.carves.len() as u8).collect(),
        }
    }

    /// The thickest nominal cortex with room for the plates' factor, mm.
    pub fn thickest_cortex(&self) -> f32 {
        self.pieces.iter().map(|p| p.cortex_mm).fold(0.0, f32::max) * 2.0
    }

    /// The box that holds the bone: lowest and highest corner, mm.
    pub fn bounds(&self) -> (Vec3, Vec3) {
        let mut low = Vec3::splat(FAR_MM);
        let mut high = Vec3::splat(-FAR_MM);
        for piece in &self.pieces {
            let (centre, radius) = piece.ball;
            low = low.min(centre - radius);
            high = high.max(centre + radius);
        }
        (low, high)
    }

    /// Replaces `active` by what can touch a ball around `centre`.
    pub fn activate(&self, centre: Vec3, radius: f32, active: &mut Active) {
        active.pieces.clear();
        active.carves.clear();
        for (i, piece) in self.pieces.iter().enumerate() {
            let (c, r) = piece.ball;
            let reach = r + radius + piece.blend_mm;
            if c.distance_squared(centre) < reach * reach {
                active.pieces.push(i as u8);
            }
        }
        for (i, carve) in self.carves.iter().enumerate() {
            let (c, r) = carve.piece.ball;
            let reach = r + radius + carve.gap_mm + CARVE_EDGE_MM;
            if c.distance_squared(centre) < reach * reach {
                active.carves.push(i as u8);
            }
        }
    }

    /// Drops from `active` what changes neither surface throughout a ball around `centre`: pieces that stay further from both than they
    /// blend, and carves that end before the cortex does. Signs stay as they are everywhere; values stay near both surfaces.
    pub fn narrow(&self, centre: Vec3, radius: f32, active: &mut Active) {
        let spread = radius * super::sdf::SAFETY;
        let at = |piece: &Piece| piece.sample(centre).0;
        let (mut nearest, mut nearest_i) = (FAR_MM, u8::MAX);
        let mut kept = 0;
        for n in 0..active.pieces.len() {
            let i = active.pieces[n];
            let piece = &self.pieces[usize::from(i)];
            let d = at(piece);
            if d < nearest {
                (nearest, nearest_i) = (d, i);
            }
            if d < spread + piece.blend_mm + NARROW_MM {
                active.pieces[kept] = i;
                kept += 1;
            }
        }
        active.pieces.truncate(kept);
        if kept == 0 {
            active.pieces.push(nearest_i);
        }
        let reach = spread + CARVE_EDGE_MM + self.thickest_cortex();
        active.carves.retain(|&i| {
            let carve = &self.carves[usize::from(i)];
            at(&carve.piece) < reach + carve.gap_mm
        });
    }

    /// The field from the active pieces only.
    pub fn sample_active(&self, p: Vec3, active: &Active) -> Sample {
        let mut distance = FAR_MM;
        let mut cortex = 1.0;
        let (mut nearest, mut least) = (0, FAR_MM);
        for &i in &active.pieces {
            let piece = &self.pieces[usize::from(i)];
            let (d, c) = piece.sample(p);
            if d < least {
                (nearest, least) = (i, d);
            }
            let (blended, weight) = smooth_min(distance, d, piece.blend_mm);
            distance = blended;
            cortex += (c - cortex) * weight;
        }
        for &i in &active.carves {
            let carve = &self.carves[usize::from(i)];
            distance = smooth_max(distance, carve.gap_mm - carve.piece.sample(p).0, CARVE_EDGE_MM);
        }
        Sample { distance, cortex, nearest }
    }

    /// The field at up to [`AT_ONCE`] points, a piece after the other: signed distances and cortical thicknesses, mm. The same values as
    /// [`Self::sample_active`] gives one by one.
    pub fn sample_many(&self, points: &[Vec3], active: &Active, distance: &mut [f32], cortex: &mut [f32]) {
        cortex.fill(1.0);
        self.melt_many(points, active, distance, |i, _, factor, weight| {
            let nominal = self.pieces[usize::from(i)].cortex_mm;
            for ((cortex, factor), weight) in cortex.iter_mut().zip(factor).zip(weight) {
                *cortex += (factor * nominal - *cortex) * weight;
            }
        });
    }

    /// Signed distances at up to [`AT_ONCE`] points, mm, and the index of the piece whose own surface is nearest to each, as
    /// [`Self::sample_active`] has them.
    pub fn nearest_many(&self, points: &[Vec3], active: &Active, distance: &mut [f32], nearest: &mut [u8]) {
        let mut least = [FAR_MM; AT_ONCE];
        nearest.fill(0);
        self.melt_many(points, active, distance, |i, own, _, _| {
            for ((nearest, least), &own) in nearest.iter_mut().zip(&mut least).zip(own) {
                if own < *least {
                    (*nearest, *least) = (i, own);
                }
            }
        });
    }

    /// Signed distances, mm. `piece` gets each piece in the order in which they melt: its index, its own distances, the factors of its
    /// cortex and its weights in the blend.
    fn melt_many(
        &self,
        points: &[Vec3],
        active: &Active,
        distance: &mut [f32],
        mut piece: impl FnMut(u8, &[f32], &[f32], &[f32]),
    ) {
        let mut local = [Vec3::ZERO; AT_ONCE];
        let [mut own, mut factor, mut weight] = [[0.0_f32; AT_ONCE]; 3];
        let n = points.len();
        let (local, own, factor, weight) =
            (&mut local[..n], &mut own[..n], &mut factor[..n], &mut weight[..n]);
        distance.fill(FAR_MM);
        for &i in &active.pieces {
            let one = &self.pieces[usize::from(i)];
            one.samples(points, local, own, factor);
            for ((distance, own), weight) in distance.iter_mut().zip(&*own).zip(&mut *weight) {
                (*distance, *weight) = smooth_min(*distance, *own, one.blend_mm);
            }
            piece(i, own, factor, weight);
        }
        for &i in &active.carves {
            let carve = &self.carves[usize::from(i)];
            carve.piece.samples(points, local, own, factor);
            for (distance, own) in distance.iter_mut().zip(&*own) {
                *distance = smooth_max(*distance, carve.gap_mm - own, CARVE_EDGE_MM);
            }
        }
    }

    /// The distance at a point, asking only what can matter within `reach_mm` of it; further out at least `reach_mm`. mm.
    pub fn distance_within(&self, p: Vec3, reach_mm: f32) -> f32 {
        // No loft's field is less than the distance to its ball; one that is out of its blend's reach leaves the distance as it is.
        let apart = |piece: &Piece| match piece.shape {
            Shape::Loft(_) => piece.ball.0.distance(p) - piece.ball.1 - ROUNDING_MM,
            _ => -FAR_MM,
        };
        let near = |piece: &Piece, gap_mm: f32| {
            let (centre, radius) = piece.ball;
            let far = radius + reach_mm + gap_mm + WIDEST_BLEND_MM;
            centre.distance_squared(p) < far * far
        };
        let mut distance = FAR_MM;
        for piece in self.pieces.iter().filter(|piece| near(piece, 0.0)) {
            if apart(piece) < distance + piece.blend_mm {
                distance = smooth_min(distance, piece.sample(p).0, piece.blend_mm).0;
            }
        }
        for carve in self.carves.iter().filter(|carve| near(&carve.piece, carve.gap_mm)) {
            if carve.gap_mm - apart(&carve.piece) > distance - CARVE_EDGE_MM {
                distance = smooth_max(distance, carve.gap_mm - carve.piece.sample(p).0, CARVE_EDGE_MM);
            }
        }
        distance
    }

    /// The field at a point.
    pub fn sample(&self, p: Vec3) -> Sample {
        self.sample_active(p, &self.all())
    }
}

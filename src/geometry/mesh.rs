//! Indexed triangle meshes: closed, outward, mm.

use glam::{DVec3, Vec3};

/// A closed surface. Counter-clockwise triangles seen from outside.
#[derive(Clone, Debug, Default)]
pub struct Mesh {
    /// mm.
    pub positions: Vec<Vec3>,
    /// Unit normals out of the solid, one a vertex.
    pub normals: Vec<Vec3>,
    /// The caller's number for the part that each vertex belongs to.
    pub tags: Vec<u8>,
    /// Three vertex indices each.
    pub triangles: Vec<[u32; 3]>,
}

/// For every triangle the numbers of its three edges (edge `e` runs from corner `e` to corner `e + 1`).
#[derive(Clone, Debug, Default)]
pub struct Edges {
    /// Edge numbers a triangle.
    pub of_triangle: Vec<[u32; 3]>,
    /// How many triangles share each edge; 2 everywhere on a closed surface.
    pub faces: Vec<u8>,
    /// The first two triangles of each edge.
    pub triangles: Vec<[u32; 2]>,
    /// The two vertices of each edge, as the first triangle runs along it.
    pub ends: Vec<[u32; 2]>,
}

impl Mesh {
    /// Volume by the divergence theorem, mm³; positive when the triangles face outwards.
    pub fn volume(&self) -> f64 {
        self.triangles
            .iter()
            .map(|t| {
                let [a, b, c] = t.map(|i| self.positions[i as usize].as_dvec3());
                a.dot(b.cross(c)) / 6.0
            })
            .sum()
    }

    /// Adds another mesh beside what is there.
    pub fn append(&mut self, other: &Self) {
        let first = self.positions.len() as u32;
        self.positions.extend(&other.positions);
        self.normals.extend(&other.normals);
        self.tags.extend(&other.tags);
        self.triangles.extend(other.triangles.iter().map(|t| t.map(|i| i + first)));
    }

    /// Without bodies of less than `share` of the largest one's triangles: specks that a lattice leaves where a surface only just comes
    /// through. A mesh of one body is given back as it is.
    pub fn without_specks(self, share: f64) -> Self {
        // Each vertex points towards the lowest one of its body.
        let mut lowest: Vec<u32> = (0..self.positions.len() as u32).collect();
        fn root(lowest: &mut [u32], mut i: u32) -> u32 {
            while lowest[i as usize] != i {
                lowest[i as usize] = lowest[lowest[i as usize] as usize];
                i = lowest[i as usize];
            }
            i
        }
        for t in &self.triangles {
            let [a, b, c] = t.map(|i| root(&mut lowest, i));
            let least = a.min(b).min(c);
            for i in [a, b, c] {
                lowest[i as usize] = least;
            }
        }
        let bodies: Vec<u32> = self.triangles.iter().map(|t| root(&mut lowest, t[0])).collect();
        let mut size = vec![0_u32; self.positions.len()];
        bodies.iter().for_each(|&body| size[body as usize] += 1);
        let largest = size.iter().copied().max().unwrap_or(0);
        let kept = |body: u32| f64::from(size[body as usize]) >= share * f64::from(largest);
        if bodies.iter().all(|&body| kept(body)) {
            return self;
        }
        let mut number = vec![u32::MAX; self.positions.len()];
        let mut mesh = Self::default();
        for (t, _) in self.triangles.iter().zip(&bodies).filter(|(_, body)| kept(**body)) {
            mesh.triangles.push(t.map(|i| {
                let i = i as usize;
                if number[i] == u32::MAX {
                    number[i] = mesh.positions.len() as u32;
                    mesh.positions.push(self.positions[i]);
                    mesh.normals.push(self.normals[i]);
                    mesh.tags.push(self.tags[i]);
                }
                number[i]
            }));
        }
        mesh
    }

    /// Numbers the edges.
    pub fn edges(&self) -> Edges {
        // Edges are kept in a list at their lower vertex; a vertex has about six neighbours, three of them higher.
        let mut first = vec![u32::MAX; self.positions.len()];
        let mut next: Vec<u32> = Vec::with_capacity(self.triangles.len() * 3 / 2);
        let mut upper: Vec<u32> = Vec::with_capacity(self.triangles.len() * 3 / 2);
        let mut faces: Vec<u8> = Vec::with_capacity(self.triangles.len() * 3 / 2);
        let mut triangles: Vec<[u32; 2]> = Vec::with_capacity(self.triangles.len() * 3 / 2);
        let mut ends: Vec<[u32; 2]> = Vec::with_capacity(self.triangles.len() * 3 / 2);
        let mut of_triangle = Vec::with_capacity(self.triangles.len());
        for (number, t) in self.triangles.iter().enumerate() {
            let mut ids = [0; 3];
            for e in 0..3 {
                let (a, b) = (t[e], t[(e + 1) % 3]);
                let (low, high) = (a.min(b), a.max(b));
                let mut at = first[low as usize];
                while at != u32::MAX && upper[at as usize] != high {
                    at = next[at as usize];
                }
                if at == u32::MAX {
                    at = upper.len() as u32;
                    upper.push(high);
                    faces.push(0);
                    triangles.push([number as u32; 2]);
                    ends.push([a, b]);
                    next.push(first[low as usize]);
                    first[low as usize] = at;
                }
                if faces[at as usize] == 1 {
                    triangles[at as usize][1] = number as u32;
                }
                faces[at as usize] = faces[at as usize].saturating_add(1);
                ids[e] = at;
            }
            of_triangle.push(ids);
        }
        Edges { of_triangle, faces, triangles, ends }
    }

    /// Whether every edge has exactly two triangles, which run along it in opposite directions.
    pub fn is_closed(&self) -> bool {
        let edges = self.edges();
        let mut direction = vec![0_i32; edges.faces.len()];
        for (t, ids) in self.triangles.iter().zip(&edges.of_triangle) {
            for e in 0..3 {
                direction[ids[e] as usize] += if t[e] < t[(e + 1) % 3] { 1 } else { -1 };
            }
        }
        edges.faces.iter().all(|&n| n == 2) && direction.iter().all(|&d| d == 0)
    }

    /// Moves every vertex by `motion` (a rigid one: normals are turned along).
    pub fn moved(mut self, motion: &super::frame::Rigid) -> Self {
        for p in &mut self.positions {
            *p = motion.point(p.as_dvec3()).as_vec3();
        }
        for n in &mut self.normals {
            *n = motion.direction(n.as_dvec3()).as_vec3();
        }
        self
    }

    /// The mirror image in the plane x = 0; `retag` renames the parts.
    pub fn mirrored(&self, retag: impl Fn(u8) -> u8) -> Self {
        let flip = |v: &Vec3| Vec3::new(-v.x, v.y, v.z);
        Self {
            positions: self.positions.iter().map(flip).collect(),
            normals: self.normals.iter().map(flip).collect(),
            tags: self.tags.iter().map(|&t| retag(t)).collect(),
            triangles: self.triangles.iter().map(|&[a, b, c]| [a, c, b]).collect(),
        }
    }

    /// Lowest and highest corner of the box around it, mm.
    pub fn bounds(&self) -> (DVec3, DVec3) {
        self.positions
            .iter()
            .fold((DVec3::MAX, DVec3::MIN), |(low, high), p| (low.min(p.as_dvec3()), high.max(p.as_dvec3())))
    }
}

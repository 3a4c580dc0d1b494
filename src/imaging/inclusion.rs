//! What lies in the patient and is not the patient: a needle's steel, contrast. Closed bodies that take the place of a tissue.

use super::attenuation::{Material, per_mm};
use crate::geometry::chunks::{Chunk, chunks};
use crate::geometry::mesh::{Edges, Mesh};

/// A closed body, column frame.
#[derive(Clone, Debug)]
pub struct Inclusion {
    /// Its surface; positions and triangles only.
    pub mesh: Mesh,
    /// Edge numbers.
    pub edges: Edges,
    /// Runs of triangles.
    pub chunks: Vec<Chunk>,
    /// What it is of.
    pub material: Material,
    /// What it takes the place of.
    pub instead_of: Material,
    /// How much of it is the material, 0 to 1; < 0 takes back what another body has put there.
    pub share: f64,
}

impl Inclusion {
    /// From a closed mesh.
    pub fn new(mesh: Mesh, material: Material, instead_of: Material, share: f64) -> Self {
        let edges = mesh.edges();
        let chunks = chunks(&mesh, &edges);
        Self { mesh, edges, chunks, material, instead_of, share }
    }

    /// Step of attenuation against what it replaces, 1/mm.
    pub fn step_per_mm(&self, energy_kev: f64) -> f64 {
        self.share * (per_mm(self.material, energy_kev) - per_mm(self.instead_of, energy_kev))
    }
}

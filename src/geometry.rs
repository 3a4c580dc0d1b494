//! Shapes and their meshes: signed distance fields, a lattice to sample them on, surface nets, polylines.

pub mod frame;

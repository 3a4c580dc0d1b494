//! Shapes and their meshes: signed distance fields, a lattice to sample them on, surface nets, polylines.

pub mod chunks;
pub mod frame;
pub mod lattice;
pub mod mesh;
pub mod pipe;
pub mod polyline;
pub mod sdf;
pub mod solid;
pub mod surface_nets;

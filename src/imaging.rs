//! What the C-arm sees: the cone beam, outlines of the parts, and the radiograph.

pub mod attenuation;
pub mod c_arm;
pub mod contour;
pub mod outline;
pub mod path_length;
pub mod projection;
pub mod radiograph;

//! What the C-arm sees: the cone beam, outlines of the parts, the radiograph, and what it costs in dose.

pub mod attenuation;
pub mod c_arm;
pub mod clearance;
pub mod contour;
pub mod detector;
pub mod display;
pub mod dose;
pub mod exposure;
pub mod inclusion;
pub mod onlooker;
pub mod outline;
pub mod path_length;
pub mod projection;
pub mod radiograph;
pub mod spectrum;
pub mod trabeculae;
pub mod tube;

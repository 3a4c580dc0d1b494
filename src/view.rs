//! How good a view is: criteria from the rays through the objects, advice, the best reachable view, and the report.

pub mod best_view;
pub mod criteria;
pub mod feedback;
pub mod image_axes;
pub mod report;
pub mod silhouette;
pub mod tolerance;

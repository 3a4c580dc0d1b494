//! The twelfth rib as a solid, in the frame of T12. Course from memory: back from the body's side, out, and steeply down.
//!
//! Limits: one rib a side; its length varies widely in life (memory: 20–140 mm).

use super::names::{Part, Side};
use super::place::Place;
use crate::geometry::solid::Solid;

/// Nodes of the left rib, mm, at scale 1.
const COURSE_MM: [[f64; 3]; 6] = [
    [23.0, 13.0, 3.0],
    [36.0, 28.0, -1.0],
    [52.0, 37.0, -9.0],
    [71.0, 39.0, -23.0],
    [88.0, 33.0, -41.0],
    [100.0, 22.0, -58.0],
];

/// Builds the rib of a side.
pub(super) fn solid(side: Side, scale: f64) -> Solid {
    let place = Place::own(Some(side));
    let mut solid = Solid::default();
    for (i, pair) in COURSE_MM.windows(2).enumerate() {
        let node = |c: [f64; 3]| c.map(|x| x * scale);
        let tall = [4.6, 5.0, 5.4, 5.2, 4.4, 2.8].map(|x| x * scale);
        let thin = [3.6, 3.2, 2.8, 2.6, 2.4, 2.0].map(|x| x * scale);
        let shape = place.strut(
            node(pair[0]),
            node(pair[1]),
            [0.25, 0.0, 1.0],
            [tall[i], tall[i + 1]],
            [thin[i], thin[i + 1]],
            false,
        );
        solid.pieces.push(place.piece(Part::Rib, shape, 0.9, 0.4));
    }
    solid
}

//! The three lowest ribs as solids, each in the frame of its own vertebra. Courses from memory: back from the body's side, out over the
//! transverse process, and down, the lower the steeper and the shorter.
//!
//! Limits: one rib a side and level; the twelfth varies widely in length in life (memory: 20–140 mm). The tenth and eleventh are cut
//! where no lumbar view reaches them any more.

use super::names::{Part, Side};
use super::place::Place;
use crate::geometry::solid::Solid;

/// Which rib.
#[derive(Clone, Copy, Debug)]
pub(super) enum Rib {
    Tenth,
    Eleventh,
    Twelfth,
}

/// A place of a rib's axis: [left, posterior, cranial], half height and half thickness, mm at scale 1.
type Section = ([f64; 3], f64, f64);

const TWELFTH_MM: [Section; 7] = [
    ([20.5, 11.5, 4.5], 3.4, 3.2),
    ([34.0, 27.0, -1.0], 4.2, 3.4),
    ([49.0, 36.5, -11.0], 5.2, 3.0),
    ([65.0, 39.5, -26.0], 5.6, 2.8),
    ([79.0, 35.5, -43.0], 5.2, 2.6),
    ([88.0, 28.5, -57.0], 4.2, 2.4),
    ([93.0, 21.0, -67.0], 2.6, 1.9),
];
const ELEVENTH_MM: [Section; 8] = [
    ([19.5, 11.0, 5.0], 3.6, 3.4),
    ([33.0, 28.0, 2.0], 4.6, 3.6),
    ([52.0, 37.0, -5.0], 5.6, 3.2),
    ([75.0, 39.0, -18.0], 6.2, 3.0),
    ([96.0, 31.0, -36.0], 6.4, 3.0),
    ([111.0, 17.0, -56.0], 6.2, 3.0),
    ([119.0, -2.0, -76.0], 5.6, 2.8),
    ([119.0, -25.0, -94.0], 2.6, 1.9),
];
const TENTH_MM: [Section; 9] = [
    ([18.0, 10.0, 6.0], 3.8, 3.6),
    ([32.0, 28.0, 4.0], 4.8, 3.8),
    ([53.0, 38.0, -2.0], 5.8, 3.4),
    ([79.0, 40.0, -13.0], 6.4, 3.2),
    ([103.0, 30.0, -29.0], 6.6, 3.2),
    ([120.0, 11.0, -49.0], 6.6, 3.2),
    ([129.0, -13.0, -70.0], 6.4, 3.2),
    ([127.0, -39.0, -90.0], 6.0, 3.0),
    ([117.0, -78.0, -110.0], 5.6, 2.8),
];

/// Builds the rib of a side.
pub(super) fn solid(rib: Rib, side: Side, scale: f64) -> Solid {
    let sections: &[Section] = match rib {
        Rib::Tenth => &TENTH_MM,
        Rib::Eleventh => &ELEVENTH_MM,
        Rib::Twelfth => &TWELFTH_MM,
    };
    let place = Place::own(Some(side));
    let mut solid = Solid::default();
    let fine = refined(&refined(sections));
    for pair in fine.windows(2) {
        let [(a, tall_a, thin_a), (b, tall_b, thin_b)] = [pair[0], pair[1]];
        let scaled = |v: [f64; 3]| v.map(|x| x * scale);
        let shape = place.strut(
            scaled(a),
            scaled(b),
            [0.25, 0.0, 1.0],
            [tall_a * scale, tall_b * scale],
            [thin_a * scale, thin_b * scale],
            false,
        );
        solid.pieces.push(place.piece(Part::Rib, shape, 0.9, 0.4));
    }
    solid
}

/// Every second section of the result is new, on the smooth curve through the old ones (Catmull & Rom 1974).
fn refined(sections: &[Section]) -> Vec<Section> {
    let at = |i: usize| flat(&sections[i]);
    let mut fine = vec![sections[0]];
    for i in 1..sections.len() {
        let (a, b) = (at(i - 1), at(i));
        let before = if i >= 2 { at(i - 2) } else { a };
        let after = if i + 1 < sections.len() { at(i + 1) } else { b };
        let middle: [f64; 5] = std::array::from_fn(|n| (9.0 * (a[n] + b[n]) - before[n] - after[n]) / 16.0);
        let [x, y, z, tall, thin] = middle;
        fine.push(([x, y, z], tall, thin));
        fine.push(sections[i]);
    }
    fine
}

fn flat(&([x, y, z], tall, thin): &Section) -> [f64; 5] {
    [x, y, z, tall, thin]
}

//! Which crossed edges of a cell belong to one sheet, for each of the 256 patterns of signs at its corners.
//!
//! Edges are linked over the cell's faces; an ambiguous face (inside at two opposite corners) always separates its inside corners, so
//! that neighbours agree.

use std::sync::LazyLock;

/// Offset of corner `c`: bit 0 is x, bit 1 y, bit 2 z.
pub(super) const fn offset(c: usize) -> [usize; 3] {
    [c & 1, (c >> 1) & 1, (c >> 2) & 1]
}

/// The two corners of each of a cell's twelve edges; edges 0-3 run along x, 4-7 along y, 8-11 along z.
pub(super) const EDGE_CORNERS: [[usize; 2]; 12] =
    [[0, 1], [2, 3], [4, 5], [6, 7], [0, 2], [1, 3], [4, 6], [5, 7], [0, 4], [1, 5], [2, 6], [3, 7]];

/// The corners of each face in order around it.
const FACES: [[usize; 4]; 6] =
    [[0, 2, 6, 4], [1, 3, 7, 5], [0, 1, 5, 4], [2, 3, 7, 6], [0, 1, 3, 2], [4, 5, 7, 6]];

fn edge_between(a: usize, b: usize) -> usize {
    (0..12).find(|&e| EDGE_CORNERS[e] == [a.min(b), a.max(b)]).unwrap_or_default()
}

/// The number that a lattice edge along an axis has in each of the four cells around it: `[axis][du][dv]`, where the cell lies `du` and `dv`
/// below the edge along the next axis but one and two.
pub(super) const EDGE_AROUND: [[[usize; 2]; 2]; 3] = [[[0, 2], [1, 3]], [[4, 5], [6, 7]], [[8, 10], [9, 11]]];

/// For each of the 256 sign patterns: the sheet of each crossed edge, how many sheets, and the sheets of the two links of
/// each ambiguous face.
pub(super) struct Pattern {
    pub(super) sheet: [u8; 12],
    pub(super) sheets: u8,
    pub(super) ambiguous: [Option<[u8; 2]>; 6],
}

pub(super) static PATTERNS: LazyLock<Vec<Pattern>> = LazyLock::new(|| (0..256).map(pattern).collect());

/// The pairs of crossed edges that a face links.
fn links(signs: usize, face: [usize; 4]) -> Vec<[usize; 2]> {
    let inside = |c: usize| signs >> c & 1 == 1;
    let crossed: Vec<usize> = (0..4).filter(|&i| inside(face[i]) != inside(face[(i + 1) % 4])).collect();
    let edge = |i: usize| edge_between(face[i % 4], face[(i + 1) % 4]);
    match crossed.len() {
        2 => vec![[edge(crossed[0]), edge(crossed[1])]],
        // The two edges that meet at each inside corner belong together.
        4 => (0..4).filter(|&i| inside(face[i])).map(|i| [edge(i + 3), edge(i)]).collect(),
        _ => Vec::new(),
    }
}

fn pattern(signs: usize) -> Pattern {
    let mut group: [usize; 12] = std::array::from_fn(|e| e);
    for face in FACES {
        for [a, b] in links(signs, face) {
            let (from, to) = (group[a], group[b]);
            group.iter_mut().filter(|g| **g == from).for_each(|g| *g = to);
        }
    }
    let mut names: Vec<usize> = Vec::new();
    let mut sheet = [u8::MAX; 12];
    for e in 0..12 {
        let [a, b] = EDGE_CORNERS[e];
        if (signs >> a & 1) != (signs >> b & 1) {
            let at = names.iter().position(|&g| g == group[e]).unwrap_or_else(|| {
                names.push(group[e]);
                names.len() - 1
            });
            sheet[e] = at as u8;
        }
    }
    let ambiguous = FACES.map(|face| match links(signs, face)[..] {
        [first, second] => Some([sheet[first[0]], sheet[second[0]]]),
        _ => None,
    });
    Pattern { sheet, sheets: names.len() as u8, ambiguous }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edge_has_the_number_of_its_two_corners_in_each_cell_around_it() {
        for (axis, around) in EDGE_AROUND.iter().enumerate() {
            let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
            for (du, dv) in [(0, 0), (1, 0), (1, 1), (0, 1)] {
                let low = du << u | dv << v;
                assert_eq!(around[du][dv], edge_between(low, low | 1 << axis), "axis {axis}, {du} {dv}");
            }
        }
    }
}

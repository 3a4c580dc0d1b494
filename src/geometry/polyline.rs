//! Polylines on the detector: clipping to the square field, and leaving out points that lie on the way.

/// A point on the detector, mm.
pub type Point = [f32; 2];

/// Cuts a polyline to the square |u|, |v| <= `half` and calls `emit` with each piece that is left. A closed line is given with its
/// first point repeated at the end.
pub fn clip(points: &[Point], half: f32, mut emit: impl FnMut(&[Point])) {
    let inside = |p: &Point| p[0].abs() <= half && p[1].abs() <= half;
    if points.iter().all(inside) {
        emit(points);
        return;
    }
    let mut piece: Vec<Point> = Vec::new();
    for pair in points.windows(2) {
        let Some((from, to)) = clip_segment(pair[0], pair[1], half) else {
            if piece.len() > 1 {
                emit(&piece);
            }
            piece.clear();
            continue;
        };
        if piece.is_empty() {
            piece.push(from);
        }
        piece.push(to);
        if to != pair[1] {
            emit(&piece);
            piece.clear();
        }
    }
    if piece.len() > 1 {
        emit(&piece);
    }
}

/// The points of a polyline without which it would run elsewhere by more than `tolerance` (same unit as the points), ends included:
/// Douglas and Peucker 1973, Cartographica 10:112. `kept` is emptied and filled with their places in the list, in order.
pub fn needed_points(points: &[Point], tolerance: f32, kept: &mut Vec<usize>) {
    kept.clear();
    let Some(last) = points.len().checked_sub(1) else { return };
    kept.push(0);
    // Stretches still to be looked at, the first one on top.
    let mut open = if last > 0 { vec![(0, last)] } else { Vec::new() };
    while let Some((from, to)) = open.pop() {
        let (mut far, mut at) = (tolerance * tolerance, None);
        for i in from + 1..to {
            let off = squared_distance(points[i], points[from], points[to]);
            if off > far {
                (far, at) = (off, Some(i));
            }
        }
        match at {
            Some(i) => open.extend([(i, to), (from, i)]),
            None => kept.push(to),
        }
    }
}

/// From a point to the stretch from `a` to `b`.
fn squared_distance(p: Point, a: Point, b: Point) -> f32 {
    let (ab, ap) = ([b[0] - a[0], b[1] - a[1]], [p[0] - a[0], p[1] - a[1]]);
    let length = ab[0] * ab[0] + ab[1] * ab[1];
    let share = if length > 0.0 { ((ab[0] * ap[0] + ab[1] * ap[1]) / length).clamp(0.0, 1.0) } else { 0.0 };
    let off = [ap[0] - share * ab[0], ap[1] - share * ab[1]];
    off[0] * off[0] + off[1] * off[1]
}

/// Liang–Barsky: the part of a segment inside the square.
fn clip_segment(a: Point, b: Point, half: f32) -> Option<(Point, Point)> {
    let (mut enter, mut leave) = (0.0_f32, 1.0_f32);
    for axis in 0..2 {
        let step = b[axis] - a[axis];
        for (p, q) in [(-step, a[axis] + half), (step, half - a[axis])] {
            if p == 0.0 {
                if q < 0.0 {
                    return None;
                }
            } else if p < 0.0 {
                enter = enter.max(q / p);
            } else {
                leave = leave.min(q / p);
            }
        }
    }
    if enter > leave {
        return None;
    }
    let at = |t: f32| [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    Some((if enter == 0.0 { a } else { at(enter) }, if leave == 1.0 { b } else { at(leave) }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn pieces(points: &[Point]) -> Vec<Vec<Point>> {
        let mut list = Vec::new();
        clip(points, 1.0, |p| list.push(p.to_vec()));
        list
    }

    proptest! {
        /// The ends stay, and whatever is left out lies within the tolerance of the stretch that stands for it.
        #[test]
        fn left_out_points_lie_on_the_way(
            points in prop::collection::vec([-50.0_f32..50.0, -50.0_f32..50.0], 0..60),
            tolerance in 0.0_f32..20.0,
        ) {
            let mut kept = vec![7];
            needed_points(&points, tolerance, &mut kept);
            let ends: Vec<usize> = (0..points.len()).filter(|i| [0, points.len() - 1].contains(i)).collect();
            prop_assert_eq!(kept.first(), ends.first());
            prop_assert_eq!(kept.last(), ends.last());
            for pair in kept.windows(2) {
                prop_assert!(pair[0] < pair[1]);
                for p in &points[pair[0]..pair[1]] {
                    prop_assert!(squared_distance(*p, points[pair[0]], points[pair[1]]).sqrt() <= tolerance + 1e-3);
                }
            }
        }
    }

    #[test]
    fn a_straight_run_needs_its_ends_and_a_closed_one_its_corners() {
        let mut kept = Vec::new();
        needed_points(&[[0.0, 0.0], [1.0, 0.01], [2.0, -0.01], [3.0, 0.0]], 0.1, &mut kept);
        assert_eq!(kept, [0, 3]);
        let square = [[0.0, 0.0], [1.0, 0.0], [2.0, 0.0], [2.0, 2.0], [0.0, 2.0], [0.0, 0.0]];
        needed_points(&square, 0.1, &mut kept);
        assert_eq!(kept, [0, 2, 3, 4, 5]);
    }

    #[test]
    fn crossing_line_is_cut_at_both_edges() {
        assert_eq!(pieces(&[[-3.0, 0.0], [3.0, 0.0]]), [[[-1.0, 0.0], [1.0, 0.0]]]);
    }

    #[test]
    fn line_that_leaves_and_returns_gives_two_pieces() {
        let cut = pieces(&[[0.0, 0.0], [2.0, 0.0], [2.0, 0.5], [0.0, 0.5]]);
        assert_eq!(cut, [[[0.0, 0.0], [1.0, 0.0]], [[1.0, 0.5], [0.0, 0.5]]]);
    }

    #[test]
    fn line_outside_is_gone_and_line_inside_stays() {
        assert!(pieces(&[[2.0, 2.0], [3.0, -2.0]]).is_empty());
        assert_eq!(pieces(&[[0.1, 0.2], [0.3, 0.4]]), [[[0.1, 0.2], [0.3, 0.4]]]);
    }
}

//! Polylines on the detector: clipping to the square field.

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

    fn pieces(points: &[Point]) -> Vec<Vec<Point>> {
        let mut list = Vec::new();
        clip(points, 1.0, |p| list.push(p.to_vec()));
        list
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

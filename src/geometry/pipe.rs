//! Closed pipes along a chain of points, for what is drawn but is no bone: needle, contrast.

use super::mesh::Mesh;
use glam::{DVec3, Vec3};

/// A section of a pipe: an ellipse about a point.
#[derive(Clone, Copy, Debug)]
pub struct Section {
    /// Middle, mm.
    pub point: DVec3,
    /// Direction of the first half axis; made perpendicular to the pipe.
    pub wide: DVec3,
    /// Half axes, mm.
    pub half_mm: [f64; 2],
}

/// A closed mesh with `sides` corners a section. `None` for fewer than two sections. Positions and triangles only: path lengths need
/// neither normals nor tags.
pub fn pipe(sections: &[Section], sides: usize) -> Option<Mesh> {
    let (first, last) = (sections.first()?, sections.last()?);
    if sections.len() < 2 {
        return None;
    }
    let mut mesh = Mesh::default();
    // A polygon of the ellipse's area, so that the pipe's volume is the ellipse's.
    let turn = std::f64::consts::TAU / sides as f64;
    let fill = libm::sqrt(turn / libm::sin(turn));
    for (i, section) in sections.iter().enumerate() {
        let before = sections[i.saturating_sub(1)].point;
        let after = sections[(i + 1).min(sections.len() - 1)].point;
        let axis = (after - before).normalize_or(DVec3::Z);
        let wide = (section.wide - axis * section.wide.dot(axis)).normalize_or(axis.any_orthonormal_vector());
        let thin = axis.cross(wide);
        for k in 0..sides {
            let (s, c) = libm::sincos(turn * k as f64);
            let rim = wide * (c * section.half_mm[0] * fill) + thin * (s * section.half_mm[1] * fill);
            mesh.positions.push((section.point + rim).as_vec3());
        }
    }
    let n = sides as u32;
    for ring in 0..sections.len() as u32 - 1 {
        for k in 0..n {
            let (a, b) = (ring * n + k, ring * n + (k + 1) % n);
            mesh.triangles.extend([[a, b, a + n], [b, b + n, a + n]]);
        }
    }
    let ends = mesh.positions.len() as u32;
    mesh.positions.extend([first.point, last.point].map(|p| -> Vec3 { p.as_vec3() }));
    let top = (sections.len() as u32 - 1) * n;
    for k in 0..n {
        let next = (k + 1) % n;
        mesh.triangles.extend([[ends, next, k], [ends + 1, top + k, top + next]]);
    }
    Some(mesh)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_pipe_is_closed_and_has_the_volume_of_its_cylinder() {
        let at = |z: f64| Section { point: DVec3::new(1.0, 2.0, z), wide: DVec3::X, half_mm: [3.0, 2.0] };
        let mesh = pipe(&[at(0.0), at(4.0), at(10.0)], 12).unwrap();
        assert!(mesh.is_closed());
        assert!((mesh.volume() - std::f64::consts::PI * 60.0).abs() < 1e-3, "{}", mesh.volume());
        assert!(pipe(&[at(0.0)], 12).is_none());
    }
}

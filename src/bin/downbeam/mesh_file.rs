//! Meshes as Wavefront OBJ (text, shared vertices, vertex normals) and binary STL (triangles, flat normals), mm.

use crate::command::UsageError;
use downbeam::geometry::mesh::Mesh;
use glam::Vec3;
use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::Path;

/// A file format, chosen by the end of the file's name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Format {
    Obj,
    Stl,
}

impl Format {
    pub(crate) fn of(path: &Path) -> Result<Self, UsageError> {
        let end = path.extension().and_then(|e| e.to_str()).unwrap_or_default().to_ascii_lowercase();
        match end.as_str() {
            "obj" => Ok(Self::Obj),
            "stl" => Ok(Self::Stl),
            _ => Err(UsageError(format!(
                "cannot tell the format of '{}': the name must end in .obj or .stl",
                path.display()
            ))),
        }
    }
}

/// Writes a mesh; `title` is one line of ASCII for the file's head.
pub(crate) fn write(path: &Path, format: Format, mesh: &Mesh, title: &str) -> std::io::Result<()> {
    let mut out = BufWriter::new(File::create(path)?);
    match format {
        Format::Obj => obj(&mut out, mesh, title)?,
        Format::Stl => stl(&mut out, mesh, title)?,
    }
    out.flush()
}

fn obj(out: &mut impl Write, mesh: &Mesh, title: &str) -> std::io::Result<()> {
    writeln!(out, "# {title}")?;
    for p in &mesh.positions {
        writeln!(out, "v {} {} {}", p.x, p.y, p.z)?;
    }
    for n in &mesh.normals {
        writeln!(out, "vn {:.5} {:.5} {:.5}", n.x, n.y, n.z)?;
    }
    // Numbers count from 1.
    for [a, b, c] in mesh.triangles.iter().map(|t| t.map(|i| i + 1)) {
        writeln!(out, "f {a}//{a} {b}//{b} {c}//{c}")?;
    }
    Ok(())
}

fn stl(out: &mut impl Write, mesh: &Mesh, title: &str) -> std::io::Result<()> {
    let mut head = [b' '; 80];
    // The head must not begin with "solid": readers would take the file for text.
    for (to, from) in head.iter_mut().zip(title.bytes()) {
        *to = from;
    }
    out.write_all(&head)?;
    out.write_all(&(mesh.triangles.len() as u32).to_le_bytes())?;
    for t in &mesh.triangles {
        let [a, b, c] = t.map(|i| mesh.positions[i as usize]);
        let normal = (b - a).cross(c - a).normalize_or(Vec3::ZERO);
        for v in [normal, a, b, c] {
            for value in v.to_array() {
                out.write_all(&value.to_le_bytes())?;
            }
        }
        out.write_all(&[0, 0])?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tetrahedron() -> Mesh {
        let positions = vec![Vec3::ZERO, Vec3::X, Vec3::Y, Vec3::Z];
        Mesh {
            normals: positions.iter().map(|p| (*p - Vec3::splat(0.25)).normalize()).collect(),
            tags: vec![0; 4],
            triangles: vec![[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]],
            positions,
        }
    }

    #[test]
    fn stl_has_the_length_that_its_head_says_and_outward_normals() {
        let mut bytes = Vec::new();
        stl(&mut bytes, &tetrahedron(), "downbeam").unwrap();
        assert_eq!(bytes.len(), 84 + 4 * 50);
        assert_eq!(bytes[80..84], [4, 0, 0, 0]);
        let first: Vec<f32> =
            bytes[84..96].chunks(4).map(|b| f32::from_le_bytes(b.try_into().unwrap())).collect();
        assert_eq!(first, [0.0, 0.0, -1.0]);
    }

    #[test]
    fn obj_counts_from_one() {
        let mut bytes = Vec::new();
        obj(&mut bytes, &tetrahedron(), "downbeam").unwrap();
        let text = String::from_utf8(bytes).unwrap();
        assert!(text.contains("\nv 1 0 0\n"));
        assert!(text.ends_with("f 2//2 3//3 4//4\n"));
    }

    #[test]
    fn other_ends_are_refused() {
        assert_eq!(Format::of(Path::new("a.STL")).unwrap(), Format::Stl);
        assert_eq!(
            Format::of(Path::new("a.ply")).unwrap_err().to_string(),
            "cannot tell the format of 'a.ply': the name must end in .obj or .stl"
        );
    }
}

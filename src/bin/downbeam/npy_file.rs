//! Path lengths and attenuation as a NumPy array file (format 1.0: a Python literal as header, then the values), for other programs.

use crate::shown::Shown;
use anyhow::Context;
use downbeam::imaging::path_length::Raster;
use std::path::Path;

/// Writes a square picture: 32-bit floats, row 0 at the top.
pub(crate) fn write(path: &Path, size: usize, values: &[f32]) -> anyhow::Result<()> {
    std::fs::write(path, npy(size, values)).with_context(|| format!("cannot write {}", path.display()))
}

/// How far the ray of each pixel runs through the target's bone, mm.
pub(crate) fn path_length(shown: &Shown<'_>) -> Vec<f32> {
    let arm = &shown.arm;
    let bone = shown.patient.bone(shown.target.level);
    let mut raster = Raster::new(arm.pixels, arm.pixel_mm, arm.sid_mm);
    raster.add(&bone.outer, &bone.edges, &bone.outer_chunks, &shown.projection, 1.0);
    raster.finish();
    raster.sums().iter().zip(raster.slant()).map(|(sum, slant)| sum * slant).collect()
}

/// The bytes of a square array.
fn npy(size: usize, values: &[f32]) -> Vec<u8> {
    let mut header = format!("{{'descr': '<f4', 'fortran_order': False, 'shape': ({size}, {size}), }}");
    // Magic, version and length take ten bytes; the values start at a multiple of 64, after a line feed.
    let padded = (10 + header.len() + 1).next_multiple_of(64) - 10;
    header += &" ".repeat(padded - 1 - header.len());
    header.push('\n');
    let mut bytes = b"\x93NUMPY\x01\x00".to_vec();
    bytes.extend((padded as u16).to_le_bytes());
    bytes.extend(header.as_bytes());
    bytes.extend(values.iter().flat_map(|v| v.to_le_bytes()));
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_start_at_a_multiple_of_64() {
        let bytes = npy(2, &[0.0, 1.0, 2.0, 3.0]);
        let header = usize::from(u16::from_le_bytes([bytes[8], bytes[9]]));
        assert_eq!((10 + header) % 64, 0);
        assert_eq!(bytes.len(), 10 + header + 16);
        assert_eq!(bytes[9 + header], b'\n');
    }
}

//! The radiograph as PNG: 8-bit grey, or colour when outlines are drawn into it. The pixel pitch at the detector is stored.

use crate::command::UsageError;
use crate::shown::Shown;
use crate::svg_file::{Emphasis, emphasis};
use anyhow::Context;
use png::{BitDepth, ColorType, Encoder, PixelDimensions, Unit};
use std::fs::File;
use std::io::BufWriter;
use std::path::Path;

/// Half the width of a drawn line, pixels.
const HALF_WIDTH_PX: f32 = 0.6;

/// Pixels along an edge, as an option says.
pub(crate) fn pixels(found: &str) -> Result<usize, UsageError> {
    let wrong = || UsageError(format!("--pixels wants 128 to 1024 in steps of 32, not '{found}'"));
    found.trim().parse().ok().filter(|n| (128..=1024).contains(n) && n % 32 == 0).ok_or_else(wrong)
}

/// Writes the picture `grey` (row 0 at the top) of `shown`.
pub(crate) fn write(path: &Path, grey: &[u8], shown: &Shown<'_>, outlines: bool) -> anyhow::Result<()> {
    let size = shown.arm.pixels;
    let save = || -> anyhow::Result<()> {
        let mut encoder = Encoder::new(BufWriter::new(File::create(path)?), size as u32, size as u32);
        encoder.set_color(if outlines { ColorType::Rgb } else { ColorType::Grayscale });
        encoder.set_depth(BitDepth::Eight);
        let per_metre = (1000.0 / shown.arm.pixel_mm) as u32;
        encoder.set_pixel_dims(Some(PixelDimensions { xppu: per_metre, yppu: per_metre, unit: Unit::Meter }));
        encoder.add_text_chunk(
            "Comment".to_owned(),
            "Computed picture of a teaching model: not for planning or guiding a procedure".to_owned(),
        )?;
        let mut writer = encoder.write_header()?;
        if outlines {
            writer.write_image_data(&drawn_over(grey, shown))?;
        } else {
            writer.write_image_data(grey)?;
        }
        writer.finish()?;
        Ok(())
    };
    save().with_context(|| format!("cannot write {}", path.display()))
}

fn drawn_over(grey: &[u8], shown: &Shown<'_>) -> Vec<u8> {
    let size = shown.arm.pixels;
    let mut picture: Vec<u8> = grey.iter().flat_map(|&g| [g; 3]).collect();
    let mut cover = vec![0.0_f32; grey.len()];
    let (pitch, half) = (shown.arm.pixel_mm as f32, size as f32 / 2.0);
    // The faint lines first, so that the others lie over them.
    for (level, colour) in [
        (Emphasis::Faint, [140, 150, 160]),
        (Emphasis::Plain, [120, 200, 255]),
        (Emphasis::Strong, [255, 196, 60]),
    ] {
        cover.fill(0.0);
        for outline in shown.outlines.iter().filter(|o| emphasis(&o.label, shown.target) == level) {
            for pair in outline.points.windows(2) {
                let [a, b] = [pair[0], pair[1]].map(|[u, v]| [half + u / pitch, half - v / pitch]);
                cover_segment(&mut cover, size, a, b);
            }
        }
        for (pixel, &share) in picture.chunks_exact_mut(3).zip(&cover) {
            for (channel, ink) in pixel.iter_mut().zip(colour) {
                *channel = (f32::from(*channel) * (1.0 - share) + ink as f32 * share).round() as u8;
            }
        }
    }
    picture
}

/// Raises the cover of the pixels near a segment (pixel coordinates) to how much of a line they hold.
fn cover_segment(cover: &mut [f32], size: usize, a: [f32; 2], b: [f32; 2]) {
    let margin = HALF_WIDTH_PX + 1.0;
    let range = |i: usize| {
        let low = (a[i].min(b[i]) - margin).max(0.0) as usize;
        let high = ((a[i].max(b[i]) + margin).max(0.0) as usize).min(size - 1);
        low..=high
    };
    let along = [b[0] - a[0], b[1] - a[1]];
    let length_squared = (along[0] * along[0] + along[1] * along[1]).max(1e-12);
    for y in range(1) {
        for x in range(0) {
            let from_a = [x as f32 + 0.5 - a[0], y as f32 + 0.5 - a[1]];
            let t = ((from_a[0] * along[0] + from_a[1] * along[1]) / length_squared).clamp(0.0, 1.0);
            let away = [from_a[0] - t * along[0], from_a[1] - t * along[1]];
            let distance = (away[0] * away[0] + away[1] * away[1]).sqrt();
            let share = (HALF_WIDTH_PX + 0.5 - distance).clamp(0.0, 1.0);
            let pixel = &mut cover[y * size + x];
            *pixel = pixel.max(share);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_covers_its_pixels_and_no_others() {
        let mut cover = vec![0.0; 100];
        cover_segment(&mut cover, 10, [2.5, 5.5], [7.5, 5.5]);
        assert_eq!(cover[5 * 10 + 5], 1.0);
        assert!(cover[4 * 10 + 5] > 0.0 && cover[4 * 10 + 5] < 0.2);
        assert_eq!(cover[2 * 10 + 5], 0.0);
        // Off the picture: nothing happens.
        cover_segment(&mut cover, 10, [-30.0, -30.0], [-20.0, -25.0]);
        assert_eq!(cover[0], 0.0);
    }
}

//! From attenuation to grey: equalisation, a window between percentiles, polarity, and the collimator's shutters.
//!
//! Equalisation as a console has it, so that a lateral is neither burnt out nor flat: low frequencies in two bands are taken out in
//! part, three quarters of what is wider than a third of the field and half of what is wider than an eighth; and what is left of them on
//! the thin side of the middle is bent, so that it never gets further from it than [`THIN_MOST`]. Details keep their full contrast.
//! Common practice, no source; the figures are fitted for appearance.
//!
//! Limits: a browser cannot calibrate its monitor, so the grey values are not a diagnostic display function.

/// How the picture is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// Fluoroscopy shows bone dark, a film shows it white.
    pub bone_dark: bool,
    /// Share of the low frequencies taken out, 0 to 1.
    pub evening: f32,
    /// Window width against the automatic one, > 0; less is harder.
    pub window: f32,
    /// Window level against the automatic one, in automatic window widths; more is brighter bone-dark pictures.
    pub level: f32,
}

impl Default for Look {
    fn default() -> Self {
        Self { bone_dark: true, evening: 0.72, window: 1.0, level: 0.0 }
    }
}

/// Cells of the coarse grid along an edge.
pub const COARSE: usize = 32;
/// Points of the coarse grid.
pub const COARSE_POINTS: usize = (COARSE + 1) * (COARSE + 1);
/// Least span of attenuation that the window stretches to the whole grey scale: below it a picture keeps its low contrast. Derived
/// from the average patient's AP (about 1.2).
const LEAST_SPAN: f32 = 0.9;
/// How many cells the two bands of low frequencies reach.
const REACH: [usize; 2] = [5, 2];
/// Of [`Look::evening`], the part of it that the narrower band gets.
const NARROW_SHARE: f32 = 0.7;
/// How far thin parts may be from the middle once they are evened out, as attenuation.
pub const THIN_MOST: f32 = 0.45;

/// Buffers of the display.
#[derive(Clone, Debug)]
pub(super) struct Display {
    /// What is taken off at the grid's points.
    low: Vec<f32>,
    row: Vec<f32>,
    sorted: Vec<f32>,
}

/// Grey is `base + sign · kneed((A - removed - offset) gain)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Attenuation where the window begins.
    pub offset: f32,
    /// Grey values a unit of attenuation.
    pub gain: f32,
    /// Grey where nothing is.
    pub base: f32,
    /// Which way it goes.
    pub sign: f32,
}

/// The open part of the field: first and one past the last column, first and one past the last row.
pub(super) type Shutters = [usize; 4];

impl Display {
    pub(super) fn new(size: usize) -> Self {
        Self {
            low: vec![0.0; COARSE_POINTS],
            row: vec![0.0; size],
            sorted: Vec::with_capacity(size * size / 16),
        }
    }

    /// Windows attenuation integrals to grey values, `size` × `size`, row 0 at the top.
    pub(super) fn show(
        &mut self,
        picture: &[f32],
        size: usize,
        shutters: Shutters,
        look: &Look,
        grey: &mut [u8],
    ) {
        let Some(window) = self.window(picture, size, shutters, look) else {
            grey.fill(0);
            return;
        };
        let Window { offset, gain, base, sign } = window;
        let [left, right, top, bottom] = shutters;
        for y in 0..size {
            let line = &mut grey[y * size..(y + 1) * size];
            if y < top || y >= bottom {
                line.fill(0);
                continue;
            }
            let values = &picture[y * size..(y + 1) * size];
            let row = &mut self.row[..size];
            along_coarse_row(&self.low, y, row);
            // The straight part for all first, which runs over whole vectors; few are left for the foot.
            for (at, value) in row.iter_mut().zip(values) {
                *at = (value - *at - offset) * gain;
            }
            for (grey, at) in line.iter_mut().zip(&*row) {
                *grey = whole(base + sign * at.clamp(KNEE, 255.0));
            }
            for (grey, at) in line.iter_mut().zip(&*row).filter(|(_, at)| **at < KNEE) {
                *grey = (base + sign * kneed(*at)) as u8;
            }
            line[..left].fill(0);
            line[right..].fill(0);
        }
    }

    /// The window of a picture; what equalisation takes off is then in [`Self::removed`]. `None` where too little is open.
    pub(super) fn window(
        &mut self,
        picture: &[f32],
        size: usize,
        shutters: Shutters,
        look: &Look,
    ) -> Option<Window> {
        self.low_frequencies(picture, size, look.evening);
        let [left, right, top, bottom] = shutters;
        // The window is that of the middle of the open field: air at its edge must not take the bright end.
        let inner = |low: usize, high: usize| low + (high - low) / 6..high - (high - low) / 6;
        let (columns, rows) = (inner(left, right), inner(top, bottom));
        self.sorted.clear();
        for y in rows.step_by(3) {
            along_coarse_row(&self.low, y, &mut self.row[..size]);
            let values = picture[y * size..].iter().zip(&self.row).take(columns.end).skip(columns.start);
            self.sorted.extend(values.step_by(3).map(|(value, low)| value - low));
        }
        let n = self.sorted.len();
        if n < 200 {
            return None;
        }
        let low = *self.sorted.select_nth_unstable_by(n / 100, f32::total_cmp).1;
        let high = *self.sorted.select_nth_unstable_by(n - 1 - n / 150, f32::total_cmp).1;
        let span = (high - low).max(LEAST_SPAN);
        // A little room at both ends so that lines do not clip.
        let width = 1.16 * span * look.window.max(0.05);
        let middle = 0.5 * (low + high) + look.level * span;
        let (offset, gain) = (middle - 0.5 * width, 255.0 / width);
        let (base, sign) = if look.bone_dark { (255.0, -1.0) } else { (0.0, 1.0) };
        Some(Window { offset, gain, base, sign })
    }

    /// What is taken off at the points of the coarse grid.
    pub(super) fn removed(&self) -> &[f32] {
        &self.low
    }

    /// What equalisation takes off, at the grid's points: of the means of the cells, spread over a wide and a narrower neighbourhood.
    fn low_frequencies(&mut self, picture: &[f32], size: usize, evening: f32) {
        let cell = size / COARSE;
        let mut means = [0.0_f32; COARSE * COARSE];
        for (i, mean) in means.iter_mut().enumerate() {
            let (x0, y0) = ((i % COARSE) * cell, (i / COARSE) * cell);
            let sum: f32 = (0..cell)
                .step_by(2)
                .map(|y| {
                    let row = (y0 + y) * size + x0;
                    picture[row..row + cell].iter().step_by(2).sum::<f32>()
                })
                .sum();
            *mean = sum / (cell.div_ceil(2) * cell.div_ceil(2)) as f32;
        }
        let middle = {
            let mut sorted = means;
            *sorted.select_nth_unstable_by(COARSE * COARSE / 2, f32::total_cmp).1
        };
        for j in 0..=COARSE {
            for i in 0..=COARSE {
                let [wide, narrow] = REACH.map(|reach| around(&means, i, j, reach));
                let left = (1.0 - evening) * (wide - middle);
                let bent = if left < 0.0 { THIN_MOST * (libm::expf(left / THIN_MOST) - 1.0) } else { left };
                let removed = (wide - middle) - bent + NARROW_SHARE * evening * (narrow - wide);
                self.low[j * (COARSE + 1) + i] = middle + removed;
            }
        }
    }
}

/// Mean of the cells within `reach` of a point of the grid.
fn around(means: &[f32], i: usize, j: usize, reach: usize) -> f32 {
    let (mut sum, mut weight) = (0.0, 0.0);
    for y in j.saturating_sub(reach)..(j + reach).min(COARSE) {
        for x in i.saturating_sub(reach)..(i + reach).min(COARSE) {
            sum += means[y * COARSE + x];
            weight += 1.0;
        }
    }
    sum / weight
}

/// Grey values above black over which the thin end of the window bends: what lies beyond fades instead of clipping, so that the
/// processes at the back of a lateral view stay to be seen.
const KNEE: f32 = 32.0;

/// The window's characteristic: straight, with a soft foot and a hard top, 0 to 255.
#[inline]
fn kneed(value: f32) -> f32 {
    if value >= KNEE { value.min(255.0) } else { KNEE * libm::expf((value - KNEE) / KNEE) }
}

/// The whole number of a value from 0 to 255: what lies above it falls off the end of the mantissa of 2²³ + 256.
#[inline]
fn whole(value: f32) -> u8 {
    (value - 0.499 + 8_388_864.0).to_bits() as u8
}

/// The bilinear values of a coarse grid along row `y` of a picture as wide as `row`.
pub(super) fn along_coarse_row(grid: &[f32], y: usize, row: &mut [f32]) {
    let cell = row.len() / COARSE;
    let fy = (y as f32 + 0.5) / cell as f32;
    let j = (fy as usize).min(COARSE - 1);
    let ty = fy - j as f32;
    let at = |i: usize| {
        let upper = grid[j * (COARSE + 1) + i];
        upper + ty * (grid[(j + 1) * (COARSE + 1) + i] - upper)
    };
    for (i, pixels) in row.chunks_exact_mut(cell).enumerate().take(COARSE) {
        let (a, b) = (at(i), at(i + 1));
        let step = (b - a) / cell as f32;
        // Each from the cell's edge and not from the pixel before, so that several are done at once.
        for (k, pixel) in (0_u32..).zip(pixels) {
            *pixel = a + (k as f32 + 0.5) * step;
        }
    }
}

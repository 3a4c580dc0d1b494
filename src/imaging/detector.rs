//! From the ideal beam to what the receptor counts: scatter, blur, and quanta.
//!
//! Per pixel, with the primary intensity P = exp(-(A - Ā)) relative to the measuring field:
//! `S = r · lowpass(P)`, then `I = blur(P + S)`, then counts `n ~ Poisson(DQE · N̄ · I)`, and the picture is `-ln(n / (DQE · N̄))`.
//!
//! Figures: DQE 0.65, scatter behind a grid growing with the attenuation (0.4 of the primary in an average AP) and in proportion to
//! the open area (both from memory); blur from the focal spot `f (M - 1)` with f = 0.6 mm and from the receptor 0.3 mm, as one Gaussian.
//!
//! Limits: the lowpass is a box of a third of the field; noise is white (in life the receptor blurs it a little).

use std::sync::LazyLock;

/// Detective quantum efficiency. Memory.
pub const DQE: f64 = 0.65;
/// Scatter over primary behind the grid, whole field, a unit of the measuring field's attenuation beyond 1: 0.4 in an average AP, 0.9
/// in a heavy lateral. Memory.
const SCATTER_PER_ATTENUATION: f32 = 0.10;
/// Focal spot, mm.
const FOCAL_SPOT_MM: f64 = 0.6;
/// Receptor's own spread (full width), mm.
const RECEPTOR_SPREAD_MM: f64 = 0.3;

/// A small seeded generator (splitmix64, Steele 2014: from memory).
#[derive(Clone, Debug)]
pub struct Random(u64);

impl Random {
    /// The same seed gives the same numbers everywhere.
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// 64 random bits.
    pub fn next_bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Uniform in [0, 1).
    fn uniform(&mut self) -> f32 {
        (self.next_bits() >> 40) as f32 / 16_777_216.0
    }
}

const QUANTILES: usize = 4096;

/// Middles of 4096 equally likely slices of the normal distribution, by Newton's method on its integral.
static NORMAL: LazyLock<Vec<f32>> = LazyLock::new(|| {
    let root_half = libm::sqrt(0.5);
    let mut x = -4.0;
    (0..QUANTILES)
        .map(|i| {
            let p = (i as f64 + 0.5) / QUANTILES as f64;
            for _ in 0..60 {
                let error = 0.5 * libm::erfc(-x * root_half) - p;
                let density = libm::exp(-0.5 * x * x) * 0.398_942_280_401_432_7;
                x -= (error / density).clamp(-0.5, 0.5);
            }
            x as f32
        })
        .collect()
});

/// A Poisson number of mean `mean`: by adding up below 30, above it by the normal distribution with the same mean and variance.
pub fn poisson(mean: f32, random: &mut Random) -> f32 {
    if mean < 30.0 {
        let mut u = random.uniform();
        let mut p = libm::expf(-mean.max(0.0));
        let mut n = 0.0;
        while u > p && n < 200.0 {
            u -= p;
            n += 1.0;
            p *= mean / n;
        }
        n
    } else {
        let z = NORMAL[(random.next_bits() >> 52) as usize];
        (mean + z * mean.sqrt()).max(0.0)
    }
}

/// What the receptor is given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quanta {
    /// Attenuation integral of the measuring field, Ā.
    pub reference_attenuation: f32,
    /// Photons a pixel there, N̄.
    pub photons_per_pixel: f32,
    /// Share of the field that is open.
    pub open_share: f32,
    /// Spread of the blur, standard deviation in pixels.
    pub blur_px: f32,
    /// Seed of the noise.
    pub seed: u64,
}

/// Standard deviation of the blur in pixels at magnification `m` (source–receptor over source–object).
pub fn blur_px(m: f64, pixel_mm: f64) -> f32 {
    let focal = FOCAL_SPOT_MM * (m - 1.0);
    (libm::sqrt(focal * focal + RECEPTOR_SPREAD_MM * RECEPTOR_SPREAD_MM) / 2.355 / pixel_mm) as f32
}

/// Turns attenuation integrals into those that the receptor measures, in place. `line` is scratch.
pub fn detect(picture: &mut [f32], size: usize, quanta: &Quanta, line: &mut Vec<f32>) {
    for a in picture.iter_mut() {
        *a = libm::expf(quanta.reference_attenuation - *a);
    }
    let mean = picture.iter().sum::<f32>() / picture.len() as f32;
    let scatter = SCATTER_PER_ATTENUATION * (quanta.reference_attenuation - 1.0).max(0.0) * quanta.open_share;
    add_scatter(picture, size, scatter, mean);
    blur(picture, size, quanta.blur_px, line);
    let counts = DQE as f32 * quanta.photons_per_pixel;
    let mut random = Random::new(quanta.seed);
    for i in picture.iter_mut() {
        // An empty pixel is shown as a third of a count rather than as minus infinity.
        let n = poisson(counts * *i, &mut random).max(0.3);
        *i = quanta.reference_attenuation - libm::logf(n / counts);
    }
}

/// Adds `share` of the means of nine overlapping thirds of the field, interpolated.
fn add_scatter(picture: &mut [f32], size: usize, share: f32, whole: f32) {
    const SIDE: usize = 8;
    let cell = size / SIDE;
    let mut means = [[0.0_f32; SIDE]; SIDE];
    for (j, row) in means.iter_mut().enumerate() {
        for (i, mean) in row.iter_mut().enumerate() {
            let (x0, y0) = ((i * cell).saturating_sub(cell), (j * cell).saturating_sub(cell));
            let (x1, y1) = (((i + 2) * cell).min(size), ((j + 2) * cell).min(size));
            let (mut sum, mut count) = (0.0, 0.0);
            for y in (y0..y1).step_by(4) {
                for x in (x0..x1).step_by(4) {
                    sum += picture[y * size + x];
                    count += 1.0;
                }
            }
            // Half of it comes from further away.
            *mean = 0.5 * (sum / count + whole);
        }
    }
    let place = |p: usize| {
        let t = ((p as f32 + 0.5) / cell as f32 - 0.5).clamp(0.0, (SIDE - 1) as f32);
        let i = (t as usize).min(SIDE - 2);
        (i, t - i as f32)
    };
    for y in 0..size {
        let (j, v) = place(y);
        let along: [f32; SIDE] = std::array::from_fn(|i| means[j][i] + v * (means[j + 1][i] - means[j][i]));
        for (x, p) in picture[y * size..(y + 1) * size].iter_mut().enumerate() {
            let (i, u) = place(x);
            *p += share * (along[i] + u * (along[i + 1] - along[i]));
        }
    }
}

/// Gaussian blur as a five-tap kernel along rows and columns.
fn blur(picture: &mut [f32], size: usize, sigma: f32, line: &mut Vec<f32>) {
    let tap = |d: f32| libm::expf(-0.5 * d * d / (sigma * sigma).max(1e-4));
    let total = 1.0 + 2.0 * (tap(1.0) + tap(2.0));
    let weights = [1.0 / total, tap(1.0) / total, tap(2.0) / total];
    line.clear();
    line.resize(size * size, 0.0);
    let at = |list: &[f32], i: usize, last: usize, stride: usize, base: usize, d: isize| {
        list[base + (i as isize + d).clamp(0, last as isize) as usize * stride]
    };
    let last = size - 1;
    let pass = |from: &[f32], to: &mut [f32], along: usize, across: usize| {
        for j in 0..size {
            let base = j * across;
            for i in 0..size {
                to[base + i * along] = if i >= 2 && i + 2 < size {
                    let k = base + i * along;
                    weights[0] * from[k]
                        + weights[1] * (from[k - along] + from[k + along])
                        + weights[2] * (from[k - 2 * along] + from[k + 2 * along])
                } else {
                    let f = |d| at(from, i, last, along, base, d);
                    weights[0] * f(0) + weights[1] * (f(-1) + f(1)) + weights[2] * (f(-2) + f(2))
                };
            }
        }
    };
    pass(picture, line, 1, size);
    pass(line, picture, size, 1);
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Mean and variance of a Poisson number are both its parameter (textbook).
    #[test]
    fn noise_has_the_mean_and_variance_of_poisson() {
        for mean in [0.5_f32, 4.0, 29.0, 31.0, 235.0, 4692.0] {
            let mut random = Random::new(7);
            let n = 200_000;
            let (mut sum, mut squares) = (0.0_f64, 0.0_f64);
            for _ in 0..n {
                let x = f64::from(poisson(mean, &mut random));
                sum += x;
                squares += x * x;
            }
            let average = sum / f64::from(n);
            let variance = squares / f64::from(n) - average * average;
            let mean = f64::from(mean);
            assert!((average / mean - 1.0).abs() < 0.01, "{mean}: {average}");
            assert!((variance / mean - 1.0).abs() < 0.02, "{mean}: {variance}");
        }
    }

    /// A flat field: the relative noise of the counts is 1 / sqrt(DQE N). 10 nGy a frame gave 47 photons a 0.16 mm² pixel behind
    /// 20 cm of water (physics reference, section 5).
    #[test]
    fn flat_field_noise() {
        let size = 256;
        let mut picture = vec![5.0_f32; size * size];
        let quanta = Quanta {
            reference_attenuation: 5.0,
            photons_per_pixel: 470.0,
            open_share: 0.0,
            blur_px: 0.01,
            seed: 3,
        };
        detect(&mut picture, size, &quanta, &mut Vec::new());
        let n = picture.len() as f64;
        let mean = picture.iter().map(|&a| f64::from(a)).sum::<f64>() / n;
        let variance =
            picture.iter().map(|&a| (f64::from(a) - mean) * (f64::from(a) - mean)).sum::<f64>() / n;
        let expected = 1.0 / (DQE * 470.0);
        assert!((mean - 5.0).abs() < 0.005, "{mean}");
        assert!((variance / expected - 1.0).abs() < 0.03, "{variance} against {expected}");
    }

    /// Focal blur on the detector: f (M - 1) = 0.34 mm for 0.6 mm at M = 1.5714 (physics reference, section 2).
    #[test]
    fn blur_of_the_worked_case() {
        let with_receptor = libm::sqrt(0.34 * 0.34 + 0.3 * 0.3) / 2.355 / 0.4;
        assert!((f64::from(blur_px(1.5714, 0.4)) - with_receptor).abs() < 0.01);
    }

    #[test]
    fn scatter_lowers_contrast() {
        let size = 64;
        let mut picture: Vec<f32> = (0..size * size).map(|i| if i % size < 32 { 4.0 } else { 5.0 }).collect();
        let quanta = Quanta {
            reference_attenuation: 4.5,
            photons_per_pixel: 1e6,
            open_share: 1.0,
            blur_px: 0.01,
            seed: 1,
        };
        detect(&mut picture, size, &quanta, &mut Vec::new());
        let contrast = picture[32 * size + 60] - picture[32 * size + 3];
        assert!(contrast > 0.3 && contrast < 0.90, "{contrast}");
    }
}

//! From the ideal beam to what the receptor counts: scatter, focal blur, quanta, the screen's spread, electronic noise, lag.
//!
//! Per pixel, with the primary intensity P = exp(-(A - Ā)) relative to the measuring field, in the order in which it happens:
//! `I = focal * (P + r · lowpass(P))`, counts `n ~ Poisson(DQE · N̄ · I)`, light `s = screen * n`, in fluoroscopy what the frame before has
//! left behind `s += lag · (s_before - s)`, signal `s + e` with electronic noise e, and the picture is `-ln(signal / (DQE · N̄))`.
//! Quanta are drawn before the screen spreads their light, so that noise is as blurred as the screen's own share of the picture: its
//! power is `screen(f)² + (electronic noise)² / (mean count)` ([`transfer`]), white light through the screen.
//!
//! Figures: DQE 0.65; scatter behind a grid `r = 0.016 A²` of the primary for the whole field, in proportion to what is open (0.4 in an
//! average AP, 1.0 where A is 8); focal spot 0.6 mm; screen of caesium iodide with σ = 0.1 mm (half its contrast at 1.9 line pairs a mm);
//! electronic noise of two quanta a pixel; 4 % of a frame left in the next. All from memory.
//!
//! Limits: the lowpass is a box of a third of the field; no dead or uneven pixels.

use std::sync::LazyLock;

/// Detective quantum efficiency. Memory.
pub const DQE: f64 = 0.65;
/// Scatter over primary behind the grid, whole field, for the measuring field's attenuation squared. Memory.
const SCATTER_PER_ATTENUATION_SQUARED: f32 = 0.016;
/// Focal spot, mm.
const FOCAL_SPOT_MM: f64 = 0.6;
/// Spread of light in the receptor's screen, standard deviation, mm. Memory.
const SCREEN_SPREAD_MM: f64 = 0.1;
/// Electronic noise of one reading, quanta. Memory.
const ELECTRONIC_QUANTA: f32 = 2.0;
/// Share of a fluoroscopy frame that is still there in the next. Memory.
const LAG: f32 = 0.04;
/// Most taps of a kernel to each side.
const REACH: usize = 6;

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
fn poisson(mean: f32, random: &mut Random) -> f32 {
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

/// A normal number of variance 1.
fn normal(random: &mut Random) -> f32 {
    NORMAL[(random.next_bits() >> 52) as usize]
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
    /// How picture and light are spread.
    pub spread: Spread,
    /// Whether what the frame before has left behind is in this one.
    pub continues: bool,
    /// Seed of the noise.
    pub seed: u64,
}

/// Weights of a symmetric kernel: the middle one, then those to either side.
pub type Taps = [f32; REACH + 1];

/// The two kernels of a picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Of the focal spot, before quanta are drawn.
    pub focal: Taps,
    /// Of the screen's light, after.
    pub screen: Taps,
}

impl Spread {
    /// No spread at all.
    pub const NONE: Self = {
        let mut taps = [0.0; REACH + 1];
        taps[0] = 1.0;
        Self { focal: taps, screen: taps }
    };

    /// At magnification `m` (source–receptor over source–object) and a pixel pitch at the receptor.
    pub fn new(m: f64, pixel_mm: f64) -> Self {
        let focal_px = FOCAL_SPOT_MM * (m - 1.0) / 2.355 / pixel_mm;
        let screen_px = SCREEN_SPREAD_MM / pixel_mm;
        // A ray stands for its pixel's middle, a quantum for one anywhere in its pixel: from there to anywhere in another.
        let point = |d: f64| libm::exp(-0.5 * d * d / (focal_px * focal_px).max(1e-4));
        let integral = |x: f64| {
            let z = x / screen_px;
            let density = libm::exp(-0.5 * z * z) * 0.398_942_280_401_432_7;
            screen_px * (z * 0.5 * libm::erfc(-z * libm::sqrt(0.5)) + density)
        };
        let pixel = |d: f64| integral(d + 1.0) - 2.0 * integral(d) + integral(d - 1.0);
        Self { focal: taps(point), screen: taps(pixel) }
    }
}

fn taps(weight: impl Fn(f64) -> f64) -> Taps {
    let list: [f64; REACH + 1] = std::array::from_fn(|d| weight(d as f64));
    let total = list[0] + 2.0 * list[1..].iter().sum::<f64>();
    list.map(|w| (w / total) as f32)
}

/// What is left of a wave of `cycles` a pixel along a row after a kernel: its part of the modulation transfer.
pub fn transfer(taps: &Taps, cycles: f64) -> f64 {
    let wave = |d: usize| libm::cos(std::f64::consts::TAU * cycles * d as f64);
    f64::from(taps[0]) + 2.0 * (1..=REACH).map(|d| f64::from(taps[d]) * wave(d)).sum::<f64>()
}

/// Scatter over primary behind the grid, where the measuring field's attenuation is `attenuation`.
fn scatter_share(attenuation: f32, open_share: f32) -> f32 {
    SCATTER_PER_ATTENUATION_SQUARED * attenuation * attenuation * open_share
}

/// Buffers of a receptor, and what the last frame has left in it.
#[derive(Clone, Debug, Default)]
pub struct Receptor {
    line: Vec<f32>,
    left: Vec<f32>,
}

impl Receptor {
    /// Turns attenuation integrals into those that are measured, in place.
    pub fn detect(&mut self, picture: &mut [f32], size: usize, quanta: &Quanta) {
        for a in picture.iter_mut() {
            *a = libm::expf(quanta.reference_attenuation - *a);
        }
        let mean = picture.iter().sum::<f32>() / picture.len() as f32;
        let scatter = scatter_share(quanta.reference_attenuation, quanta.open_share);
        add_scatter(picture, size, scatter, mean);
        spread(picture, size, &quanta.spread.focal, &mut self.line);
        let counts = DQE as f32 * quanta.photons_per_pixel;
        let mut random = Random::new(quanta.seed);
        for i in picture.iter_mut() {
            *i = poisson(counts * *i, &mut random);
        }
        spread(picture, size, &quanta.spread.screen, &mut self.line);
        if quanta.continues && self.left.len() == picture.len() {
            for (signal, left) in picture.iter_mut().zip(&self.left) {
                *signal += LAG * (left - *signal);
            }
        }
        self.left.clear();
        self.left.extend_from_slice(picture);
        for signal in picture.iter_mut() {
            // An empty pixel is shown as a third of a count rather than as minus infinity.
            let read = (*signal + ELECTRONIC_QUANTA * normal(&mut random)).max(0.3);
            *signal = quanta.reference_attenuation - libm::logf(read / counts);
        }
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

/// Spreads a picture by a kernel along rows and columns; what lies past the border is as at the border.
fn spread(picture: &mut [f32], size: usize, taps: &Taps, line: &mut Vec<f32>) {
    let Some(reach) = (1..=REACH).rev().find(|&d| taps[d] > 1e-4) else { return };
    let last = size - 1;
    line.clear();
    line.resize(size * size, 0.0);
    for (row, to) in picture.chunks(size).zip(line.chunks_mut(size)) {
        for (t, v) in to.iter_mut().zip(row) {
            *t = taps[0] * v;
        }
        for (d, &weight) in taps.iter().enumerate().take(reach + 1).skip(1) {
            for ((t, a), b) in to[d..size - d].iter_mut().zip(row).zip(&row[2 * d..]) {
                *t += weight * (a + b);
            }
            for x in (0..d).chain(size - d..size) {
                to[x] += weight * (row[x.saturating_sub(d)] + row[(x + d).min(last)]);
            }
        }
    }
    for (y, to) in picture.chunks_mut(size).enumerate() {
        let row = |y: usize| &line[y * size..(y + 1) * size];
        for (t, v) in to.iter_mut().zip(row(y)) {
            *t = taps[0] * v;
        }
        for (d, &weight) in taps.iter().enumerate().take(reach + 1).skip(1) {
            let (above, below) = (row(y.saturating_sub(d)), row((y + d).min(last)));
            for ((t, a), b) in to.iter_mut().zip(above).zip(below) {
                *t += weight * (a + b);
            }
        }
    }
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

    /// A flat field of so many counts, and what is measured of it.
    fn flat(size: usize, photons: f32, spread: Spread, seed: u64) -> Vec<f64> {
        let mut picture = vec![5.0_f32; size * size];
        let quanta = Quanta {
            reference_attenuation: 5.0,
            photons_per_pixel: photons,
            open_share: 0.0,
            spread,
            continues: false,
            seed,
        };
        Receptor::default().detect(&mut picture, size, &quanta);
        picture.into_iter().map(f64::from).collect()
    }

    /// A flat field without spread: the relative noise of the counts is that of Poisson's law and of the electronics.
    #[test]
    fn flat_field_noise() {
        let picture = flat(256, 470.0, Spread::NONE, 3);
        let n = picture.len() as f64;
        let mean = picture.iter().sum::<f64>() / n;
        let variance = picture.iter().map(|a| (a - mean) * (a - mean)).sum::<f64>() / n;
        let counts = DQE * 470.0;
        let expected = (counts + f64::from(ELECTRONIC_QUANTA * ELECTRONIC_QUANTA)) / (counts * counts);
        assert!((mean - 5.0).abs() < 0.005, "{mean}");
        assert!((variance / expected - 1.0).abs() < 0.03, "{variance} against {expected}");
    }

    /// Focal blur on the detector: f (M - 1) = 0.34 mm for 0.6 mm at M = 1.5714 (physics reference, section 2), and a Gaussian's
    /// variance is what a kernel of its taps has. The screen's kernel has its own variance and a sixth of a pixel's square more, for the
    /// two places anywhere in a pixel.
    #[test]
    fn kernels_are_as_wide_as_they_say() {
        let spread = Spread::new(1.5714, 0.1);
        let variance =
            |taps: &Taps| 2.0 * (1..=REACH).map(|d| f64::from(taps[d]) * (d * d) as f64).sum::<f64>();
        let focal = 0.6 * 0.5714 / 2.355 / 0.1;
        assert!((variance(&spread.focal) / (focal * focal) - 1.0).abs() < 0.02);
        assert!((variance(&spread.screen) - (1.0 + 1.0 / 6.0)).abs() < 0.01);
        for taps in [spread.focal, spread.screen] {
            assert!((transfer(&taps, 0.0) - 1.0).abs() < 1e-6);
        }
    }

    /// Light spreads the noise too: neighbours of a flat field go together as the screen's kernel says, less what the electronics add.
    #[test]
    fn noise_is_as_blurred_as_the_screen() {
        let (size, photons) = (512, 94.0);
        let spread = Spread { focal: Spread::NONE.focal, ..Spread::new(1.5714, 0.4) };
        let picture = flat(size, photons, spread, 11);
        let mean = picture.iter().sum::<f64>() / picture.len() as f64;
        let product = |shift: usize| {
            let pairs = picture.chunks(size).flat_map(|row| row.iter().zip(&row[shift..]));
            let (sum, n) = pairs.fold((0.0, 0.0), |(s, n), (a, b)| (s + (a - mean) * (b - mean), n + 1.0));
            sum / n
        };
        let k = |d: i64| f64::from(spread.screen.get(d.unsigned_abs() as usize).copied().unwrap_or(0.0));
        let overlap = |shift: i64| (-6..=6).map(|d| k(d) * k(d + shift)).sum::<f64>();
        let electronics = f64::from(ELECTRONIC_QUANTA * ELECTRONIC_QUANTA) / (DQE * f64::from(photons));
        let expected = overlap(0) * overlap(1) / (overlap(0) * overlap(0) + electronics);
        let found = product(1) / product(0);
        assert!((found - expected).abs() < 0.01, "{found} against {expected}");
        // A published projector's kernel (0.98, beside it 0.11; DeepDRR at cb2cb3a) gives 0.22.
        assert!((found - 0.22).abs() < 0.05, "{found}");
    }

    #[test]
    fn a_frame_leaves_a_little_in_the_next() {
        let size = 64;
        let mut receptor = Receptor::default();
        let mut take = |level: f32, continues: bool| {
            let mut picture = vec![level; size * size];
            let quanta = Quanta {
                reference_attenuation: 5.0,
                photons_per_pixel: 1e6,
                open_share: 0.0,
                spread: Spread::NONE,
                continues,
                seed: 1,
            };
            receptor.detect(&mut picture, size, &quanta);
            libm::exp(5.0 - picture.iter().map(|&a| f64::from(a)).sum::<f64>() / picture.len() as f64)
        };
        let bright = take(4.0, false);
        let after = take(6.0, true);
        let alone = take(6.0, false);
        assert!(
            ((after - alone) / (bright - alone) - f64::from(LAG)).abs() < 0.002,
            "{bright} {after} {alone}"
        );
    }

    #[test]
    fn scatter_lowers_contrast() {
        let size = 64;
        let mut picture: Vec<f32> = (0..size * size).map(|i| if i % size < 32 { 4.0 } else { 5.0 }).collect();
        let quanta = Quanta {
            reference_attenuation: 4.5,
            photons_per_pixel: 1e6,
            open_share: 1.0,
            spread: Spread::NONE,
            continues: false,
            seed: 1,
        };
        Receptor::default().detect(&mut picture, size, &quanta);
        let contrast = picture[32 * size + 60] - picture[32 * size + 3];
        assert!(contrast > 0.3 && contrast < 0.90, "{contrast}");
    }
}

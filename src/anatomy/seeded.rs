//! Numbers from a seed, the same everywhere: xorshift64 (Marsaglia 2003, J Stat Softw 8(14): from memory), seeded through the
//! splitmix64 finaliser (from memory), so that neighbouring seeds give unlike numbers.

/// A stream of numbers.
#[derive(Clone, Debug)]
pub(crate) struct Numbers(u64);

impl Numbers {
    /// One stream of a seed.
    pub(crate) fn stream(seed: u64, stream: u64) -> Self {
        let mut z = seed.wrapping_add((stream + 1).wrapping_mul(0x9E37_79B9_7F4A_7C15));
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        // Zero is the one state that never moves.
        Self((z ^ (z >> 31)) | 1)
    }

    fn bits(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    /// In [0, 1).
    pub(crate) fn unit(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / 9_007_199_254_740_992.0
    }

    /// Normal with mean 0 and standard deviation 1, drawn again while it is beyond `most` (Box & Muller 1958: from memory).
    pub(crate) fn normal_within(&mut self, most: f64) -> f64 {
        loop {
            // 1 - unit is never 0.
            let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.unit()));
            let z = radius * libm::cos(std::f64::consts::TAU * self.unit());
            if z.abs() <= most {
                return z;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spread_evenly_and_repeatable() {
        let mut a = Numbers::stream(7, 3);
        let mut b = Numbers::stream(7, 3);
        let mut bins = [0_u32; 10];
        for _ in 0..10_000 {
            let x = a.unit();
            assert_eq!(x.to_bits(), b.unit().to_bits());
            bins[(x * 10.0) as usize] += 1;
        }
        assert!(bins.iter().all(|&n| (850..1150).contains(&n)), "{bins:?}");
        assert_ne!(Numbers::stream(7, 3).unit(), Numbers::stream(8, 3).unit());
    }

    /// A normal distribution cut off at 2 has a standard deviation of 0.880 (standard formula for the truncated normal).
    #[test]
    fn truncated_normals_have_their_spread() {
        let mut numbers = Numbers::stream(5, 0);
        let draws: Vec<f64> = (0..20_000).map(|_| numbers.normal_within(2.0)).collect();
        let mean = draws.iter().sum::<f64>() / 20_000.0;
        let square = draws.iter().map(|z| z * z).sum::<f64>() / 20_000.0;
        assert!(mean.abs() < 0.02 && (square.sqrt() - 0.880).abs() < 0.015, "{mean} {square}");
        assert!(draws.iter().all(|z| z.abs() <= 2.0));
    }
}

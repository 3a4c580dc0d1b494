//! Linear attenuation of the tissues, 1/mm, at one effective energy.
//!
//! Behind 20 cm of water a 70 kVp spectrum has a mean of 50.7 keV (SpekPy; `physics.md` of the references), so one energy of
//! 50 keV stands for it. Values: mass attenuation with coherent scatter (xraydb, the same to 0.01 % as xraylib) times
//! density: ICRU-44 cortical bone 1.92 g/cm³, soft tissue 1.06, adipose 0.95.
//!
//! Limits: no spectrum, no scatter; the marrow space is a mixture by volume.

/// Cortical bone, 50 keV, 1/mm.
pub const CORTICAL_PER_MM: f64 = 0.081_45;
/// Soft tissue, 50 keV, 1/mm.
pub const SOFT_PER_MM: f64 = 0.024_00;
/// Adipose tissue, 50 keV, 1/mm.
pub const ADIPOSE_PER_MM: f64 = 0.020_17;
/// Share of the marrow space that is bone in the average adult. Memory: 0.1–0.2.
pub const TRABECULAR_SHARE: f64 = 0.15;

/// The marrow space of a patient whose bone density is `density` of the average, 1/mm: trabeculae in a half-fatty marrow.
pub fn marrow_per_mm(density: f64) -> f64 {
    let share = (TRABECULAR_SHARE * density).clamp(0.0, 1.0);
    let marrow = 0.5 * (SOFT_PER_MM + ADIPOSE_PER_MM);
    share * CORTICAL_PER_MM + (1.0 - share) * marrow
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marrow_lies_between_fat_and_cortex_and_falls_with_density() {
        assert!(marrow_per_mm(1.0) > SOFT_PER_MM && marrow_per_mm(1.0) < CORTICAL_PER_MM);
        assert!(marrow_per_mm(0.4) < marrow_per_mm(1.0));
    }
}

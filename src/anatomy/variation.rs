//! How one patient's dimensions differ from another's of the same build: a draw by the seed for each, normal, cut off at two
//! standard deviations.
//!
//! Each standard deviation stands in [`SPREADS`] with its source. Size goes through everything, so that what the others add is what is
//! left of the published spread of a length when that of size is taken out (in quadrature), or less where the source is of another
//! posture or the parts must keep their joints. Dimensions vary for all levels together, as a person's do.
//!
//! Limits: left and right stay mirror images; levels do not vary one by one; no correlations but those through size and through
//! [`Variation::sacral_slope_deg`], which takes the lordosis along.

use super::dimensions::{Pelvis, Vertebra};
use super::seeded::Numbers;

/// How far out a draw may lie, standard deviations.
const MOST_SD: f64 = 2.0;

/// A patient's own share of the population's spread. Factors multiply, degrees and millimetres are added.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(missing_docs, reason = "the table of spreads says what each is")]
pub struct Variation {
    pub size: f64,
    pub body_height: f64,
    pub plate: f64,
    pub pedicle_width: f64,
    pub pedicle_height: f64,
    pub pedicle_axial_deg: f64,
    pub canal_width: f64,
    pub canal_depth: f64,
    pub facet_plane_deg: f64,
    pub transverse_span: f64,
    pub spinous_length: f64,
    pub disc_height: f64,
    pub sacral_slope_deg: f64,
    pub disc_wedge: f64,
    pub crest_mm: f64,
    pub back_fat: f64,
}

/// How much a dimension varies.
#[derive(Debug)]
pub struct Spread {
    /// Which.
    pub name: &'static str,
    /// One standard deviation: of the factor, or degrees or mm by the name's ending.
    pub sd: f64,
    put: fn(&mut Variation, f64),
}

macro_rules! spread {
    ($name:ident, $sd:literal) => {
        Spread { name: stringify!($name), sd: $sd, put: |variation, by| variation.$name += by }
    };
}

/// All that varies. The order is that of the seed's streams: new ones go to the end.
pub static SPREADS: [Spread; 16] = [
    // Stature: SD 7 cm of 170 (memory).
    spread!(size, 0.04),
    // L5 anterior height 30.3 ± 1.9 (Cook & Baker 2021: read), 6.3 percent, less size.
    spread!(body_height, 0.045),
    // L5 upper depth 35.7 ± 3.5 (Cook & Baker 2021: read), 9.8 percent over both sexes, less size; within one build less.
    spread!(plate, 0.05),
    // 16–24 percent at L2–L5 (CT of 764 pedicles, PubMed 8087710: read), L5 16.1 ± 2.3 (Cook & Baker 2021: read), less size; less than that
    // here, since the levels vary together.
    spread!(pedicle_width, 0.10),
    // L5 12.9, SD of sub-groups 1.0–1.4 (Cook & Baker 2021: read), less size.
    spread!(pedicle_height, 0.07),
    // 4.9–7.2 (CT of 764 pedicles: read); the smaller half of it, since the levels vary together here.
    spread!(pedicle_axial_deg, 3.0),
    // L5 28.2 ± 3.1 (Cook & Baker 2021: read), 11 percent, less size; half of the rest, so that the sac has room.
    spread!(canal_width, 0.05),
    // L5 15.6 ± 2.1 (Cook & Baker 2021: read), 13 percent, less size; upper half only of that, so that the sac has room.
    spread!(canal_depth, 0.06),
    // Differences of one side to the other alone are 4.1 ± 2.6 at L4-5 (Mohanty 2018: read). Derived.
    spread!(facet_plane_deg, 3.0),
    // Derived: as the plates.
    spread!(transverse_span, 0.05),
    // Derived: as the plates, somewhat more.
    spread!(spinous_length, 0.07),
    // Mid heights ± 1.5–2.5 of 10–14 (Iranian MRI, n = 14: read), 11.6 ± 1.8 at L3-4 (Zhou 2000: memory), less size.
    spread!(disc_height, 0.10),
    // 8.4 standing (Vialle 2005: memory), 9.9 supine (Nigeria, n = 274: read); prone on a pad taken as less. Derived.
    spread!(sacral_slope_deg, 5.0),
    // L4-S1 recumbent 29.8 ± 8.0 (PMC6680033: read) beyond what goes with the slope.
    spread!(disc_wedge, 0.10),
    // From 86.7 percent of imaged crests at L4 or L4-5 (Chakraverty 2007: read), if normal about the model's own. Derived.
    spread!(crest_mm, 6.0),
    // Fat on the back: skin to foramen within one class of weight, memory.
    spread!(back_fat, 0.08),
];

/// Streams of the seed before this one are the vessels'.
const FIRST_STREAM: u64 = 1000;

/// Share of a change of the sacral slope that the discs take up again as lordosis; the rest tilts the whole column. Derived.
const SLOPE_KEPT_BY_DISCS: f64 = 0.75;

impl Variation {
    /// Nothing differs.
    pub const NONE: Self = Self {
        size: 1.0,
        body_height: 1.0,
        plate: 1.0,
        pedicle_width: 1.0,
        pedicle_height: 1.0,
        pedicle_axial_deg: 0.0,
        canal_width: 1.0,
        canal_depth: 1.0,
        facet_plane_deg: 0.0,
        transverse_span: 1.0,
        spinous_length: 1.0,
        disc_height: 1.0,
        sacral_slope_deg: 0.0,
        disc_wedge: 1.0,
        crest_mm: 0.0,
        back_fat: 1.0,
    };

    /// That of a seed, times `share`.
    pub fn of(seed: u64, share: f64) -> Self {
        let mut own = Self::NONE;
        if share == 0.0 {
            return own;
        }
        for (i, spread) in SPREADS.iter().enumerate() {
            let z = Numbers::stream(seed, FIRST_STREAM + i as u64).normal_within(MOST_SD);
            (spread.put)(&mut own, z * spread.sd * share);
        }
        own
    }

    /// How far the articular pillar of a vertebra stands further out than the average's, mm: it goes out with its pedicle.
    fn pillar_out_mm(&self, d: &Vertebra) -> f64 {
        (d.pedicle_width_mm * (self.pedicle_width - 1.0) + d.interpedicular_mm * (self.canal_width - 1.0))
            / 2.0
    }

    /// A vertebra of this patient, but for size.
    pub(super) fn vertebra(&self, d: &Vertebra) -> Vertebra {
        let pedicle_width_mm = d.pedicle_width_mm * self.pedicle_width;
        let interpedicular_mm = d.interpedicular_mm * self.canal_width;
        let out = self.pillar_out_mm(d);
        let free = d.transverse_span_mm - d.interpedicular_mm - 2.0 * d.pedicle_width_mm;
        Vertebra {
            upper_width_mm: d.upper_width_mm * self.plate,
            lower_width_mm: d.lower_width_mm * self.plate,
            upper_depth_mm: d.upper_depth_mm * self.plate,
            lower_depth_mm: d.lower_depth_mm * self.plate,
            posterior_height_mm: d.posterior_height_mm * self.body_height,
            anterior_height_mm: d.anterior_height_mm * self.body_height,
            pedicle_width_mm,
            pedicle_height_mm: d.pedicle_height_mm * self.pedicle_height,
            pedicle_axial_deg: d.pedicle_axial_deg + self.pedicle_axial_deg,
            interpedicular_mm,
            canal_depth_mm: d.canal_depth_mm * self.canal_depth,
            facet_plane_deg: d.facet_plane_deg + self.facet_plane_deg,
            superior_process_lateral_mm: d.superior_process_lateral_mm + out,
            pars_lateral_mm: d.pars_lateral_mm + out,
            transverse_span_mm: d.transverse_span_mm
                + free * (self.transverse_span - 1.0)
                + 2.0 * out.max(0.0),
            spinous_length_mm: d.spinous_length_mm * self.spinous_length,
            ..*d
        }
    }

    /// The sacrum of this patient under the average `l5`, but for size: its superior processes keep to L5's arch.
    pub(super) fn pelvis(&self, d: &Pelvis, l5: &Vertebra) -> Pelvis {
        Pelvis {
            plate_width_mm: d.plate_width_mm * self.plate,
            plate_depth_mm: d.plate_depth_mm * self.plate,
            facet_plane_deg: d.facet_plane_deg + self.facet_plane_deg,
            superior_process_lateral_mm: d.superior_process_lateral_mm + self.pillar_out_mm(l5),
            ..*d
        }
    }

    /// Disc wedges, given the average ones, radians.
    pub(super) fn disc_wedges(&self, average: [f64; 6]) -> [f64; 6] {
        let whole: f64 = average.iter().sum();
        let kept = SLOPE_KEPT_BY_DISCS * self.sacral_slope_deg.to_radians();
        average.map(|wedge| wedge * (self.disc_wedge + kept / whole))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_share_is_nothing_and_shares_grow() {
        assert_eq!(Variation::of(7, 0.0), Variation::NONE);
        let (half, whole) = (Variation::of(7, 0.5), Variation::of(7, 1.0));
        assert!((2.0 * (half.size - 1.0) - (whole.size - 1.0)).abs() < 1e-12);
        assert_ne!(whole, Variation::of(8, 1.0));
    }

    /// The spreads come out as they stand in the table, cut at two standard deviations (0.880 of the SD).
    #[test]
    fn draws_have_the_spreads_of_the_table() {
        let crests: Vec<f64> = (0..4000).map(|seed| Variation::of(seed, 1.0).crest_mm).collect();
        let sd = (crests.iter().map(|x| x * x).sum::<f64>() / 4000.0).sqrt();
        assert!((sd - 0.880 * 6.0).abs() < 0.2, "{sd}");
    }
}

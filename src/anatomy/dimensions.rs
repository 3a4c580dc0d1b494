//! Every number of the model's bones, with its source. Lengths in mm, angles in degrees, average adult.
//!
//! Marks: *read* = seen in the stored page of the source; *memory* = recalled, not checked against a page;
//! *derived* = our arithmetic or choice inside the ranges named. Rows are T12, L1 … L5.
//!
//! Sources:
//! - Clouthier 2023, J Biomech 146:111421, mean shape of 87 patients ("mean of 87"; mesh under the MIT licence): measured, times 0.96, the
//!   size at which its plates are as deep as Panjabi's.
//! - The Visible Human male (ArtiSynth lumbosacral model, BSD-3), times 0.90 ("the man"): measured.
//! - Panjabi 1992, Spine 17:299 (lumbar table) and 1991, Spine 16:888 (thoracic): memory.
//! - Zindrick 1987, Spine 12:160: memory. CT of 764 pedicles, PubMed 8087710: read (L2–S1).
//! - Cook & Baker 2021, Int J Spine Surg 15:1072 (L5): read.
//! - Masharawi 2010, Eur Spine J 19:768 (wedging, ratios to body height and width): read.
//! - Masharawi 2004, Spine 29:1755 (facet planes): read.
//! - Ebraheim 1997, Spine 22:2338 (interpedicular distance 23.2–24.4): read.
//! - Wang 2012, Eur Spine J 21:2316 (plate sag 1.5 and 0.7 mm, rim): read.
//! - Li 2003, CT of transverse processes: read. Rädel 2024, World Neurosurg 189:e108 (L3 longest): read.
//! - Sci Rep 2022, s41598-022-21840-x (segmental lordosis) and PMC6680033 (recumbent lordosis): read.

use super::names::Level;
use super::vertebra_rows::Rows;
use super::vertebra_table::ROWS;

/// One vertebra's dimensions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertebra {
    /// Whose rows shape it ([`super::vertebra_table`]): its own, above L1 L1's.
    pub rows: Level,
    /// Upper end plate, left-right. Mean of 87; Panjabi's columns are 3 to 7 mm narrower for the same depth (L1 between the man, the mean's L2 and Panjabi).
    pub upper_width_mm: f64,
    /// Lower end plate, left-right. As the upper one.
    pub lower_width_mm: f64,
    /// Upper end plate, front-back in the midline. Mean of 87, within 0.7 of Panjabi.
    pub upper_depth_mm: f64,
    /// Lower end plate, front-back in the midline. Mean of 87; L5 between Panjabi 33.2 and Cook 35.3.
    pub lower_depth_mm: f64,
    /// Body height at the posterior rims. Mean of 87 with the wedging below; L5 between its 23.8 and Cook's 26.3.
    pub posterior_height_mm: f64,
    /// Body height at the anterior rims. Mean of 87 with Masharawi's wedging (mean of the sexes); L5 within Cook's 30.3 ± 1.9.
    pub anterior_height_mm: f64,
    /// Pedicle isthmus, across. Between Zindrick and the CT of 764 pedicles; the mean of 87 agrees within 0.5.
    pub pedicle_width_mm: f64,
    /// Pedicle isthmus, up-down. Zindrick and the mean of 87; L5 between Zindrick 14.0 and Cook 12.9.
    pub pedicle_height_mm: f64,
    /// Pedicle axis against the sagittal plane, converging forwards. Zindrick and CT.
    pub pedicle_axial_deg: f64,
    /// Pedicle isthmus behind the posterior rims. Measured on the mean of 87: nearer to the body the further down.
    pub pedicle_behind_rims_mm: f64,
    /// Distance between the pedicles' medial walls. Mean of 87 (20.4, 21.3, 22.4 at L2–L4), half a millimetre to one below Ebraheim; L5 between its 25 and Cook's 28.2.
    pub interpedicular_mm: f64,
    /// Canal, posterior wall's waist to the lamina's most forward point, midline. Mean of 87 and Cook (L5 15.6 ± 2.1); Panjabi's 17.5–19 are 2 to 3 more than either.
    pub canal_depth_mm: f64,
    /// Plane of the joint above this vertebra (its superior facets) from the sagittal plane. Masharawi's ranges, and within them towards the mean of 87 (35, 38, 37, 40 at L2–L5).
    pub facet_plane_deg: f64,
    /// Ridge of the superior articular process from the midline. Mean of 87.
    pub superior_process_lateral_mm: f64,
    /// The same behind the posterior rims. Mean of 87.
    pub superior_process_behind_mm: f64,
    /// Tip of the superior articular process above the upper end plate. Mean of 87.
    pub superior_process_rise_mm: f64,
    /// Half the distance between the middles of the two partes interarticulares. Mean of 87 (rises L2–L5, Peters: read).
    pub pars_lateral_mm: f64,
    /// Transverse processes, tip to tip. Mean of 87 (Panjabi 71, 76, 86, 79, 92).
    pub transverse_span_mm: f64,
    /// Spinous process, lamina to tip. Mean of 87; L5 shortest (PMC8664751: read).
    pub spinous_length_mm: f64,
    /// Spinous process, up-down. Mean of 87 (Masharawi 2010: 0.57–0.92 of the body height).
    pub spinous_height_mm: f64,
    /// Lamina, up-down, beside the midline. Mean of 87.
    pub lamina_height_mm: f64,
    /// How far the transverse process has grown down to the sacrum's wing: 0 free, 1 meets it. 0 in the table.
    pub transition: f64,
    /// How much deeper than usual both plates sag in their middle, mm. 0 in the table.
    pub plates_sunk_mm: f64,
}

/// The average, T12, L1 … L5.
static TABLE: [Vertebra; 6] = [
    Vertebra {
        rows: Level::L1,
        upper_width_mm: 40.5,
        lower_width_mm: 43.0,
        upper_depth_mm: 32.5,
        lower_depth_mm: 33.0,
        posterior_height_mm: 26.5,
        anterior_height_mm: 25.0,
        pedicle_width_mm: 8.0,
        pedicle_height_mm: 15.8,
        pedicle_axial_deg: 2.0,
        pedicle_behind_rims_mm: 2.5,
        interpedicular_mm: 20.0,
        canal_depth_mm: 14.0,
        facet_plane_deg: 25.0,
        superior_process_lateral_mm: 14.7,
        superior_process_behind_mm: 16.2,
        superior_process_rise_mm: 6.0,
        pars_lateral_mm: 10.8,
        transverse_span_mm: 50.0,
        spinous_length_mm: 26.0,
        spinous_height_mm: 18.0,
        lamina_height_mm: 26.0,
        transition: 0.0,
        plates_sunk_mm: 0.0,
    },
    Vertebra {
        rows: Level::L1,
        upper_width_mm: 43.0,
        lower_width_mm: 45.5,
        upper_depth_mm: 34.0,
        lower_depth_mm: 35.3,
        posterior_height_mm: 28.7,
        anterior_height_mm: 26.7,
        pedicle_width_mm: 8.7,
        pedicle_height_mm: 15.4,
        pedicle_axial_deg: 11.0,
        pedicle_behind_rims_mm: 2.5,
        interpedicular_mm: 20.5,
        canal_depth_mm: 14.5,
        facet_plane_deg: 30.0,
        superior_process_lateral_mm: 15.2,
        superior_process_behind_mm: 16.2,
        superior_process_rise_mm: 6.0,
        pars_lateral_mm: 10.8,
        transverse_span_mm: 72.3,
        spinous_length_mm: 25.0,
        spinous_height_mm: 20.0,
        lamina_height_mm: 30.0,
        transition: 0.0,
        plates_sunk_mm: 0.0,
    },
    Vertebra {
        rows: Level::L2,
        upper_width_mm: 45.5,
        lower_width_mm: 48.5,
        upper_depth_mm: 34.0,
        lower_depth_mm: 34.8,
        posterior_height_mm: 28.5,
        anterior_height_mm: 27.5,
        pedicle_width_mm: 8.8,
        pedicle_height_mm: 15.2,
        pedicle_axial_deg: 13.0,
        pedicle_behind_rims_mm: 2.5,
        interpedicular_mm: 20.8,
        canal_depth_mm: 15.0,
        facet_plane_deg: 32.0,
        superior_process_lateral_mm: 15.0,
        superior_process_behind_mm: 16.2,
        superior_process_rise_mm: 6.1,
        pars_lateral_mm: 10.6,
        transverse_span_mm: 78.9,
        spinous_length_mm: 25.0,
        spinous_height_mm: 22.0,
        lamina_height_mm: 30.0,
        transition: 0.0,
        plates_sunk_mm: 0.0,
    },
    Vertebra {
        rows: Level::L3,
        upper_width_mm: 48.0,
        lower_width_mm: 50.5,
        upper_depth_mm: 35.2,
        lower_depth_mm: 35.0,
        posterior_height_mm: 28.3,
        anterior_height_mm: 28.3,
        pedicle_width_mm: 10.3,
        pedicle_height_mm: 15.3,
        pedicle_axial_deg: 14.0,
        pedicle_behind_rims_mm: 1.0,
        interpedicular_mm: 22.0,
        canal_depth_mm: 14.5,
        facet_plane_deg: 36.0,
        superior_process_lateral_mm: 16.4,
        superior_process_behind_mm: 14.8,
        superior_process_rise_mm: 6.5,
        pars_lateral_mm: 11.5,
        transverse_span_mm: 88.7,
        spinous_length_mm: 25.5,
        spinous_height_mm: 22.0,
        lamina_height_mm: 28.0,
        transition: 0.0,
        plates_sunk_mm: 0.0,
    },
    Vertebra {
        rows: Level::L4,
        upper_width_mm: 50.0,
        lower_width_mm: 52.0,
        upper_depth_mm: 35.5,
        lower_depth_mm: 35.2,
        posterior_height_mm: 27.3,
        anterior_height_mm: 28.5,
        pedicle_width_mm: 12.8,
        pedicle_height_mm: 15.3,
        pedicle_axial_deg: 17.0,
        pedicle_behind_rims_mm: 0.5,
        interpedicular_mm: 23.0,
        canal_depth_mm: 15.0,
        facet_plane_deg: 40.0,
        superior_process_lateral_mm: 17.5,
        superior_process_behind_mm: 13.6,
        superior_process_rise_mm: 5.2,
        pars_lateral_mm: 13.2,
        transverse_span_mm: 87.2,
        spinous_length_mm: 22.5,
        spinous_height_mm: 20.0,
        lamina_height_mm: 23.0,
        transition: 0.0,
        plates_sunk_mm: 0.0,
    },
    Vertebra {
        rows: Level::L5,
        upper_width_mm: 53.0,
        lower_width_mm: 52.0,
        upper_depth_mm: 35.0,
        lower_depth_mm: 34.0,
        posterior_height_mm: 25.3,
        anterior_height_mm: 29.2,
        pedicle_width_mm: 17.0,
        pedicle_height_mm: 13.8,
        pedicle_axial_deg: 28.0,
        pedicle_behind_rims_mm: 0.0,
        interpedicular_mm: 26.5,
        canal_depth_mm: 15.6,
        facet_plane_deg: 44.0,
        superior_process_lateral_mm: 18.9,
        superior_process_behind_mm: 12.2,
        superior_process_rise_mm: 5.2,
        pars_lateral_mm: 16.5,
        transverse_span_mm: 90.5,
        spinous_length_mm: 17.0,
        spinous_height_mm: 15.0,
        lamina_height_mm: 18.0,
        transition: 0.0,
        plates_sunk_mm: 0.0,
    },
];

/// The average vertebra of a level; `None` for S1.
pub fn vertebra(level: Level) -> Option<Vertebra> {
    TABLE.get(level.index()).copied()
}

/// The rows of a level, and the dimensions at which they stand as written. T12, T11 and T10 are shaped by L1's.
pub(super) fn average(of: Level) -> (&'static Rows, &'static Vertebra) {
    let i = of.index().clamp(1, 5);
    (&ROWS[i - 1], &TABLE[i])
}

impl Vertebra {
    /// Mean half height of the body, mm.
    pub fn half_height_mm(&self) -> f64 {
        (self.posterior_height_mm + self.anterior_height_mm) / 4.0
    }

    /// Angle between the end plates, radians; > 0 when the front is higher (lordotic).
    pub fn wedge(&self) -> f64 {
        2.0 * libm::atan(
            (self.anterior_height_mm - self.posterior_height_mm)
                / (self.upper_depth_mm + self.lower_depth_mm),
        )
    }

    /// Posterior wall at mid-height, in the midline, behind the body's centre, mm: the waist's, in front of the rims.
    pub fn posterior_wall_mm(&self) -> f64 {
        let walls = &average(self.rows).0.walls;
        self.posterior_rims_mm() * (1.0 - walls.waist[1]) + walls.waist_shift_mm
    }

    /// Line through the posterior rims behind the body's centre, mm: where the rows of the arch have their zero.
    pub fn posterior_rims_mm(&self) -> f64 {
        (self.upper_depth_mm + self.lower_depth_mm) / 4.0
    }

    /// Centre of the left pedicle's isthmus in the vertebra's own frame, mm: [left, posterior, cranial].
    pub fn pedicle_centre_mm(&self) -> [f64; 3] {
        let across = libm::cos(self.pedicle_axial_deg.to_radians());
        [
            (self.interpedicular_mm + self.pedicle_width_mm * across) / 2.0,
            self.posterior_rims_mm() + self.pedicle_behind_rims_mm,
            self.posterior_height_mm / 2.0 - PEDICLE_BELOW_PLATE_MM - self.pedicle_height_mm / 2.0,
        ]
    }

    /// Sag of the lower and of the upper plate, mm.
    pub fn plate_sag_mm(&self) -> [f64; 2] {
        [LOWER_PLATE_SAG_MM, UPPER_PLATE_SAG_MM].map(|sag| sag + self.plates_sunk_mm)
    }

    /// The same vertebra, every length times `factor`.
    pub fn scaled(&self, factor: f64) -> Self {
        Self {
            upper_width_mm: self.upper_width_mm * factor,
            lower_width_mm: self.lower_width_mm * factor,
            upper_depth_mm: self.upper_depth_mm * factor,
            lower_depth_mm: self.lower_depth_mm * factor,
            posterior_height_mm: self.posterior_height_mm * factor,
            anterior_height_mm: self.anterior_height_mm * factor,
            pedicle_width_mm: self.pedicle_width_mm * factor,
            pedicle_height_mm: self.pedicle_height_mm * factor,
            pedicle_behind_rims_mm: self.pedicle_behind_rims_mm * factor,
            interpedicular_mm: self.interpedicular_mm * factor,
            canal_depth_mm: self.canal_depth_mm * factor,
            superior_process_lateral_mm: self.superior_process_lateral_mm * factor,
            superior_process_behind_mm: self.superior_process_behind_mm * factor,
            superior_process_rise_mm: self.superior_process_rise_mm * factor,
            pars_lateral_mm: self.pars_lateral_mm * factor,
            transverse_span_mm: self.transverse_span_mm * factor,
            spinous_length_mm: self.spinous_length_mm * factor,
            spinous_height_mm: self.spinous_height_mm * factor,
            lamina_height_mm: self.lamina_height_mm * factor,
            ..*self
        }
    }
}

/// Upper edge of the pedicle below the upper end plate's posterior rim, mm. Derived: pedicles leave the upper half.
pub const PEDICLE_BELOW_PLATE_MM: f64 = 2.0;
/// Sag of the plate below a disc (a vertebra's upper plate), mm. Wang 2012: read.
pub const UPPER_PLATE_SAG_MM: f64 = 0.7;
/// Sag of the plate above a disc (a vertebra's lower plate), mm. Wang 2012: read.
pub const LOWER_PLATE_SAG_MM: f64 = 1.5;
/// Joint space between two facets, mm. 0.7–1.6 on the mean of 87 and on one man (measured).
pub const JOINT_SPACE_MM: f64 = 1.3;

/// Disc heights in the middle, T12-L1 … L5-S1, mm: a compromise between Iranian MRI and Zhou 2000. Derived.
pub const DISC_HEIGHT_MM: [f64; 6] = [7.0, 8.5, 10.0, 11.0, 11.5, 10.5];

/// Disc part of the segmental lordosis, T12-L1 … L5-S1, degrees, standing (Sci Rep 2022, less body wedging). Derived.
pub const DISC_WEDGE_STANDING_DEG: [f64; 6] = [1.0, 4.5, 7.6, 9.2, 10.8, 15.4];
/// The same lying prone: L4-S1 as measured recumbent (29.8 of 34.2), the rest scaled by 0.45 (PMC6680033). Derived.
pub const DISC_WEDGE_PRONE_DEG: [f64; 6] = [1.0, 3.9, 4.3, 4.2, 9.2, 12.6];
/// Sacral slope standing, degrees. Vialle 2005: memory.
pub const SACRAL_SLOPE_STANDING_DEG: f64 = 41.0;
/// Sacral slope prone, degrees: gives the measured L5 tilt of 11–14 (Ra & Min 2015, PubMed 24690186: read). Derived.
pub const SACRAL_SLOPE_PRONE_DEG: f64 = 29.0;

/// The sacrum and pelvis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pelvis {
    /// S1 end plate, left-right. Memory.
    pub plate_width_mm: f64,
    /// S1 end plate, front-back. Memory.
    pub plate_depth_mm: f64,
    /// S1 pedicle, across (CT of 764 pedicles: 23.1: read).
    pub pedicle_width_mm: f64,
    /// S1 pedicle axis against the sagittal plane (CT of 764 pedicles: 44: read).
    pub pedicle_axial_deg: f64,
    /// Plane of the L5-S1 joints from the sagittal plane. Masharawi 2004 ladder.
    pub facet_plane_deg: f64,
    /// Axis of the S1 superior articular process from the midline. Derived.
    pub superior_process_lateral_mm: f64,
    /// The same behind the posterior edge of the plate. Derived.
    pub superior_process_behind_mm: f64,
    /// Its tip above the plate. Derived.
    pub superior_process_rise_mm: f64,
    /// First posterior foramen from the midline. Measured on one man (see `sacrum`).
    pub posterior_foramen_lateral_mm: f64,
    /// First anterior foramen from the midline. Measured on one man (see `sacrum`).
    pub anterior_foramen_lateral_mm: f64,
    /// First foramina below the plate. Measured on one man (see `sacrum`).
    pub foramen_below_plate_mm: f64,
    /// Half diameter of the posterior foramen. Measured on one man (see `sacrum`).
    pub posterior_foramen_radius_mm: f64,
    /// Half diameter of the anterior foramen. Measured on one man (see `sacrum`).
    pub anterior_foramen_radius_mm: f64,
}

impl Pelvis {
    /// The same sacrum, every length times `factor`.
    pub fn scaled(&self, factor: f64) -> Self {
        Self {
            plate_width_mm: self.plate_width_mm * factor,
            plate_depth_mm: self.plate_depth_mm * factor,
            pedicle_width_mm: self.pedicle_width_mm * factor,
            superior_process_lateral_mm: self.superior_process_lateral_mm * factor,
            superior_process_behind_mm: self.superior_process_behind_mm * factor,
            superior_process_rise_mm: self.superior_process_rise_mm * factor,
            posterior_foramen_lateral_mm: self.posterior_foramen_lateral_mm * factor,
            anterior_foramen_lateral_mm: self.anterior_foramen_lateral_mm * factor,
            foramen_below_plate_mm: self.foramen_below_plate_mm * factor,
            posterior_foramen_radius_mm: self.posterior_foramen_radius_mm * factor,
            anterior_foramen_radius_mm: self.anterior_foramen_radius_mm * factor,
            ..*self
        }
    }
}

/// The average sacrum.
pub const PELVIS: Pelvis = Pelvis {
    plate_width_mm: 50.0,
    plate_depth_mm: 33.0,
    pedicle_width_mm: 23.1,
    pedicle_axial_deg: 44.0,
    facet_plane_deg: 51.0,
    superior_process_lateral_mm: 20.5,
    superior_process_behind_mm: 10.0,
    superior_process_rise_mm: 6.7,
    posterior_foramen_lateral_mm: 23.5,
    anterior_foramen_lateral_mm: 21.5,
    foramen_below_plate_mm: 31.0,
    posterior_foramen_radius_mm: 4.2,
    anterior_foramen_radius_mm: 7.2,
};

#[cfg(test)]
mod tests {
    use super::*;

    /// Masharawi 2010 Table 1, mean of the sexes (degrees, + = anterior shorter): +3.35, +1.65, +0.1, -1.9, -6.2.
    #[test]
    fn wedging_agrees_with_the_published_table() {
        for (level, published_deg) in
            [(Level::L1, 3.35), (Level::L2, 1.65), (Level::L3, 0.1), (Level::L4, -1.9), (Level::L5, -6.2)]
        {
            let wedge_deg = vertebra(level).unwrap().wedge().to_degrees();
            assert!((wedge_deg + published_deg).abs() < 0.35, "{level}: {wedge_deg}");
        }
    }
}

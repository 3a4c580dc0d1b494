//! Every number of the model's bones, with its source. Lengths in mm, angles in degrees, average adult.
//!
//! Marks: *read* = seen in the stored page of the source; *memory* = recalled, not checked against a page;
//! *derived* = our arithmetic or choice inside the ranges named. Rows are T12, L1 … L5.
//!
//! Sources:
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

/// One vertebra's dimensions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertebra {
    /// Upper end plate, left-right. Panjabi, rounded.
    pub upper_width_mm: f64,
    /// Lower end plate, left-right. Panjabi.
    pub lower_width_mm: f64,
    /// Upper end plate, front-back. Panjabi, rounded.
    pub upper_depth_mm: f64,
    /// Lower end plate, front-back. Panjabi; L5 between Panjabi 33.2 and Cook 35.3.
    pub lower_depth_mm: f64,
    /// Body height at the posterior wall. L5 Cook; others derived from CT series and the wedging below.
    pub posterior_height_mm: f64,
    /// Body height at the anterior wall. L5 Cook; others from Masharawi's wedging (mean of the sexes).
    pub anterior_height_mm: f64,
    /// Pedicle isthmus, across. Between Zindrick and the CT of 764 pedicles.
    pub pedicle_width_mm: f64,
    /// Pedicle isthmus, up-down. Zindrick; L5 between Zindrick 14.0 and Cook 12.9.
    pub pedicle_height_mm: f64,
    /// Pedicle axis against the sagittal plane, converging forwards. Zindrick and CT.
    pub pedicle_axial_deg: f64,
    /// Distance between the pedicles' medial walls. Ebraheim, rising to L5 (Cook 28.2, Panjabi 27.1 canal width).
    pub interpedicular_mm: f64,
    /// Canal, posterior wall of the body to the lamina, midline. Panjabi.
    pub canal_depth_mm: f64,
    /// Plane of the joint above this vertebra (its superior facets) from the sagittal plane. Masharawi 2004 ladder.
    pub facet_plane_deg: f64,
    /// Axis of the superior articular process from the midline. Derived: lateral to the pedicle above.
    pub superior_process_lateral_mm: f64,
    /// The same axis behind the posterior wall. Derived: leaves a foramen about 8 mm wide (Gkasdaris 2018, 6.0–8.1).
    pub superior_process_behind_mm: f64,
    /// Tip of the superior articular process above the upper end plate. Derived.
    pub superior_process_rise_mm: f64,
    /// Half the distance between the middles of the two partes interarticulares. Derived (rises L2–L5, Peters: read).
    pub pars_lateral_mm: f64,
    /// Transverse processes, tip to tip. Panjabi.
    pub transverse_span_mm: f64,
    /// Spinous process, lamina to tip. Memory; L5 shortest (PMC8664751: read).
    pub spinous_length_mm: f64,
    /// Spinous process, up-down. Masharawi 2010: 0.57–0.92 of the body height.
    pub spinous_height_mm: f64,
    /// Lamina, up-down. Memory.
    pub lamina_height_mm: f64,
    /// How many times as stout as at L1–L4 the transverse process is (L5 twice as thick, Li 2003: read).
    pub transverse_stoutness: f64,
    /// How far the transverse process has grown down to the sacrum's wing: 0 free, 1 meets it. 0 in the table.
    pub transition: f64,
}

/// Column order of the table below.
const ROWS: [[f64; 21]; 6] = [
    // width     depth       height      pedicle              canal       facets: plane, x, y, rise   pars  span   spinous     lamina stout
    [
        39.5, 41.0, 32.5, 33.0, 26.5, 25.0, 8.0, 15.8, 2.0, 22.0, 18.0, 24.0, 15.5, 12.0, 9.0, 12.8, 50.0,
        28.0, 18.0, 23.0, 0.8,
    ],
    [
        41.0, 43.3, 34.0, 35.3, 28.0, 26.0, 8.7, 15.4, 11.0, 22.5, 19.0, 26.0, 16.6, 12.2, 9.0, 12.6, 71.0,
        30.0, 20.0, 22.0, 0.9,
    ],
    [
        43.0, 45.5, 34.5, 34.9, 28.5, 27.5, 8.7, 15.0, 13.0, 23.0, 18.2, 28.0, 17.7, 12.6, 9.3, 12.9, 76.0,
        32.0, 21.0, 22.0, 0.9,
    ],
    [
        44.0, 48.0, 35.0, 34.8, 28.5, 28.5, 9.8, 14.9, 14.0, 23.5, 17.5, 36.0, 18.6, 12.9, 9.5, 14.0, 86.0,
        33.0, 21.0, 21.0, 0.9,
    ],
    [
        46.5, 49.5, 35.5, 33.9, 27.5, 28.7, 12.4, 14.5, 17.0, 24.5, 18.0, 42.0, 19.9, 13.2, 9.5, 16.0, 79.0,
        30.0, 19.0, 19.0, 1.0,
    ],
    [
        47.5, 49.4, 35.0, 34.0, 26.3, 30.0, 17.0, 13.5, 28.0, 27.0, 17.5, 48.0, 22.1, 14.3, 9.5, 19.5, 92.0,
        25.0, 15.0, 16.0, 1.6,
    ],
];

/// The average vertebra of a level; `None` for S1.
pub fn vertebra(level: Level) -> Option<Vertebra> {
    let row = ROWS.get(level.index())?;
    Some(Vertebra {
        upper_width_mm: row[0],
        lower_width_mm: row[1],
        upper_depth_mm: row[2],
        lower_depth_mm: row[3],
        posterior_height_mm: row[4],
        anterior_height_mm: row[5],
        pedicle_width_mm: row[6],
        pedicle_height_mm: row[7],
        pedicle_axial_deg: row[8],
        interpedicular_mm: row[9],
        canal_depth_mm: row[10],
        facet_plane_deg: row[11],
        superior_process_lateral_mm: row[12],
        superior_process_behind_mm: row[13],
        superior_process_rise_mm: row[14],
        pars_lateral_mm: row[15],
        transverse_span_mm: row[16],
        spinous_length_mm: row[17],
        spinous_height_mm: row[18],
        lamina_height_mm: row[19],
        transverse_stoutness: row[20],
        transition: 0.0,
    })
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

    /// Posterior wall behind the body's centre, mm.
    pub fn posterior_wall_mm(&self) -> f64 {
        (self.upper_depth_mm + self.lower_depth_mm) / 4.0
    }

    /// Centre of the left pedicle's isthmus in the vertebra's own frame, mm: [left, posterior, cranial].
    pub fn pedicle_centre_mm(&self) -> [f64; 3] {
        [
            (self.interpedicular_mm + self.pedicle_width_mm) / 2.0,
            self.posterior_wall_mm() + PEDICLE_BEHIND_WALL_MM,
            self.posterior_height_mm / 2.0 - PEDICLE_BELOW_PLATE_MM - self.pedicle_height_mm / 2.0,
        ]
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

/// Isthmus of the pedicle behind the posterior wall, mm: with the half depth it makes the 22 mm that the rotation
/// formulas use for the pedicles' depth behind the body's centre. Derived.
pub const PEDICLE_BEHIND_WALL_MM: f64 = 4.5;
/// Upper edge of the pedicle below the upper end plate's posterior rim, mm. Derived: pedicles leave the upper half.
pub const PEDICLE_BELOW_PLATE_MM: f64 = 1.6;
/// Sag of the plate below a disc (a vertebra's upper plate), mm. Wang 2012: read.
pub const UPPER_PLATE_SAG_MM: f64 = 0.7;
/// Sag of the plate above a disc (a vertebra's lower plate), mm. Wang 2012: read.
pub const LOWER_PLATE_SAG_MM: f64 = 1.5;
/// Joint space between two facets, mm. Design range 1.5–2 (memory).
pub const JOINT_SPACE_MM: f64 = 1.7;

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
    facet_plane_deg: 54.0,
    superior_process_lateral_mm: 26.2,
    superior_process_behind_mm: 15.0,
    superior_process_rise_mm: 9.5,
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

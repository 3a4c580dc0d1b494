//! T10 and T11: they close the film above, so that no view shows the spine ending in mid-air. No case names them, they carry no landmarks
//! and no needle aims at them; everything that is told by level counts them to T12 as context, with the ribs.
//!
//! Dimensions after Panjabi 1991, Spine 16:888 (memory), heights drawn to the size of our T12; joints nearly frontal, spinous processes
//! long and steep (common practice, no source).

use super::dimensions::Vertebra;
use super::names::Level;
use crate::geometry::frame::{Rigid, rotation_x};
use glam::DVec3;

/// Discs T10-11 and T11-12 in the middle, mm. Memory: 4–6.
const DISC_HEIGHT_MM: f64 = 5.5;
/// Wedge of those discs, degrees, > 0 lordotic: the thoracolumbar junction is straight (Bernhardt & Bridwell 1989: read). Derived.
const DISC_WEDGE_DEG: f64 = -0.5;

/// T10.
const T10: Vertebra = Vertebra {
    rows: Level::L1,
    upper_width_mm: 33.0,
    lower_width_mm: 35.5,
    upper_depth_mm: 30.0,
    lower_depth_mm: 30.5,
    posterior_height_mm: 24.0,
    anterior_height_mm: 22.8,
    pedicle_width_mm: 7.2,
    pedicle_height_mm: 14.5,
    pedicle_axial_deg: 4.0,
    pedicle_behind_rims_mm: 2.5,
    interpedicular_mm: 18.0,
    canal_depth_mm: 16.0,
    facet_plane_deg: 72.0,
    superior_process_lateral_mm: 13.0,
    superior_process_behind_mm: 10.5,
    superior_process_rise_mm: 7.0,
    pars_lateral_mm: 12.5,
    transverse_span_mm: 60.0,
    spinous_length_mm: 26.0,
    spinous_height_mm: 13.0,
    lamina_height_mm: 22.0,
    transition: 0.0,
    plates_sunk_mm: 0.0,
};

/// T11.
const T11: Vertebra = Vertebra {
    rows: Level::L1,
    upper_width_mm: 35.5,
    lower_width_mm: 39.0,
    upper_depth_mm: 31.0,
    lower_depth_mm: 31.5,
    posterior_height_mm: 25.2,
    anterior_height_mm: 23.8,
    pedicle_width_mm: 8.0,
    pedicle_height_mm: 15.5,
    pedicle_axial_deg: 2.0,
    pedicle_behind_rims_mm: 2.5,
    interpedicular_mm: 19.5,
    canal_depth_mm: 16.5,
    facet_plane_deg: 68.0,
    superior_process_lateral_mm: 13.5,
    superior_process_behind_mm: 10.5,
    superior_process_rise_mm: 7.5,
    pars_lateral_mm: 12.5,
    transverse_span_mm: 54.0,
    spinous_length_mm: 26.0,
    spinous_height_mm: 15.0,
    lamina_height_mm: 22.5,
    transition: 0.0,
    plates_sunk_mm: 0.0,
};

/// T11 and T10, from below.
pub(super) const UPWARDS: [Vertebra; 2] = [T11, T10];

/// Where the frame of `upper` stands, given that of its lower neighbour: as `column::stack` goes up, without turn or bend of its own.
pub(super) fn above(lower: &Vertebra, frame: &Rigid, upper: &Vertebra, scale: f64) -> Rigid {
    let wedge = DISC_WEDGE_DEG.to_radians();
    let (below, own) = (lower.wedge() / 2.0, upper.wedge() / 2.0);
    let plate = DVec3::Z * lower.half_height_mm();
    let disc = rotation_x(-below - wedge / 2.0) * DVec3::Z * (DISC_HEIGHT_MM * scale);
    let rotation = rotation_x(-below - wedge - own);
    let centre = plate + disc + rotation * DVec3::Z * upper.half_height_mm();
    frame.after(&Rigid { rotation, translation: centre })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The bodies grow downwards, and T11's lower plate is no wider than T12's upper one is by more than the rims' difference.
    #[test]
    fn bodies_grow_downwards() {
        let list = [T10, T11, super::super::dimensions::vertebra(super::super::names::Level::T12).unwrap()];
        assert!(list.is_sorted_by(|a, b| a.upper_width_mm < b.upper_width_mm));
        assert!(list.is_sorted_by(|a, b| a.posterior_height_mm < b.posterior_height_mm));
        assert!(list.windows(2).all(|pair| (pair[0].lower_width_mm - pair[1].upper_width_mm).abs() < 2.0));
    }

    #[test]
    fn next_body_stands_a_disc_higher() {
        let frame = above(&T11, &Rigid::IDENTITY, &T10, 1.0);
        let gap = frame.translation.z - T11.half_height_mm() - T10.half_height_mm();
        assert!((gap - DISC_HEIGHT_MM).abs() < 0.2, "{gap}");
    }
}

//! A part of a bone on its way from the table's rows to a loft: sections that can be moved and stretched to a patient's dimensions.

use super::place::Place;
use super::vertebra_rows::{Bar, Row};
use crate::geometry::sdf::{Loft, Section};
use glam::DVec3;

/// A part of a bone as sections, left side, in the bone's own frame.
#[derive(Clone, Copy, Debug)]
pub(super) struct Track<const N: usize> {
    pub(super) sections: [Section; N],
    pub(super) cap_mm: [f64; 2],
}

impl<const N: usize> Track<N> {
    /// The loft in a place.
    pub(super) fn loft(&self, place: &Place) -> Loft {
        let sections =
            self.sections.map(|s| Section { centre: place.at(s.centre), wide: place.along(s.wide), ..s });
        Loft::new(&sections, self.cap_mm)
    }

    /// The loft where it was written.
    pub(super) fn own(&self) -> Loft {
        Loft::new(&self.sections, self.cap_mm)
    }

    /// Moves each section by what `shift` says of its place between the first (0) and the last one (1).
    pub(super) fn moved(mut self, shift: impl Fn(f64, DVec3) -> DVec3) -> Self {
        let (first, chord) = (self.sections[0].centre, self.sections[N - 1].centre - self.sections[0].centre);
        for section in &mut self.sections {
            let share = (section.centre - first).dot(chord) / chord.length_squared();
            section.centre += shift(share, section.centre);
        }
        self
    }

    /// Half widths and half thicknesses times these.
    pub(super) fn stretched(mut self, wide: f64, thin: f64) -> Self {
        for section in &mut self.sections {
            section.half_wide *= wide;
            section.half_thin *= thin;
        }
        self
    }
}

/// The rows of a part at size `k`, hung at the posterior rims' line `wall_mm`. `wide` is the wide direction before a row's own turn.
pub(super) fn track<const N: usize>(bar: &Bar<N>, wide: [f64; 3], k: f64, wall_mm: f64) -> Track<N> {
    let at = |r: &Row| DVec3::new(k * r.at[0], k * r.at[1] + wall_mm, k * r.at[2]);
    let chord = (at(&bar.rows[N - 1]) - at(&bar.rows[0])).normalize_or(DVec3::Z);
    let base = DVec3::from_array(wide);
    let base = (base - chord * base.dot(chord)).normalize_or(chord.any_orthonormal_vector());
    let across = chord.cross(base);
    let section = |r: &Row| {
        let (s, c) = libm::sincos(r.turn_deg.to_radians());
        Section {
            centre: at(r),
            wide: base * c + across * s,
            half_wide: k * r.half[0],
            half_thin: k * r.half[1],
            squareness: r.square,
        }
    };
    Track { sections: bar.rows.map(|r| section(&r)), cap_mm: bar.cap_mm.map(|c| k * c) }
}

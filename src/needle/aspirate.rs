//! What shows at the hub, by itself or with suction.
//!
//! Of tips in a vessel 44.7 % give blood, of tips outside one 2.1 % do (Furman 2000, Spine 25:2628 (place from memory), flash or aspirate of blood in lumbosacral
//! transforaminal injections: sensitivity 44.7 %, specificity 97.9 %: read). So a dry hub proves nothing. Which tips do is drawn by the
//! patient's seed and the place, to a tenth of a millimetre: the same tip gives the same answer however often it is asked.

use super::compartment::compartment_at;
use crate::anatomy::interior::Interior;
use crate::anatomy::seeded::Numbers;
use glam::DVec3;

/// Share of tips in a vessel that give blood (Furman 2000: read).
const BLOOD_IN_VESSEL: f64 = 0.447;
/// Share of tips outside a vessel that give blood all the same: 1 - 0.979 (Furman 2000: read).
const BLOOD_OUTSIDE: f64 = 0.021;
/// Places nearer to each other than this answer alike, mm.
const GRAIN_MM: f64 = 0.1;

/// Whether blood shows with the tip at a point (column frame, mm).
pub fn blood_at(interior: &Interior, tip: DVec3) -> bool {
    shows(interior, tip, compartment_at(interior, tip).vessel().is_some())
}

/// The same where it is known whether the tip is in a vessel.
pub fn shows(interior: &Interior, tip: DVec3, in_vessel: bool) -> bool {
    let place = tip.to_array().iter().fold(STREAM, |place, &mm| {
        let cell = libm::floor(mm / GRAIN_MM) as i64;
        (place ^ cell as u64).wrapping_mul(0x0000_0100_0000_01B3).rotate_left(23)
    });
    Numbers::stream(interior.seed, place).unit() < if in_vessel { BLOOD_IN_VESSEL } else { BLOOD_OUTSIDE }
}

/// Start of the places' streams: far from those of vessels and dimensions. FNV's offset basis.
const STREAM: u64 = 0xCBF2_9CE4_8422_2325;

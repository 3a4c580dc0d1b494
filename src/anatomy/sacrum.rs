//! The sacrum as a solid, in its own frame: origin at the S1 plate's centre, +z the plate's normal, +y posterior in it.
//!
//! S1's body is a drum under the plate; below and beside it bars are melted together: fused bodies curving back, wings to the
//! sacroiliac joints, lateral masses, laminae with median, intermediate and lateral crests, S1's superior processes. The canal, the
//! first two pairs of foramina (funnels that open forwards, narrow and oblique behind) and the recesses that lead to them are carved.
//!
//! Bars that no dimension names were fitted to one man's sacrum (the Visible Human male, as segmented in the ArtiSynth lumbosacral
//! model, github RemusR9/artisynth_lumbosacralSpineModel, BSD-3), brought to the average's size and rounded to half a millimetre.
//!
//! Limits: below S3 one tapering bar; no hiatus, no coccyx.

use super::dimensions::Pelvis;
use super::names::{Part, Side};
use super::place::{Place, tag};
use super::superior_process::{JointState, SuperiorProcess};
use crate::geometry::sdf::{Drum, Shape};
use crate::geometry::solid::{Carve, Piece, Solid};

/// Nominal cortical thickness, mm. Derived.
const CORTEX_MM: f64 = 0.9;
/// Height of the drum under the S1 plate, mm. Derived: as far down as the body's walls run straight.
const DRUM_HEIGHT_MM: f64 = 17.5;
/// Space of the sacroiliac joint, mm. Memory: 2–4 between the bones, cartilage included.
const ILIUM_GAP_MM: f32 = 2.0;

/// A bar of the sacrum at the average's size, left half: its ends, the direction of its wide axis, half widths and half thicknesses at
/// both ends, and the radius that it melts with, mm.
struct Bar {
    part: Part,
    ends: [[f64; 3]; 2],
    wide: [f64; 3],
    half_wide: [f64; 2],
    half_thin: [f64; 2],
    blend: f64,
}

const fn bar(
    part: Part,
    from: [f64; 3],
    to: [f64; 3],
    wide: [f64; 3],
    half_wide: [f64; 2],
    half_thin: [f64; 2],
    blend: f64,
) -> Bar {
    Bar { part, ends: [from, to], wide, half_wide, half_thin, blend }
}

const ACROSS: [f64; 3] = [1.0, 0.0, 0.0];
const BACK: [f64; 3] = [0.0, 1.0, 0.0];
const UP: [f64; 3] = [0.0, 0.0, 1.0];
/// Up along the canal's roof, which leans forwards.
const UP_THE_ROOF: [f64; 3] = [0.0, -0.2, 1.0];
/// Level, along the sacroiliac joint: forwards and outwards.
const ALONG_JOINT: [f64; 3] = [0.5, -0.85, 0.0];

const BODY: [Bar; 4] = [
    // S1 below its drum.
    bar(Part::Body, [0.0, 3.0, -17.0], [0.0, 11.0, -30.0], ACROSS, [26.5, 18.0], [12.5, 12.0], 5.0),
    // S2.
    bar(Part::Body, [0.0, 10.5, -32.0], [0.0, 21.5, -60.5], ACROSS, [21.5, 21.5], [9.0, 6.0], 4.0),
    // S3.
    bar(Part::Body, [0.0, 24.5, -54.0], [0.0, 29.5, -86.0], ACROSS, [12.0, 24.0], [7.0, 6.0], 4.0),
    // S4 and below.
    bar(Part::Body, [0.0, 33.0, -91.0], [0.0, 28.0, -111.0], ACROSS, [39.0, 10.5], [5.5, 5.0], 4.0),
];
/// What reaches the sacroiliac joint.
const WING: [Bar; 5] = [
    // Ala: from the body.
    bar(Part::Ala, [10.5, -5.0, -7.5], [30.5, 17.5, -13.5], UP, [6.5, 13.5], [13.0, 12.0], 5.0),
    // Ala: its top out to the joint.
    bar(Part::Ala, [31.5, 8.5, -20.5], [50.5, 11.5, -19.0], UP, [10.5, 8.5], [13.5, 8.0], 5.0),
    // Ala: front edge of the joint surface.
    bar(Part::Ala, [54.0, 4.0, -21.0], [49.5, 0.0, -41.5], ALONG_JOINT, [10.0, 8.5], [5.0, 3.5], 5.0),
    // Ala: shoulder behind, beside the process.
    bar(Part::Ala, [36.5, 22.0, -4.5], [45.0, 16.5, -10.5], UP, [8.5, 6.5], [7.0, 5.5], 4.0),
    // Joint surface, S1 to S2.
    bar(Part::Ala, [44.5, 6.5, -27.5], [42.0, 12.5, -53.5], ALONG_JOINT, [12.5, 10.0], [10.5, 4.5], 5.0),
];
/// Lateral masses around the foramina, and the lateral crest.
const MASS: [Bar; 7] = [
    // Lateral mass behind the joint, lateral of the foramina.
    bar(Part::Ala, [36.5, 16.0, -29.5], [26.0, 26.0, -53.5], ALONG_JOINT, [13.5, 12.0], [7.0, 5.5], 5.0),
    // Its taper down to the angle.
    bar(Part::Ala, [36.5, 22.5, -57.5], [33.5, 35.0, -84.0], ALONG_JOINT, [11.5, 8.5], [6.0, 4.5], 5.0),
    // Bar between the first and second foramen.
    bar(Part::Ala, [13.5, 17.5, -43.0], [36.5, 16.5, -51.0], UP, [10.0, 7.0], [8.0, 8.0], 4.0),
    // Bar below the second foramen.
    bar(Part::Ala, [11.5, 27.0, -67.5], [25.5, 31.0, -69.0], UP, [7.5, 6.0], [6.5, 9.5], 4.0),
    // Bar around the third foramen.
    bar(Part::Ala, [12.0, 30.0, -83.0], [28.0, 33.0, -84.0], UP, [8.0, 7.0], [5.5, 5.5], 4.0),
    // Lateral crest, S1.
    bar(Part::Ala, [31.5, 23.0, -22.0], [30.5, 27.5, -37.0], ACROSS, [4.0, 4.0], [4.0, 3.5], 4.0),
    // Lateral crest, S2.
    bar(Part::Ala, [26.0, 31.5, -45.0], [28.0, 35.5, -63.0], ACROSS, [4.0, 4.0], [4.0, 4.5], 4.0),
];
/// The roof of the canal.
const ROOF: [Bar; 4] = [
    // Roof of the canal at S1.
    bar(Part::Lamina, [20.5, 21.5, -15.5], [1.5, 33.0, -25.5], UP, [6.5, 9.0], [3.0, 3.5], 3.0),
    // S2.
    bar(Part::Lamina, [22.0, 28.5, -40.5], [0.5, 37.5, -42.5], UP_THE_ROOF, [7.5, 18.5], [2.8, 3.0], 3.0),
    // S3.
    bar(Part::Lamina, [24.0, 36.0, -69.5], [3.5, 43.0, -73.5], UP_THE_ROOF, [10.5, 25.5], [2.5, 3.0], 3.0),
    // Intermediate crest, medial of the posterior foramina.
    bar(Part::Lamina, [16.0, 27.5, -25.0], [16.0, 36.5, -61.0], ACROSS, [4.5, 4.0], [4.0, 3.0], 4.0),
];
const CREST: [Bar; 3] = [
    // Median crest, S1.
    bar(Part::MedianCrest, [0.0, 39.0, -21.5], [0.0, 46.5, -28.0], BACK, [5.5, 5.5], [2.5, 2.5], 3.0),
    // S2.
    bar(Part::MedianCrest, [0.0, 42.5, -41.5], [0.0, 43.0, -63.5], BACK, [5.5, 4.0], [2.5, 2.0], 3.0),
    // S3.
    bar(Part::MedianCrest, [0.0, 43.5, -64.0], [0.0, 45.0, -88.5], BACK, [3.5, 3.0], [2.0, 2.5], 3.0),
];
/// Canal, wide at the plate and open above, mm.
const CANAL: [Bar; 2] = [
    bar(Part::Lamina, [0.0, 26.0, 13.5], [0.0, 23.0, -17.5], ACROSS, [15.0, 10.0], [7.5, 5.0], 1.0),
    bar(Part::Lamina, [0.0, 24.5, -21.5], [0.0, 36.0, -64.5], ACROSS, [9.0, 7.5], [4.0, 3.5], 1.0),
];
/// Left: the recess from the canal down to the first foramen; the second foramen's two funnels; the third one's.
const TUNNELS: [Bar; 4] = [
    bar(Part::Ala, [11.0, 20.0, 2.0], [20.0, 12.5, -28.5], ACROSS, [4.5, 4.3], [4.2, 4.3], 1.0),
    bar(Part::Ala, [22.0, 21.5, -62.5], [23.5, 4.0, -61.0], UP, [5.5, 7.5], [5.0, 8.0], 1.0),
    bar(Part::Ala, [20.0, 23.5, -58.5], [21.0, 48.0, -60.5], UP, [5.0, 3.0], [4.5, 3.0], 1.0),
    bar(Part::Ala, [21.0, 16.0, -86.0], [18.0, 52.0, -80.0], UP, [5.0, 2.0], [5.0, 1.6], 1.0),
];
/// Where the front and the back funnel of the first foramen begin, mm: not quite at the same place, so that a film does not see through
/// the whole of it.
const FIRST_NARROW_MM: [[f64; 3]; 2] = [[24.5, 11.0, -32.5], [21.0, 11.5, -29.0]];
/// How wide they are there, up and down and across, mm.
const FIRST_NARROW_RADII_MM: [f64; 2] = [6.3, 5.3];

impl Bar {
    fn piece(&self, place: &Place, k: f64) -> Piece {
        let [a, b] = self.ends.map(|end| end.map(|x| x * k));
        let scaled = |v: [f64; 2]| v.map(|x| x * k);
        let shape = place.strut(a, b, self.wide, scaled(self.half_wide), scaled(self.half_thin), false);
        let cortex = if self.part == Part::Lamina { 1.0 } else { CORTEX_MM };
        place.piece(self.part, shape, cortex, self.blend * k)
    }
}

fn pieces<'a>(bars: &'a [Bar], place: &'a Place, k: f64) -> impl Iterator<Item = Piece> + 'a {
    bars.iter().map(move |bar| bar.piece(place, k))
}

/// Left posterior and anterior openings of the first foramen: centres in the sacral frame, mm.
pub(super) fn first_foramen_mm(d: &Pelvis, scale: f64) -> ([f64; 3], [f64; 3]) {
    let posterior = [d.posterior_foramen_lateral_mm, 30.0 * scale, -d.foramen_below_plate_mm];
    let anterior = [d.anterior_foramen_lateral_mm, -3.0 * scale, -d.foramen_below_plate_mm];
    (posterior, anterior)
}

/// The wing of a side: from the body out to the joint.
pub(super) fn wing(place: &Place, k: f64) -> Vec<Piece> {
    pieces(&WING, place, k).collect()
}

/// Sag of the first sacral body's lower and upper plate, mm. Derived.
pub(super) const PLATE_SAG_MM: [f64; 2] = [0.3, 0.8];

/// Builds the sacrum. The joint surface of each side is what the iliac wing there leaves of it, with the joint's space between.
pub(super) fn solid(d: &Pelvis, scale: f64, joint: &JointState, ilia: [Piece; 2]) -> Solid {
    let k = scale;
    let middle = Place::own(None);
    let half = |x: f64| x * 0.5;
    let drum = Drum {
        half_width: [22.0 * k, half(d.plate_width_mm)].map(|x| x as f32),
        half_depth: [12.0 * k, half(d.plate_depth_mm)].map(|x| x as f32),
        posterior_height: (DRUM_HEIGHT_MM * 0.97 * k) as f32,
        anterior_height: (DRUM_HEIGHT_MM * k) as f32,
        waist: [0.02; 2],
        waist_flat: 0.0,
        waist_shift: 0.0,
        squareness: 0.55,
        plate_sag: PLATE_SAG_MM.map(|x| x as f32),
        posterior_dent: 1.2,
        plate_cortex_ratio: 1.5,
    };
    let mut solid = Solid::default();
    solid.pieces.push(Piece::hung(
        Shape::Drum(drum),
        tag(Part::Body, None),
        0.7,
        3.0,
        glam::Vec3::new(0.0, 0.0, -(DRUM_HEIGHT_MM * 0.4925 * k) as f32),
    ));
    solid.pieces.extend(pieces(&BODY, &middle, k));
    let process = SuperiorProcess::of_sacrum(d, scale, joint);
    for side in Side::BOTH {
        let place = Place::own(Some(side));
        for bars in [&WING[..], &MASS, &ROOF] {
            solid.pieces.extend(pieces(bars, &place, k));
        }
        solid.pieces.extend(process.pieces(&place));
        let mut carve = |piece| solid.carves.push(Carve { piece, gap_mm: 0.0 });
        pieces(&TUNNELS, &place, k).for_each(&mut carve);
        let (posterior, anterior) = first_foramen_mm(d, scale);
        let [front, back] = FIRST_NARROW_MM.map(|narrow| narrow.map(|x| x * k));
        let narrow_radii = FIRST_NARROW_RADII_MM.map(|x| x * k);
        for (narrow, opening, radius) in [
            (front, anterior, d.anterior_foramen_radius_mm),
            (back, posterior, d.posterior_foramen_radius_mm),
        ] {
            // On beyond the opening, so that the whole of it is open, and as much wider or narrower.
            let on = |a: f64, b: f64| a + (b - a) * 1.5;
            let end = std::array::from_fn(|i| on(narrow[i], opening[i]));
            let [tall, wide] = narrow_radii.map(|at| [at, on(at, radius).max(1.5)]);
            let shape = place.strut(narrow, end, UP, tall, wide, false);
            carve(place.piece(Part::Ala, shape, 1.0, 1.0));
        }
    }
    solid.pieces.extend(pieces(&CREST, &middle, k));
    for piece in pieces(&CANAL, &middle, k) {
        solid.carves.push(Carve { piece, gap_mm: 0.0 });
    }
    for piece in ilia {
        solid.carves.push(Carve { piece, gap_mm: ILIUM_GAP_MM });
    }
    solid
}

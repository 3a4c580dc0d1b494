//! Points and rings in 3D by construction from the dimensions, never by search on the mesh. f64, column frame, mm.

use super::dimensions::{Pelvis, Vertebra};
use super::names::{Level, Side};
use super::place::Place;
use super::posterior_arch::{PosteriorArch, pars_middle};
use super::process_top::ProcessTop;
pub use super::ring::Ring;
use super::sacrum::{PLATE_SAG_MM, first_foramen_mm};
use super::superior_process::{JointState, SuperiorProcess};
use crate::geometry::frame::Rigid;
use glam::DVec3;

/// An end plate: its rim is the ellipse `centre + left·half_width·cos + back·half_depth·sin`.
#[derive(Clone, Copy, Debug)]
pub struct Plate {
    /// Centre of the rim's plane, mm.
    pub centre: DVec3,
    /// Unit normal, cranial for both plates.
    pub normal: DVec3,
    /// Unit vector to the vertebra's left in the plate.
    pub left: DVec3,
    /// Unit vector backwards in the plate.
    pub back: DVec3,
    /// mm.
    pub half_width: f64,
    /// mm.
    pub half_depth: f64,
    /// How far its middle lies behind the rim's plane, inside the bone, mm.
    pub sag_mm: f64,
}

/// The landmarks of one side of a level.
#[derive(Clone, Copy, Debug)]
pub struct SideLandmarks {
    /// Isthmus of the pedicle.
    pub pedicle: Ring,
    /// Tip of the superior articular process.
    pub superior_process_tip: DVec3,
    /// The process's upper end, whose outline an oblique view is judged by.
    pub superior_process_top: ProcessTop,
    /// Middle of the superior facet.
    pub superior_facet: DVec3,
    /// Tip of the inferior articular process (none on the sacrum).
    pub inferior_process_tip: Option<DVec3>,
    /// Middle of the pars interarticularis (none on the sacrum).
    pub pars: Option<DVec3>,
    /// Middle of the lamina's half (none on the sacrum).
    pub lamina: Option<DVec3>,
    /// Tip of the transverse process (none on the sacrum).
    pub transverse_tip: Option<DVec3>,
    /// Posterior opening of the first sacral foramen (sacrum only).
    pub posterior_foramen: Option<Ring>,
    /// Anterior opening of the first sacral foramen (sacrum only).
    pub anterior_foramen: Option<Ring>,
    /// Top of the iliac crest (sacrum only).
    pub crest_top: Option<DVec3>,
}

/// The landmarks of a level.
#[derive(Clone, Copy, Debug)]
pub struct LevelLandmarks {
    /// Which level.
    pub level: Level,
    /// Centre of the body; for the sacrum the centre between the first posterior foramina and the S1 body.
    pub centre: DVec3,
    /// Upper end plate.
    pub upper_plate: Plate,
    /// Lower end plate (none on the sacrum).
    pub lower_plate: Option<Plate>,
    /// Middle of the posterior wall.
    pub posterior_wall: DVec3,
    /// Tip of the spinous process; on the sacrum the top of the median crest.
    pub spinous_tip: DVec3,
    /// Left, then right.
    pub sides: [SideLandmarks; 2],
    /// How far the level has slipped forwards over the one below, mm.
    pub slip_mm: f64,
}

impl LevelLandmarks {
    /// One side.
    pub fn side(&self, side: Side) -> &SideLandmarks {
        &self.sides[side as usize]
    }
}

/// A named point.
#[derive(Clone, Copy, Debug)]
pub struct Landmark {
    /// Such as `pedicle_centre`.
    pub name: &'static str,
    /// Which level.
    pub level: Level,
    /// `None` in the midline.
    pub side: Option<Side>,
    /// Column frame, mm.
    pub position_mm: DVec3,
}

impl LevelLandmarks {
    /// All of them as a flat list of named points.
    pub fn points(&self) -> Vec<Landmark> {
        let mut list = Vec::new();
        let mut add =
            |name, side, position_mm| list.push(Landmark { name, level: self.level, side, position_mm });
        add("body_centre", None, self.centre);
        add("posterior_wall", None, self.posterior_wall);
        add("spinous_tip", None, self.spinous_tip);
        for (plate, names) in [
            (Some(&self.upper_plate), ["upper_plate_centre", "upper_plate_front", "upper_plate_back"]),
            (self.lower_plate.as_ref(), ["lower_plate_centre", "lower_plate_front", "lower_plate_back"]),
        ] {
            if let Some(p) = plate {
                add(names[0], None, p.centre);
                add(names[1], None, p.centre - p.back * p.half_depth);
                add(names[2], None, p.centre + p.back * p.half_depth);
            }
        }
        for side in Side::BOTH {
            let s = self.side(side);
            add("pedicle_centre", Some(side), s.pedicle.centre);
            add("superior_process_tip", Some(side), s.superior_process_tip);
            add("superior_facet", Some(side), s.superior_facet);
            for (name, point) in [
                ("inferior_process_tip", s.inferior_process_tip),
                ("pars", s.pars),
                ("lamina", s.lamina),
                ("transverse_tip", s.transverse_tip),
                ("posterior_foramen", s.posterior_foramen.map(|r| r.centre)),
                ("anterior_foramen", s.anterior_foramen.map(|r| r.centre)),
                ("crest_top", s.crest_top),
            ] {
                if let Some(p) = point {
                    add(name, Some(side), p);
                }
            }
        }
        list
    }
}

fn plate(frame: &Rigid, centre: DVec3, slope: f64, [width, depth]: [f64; 2], sag_mm: f64) -> Plate {
    // The plate's plane is z = slope · y in the body's frame.
    let length = libm::sqrt(1.0 + slope * slope);
    Plate {
        centre: frame.point(centre),
        normal: frame.direction(DVec3::new(0.0, -slope, 1.0) / length),
        left: frame.direction(DVec3::X),
        back: frame.direction(DVec3::new(0.0, 1.0, slope) / length),
        half_width: width / 2.0,
        half_depth: depth / 2.0,
        sag_mm,
    }
}

/// Landmarks of a vertebra whose frame stands at `frame` and whose joints above are as `joint` says; `below` is the lower neighbour's
/// process and frame.
pub(super) fn of_vertebra(
    level: Level,
    d: &Vertebra,
    scale: f64,
    joint: &JointState,
    frame: &Rigid,
    below: (&SuperiorProcess, &Rigid),
) -> LevelLandmarks {
    let half_height = d.half_height_mm();
    let slope = (d.posterior_height_mm - d.anterior_height_mm) / (d.upper_depth_mm + d.lower_depth_mm);
    let own = SuperiorProcess::of_vertebra(d, scale, joint);
    let arch = PosteriorArch::new(d, scale);
    let (process, stand) = below;
    let motion = frame.inverse().after(stand);
    let side = |side: Side| {
        let place = Place { side: Some(side), motion: *frame };
        let at = |v: DVec3| place.at(v);
        let pillar = arch.pillar(&Place::own(Some(side)), process, &motion);
        let (s, c) = libm::sincos(d.pedicle_axial_deg.to_radians());
        SideLandmarks {
            pedicle: Ring {
                centre: at(DVec3::from_array(d.pedicle_centre_mm())),
                across: frame.direction(DVec3::new(c * side.sign(), -s, 0.0)) * (d.pedicle_width_mm / 2.0),
                up: frame.direction(DVec3::Z) * (d.pedicle_height_mm / 2.0),
            },
            superior_process_tip: at(own.tip()),
            superior_process_top: own.top().placed(frame, side),
            superior_facet: at(own.facet_middle()),
            inferior_process_tip: Some(at(pillar.own().tip())),
            pars: Some(at(pars_middle(&pillar))),
            lamina: Some(at(arch.lamina_middle())),
            transverse_tip: Some(at(arch.transverse.own().tip())),
            posterior_foramen: None,
            anterior_foramen: None,
            crest_top: None,
        }
    };
    let [lower_sag_mm, upper_sag_mm] = d.plate_sag_mm();
    LevelLandmarks {
        level,
        centre: frame.translation,
        upper_plate: plate(
            frame,
            DVec3::Z * half_height,
            slope,
            [d.upper_width_mm, d.upper_depth_mm],
            upper_sag_mm,
        ),
        lower_plate: Some(plate(
            frame,
            -DVec3::Z * half_height,
            -slope,
            [d.lower_width_mm, d.lower_depth_mm],
            lower_sag_mm,
        )),
        posterior_wall: frame.point(DVec3::Y * d.posterior_wall_mm()),
        spinous_tip: frame.point(arch.spinous.own().tip()),
        sides: Side::BOTH.map(side),
        slip_mm: 0.0,
    }
}

/// Landmarks of the sacrum and the iliac crests.
pub(super) fn of_sacrum(
    d: &Pelvis,
    scale: f64,
    joint: &JointState,
    frame: &Rigid,
    crest_tops: [DVec3; 2],
) -> LevelLandmarks {
    let process = SuperiorProcess::of_sacrum(d, scale, joint);
    let (posterior, anterior) = first_foramen_mm(d, scale);
    let side = |side: Side| {
        let at = |v: [f64; 3]| frame.point(DVec3::new(v[0] * side.sign(), v[1], v[2]));
        let ring = |centre: [f64; 3], radius: f64| Ring {
            centre: at(centre),
            across: frame.direction(DVec3::X * side.sign()) * radius,
            up: frame.direction(DVec3::Z) * radius * 0.92,
        };
        SideLandmarks {
            pedicle: Ring {
                centre: at([26.0 * scale, d.plate_depth_mm / 2.0 - 1.0 * scale, -14.0 * scale]),
                across: frame.direction(DVec3::X * side.sign()) * (d.pedicle_width_mm / 2.0),
                up: frame.direction(DVec3::Z) * (12.0 * scale),
            },
            superior_process_tip: at(process.tip().to_array()),
            superior_process_top: process.top().placed(frame, side),
            superior_facet: at(process.facet_middle().to_array()),
            inferior_process_tip: None,
            pars: None,
            lamina: None,
            transverse_tip: None,
            posterior_foramen: Some(ring(posterior, d.posterior_foramen_radius_mm)),
            anterior_foramen: Some(ring(anterior, d.anterior_foramen_radius_mm)),
            crest_top: Some(crest_tops[side as usize]),
        }
    };
    LevelLandmarks {
        level: Level::S1,
        centre: frame.point(DVec3::new(0.0, 8.0 * scale, -20.0 * scale)),
        upper_plate: plate(frame, DVec3::ZERO, 0.0, [d.plate_width_mm, d.plate_depth_mm], PLATE_SAG_MM[1]),
        lower_plate: None,
        posterior_wall: frame.point(DVec3::Y * (d.plate_depth_mm / 2.0)),
        spinous_tip: frame.point(DVec3::new(0.0, 51.0, -27.0) * scale),
        sides: Side::BOTH.map(side),
        slip_mm: 0.0,
    }
}

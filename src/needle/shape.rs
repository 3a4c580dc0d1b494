//! What the beam sees of needle and contrast.

use super::contrast::Spread;
use super::shaft::Needle;
use crate::geometry::pipe::{Section, pipe};
use crate::imaging::attenuation::Material;
use crate::imaging::inclusion::Inclusion;
use glam::DVec3;

/// Corners of the shaft's section.
const SIDES: usize = 10;
/// Points of the path nearer than this to the one before are passed over, mm.
const SPACING_MM: f64 = 1.5;
/// Length of the bevel, mm. Memory.
const BEVEL_MM: f64 = 2.2;
/// Hub: half thickness, length, size of the notch's ridge, mm. Memory.
const HUB_MM: [f64; 3] = [2.6, 11.0, 1.0];

/// Shaft with its stylet (or hollow without) and hub.
pub fn needle(needle: &Needle, stylet: bool) -> Vec<Inclusion> {
    let (outer, inner) = (needle.device.gauge.outer_mm() / 2.0, needle.device.gauge.inner_mm() / 2.0);
    let mut line = vec![needle.hub()];
    for node in needle.path() {
        if line.last().is_none_or(|last| last.distance(node.tip.position) > SPACING_MM) {
            line.push(node.tip.position);
        }
    }
    let tip = needle.tip();
    // The bevel: cut from the notch's side, so that the point lies on the far wall.
    let point = tip.position;
    let heel = point - tip.axis() * BEVEL_MM;
    line.retain(|p| (point - *p).dot(tip.axis()) > BEVEL_MM || p.distance(point) > 2.0 * BEVEL_MM);
    let wide = tip.across(0.0);
    let mut list = Vec::new();
    let mut cylinder = |radius: f64, sharp: bool, material: Material, instead: Material, share: f64| {
        let mut sections: Vec<Section> = line
            .iter()
            .copied()
            .chain([heel])
            .map(|p| Section { point: p, wide, half_mm: [radius; 2] })
            .collect();
        if sharp {
            let point = point - needle.notch() * (0.8 * radius);
            sections.push(Section { point, wide, half_mm: [0.12 * radius; 2] });
        }
        list.extend(pipe(&sections, SIDES).map(|mesh| Inclusion::new(mesh, material, instead, share)));
    };
    cylinder(outer, true, Material::Steel, Material::SoftTissue, 1.0);
    if !stylet {
        cylinder(inner, false, Material::SoftTissue, Material::Steel, 1.0);
    }
    let (hub, out) = (needle.hub(), -needle.direction());
    let [half, length, ridge] = HUB_MM;
    let bar = |at: DVec3, radius: f64| {
        [0.0, length].map(|z| Section { point: at + out * z, wide, half_mm: [radius; 2] })
    };
    for (at, radius) in [(hub, half), (hub + needle.notch_at_hub() * half, ridge)] {
        // A plastic as dense to X-rays as fat, in air. Derived.
        let hub = pipe(&bar(at, radius), SIDES);
        list.extend(hub.map(|mesh| Inclusion::new(mesh, Material::Adipose, Material::Air, 1.0)));
    }
    list
}

/// Contrast: iohexol in soft tissue.
pub fn contrast(bodies: Vec<Spread>) -> impl Iterator<Item = Inclusion> {
    bodies.into_iter().map(|b| Inclusion::new(b.mesh, Material::Iohexol300, Material::SoftTissue, b.share))
}

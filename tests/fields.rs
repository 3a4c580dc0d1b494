//! The bones' signed distances: how far they may be trusted by whoever steps through them.

use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::Level;
use downbeam::anatomy::patient::PatientSpec;
use downbeam::anatomy::tissues::TissueKind;
use downbeam::geometry::sdf::SAFETY;
use glam::DVec3;

/// A fixed pseudo-random sequence in 0..1.
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn direction(&mut self) -> DVec3 {
        loop {
            let v = DVec3::new(self.next(), self.next(), self.next()) * 2.0 - 1.0;
            if (0.01..1.0).contains(&v.length_squared()) {
                return v.normalize();
            }
        }
    }
}

/// From any point outside of a bone, six tenths of its field's value is a step that meets no bone (by more than 0.02 mm), whatever the direction; and between
/// points a lattice block apart the field rises by no more than `SAFETY` says, but for one pair in two hundred (those blocks are found from
/// their neighbours).
#[test]
fn fields_are_safe_to_step_through() {
    let mut numbers = Numbers(5);
    let (mut steps, mut pairs, mut steep, mut worst) = (0, 0, 0, 0.0_f64);
    let varied =
        (0..3).map(|seed| PatientSpec { seed, variation: 1.0, ..PatientSpec::named("average").unwrap() });
    for spec in PatientSpec::all().iter().cloned().chain(varied) {
        let interior = &Interior::of(&spec);
        for level in Level::ALL {
            let bone = interior.tissues().of_kind(TissueKind::Bone).find(|b| b.level == Some(level)).unwrap();
            let centre = interior.level(level).posterior_wall;
            for _ in 0..1500 {
                let p = centre + numbers.direction() * (60.0 * numbers.next());
                let d = bone.distance_mm(p);
                if d <= 0.05 {
                    continue;
                }
                let way = numbers.direction();
                let there = bone.distance_mm(p + way * (0.6 * d));
                assert!(there > -0.02, "{} {level}: {p} {d} {there}", spec.name);
                steps += 1;
                if d < 6.0 {
                    let rise = (bone.distance_mm(p + way * 4.0) - d).abs() / 4.0;
                    pairs += 1;
                    steep += i32::from(rise > f64::from(SAFETY));
                    worst = worst.max(rise);
                }
            }
        }
    }
    println!("{steps} steps; {steep} of {pairs} pairs steeper than {SAFETY}, worst {worst:.2}");
    assert!(steps > 50_000 && steep * 200 < pairs, "{steep} of {pairs}, worst {worst:.2}");
}

//! Every bone and every part of every named patient is meshed closed, outward, and not empty.

use downbeam::anatomy::names::{Level, Part};
use downbeam::anatomy::patient::{Patient, PatientSpec};

#[test]
fn every_bone_of_every_named_patient_is_closed() {
    for spec in PatientSpec::all() {
        let patient = Patient::new(spec);
        assert_eq!(patient.bones.len(), 17, "{}", spec.name);
        for bone in &patient.bones {
            for (what, mesh) in [("outer", &bone.outer), ("marrow", &bone.marrow)] {
                assert!(mesh.is_closed(), "{} {} {what}", spec.name, bone.level);
                assert!(mesh.volume() > 1000.0, "{} {} {what}: {}", spec.name, bone.level, mesh.volume());
            }
            assert!(bone.marrow.volume() < bone.outer.volume());
        }
    }
}

#[test]
fn every_part_alone_is_closed() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    let mut found = 0;
    for level in Level::ALL {
        for part in Part::ALL {
            if let Some(mesh) = patient.part_mesh(level, part, None) {
                assert!(mesh.is_closed(), "{level} {}", part.name());
                assert!(mesh.volume() > 50.0, "{level} {}: {}", part.name(), mesh.volume());
                found += 1;
            }
        }
    }
    // Ten parts a vertebra; the sacrum's body, upper plate, lamina, superior process, ala and crest; ilium's two; the rib.
    assert_eq!(found, 6 * 10 + 6 + 2 + 1);
}

#[test]
fn normals_agree_with_the_triangles() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    for bone in &patient.bones {
        let mesh = &bone.outer;
        let (mut wrong, mut all) = (0, 0);
        for t in &mesh.triangles {
            let [a, b, c] = t.map(|i| mesh.positions[i as usize]);
            let face = (b - a).cross(c - a);
            let mean = t.iter().map(|&i| mesh.normals[i as usize]).sum::<glam::Vec3>();
            all += 1;
            wrong += i32::from(face.dot(mean) < 0.0);
        }
        assert!(wrong * 200 < all, "{}: {wrong} of {all}", bone.level);
    }
}

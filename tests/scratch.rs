mod common;
use common::Hand;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::{PatientBuilder, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::lesson::case::Case;
use downbeam::needle::compartment::compartment_at;
use downbeam::view::best_view::*;
use downbeam::view::criteria::Target;
#[test]
fn s1() {
    let interior = PatientBuilder::new(&PatientSpec::named("average").unwrap()).interior().clone();
    for level in [Level::S1, Level::L3, Level::L4, Level::L5] {
        let case = Case { exposures: true, ..Case::new(Target { level, side: Side::Left }) };
        let mut hand = Hand::new(case, &interior);
        for k in ViewKind::ALL {
            println!("{level} {:?} {:?}", k, best_view(&interior, case.target, k, &CArm::default()));
        }
        hand.inject_everything();
        let state = &hand.attempt.state;
        let n = state.needle.as_ref().unwrap();
        let area = state.area(&case, &interior).unwrap();
        println!(
            "entry {:?} tip {:?} depth {} area centre {:?} n {:?}",
            n.entry,
            n.tip().position,
            n.depth_mm(),
            area.centre(),
            area.normal()
        );
        println!("skin to area {}", n.entry.distance(area.centre()));
        println!("{:?}", compartment_at(&interior, n.tip().position));
        for m in &state.met {
            println!(
                "   {:?} {:?} {:?} {:.1} pushed {:.1}",
                m.contact.kind, m.contact.level, m.contact.part, m.contact.depth_mm, m.pushed_on_mm
            );
        }
        for t in &state.taken {
            println!(
                "   taken {:.1} {:.1} {:?}",
                t.arm.oblique.to_degrees(),
                t.arm.tilt.to_degrees(),
                t.depth_mm
            );
        }
    }
}

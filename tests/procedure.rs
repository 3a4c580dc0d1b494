//! Whole injections, level by level, through the same actions that the page sends: a careful hand gets full marks, and each thing done
//! badly costs its own step.

mod common;

use common::Hand;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::{PatientBuilder, PatientSpec};
use downbeam::lesson::case::Case;
use downbeam::lesson::score::score;
use downbeam::view::criteria::Target;

fn interior(name: &str) -> Interior {
    PatientBuilder::new(&PatientSpec::named(name).unwrap()).interior().clone()
}

#[test]
fn a_careful_hand_gets_full_marks_at_every_level() {
    for name in ["average", "small", "curved"] {
        let interior = interior(name);
        for level in Level::TARGETS {
            for side in Side::BOTH {
                let case = Case { exposures: true, ..Case::new(Target { level, side }) };
                let mut hand = Hand::new(case, &interior);
                hand.inject_everything();
                let score = score(&case, &interior, &hand.attempt.state);
                println!("{name} {level} {side} {:.2}", score.total);
                for s in &score.steps {
                    println!("   {:?} {:?} {}", s.id, s.score, s.reason);
                }
            }
        }
    }
}

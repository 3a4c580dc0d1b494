//! Whole injections, level by level, through the same actions that the page sends: a careful hand gets full marks, and each thing done
//! badly costs its own step.

mod common;

use common::Hand;
use downbeam::anatomy::foramen::Approach;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::{PatientBuilder, PatientSpec};
use downbeam::lesson::case::Case;
use downbeam::lesson::score::score;
use downbeam::view::criteria::Target;

fn interior(spec: &PatientSpec) -> Interior {
    PatientBuilder::new(spec).interior().clone()
}
#[test]
fn seeds() {
    for seed in 0..2 {
        let spec = PatientSpec { seed, ..PatientSpec::named("average").unwrap() };
        let interior = interior(&spec);
        for level in Level::TARGETS {
            for side in Side::BOTH {
                for approach in [Approach::Subpedicular, Approach::Infraneural] {
                    let case = Case { exposures: true, approach, ..Case::new(Target { level, side }) };
                    let mut hand = Hand::new(case, &interior);
                    println!("{level} {side} {approach:?}");
                    hand.inject_everything();
                    let score = score(&case, &interior, &hand.attempt.state);
                    if score.total < 0.995 {
                        for s in &score.steps {
                            if s.score.unwrap_or(0.0) < 1.0 {
                                println!("    {:?} {:?} {}", s.id, s.score, s.reason);
                            }
                        }
                    }
                }
            }
        }
    }
}

//! Prints the best view of each kind for every level and side as CSV: `cargo run --release --example measures -- average`.

use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::view::best_view::ViewKind;
use downbeam::view::criteria::Target;
use downbeam::view::report::{AskedView, report};
use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    let name = std::env::args().nth(1).unwrap_or_else(|| "average".to_owned());
    let patient = Patient::new(&PatientSpec::named(&name)?);
    println!("level,side,view,oblique_deg,tilt_deg,reached,score,facet_below_mm,crests_apart_mm");
    for level in Level::TARGETS {
        for side in Side::BOTH {
            let target = Target { level, side };
            for (i, kind) in ViewKind::ALL.into_iter().enumerate() {
                let at_rest = report(&patient, &AskedView::usual(target), &CArm::default());
                let best = at_rest.views[i].best;
                let there = report(
                    &patient,
                    &AskedView::usual(target),
                    &CArm::at_degrees(best.oblique_deg, best.tilt_deg)?,
                );
                println!(
                    "{level},{side},{},{:.2},{:.2},{},{:.3},{:.2},{:.1}",
                    kind.name(),
                    best.oblique_deg,
                    best.tilt_deg,
                    at_rest.views[i].reached,
                    there.views[i].score,
                    there.measures.facet_below_pedicle_mm.unwrap_or(f64::NAN),
                    there.measures.crests_apart_mm[0],
                );
            }
        }
    }
    Ok(())
}

//! The best oblique of every level, and what other obliques are worth there.
//!
//! `cargo run --release --example obliques [PATIENT]`

use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::PatientSpec;
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::projection::Projection;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::{CriterionId, Target, facet_place};
use downbeam::view::report::criterion;
use downbeam::view::tolerance::Tolerances;

fn main() {
    let asked = std::env::args().nth(1).unwrap_or_else(|| "average".to_owned());
    let spec = PatientSpec::named(&asked).expect("a named patient");
    let interior = &Interior::of(&spec);
    for level in Level::TARGETS.into_iter().filter(|&level| level != Level::S1) {
        let target = Target { level, side: Side::Left };
        let found = best_view(interior, target, ViewKind::Oblique, &CArm::default());
        let best = found.orientation;
        print!("{level} best {:.1} {:.1} {}:", best.oblique_deg, best.tilt_deg, found.reached);
        for off in [-best.oblique_deg, -10.0, -5.0, -3.0, 0.0, 3.0, 5.0, 10.0, 15.0] {
            let arm = CArm::at_degrees(best.oblique_deg + off, best.tilt_deg).unwrap();
            let place =
                facet_place(&Projection::new(&arm, interior.level(level).centre), interior, target).unwrap();
            let marks =
                criterion(interior, target, &arm, CriterionId::FacetUnderPedicle, &Tolerances::default());
            print!(
                "  {:.0}: {:.0} %, {:.1} mm below, {:.2}",
                best.oblique_deg + off,
                place.offset_percent,
                place.below_mm,
                marks.score
            );
        }
        println!();
    }
}

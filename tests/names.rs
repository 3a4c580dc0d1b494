//! A name is the same wherever it stands: in JSON (serde) and in logs, tables and links (strum).

use downbeam::class::report::Status;
use downbeam::practice::kind::Kind;
use downbeam::procedure::step::StepId;
use downbeam::score::gate::GateId;
use downbeam::view::best_view::ViewKind;
use serde::Serialize;

fn in_json(value: impl Serialize) -> String {
    serde_json::to_value(value).unwrap().as_str().unwrap().to_owned()
}

#[test]
fn names_are_those_of_json() {
    for &step in StepId::ALL {
        assert_eq!(step.id(), in_json(step));
    }
    for &gate in GateId::ALL {
        assert_eq!(gate.id(), in_json(gate));
    }
    for &status in Status::ALL {
        assert_eq!(status.id(), in_json(status));
    }
    for kind in Kind::ALL {
        assert_eq!(kind.name(), in_json(kind));
    }
    for view in [ViewKind::TrueAp, ViewKind::Oblique, ViewKind::Lateral, ViewKind::SteepOblique] {
        assert_eq!(view.name(), in_json(view));
    }
}

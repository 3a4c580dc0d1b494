//! The room: what the table does to the film, and whether the C-arm has room for the views that are asked for.

use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::clearance::Lying;
use downbeam::imaging::projection::Projection;
use downbeam::lesson::draw::{Interiors, drawn};
use downbeam::lesson::file::Lesson;
use downbeam::lesson::marks::{lesson_score, replay};
use downbeam::procedure::action::{Action, Event};
use downbeam::procedure::attempt::Attempt;
use downbeam::procedure::case::Case;
use downbeam::score::remark::Remark;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::Target;
use glam::{DVec2, DVec3};

/// With the table at nothing no patient's best view is out of reach for want of room.
#[test]
fn every_best_view_has_room() {
    for spec in PatientSpec::all() {
        let interior = &Interior::of(spec);
        for &level in Level::TARGETS.iter() {
            let lying = Lying::new(&interior.trunk, interior.level(level).centre);
            for side in [Side::Left, Side::Right] {
                for kind in [ViewKind::TrueAp, ViewKind::Oblique, ViewKind::Lateral] {
                    let best =
                        best_view(interior, Target { level, side }, kind, &CArm::default()).orientation;
                    let to = CArm::at_degrees(best.oblique_deg, best.tilt_deg).unwrap();
                    let reach = lying.reach(&CArm::default(), &to);
                    assert_eq!(reach.hit, None, "{} {level:?} {side:?} {kind:?}", spec.name);
                }
            }
        }
    }
}

/// The width of L4's body on the film, measured on its mesh from the rays that just miss it, with the table at several heights.
/// Every ray is made of source and detector alone (similar triangles), not of the projection under test.
#[test]
fn magnification_on_the_mesh_follows_the_height() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    let centre = patient.level(Level::L4).centre;
    let bone = patient.bones.iter().find(|bone| bone.axial && bone.level == Level::L4).unwrap();
    let points: Vec<DVec3> = bone.outer.positions.iter().map(|p| p.as_dvec3()).collect();
    let mut spans = Vec::new();
    for up_mm in [-100.0, -40.0, 0.0, 55.0, 100.0] {
        let arm = CArm { table_shift_mm: DVec3::Y * up_mm, ..CArm::default() };
        let view = Projection::new(&arm, centre);
        // By hand: in AP the source stands 700 mm under the isocentre, the receptor 400 mm above, and the patient is up by `up_mm`.
        let mut by_hand = [f64::INFINITY, f64::NEG_INFINITY];
        let mut by_view = by_hand;
        for p in &points {
            let [x, height] = [-(p.x - centre.x), p.y - centre.y + up_mm];
            let u = 1100.0 * x / (700.0 + height);
            by_hand = [by_hand[0].min(u), by_hand[1].max(u)];
            let u = view.project(*p).x;
            by_view = [by_view[0].min(u), by_view[1].max(u)];
        }
        assert!((by_hand[0] - by_view[0]).abs() < 1e-6 && (by_hand[1] - by_view[1]).abs() < 1e-6, "{up_mm}");
        spans.push((up_mm, by_view[1] - by_view[0]));
        assert!((view.magnification_at(centre) - 1100.0 / (700.0 + up_mm)).abs() < 1e-12);
    }
    // Higher is nearer to the receptor, so smaller.
    assert!(spans.windows(2).all(|w| w[1].1 < w[0].1), "{spans:?}");
}

/// In the lateral a table raised by h moves the film by h times the magnification, up the side on which the back is, and by
/// nothing along the patient; in AP it moves nothing that lies on the central ray.
#[test]
fn height_shifts_the_lateral_and_magnifies_the_ap() {
    let centre = DVec3::new(3.0, -7.0, 11.0);
    for (oblique, way) in [(90.0, 1.0), (-90.0, -1.0)] {
        let at = |up_mm: f64| {
            let arm = CArm { table_shift_mm: DVec3::Y * up_mm, ..CArm::at_degrees(oblique, 0.0).unwrap() };
            Projection::new(&arm, centre).project(centre)
        };
        assert!(at(0.0).length() < 1e-9);
        let moved = at(30.0);
        assert!((moved - DVec2::new(way * 30.0 * 1100.0 / 700.0, 0.0)).length() < 1e-6, "{oblique}: {moved}");
    }
    let arm = CArm { table_shift_mm: DVec3::Y * 30.0, ..CArm::default() };
    assert!(Projection::new(&arm, centre).project(centre).length() < 1e-9);
}

fn lesson(steps: &str) -> Lesson {
    let text = format!(
        r#"{{"format": 1, "id": "middle", "title": {{"en": "M"}}, "intro": {{"en": "M"}}, "mode": "guided", "steps": [{steps}],
        "patient": {{"name": "average"}}, "level": "L4", "side": "left", "pass_mark": 90}}"#
    );
    Lesson::from_json(&text).unwrap()
}

fn table(left_mm_tenths: i32, back_mm_tenths: i32, head_mm_tenths: i32) -> Action {
    Action::MoveTable { left_mm_tenths, back_mm_tenths, head_mm_tenths }
}

/// Who is asked to bring the target to the middle begins off it, each learner elsewhere, and with the body still on the film.
#[test]
fn only_who_is_asked_begins_off_the_middle() {
    let asked = lesson(r#""target_centred", "true_ap""#);
    let mut starts = std::collections::BTreeSet::new();
    for i in 0..300 {
        let case = drawn(&asked, &format!("learner {i}")).unwrap().case;
        let off = case.off_centre_mm();
        assert!(off.y.abs() >= 30.0, "{off}: the height alone is worth nothing");
        // Half the field is 65 mm at the isocentre, and the film keeps the body's middle on it in AP and lateral.
        let state = Attempt::new(case).state;
        assert_eq!(state.arm.table_shift_mm, off);
        for oblique in [0.0, 90.0] {
            let arm = CArm { table_shift_mm: off, ..CArm::at_degrees(oblique, 0.0).unwrap() };
            let at = Projection::new(&arm, DVec3::ZERO).project(DVec3::ZERO);
            assert!(at.abs().max_element() < arm.half_field_mm(), "{off} {oblique}: {at}");
        }
        starts.insert(case.off_centre_mm_tenths);
    }
    assert!(starts.len() > 290, "{} starts of 300", starts.len());
    let usual = drawn(&lesson(r#""true_ap""#), "learner 1").unwrap().case;
    assert!(!usual.is_off_centre());
    // A case that is centred is written as it always was.
    assert!(!serde_json::to_string(&usual).unwrap().contains("off_centre"));
}

#[test]
fn marks_for_the_middle_say_which_way_the_table_is_to_go() {
    let lesson = lesson(r#""target_centred""#);
    let drawn = drawn(&lesson, "kim").unwrap();
    let mut interiors = Interiors::default();
    let interior = interiors.of(&drawn.spec);
    let step = |log: &[Action]| {
        let log: Vec<Event> = (0..).zip(log).map(|(tick, &action)| Event(tick, action)).collect();
        let attempt = replay(&lesson, &drawn, interior, &log).unwrap();
        lesson_score(&lesson, &drawn, interior, &attempt.state).steps.swap_remove(0)
    };
    let untouched = step(&[Action::Finish]);
    assert_eq!((untouched.score, untouched.reasons), (None, vec![Remark::CentreTarget]));
    let done = step(&[table(0, 0, 0), Action::Finish]);
    assert_eq!((done.score, done.reasons), (Some(1.0), vec![Remark::TargetCentred]));
    // 19 mm too far left and 8 mm too high: the worse way counts, half way between 8 and 30.
    let half = step(&[table(190, 80, 0), Action::Finish]);
    assert!((half.score.unwrap() - 0.5).abs() < 1e-12, "{:?}", half.score);
    let reasons = serde_json::to_value(&half.reasons).unwrap();
    assert_eq!(reasons, serde_json::json!([{ "id": "move_table", "mm": 19.0, "way": "right" }]));
    let low = serde_json::to_value(step(&[table(0, -400, 100), Action::Finish]).reasons).unwrap();
    let wanted = serde_json::json!([
        { "id": "move_table", "mm": 10.0, "way": "feet" }, { "id": "move_table", "mm": 40.0, "way": "up" },
    ]);
    assert_eq!(low, wanted);
}

/// Height is in the log like the other two, is taken back like anything else, and comes back with a replay.
#[test]
fn the_table_is_logged_undone_and_replayed() {
    let case = Case {
        off_centre_mm_tenths: [120, -300, 0],
        ..Case::new(Target { level: Level::L4, side: Side::Left })
    };
    let interior = Interior::of(&PatientSpec::named("average").unwrap());
    let mut attempt = Attempt::new(case);
    let arm = CArm { table_shift_mm: DVec3::new(0.0, -4.5, 2.0), ..attempt.state.arm };
    attempt.settle(&interior, 7, &arm).unwrap();
    assert_eq!(attempt.log, [Event(7, table(0, -45, 20))]);
    let again = Attempt::replay(case, &interior, &attempt.log).unwrap();
    assert_eq!(again.state.arm, arm);
    assert!(attempt.undo(&interior));
    assert_eq!(attempt.state.arm.table_shift_mm, DVec3::new(12.0, -30.0, 0.0));
    assert!(attempt.redo(&interior));
    assert_eq!(attempt.state.arm, arm);
}

/// What is drawn of the room is what is held apart in it.
#[test]
fn the_drawing_has_the_same_sizes() {
    use downbeam::imaging::clearance as c;
    let drawing = include_str!("../www/gantry/drawing.js");
    let (feet, head) = c::TABLE_REACH_MM;
    let (near, _) = c::SOURCE_REACH_MM;
    let arm = CArm::default();
    for wanted in [
        format!("RECEPTOR_RADIUS_MM = {};", c::RECEPTOR_RADIUS_MM),
        format!("half_width: {},", c::TABLE_HALF_WIDTH_MM),
        format!("thick: {},", c::TABLE_THICK_MM),
        format!("feet: -{feet}, head: {head}"),
        format!("SOURCE_MM = {};", arm.sod_mm),
        format!("RECEPTOR_MM = {};", arm.sid_mm - arm.sod_mm),
        format!("disc(RECEPTOR_MM + {}, RECEPTOR_RADIUS_MM)", c::RECEPTOR_DEEP_MM),
        format!("disc(-SOURCE_MM + {near},"),
        format!("disc(-C_RADIUS_MM, {})", c::SOURCE_RADIUS_MM),
    ] {
        assert!(drawing.contains(&wanted), "www/gantry/drawing.js has no '{wanted}'");
    }
}

//! What tells a platform what is in a package: `imsmanifest.xml` (SCORM 1.2; SCORM 2004 4th edition) and `cmi5.xml`.
//!
//! Sources: ADL, SCORM 1.2 Content Aggregation Model (2001); ADL, SCORM 2004 4th edition, Content Aggregation Model (2009); AICC, cmi5
//! (2016), section 13. All three are checked against the published schemas in `tests/reference/test_packages.py`.

use super::course::{Course, Item};
use super::files::Files;
use super::xml::escaped;
use downbeam::lesson::file::{Lesson, Texts};

/// A name of all lessons that is an XML name too; others have another one.
fn name(course: &Course<'_>) -> String {
    let (id, hash) = course.name();
    format!("downbeam-{id}-{hash}")
}

fn title(lesson: &Lesson) -> String {
    escaped(lesson.title.in_language("en"))
}

/// A `file` element of a resource.
fn file(path: &str) -> String {
    format!("\n      <file href=\"{}\"/>", escaped(path))
}

/// What SCORM 1.2 and 2004 say differently in the same manifest.
struct Dialect {
    namespaces: &'static str,
    version: &'static str,
    /// Name of the attribute that makes a resource a lesson.
    kind: &'static str,
    /// What stands under an item's title.
    rules: fn(&Lesson) -> String,
    /// What stands behind several items.
    order: &'static str,
}

/// SCORM 1.2. The mastery score is in percent. `shared` is what all pages need.
pub(super) fn scorm12(course: &Course<'_>, shared: &Files) -> String {
    let dialect = Dialect {
        namespaces: r#"xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2" xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2""#,
        version: "1.2",
        kind: "adlcp:scormtype",
        rules: |lesson| format!("        <adlcp:masteryscore>{}</adlcp:masteryscore>", lesson.pass_mark),
        order: "",
    };
    scorm(course, shared, &dialect)
}

/// SCORM 2004 4th edition. The measure of the primary objective is 0 to 1.
pub(super) fn scorm2004(course: &Course<'_>, shared: &Files) -> String {
    let dialect = Dialect {
        namespaces: r#"xmlns="http://www.imsglobal.org/xsd/imscp_v1p1" xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_v1p3" xmlns:imsss="http://www.imsglobal.org/xsd/imsss""#,
        version: "2004 4th Edition",
        kind: "adlcp:scormType",
        rules: |lesson| {
            format!(
                r#"        <imsss:sequencing>
          <imsss:objectives>
            <imsss:primaryObjective objectiveID="passed" satisfiedByMeasure="true">
              <imsss:minNormalizedMeasure>{}</imsss:minNormalizedMeasure>
            </imsss:primaryObjective>
          </imsss:objectives>
          <imsss:deliveryControls completionSetByContent="true" objectiveSetByContent="true"/>
        </imsss:sequencing>"#,
                share(lesson)
            )
        },
        // Any lesson may be chosen, and one follows the other.
        order: "
      <imsss:sequencing>
        <imsss:controlMode choice=\"true\" flow=\"true\"/>
      </imsss:sequencing>",
    };
    scorm(course, shared, &dialect)
}

fn scorm(course: &Course<'_>, shared: &Files, dialect: &Dialect) -> String {
    let Dialect { namespaces, version, kind, rules, order } = dialect;
    let in_all: String = shared.iter().map(|(path, _)| file(path)).collect();
    let one = course.is_one();
    // Identifiers of an item and of what it shows.
    let names = |item: &Item<'_>| match one {
        true => ("lesson".to_owned(), "player".to_owned()),
        false => (format!("lesson-{}", item.lesson.id), format!("page-{}", item.lesson.id)),
    };
    let item = |item: &Item<'_>| {
        let (id, shows) = names(item);
        format!(
            r#"
      <item identifier="{id}" identifierref="{shows}" isvisible="true">
        <title>{title}</title>
{rules}
      </item>"#,
            title = title(item.lesson),
            rules = rules(item.lesson)
        )
    };
    let resource = |item: &Item<'_>| {
        let own = file(&item.page) + &file(&item.file);
        let rest =
            if one { in_all.clone() } else { "\n      <dependency identifierref=\"shared\"/>".to_owned() };
        format!(
            r#"
    <resource identifier="{}" type="webcontent" {kind}="sco" href="{}">{own}{rest}
    </resource>"#,
            names(item).1,
            escaped(&item.page)
        )
    };
    let shared = match one {
        true => String::new(),
        false => format!(
            r#"
    <resource identifier="shared" type="webcontent" {kind}="asset">{in_all}
    </resource>"#
        ),
    };
    format!(
        r#"<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="{name}" version="1.0" {namespaces}>
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>{version}</schemaversion>
  </metadata>
  <organizations default="course">
    <organization identifier="course">
      <title>{title}</title>{items}{order}
    </organization>
  </organizations>
  <resources>{resources}{shared}
  </resources>
</manifest>
"#,
        name = name(course),
        title = course
            .title
            .map_or_else(|| course.items.first().map_or_else(String::new, |i| title(i.lesson)), escaped),
        items = course.items.iter().map(item).collect::<String>(),
        order = if one { "" } else { order },
        resources = course.items.iter().map(resource).collect::<String>(),
    )
}

/// The pass mark as a share of 1.
fn share(lesson: &Lesson) -> f64 {
    f64::from(lesson.pass_mark) / 100.0
}

/// cmi5. A lesson is over when it is passed; several stand in a block.
pub(super) fn cmi5(course: &Course<'_>) -> String {
    let (id, hash) = course.name();
    let units: String = course.items.iter().map(assignable_unit).collect();
    let one = course.items.first().filter(|_| course.is_one()).map(|i| i.lesson);
    let (titles, about) = match one {
        Some(lesson) => (in_languages(&lesson.title), in_languages(&lesson.intro)),
        None => {
            let list: Vec<&str> = course.items.iter().map(|i| i.lesson.title.in_language("en")).collect();
            (in_english(course.title.unwrap_or_default()), in_english(&list.join("; ")))
        }
    };
    let units = match one {
        Some(_) => units,
        None => format!(
            r#"
  <block id="urn:downbeam:block:{hash}">
    <title>{titles}</title>
    <description>{about}</description>{units}
  </block>"#
        ),
    };
    format!(
        r#"<?xml version="1.0" encoding="UTF-8"?>
<courseStructure xmlns="https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd">
  <course id="urn:downbeam:course:{id}:{hash}">
    <title>{titles}</title>
    <description>{about}</description>
  </course>{units}
</courseStructure>
"#
    )
}

fn assignable_unit(item: &Item<'_>) -> String {
    let Item { lesson, page, hash, .. } = item;
    format!(
        r#"
  <au id="urn:downbeam:lesson:{id}:{hash}" moveOn="Passed" masteryScore="{pass}" launchMethod="AnyWindow" activityType="http://adlnet.gov/expapi/activities/assessment">
    <title>{titles}</title>
    <description>{intros}</description>
    <url>{page}</url>
  </au>"#,
        id = lesson.id,
        titles = in_languages(&lesson.title),
        intros = in_languages(&lesson.intro),
        pass = share(lesson),
    )
}

/// A text in one language.
fn in_english(text: &str) -> String {
    format!("<langstring lang=\"en\">{}</langstring>", escaped(text))
}

/// A text in all its languages.
fn in_languages(texts: &Texts) -> String {
    let one = |(language, text): (&String, &String)| {
        format!("<langstring lang=\"{}\">{}</langstring>", escaped(language), escaped(text))
    };
    texts.0.iter().map(one).collect()
}

//! What tells a platform what is in a package: `imsmanifest.xml` (SCORM 1.2; SCORM 2004 4th edition) and `cmi5.xml`.
//!
//! Sources: ADL, SCORM 1.2 Content Aggregation Model (2001); ADL, SCORM 2004 4th edition, Content Aggregation Model (2009); AICC, cmi5
//! (2016), section 13. All three are checked against the published schemas in `tests/reference/test_packages.py`.

use super::files::Files;
use super::xml::escaped;
use downbeam::lesson::file::Lesson;

/// Page of a package.
const PLAYER: &str = "player.html";
/// Hexadecimal digits of the lesson's hash in names.
const HASH_DIGITS: usize = 16;

/// A name of the lesson that is an XML name too; another lesson of the same id has another one.
fn name(lesson: &Lesson) -> String {
    format!("downbeam-{}-{}", lesson.id, &lesson.hash()[..HASH_DIGITS])
}

fn title(lesson: &Lesson) -> String {
    escaped(lesson.title.in_language("en"))
}

/// The `file` elements of a resource.
fn file_list(files: &Files) -> String {
    files.iter().map(|(path, _)| format!("\n      <file href=\"{}\"/>", escaped(path))).collect()
}

/// What SCORM 1.2 and 2004 say differently in the same manifest.
struct Dialect {
    namespaces: &'static str,
    version: &'static str,
    /// Name of the attribute that makes a resource a lesson.
    kind: &'static str,
    /// What stands under the item's title.
    rules: String,
}

/// SCORM 1.2. The mastery score is in percent.
pub(super) fn scorm12(lesson: &Lesson, files: &Files) -> String {
    let dialect = Dialect {
        namespaces: r#"xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2" xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2""#,
        version: "1.2",
        kind: "adlcp:scormtype",
        rules: format!("        <adlcp:masteryscore>{}</adlcp:masteryscore>", lesson.pass_mark),
    };
    scorm(lesson, files, &dialect)
}

/// SCORM 2004 4th edition. The measure of the primary objective is 0 to 1.
pub(super) fn scorm2004(lesson: &Lesson, files: &Files) -> String {
    let dialect = Dialect {
        namespaces: r#"xmlns="http://www.imsglobal.org/xsd/imscp_v1p1" xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_v1p3" xmlns:imsss="http://www.imsglobal.org/xsd/imsss""#,
        version: "2004 4th Edition",
        kind: "adlcp:scormType",
        rules: format!(
            r#"        <imsss:sequencing>
          <imsss:objectives>
            <imsss:primaryObjective objectiveID="passed" satisfiedByMeasure="true">
              <imsss:minNormalizedMeasure>{}</imsss:minNormalizedMeasure>
            </imsss:primaryObjective>
          </imsss:objectives>
          <imsss:deliveryControls completionSetByContent="true" objectiveSetByContent="true"/>
        </imsss:sequencing>"#,
            share(lesson)
        ),
    };
    scorm(lesson, files, &dialect)
}

fn scorm(lesson: &Lesson, files: &Files, dialect: &Dialect) -> String {
    let Dialect { namespaces, version, kind, rules } = dialect;
    format!(
        r#"<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="{name}" version="1.0" {namespaces}>
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>{version}</schemaversion>
  </metadata>
  <organizations default="course">
    <organization identifier="course">
      <title>{title}</title>
      <item identifier="lesson" identifierref="player" isvisible="true">
        <title>{title}</title>
{rules}
      </item>
    </organization>
  </organizations>
  <resources>
    <resource identifier="player" type="webcontent" {kind}="sco" href="{PLAYER}">{files}
    </resource>
  </resources>
</manifest>
"#,
        name = name(lesson),
        title = title(lesson),
        files = file_list(files),
    )
}

/// The pass mark as a share of 1.
fn share(lesson: &Lesson) -> f64 {
    f64::from(lesson.pass_mark) / 100.0
}

/// cmi5. The lesson is over when it is passed.
pub(super) fn cmi5(lesson: &Lesson) -> String {
    format!(
        r#"<?xml version="1.0" encoding="UTF-8"?>
<courseStructure xmlns="https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd">
  <course id="urn:downbeam:course:{id}:{hash}">
    <title>{titles}</title>
    <description>{intros}</description>
  </course>
  <au id="urn:downbeam:lesson:{id}:{hash}" moveOn="Passed" masteryScore="{pass}" launchMethod="AnyWindow" activityType="http://adlnet.gov/expapi/activities/assessment">
    <title>{titles}</title>
    <description>{intros}</description>
    <url>{PLAYER}</url>
  </au>
</courseStructure>
"#,
        id = lesson.id,
        hash = &lesson.hash()[..HASH_DIGITS],
        titles = in_languages(&lesson.title),
        intros = in_languages(&lesson.intro),
        pass = share(lesson),
    )
}

/// A text in all its languages.
fn in_languages(texts: &downbeam::lesson::file::Texts) -> String {
    let one = |(language, text): (&String, &String)| {
        format!("<langstring lang=\"{}\">{}</langstring>", escaped(language), escaped(text))
    };
    texts.0.iter().map(one).collect()
}

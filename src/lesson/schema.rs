//! The JSON Schema of the lesson file (draft 2020-12), made from its types.

use super::file::Lesson;

/// The schema as a file.
pub fn lesson_schema() -> String {
    let mut schema = schemars::schema_for!(Lesson);
    schema.insert("title".to_owned(), "A lesson of Downbeam".into());
    serde_json::to_string_pretty(&schema).unwrap_or_default() + "\n"
}

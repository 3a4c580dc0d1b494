//! JSON Schemas (draft 2020-12), made from the types that are read and written.

use super::file::Lesson;
use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema};
use serde::Serialize;

/// The dialect that all of them are in.
pub(crate) const DIALECT: &str = "https://json-schema.org/draft/2020-12/schema";

/// That of a lesson file.
pub fn lesson_schema() -> String {
    titled(schemars::schema_for!(Lesson), "A lesson of Downbeam")
}

/// That of something that is only written: what is always there is required, and what can be none may be `null`.
pub fn schema_of_output<T: JsonSchema>(title: &str) -> String {
    titled(SchemaSettings::draft2020_12().for_serialize().into_generator().into_root_schema_for::<T>(), title)
}

/// A schema with its title, as text.
pub(crate) fn titled(mut schema: Schema, title: &str) -> String {
    schema.insert("title".to_owned(), title.into());
    text(&schema)
}

/// A schema as text, indented.
pub(crate) fn text(schema: &impl Serialize) -> String {
    serde_json::to_string_pretty(schema).unwrap_or_default() + "\n"
}

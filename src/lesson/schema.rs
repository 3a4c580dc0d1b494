//! JSON Schemas (draft 2020-12), made from the types that are read and written.

use super::class_table::row_schema;
use super::file::Lesson;
use super::receipt::Receipt;
use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema};
use serde::Serialize;

/// The dialect that all of them are in.
const DIALECT: &str = "https://json-schema.org/draft/2020-12/schema";

/// That of a lesson file.
pub fn lesson_schema() -> String {
    written(schemars::schema_for!(Lesson), "A lesson of Downbeam")
}

/// That of a receipt.
pub fn receipt_schema() -> String {
    written(schemars::schema_for!(Receipt), "A receipt of Downbeam")
}

/// That of a row of a class's report, a line of `grade --ndjson`.
pub fn report_row_schema() -> String {
    let mut schema = row_schema();
    schema["$schema"] = DIALECT.into();
    schema["title"] = "A row of a class's report".into();
    text(&schema)
}

/// That of something that is only written: what is always there is required, and what can be none may be `null`.
pub fn schema_of_output<T: JsonSchema>(title: &str) -> String {
    written(
        SchemaSettings::draft2020_12().for_serialize().into_generator().into_root_schema_for::<T>(),
        title,
    )
}

fn written(mut schema: Schema, title: &str) -> String {
    schema.insert("title".to_owned(), title.into());
    text(&schema)
}

fn text(schema: &impl Serialize) -> String {
    serde_json::to_string_pretty(schema).unwrap_or_default() + "\n"
}

//! JSON Schemas of a receipt and of a row of the class report.

use super::receipt::Receipt;
use super::table::row_schema;
use crate::lesson::schema::{DIALECT, text, titled};

/// That of a receipt.
pub fn receipt_schema() -> String {
    titled(schemars::schema_for!(Receipt), "A receipt of Downbeam")
}

/// That of a row of a class's report, a line of `grade --ndjson`.
pub fn report_row_schema() -> String {
    let mut schema = row_schema();
    schema["$schema"] = DIALECT.into();
    schema["title"] = "A row of a class's report".into();
    text(&schema)
}

//! The class: receipts and their check, the class list, rows and tables, the gradebook, and how alike two logs are.

pub mod gradebook;
pub mod list;
pub mod log_likeness;
pub mod receipt;
pub mod receipt_text;
pub mod report;
#[cfg(feature = "cli")]
pub mod schema;
pub mod table;

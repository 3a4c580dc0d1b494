//! The values of the handles as TypeScript, made from the Rust types: the page's modules are checked against them (`tests/browser/types.mjs`).
//! The handles' own declarations, which wasm-bindgen writes, name them as `values.NAME`.

use super::values;
use crate::class::gradebook::Class;
use crate::imaging::exposure::BeamSettings;
use crate::lesson::read_error::ReadError;
use crate::procedure::action::Action;
use crate::procedure::attempt_file::AttemptFile;
use crate::score::report::ProcedureReport;
use crate::score::rubric::Score;
use crate::view::report::Report;
use std::any::type_name;
use std::collections::BTreeMap;
use ts_rs::{Config, TS, TypeVisitor};

/// Declarations by name, each with the Rust type that it was made from.
struct Declarations {
    config: Config,
    found: BTreeMap<String, (&'static str, String)>,
}

impl TypeVisitor for Declarations {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        // What has no file of its own is TypeScript's: numbers, texts, lists.
        if T::output_path().is_none() {
            return T::visit_generics(self);
        }
        let name = T::ident(&self.config);
        let made_from = type_name::<T>();
        if let Some((other, _)) = self.found.get(&name) {
            assert_eq!(*other, made_from, "two types are called {name} in TypeScript");
            return;
        }
        let text = format!("{}export {}\n", T::docs().unwrap_or_default(), T::decl(&self.config));
        self.found.insert(name, (made_from, text));
        T::visit_dependencies(self);
        T::visit_generics(self);
    }
}

/// The text of `values.d.ts`: all that the handles of `super` take and give, and what that is made of, by name.
///
/// # Panics
///
/// When two types would have one name in TypeScript: a mistake in the source, met by every build.
pub fn declarations() -> String {
    let mut all = Declarations { config: Config::default().with_large_int("number"), found: BTreeMap::new() };
    all.visit::<Report>();
    all.visit::<ProcedureReport>();
    all.visit::<Score>();
    all.visit::<Action>();
    all.visit::<BeamSettings>();
    all.visit::<Class>();
    all.visit::<values::PatientEntry>();
    all.visit::<values::AskedPatient>();
    all.visit::<values::Ranges>();
    all.visit::<values::Reach>();
    all.visit::<values::DoseReadout>();
    all.visit::<values::DicomRecord>();
    all.visit::<values::BeamChoices>();
    all.visit::<values::Style>();
    all.visit::<values::PartLine>();
    all.visit::<values::CaseOptions>();
    all.visit::<AttemptFile>();
    all.visit::<values::LessonEntry<'static>>();
    all.visit::<values::DrawnEntry>();
    all.visit::<values::Standing>();
    all.visit::<values::Choices>();
    all.visit::<values::ClassEntry>();
    all.visit::<ReadError>();
    #[cfg(feature = "practice")]
    {
        use super::practice_values;
        all.visit::<practice_values::AskedCard>();
        all.visit::<practice_values::Shown<'static>>();
        all.visit::<practice_values::AnswerReport<'static>>();
        all.visit::<practice_values::Overview>();
        all.visit::<practice_values::CodesReport<'static>>();
        all.visit::<practice_values::Counts>();
        all.visit::<practice_values::Picture>();
        all.visit::<practice_values::CheckedPractice<'static>>();
        all.visit::<crate::practice::overlay::Mark>();
        all.visit::<crate::practice::class_round::Row>();
    }
    let texts: Vec<String> = all.found.into_values().map(|(_, text)| text).collect();
    format!("// Made by `downbeam build` from the Rust types.\n\n{}", texts.join("\n"))
}

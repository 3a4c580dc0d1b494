//! What all commands share: the table entry, reading of option values, and errors in one sentence.

use lexopt::{Arg, Parser};
use std::ffi::OsString;
use std::io::Write;
use std::path::PathBuf;

/// An entry in the table of commands.
pub(crate) struct Command {
    /// First argument on the command line.
    pub(crate) name: &'static str,
    /// One line for the overview.
    pub(crate) summary: &'static str,
    /// The whole help text.
    pub(crate) usage: &'static str,
    /// Does it. Gets its options, `--help` excepted.
    pub(crate) run: fn(&mut Parser) -> anyhow::Result<()>,
}

/// The command line was wrong; the text is one sentence.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub(crate) struct UsageError(pub(crate) String);

/// What `grade --strict` ends with; the text is one sentence.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub(crate) struct NotVerified(pub(crate) String);

/// Options that may stand more than once.
const SEVERAL: [&str; 2] = ["--lesson", "--with"];

/// The first option that stands twice: which of its values counts would be a guess.
fn twice(arguments: &[OsString]) -> Option<String> {
    let names = arguments.iter().map(|a| a.to_string_lossy()).take_while(|a| a != "--");
    let options: Vec<String> = names
        .filter(|a| a.starts_with("--"))
        .map(|a| a.split('=').next().unwrap_or_default().to_owned())
        .filter(|a| !SEVERAL.contains(&a.as_str()))
        .collect();
    options.iter().enumerate().find(|(i, name)| options[..*i].contains(name)).map(|(_, name)| name.clone())
}

/// Runs a command, or prints its help when `--help` is among its arguments.
pub(crate) fn start(command: &Command, arguments: Vec<OsString>) -> anyhow::Result<()> {
    if arguments.iter().any(|a| a == "--help" || a == "-h") {
        return print(command.usage);
    }
    if let Some(option) = twice(&arguments) {
        return Err(UsageError(format!("{option} is given twice: give it once")).into());
    }
    (command.run)(&mut Parser::from_args(arguments))
}

/// Writes to standard output.
pub(crate) fn print(text: &str) -> anyhow::Result<()> {
    let mut out = std::io::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.flush()?;
    Ok(())
}

/// An argument that a command does not know.
pub(crate) fn unknown(command: &Command, argument: &Arg<'_>) -> UsageError {
    let found = match argument {
        Arg::Short(c) => format!("option '-{c}'"),
        Arg::Long(name) => format!("option '--{name}'"),
        Arg::Value(value) => format!("argument '{}'", value.to_string_lossy()),
    };
    let name = command.name;
    UsageError(format!("unknown {found} of {name}: 'downbeam help {name}' lists what is allowed"))
}

/// A text of others for a line of the terminal.
pub(crate) fn printable(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { '?' } else { c }).collect()
}

/// The one word that a command takes, named `what`: one of the names in `allowed`, which is left to the caller to look up.
pub(crate) fn word(
    command: &Command,
    parser: &mut Parser,
    what: &str,
    allowed: &str,
) -> anyhow::Result<String> {
    let mut found = None;
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Value(value) if found.is_none() => found = Some(value.to_string_lossy().into_owned()),
            other => return Err(unknown(command, &other).into()),
        }
    }
    let missing = || UsageError(format!("{} wants a {what}: allowed are {allowed}", command.name));
    Ok(found.ok_or_else(missing)?)
}

/// The value of an option as text.
pub(crate) fn text(parser: &mut Parser, option: &str) -> Result<String, UsageError> {
    let missing = || UsageError(format!("{option} wants a value after it"));
    // Another option in the value's place means that the value was forgotten; a number may start with a minus.
    let value = parser.value().map_err(|_| missing())?;
    if value.to_string_lossy().starts_with("--") {
        return Err(missing());
    }
    value.into_string().map_err(|raw| {
        UsageError(format!("the value of {option} is not UTF-8 text: '{}'", raw.to_string_lossy()))
    })
}

/// An argument that names a file, a folder or a link to read: `-`, which some programs take for their input, is none.
pub(crate) fn source(value: OsString) -> Result<PathBuf, UsageError> {
    if value == "-" {
        return Err(UsageError(
            "'-' is no file: write what is to be read into one, and give its name".to_owned(),
        ));
    }
    Ok(value.into())
}

/// The value of an option as a number of `unit`. Whether it is in range (or a number at all: NaN) is for the caller.
pub(crate) fn number(parser: &mut Parser, option: &str, unit: &str) -> Result<f64, UsageError> {
    let found = text(parser, option)?;
    // No minus before a zero.
    let without_minus_zero = |value: f64| if value == 0.0 { 0.0 } else { value };
    found
        .trim()
        .parse()
        .map(without_minus_zero)
        .map_err(|_| UsageError(format!("{option} wants a number of {unit}, not '{found}'")))
}

/// Says that an option is missing.
pub(crate) fn missing(command: &Command, option: &str, example: &str) -> UsageError {
    UsageError(format!("{} wants {option}, such as {option} {example}", command.name))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(arguments: &[&str]) -> Result<f64, UsageError> {
        let mut parser = Parser::from_args(arguments);
        parser.next().unwrap();
        number(&mut parser, "--tilt", "degrees")
    }

    #[test]
    fn numbers_may_be_negative_and_bad_ones_are_named() {
        assert_eq!(read(&["--tilt", "-12.5"]).unwrap(), -12.5);
        assert_eq!(read(&["--tilt=3"]).unwrap(), 3.0);
        assert!(read(&["--tilt", "-0.0"]).unwrap().is_sign_positive());
        let given = |all: &[&str]| twice(&all.iter().map(OsString::from).collect::<Vec<_>>());
        assert_eq!(given(&["--tilt", "1", "--png", "a", "--tilt=2"]).as_deref(), Some("--tilt"));
        assert_eq!(given(&["--with", "a=1", "--with", "b=2", "--", "--x", "--x"]), None);
        assert!(read(&["--tilt", "NaN"]).unwrap().is_nan());
        assert_eq!(
            read(&["--tilt", "steep"]).unwrap_err().to_string(),
            "--tilt wants a number of degrees, not 'steep'"
        );
        assert_eq!(read(&["--tilt"]).unwrap_err().to_string(), "--tilt wants a value after it");
        assert_eq!(read(&["--tilt", "--json"]).unwrap_err().to_string(), "--tilt wants a value after it");
    }
}

//! `codes`: deals out a code to each name of a class, and prints the list.

use crate::command::{Command, UsageError, print, source, text, unknown};
use crate::list_source;
use crate::out_file::{self, may_write};
use anyhow::Context;
use downbeam::class::list::ClassList;
use downbeam::class::table::{CsvStyle, list};
use lexopt::{Arg, Parser};
use std::collections::hash_map::RandomState;
use std::hash::BuildHasher;
use std::path::PathBuf;

pub(crate) const COMMAND: Command = Command {
    name: "codes",
    summary: "Deal out codes to the names of a class",
    usage: "Usage: downbeam codes NAMES [--out FILE] [OPTIONS]\n\n\
            NAMES is a file with a name a line, or a CSV whose heading names a column 'name', or first and last name. Each gets a\n\
            code of five letters and figures by chance; the list of both is what 'grade --class' takes. It stays with you: no lesson and no receipt holds a name.\n\n\
            --out FILE  Write the list there. Default: print it.\n\
            --force     Write over a file that is there already; never over the names\n",
    run,
};

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let (mut names, mut out, mut force) = (None, None, false);
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("out") => out = Some(PathBuf::from(text(parser, "--out")?)),
            Arg::Long("force") => force = true,
            Arg::Value(value) if names.is_none() => names = Some(source(value)?),
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    let Some(names) = names else {
        return Err(UsageError("codes wants a file of names, such as codes names.txt".to_owned()).into());
    };
    if let Some(out) = &out {
        may_write(&[("--out", out)], std::slice::from_ref(&names), force)?;
    }
    let text = list_source::text(&names)?;
    // The standard library seeds its hash maps by chance.
    let seed = RandomState::new().hash_one(std::process::id());
    let dealt = ClassList::dealt(&text, seed).with_context(|| format!("cannot use {}", names.display()))?;
    let table = list(&dealt, CsvStyle::default());
    match out {
        Some(out) => {
            out_file::write(&out, table.as_bytes())?;
            print(&format!("{} codes in {}\n", dealt.members().len(), out.display()))
        }
        None => print(&table),
    }
}

//! `man`: the manual page, made from the help texts.

use crate::COMMANDS;
use crate::command::{Command, print, unknown};
use crate::command_line;
use clap_mangen::Man;
use clap_mangen::roff::{Roff, bold, italic, roman};
use lexopt::Parser;

pub(crate) const COMMAND: Command = Command {
    name: "man",
    summary: "The manual page",
    usage: "Usage: downbeam man\n\n\
            Prints the manual page, section 1, of all commands. To read it: downbeam man | man -l -\n",
    run,
};

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    if let Some(other) = parser.next()? {
        return Err(unknown(&COMMAND, &other).into());
    }
    print(&String::from_utf8_lossy(&page()?))
}

fn page() -> std::io::Result<Vec<u8>> {
    let mut page = Vec::new();
    let man = Man::new(command_line::definition());
    man.render_title(&mut page)?;
    man.render_name_section(&mut page)?;
    man.render_synopsis_section(&mut page)?;
    man.render_description_section(&mut page)?;
    let mut commands = Roff::new();
    commands.control("SH", ["COMMANDS"]);
    for command in COMMANDS {
        let usage = command_line::read(command.usage);
        commands.control("SS", [usage.line]);
        commands.text([roman(format!("{}.", command.summary))]);
        for paragraph in usage.prose {
            // Lines of a paragraph may be a table of their own, so they stay lines.
            commands.control("PP", []).control("nf", []);
            for line in paragraph.lines() {
                commands.text([roman(line)]);
            }
            commands.control("fi", []);
        }
        for option in usage.options {
            let mut head = vec![bold(format!("--{}", option.name))];
            head.extend(option.value.into_iter().flat_map(|value| [roman(" "), italic(value)]));
            commands.control("TP", []).text(head).text([roman(option.help)]);
        }
    }
    commands.control("SH", ["EXIT STATUS"]).text([roman(
        "0: done; 1: it could not be done (a file, a port, a build); 2: it was asked for wrongly; 3: grade --strict found a receipt that is not verified.",
    )]);
    page.extend(commands.render().into_bytes());
    man.render_extra_section(&mut page)?;
    Ok(page)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_command_and_option_stands_on_the_page() {
        let page = String::from_utf8(page().unwrap()).unwrap();
        for command in COMMANDS {
            let usage = command_line::read(command.usage);
            for option in usage.options {
                let name = format!("\\-\\-{}", option.name.replace('-', "\\-"));
                assert!(page.contains(&name), "{}: {name}", command.name);
            }
        }
    }
}

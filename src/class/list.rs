//! The class list: which code is whose. It comes out of a spreadsheet as CSV with a code and a name a line, stays with the teacher, and is
//! in no lesson and no receipt.

use crate::lesson::digest::sha256;
use crate::lesson::draw;
use crate::lesson::read_error::ReadError;
use std::collections::BTreeSet;

/// Longest list, bytes and learners.
pub const MOST_BYTES: usize = 1024 * 1024;
/// Most learners of a list.
pub const MOST_LEARNERS: usize = 10_000;
/// Letters and figures of a code that is dealt out: none that is taken for another when it is copied by hand.
const SIGNS: &[u8; 28] = b"abcdefghjkmnpqrstuvwxyz23456";
/// How many of them: 17 million codes, so that one mistyped is hardly ever another's.
const LENGTH: usize = 5;
/// What a heading calls the columns, in small letters.
const CODE: [&str; 7] = ["code", "kürzel", "kennung", "código", "codigo", "id", "learner"];
const NAME: [&str; 6] = ["name", "names", "namen", "nombre", "nombres", "student"];
/// What platforms call the two halves of a name.
const GIVEN: [&str; 8] =
    ["first name", "firstname", "given name", "forename", "vorname", "nombre", "nombres", "nombre(s)"];
const FAMILY: [&str; 9] = [
    "last name",
    "lastname",
    "family name",
    "surname",
    "nachname",
    "familienname",
    "apellido",
    "apellidos",
    "apellido(s)",
];

/// One of a class.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Member {
    /// As in the receipts.
    pub code: String,
    /// For the teacher's eyes.
    pub name: String,
}

/// A class, in the order of its list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ClassList(Vec<Member>);

impl ClassList {
    /// Reads a list: a code and a name a line, after a heading or not; with a heading the columns may stand anywhere. Comma, semicolon or
    /// tab between them, whichever the first line has most of. Without a heading all that follows the code is the name.
    ///
    /// # Errors
    /// One sentence with the line: a code that cannot be used or stands twice, no name, no learner at all.
    pub fn from_csv(text: &str) -> Result<Self, ReadError> {
        let rows = rows(text)?;
        let heading = heading(&rows, 2)?;
        let code = match &heading {
            Some(heading) => heading.code.ok_or_else(|| wrong(1, "the heading names no column 'code'"))?,
            None => 0,
        };
        let mut members = Vec::new();
        let mut seen = BTreeSet::new();
        for (line, row) in rows.iter().skip(usize::from(heading.is_some())) {
            let cell = row.get(code).unwrap_or_default().trim();
            let found = draw::code(cell).map_err(|error| wrong(*line, &error.to_string()))?;
            if found.is_empty() {
                return Err(wrong(*line, "there is no code"));
            }
            if !seen.insert(found.to_owned()) {
                return Err(wrong(*line, &format!("the code '{found}' stands twice")));
            }
            members.push(Member { code: found.to_owned(), name: name_in(row, heading.as_ref(), 1) });
        }
        if members.is_empty() {
            return Err(ReadError::at(
                "",
                "there is no learner in the list: allowed are lines of a code and a name",
            ));
        }
        Ok(Self(members))
    }

    /// Deals out codes to the names of a list, a name a line; with a heading, its column 'name' or those of first and last name. The same names
    /// and the same seed give the same codes; without the seed nobody gets from a name to its code, so it must come from chance.
    ///
    /// # Errors
    /// As for a list; a name may stand twice.
    pub fn dealt(names: &str, seed: u64) -> Result<Self, ReadError> {
        let rows = rows(names)?;
        let heading = heading(&rows, 1)?;
        let mut dealt = BTreeSet::new();
        let mut members = Vec::new();
        for (n, (_, row)) in rows.iter().skip(usize::from(heading.is_some())).enumerate() {
            let name = name_in(row, heading.as_ref(), 0);
            let mut code = String::new();
            for attempt in 0_u64.. {
                code = code_of(&name, n as u64, seed, attempt);
                if dealt.insert(code.clone()) {
                    break;
                }
            }
            members.push(Member { code, name });
        }
        if members.is_empty() {
            return Err(ReadError::at(
                "",
                "there is no name in the list: allowed are lines of one name each",
            ));
        }
        Ok(Self(members))
    }

    /// In the order of the list.
    pub fn members(&self) -> &[Member] {
        &self.0
    }

    /// The name of a code.
    pub fn name(&self, code: &str) -> Option<&str> {
        self.0.iter().find(|m| m.code == code).map(|m| m.name.as_str())
    }
}

fn code_of(name: &str, n: u64, seed: u64, attempt: u64) -> String {
    let digest = sha256(format!("{seed} {n} {attempt} {name}").as_bytes());
    digest
        .iter()
        .filter(|&&byte| usize::from(byte) < 9 * SIGNS.len())
        .take(LENGTH)
        .map(|&b| char::from(SIGNS[usize::from(b) % SIGNS.len()]))
        .collect()
}

fn wrong(line: u64, problem: &str) -> ReadError {
    ReadError::at(format!("line {line}"), problem)
}

type Rows = Vec<(u64, csv::StringRecord)>;

/// The lines with anything in them, and where they stand.
fn rows(text: &str) -> Result<Rows, ReadError> {
    if text.len() > MOST_BYTES {
        return Err(ReadError::at(
            "",
            format!("the list is longer than {MOST_BYTES} bytes, the most that is allowed"),
        ));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let first = text.lines().next().unwrap_or_default();
    let count = |sign: char| first.matches(sign).count();
    let separator =
        [';', '\t'].into_iter().filter(|&s| count(s) > count(',')).max_by_key(|&s| count(s)).unwrap_or(',');
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator as u8)
        .from_reader(text.as_bytes());
    let mut rows = Rows::new();
    for record in reader.records() {
        let record = record.map_err(|error| ReadError::at("", format!("the list is no CSV: {error}")))?;
        if record.iter().all(|cell| cell.trim().is_empty()) {
            continue;
        }
        if rows.len() > MOST_LEARNERS {
            return Err(ReadError::at(
                "",
                format!("the list has more than {MOST_LEARNERS} learners, the most that is allowed"),
            ));
        }
        rows.push((record.position().map_or(0, csv::Position::line), record));
    }
    Ok(rows)
}

/// The columns that a heading names.
struct Heading {
    code: Option<usize>,
    /// One for a whole name, or first and last name in this order.
    names: Vec<usize>,
}

/// The first line, if it is a heading.
fn heading(rows: &Rows, least: usize) -> Result<Option<Heading>, ReadError> {
    let Some((line, first)) = rows.first() else { return Ok(None) };
    let find =
        |names: &[&str]| first.iter().position(|cell| names.contains(&cell.trim().to_lowercase().as_str()));
    let code = find(&CODE);
    let names = match (find(&GIVEN), find(&FAMILY)) {
        (Some(given), Some(family)) => vec![given, family],
        _ => find(&NAME).into_iter().collect(),
    };
    match (code, names.is_empty()) {
        (None, true) if first.len() < least => Err(wrong(
            *line,
            "found one column: allowed are a code and a name, with a comma, semicolon or tab between them",
        )),
        (None, true) => Ok(None),
        (Some(_), true) => Err(wrong(*line, "the heading names no column 'name'")),
        (_, false) => Ok(Some(Heading { code, names })),
    }
}

/// The name in a line; without a heading it goes from a column to the line's end, since "Ek, Bo" is one name.
fn name_in(row: &csv::StringRecord, heading: Option<&Heading>, from: usize) -> String {
    let cells = |at: &mut dyn Iterator<Item = usize>, between: &str| {
        let cells: Vec<&str> =
            at.filter_map(|i| row.get(i)).map(str::trim).filter(|cell| !cell.is_empty()).collect();
        cells.join(between)
    };
    match heading {
        Some(heading) => cells(&mut heading.names.iter().copied(), " "),
        None => cells(&mut (from..row.len()), ", "),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_are_read_as_spreadsheets_write_them() {
        let own =
            ClassList::from_csv("\u{feff}Name;Code\r\n\"Müller; Anna\";am1\r\nBo Ek;be2\r\n\r\n").unwrap();
        assert_eq!(own.name("am1"), Some("Müller; Anna"));
        assert_eq!(own.members().len(), 2);
        assert_eq!(ClassList::from_csv("a,Anna\nb,Bo\n").unwrap().name("b"), Some("Bo"));
        assert_eq!(ClassList::from_csv("code\tname\na\tAnna").unwrap().name("a"), Some("Anna"));
        for (bad, said) in [
            ("", "there is no learner"),
            ("a,Anna\na,Bo", "line 2: the code 'a' stands twice"),
            ("Anna\nBo", "line 1: found one column"),
            ("code,x\na,b", "line 1: the heading names no column 'name'"),
            (",Anna", "line 1: there is no code"),
        ] {
            let error = ClassList::from_csv(bad).unwrap_err().to_string();
            assert!(error.starts_with(said), "{error}");
        }
    }

    #[test]
    fn codes_are_dealt_out_to_names_each_its_own() {
        let names: String = (0..2000).map(|i| format!("Learner {}\n", i % 1900)).collect();
        let dealt = ClassList::dealt(&names, 7).unwrap();
        let codes: BTreeSet<&str> = dealt.members().iter().map(|m| m.code.as_str()).collect();
        assert_eq!(codes.len(), 2000);
        assert!(codes.iter().all(|c| c.len() == LENGTH));
        assert_eq!(dealt, ClassList::dealt(&names, 7).unwrap());
        assert_ne!(dealt, ClassList::dealt(&names, 8).unwrap());
        assert_eq!(ClassList::dealt("name,group\nAnna,1\n", 7).unwrap().members()[0].name, "Anna");
    }

    #[test]
    fn no_half_of_a_name_is_lost() {
        let first = |list: Result<ClassList, ReadError>| list.unwrap().members()[0].name.clone();
        for names in [
            "Müller, Anna\nEk, Bo",
            "Müller; Anna\nEk; Bo",
            "\"Müller, Anna\"\n\"Ek, Bo\"",
            "Müller, Anna,,\n",
        ] {
            assert_eq!(first(ClassList::dealt(names, 7)), "Müller, Anna");
        }
        for names in [
            "Vorname;Nachname\nAnna;Müller",
            "Nachname;Vorname;E-Mail\nMüller;Anna;a@example.org",
            "First name,Last name,ID\nAnna,Müller,a1",
            "Nombre\tApellido(s)\nAnna\tMüller",
        ] {
            assert_eq!(first(ClassList::dealt(names, 7)), "Anna Müller");
        }
        assert_eq!(first(ClassList::from_csv("a1,Müller, Anna\n")), "Müller, Anna");
        assert_eq!(first(ClassList::from_csv("ID,First name,Surname\na1,Anna,Müller\n")), "Anna Müller");
    }
}

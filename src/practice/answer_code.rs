//! The answers to a class round as a short code that can be read out, typed or pasted: 12 characters in three groups.
//!
//! Base 32 with Crockford's letters (0-9, A-Z without I, L, O, U: from memory), read in either case, I and L as 1, O as 0. Sixty bits: a tag of 15 that
//! tells learners apart and says nothing about them, ten answers of 3 bits each (0 to 3, 7 for none), and 15 bits of SHA-256 over round, engine, tag
//! and answers, so that a slip, a code of another round, or one made with bones that have changed since, is found (missed once in 32,768).

use super::round::{COUNTS, ClassRound};
use crate::lesson::digest::sha256;
use crate::score::engine::SCORING;

const LETTERS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/// Not answered.
const NONE: u64 = 7;
/// Bits of tag and check.
const BITS: u32 = 15;
/// Letters of a code.
pub const LENGTH: usize = 12;

/// A learner's answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answers {
    /// Tells learners apart, below 2^15.
    pub tag: u16,
    /// The choice by its place, a question each; `None` where there is no answer yet.
    pub choices: Vec<Option<u8>>,
}

/// A code that cannot be taken in.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "the message is the documentation")]
pub enum CodeError {
    #[error("'{found}' has {length} letters and digits: a code has {LENGTH}")]
    Length { found: String, length: usize },
    #[error("'{found}' has '{letter}', which no code has")]
    Letter { found: String, letter: char },
    #[error("'{found}' has a slip in it, or is of another round, or of another version of the page")]
    Check { found: String },
}

fn check(round: &ClassRound, tag: u64, answers: u64) -> u64 {
    let digest = sha256(format!("downbeam round {round} {SCORING} {tag} {answers}").as_bytes());
    (u64::from(digest[0]) << 8 | u64::from(digest[1])) & ((1 << BITS) - 1)
}

/// The code of some answers; tags above 15 bits are cut.
pub fn write(round: &ClassRound, answers: &Answers) -> String {
    let tag = u64::from(answers.tag) & ((1 << BITS) - 1);
    let packed = (0..COUNTS.1).fold(0_u64, |bits, i| {
        let choice = answers.choices.get(i).copied().flatten().map_or(NONE, |c| u64::from(c.min(3)));
        bits << 3 | choice
    });
    let all = tag << 45 | packed << BITS | check(round, tag, packed);
    let letter = |i: usize| char::from(LETTERS[(all >> (5 * (LENGTH - 1 - i)) & 31) as usize]);
    (0..LENGTH).flat_map(|i| (i > 0 && i % 4 == 0).then_some('-').into_iter().chain([letter(i)])).collect()
}

/// Reads a code of a round.
///
/// # Errors
/// Why it cannot be taken in.
pub fn read(round: &ClassRound, text: &str) -> Result<Answers, CodeError> {
    let found: String = text.trim().chars().take(40).map(|c| if c.is_control() { ' ' } else { c }).collect();
    let letters: Vec<char> = text
        .chars()
        .filter(|c| !c.is_whitespace() && !matches!(c, '-' | '\u{2010}'..='\u{2015}' | '.' | '_'))
        .map(|c| match c.to_ascii_uppercase() {
            'I' | 'L' => '1',
            'O' => '0',
            other => other,
        })
        .collect();
    if letters.len() != LENGTH {
        return Err(CodeError::Length { found, length: letters.len() });
    }
    let mut all = 0_u64;
    for letter in letters {
        let Some(value) = LETTERS.iter().position(|l| char::from(*l) == letter) else {
            return Err(CodeError::Letter { found, letter });
        };
        all = all << 5 | value as u64;
    }
    let (tag, packed) = (all >> 45, all >> BITS & ((1 << 30) - 1));
    let choice = |i: usize| packed >> (3 * (COUNTS.1 - 1 - i)) & 7;
    let count = usize::from(round.count);
    let known = (0..COUNTS.1).all(|i| choice(i) == NONE || (choice(i) < 4 && i < count));
    if !known || all & ((1 << BITS) - 1) != check(round, tag, packed) {
        return Err(CodeError::Check { found });
    }
    let choices = (0..count).map(|i| u8::try_from(choice(i)).ok().filter(|c| *c < 4)).collect();
    Ok(Answers { tag: tag as u16, choices })
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROUND: ClassRound = ClassRound { seed: 7, stage: 1, count: 8 };

    fn answers() -> Answers {
        Answers {
            tag: 20_001,
            choices: vec![Some(0), Some(3), None, Some(1), Some(2), Some(2), Some(0), None],
        }
    }

    #[test]
    fn a_code_reads_back_however_it_is_typed() {
        let code = write(&ROUND, &answers());
        assert_eq!((code.len(), code.matches('-').count()), (14, 2));
        for typed in [
            code.clone(),
            code.to_lowercase(),
            code.replace('-', " "),
            code.replace('0', "o").replace('1', "l"),
        ] {
            assert_eq!(read(&ROUND, &typed), Ok(answers()), "{typed}");
        }
    }

    #[test]
    fn every_single_slip_and_every_other_round_is_found() {
        let code = write(&ROUND, &answers());
        let letters: Vec<char> = code.chars().collect();
        let mut missed = 0;
        let mut tried = 0;
        for at in (0..letters.len()).filter(|i| letters[*i] != '-') {
            for wrong in LETTERS.iter().map(|l| char::from(*l)).filter(|l| *l != letters[at]) {
                let mut typed = letters.clone();
                typed[at] = wrong;
                tried += 1;
                missed += usize::from(read(&ROUND, &typed.iter().collect::<String>()).is_ok());
            }
        }
        assert_eq!((missed, tried), (0, 372));
        assert!(matches!(read(&ClassRound { seed: 8, ..ROUND }, &code), Err(CodeError::Check { .. })));
        assert!(matches!(read(&ROUND, "ABC"), Err(CodeError::Length { length: 3, .. })));
        assert!(matches!(read(&ROUND, "UUUU-UUUU-UUUU"), Err(CodeError::Letter { letter: 'U', .. })));
    }
}

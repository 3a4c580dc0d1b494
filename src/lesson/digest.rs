//! SHA-256 (FIPS 180-4): a checksum and a source of seeds, never a proof of who wrote something.

use sha2::{Digest, Sha256};

/// The digest.
pub(crate) fn sha256(bytes: &[u8]) -> [u8; 32] {
    Sha256::digest(bytes).into()
}

/// The digest in 64 small hexadecimal digits.
pub fn sha256_hex(bytes: &[u8]) -> String {
    let digit = |nibble: u8| char::from_digit(u32::from(nibble), 16).unwrap_or('0');
    sha256(bytes).iter().flat_map(|b| [digit(b >> 4), digit(b & 15)]).collect()
}

#[cfg(test)]
mod tests {
    /// The example of FIPS 180-4, one block.
    #[test]
    fn as_in_the_standard() {
        let wanted = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(super::sha256_hex(b"abc"), wanted);
    }
}

//! Compressed copies beside a site's files (`a.js.br`, `a.js.gz`), for web servers that send such a copy when a browser takes it.

use super::files::Files;
use crate::all_processors::{in_order, states};
use anyhow::Context;
use brotli::enc::BrotliEncoderParams;
use std::num::NonZeroU64;
use zopfli::{Format, Options};

/// Ends of names of what is worth it: text and WebAssembly. Pictures are compressed by themselves.
const WORTH: [&str; 9] = [".html", ".js", ".css", ".svg", ".json", ".wasm", ".txt", ".md", ".ftl"];

/// How often the search for short codes is run: a second time gives what fifteen give to within 0.2 %.
const ROUNDS: NonZeroU64 = NonZeroU64::new(2).unwrap();

/// A way to compress: the end of a copy's name, and what gives its bytes.
type Form = (&'static str, fn(&[u8]) -> std::io::Result<Vec<u8>>);
const FORMS: [Form; 2] = [("br", brotli), ("gz", gzip)];

/// Puts them beside the files that they make smaller; all processors share the work.
pub(super) fn beside(files: &mut Files) -> anyhow::Result<()> {
    let worth: Vec<(&str, &[u8], Form)> = files
        .iter()
        .filter(|(path, _)| WORTH.iter().any(|end| path.ends_with(end)))
        .flat_map(|(path, bytes)| FORMS.map(|form| (path, bytes, form)))
        .collect();
    let copies = in_order(&worth, &mut states::<()>(), |(), (path, bytes, (end, compress))| {
        let copy = compress(bytes).with_context(|| format!("cannot compress {path}"))?;
        Ok((copy.len() < bytes.len()).then(|| (format!("{path}.{end}"), copy)))
    });
    let copies: anyhow::Result<Vec<_>> = copies.into_iter().collect();
    for (path, copy) in copies?.into_iter().flatten() {
        files.put(&path, copy);
    }
    Ok(())
}

fn brotli(bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut out = Vec::new();
    let best = BrotliEncoderParams { quality: 11, lgwin: 22, size_hint: bytes.len(), ..Default::default() };
    brotli::BrotliCompress(&mut &bytes[..], &mut out, &best)?;
    Ok(out)
}

/// Without a time or a name in its head, so that the same file gives the same bytes.
fn gzip(bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut out = Vec::new();
    let options = Options { iteration_count: ROUNDS, ..Options::default() };
    zopfli::compress(options, Format::Gzip, bytes, &mut out)?;
    Ok(out)
}

//! Compressed copies beside a site's files (`a.js.br`, `a.js.gz`), for web servers that send such a copy when a browser takes it.

use super::files::Files;
use anyhow::Context;
use brotli::enc::BrotliEncoderParams;
use flate2::{Compression, GzBuilder};
use std::io::Write;

/// Ends of names of what is worth it: text and WebAssembly. Pictures are compressed by themselves.
const WORTH: [&str; 9] = [".html", ".js", ".css", ".svg", ".json", ".wasm", ".txt", ".md", ".ftl"];

/// Puts them beside the files that they make smaller.
pub(super) fn beside(files: &mut Files) -> anyhow::Result<()> {
    let mut copies = Vec::new();
    for (path, bytes) in files.iter().filter(|(path, _)| WORTH.iter().any(|end| path.ends_with(end))) {
        let cannot = || format!("cannot compress {path}");
        for (end, copy) in
            [("br", brotli(bytes).with_context(cannot)?), ("gz", gzip(bytes).with_context(cannot)?)]
        {
            if copy.len() < bytes.len() {
                copies.push((format!("{path}.{end}"), copy));
            }
        }
    }
    for (path, copy) in copies {
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
    let mut encoder = GzBuilder::new().write(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    encoder.finish()
}

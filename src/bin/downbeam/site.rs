//! A folder as a web site: request path to file, safely, with the type a browser wants.
//!
//! A path is refused when it is not plain names below the folder after percent-decoding, or when it leads out of
//! the folder through a symbolic link. Where a compressed copy lies beside a file (`a.js.br`, `a.js.gz`, as `pack --site` makes them) and
//! the browser takes it, the copy is sent.

use anyhow::Context;
use std::path::{Component, Path, PathBuf};

/// A folder that is served.
pub(crate) struct Site {
    /// With all symbolic links resolved.
    root: PathBuf,
}

/// What to send back.
#[derive(Debug)]
pub(crate) struct Reply {
    pub(crate) status: u16,
    pub(crate) headers: Vec<(&'static str, String)>,
    pub(crate) body: Vec<u8>,
}

/// Media type by the end of the name. WebAssembly must be exact: browsers compile it while it streams only then.
const TYPES: [(&str, &str); 17] = [
    ("html", "text/html; charset=utf-8"),
    ("js", "text/javascript; charset=utf-8"),
    ("mjs", "text/javascript; charset=utf-8"),
    ("css", "text/css; charset=utf-8"),
    ("json", "application/json"),
    ("jsonld", "application/ld+json"),
    ("map", "application/json"),
    ("webmanifest", "application/manifest+json"),
    ("wasm", "application/wasm"),
    ("svg", "image/svg+xml"),
    ("png", "image/png"),
    ("ico", "image/x-icon"),
    ("woff2", "font/woff2"),
    ("zip", "application/zip"),
    ("txt", "text/plain; charset=utf-8"),
    ("ftl", "text/plain; charset=utf-8"),
    ("ts", "text/plain; charset=utf-8"),
];

fn media_type(path: &Path) -> &'static str {
    let end = path.extension().and_then(|e| e.to_str()).unwrap_or_default().to_ascii_lowercase();
    TYPES.iter().find(|(name, _)| *name == end).map_or("application/octet-stream", |(_, kind)| kind)
}

impl Site {
    pub(crate) fn new(folder: &Path) -> anyhow::Result<Self> {
        let root = folder.canonicalize().with_context(|| format!("cannot read {}", folder.display()))?;
        Ok(Self { root })
    }

    /// Answers a request; never fails.
    /// `accepted`: the value of the request's Accept-Encoding.
    pub(crate) fn answer(&self, method: &str, url: &str, accepted: &str) -> Reply {
        if method != "GET" && method != "HEAD" {
            let mut reply = message(405, "Only GET and HEAD are answered here.");
            reply.headers.push(("Allow", "GET, HEAD".to_owned()));
            return reply;
        }
        let path = url.split(['?', '#']).next().unwrap_or_default();
        let Some(asked) = relative(path) else {
            return message(400, "The path is not one of this site.");
        };
        let Some(found) = self.inside(&asked) else {
            return message(404, "There is no such page here.");
        };
        if !found.is_dir() {
            return self.sent(&asked, &found, accepted);
        }
        if path.ends_with('/') {
            let index = asked.join("index.html");
            return self.inside(&index).map_or_else(
                || message(404, "There is no such page here."),
                |found| self.sent(&index, &found, accepted),
            );
        }
        // Relative links in a folder's page need the slash. One slash only in front: two would name another host.
        let mut reply = message(301, "The page is at the same address with a slash after it.");
        reply.headers.push(("Location", format!("/{}/", path.trim_matches('/'))));
        reply
    }

    /// A file, or the copy of it that is compressed best of those that are there and accepted.
    fn sent(&self, asked: &Path, found: &Path, accepted: &str) -> Reply {
        for (coding, end) in [("br", ".br"), ("gzip", ".gz")] {
            let mut name = asked.as_os_str().to_owned();
            name.push(end);
            if takes(accepted, coding)
                && let Some(copy) = self.inside(Path::new(&name))
            {
                let mut reply = file(&copy, media_type(found));
                reply.headers.push(("Content-Encoding", coding.to_owned()));
                reply.headers.push(("Vary", "Accept-Encoding".to_owned()));
                return reply;
            }
        }
        file(found, media_type(found))
    }

    /// The real path of something in the folder; `None` when it is not there or leads out of it.
    fn inside(&self, relative: &Path) -> Option<PathBuf> {
        let real = self.root.join(relative).canonicalize().ok()?;
        real.starts_with(&self.root).then_some(real)
    }
}

fn file(path: &Path, kind: &str) -> Reply {
    // Only plain files: a named pipe would block for ever.
    match path.is_file().then(|| std::fs::read(path)) {
        Some(Ok(body)) => reply(200, kind, body),
        _ => message(404, "There is no such page here."),
    }
}

/// Whether an Accept-Encoding (RFC 9110, 12.5.3) has a coding, and not with a weight of nothing.
fn takes(accepted: &str, coding: &str) -> bool {
    accepted.split(',').any(|item| {
        let mut parts = item.split(';').map(str::trim);
        let named = parts.next().is_some_and(|name| name.eq_ignore_ascii_case(coding));
        named && !parts.any(|p| p.strip_prefix("q=").is_some_and(|q| q.parse() == Ok(0.0_f32)))
    })
}

/// To a request for another host's name.
pub(crate) fn elsewhere() -> Reply {
    message(421, "This server answers to localhost and 127.0.0.1 only.")
}

fn message(status: u16, text: &str) -> Reply {
    reply(status, "text/plain; charset=utf-8", format!("{text}\n").into_bytes())
}

fn reply(status: u16, kind: &str, body: Vec<u8>) -> Reply {
    let headers = vec![
        ("Content-Type", kind.to_owned()),
        ("Cache-Control", "no-store".to_owned()),
        ("X-Content-Type-Options", "nosniff".to_owned()),
    ];
    Reply { status, headers, body }
}

/// The path of a URL as plain names below the root, or `None`.
fn relative(path: &str) -> Option<PathBuf> {
    let decoded = percent_decoded(path.strip_prefix('/')?)?;
    if decoded.contains(['\0', '\\']) {
        return None;
    }
    let names = Path::new(decoded.trim_start_matches('/'));
    names.components().all(|c| matches!(c, Component::Normal(_))).then(|| names.to_path_buf())
}

/// `%2F` and the like to the text they stand for; `None` for broken escapes and what is not UTF-8.
fn percent_decoded(text: &str) -> Option<String> {
    let mut bytes = text.bytes();
    let mut decoded = Vec::with_capacity(text.len());
    while let Some(byte) = bytes.next() {
        decoded.push(if byte == b'%' {
            let digit = |b: Option<u8>| char::from(b?).to_digit(16);
            let (high, low) = (digit(bytes.next())?, digit(bytes.next())?);
            u8::try_from(high * 16 + low).ok()?
        } else {
            byte
        });
    }
    String::from_utf8(decoded).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_stay_below_the_root() {
        for good in ["/", "/a.js", "/pkg/downbeam_bg.wasm", "/a%20b.txt", "/..."] {
            assert!(relative(good).is_some(), "{good}");
        }
        for bad in
            ["/..", "/../x", "/a/../../x", "/%2e%2e/x", "/a%2f..%2f..%2fx", "/%00", "/%zz", "/%", "/%ff", ""]
        {
            assert!(relative(bad).is_none(), "{bad}");
        }
        assert_eq!(relative("//etc/passwd"), Some(PathBuf::from("etc/passwd")));
        assert!(relative("/..\\x").is_none());
    }

    #[test]
    fn a_coding_is_taken_where_it_is_named_with_a_weight() {
        for good in ["br", "gzip, deflate, br, zstd", "gzip;q=0.5, BR;q=1.0", "gzip;q=0, br"] {
            assert!(takes(good, "br"), "{good}");
        }
        for bad in ["", "gzip", "br;q=0", "br; q=0.000", "brotli"] {
            assert!(!takes(bad, "br"), "{bad}");
        }
    }

    #[test]
    fn types_are_what_browsers_want() {
        assert_eq!(media_type(Path::new("x/downbeam_bg.wasm")), "application/wasm");
        assert_eq!(media_type(Path::new("main.js")), "text/javascript; charset=utf-8");
        assert_eq!(media_type(Path::new("INDEX.HTML")), "text/html; charset=utf-8");
        assert_eq!(media_type(Path::new("unknown")), "application/octet-stream");
    }
}

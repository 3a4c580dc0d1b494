//! A folder as a web site: request path to file, safely, with the type a browser wants.
//!
//! A path is refused when it is not plain names below the folder after percent-decoding, or when it leads out of
//! the folder through a symbolic link.

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
    pub(crate) fn answer(&self, method: &str, url: &str) -> Reply {
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
            return file(&found);
        }
        if path.ends_with('/') {
            return self
                .inside(&asked.join("index.html"))
                .map_or_else(|| message(404, "There is no such page here."), |index| file(&index));
        }
        // Relative links in a folder's page need the slash. One slash only in front: two would name another host.
        let mut reply = message(301, "The page is at the same address with a slash after it.");
        reply.headers.push(("Location", format!("/{}/", path.trim_matches('/'))));
        reply
    }

    /// The real path of something in the folder; `None` when it is not there or leads out of it.
    fn inside(&self, relative: &Path) -> Option<PathBuf> {
        let real = self.root.join(relative).canonicalize().ok()?;
        real.starts_with(&self.root).then_some(real)
    }
}

fn file(path: &Path) -> Reply {
    // Only plain files: a named pipe would block for ever.
    match path.is_file().then(|| std::fs::read(path)) {
        Some(Ok(body)) => reply(200, media_type(path), body),
        _ => message(404, "There is no such page here."),
    }
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
    fn types_are_what_browsers_want() {
        assert_eq!(media_type(Path::new("x/downbeam_bg.wasm")), "application/wasm");
        assert_eq!(media_type(Path::new("main.js")), "text/javascript; charset=utf-8");
        assert_eq!(media_type(Path::new("INDEX.HTML")), "text/html; charset=utf-8");
        assert_eq!(media_type(Path::new("unknown")), "application/octet-stream");
    }
}

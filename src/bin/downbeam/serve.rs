//! `serve`: builds the page and serves it on this machine only.
//!
//! Limits: plain HTTP on the loopback address, for one person's own use; files are read anew for every request.

use crate::build;
use crate::command::{Command, UsageError, print, text, unknown};
use crate::project;
use crate::site::Site;
use anyhow::Context;
use lexopt::{Arg, Parser};
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::sync::Arc;
use std::time::Duration;

pub(crate) const COMMAND: Command = Command {
    name: "serve",
    summary: "Build the page and serve it on this machine (the default)",
    usage: "Usage: downbeam [serve] [--port N] [--no-build]\n\n\
            Builds the WebAssembly and serves www/ on 127.0.0.1 until stopped with Ctrl-C.\n\n\
            --port N     Port to serve on; 0 takes any free one. Default 8080, or a free one when that is taken.\n\
            --no-build   Serve what was built before.\n",
    run,
};

const DEFAULT_PORT: u16 = 8080;
/// Bytes of a request's head that are read, and how long is waited for them.
const LONGEST_HEAD: u64 = 16 * 1024;
const PATIENCE: Duration = Duration::from_secs(5);

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let (mut port, mut building) = (None, true);
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("port") => port = Some(port_number(&text(parser, "--port")?)?),
            Arg::Long("no-build") => building = false,
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    let folder = project::folder("www")?;
    // The port is taken before the build, so that a taken one is heard of at once.
    let listener = listen(port)?;
    let address = listener.local_addr()?;
    if building {
        build::into_www(&folder)?;
    }
    let site = Site::new(&folder.join("www"))?;
    print(&format!("Downbeam is at http://{address}/\n"))?;
    eprintln!("Stop it with Ctrl-C.");
    answer_all(&listener, site);
    Ok(())
}

fn port_number(found: &str) -> Result<u16, UsageError> {
    found.parse().map_err(|_| UsageError(format!("--port wants a number from 0 to 65535, not '{found}'")))
}

/// Takes the port that was asked for, or the default one, or else any.
fn listen(port: Option<u16>) -> anyhow::Result<TcpListener> {
    if let Some(port) = port {
        return TcpListener::bind((Ipv4Addr::LOCALHOST, port))
            .with_context(|| format!("cannot serve on port {port}"));
    }
    TcpListener::bind((Ipv4Addr::LOCALHOST, DEFAULT_PORT)).or_else(|taken| {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))
            .context("cannot serve on any port of this machine")?;
        eprintln!("Port {DEFAULT_PORT} is not free ({taken}): taking another one.");
        Ok(listener)
    })
}

/// Answers requests for ever, a thread for each connection and a connection for each request.
///
/// Not a pool: a browser opens about six connections at once and keeps them, and a pool with fewer free threads leaves
/// the rest waiting until one is given up.
fn answer_all(listener: &TcpListener, site: Site) {
    let site = Arc::new(site);
    for stream in listener.incoming().flatten() {
        let site = site.clone();
        // A request that cannot be answered (the browser has gone) is dropped.
        std::thread::spawn(move || answer_one(&stream, &site));
    }
}

fn answer_one(stream: &TcpStream, site: &Site) -> std::io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    let mut head = BufReader::new(stream.take(LONGEST_HEAD));
    let mut first = String::new();
    head.read_line(&mut first)?;
    let mut line = String::new();
    while head.read_line(&mut line)? > 2 {
        line.clear();
    }
    let mut words = first.split_ascii_whitespace();
    let (method, url) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let reply = site.answer(method, url);
    let mut text = format!(
        "HTTP/1.1 {} \r\nConnection: close\r\nContent-Length: {}\r\n",
        reply.status,
        reply.body.len()
    );
    for (name, value) in &reply.headers {
        text += &format!("{name}: {value}\r\n");
    }
    let mut out = stream;
    out.write_all(text.as_bytes())?;
    out.write_all(b"\r\n")?;
    if method != "HEAD" {
        out.write_all(&reply.body)?;
    }
    out.flush()
}

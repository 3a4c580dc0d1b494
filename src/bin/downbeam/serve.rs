//! `serve`: builds the page and serves it on this machine only.
//!
//! Limits: plain HTTP on the loopback address, for one person's own use; files are read anew for every request.

use crate::build;
use crate::command::{Command, UsageError, print, text, unknown};
use crate::project;
use crate::site::{self, Site};
use anyhow::Context;
use lexopt::{Arg, Parser};
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::PathBuf;
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::{Duration, Instant};

pub(crate) const COMMAND: Command = Command {
    name: "serve",
    summary: "Build the page and serve it on this machine (the default)",
    usage: "Usage: downbeam [serve] [--port N] [--no-build | --site FOLDER]\n\n\
            Builds the WebAssembly and serves www/ on 127.0.0.1 until stopped with Ctrl-C.\n\n\
            --port N     Port to serve on; 0 takes any free one. Default 8080, or a free one when that is taken.\n\
            --no-build   Serve what was built before.\n\
            --site FOLDER  Serve what 'downbeam pack --site' made, compressed where the browser takes it.\n",
    run,
};

const DEFAULT_PORT: u16 = 8080;
/// Bytes of a request's head that are read, and how long is waited for all of them, and for the answer to be taken.
const LONGEST_HEAD: u64 = 16 * 1024;
const PATIENCE: Duration = Duration::from_secs(5);
/// Connections that are answered at once; others wait for one of them to end.
const MOST_AT_ONCE: usize = 64;

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let (mut port, mut building, mut packed) = (None, true, None);
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("port") => port = Some(port_number(&text(parser, "--port")?)?),
            Arg::Long("no-build") => building = false,
            Arg::Long("site") => packed = Some(PathBuf::from(text(parser, "--site")?)),
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    // A packed site is there already.
    let project = packed.is_none().then(|| project::folder("www")).transpose()?;
    // The port is taken before the build, so that a taken one is heard of at once.
    let listener = listen(port)?;
    let address = listener.local_addr()?;
    if let Some(project) = project.as_ref().filter(|_| building) {
        build::into_www(project)?;
    }
    let folder = packed.or_else(|| Some(project?.join("www"))).context("no folder to serve")?;
    let site = Site::new(&folder)?;
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
/// Not a pool of a few: a browser opens about six connections at once and keeps them, and with fewer free threads the rest waits
/// until one is given up. The bound is far above that, and each connection ends within twice the patience.
fn answer_all(listener: &TcpListener, site: Site) {
    let site = Arc::new(site);
    let running = Arc::new((Mutex::new(0_usize), Condvar::new()));
    for stream in listener.incoming().flatten() {
        let (count, ended) = &*running;
        let guard = count.lock().unwrap_or_else(PoisonError::into_inner);
        let mut guard =
            ended.wait_while(guard, |n| *n >= MOST_AT_ONCE).unwrap_or_else(PoisonError::into_inner);
        *guard += 1;
        drop(guard);
        let (site, place) = (site.clone(), Place(running.clone()));
        // A request that cannot be answered (the browser has gone) is dropped.
        std::thread::spawn(move || {
            let _place = place;
            answer_one(&stream, &site)
        });
    }
}

/// One of the connections that are answered at once; given back however the thread ends.
struct Place(Arc<(Mutex<usize>, Condvar)>);

impl Drop for Place {
    fn drop(&mut self) {
        let (count, ended) = &*self.0;
        *count.lock().unwrap_or_else(PoisonError::into_inner) -= 1;
        ended.notify_one();
    }
}

/// Reads of a stream until a deadline for all of them together: a byte now and then does not hold the connection.
struct Until<'a> {
    stream: &'a TcpStream,
    end: Instant,
}

impl Read for Until<'_> {
    fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
        let left = self.end.saturating_duration_since(Instant::now());
        if left.is_zero() {
            return Err(std::io::ErrorKind::TimedOut.into());
        }
        self.stream.set_read_timeout(Some(left))?;
        self.stream.read(buffer)
    }
}

fn answer_one(stream: &TcpStream, site: &Site) -> std::io::Result<()> {
    stream.set_write_timeout(Some(PATIENCE))?;
    let reader = Until { stream, end: Instant::now() + PATIENCE };
    let mut head = BufReader::new(reader.take(LONGEST_HEAD));
    let mut first = String::new();
    head.read_line(&mut first)?;
    let mut host = None;
    let mut accepted = String::new();
    let mut line = String::new();
    while head.read_line(&mut line)? > 2 {
        if let Some((name, value)) = line.split_once(':') {
            if name.eq_ignore_ascii_case("host") {
                host = Some(value.trim().to_owned());
            } else if name.eq_ignore_ascii_case("accept-encoding") {
                value.trim().clone_into(&mut accepted);
            }
        }
        line.clear();
    }
    let mut words = first.split_ascii_whitespace();
    let (method, url) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let reply = if host.as_deref().is_some_and(is_this_machine) {
        site.answer(method, url, &accepted)
    } else {
        site::elsewhere()
    };
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

/// Whether a Host header names this machine. Another name that leads here is another site's page, which could else read what is
/// served as if it were its own.
fn is_this_machine(host: &str) -> bool {
    let with_port = host.rsplit_once(':').filter(|(_, port)| port.parse::<u16>().is_ok());
    let name = with_port.map_or(host, |(name, _)| name);
    ["localhost", "127.0.0.1", "[::1]"].iter().any(|own| name.eq_ignore_ascii_case(own))
}

#[cfg(test)]
mod tests {
    use super::is_this_machine;

    #[test]
    fn only_names_of_this_machine_are_answered() {
        for good in ["localhost", "localhost:8080", "127.0.0.1:1", "LOCALHOST:80", "[::1]:8080", "127.0.0.1"]
        {
            assert!(is_this_machine(good), "{good}");
        }
        for bad in [
            "",
            "example.org",
            "example.org:8080",
            "localhost.example.org",
            "127.0.0.1.example.org:80",
            ":80",
        ] {
            assert!(!is_this_machine(bad), "{bad}");
        }
    }
}

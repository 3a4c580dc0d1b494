//! `serve`: builds the page and serves it on this machine only.
//!
//! Limits: plain HTTP on the loopback address, for one person's own use; files are read anew for every request.

use crate::build;
use crate::command::{Command, UsageError, print, text, unknown};
use crate::project;
use crate::site::Site;
use anyhow::{Context, anyhow};
use lexopt::{Arg, Parser};
use std::net::{Ipv4Addr, TcpListener};
use std::sync::Arc;
use tiny_http::{Header, Response, Server};

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
/// Requests answered at the same time; a browser opens about six connections.
const THREADS: usize = 6;

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
    let server = Server::from_listener(listener, None).map_err(|e| anyhow!("cannot serve: {e}"))?;
    print(&format!("Downbeam is at http://{address}/\n"))?;
    eprintln!("Stop it with Ctrl-C.");
    answer_all(server, site);
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

/// Answers requests for ever. A request that cannot be answered (the browser has gone) is dropped.
fn answer_all(server: Server, site: Site) {
    let (server, site) = (Arc::new(server), Arc::new(site));
    let threads: Vec<_> = (0..THREADS)
        .map(|_| {
            let (server, site) = (server.clone(), site.clone());
            std::thread::spawn(move || {
                loop {
                    let Ok(request) = server.recv() else { continue };
                    let reply = site.answer(request.method().as_str(), request.url());
                    let mut response = Response::from_data(reply.body).with_status_code(reply.status);
                    for (name, value) in reply.headers {
                        if let Ok(header) = Header::from_bytes(name, value) {
                            response.add_header(header);
                        }
                    }
                    let _ = request.respond(response);
                }
            })
        })
        .collect();
    for thread in threads {
        let _ = thread.join();
    }
}

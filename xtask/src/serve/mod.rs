//! Serving the site: the command people use, and the server the browser tests share.

mod headers;
mod server;
mod watch;

use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpListener, UdpSocket};

use anyhow::{Context, Result, bail};

pub use server::Server;

use crate::build::{self, Profile};
use crate::toolchain::Toolchain;

/// The port of the address that is printed, where it is free.
const USUAL_PORT: u16 = 8370;
/// How many ports are tried before giving up.
const PORTS_TRIED: u16 = 50;

/// What was asked of `cargo xtask serve`.
#[derive(Debug)]
pub struct Wish {
    /// How to compile.
    pub profile: Profile,
    /// The port to take, if one was named.
    pub port: Option<u16>,
    /// Shall other devices on the network reach it?
    pub lan: bool,
}

/// Builds, serves, and in development builds again on every change. Runs until it is interrupted.
///
/// # Errors
/// The build fails, or no port can be had.
pub fn run(wish: &Wish) -> Result<()> {
    let folder = wish.profile.folder();
    let toolchain = Toolchain::ready()?;
    let built = build::site_with(&toolchain, wish.profile, &folder);
    match (built, wish.profile) {
        (Ok(built), Profile::Release) => built.sizes.print(),
        (Ok(_), Profile::Dev) => {}
        // A mistake in the sources is what the watching is for.
        (Err(problem), Profile::Dev) => println!("\n{problem:#}\nThe page is built as soon as this is mended."),
        (Err(problem), Profile::Release) => return Err(problem),
    }
    let server = Server::start(&folder, listener(wish)?, "")?;
    announce(&server, wish);
    match wish.profile {
        Profile::Dev => watch::rebuild_on_change(&toolchain, &folder),
        Profile::Release => server.wait(),
    }
}

/// Takes the wished port, or the next free one.
fn listener(wish: &Wish) -> Result<TcpListener> {
    let host = if wish.lan { Ipv4Addr::UNSPECIFIED } else { Ipv4Addr::LOCALHOST };
    let first = wish.port.unwrap_or(USUAL_PORT);
    for port in first..=first.saturating_add(PORTS_TRIED) {
        if let Ok(listener) = TcpListener::bind((host, port)) {
            if port != first {
                println!("\nPort {first} is in use; {port} is free and taken instead.");
            }
            return Ok(listener);
        }
    }
    bail!("no port from {first} to {} is free; name another with --port", first.saturating_add(PORTS_TRIED))
}

fn announce(server: &Server, wish: &Wish) {
    let port = server.address().port();
    println!("\nLayshaft is at http://localhost:{port}/   (Ctrl+C ends it)");
    if !wish.lan {
        return;
    }
    match own_address() {
        Ok(own) => println!("Other devices on this network open http://{}/", SocketAddr::new(own, port)),
        Err(problem) => println!("This machine's address on the network is not known ({problem:#})."),
    }
    println!("Over plain http only this machine itself keeps the page for use without a network; other devices need https for that.");
}

/// The address other devices see. Connecting a datagram socket sends nothing; it only asks the routing table.
fn own_address() -> Result<IpAddr> {
    let socket = UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0))?;
    // An address reserved for documentation: RFC 5737.
    socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9)).context("there is no way out")?;
    Ok(socket.local_addr()?.ip())
}

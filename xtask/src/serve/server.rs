//! A server of one folder, on a thread of its own, that can be stopped at any time.

use std::net::{SocketAddr, TcpListener};
use std::path::Path;
use std::thread::JoinHandle;

use anyhow::{Context, Result};
use axum::{Router, middleware};
use tokio::runtime::{Builder, Runtime};
use tokio::sync::oneshot;
use tower_http::services::ServeDir;

use super::headers;

/// A running server. Dropping it stops it and closes every connection, as pulling the plug would.
#[derive(Debug)]
pub struct Server {
    address: SocketAddr,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves a folder on an open socket, below a path such as `/shop/tools`, or at the root where that is empty.
    ///
    /// # Errors
    /// The socket cannot be used.
    pub fn start(site: &Path, listener: TcpListener, below: &str) -> Result<Self> {
        listener.set_nonblocking(true).context("the socket cannot be used without blocking")?;
        let address = listener.local_addr()?;
        let runtime = Builder::new_current_thread().enable_all().build().context("cannot start the server's runtime")?;
        let routes = routes(site, below);
        let (stop, stopped) = oneshot::channel();
        let thread = std::thread::spawn(move || serve(&runtime, listener, routes, stopped));
        Ok(Self { address, stop: Some(stop), thread: Some(thread) })
    }

    /// Serves a folder on a free port of this machine alone.
    ///
    /// # Errors
    /// No port can be had.
    pub fn on_free_port(site: &Path, below: &str) -> Result<Self> {
        let listener = TcpListener::bind(("127.0.0.1", 0)).context("no port is free")?;
        Self::start(site, listener, below)
    }

    /// Where it listens.
    pub fn address(&self) -> SocketAddr {
        self.address
    }

    /// Waits until it ends by itself, which is never unless the socket breaks.
    ///
    /// # Errors
    /// The server's thread broke down.
    pub fn wait(mut self) -> Result<()> {
        let ended = self.thread.take().map_or(Ok(()), JoinHandle::join);
        ended.map_err(|_| anyhow::anyhow!("the server broke down"))
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        if let Some(stop) = self.stop.take() {
            let _ = stop.send(());
        }
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

fn serve(runtime: &Runtime, listener: TcpListener, routes: Router, stopped: oneshot::Receiver<()>) {
    runtime.block_on(async {
        match tokio::net::TcpListener::from_std(listener) {
            Ok(listener) => drop(tokio::spawn(async move { axum::serve(listener, routes).await })),
            Err(problem) => eprintln!("xtask: the socket cannot be served: {problem}"),
        }
        let _ = stopped.await;
    });
}

fn routes(site: &Path, below: &str) -> Router {
    // What the build packed lies beside each file; development builds are served plain.
    let files = ServeDir::new(site).precompressed_br().precompressed_gzip();
    let router = if below.is_empty() { Router::new().fallback_service(files) } else { Router::new().nest_service(below, files) };
    router.layer(middleware::from_fn(headers::add))
}

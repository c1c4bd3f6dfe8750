//! What went wrong behind the test's back, and what the page fetched.

use anyhow::{Context, Result};
use serde_json::Value;

use crate::Page;

impl Page {
    /// Says that messages with this text in them will come and are meant to.
    pub fn expect_message(&mut self, part: &str) {
        self.expected.push(part.to_owned());
    }

    /// Errors so far: thrown, logged, refused by the content policy, or not loaded; and every word of a panic.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn faults(&mut self) -> Result<Vec<String>> {
        let log = self.driver()?.browser_log().await.context("the browser's log cannot be read")?;
        let bad = log.into_iter().filter(|entry| entry.level == "SEVERE" || entry.message.contains("panicked"));
        self.seen.extend(bad.map(|entry| entry.message));
        let meant = |message: &&String| !self.expected.iter().any(|part| message.contains(part.as_str()));
        Ok(self.seen.iter().filter(meant).cloned().collect())
    }

    /// The addresses of all requests since the last call, the page's own and its service worker's as far as the page sees them.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn requests(&self) -> Result<Vec<String>> {
        let log = self.driver()?.get_log("performance").await.context("the network log cannot be read")?;
        Ok(log.iter().filter_map(|entry| requested(&entry.message)).collect())
    }

    /// Those of the requests since the last call that went to another origin.
    ///
    /// # Errors
    /// The browser does not answer.
    pub async fn requests_elsewhere(&mut self) -> Result<Vec<String>> {
        let requests = self.requests().await?;
        let address = self.site().address().to_owned();
        let origin: String = address.splitn(4, '/').take(3).collect::<Vec<_>>().join("/");
        // Blobs and data are made in the page; the browser's own pages have schemes of their own.
        let leaves = |url: &String| ["http", "ws", "ftp"].iter().any(|scheme| url.starts_with(scheme)) && !url.starts_with(&origin);
        Ok(requests.into_iter().filter(leaves).collect())
    }
}

fn requested(entry: &str) -> Option<String> {
    let entry: Value = serde_json::from_str(entry).ok()?;
    let message = entry.get("message")?;
    let sent = message.get("method")?.as_str()? == "Network.requestWillBeSent";
    sent.then(|| message.pointer("/params/request/url")?.as_str().map(str::to_owned))?
}

//! What the browser tests share: a served build, a browser, and one way to wait.

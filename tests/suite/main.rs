//! One binary for everything that needs no browser.

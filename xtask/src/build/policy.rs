//! The Content-Security-Policy: what the page may load, from where. In the page itself, so that every host has it, and as a header.

const DIRECTIVES: [&str; 10] = [
    "default-src 'none'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
];

/// The policy as it stands in the page. Who may frame the page cannot be said there.
pub fn page_policy() -> String {
    DIRECTIVES.join("; ")
}

/// The policy as a host should send it.
pub fn header_policy() -> String {
    format!("{}; frame-ancestors 'none'", page_policy())
}

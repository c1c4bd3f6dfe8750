//! The headers every answer carries: what may be loaded, and how long it may be kept.

use axum::extract::Request;
use axum::http::header::{self, HeaderName, HeaderValue};
use axum::middleware::Next;
use axum::response::Response;

use crate::build::{header_policy, is_hashed};

const FOREVER: &str = "public, max-age=31536000, immutable";
const ASK_AGAIN: &str = "no-cache";

/// Adds the headers to an answer. A file whose name carries its hash never changes; all others are asked for again.
pub(super) async fn add(request: Request, next: Next) -> Response {
    let hashed = is_hashed(request.uri().path());
    let mut response = next.run(request).await;
    let keep = if hashed && response.status().is_success() { FOREVER } else { ASK_AGAIN };
    let headers = response.headers_mut();
    if let Ok(policy) = HeaderValue::from_str(&header_policy()) {
        headers.insert(header::CONTENT_SECURITY_POLICY, policy);
    }
    // The same address answers plain, gzip or brotli, whichever the browser takes.
    headers.insert(header::VARY, HeaderValue::from_static("accept-encoding"));
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static(keep));
    headers.insert(header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(header::REFERRER_POLICY, HeaderValue::from_static("no-referrer"));
    headers.insert(HeaderName::from_static("cross-origin-opener-policy"), HeaderValue::from_static("same-origin"));
    response
}

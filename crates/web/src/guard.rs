//! What every request passes before it is answered, and every answer before it leaves.

use axum::extract::Request;
use axum::http::{HeaderMap, HeaderValue, Method, header};
use axum::middleware::Next;
use axum::response::Response;

use crate::door::told;
use crate::problem::{Kind, Problem};

/// Names of this machine that a browser may have typed.
const OWN_NAMES: [&str; 3] = ["127.0.0.1", "localhost", "[::1]"];

/// Nothing inline, nothing evaluated, nothing from elsewhere; drawings carry pictures as data.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; \
    img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// Refuses requests that were meant for another host, and changes asked for by another site.
pub(crate) async fn guard(request: Request, next: Next) -> Response {
    let path = request.uri().path().to_owned();
    if let Err(problem) =
        own_host(request.headers()).and_then(|()| same_site(request.method(), request.headers()))
    {
        return told(&path, problem);
    }
    next.run(request).await
}

/// Adds the headers that keep a page to itself.
pub(crate) async fn sealed(mut response: Response) -> Response {
    let headers = response.headers_mut();
    let all = [
        (header::CONTENT_SECURITY_POLICY, POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "same-origin"),
        (header::X_FRAME_OPTIONS, "DENY"),
    ];
    for (name, value) in all {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers.insert(
        "cross-origin-opener-policy",
        HeaderValue::from_static("same-origin"),
    );
    headers.insert(
        "cross-origin-resource-policy",
        HeaderValue::from_static("same-origin"),
    );
    headers
        .entry(header::CACHE_CONTROL)
        .or_insert(HeaderValue::from_static("no-store"));
    response
}

fn own_host(headers: &HeaderMap) -> Result<(), Problem> {
    let host = headers
        .get(header::HOST)
        .and_then(|host| host.to_str().ok())
        .unwrap_or_default();
    if OWN_NAMES.contains(&without_port(host)) {
        return Ok(());
    }
    Err(Problem::plain(
        Kind::Host,
        "Open the pages as 127.0.0.1 or localhost, on the machine that serves them.",
    ))
}

/// `localhost` of `localhost:7733`, `[::1]` of `[::1]:7733`.
fn without_port(host: &str) -> &str {
    match host.rsplit_once(':') {
        Some((name, port))
            if port.bytes().all(|byte| byte.is_ascii_digit()) && !name.ends_with(':') =>
        {
            name
        }
        _ => host,
    }
}

fn same_site(method: &Method, headers: &HeaderMap) -> Result<(), Problem> {
    if matches!(*method, Method::GET | Method::HEAD) {
        return Ok(());
    }
    let text = |name: &str| {
        headers
            .get(name)
            .map(|value| value.to_str().unwrap_or_default())
    };
    let host = text("host").unwrap_or_default();
    let own = match (text("sec-fetch-site"), text("origin")) {
        (Some(site), _) => matches!(site, "same-origin" | "none"),
        (None, Some(origin)) => origin.strip_prefix("http://") == Some(host),
        (None, None) => true,
    };
    if own {
        return Ok(());
    }
    Err(Problem::plain(
        Kind::Site,
        "Open the document on these pages and work it out from here.",
    ))
}

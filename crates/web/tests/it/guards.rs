//! What keeps the door: hosts, other sites, headers, limits.

use axum::body::Body;
use axum::http::{Method, StatusCode, header};
use web::{Options, ServeError, serve};

use crate::visit::{get, job, post, request, send};

const FORM: &str = "application/x-www-form-urlencoded";

async fn posted(path: &str, headers: &[(&str, &str)]) -> StatusCode {
    let mut asked = request(Method::POST, path).header(header::CONTENT_TYPE, "application/toml");
    for (name, value) in headers {
        asked = asked.header(*name, *value);
    }
    send(asked.body(Body::from(job("heron"))).expect("a request"))
        .await
        .status
}

#[tokio::test]
async fn every_answer_carries_the_headers_that_keep_it_to_itself() {
    for path in [
        "/",
        "/piece/heron",
        "/nowhere",
        "/asset/table.css",
        "/api/v1/schema",
        "/api/v1/nothing",
    ] {
        let answer = get(path).await;
        let policy = answer.header("content-security-policy");
        assert!(
            policy.contains("default-src 'none'") && policy.contains("frame-ancestors 'none'"),
            "{path}: {policy}"
        );
        assert!(!policy.contains("unsafe"), "{path}: {policy}");
        assert_eq!(answer.header("x-content-type-options"), "nosniff", "{path}");
    }
}

#[tokio::test]
async fn pages_hold_nothing_inline() {
    for path in [
        "/",
        "/piece/heron",
        "/piece/heron?customer=1",
        "/settings",
        "/materials",
    ] {
        let page = get(path).await;
        assert!(
            !page.text().contains(" style=\""),
            "{path} has an inline style"
        );
        assert!(
            !page.text().contains("<style"),
            "{path} has a style element"
        );
        assert!(
            !page.text().contains(" onclick"),
            "{path} has an inline handler"
        );
        assert_eq!(
            page.text().matches("<script").count(),
            page.text().matches("<script defer src=\"/asset/").count(),
            "{path}"
        );
    }
}

#[tokio::test]
async fn another_host_is_refused() {
    for (host, status) in [
        ("127.0.0.1:7733", StatusCode::OK),
        ("localhost:1", StatusCode::OK),
        ("[::1]:7733", StatusCode::OK),
        ("rebound.example:7733", StatusCode::MISDIRECTED_REQUEST),
        ("127.0.0.1.rebound.example", StatusCode::MISDIRECTED_REQUEST),
        ("localhost:7733:80", StatusCode::MISDIRECTED_REQUEST),
        ("", StatusCode::MISDIRECTED_REQUEST),
    ] {
        let asked = axum::http::Request::builder()
            .uri("/")
            .header(header::HOST, host);
        let answer = send(asked.body(Body::empty()).expect("a request")).await;
        assert_eq!(answer.status, status, "{host:?}");
    }
}

#[tokio::test]
async fn another_site_changes_nothing() {
    let path = "/api/v1/derive";
    assert_eq!(
        posted(path, &[]).await,
        StatusCode::OK,
        "a program sends neither header"
    );
    assert_eq!(
        posted(path, &[("sec-fetch-site", "same-origin")]).await,
        StatusCode::OK
    );
    assert_eq!(
        posted(path, &[("origin", "http://127.0.0.1:7733")]).await,
        StatusCode::OK
    );
    for headers in [
        [("sec-fetch-site", "cross-site")],
        [("sec-fetch-site", "same-site")],
        [("origin", "http://elsewhere.example")],
        [("origin", "null")],
    ] {
        assert_eq!(
            posted(path, &headers).await,
            StatusCode::FORBIDDEN,
            "{headers:?}"
        );
    }
}

#[tokio::test]
async fn a_body_past_the_limit_is_refused() {
    let long = "#".repeat((1 << 20) + 1);
    for (path, kind, body) in [
        ("/api/v1/derive", "application/toml", long.clone()),
        ("/piece/heron", FORM, format!("job={long}")),
        (
            "/open",
            "multipart/form-data; boundary=cut",
            format!(
                "--cut\r\ncontent-disposition: form-data; name=\"file\"\r\n\r\n{long}\r\n--cut--\r\n"
            ),
        ),
    ] {
        let answer = post(path, kind, body).await;
        assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE, "{path}");
        assert!(answer.text().contains("1 MiB"), "{path}: {}", answer.text());
    }
}

#[tokio::test]
async fn other_machines_are_not_served() {
    for address in ["0.0.0.0:0", "192.0.2.1:7733", "[::]:0"] {
        let options = Options {
            address: address.parse().expect("an address"),
            ..Options::default()
        };
        let refused = serve(options).await.expect_err("an open address");
        assert!(
            matches!(refused, ServeError::Open(_)),
            "{address}: {refused}"
        );
        assert!(refused.to_string().contains("127.0.0.1"), "{refused}");
    }
}

#[tokio::test]
async fn an_address_that_is_taken_is_named() {
    let taken = tokio::net::TcpListener::bind("127.0.0.1:0")
        .await
        .expect("a free port");
    let address = taken.local_addr().expect("its address");
    let refused = serve(Options {
        address,
        ..Options::default()
    })
    .await
    .expect_err("the port is taken");
    assert!(matches!(refused, ServeError::Listen { .. }), "{refused}");
    assert!(
        refused.to_string().contains(&address.to_string()),
        "{refused}"
    );
}

/// An asset is asked for once and then only whether it changed.
#[tokio::test]
async fn assets_are_kept_by_the_visitor() {
    let first = get("/asset/table.css").await;
    assert!(first.header("cache-control").contains("immutable"));
    let again = request(Method::GET, "/asset/table.css")
        .header(header::IF_NONE_MATCH, first.header("etag"));
    let again = send(again.body(Body::empty()).expect("a request")).await;
    assert_eq!(
        (again.status, again.bytes.len()),
        (StatusCode::NOT_MODIFIED, 0)
    );
}

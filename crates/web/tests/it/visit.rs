//! Asking the router without a network.

use std::sync::Arc;

use axum::Router;
use axum::body::Body;
use axum::http::{HeaderMap, Method, Request, StatusCode, header};
use http_body_util::BodyExt as _;
use pricing::RuleSet;
use serde_json::Value;
use tower::ServiceExt as _;
use trade::Catalogue;
use web::{Options, router};

/// An answer, read to its end.
pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub bytes: Vec<u8>,
}

impl Answer {
    pub fn text(&self) -> &str {
        std::str::from_utf8(&self.bytes).expect("text")
    }

    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.bytes).expect("JSON")
    }

    pub fn header(&self, name: &str) -> &str {
        self.headers
            .get(name)
            .map(|value| value.to_str().expect("text"))
            .unwrap_or_default()
    }

    /// The page's title.
    pub fn title(&self) -> &str {
        let text = self.text();
        let start = text.find("<title>").expect("a title") + "<title>".len();
        &text[start..start + text[start..].find('<').expect("its end")]
    }
}

/// The invented shop's wall.
pub fn options() -> Options {
    Options {
        demo: true,
        shop: demo::SHOP.name.to_owned(),
        catalogue: Catalogue::starter()
            .under(demo::CATALOGUE)
            .expect("the invented shop's costs"),
        prices: RuleSet::read(demo::PRICES).ok().map(Arc::new),
        ..Options::default()
    }
}

/// Asks a shop that was opened for this one question.
pub async fn send(request: Request<Body>) -> Answer {
    ask(&router(options()), request).await
}

/// Asks a shop that goes on: what it holds, it holds for the next question.
pub async fn ask(shop: &Router, request: Request<Body>) -> Answer {
    let response = shop.clone().oneshot(request).await.expect("an answer");
    let (parts, body) = response.into_parts();
    let bytes = body.collect().await.expect("a body").to_bytes().to_vec();
    Answer {
        status: parts.status,
        headers: parts.headers,
        bytes,
    }
}

pub fn request(method: Method, path: &str) -> axum::http::request::Builder {
    Request::builder()
        .method(method)
        .uri(path)
        .header(header::HOST, "127.0.0.1:7733")
}

pub async fn get(path: &str) -> Answer {
    send(
        request(Method::GET, path)
            .body(Body::empty())
            .expect("a request"),
    )
    .await
}

pub async fn post(path: &str, kind: &str, body: impl Into<Body>) -> Answer {
    let asked = request(Method::POST, path).header(header::CONTENT_TYPE, kind);
    send(asked.body(body.into()).expect("a request")).await
}

/// Posts the editor's form.
pub async fn form(path: &str, job: &str, good: &str) -> Answer {
    let body = format!("job={}&good={}", encoded(job), encoded(good));
    post(path, "application/x-www-form-urlencoded", body).await
}

/// Text as a form sends it.
pub fn encoded(text: &str) -> String {
    text.bytes()
        .map(|byte| {
            if byte.is_ascii_alphanumeric() {
                char::from(byte).to_string()
            } else {
                format!("%{byte:02X}")
            }
        })
        .collect()
}

/// The document of an invented job.
pub fn job(name: &str) -> &'static str {
    demo::job(name).expect("a job of the invented shop").toml
}

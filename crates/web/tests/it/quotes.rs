//! Quotes on pages and as PDF, what is asked beside a piece, and price lists looked at.

use axum::http::StatusCode;
use serde_json::{Value, json};

use crate::visit::{Answer, encoded, form, get, job, post};

const FORM: &str = "application/x-www-form-urlencoded";
const JSON: &str = "application/json";
const LIST: &str = include_str!("../../../../demo/lists/millrace.csv");
const MAPPING: &str = include_str!("../../../../demo/lists/millrace.mapping.toml");
const COSTS: &str = include_str!("../../../../demo/costs.toml");

async fn harbour(path: &str, more: &str) -> Answer {
    let first = encoded(job("harbour"));
    post(path, FORM, format!("job={first}&good={first}{more}")).await
}

/// A quote file of the harbour.
async fn quote() -> String {
    let body = json!({ "job": job("harbour"), "number": "Q-1", "on": "2026-11-25" });
    let given = post("/api/v1/quotes", JSON, body.to_string()).await.json();
    given["quote"].to_string()
}

/// The form of a price list, as it is sent.
pub fn price_list() -> String {
    multipart(&[("list", LIST), ("mapping", MAPPING)])
}

fn multipart(fields: &[(&str, &str)]) -> String {
    let part = |(name, text): &(&str, &str)| {
        let head = "Content-Disposition: form-data";
        format!("--seam\r\n{head}; name=\"{name}\"\r\n\r\n{text}\r\n")
    };
    let parts: Vec<String> = fields.iter().map(part).collect();
    parts.concat() + "--seam--\r\n"
}

async fn sent(path: &str, fields: &[(&str, &str)]) -> Answer {
    let kind = "multipart/form-data; boundary=seam";
    post(path, kind, multipart(fields)).await
}

#[tokio::test]
async fn the_controls_change_the_price_and_stay_ticked() {
    let plain = get("/piece/harbour").await;
    let text = plain.text();
    assert!(text.contains("Artists&#39; discount") || text.contains("Artists' discount"));
    assert!(
        !text.contains("name=\"rush\" value=\"1\" form=\"piece\" checked"),
        "{text}"
    );
    let asked = harbour("/piece/harbour", "&rush=1&discount=artist").await;
    let text = asked.text();
    assert!(
        text.contains("name=\"rush\" value=\"1\" form=\"piece\" checked"),
        "{text}"
    );
    assert!(
        text.contains("value=\"artist\" form=\"piece\" checked"),
        "{text}"
    );
    assert!(!text.contains("231.53 USD"), "the total changed");
    let shown = harbour("/piece/harbour?customer=1", "&rush=1&discount=artist").await;
    let text = shown.text();
    assert!(text.contains("<dt>Wanted within three days</dt>"), "{text}");
    assert!(text.contains("type=\"hidden\" name=\"rush\""), "carried on");
}

/// The page asks the same as the program does.
#[tokio::test]
async fn what_is_ticked_costs_what_the_api_says() {
    let body =
        json!({ "job": job("harbour"), "rush": true, "exempt": true, "discounts": ["artist"] });
    let priced = post("/api/v1/price", JSON, body.to_string()).await.json();
    let total = priced["totals"]["total"]["text"]
        .as_str()
        .expect("a total")
        .to_owned();
    let ticked = "&rush=1&discount=artist&exempt=1";
    let page = harbour("/piece/harbour", ticked).await;
    assert!(page.text().contains(&total), "{total}");
    let given = harbour("/piece/harbour/quote", &format!("{ticked}&number=Q-1")).await;
    assert!(
        given.text().contains(&format!("<b>{total}</b>")),
        "{total}: {}",
        given.text()
    );
    let besides = harbour("/alternatives", ticked).await;
    assert!(
        besides.text().contains(&format!("<b>{total}</b>")),
        "{total}"
    );
}

#[tokio::test]
async fn a_quote_is_given_and_needs_a_number_and_a_day() {
    let page = harbour("/piece/harbour/quote", "&number=Q-1&given=2026-11-25").await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text());
    assert_eq!(page.title(), "Quote Q-1 – Rabbet");
    assert!(
        page.text().contains("Given on 2026-11-25"),
        "{}",
        page.text()
    );
    let nameless = harbour("/piece/harbour/quote", "&number=+").await;
    assert_eq!(nameless.status, StatusCode::BAD_REQUEST);
    assert!(nameless.text().contains("go back and type one"));
    let dayless = harbour("/piece/harbour/quote", "&number=1&given=tomorrow").await;
    assert!(dayless.text().contains("write it as 2030-11-25"));
}

#[tokio::test]
async fn a_quote_is_taken_away_as_pdf_and_as_a_file() {
    let quote = quote().await;
    let body = format!("quote={}", encoded(&quote));
    for copy in ["copy=customer&paper=a4", "copy=shop&paper=letter"] {
        let page = post(&format!("/quote/quote.pdf?{copy}"), FORM, body.clone()).await;
        assert_eq!(page.status, StatusCode::OK, "{copy}");
        assert!(page.bytes.starts_with(b"%PDF-"), "{copy}");
        let same = post(&format!("/api/v1/quotes/pdf?{copy}"), JSON, quote.clone()).await;
        assert_eq!(same.header("content-type"), "application/pdf");
        assert!(same.bytes.starts_with(b"%PDF-"), "{copy}");
    }
    let file = post("/quote/quote.json", FORM, body).await;
    assert!(file.header("content-disposition").starts_with("attachment"));
    let again: Value = serde_json::from_slice(&file.bytes).expect("JSON");
    let before: Value = serde_json::from_str(&quote).expect("JSON");
    assert_eq!(again, before);
    let other = post("/api/v1/quotes/pdf?paper=a3", JSON, quote).await;
    assert!(other.text().contains("takes one of"), "{}", other.text());
}

#[tokio::test]
async fn an_opened_quote_tells_its_verdict() {
    let quote = quote().await;
    for fields in [
        [("file", quote.as_str()), ("pasted", "")],
        [("file", ""), ("pasted", quote.as_str())],
    ] {
        let page = sent("/quote", &fields).await;
        assert_eq!(page.status, StatusCode::OK, "{}", page.text());
        assert!(page.text().contains("The same today"), "{}", page.text());
        assert!(page.text().contains("<b>231.53 USD</b>"));
    }
    let mut changed: Value = serde_json::from_str(&quote).expect("JSON");
    changed["totals"]["total"] = json!("1.00 USD");
    let changed = changed.to_string();
    let refused = sent("/quote", &[("pasted", changed.as_str())]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        refused.text().contains("do not add up"),
        "{}",
        refused.text()
    );
    let nothing = sent("/quote", &[("file", ""), ("pasted", " ")]).await;
    assert!(nothing.text().contains("Choose a quote file"));
}

#[tokio::test]
async fn a_price_list_is_looked_at_row_by_row() {
    let fields = [
        ("list", LIST),
        ("mapping", MAPPING),
        ("catalogue", COSTS),
        ("on", "2026-11-25"),
    ];
    let json = sent("/api/v1/prices/lists", &fields).await.json();
    let rejected = json["rejected"].as_array().expect("rejected rows");
    assert_eq!(json["counts"]["rejected"], rejected.len(), "{json:#}");
    assert!(
        rejected
            .iter()
            .all(|row| row["reason"].as_str().is_some_and(|why| !why.is_empty()))
    );
    assert!(
        !rejected.is_empty() && json["counts"]["changed"].as_u64() > Some(0),
        "{json:#}"
    );
    let empty = sent("/api/v1/prices/lists", &fields[..2]).await.json();
    assert_eq!(
        empty["counts"]["changed"], 0,
        "held against nothing, all is new"
    );
}

#[tokio::test]
async fn all_faults_of_a_list_s_form_come_at_once() {
    let fields = [("mapping", "x = 1"), ("on", "soon"), ("colour", "red")];
    let problem = sent("/api/v1/prices/lists", &fields).await.json();
    let errors = problem["errors"].as_array().expect("errors");
    for wanted in ["/list", "/mapping", "/on", "/colour"] {
        assert!(
            errors.iter().any(|error| error["pointer"] == wanted),
            "{wanted}: {problem:#}"
        );
    }
    let plain = form("/api/v1/prices/lists", job("harbour"), "").await;
    assert_eq!(plain.status, StatusCode::UNSUPPORTED_MEDIA_TYPE);
}

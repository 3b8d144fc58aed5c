//! Prices: on the piece's page, to the customer, alternatives, a budget, quotes; and in the API.

use axum::body::Body;
use axum::http::{Method, StatusCode, header};
use serde_json::{Value, json};

use crate::visit::{Answer, ask, encoded, form, get, job, options, post, request};

const JSON: &str = "application/json";

async fn sent(path: &str, body: Value) -> Answer {
    post(path, JSON, body.to_string()).await
}

fn harbour() -> Value {
    json!({ "job": job("harbour"), "on": "2026-11-25" })
}

fn with(more: &Value) -> Value {
    let mut body = harbour();
    for (name, value) in more.as_object().expect("fields") {
        body[name] = value.clone();
    }
    body
}

#[tokio::test]
async fn the_piece_has_its_price_beside_its_sizes() {
    let page = get("/piece/harbour").await;
    let text = page.text();
    assert!(text.contains(r#"<h2 id="price">Price"#), "no price");
    assert!(text.contains("The shop's side"));
    assert!(text.contains("231.53 USD"), "the total");
    let part = form("/piece/harbour", job("harbour"), job("harbour")).await;
    assert!(part.text().contains("231.53 USD"), "also as it was sent");
}

#[tokio::test]
async fn the_customer_reads_the_price_and_no_cost() {
    let page = get("/piece/harbour?customer=1").await;
    let text = page.text();
    assert!(text.contains("231.53 USD"), "{text}");
    for word in ["Margin", "Labour", "Cost", "minutes", "Working of"] {
        assert!(!text.contains(word), "{word}: {text}");
    }
}

#[tokio::test]
async fn without_prices_the_page_says_how_to_give_them() {
    let unruled = web::Options {
        prices: None,
        ..options()
    };
    let asked = request(Method::GET, "/piece/harbour").body(Body::empty());
    let page = ask(&web::router(unruled), asked.expect("a request")).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.text().contains("rabbet serve --prices"));
    assert!(!page.text().contains("Propose changes"));
}

#[tokio::test]
async fn a_piece_without_costs_is_told_in_sentences() {
    let costless = web::Options {
        catalogue: trade::Catalogue::starter(),
        ..options()
    };
    let asked = request(Method::GET, "/piece/harbour").body(Body::empty());
    let page = ask(&web::router(costless), asked.expect("a request")).await;
    let text = page.text();
    assert!(
        text.contains("The margin is not known:"),
        "nothing is told of the costs"
    );
}

#[tokio::test]
async fn the_api_prices_a_job_in_minor_units() {
    let answer = sent("/api/v1/price", harbour()).await;
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.text());
    let json = answer.json();
    let total = &json["totals"]["total"];
    assert_eq!(total["minor"], 23_153, "as the command says: {json:#}");
    assert_eq!(total["text"], "231.53 USD");
    assert!(json.get("shop").is_none());
    let shops = sent(
        "/api/v1/price",
        with(&json!({ "shop": true, "include": "working" })),
    )
    .await;
    let json = shops.json();
    assert!(json["shop"]["margin"]["minor"].is_i64(), "{json:#}");
    let path = &json["totals"]["total"]["path"];
    let lines = json["working"].as_array().expect("the working");
    assert!(lines.iter().any(|line| line["path"] == *path), "{path}");
}

#[tokio::test]
async fn all_faults_of_an_order_come_at_once() {
    let body = json!({ "rush": "yes", "on": "tomorrow", "colour": "red", "ceiling": "1,00" });
    let answer = sent("/api/v1/budget", body).await;
    assert_eq!(answer.header("content-type"), "application/problem+json");
    let problem = answer.json();
    let errors = problem["errors"].as_array().expect("errors");
    let mut pointers: Vec<&str> = errors
        .iter()
        .filter_map(|error| error["pointer"].as_str())
        .collect();
    pointers.sort_unstable();
    assert_eq!(
        pointers,
        ["/ceiling", "/colour", "/job", "/on", "/rush"],
        "{problem:#}"
    );
}

#[tokio::test]
async fn alternatives_are_set_against_the_first() {
    let two = json!([
        { "name": "as asked", "job": job("harbour") },
        { "name": "pears", "job": job("pears") },
    ]);
    let body = json!({ "alternatives": two, "on": "2026-11-25" });
    let json = sent("/api/v1/alternatives", body).await.json();
    let total = |at: usize| json["alternatives"][at]["price"]["totals"]["total"]["minor"].as_i64();
    let difference = json["alternatives"][1]["difference"]["minor"].as_i64();
    assert_eq!(
        difference,
        total(1).zip(total(0)).map(|(one, other)| one - other),
        "{json:#}"
    );
    assert!(
        json["alternatives"][1]["differs"]
            .as_array()
            .is_some_and(|differs| !differs.is_empty())
    );
}

#[tokio::test]
async fn a_proposal_comes_with_the_document_that_costs_it() {
    let asked = with(&json!({ "ceiling": "226.00 USD" }));
    let json = sent("/api/v1/budget", asked).await.json();
    let first = &json["proposals"][0];
    let again = json!({ "job": first["toml"], "on": "2026-11-25" });
    let priced = sent("/api/v1/price", again).await.json();
    assert_eq!(priced["totals"]["total"]["minor"], first["total"]["minor"]);
    assert!(first["total"]["minor"].as_i64() <= Some(22_600), "{json:#}");
}

#[tokio::test]
async fn a_quote_given_opens_the_same_and_a_changed_one_does_not() {
    let asked = with(&json!({ "number": "Q-1" }));
    let given = sent("/api/v1/quotes", asked).await.json();
    let quote = given["quote"].clone();
    let opened = sent("/api/v1/quotes/open", quote.clone()).await.json();
    assert_eq!(opened["verdict"]["word"], "same", "{opened:#}");
    assert_eq!(opened["total"]["minor"], 23_153);
    let mut changed = quote;
    changed["totals"]["total"] = json!("1.00 USD");
    let refused = sent("/api/v1/quotes/open", changed).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        refused.text().contains("do not add up"),
        "{}",
        refused.text()
    );
}

#[tokio::test]
async fn a_rule_set_is_looked_over() {
    let own = sent("/api/v1/prices/check", json!({ "on": "2026-09-01" })).await;
    assert_eq!(own.json()["faults"], json!([]), "{}", own.text());
    let broken = json!({ "rules": "prices = 1\nname = 3\n" });
    let answer = sent("/api/v1/prices/check", broken).await;
    assert_eq!(answer.json()["errors"][0]["pointer"], "/rules");
}

#[tokio::test]
async fn a_budget_is_proposed_as_buttons_that_return_the_document() {
    let body = format!("job={}&ceiling=226", encoded(job("harbour")));
    let page = post("/piece/harbour/budget", FORM, body).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text());
    assert!(page.text().contains("Take this for "), "{}", page.text());
    let words = format!("job={}&ceiling=a+lot", encoded(job("harbour")));
    let refused = post("/piece/harbour/budget", FORM, words).await;
    assert!(refused.text().contains("write it as 180.00 USD"));
}

const FORM: &str = "application/x-www-form-urlencoded";

#[tokio::test]
async fn alternatives_stand_side_by_side_and_one_is_left_out() {
    let first = encoded(job("harbour"));
    let body = format!("job={first}&good={first}&moulding=walnut-1");
    let page = post("/alternatives", FORM, body).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text());
    assert!(page.text().contains("Alternative 2"));
    assert_eq!(
        page.header(header::CONTENT_TYPE.as_str()),
        "text/html; charset=utf-8"
    );
    let two = format!("job={first}&job={}&leave=1", encoded(job("pears")));
    let page = post("/alternatives", FORM, two).await;
    assert!(!page.text().contains("Alternative 2"), "{}", page.text());
}

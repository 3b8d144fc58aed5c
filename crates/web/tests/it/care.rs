//! Care: questions and their answers, advice and its cures, on pages and in the API.

use axum::http::StatusCode;

use crate::visit::{encoded, form, get, job, post};

const TOML: &str = "application/toml";

#[tokio::test]
async fn a_question_is_answered_with_values_trust_and_paths() {
    let answer = get("/api/v1/light/fade?medium=watercolour&lux=150&hours=8&include=working").await;
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.text());
    let json = answer.json();
    let years = &json["answer"]["years"];
    assert!(
        years["low"]["value"].as_f64() < years["high"]["value"].as_f64(),
        "{years}"
    );
    assert!(
        years["trust"]
            .as_str()
            .is_some_and(|trust| !trust.is_empty()),
        "{years}"
    );
    let path = &years["paths"][0];
    let lines = json["working"].as_array().expect("the working");
    assert!(lines.iter().any(|line| line["path"] == *path), "{path}");
}

#[tokio::test]
async fn loads_come_with_their_caution() {
    let answer = get("/api/v1/hang/wire?weight=20+lb&rings=20&rise=3")
        .await
        .json();
    assert_eq!(answer["answer"]["angle"]["text"], "16.7°");
    assert!(
        answer["cautions"]
            .as_array()
            .is_some_and(|told| !told.is_empty()),
        "{answer}"
    );
}

#[tokio::test]
async fn all_faults_of_a_question_come_at_once_with_pointers() {
    let answer =
        get("/api/v1/hang/wire?weight=20&rings=16+7/&rise=3&colour=red&rise=4&units=ell").await;
    assert_eq!(answer.status, StatusCode::BAD_REQUEST);
    assert_eq!(answer.header("content-type"), "application/problem+json");
    let problem = answer.json();
    let errors = problem["errors"].as_array().expect("errors");
    let pointers: Vec<&str> = errors
        .iter()
        .filter_map(|error| error["pointer"].as_str())
        .collect();
    assert_eq!(
        pointers,
        ["/colour", "/rise", "/units", "/weight", "/rings"],
        "{problem:#}"
    );
}

#[tokio::test]
async fn unknown_questions_of_a_piece_are_refused() {
    for path in [
        "/api/v1/advice?why=1",
        "/api/v1/weight?a=b",
        "/api/v1/advice/cure?fix=1",
    ] {
        let answer = post(path, TOML, job("heron")).await;
        assert_eq!(
            answer.status,
            StatusCode::BAD_REQUEST,
            "{path}: {}",
            answer.text()
        );
        assert_eq!(answer.json()["errors"][0]["code"], "query.unknown");
    }
}

#[tokio::test]
async fn every_piece_is_advised_weighed_and_placed() {
    for piece in demo::JOBS {
        for path in ["/api/v1/advice", "/api/v1/weight", "/api/v1/place"] {
            let answer = post(path, TOML, piece.toml).await;
            assert_eq!(
                answer.status,
                StatusCode::OK,
                "{path} {}: {}",
                piece.name,
                answer.text()
            );
        }
    }
}

/// Every cure that is offered on any piece of the shop really takes its advice away.
#[tokio::test]
async fn every_cure_cures() {
    let mut tried = 0;
    for piece in demo::JOBS {
        let advice = post("/api/v1/advice", TOML, piece.toml).await.json();
        for advice in advice["advice"].as_array().expect("advice") {
            for cure in advice["cures"].as_array().into_iter().flatten() {
                let name = cure["cure"].as_str().expect("a name");
                cures(piece, name).await;
                tried += 1;
            }
        }
    }
    assert!(
        tried > 2,
        "only {tried} cures stand on the wall to be tried"
    );
}

/// Applies a cure, its name written as a form writes it.
async fn cures(piece: &demo::DemoJob, name: &str) {
    let path = format!("/api/v1/advice/cure?cure={}", name.replace(':', "%3A"));
    let answer = post(&path, TOML, piece.toml).await;
    assert_eq!(answer.status, StatusCode::OK, "{name}: {}", answer.text());
    let cured = answer.json();
    assert_eq!(cured["cured"]["is_gone"], true, "{}: {name}", piece.name);
    let toml = cured["toml"].as_str().expect("TOML").to_owned();
    let again = post("/api/v1/derive", TOML, toml).await;
    assert_eq!(again.status, StatusCode::OK, "{}", again.text());
}

#[tokio::test]
async fn a_cure_asked_twice_is_refused() {
    let path = "/api/v1/advice/cure?cure=light.uv:1&cure=light.uv:2";
    let answer = post(path, TOML, job("heron")).await;
    assert_eq!(answer.status, StatusCode::BAD_REQUEST);
    assert!(answer.text().contains("ask it once"), "{}", answer.text());
}

#[tokio::test]
async fn a_cure_nobody_offers_is_refused_with_those_there_are() {
    let answer = post("/api/v1/advice/cure?cure=light.uv:99", TOML, job("heron")).await;
    assert_eq!(answer.status, StatusCode::BAD_REQUEST);
    assert!(
        answer.json()["detail"]
            .as_str()
            .is_some_and(|told| told.contains("light.uv:99"))
    );
}

#[tokio::test]
async fn care_shows_every_question_and_each_is_answered() {
    let index = get("/care").await;
    assert_eq!(index.status, StatusCode::OK);
    let text = index.text();
    for question in &web::care::QUESTIONS {
        let path = format!("/care/{}/{}", question.noun, question.verb);
        assert!(text.contains(&format!("action=\"{path}\"")), "{path}");
        let form = get(&path).await;
        assert_eq!(form.status, StatusCode::OK, "{path}");
        let pairs: Vec<String> = question
            .example
            .iter()
            .map(|(name, text)| format!("{name}={}", encoded(text)))
            .collect();
        let answer = get(&format!("{path}?{}", pairs.join("&"))).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}: {}", answer.text());
        assert!(answer.text().contains("id=\"found\""), "{path}");
    }
}

#[tokio::test]
async fn what_is_typed_stays_and_its_fault_stands_beside_it() {
    let page = get("/care/hang/wire?weight=heavy&rings=%3Cscript%3E&rise=3&units=in").await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    let text = page.text();
    assert!(text.contains("<title>Error: "), "{text}");
    assert!(
        text.contains("value=\"heavy\"") && text.contains("&lt;script&gt;"),
        "{text}"
    );
    assert!(!text.contains("<script>"), "{text}");
    assert!(
        text.contains("href=\"#hang-wire-weight\"")
            && text.contains("id=\"hang-wire-weight-fault\"")
    );
}

#[tokio::test]
async fn a_question_nobody_asks_is_no_page() {
    assert_eq!(get("/care/hang/rope").await.status, StatusCode::NOT_FOUND);
    assert_eq!(
        get("/care/hang/wire?colour=red").await.status,
        StatusCode::BAD_REQUEST
    );
}

/// With scripting off: the button posts the document, which comes back changed and can be undone.
#[tokio::test]
async fn a_cure_comes_back_in_the_editor() {
    let document = job("heron").to_owned();
    let advice = post("/api/v1/advice", TOML, document.clone()).await.json();
    let cures = advice["advice"].as_array().expect("advice").iter();
    let cure = cures
        .flat_map(|advice| advice["cures"].as_array().cloned().unwrap_or_default())
        .next()
        .expect("a cure for the heron");
    let name = cure["cure"].as_str().expect("a name");
    let page = form(&format!("/piece/heron/cure?cure={name}"), &document, "").await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text());
    let text = page.text();
    let sentence = cure["sentence"]
        .as_str()
        .expect("a sentence")
        .replace('"', "&quot;");
    assert!(text.contains(&format!("Done: {sentence}.")), "{text}");
    assert!(
        text.contains("is cured") && text.contains(&format!("Undo: {sentence}")),
        "{text}"
    );
    let typo = form("/piece/heron/cure?cure=no.such:1", &document, "").await;
    assert_eq!(typo.status, StatusCode::BAD_REQUEST);
}

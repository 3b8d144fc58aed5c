//! The API: shapes, refusals, and its own description.

use axum::http::{Method, StatusCode};
use serde_json::{Value, json};
use web::API;

use crate::visit::{Answer, encoded, get, job, post, request, send};

const TOML: &str = "application/toml";
const JSON: &str = "application/json";

/// The answer as a problem object, once its shape is as RFC 9457 and the description say.
fn problem(answer: &Answer, kind: &str) -> Value {
    assert_eq!(answer.header("content-type"), "application/problem+json");
    let problem = answer.json();
    assert_eq!(
        problem["type"],
        format!("urn:rabbet:problem:{kind}"),
        "{problem}"
    );
    assert_eq!(problem["status"], answer.status.as_u16());
    for word in ["title", "detail"] {
        assert!(
            problem[word].as_str().is_some_and(|text| !text.is_empty()),
            "{problem}"
        );
    }
    for error in problem["errors"].as_array().expect("a list") {
        for word in ["pointer", "code", "detail"] {
            assert!(error[word].is_string(), "{error}");
        }
    }
    problem
}

#[tokio::test]
async fn sizes_come_as_quanta_and_text() {
    let sizes = post("/api/v1/derive", TOML, job("poppies")).await;
    assert_eq!(sizes.status, StatusCode::OK);
    let sizes = sizes.json();
    let width = &sizes["outside"]["width"];
    // geometry: 1 in is 406 400 quanta of 1/16 000 mm
    assert_eq!(
        width["quanta"].as_i64().expect("whole") * 2,
        37 * 406_400,
        "{width}"
    );
    assert_eq!(width["text"], "18 1/2 in (469.9 mm)");
    assert!(sizes.get("working").is_none(), "the working is asked for");
    let whole = post("/api/v1/derive?include=working", TOML, job("poppies"))
        .await
        .json();
    assert!(
        whole["working"]
            .as_array()
            .is_some_and(|lines| lines.len() > 20)
    );
}

/// JSON of a job gives the same sizes as its TOML.
#[tokio::test]
async fn both_forms_of_a_document_give_the_same_sizes() {
    for piece in demo::JOBS {
        let job = trade::Job::read(piece.toml.as_bytes()).expect("it reads");
        let from_toml = post("/api/v1/derive", TOML, piece.toml).await;
        let from_json = post("/api/v1/derive", JSON, job.to_json().to_string()).await;
        assert_eq!(from_toml.status, StatusCode::OK, "{}", piece.name);
        assert_eq!(from_toml.json(), from_json.json(), "{}", piece.name);
    }
}

#[tokio::test]
async fn all_faults_come_at_once() {
    let document = job("poppies")
        .replacen("width = \"", "width = \"x", 1)
        .replacen("height = \"", "height = \"y", 1);
    let answer = post("/api/v1/derive", TOML, document).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    let problem = problem(&answer, "document");
    let errors = problem["errors"].as_array().expect("a list");
    assert!(errors.len() >= 2, "{problem}");
    assert!(
        errors.iter().all(|error| error["line"].is_u64()),
        "{problem}"
    );
}

#[tokio::test]
async fn a_missing_material_is_a_fault_of_the_piece() {
    let document = job("poppies").replacen("board = \"", "board = \"no-such-", 1);
    let answer = post("/api/v1/derive", TOML, document).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    let problem = problem(&answer, "piece");
    assert_eq!(problem["errors"][0]["severity"], "stop", "{problem}");
}

/// A question with the status and the kind of problem it is answered with.
type Bad = (&'static str, &'static str, &'static str, u16, &'static str);

const BAD: [Bad; 10] = [
    ("/api/v1/derive", "image/png", "x", 415, "media"),
    ("/api/v1/derive", JSON, "rabbet = 1", 415, "media"),
    ("/api/v1/derive", TOML, "{}", 415, "media"),
    ("/api/v1/derive?include=all", TOML, "", 400, "input"),
    ("/api/v1/derive", TOML, "", 422, "document"),
    ("/api/v1/derive", JSON, "{", 422, "document"),
    ("/api/v1/ticket?paper=papyrus", TOML, "", 400, "input"),
    ("/api/v1/drawings/side", TOML, "", 404, "address"),
    ("/api/v1/schema", TOML, "", 405, "method"),
    ("/api/v1/nothing", TOML, "", 404, "address"),
];

#[tokio::test]
async fn bad_questions_are_told_what_would_do() {
    for (path, kind, body, status, name) in BAD {
        let answer = post(path, kind, body).await;
        assert_eq!(
            answer.status,
            status,
            "{path} {kind} {body:?}: {}",
            answer.text()
        );
        problem(&answer, name);
    }
}

/// Numbers far outside any workshop are refused in words, never by a fault of the program.
#[tokio::test]
async fn numbers_without_measure_are_refused_or_worked_out() {
    for width in [
        "99999999999999999999 in",
        "9000000000000 mm",
        "0",
        "-4",
        "1/99999999999",
        "1e400",
        "576460752303 mm",
    ] {
        let document = job("poppies");
        let at = document.find("width = \"").expect("a width") + "width = \"".len();
        let end = at + document[at..].find('"').expect("its end");
        let document = format!("{}{width}{}", &document[..at], &document[end..]);
        for path in [
            "/api/v1/derive",
            "/api/v1/drawings/elevation",
            "/api/v1/drawings/section",
        ] {
            let answer = post(path, TOML, document.clone()).await;
            assert!(
                answer.status != StatusCode::INTERNAL_SERVER_ERROR,
                "{path} {width}: {}",
                answer.text()
            );
        }
    }
}

#[tokio::test]
async fn drawings_and_ticket_are_files() {
    for view in ["elevation", "section", "back"] {
        for ink in ["", "?ink=one"] {
            let drawing = post(&format!("/api/v1/drawings/{view}{ink}"), TOML, job("heron")).await;
            assert_eq!(
                (drawing.status, drawing.header("content-type")),
                (StatusCode::OK, "image/svg+xml"),
                "{view}"
            );
            roxmltree::Document::parse(drawing.text()).expect("well-formed");
        }
    }
    for paper in ["a4", "letter"] {
        let ticket = post(&format!("/api/v1/ticket?paper={paper}"), TOML, job("heron")).await;
        assert_eq!(
            (ticket.status, ticket.header("content-type")),
            (StatusCode::OK, "application/pdf")
        );
        assert!(ticket.bytes.starts_with(b"%PDF-"));
    }
}

#[tokio::test]
async fn lists_are_whole() {
    let settings = get("/api/v1/settings?units=mm").await.json();
    assert_eq!(
        settings["settings"].as_array().expect("a list").len(),
        trade::settings::KEYS.len()
    );
    let materials = get("/api/v1/materials").await.json();
    assert_eq!(
        materials["materials"].as_array().expect("a list").len(),
        trade::Catalogue::starter().iter().count()
    );
    let schema = get("/api/v1/schema").await.json();
    assert_eq!(schema, trade::Job::schema());
}

/// Every address in the description is answered in the way it says, and every one that is answered is described.
#[tokio::test]
async fn the_description_and_the_routes_are_the_same() {
    let description = get("/api/v1/openapi.json").await.json();
    assert_eq!(description["openapi"], "3.1.0");
    let paths = description["paths"].as_object().expect("paths");
    let mut described: Vec<(String, String)> = paths
        .iter()
        .flat_map(|(path, ways)| {
            ways.as_object()
                .expect("ways")
                .keys()
                .map(|way| (way.clone(), path.clone()))
        })
        .collect();
    let mut served: Vec<(String, String)> = API
        .iter()
        .map(|(way, path)| ((*way).to_owned(), (*path).to_owned()))
        .collect();
    described.sort();
    served.sort();
    assert_eq!(described, served);
    for (way, path) in API {
        let method: Method = way.to_uppercase().parse().expect("a method");
        let (kind, body) = match *path {
            "/api/v1/cuts" => (TOML, demo::CUT_LIST.to_owned()),
            "/api/v1/prices/lists" => (SEAMED, crate::quotes::price_list()),
            "/api/v1/cuts/jobs" => (JSON, json!({ "jobs": [job("heron")] }).to_string()),
            _ => match priced(path).await {
                Some(body) => (JSON, body),
                None => (TOML, job("heron").to_owned()),
            },
        };
        let address = format!("{}{}", path.replace("{view}", "section"), asked_of(path));
        let asked = request(method, &address).header("content-type", kind);
        let answer = send(asked.body(body.into()).expect("a request")).await;
        assert_eq!(answer.status, StatusCode::OK, "{way} {path}");
    }
}

const SEAMED: &str = "multipart/form-data; boundary=seam";

/// What an address about prices is sent.
async fn priced(path: &str) -> Option<String> {
    let (job, on) = (job("harbour"), "2026-11-25");
    let quote = json!({ "job": job, "on": on, "number": "Q-1" });
    let body = match path {
        "/api/v1/price" => json!({ "job": job, "on": on }),
        "/api/v1/alternatives" => json!({ "alternatives": [{ "name": "one", "job": job }] }),
        "/api/v1/budget" => json!({ "job": job, "ceiling": "226.00 USD" }),
        "/api/v1/quotes" => quote,
        "/api/v1/quotes/open" | "/api/v1/quotes/pdf" => {
            let given = post("/api/v1/quotes", JSON, quote.to_string()).await;
            given.json()["quote"].clone()
        }
        "/api/v1/prices/check" => json!({ "on": on }),
        _ => return None,
    };
    Some(body.to_string())
}

/// What an address must be asked, behind its question mark.
fn asked_of(path: &str) -> String {
    if path == "/api/v1/advice/cure" {
        return "?cure=1".to_owned();
    }
    let mut questions = web::care::QUESTIONS.iter();
    let own = questions.find(|one| path == format!("/api/v1/{}/{}", one.noun, one.verb));
    let pairs = own.map(|question| {
        let pairs = question.example.iter();
        let pairs: Vec<String> = pairs
            .map(|(name, text)| format!("{name}={}", encoded(text)))
            .collect();
        format!("?{}", pairs.join("&"))
    });
    pairs.unwrap_or_default()
}

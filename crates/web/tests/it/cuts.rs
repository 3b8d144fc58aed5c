//! Plans: the Bench's pages and the API, from jobs, lists and instances.

use axum::Router;
use axum::http::{Method, StatusCode, header};
use cutting::{Plan, Problem, document, lengths, sheets};
use serde_json::{Value, json};
use web::router;

use crate::visit::{Answer, ask, encoded, job, options, post, request};

const FORM: &str = "application/x-www-form-urlencoded";
const JSON: &str = "application/json";
const TOML: &str = "application/toml";

async fn get(shop: &Router, path: &str) -> Answer {
    let asked = request(Method::GET, path).body(axum::body::Body::empty());
    ask(shop, asked.expect("a request")).await
}

async fn sent(shop: &Router, path: &str, body: String) -> Answer {
    let asked = request(Method::POST, path).header(header::CONTENT_TYPE, FORM);
    ask(shop, asked.body(body.into()).expect("a request")).await
}

/// Plans these jobs; returns the address of the plan.
async fn planned(shop: &Router, jobs: &[&str]) -> String {
    let jobs: Vec<String> = jobs.iter().map(|job| format!("job={job}")).collect();
    let answer = sent(shop, "/bench", format!("{}&seconds=1", jobs.join("&"))).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text());
    answer.header("location").to_owned()
}

#[tokio::test]
async fn the_bench_lists_every_open_job_ticked() {
    let page = crate::visit::get("/bench").await;
    assert_eq!(page.status, StatusCode::OK);
    for piece in demo::JOBS {
        let ticked = format!("value=\"{}\" checked", piece.name);
        assert!(page.text().contains(&ticked), "{}", piece.name);
    }
    let none = crate::visit::get("/bench?ticked=none").await;
    assert!(!none.text().contains(" checked"), "none is ticked");
}

#[tokio::test]
async fn a_shop_without_a_book_says_so_and_offers_the_list() {
    let shop = router(web::Options::default());
    let page = get(&shop, "/bench").await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.text().contains("There is no book yet"));
    assert!(page.text().contains("href=\"/bench/list\""));
    let answer = sent(&shop, "/bench", "job=heron&seconds=1".to_owned()).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn a_plan_shows_every_material_and_every_cut() {
    let shop = router(options());
    let address = planned(&shop, &["heron", "harbour"]).await;
    let plan = get(&shop, &address).await;
    assert_eq!(plan.status, StatusCode::OK);
    for part in [
        "Not in this plan",
        "Plans are not kept yet",
        "proven",
        "= stock",
    ] {
        assert!(plan.text().contains(part), "the plan lacks {part}");
    }
    let materials = plan.text().matches("<h2><a href=").count();
    assert!(materials > 4, "{materials} materials");
    for number in 1..=materials {
        let page = get(&shop, &format!("{address}/{number}")).await;
        assert_eq!(page.status, StatusCode::OK, "material {number}");
        let text = page.text();
        let leaves = text.matches("<section class=\"leaf\"").count();
        assert!(leaves > 0, "material {number} has sticks or sheets");
        assert_eq!(
            text.matches("role=\"img\"").count(),
            leaves,
            "each is drawn"
        );
        assert_eq!(
            text.matches(", in words</summary>").count(),
            leaves,
            "and told in words"
        );
        assert!(text.matches("= stock").count() >= leaves, "and adds up");
        let next = format!("href=\"{address}/{}\"", number + 1);
        assert_eq!(
            text.contains(&next),
            number < materials,
            "the next one follows"
        );
    }
    for beyond in ["0", "99", "x", "-1"] {
        let page = get(&shop, &format!("{address}/{beyond}")).await;
        assert_eq!(page.status, StatusCode::NOT_FOUND, "{beyond}");
    }
}

/// Labels of remnants and the sum are the same on the page and in the PDF: both show one plan.
#[tokio::test]
async fn the_cut_sheets_are_of_the_plan_on_the_page() {
    let shop = router(options());
    let address = planned(&shop, &["gable"]).await;
    for paper in ["a4", "letter"] {
        let sheets = get(&shop, &format!("{address}/cut-sheets.pdf?paper={paper}")).await;
        assert_eq!(sheets.status, StatusCode::OK, "{paper}");
        assert_eq!(sheets.header("content-type"), "application/pdf");
        assert!(sheets.bytes.starts_with(b"%PDF-"));
    }
    let wrong = get(&shop, &format!("{address}/cut-sheets.pdf?paper=papyrus")).await;
    assert_eq!(wrong.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn a_plan_nobody_holds_is_not_found() {
    for path in [
        "/bench/plan/none",
        "/bench/plan/none/1",
        "/bench/plan/none/cut-sheets.pdf",
    ] {
        let page = crate::visit::get(path).await;
        assert_eq!(page.status, StatusCode::NOT_FOUND, "{path}");
        assert!(page.text().contains("plan again"), "{path}");
    }
}

#[tokio::test]
async fn faults_of_the_form_are_told_beside_their_fields_and_nothing_is_lost() {
    for (body, told) in [
        ("seconds=5", "tick at least one job"),
        ("job=none-such&seconds=5", "tick at least one job"),
        ("job=heron&seconds=0", "from 1 to 30"),
        ("job=heron&seconds=31", "from 1 to 30"),
        ("job=heron&seconds=a+while", "from 1 to 30"),
        ("job=heron", "from 1 to 30"),
    ] {
        let page = post("/bench", FORM, body).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{body}");
        assert!(page.title().starts_with("Error: "), "{}", page.title());
        assert_eq!(
            page.text().matches(told).count(),
            2,
            "{body}: on top and beside"
        );
        assert_eq!(
            page.text().contains("value=\"heron\" checked"),
            body.contains("heron")
        );
    }
    let page = post("/bench", FORM, "job=heron&seconds=a+while").await;
    assert!(
        page.text().contains("value=\"a while\""),
        "what was typed stays"
    );
}

#[tokio::test]
async fn the_example_of_the_list_is_planned_as_it_stands() {
    let shop = router(options());
    let page = get(&shop, "/bench/list").await;
    assert!(page.text().contains("[[piece]]"), "the example is there");
    let body = format!("list={}&seconds=1", encoded(demo::CUT_LIST));
    let answer = sent(&shop, "/bench/list", body).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text());
    let plan = get(&shop, answer.header("location")).await;
    assert!(plan.text().contains("birch plywood"));
}

#[tokio::test]
async fn a_list_that_cannot_be_planned_keeps_its_typing() {
    for (list, told) in [
        ("[[piece]]\nname = \"a\"\nlength = \"8 fot\"\n", "Line 3"),
        (
            "[[piece]]\nlength = \"9 ft\"\n[[stick]]\nlength = \"8 ft\"\n",
            "larger than any stock",
        ),
        ("", "nothing to cut"),
        (
            "{\"name\": \"x\"",
            "the text ends before its brackets are closed",
        ),
        ("[]", "nothing to cut"),
        (
            "{\"name\":\"x\",\"dim\":1,\"stock\":[{\"id\":\"s\",\"l\":5}],\"pieces\":[{\"id\":\"p\",\"l\":9}]}",
            "p",
        ),
        ("<script>alert(1)</script>", "Line 1"),
    ] {
        let page = post(
            "/bench/list",
            FORM,
            format!("list={}&seconds=1", encoded(list)),
        )
        .await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{list}");
        assert!(page.title().starts_with("Error: "), "{list}");
        assert!(page.text().contains(told), "{list}: {told}");
        let typed = list
            .replace('&', "&amp;")
            .replace('<', "&lt;")
            .replace('>', "&gt;");
        assert!(
            page.text().contains(&typed.replace('"', "&quot;")),
            "{list} stays"
        );
        assert!(!page.text().contains("<script>alert"), "typing stays text");
    }
}

/// By hand: 6 + 4 fill a stick of 10, so four pieces take two sticks and no plan takes fewer.
fn of_sticks(name: &str) -> Value {
    json!({
        "format": "cutting-instance/1", "name": name, "dim": 1,
        "stock": [{ "id": "ten", "l": 10 }],
        "pieces": [{ "id": "six", "l": 6, "qty": 2 }, { "id": "four", "l": 4, "qty": 2 }],
    })
}

/// By hand: two halves of the sheet.
fn of_sheets(name: &str) -> Value {
    json!({
        "format": "cutting-instance/1", "name": name, "dim": 2,
        "stock": [{ "id": "sheet", "w": 10, "h": 8 }],
        "pieces": [{ "id": "half", "w": 5, "h": 8, "qty": 4 }],
    })
}

#[tokio::test]
async fn an_instance_comes_back_as_a_plan_that_holds() {
    for instance in [of_sticks("by hand"), of_sheets("by hand")] {
        let answer = post("/api/v1/cuts?seconds=1", JSON, instance.to_string()).await;
        assert_eq!(answer.status, StatusCode::OK, "{}", answer.text());
        let plan = answer.json();
        assert_eq!(plan["format"], "cutting-plan/1");
        assert_eq!((&plan["objective"], &plan["bound"]), (&json!(2), &json!(2)));
        let read = document::read(&instance.to_string()).expect("an instance");
        let plans = document::read_plans(answer.text(), &read).expect("a plan");
        let held = match (&read[0].problem, &plans[0].plan) {
            (Problem::Lengths(problem), Plan::Lengths(plan)) => lengths::check(problem, plan),
            (Problem::Sheets(problem), Plan::Sheets(plan)) => sheets::check(problem, plan),
            _ => panic!("a plan of the other kind"),
        };
        assert!(held.is_ok(), "{held:?}");
    }
}

#[tokio::test]
async fn a_set_comes_back_whole_and_the_same_for_the_same_effort_and_seed() {
    let set = json!({
        "format": "cutting-set/1",
        "instances": [of_sticks("one"), of_sheets("two")],
    });
    let path = "/api/v1/cuts?effort=200000&seed=7";
    let first = post(path, JSON, set.to_string()).await;
    assert_eq!(first.status, StatusCode::OK, "{}", first.text());
    assert_eq!(first.json()["format"], "cutting-plans/1");
    assert_eq!(first.json()["plans"].as_array().map(Vec::len), Some(2));
    let again = post(path, JSON, set.to_string()).await;
    assert_eq!(first.text(), again.text());
}

#[tokio::test]
async fn a_cut_list_comes_back_with_the_step_it_is_counted_in() {
    let answer = post("/api/v1/cuts?seconds=1", TOML, demo::CUT_LIST).await;
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.text());
    let plans = answer.json();
    let plans = plans["plans"].as_array().expect("one for each material");
    assert_eq!(plans.len(), 2);
    assert!(
        plans.iter().all(|plan| plan["unit"].is_string()),
        "{plans:?}"
    );
}

#[tokio::test]
async fn whole_jobs_come_back_settled_in_lengths() {
    let heron = trade::Job::read(job("heron").as_bytes()).expect("a job");
    let order = json!({ "jobs": [job("harbour"), heron.to_json()], "stock": demo::STOCK });
    let answer = post("/api/v1/cuts/jobs?seconds=1", JSON, order.to_string()).await;
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.text());
    let day = answer.json();
    assert_eq!(day["jobs"].as_array().map(Vec::len), Some(2));
    for material in day["materials"].as_array().expect("materials") {
        let account = &material["account"];
        let amount = |name: &str| {
            let quanta = account[name]["quanta"].as_str().expect("an amount");
            quanta.parse::<i128>().expect("a whole number")
        };
        let parts = ["pieces", "cuts", "trim", "remnants", "waste", "rounding"].map(amount);
        assert_eq!(parts.iter().sum::<i128>(), amount("stock"), "{material}");
    }
    let bought = post(
        "/api/v1/cuts/jobs?seconds=0",
        JSON,
        json!({ "jobs": [job("heron")] }).to_string(),
    );
    let bought = bought.await.json();
    let used = bought["materials"][0]["used"][0]["origin"].clone();
    assert_eq!(used, "buy", "without a stock document all is bought");
}

/// A body with its status, the kind of problem, and the pointers of its faults.
type Bad = (Value, u16, &'static str, &'static [&'static str]);

async fn refused(path: &str, bad: Vec<Bad>) {
    for (body, status, name, pointers) in bad {
        let answer = post(path, JSON, body.to_string()).await;
        assert_eq!(answer.status, status, "{body}: {}", answer.text());
        assert_eq!(answer.header("content-type"), "application/problem+json");
        let problem = answer.json();
        let kind = format!("urn:rabbet:problem:{name}");
        assert_eq!(problem["type"], kind, "{problem}");
        let errors = problem["errors"].as_array().expect("a list");
        let found: Vec<&str> = errors
            .iter()
            .filter_map(|one| one["pointer"].as_str())
            .collect();
        assert_eq!(found, pointers, "{problem}");
    }
}

#[tokio::test]
async fn faults_of_instances_are_pointed_to() {
    let mut zero = of_sticks("zero");
    zero["pieces"][1]["l"] = json!(0);
    let mut large = of_sticks("large");
    large["pieces"][0]["l"] = json!(11);
    let list = json!([of_sticks("fine"), zero]);
    let set = json!({ "instances": [of_sticks("fine"), large] });
    let bad: Vec<Bad> = vec![
        (zero, 422, "document", &["/pieces/1/l"]),
        (list, 422, "document", &["/1/pieces/1/l"]),
        (set, 422, "cuts", &["/instances/1"]),
        (json!([]), 422, "cuts", &[""]),
    ];
    refused("/api/v1/cuts", bad).await;
    let picture = post("/api/v1/cuts", "image/png", "").await;
    assert_eq!(picture.status, StatusCode::UNSUPPORTED_MEDIA_TYPE);
}

#[tokio::test]
async fn faults_of_jobs_and_stock_are_pointed_to() {
    let path = "/api/v1/cuts/jobs";
    let both = json!({ "jobs": [7], "stock": 7 });
    let stock = json!({ "jobs": [job("heron")], "stock": "stock = 2" });
    let bad: Vec<Bad> = vec![
        (json!([]), 422, "document", &[""]),
        (
            json!({ "jobs": [], "a/b": 1 }),
            422,
            "document",
            &["/a~1b", "/jobs"],
        ),
        (both, 422, "document", &["/jobs/0", "/stock"]),
        (stock, 422, "document", &["/stock"]),
    ];
    refused(path, bad).await;
    let broken = job("heron").replacen("width = \"", "width = \"x", 1);
    let body = json!({ "jobs": [job("gable"), broken] }).to_string();
    let answer = post(path, JSON, body).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    let pointer = answer.json()["errors"][0]["pointer"].clone();
    let pointer = pointer.as_str().expect("a pointer");
    assert!(pointer.starts_with("/jobs/1"), "{pointer}");
    let list = post(path, TOML, demo::CUT_LIST).await;
    assert_eq!(list.status, StatusCode::UNSUPPORTED_MEDIA_TYPE);
}

#[tokio::test]
async fn time_and_effort_are_bounded() {
    for query in [
        "seconds=31",
        "seconds=-1",
        "seconds=1.5",
        "seconds=",
        "effort=x",
        "seconds=1&effort=1",
    ] {
        let answer = post(
            &format!("/api/v1/cuts?{query}"),
            JSON,
            of_sticks("one").to_string(),
        )
        .await;
        assert_eq!(answer.status, StatusCode::BAD_REQUEST, "{query}");
    }
}

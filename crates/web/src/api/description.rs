//! The API's own description (`OpenAPI` 3.1), kept by hand and compared with the routes by a test.

use axum::Json;
use serde_json::{Value, json};

use crate::planning::{LONGEST, USUAL};

pub(super) async fn description() -> Json<Value> {
    let mut whole = json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Rabbet",
            "version": env!("CARGO_PKG_VERSION"),
            "description": "From one job document to every size of a framed piece, its drawings and its ticket; \
                from several to what is cut from what. \
                Lengths are whole quanta of 1/16 000 mm, with text beside them.",
        },
        "paths": {
            "/api/v1/derive": derive(),
            "/api/v1/drawings/{view}": drawings(),
            "/api/v1/ticket": ticket(),
            "/api/v1/cuts": cuts(),
            "/api/v1/cuts/jobs": cut_jobs(),
            "/api/v1/schema": read("JSON Schema (2020-12) of the job document.", &[]),
            "/api/v1/settings": read("Every setting: value, default, range, source, status.", &[units()]),
            "/api/v1/materials": read("Every material of the catalogue, in the form a job writes it.", &[]),
            "/api/v1/openapi.json": read("This description.", &[]),
        },
        "components": { "schemas": { "Problem": problem() } },
    });
    for (path, ways) in super::care::described() {
        whole["paths"][path] = ways;
    }
    for (path, ways) in super::price::described() {
        whole["paths"][path] = ways;
    }
    for (path, ways) in super::papers::described() {
        whole["paths"][path] = ways;
    }
    Json(whole)
}

fn derive() -> Value {
    let answer = json!({ "application/json": { "schema": { "type": "object" } } });
    let include = question("include", "Adds every line of working.", &["working"]);
    json!({ "post": post("Every size of the piece.", &[include], &answer) })
}

fn drawings() -> Value {
    let view = json!({
        "name": "view", "in": "path", "required": true,
        "schema": { "enum": ["elevation", "section", "back"] },
    });
    let ink = question(
        "ink",
        "Colours of the materials, or one ink.",
        &["colour", "one"],
    );
    let answer = json!({ "image/svg+xml": { "schema": { "type": "string" } } });
    json!({ "post": post("One drawing of the piece, to scale.", &[view, ink], &answer) })
}

fn ticket() -> Value {
    let paper = question("paper", "The paper in the printer.", &["a4", "letter"]);
    let answer =
        json!({ "application/pdf": { "schema": { "type": "string", "format": "binary" } } });
    json!({ "post": post("The bench ticket of the piece.", &[paper], &answer) })
}

fn cuts() -> Value {
    let words = "What is cut from what, for an instance of the cutting room (`cutting-instance/1`), a set or a list \
        of them, or a cut list as a person types it; each plan with a proven bound.";
    let body = json!({
        "application/json": { "schema": { "type": ["object", "array"] } },
        "application/toml": { "schema": { "type": "string" } },
    });
    let plan = json!({
        "type": "object",
        "required": ["format"],
        "properties": { "format": { "enum": ["cutting-plan/1", "cutting-plans/1"] } },
    });
    json!({ "post": {
        "summary": words,
        "parameters": patience(),
        "requestBody": {
            "required": true,
            "description": "Instances as JSON, or a cut list as TOML; 1 MiB at most.",
            "content": body,
        },
        "responses": {
            "200": {
                "description": "The plan of one instance or of one material; the plans of a set, a list or several materials.",
                "content": { "application/json": { "schema": plan } },
            },
            "default": refused(),
        },
    } })
}

fn cut_jobs() -> Value {
    let document = |words: &str| json!({ "type": ["object", "string"], "description": words });
    let body = json!({
        "type": "object",
        "required": ["jobs"],
        "additionalProperties": false,
        "properties": {
            "jobs": {
                "type": "array",
                "minItems": 1,
                "items": document("A job document: JSON as an object, TOML as text."),
            },
            "stock": document(
                "What lies on the rack and what can be bought: a stock document. \
                Left out, all is bought in the catalogue's sizes.",
            ),
        },
    });
    json!({ "post": {
        "summary": "What is cut from what, for every part of several jobs: stock used, parts in place, cuts, \
            remnants with their labels, what is not planned, and the account of every material.",
        "parameters": patience(),
        "requestBody": {
            "required": true,
            "description": "Job documents and the stock; 1 MiB at most.",
            "content": { "application/json": { "schema": body } },
        },
        "responses": {
            "200": {
                "description": "The day, settled.",
                "content": { "application/json": { "schema": { "type": "object" } } },
            },
            "default": refused(),
        },
    } })
}

/// How hard a plan is looked for.
fn patience() -> Vec<Value> {
    let whole = |name: &str, words: &str, schema: Value| json!({ "name": name, "in": "query", "description": words, "schema": schema });
    vec![
        whole(
            "seconds",
            "How long to look for a better plan; 0 takes the first. Not together with effort.",
            json!({ "type": "integer", "minimum": 0, "maximum": LONGEST, "default": USUAL }),
        ),
        whole(
            "effort",
            "Search steps for each material, instead of seconds: the same answer on every machine.",
            json!({ "type": "integer", "minimum": 0 }),
        ),
        whole(
            "seed",
            "Where chance begins: another seed may find another plan.",
            json!({ "type": "integer", "minimum": 0, "default": 1 }),
        ),
    ]
}

pub(super) fn units() -> Value {
    question(
        "units",
        "For jobs in inches, or in millimetres.",
        &["in", "mm"],
    )
}

pub(super) fn question(name: &str, words: &str, answers: &[&str]) -> Value {
    json!({ "name": name, "in": "query", "description": words, "schema": { "enum": answers } })
}

pub(super) fn post(words: &str, parameters: &[Value], answer: &Value) -> Value {
    json!({
        "summary": words,
        "parameters": parameters,
        "requestBody": {
            "required": true,
            "description": "A job document.",
            "content": {
                "application/toml": { "schema": { "type": "string" } },
                "application/json": { "schema": { "$ref": "/api/v1/schema" } },
            },
        },
        "responses": { "200": { "description": words, "content": answer }, "default": refused() },
    })
}

/// A way in that takes an object.
pub(super) fn post_json(words: &str, schema: &Value) -> Value {
    json!({
        "summary": words,
        "requestBody": {
            "required": true,
            "description": "An object; 1 MiB at most.",
            "content": { "application/json": { "schema": schema } },
        },
        "responses": {
            "200": { "description": words, "content": { "application/json": { "schema": { "type": "object" } } } },
            "default": refused(),
        },
    })
}

pub(super) fn read(words: &str, parameters: &[Value]) -> Value {
    json!({ "get": {
        "summary": words,
        "parameters": parameters,
        "responses": {
            "200": { "description": words, "content": { "application/json": { "schema": { "type": "object" } } } },
            "default": refused(),
        },
    } })
}

fn refused() -> Value {
    json!({
        "description": "What stands in the way, all of it.",
        "content": { "application/problem+json": { "schema": { "$ref": "#/components/schemas/Problem" } } },
    })
}

/// The shape of RFC 9457 with a list of every fault.
fn problem() -> Value {
    json!({
        "type": "object",
        "required": ["type", "title", "detail", "status", "errors"],
        "properties": {
            "type": { "type": "string", "format": "uri" },
            "title": { "type": "string" },
            "detail": { "type": "string" },
            "status": { "type": "integer" },
            "errors": { "type": "array", "items": {
                "type": "object",
                "required": ["pointer", "code", "detail"],
                "properties": {
                    "pointer": { "type": "string" },
                    "code": { "type": "string" },
                    "detail": { "type": "string" },
                    "line": { "type": "integer" },
                    "column": { "type": "integer" },
                    "part": { "type": "string" },
                    "severity": { "enum": ["stop", "mind"] },
                },
            } },
        },
    })
}

//! The API's own description (`OpenAPI` 3.1), kept by hand and compared with the routes by a test.

use axum::Json;
use serde_json::{Value, json};

pub(super) async fn description() -> Json<Value> {
    Json(json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Rabbet",
            "version": env!("CARGO_PKG_VERSION"),
            "description": "From one job document to every size of a framed piece, its drawings and its ticket. \
                Lengths are whole quanta of 1/16 000 mm, with text beside them.",
        },
        "paths": {
            "/api/v1/derive": derive(),
            "/api/v1/drawings/{view}": drawings(),
            "/api/v1/ticket": ticket(),
            "/api/v1/schema": read("JSON Schema (2020-12) of the job document.", &[]),
            "/api/v1/settings": read("Every setting: value, default, range, source, status.", &[units()]),
            "/api/v1/materials": read("Every material of the catalogue, in the form a job writes it.", &[]),
            "/api/v1/openapi.json": read("This description.", &[]),
        },
        "components": { "schemas": { "Problem": problem() } },
    }))
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

fn units() -> Value {
    question(
        "units",
        "For jobs in inches, or in millimetres.",
        &["in", "mm"],
    )
}

fn question(name: &str, words: &str, answers: &[&str]) -> Value {
    json!({ "name": name, "in": "query", "description": words, "schema": { "enum": answers } })
}

fn post(words: &str, parameters: &[Value], answer: &Value) -> Value {
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

fn read(words: &str, parameters: &[Value]) -> Value {
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

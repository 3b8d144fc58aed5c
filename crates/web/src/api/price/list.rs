//! A supplier's price list, looked at before it is taken: what it changes, and every row it can't give.

use std::io::Cursor;
use std::sync::Arc;

use axum::Json;
use axum::extract::multipart::{MultipartError, MultipartRejection};
use axum::extract::{Multipart, State};
use axum::http::StatusCode;
use pricing::supplier::{ListFault, Mapping, Preview, Shelf};
use serde_json::{Value, json};
use trade::Date;

use super::order::fault;
use super::sentence;
use crate::api::too_long;
use crate::clock;
use crate::desk::Desk;
use crate::problem::{Entry, Kind, Problem};
use crate::wire;

/// How the two kinds of workbook begin: a ZIP archive, and the older compound file.
const ARCHIVE: &[u8] = b"PK\x03\x04";
const COMPOUND: &[u8] = b"\xd0\xcf\x11\xe0";

pub(super) fn described() -> Value {
    let words = "What a supplier's price list changes, row by row; nothing is written.";
    let text = |words: &str| json!({ "type": "string", "description": words });
    let schema = json!({
        "type": "object",
        "required": ["list", "mapping"],
        "additionalProperties": false,
        "properties": {
            "list": { "type": "string", "format": "binary", "description": "The list, CSV or XLSX." },
            "mapping": text("How it is laid out, TOML."),
            "catalogue": text("The catalogue it is held against, TOML; left out: an empty one, so all is new."),
            "on": text("The first day the prices hold, as 2030-11-25; left out: today."),
        },
    });
    let mut way = crate::api::description::post_json(words, &schema);
    way["requestBody"]["description"] = "A form; 1 MiB at most.".into();
    way["requestBody"]["content"] = json!({ "multipart/form-data": { "schema": schema } });
    json!({ "post": way })
}

pub(super) async fn previewed(
    State(desk): State<Arc<Desk>>,
    sent: Result<Multipart, MultipartRejection>,
) -> Result<Json<Value>, Problem> {
    let form = sent.map_err(|_| {
        let detail = "Send a form as multipart/form-data, with the fields list and mapping.";
        Problem::plain(Kind::Media, detail)
    })?;
    let fields = Fields::of(form).await?;
    let told = desk.work(move |_| fields.preview());
    Ok(Json(told.await??))
}

/// What was sent.
#[derive(Default)]
struct Fields {
    list: Option<Vec<u8>>,
    mapping: Option<String>,
    catalogue: Option<String>,
    on: Option<String>,
    faults: Vec<Entry>,
}

impl Fields {
    async fn of(mut form: Multipart) -> Result<Self, Problem> {
        let mut fields = Self::default();
        while let Some(part) = form.next_field().await.map_err(|error| unread(&error))? {
            let name = part.name().unwrap_or_default().to_owned();
            let bytes = part.bytes().await.map_err(|error| unread(&error))?;
            match name.as_str() {
                "list" => fields.list = Some(bytes.to_vec()),
                "mapping" => fields.mapping = fields.text(&name, &bytes),
                "catalogue" => fields.catalogue = fields.text(&name, &bytes),
                "on" => fields.on = fields.text(&name, &bytes),
                _ => fields.fault(
                    &name,
                    "order.unknown",
                    "There is no such field; send list, mapping, catalogue, on.",
                ),
            }
        }
        Ok(fields)
    }

    fn text(&mut self, name: &str, bytes: &[u8]) -> Option<String> {
        let text = std::str::from_utf8(bytes).ok();
        if text.is_none() {
            self.fault(name, "order.text", "Send text in UTF-8 here.");
        }
        text.map(str::to_owned)
    }

    fn fault(&mut self, name: &str, code: &str, detail: &str) {
        self.faults.push(fault(format!("/{name}"), code, detail));
    }

    fn preview(mut self) -> Result<Value, Problem> {
        let mapping = self.mapping();
        let on = self.day();
        let list = self.list.take();
        if list.is_none() {
            self.fault("list", "order.list", "Send the list here, CSV or XLSX.");
        }
        let text = self.catalogue.take().unwrap_or_default();
        let catalogue = Shelf::read(&text);
        if let Err(refused) = &catalogue {
            self.fault("catalogue", "materials.form", &sentence(refused));
        }
        let (Some(mapping), Some(on), Some(list), Ok(catalogue), true) =
            (mapping, on, list, catalogue, self.faults.is_empty())
        else {
            return Err(Problem::with(Kind::Input, self.faults));
        };
        let preview = read(list, &mapping, &catalogue, on).map_err(|refused| {
            let entry = fault("/list", refused.code(), sentence(&refused));
            Problem::with(Kind::Document, vec![entry])
        })?;
        Ok(wire::price_list(&preview))
    }

    fn mapping(&mut self) -> Option<Mapping> {
        let Some(text) = self.mapping.take() else {
            let detail = "Send here how the list is laid out, as TOML.";
            self.fault("mapping", "order.mapping", detail);
            return None;
        };
        match Mapping::read(&text) {
            Ok(mapping) => Some(mapping),
            Err(faults) => {
                for refused in &faults {
                    self.fault("mapping", "mapping.form", &sentence(refused));
                }
                None
            }
        }
    }

    fn day(&mut self) -> Option<Date> {
        let Some(text) = self.on.take() else {
            let today = clock::today();
            if today.is_none() {
                self.fault("on", "order.today", clock::NO_DAY);
            }
            return today;
        };
        let day = Date::read(text.trim()).ok();
        if day.is_none() {
            let detail = "Write a day of the calendar as 2030-11-25.";
            self.fault("on", "order.day", detail);
        }
        day
    }
}

fn read(
    list: Vec<u8>,
    mapping: &Mapping,
    catalogue: &Shelf<'_>,
    on: Date,
) -> Result<Preview, ListFault> {
    if list.starts_with(ARCHIVE) {
        Preview::of_workbook(Cursor::new(list), mapping, catalogue, on)
    } else if list.starts_with(COMPOUND) {
        Err(ListFault::NotWorkbook {
            reason: "it is a workbook of the older kind, XLS".to_owned(),
        })
    } else {
        Preview::of_csv(Cursor::new(list), mapping, catalogue, on)
    }
}

fn unread(error: &MultipartError) -> Problem {
    if error.status() == StatusCode::PAYLOAD_TOO_LARGE {
        return too_long(error);
    }
    Problem::plain(Kind::Input, "The form did not arrive whole; send it again.")
}

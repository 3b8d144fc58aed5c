//! The bare front of a piece, without dimensions, as it hangs on the wall.

use std::sync::Arc;

use axum::extract::{Path, State};
use axum::response::Response;

use super::piece::{kept, nobody};
use super::trouble::trouble;
use crate::api::svg;
use crate::desk::Desk;
use crate::piece::{Piece, undrawn};

/// Draws it; only pieces of the shop hang anywhere.
pub(crate) async fn front(State(desk): State<Arc<Desk>>, Path(name): Path<String>) -> Response {
    let Some(document) = kept(&name) else {
        return trouble(&nobody());
    };
    let drawn = desk.work(move |desk| {
        Piece::of(desk, document.as_bytes())?
            .front()
            .map_err(undrawn)
    });
    match drawn.await.and_then(|drawn| drawn) {
        Ok(drawing) => svg(drawing),
        Err(problem) => trouble(&problem),
    }
}

//! Styles, script, mark and lettering, as files in the binary.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::OnceLock;

use axum::extract::Path;
use axum::http::{HeaderMap, StatusCode, Uri, header};
use axum::response::{IntoResponse, Response};

use crate::door::told;
use crate::problem::{Kind, Problem};

struct Asset {
    name: &'static str,
    mime: &'static str,
    bytes: &'static [u8],
}

const ASSETS: [Asset; 6] = [
    Asset {
        name: "table.css",
        mime: "text/css; charset=utf-8",
        bytes: include_bytes!("../assets/table.css"),
    },
    Asset {
        name: "redraw.js",
        mime: "text/javascript; charset=utf-8",
        bytes: include_bytes!("../assets/redraw.js"),
    },
    Asset {
        name: "mark.svg",
        mime: "image/svg+xml",
        bytes: include_bytes!("../assets/mark.svg"),
    },
    Asset {
        name: "regular.ttf",
        mime: "font/ttf",
        bytes: include_bytes!("../assets/fonts/atkinson-hyperlegible-next/Regular.ttf"),
    },
    Asset {
        name: "bold.ttf",
        mime: "font/ttf",
        bytes: include_bytes!("../assets/fonts/atkinson-hyperlegible-next/Bold.ttf"),
    },
    Asset {
        name: "serif.ttf",
        mime: "font/ttf",
        bytes: include_bytes!("../assets/fonts/source-serif-4/SemiBold.ttf"),
    },
];

/// Sends an asset, or says that the visitor's copy is still good.
pub(crate) async fn asset(Path(name): Path<String>, uri: Uri, asked: HeaderMap) -> Response {
    let Some(asset) = ASSETS.iter().find(|asset| asset.name == name) else {
        return told(
            uri.path(),
            Problem::plain(
                Kind::Address,
                "Go back to the Counter and follow a link from there.",
            ),
        );
    };
    let tag = format!("\"{}\"", stamp());
    let headers = [
        (header::CONTENT_TYPE, asset.mime.to_owned()),
        (
            header::CACHE_CONTROL,
            "public, max-age=31536000, immutable".to_owned(),
        ),
        (header::ETAG, tag.clone()),
    ];
    if asked
        .get(header::IF_NONE_MATCH)
        .is_some_and(|have| have.as_bytes() == tag.as_bytes())
    {
        return (StatusCode::NOT_MODIFIED, headers).into_response();
    }
    (headers, asset.bytes).into_response()
}

/// Where an asset is found: another address whenever any of them changes.
pub(crate) fn address(name: &str) -> String {
    format!("/asset/{name}?{}", stamp())
}

/// A name for the whole set.
fn stamp() -> &'static str {
    static STAMP: OnceLock<String> = OnceLock::new();
    STAMP.get_or_init(|| {
        let mut hasher = DefaultHasher::new();
        for asset in &ASSETS {
            asset.bytes.hash(&mut hasher);
        }
        format!("{:016x}", hasher.finish())
    })
}

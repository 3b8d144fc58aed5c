//! The way in: which address answers with what, and listening for visitors.

use std::net::SocketAddr;
use std::sync::Arc;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::Uri;
use axum::middleware;
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use tokio::net::TcpListener;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::compression::CompressionLayer;

use crate::desk::{Desk, Options};
use crate::problem::{Kind, Problem};
use crate::{api, asset, guard, page};

/// The longest body that is read, in bytes.
const LONGEST_BODY: usize = 1 << 20;

/// Why the pages can't be served.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// The address can be reached from other machines.
    #[error(
        "{0} can be reached from other machines, and there are no accounts and no encryption yet: \
         serve on 127.0.0.1 or [::1] and open the pages on this machine"
    )]
    Open(SocketAddr),
    /// The address is taken, or not this machine's.
    #[error(
        "can't listen on {address}: {cause}; name another port, or stop the program that has it"
    )]
    Listen {
        /// Where.
        address: SocketAddr,
        /// What the system said.
        cause: std::io::Error,
    },
    /// Listening ended.
    #[error("the connection to the network was lost: {0}; start again")]
    Lost(std::io::Error),
}

/// Serves the pages until the program is asked to stop.
///
/// Errors: an address other machines can reach, an address that is taken, a lost connection.
pub async fn serve(options: Options) -> Result<(), ServeError> {
    let address = options.address;
    if !address.ip().is_loopback() {
        return Err(ServeError::Open(address));
    }
    let listener = TcpListener::bind(address)
        .await
        .map_err(|cause| ServeError::Listen { address, cause })?;
    serve_on(listener, options).await
}

/// Serves the pages on a listener that is already bound.
///
/// Errors: a listener other machines can reach, a lost connection.
pub async fn serve_on(listener: TcpListener, options: Options) -> Result<(), ServeError> {
    let address = listener.local_addr().map_err(ServeError::Lost)?;
    if !address.ip().is_loopback() {
        return Err(ServeError::Open(address));
    }
    tracing::info!(%address, "serving");
    axum::serve(listener, router(options))
        .with_graceful_shutdown(stopped())
        .await
        .map_err(ServeError::Lost)
}

/// Every page, asset and API address, with its guards.
pub fn router(options: Options) -> Router {
    let desk = Desk::new(options);
    let pages = Router::new()
        .route("/", get(page::counter))
        .route("/open", post(page::open))
        .route("/piece/{name}", get(page::piece).post(page::worked))
        .route("/piece/{name}/front.svg", get(page::front))
        .route("/piece/{name}/ticket.pdf", post(page::ticket))
        .route("/piece/{name}/job.toml", post(page::document))
        .route("/piece/{name}/cure", post(page::cure))
        .route("/piece/{name}/budget", post(page::budget))
        .route("/alternatives", post(page::alternatives))
        .route("/piece/{name}/quote", post(page::quoted))
        .route("/quote", get(page::quote_way_in).post(page::quote_opened))
        .route("/quote/quote.pdf", post(page::quote_pdf))
        .route("/quote/quote.json", post(page::quote_file))
        .route("/care", get(page::care))
        .route("/care/{noun}/{verb}", get(page::care_asked))
        .route("/piece/{name}/{view}", post(page::drawing))
        .route("/bench", get(page::day).post(page::planned))
        .route("/bench/list", get(page::cut_list).post(page::cut_listed))
        .route("/bench/plan/{id}", get(page::plan))
        .route("/bench/plan/{id}/cut-sheets.pdf", get(page::cut_sheets))
        .route("/bench/plan/{id}/{material}", get(page::material))
        .route("/settings", get(page::settings))
        .route("/materials", get(page::materials))
        .route("/asset/{name}", get(asset::asset));
    pages
        .merge(api::routes())
        .fallback(nothing_here)
        .method_not_allowed_fallback(not_this_way)
        .layer(DefaultBodyLimit::max(LONGEST_BODY))
        .layer(middleware::from_fn(guard::guard))
        .layer(CatchPanicLayer::custom(panicked))
        .layer(middleware::map_response(guard::sealed))
        .layer(CompressionLayer::new())
        .with_state(Arc::clone(&desk))
}

/// The problem as whoever asked can read it: an object for programs, a page for people.
pub(crate) fn told(path: &str, problem: Problem) -> Response {
    if path.starts_with("/api/") {
        problem.into_response()
    } else {
        page::trouble(&problem)
    }
}

async fn nothing_here(uri: Uri) -> Response {
    let detail = "Go back to the Counter and follow a link from there.";
    told(uri.path(), Problem::plain(Kind::Address, detail))
}

async fn not_this_way(uri: Uri) -> Response {
    let detail = "Documents are sent with POST, everything else is read with GET.";
    told(uri.path(), Problem::plain(Kind::Method, detail))
}

#[allow(
    clippy::needless_pass_by_value,
    reason = "the layer hands the panic over"
)]
fn panicked(panic: Box<dyn std::any::Any + Send>) -> Response {
    let words = panic.downcast_ref::<String>().map(String::as_str);
    let words = words
        .or_else(|| panic.downcast_ref::<&str>().copied())
        .unwrap_or("a panic without words");
    Problem::fault(&words).into_response()
}

/// Ends when the program is interrupted or told to end.
async fn stopped() {
    let interrupted = async {
        if let Err(error) = tokio::signal::ctrl_c().await {
            tracing::warn!(%error, "interrupts can't be heard; end the program by its process");
            std::future::pending::<()>().await;
        }
    };
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        match signal(SignalKind::terminate()) {
            Ok(mut ended) => tokio::select! { () = interrupted => {}, _ = ended.recv() => {} },
            Err(_) => interrupted.await,
        }
    }
    #[cfg(not(unix))]
    interrupted.await;
}

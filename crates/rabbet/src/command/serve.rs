//! `rabbet serve`

use std::net::SocketAddr;
use std::sync::Arc;

use clap::Args;
use pricing::RuleSet;
use tokio::net::TcpListener;
use trade::{Catalogue, Units};
use web::{Habits, Options, ServeError};

use super::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::files::reason;
use crate::problem::{Kind, Problem, Trouble};
use crate::terminal::Terminal;

/// Opens the shop's pages for a browser on this machine
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet serve --demo", after_help = EXIT_CODES)]
pub struct Serve {
    /// Hang an invented shop's pieces on the wall
    #[arg(long)]
    demo: bool,
    /// Where to listen, one of this machine's own addresses; port 0 takes any that is free
    #[arg(long, value_name = "ADDRESS", default_value = "127.0.0.1:7733", value_parser = address)]
    address: SocketAddr,
    /// The shop's name
    #[arg(long, value_name = "NAME")]
    shop_name: Option<String>,
}

fn address(text: &str) -> Result<SocketAddr, String> {
    text.parse()
        .map_err(|_| "write an address and a port as 127.0.0.1:7733".to_owned())
}

impl Serve {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let options = self.options(desk)?;
        tell_of_faults()?;
        let runtime = tokio::runtime::Runtime::new().map_err(|error| {
            let problem = Problem::new(
                "serve.start",
                format!("serving can't start: {}", reason(&error)),
            );
            Trouble::one(
                Kind::File,
                problem.hint("close some programs, then try again"),
            )
        })?;
        runtime
            .block_on(self.serve(options, desk.terminal))
            .map_err(|error| unserved(&error))?;
        Ok(Exit::Done)
    }

    /// Listens, tells where, and serves until the program is asked to stop.
    async fn serve(&self, options: Options, terminal: Terminal) -> Result<(), ServeError> {
        let address = self.address;
        if !address.ip().is_loopback() {
            return Err(ServeError::Open(address));
        }
        let listener = TcpListener::bind(address)
            .await
            .map_err(|cause| ServeError::Listen { address, cause })?;
        // Not the address typed: port 0 takes any that is free.
        let listening = listener.local_addr().map_err(ServeError::Lost)?;
        terminal.talk(&format!(
            "Open http://{listening}/ in a browser; Ctrl-C stops it."
        ));
        web::serve_on(listener, options).await
    }

    fn options(&self, desk: &Desk) -> Result<Options, Trouble> {
        let invented = self.demo.then(|| demo::SHOP.name.to_owned());
        let shop = self.shop_name.clone().or(invented);
        Ok(Options {
            address: self.address,
            demo: self.demo,
            shop: shop.unwrap_or_else(|| "The shop".to_owned()),
            habits: Habits {
                inches: desk.shop.settings(Units::Inches)?,
                millimetres: desk.shop.settings(Units::Millimetres)?,
            },
            catalogue: self.catalogue(desk)?,
            prices: self.prices(desk)?,
        })
    }

    /// The shop's materials; the invented shop brings what its own cost.
    fn catalogue(&self, desk: &Desk) -> Result<Catalogue, Trouble> {
        if !self.demo || desk.shop.has_catalogue()? {
            return desk.shop.catalogue();
        }
        Catalogue::starter()
            .under(demo::CATALOGUE)
            .map_err(|fault| ours(fault.to_string()))
    }

    /// The shop's rules, else the invented shop's, where it is shown.
    fn prices(&self, desk: &Desk) -> Result<Option<Arc<RuleSet>>, Trouble> {
        if let Some(ruled) = desk.shop.rules_if_any()? {
            return Ok(Some(Arc::new(ruled.rules)));
        }
        if !self.demo {
            return Ok(None);
        }
        let rules = RuleSet::read(demo::PRICES).map_err(|faults| {
            let sentences: Vec<String> = faults.iter().map(ToString::to_string).collect();
            ours(sentences.join(" "))
        })?;
        Ok(Some(Arc::new(rules)))
    }
}

fn ours(sentence: String) -> Trouble {
    Trouble::one(Kind::Ours, Problem::new("demo.prices", sentence))
}

/// Has faults met while serving told on stderr, a line each; the page shown names the same reference.
fn tell_of_faults() -> Result<(), Trouble> {
    let lines = tracing_subscriber::fmt()
        .with_max_level(tracing::Level::WARN)
        .with_writer(std::io::stderr)
        .with_ansi(false)
        .with_target(false)
        .finish();
    tracing::subscriber::set_global_default(lines).map_err(|error| {
        let problem = Problem::new("serve.faults", format!("faults can't be told: {error}"));
        Trouble::one(Kind::Ours, problem)
    })
}

fn unserved(error: &ServeError) -> Trouble {
    match error {
        ServeError::Open(_) => Trouble::one(
            Kind::Input,
            Problem::new("serve.address", error.to_string())
                .hint("--address 127.0.0.1:7733, or leave --address out"),
        ),
        ServeError::Listen { address, cause } => Trouble::one(
            Kind::File,
            Problem::new(
                "serve.listen",
                format!("can't listen on {address}: {}", reason(cause)),
            )
            .hint("name another port with --address, or stop the program that has this one"),
        ),
        ServeError::Lost(_) => {
            Trouble::one(Kind::File, Problem::new("serve.lost", error.to_string()))
        }
    }
}

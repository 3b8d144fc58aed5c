//! A browser of our own for each test, and the pages served to it.

use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use fantoccini::{Client, ClientBuilder};
use serde_json::{Map, Value, json};
use tempfile::TempDir;
use tokio::net::TcpListener;
use web::serve_on;

use crate::visit;

/// A browser with the pages in front of it; both end with it.
pub struct Chrome {
    pub client: Client,
    pub address: String,
    driver: Child,
    _profile: TempDir,
}

/// Light or dark.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Shade {
    Light,
    Dark,
}

/// How long a page may take to show what it should; generous, for machines that do much else.
const PATIENCE: Duration = Duration::from_secs(20);

impl Chrome {
    /// A desktop.
    pub async fn new(shade: Shade) -> Self {
        Self::with(shade, None).await
    }

    /// A sheet this many pixels wide, narrower than a window can be.
    pub async fn narrow(width: u32) -> Self {
        Self::with(Shade::Light, Some(width)).await
    }

    async fn with(shade: Shade, width: Option<u32>) -> Self {
        let address = served().await;
        let port = free_port().await;
        let driver = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver starts (Debian: chromium-driver)");
        let profile = tempfile::tempdir().expect("a folder");
        let client = connected(port, &asked(shade, width, &profile)).await;
        Self {
            client,
            address,
            driver,
            _profile: profile,
        }
    }

    pub async fn go(&self, path: &str) {
        self.client
            .goto(&format!("{}{path}", self.address))
            .await
            .expect("the page opens");
    }

    /// What a script on the page returns.
    pub async fn eval(&self, script: &str) -> Value {
        self.client
            .execute(script, Vec::new())
            .await
            .expect("the script runs")
    }

    /// Waits until a script on the page returns true.
    pub async fn until(&self, what: &str, script: &str) {
        let began = Instant::now();
        while self.eval(script).await != true {
            assert!(began.elapsed() < PATIENCE, "waited in vain until {what}");
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
    }

    pub async fn end(self) {
        self.client
            .clone()
            .close()
            .await
            .expect("the browser closes");
    }
}

impl Drop for Chrome {
    fn drop(&mut self) {
        // A driver that has ended already can't be ended again.
        let _ended = self.driver.kill();
        let _status = self.driver.wait();
    }
}

/// What a browser is started with.
const FLAGS: [&str; 10] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    "--window-size=1440,900",
];

/// Serves the pages; returns where.
async fn served() -> String {
    let listener = TcpListener::bind("127.0.0.1:0").await.expect("a free port");
    let address = listener.local_addr().expect("its address");
    tokio::spawn(async move {
        let served = serve_on(listener, visit::options()).await;
        served.expect("the pages are served");
    });
    format!("http://{address}")
}

async fn free_port() -> u16 {
    let listener = TcpListener::bind("127.0.0.1:0").await.expect("a free port");
    listener.local_addr().expect("its address").port()
}

/// The capabilities of a browser of this shade and width, with a profile of its own.
fn asked(shade: Shade, width: Option<u32>, profile: &TempDir) -> Map<String, Value> {
    let mut args: Vec<String> = FLAGS.map(str::to_owned).to_vec();
    args.push(format!("--user-data-dir={}", profile.path().display()));
    if shade == Shade::Dark {
        args.push("--blink-settings=preferredColorScheme=0".to_owned());
    }
    let mut options = json!({ "args": args });
    if let Some(width) = width {
        let metrics = json!({ "width": width, "height": 800, "pixelRatio": 1 });
        options["mobileEmulation"] = json!({ "deviceMetrics": metrics });
    }
    let mut capabilities = Map::new();
    capabilities.insert("goog:chromeOptions".to_owned(), options);
    capabilities
}

async fn connected(port: u16, capabilities: &Map<String, Value>) -> Client {
    let began = Instant::now();
    loop {
        let client = ClientBuilder::new(hyper_util::client::legacy::connect::HttpConnector::new())
            .capabilities(capabilities.clone())
            .connect(&format!("http://127.0.0.1:{port}"))
            .await;
        match client {
            Ok(client) => return client,
            Err(error) => assert!(
                began.elapsed() < PATIENCE,
                "chromedriver does not answer: {error}"
            ),
        }
        tokio::time::sleep(Duration::from_millis(100)).await;
    }
}

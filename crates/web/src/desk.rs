//! What every handler stands on: the shop's name, habits and materials, and a limit on work.

use std::net::{Ipv4Addr, SocketAddr};
use std::sync::Arc;
use std::time::Duration;

use cutting::Halt;
use pricing::RuleSet;
use tokio::sync::Semaphore;
use trade::{Catalogue, Settings, Units};

use crate::kept::Plans;
use crate::problem::{Kind, Problem};

/// How the pages are to be served.
#[derive(Clone, Debug)]
pub struct Options {
    /// Where to listen; only this machine's own addresses are accepted.
    pub address: SocketAddr,
    /// Hangs the invented shop's pieces on the wall.
    pub demo: bool,
    /// The shop's name, as its customers read it.
    pub shop: String,
    /// The shop's settings.
    pub habits: Habits,
    /// The shop's materials.
    pub catalogue: Catalogue,
    /// What the shop charges; none while nobody says.
    pub prices: Option<Arc<RuleSet>>,
}

impl Default for Options {
    /// Port 7733 of this machine, a shop without a name, settings and materials as they come.
    fn default() -> Self {
        Self {
            address: SocketAddr::from((Ipv4Addr::LOCALHOST, 7733)),
            demo: false,
            shop: "The shop".to_owned(),
            habits: Habits::default(),
            catalogue: Catalogue::starter(),
            prices: None,
        }
    }
}

/// A shop's settings, for jobs in inches and for jobs in millimetres.
#[derive(Clone, Debug)]
pub struct Habits {
    /// For jobs in inches.
    pub inches: Settings,
    /// For jobs in millimetres.
    pub millimetres: Settings,
}

impl Default for Habits {
    fn default() -> Self {
        Self {
            inches: Settings::defaults(Units::Inches),
            millimetres: Settings::defaults(Units::Millimetres),
        }
    }
}

impl Habits {
    /// Those for jobs in these units.
    pub const fn of(&self, units: Units) -> &Settings {
        match units {
            Units::Inches => &self.inches,
            Units::Millimetres => &self.millimetres,
        }
    }
}

/// The state all handlers share; nothing in it changes but the plans made last.
pub(crate) struct Desk {
    pub options: Options,
    pub plans: Plans,
    hands: Arc<Semaphore>,
    saw: Arc<Semaphore>,
    queue: Arc<Semaphore>,
}

/// Pieces that are worked on at the same time; more wait their turn.
const HANDS: usize = 4;

/// Plans that are asked for at the same time: one is made, the others wait their turn.
const PLANS: usize = 4;

/// How long a plan may wait for its turn.
const LONGEST_WAIT: Duration = Duration::from_mins(1);

/// How long an answer may take, its turn in the queue included.
const LONGEST: Duration = Duration::from_secs(20);

impl Desk {
    pub fn new(options: Options) -> Arc<Self> {
        Arc::new(Self {
            options,
            plans: Plans::default(),
            hands: Arc::new(Semaphore::new(HANDS)),
            saw: Arc::new(Semaphore::new(1)),
            queue: Arc::new(Semaphore::new(PLANS)),
        })
    }

    /// Works beside the requests, so that a slow piece holds up no other.
    ///
    /// Errors: work that takes longer than its limit (it goes on to its end, and keeps its place in
    /// the count until then), and a fault of the program, which is logged.
    pub async fn work<T: Send + 'static>(
        self: &Arc<Self>,
        task: impl FnOnce(&Self) -> T + Send + 'static,
    ) -> Result<T, Problem> {
        let desk = Arc::clone(self);
        let done = async move {
            let hand = Arc::clone(&desk.hands)
                .acquire_owned()
                .await
                .map_err(|closed| Problem::fault(&closed))?;
            let task = tokio::task::spawn_blocking(move || {
                let _hand = hand;
                task(&desk)
            });
            task.await.map_err(|panic| Problem::fault(&panic))
        };
        tokio::time::timeout(LONGEST, done)
            .await
            .unwrap_or_else(|_| {
                let detail = format!(
                    "Nothing came of it in {} seconds; describe less at once, or try again.",
                    LONGEST.as_secs()
                );
                Err(Problem::plain(Kind::Slow, detail))
            })
    }

    /// Plans beside the requests, one plan at a time, because each takes all cores. The task is
    /// told to end when nobody waits for it any more.
    ///
    /// Errors: too many plans asked for at once, and a fault of the program, which is logged.
    pub async fn plan<T: Send + 'static>(
        self: &Arc<Self>,
        task: impl FnOnce(&Self, &Halt) -> T + Send + 'static,
    ) -> Result<T, Problem> {
        let desk = Arc::clone(self);
        let place = Arc::clone(&desk.queue).try_acquire_owned();
        let place = place.map_err(|_| busy())?;
        let turn = tokio::time::timeout(LONGEST_WAIT, Arc::clone(&desk.saw).acquire_owned());
        let turn = turn.await.map_err(|_| busy())?;
        let turn = turn.map_err(|closed| Problem::fault(&closed))?;
        let waiting = Waiting(Arc::default());
        let left = Arc::clone(&waiting.0);
        let task = tokio::task::spawn_blocking(move || {
            let _held = (place, turn);
            task(&desk, &left)
        });
        task.await.map_err(|panic| Problem::fault(&panic))
    }
}

/// Somebody who waits for a plan; the search ends with them.
struct Waiting(Arc<Halt>);

impl Drop for Waiting {
    fn drop(&mut self) {
        self.0.halt();
    }
}

fn busy() -> Problem {
    Problem::plain(
        Kind::Busy,
        "Several plans are being made already; wait for one of them, then plan again.",
    )
}

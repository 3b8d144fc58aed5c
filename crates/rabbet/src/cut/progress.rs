//! Whoever waits for the plans: the clock, Ctrl-C, and one line of progress on a terminal.

use std::io::{self, IsTerminal as _, Write as _};
use std::sync::atomic::{AtomicBool, AtomicU8, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use cutting::{Halt, News, Problem, Watch};

/// How a shell tells that a program was stopped by Ctrl-C.
const STOPPED_AT_ONCE: i32 = 130;

/// Between two rewritings of the line.
const BREATH: Duration = Duration::from_millis(100);

/// Ctrl-C: the first ends the search, the second the program.
#[derive(Clone, Debug, Default)]
pub struct Stopping {
    halt: Arc<Halt>,
    presses: Arc<AtomicU8>,
    /// Files are being written; they are finished first.
    writing: Arc<AtomicBool>,
}

impl Stopping {
    /// Begins to listen for Ctrl-C.
    ///
    /// # Errors
    /// The system does not let it.
    pub fn listen() -> Result<Self, ctrlc::Error> {
        let stopping = Self::default();
        let heard = stopping.clone();
        ctrlc::set_handler(move || heard.pressed())?;
        Ok(stopping)
    }

    fn pressed(&self) {
        self.halt.halt();
        let again = self.presses.fetch_add(1, Ordering::SeqCst) > 0;
        if again && !self.writing.load(Ordering::SeqCst) {
            std::process::exit(STOPPED_AT_ONCE);
        }
    }

    /// From now on files are finished before anything ends.
    pub fn begin_writing(&self) {
        self.writing.store(true, Ordering::SeqCst);
    }

    /// Whether the search was told to end.
    pub fn stopped(&self) -> bool {
        self.halt.halted()
    }
}

/// Waits for plans until a moment, or Ctrl-C.
pub struct Waiting<'a> {
    stopping: &'a Stopping,
    until: Option<Instant>,
    line: Option<Mutex<Line>>,
}

impl<'a> Waiting<'a> {
    /// Waits this long; without end where no time is given.
    pub fn new(stopping: &'a Stopping, patience: Option<Duration>, problems: &[Problem]) -> Self {
        let now = Instant::now();
        let line = io::stderr().is_terminal().then(|| {
            let mut line = Line::of(problems, now);
            line.show(now);
            Mutex::new(line)
        });
        Self {
            stopping,
            until: patience.and_then(|patience| now.checked_add(patience)),
            line,
        }
    }

    /// Takes the line away.
    pub fn end(&self) {
        if let Some(line) = &self.line {
            line.lock().unwrap_or_else(PoisonError::into_inner).clear();
        }
    }
}

impl Watch for Waiting<'_> {
    fn enough(&self) -> bool {
        self.stopping.stopped() || self.until.is_some_and(|until| Instant::now() >= until)
    }

    fn news(&self, news: News<'_>) {
        if let Some(line) = &self.line {
            line.lock()
                .unwrap_or_else(PoisonError::into_inner)
                .hear(news);
        }
    }
}

/// Tenths of a percent of the whole.
const TENTHS: u128 = 1000;

/// The line of progress.
struct Line {
    names: Vec<String>,
    /// Of each: objective and bound.
    reached: Vec<Option<(u64, u64)>>,
    /// The one heard of last.
    last: usize,
    shown: Instant,
    width: usize,
}

impl Line {
    fn of(problems: &[Problem], now: Instant) -> Self {
        Self {
            names: problems
                .iter()
                .map(|problem| problem.name().to_owned())
                .collect(),
            reached: vec![None; problems.len()],
            last: 0,
            shown: now,
            width: 0,
        }
    }

    fn hear(&mut self, news: News<'_>) {
        let Some(place) = self.names.iter().position(|name| name == news.problem) else {
            return;
        };
        self.last = place;
        if let Some(objective) = news.objective {
            self.reached[place] = Some((objective, news.bound));
        }
        let now = Instant::now();
        if now.duration_since(self.shown) >= BREATH {
            self.show(now);
        }
    }

    fn words(&self) -> String {
        let planned = self.reached.iter().flatten().count();
        let proven = self
            .reached
            .iter()
            .flatten()
            .filter(|(cost, bound)| cost == bound)
            .count();
        let mut words = format!(
            "Planning: {planned} of {} materials, {proven} proven",
            self.names.len()
        );
        if let Some((cost, bound)) = self.reached.get(self.last).copied().flatten() {
            let name: String = self.names[self.last].chars().take(30).collect();
            let gap = u128::from(cost.abs_diff(bound)) * TENTHS;
            let gap = gap.div_ceil(u128::from(bound.max(1)));
            let reached = match gap {
                0 => format!("; {name}: nothing is better"),
                gap => {
                    let (whole, tenths) = (gap / 10, gap % 10);
                    format!("; {name}: at most {whole}.{tenths} % from the best possible")
                }
            };
            words.push_str(&reached);
        }
        words
    }

    fn show(&mut self, now: Instant) {
        let words = self.words();
        let wide = words.chars().count();
        let over = " ".repeat(self.width.saturating_sub(wide));
        self.width = wide;
        self.shown = now;
        put(&format!("\r{words}{over}"));
    }

    fn clear(&mut self) {
        put(&format!("\r{}\r", " ".repeat(self.width)));
        self.width = 0;
    }
}

fn put(text: &str) {
    // Where stderr is closed there is nobody left to tell.
    let _ = io::stderr().write_all(text.as_bytes());
}

#[cfg(test)]
mod tests {
    use std::time::Instant;

    use super::Line;

    fn check(reached: Option<(u64, u64)>, expected: &str) {
        let line = Line {
            names: vec!["oak".to_owned(), "glass".to_owned()],
            reached: vec![reached, None],
            last: 0,
            shown: Instant::now(),
            width: 0,
        };
        assert_eq!(line.words(), expected);
    }

    /// By hand: 1 of 300 is 0.33 %, rounded up; the objective's own numbers are ticks and not said.
    #[test]
    fn the_line_says_how_far_from_the_best_and_no_ticks() {
        check(None, "Planning: 0 of 2 materials, 0 proven");
        check(
            Some((301, 300)),
            "Planning: 1 of 2 materials, 0 proven; oak: at most 0.4 % from the best possible",
        );
        check(
            Some((300, 300)),
            "Planning: 1 of 2 materials, 1 proven; oak: nothing is better",
        );
    }
}

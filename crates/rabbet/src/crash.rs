//! Faults of this program: caught, told in a sentence, never spilled over the screen.

use std::io::Write as _;
use std::panic::PanicHookInfo;
use std::sync::Mutex;
use std::thread;

/// What the last panic said, and where.
static LAST: Mutex<Option<String>> = Mutex::new(None);

/// Room for deeply nested documents; only what is used is taken from the machine.
const STACK_BYTES: usize = 64 << 20;

/// Keeps what a panic says for later instead of printing it; while serving, it is told at once.
pub fn keep_quiet() {
    std::panic::set_hook(Box::new(|info| {
        let said = sentence(info);
        tracing::error!("{said}");
        remember(said);
    }));
}

/// Runs `work`; `None` when it panicked, which is told on stderr.
pub fn watched<T: Send>(work: impl FnOnce() -> T + Send) -> Option<T> {
    let done = thread::scope(|scope| {
        let thread = thread::Builder::new()
            .stack_size(STACK_BYTES)
            .spawn_scoped(scope, work);
        thread.map(thread::ScopedJoinHandle::join)
    });
    match done {
        Ok(Ok(done)) => return Some(done),
        Ok(Err(_)) => {}
        Err(error) => remember(format!("no thread could be started: {error}")),
    }
    let said = LAST
        .lock()
        .ok()
        .and_then(|mut last| last.take())
        .unwrap_or_default();
    let text = format!(
        "This is a fault of rabbet, not of your file: {said}\n\
         No output file was changed. Report it with the command you typed and the file you gave.\n\
         code: rabbet.fault\n"
    );
    // Where stderr itself is closed there is nobody left to tell.
    let _ = std::io::stderr().write_all(text.as_bytes());
    None
}

fn remember(text: String) {
    if let Ok(mut last) = LAST.lock() {
        *last = Some(text);
    }
}

fn sentence(info: &PanicHookInfo<'_>) -> String {
    let payload = info.payload();
    let said = payload
        .downcast_ref::<&str>()
        .copied()
        .or_else(|| payload.downcast_ref::<String>().map(String::as_str))
        .unwrap_or("no words were left");
    match info.location() {
        Some(place) => format!("{said} ({}, line {})", place.file(), place.line()),
        None => said.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::{LAST, keep_quiet, watched};

    #[test]
    fn a_panic_is_caught_and_its_words_are_kept_for_the_report() {
        keep_quiet();
        assert_eq!(watched(|| 2 + 2), Some(4));
        let none: Option<()> = watched(|| panic!("the rail has no end"));
        assert_eq!(none, None);
        // The words were taken for the report.
        assert_eq!(*LAST.lock().expect("nobody holds it"), None);
    }
}

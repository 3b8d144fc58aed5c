//! By hand: keyboard alone, typing that redraws, faults that are found.

use fantoccini::key::Key;
use fantoccini::{Locator, elements::Element};

use super::chrome::{Chrome, Shade};

async fn editor(chrome: &Chrome) -> Element {
    let summary = chrome
        .client
        .find(Locator::Css(".editor > summary"))
        .await
        .expect("a heading");
    summary.click().await.expect("it opens");
    chrome
        .client
        .find(Locator::Id("job"))
        .await
        .expect("the editor")
}

/// Puts the caret behind a text of the document.
async fn caret_behind(chrome: &Chrome, text: &str) {
    let script = format!(
        "const job = document.getElementById('job'); const at = job.value.indexOf({text}) + {text}.length; job.focus(); job.setSelectionRange(at, at)",
        text = serde_json::json!(text)
    );
    chrome.eval(&script).await;
}

#[tokio::test]
async fn typing_redraws_and_leaves_focus_and_caret() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/harbour").await;
    let job = editor(&chrome).await;
    caret_behind(&chrome, "width = \"").await;
    chrome
        .eval("window.first = document.getElementById('sheet')")
        .await;
    chrome
        .eval("window.outside = document.querySelector('.size.large .figure').textContent")
        .await;
    job.send_keys("1").await.expect("typing");
    chrome
        .until(
            "the piece is redrawn",
            "return document.getElementById('sheet') !== window.first",
        )
        .await;
    chrome
        .until(
            "the size changed",
            "return document.querySelector('.size.large .figure').textContent !== window.outside",
        )
        .await;
    let focused = "return document.activeElement.id + ' ' + (document.activeElement.selectionStart - document.activeElement.value.indexOf('width = \"'))";
    assert_eq!(
        chrome.eval(focused).await,
        "job 10",
        "the caret stands behind the 1"
    );
    let status = chrome
        .eval("return document.querySelector('#reading').textContent")
        .await;
    assert_eq!(status, "", "nothing stands in the way");
    chrome.end().await;
}

/// Fifty changes, one after the other: the caret never moves by itself, and the last one wins.
#[tokio::test]
async fn fifty_changes_leave_the_caret_where_it_is() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/poppies").await;
    let job = editor(&chrome).await;
    caret_behind(&chrome, "title = \"").await;
    for _ in 0..50 {
        job.send_keys("o").await.expect("typing");
    }
    let last =
        "return document.getElementById('sheet').textContent.includes('o'.repeat(50) + 'Poppies')";
    chrome.until("the last change is drawn", last).await;
    let moved = "return document.activeElement.selectionStart - document.activeElement.value.indexOf('title = \"')";
    assert_eq!(chrome.eval(moved).await, 9 + 50);
    chrome.end().await;
}

#[tokio::test]
async fn while_it_cannot_be_read_the_last_drawing_stays() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/poppies").await;
    let job = editor(&chrome).await;
    caret_behind(&chrome, "width = \"").await;
    job.send_keys("x").await.expect("typing");
    chrome
        .until(
            "the drawing says that it is old",
            "return document.querySelector('#sheet .stale') !== null",
        )
        .await;
    assert_eq!(
        chrome
            .eval("return document.querySelectorAll('#sheet svg').length")
            .await,
        3
    );
    let told = chrome
        .eval("return document.querySelector('#reading').textContent")
        .await;
    assert!(
        told.as_str().is_some_and(|told| told.contains("Line ")),
        "{told}"
    );
    assert_eq!(
        chrome
            .eval("return document.title.startsWith('Error')")
            .await,
        false,
        "nothing shouts while somebody types"
    );
    job.send_keys(&Key::Backspace.to_string())
        .await
        .expect("typing");
    chrome
        .until(
            "it is drawn again",
            "return document.querySelector('#sheet .stale') === null",
        )
        .await;
    assert_eq!(
        chrome
            .eval("return document.querySelector('#reading').textContent")
            .await,
        ""
    );
    chrome.end().await;
}

#[tokio::test]
async fn a_fault_takes_the_focus_and_leads_to_its_line() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/poppies").await;
    let job = editor(&chrome).await;
    caret_behind(&chrome, "width = \"").await;
    job.send_keys("x").await.expect("typing");
    chrome
        .client
        .find(Locator::Css("button.do"))
        .await
        .expect("the button")
        .click()
        .await
        .expect("it posts");
    chrome
        .until(
            "the summary has the focus",
            "return document.activeElement.id === 'summary'",
        )
        .await;
    assert!(
        chrome
            .client
            .title()
            .await
            .expect("a title")
            .starts_with("Error: ")
    );
    let link = chrome
        .client
        .find(Locator::Css("#summary a"))
        .await
        .expect("a link");
    link.click().await.expect("it leads somewhere");
    let selected = "const job = document.activeElement; return job.id === 'job' && job.value.slice(job.selectionStart, job.selectionEnd).includes('width = \"x')";
    assert_eq!(
        chrome.eval(selected).await,
        true,
        "the line is selected in the editor"
    );
    chrome.end().await;
}

/// With the Tab key alone: from the skip link to the button, nothing is a trap, focus is always seen.
#[tokio::test]
async fn the_keyboard_alone_reaches_everything() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/poppies").await;
    let mut seen = Vec::new();
    for _ in 0..90 {
        chrome
            .client
            .active_element()
            .await
            .expect("a focus")
            .send_keys(&Key::Tab.to_string())
            .await
            .expect("a key");
        let at = "const one = document.activeElement; const box = one.getBoundingClientRect(); const style = getComputedStyle(one);\
            return [one.textContent.trim().slice(0, 30), style.outlineStyle !== 'none' && box.width > 0 && box.bottom > 0 && box.top < innerHeight]";
        let at = chrome.eval(at).await;
        assert_eq!(at[1], true, "the focus on {} is not seen", at[0]);
        let name = at[0].as_str().unwrap_or_default().to_owned();
        if name.starts_with("Change the piece") {
            let heading = chrome.client.active_element().await.expect("the heading");
            heading
                .send_keys(&Key::Enter.to_string())
                .await
                .expect("a key");
        }
        seen.push(name);
    }
    for wanted in [
        "To the page itself",
        "Counter",
        "Show the customer",
        "Change the piece",
        "Work it out",
        "Outside",
    ] {
        assert!(
            seen.iter().any(|name| name.starts_with(wanted)),
            "{wanted} is not reached: {seen:?}"
        );
    }
    let order = |wanted: &str| seen.iter().position(|name| name.starts_with(wanted));
    assert!(
        order("Change the piece") < order("Work it out") && order("Work it out") < order("Outside"),
        "{seen:?}"
    );
    chrome.end().await;
}

/// A number opens its working in one step, and its inputs lead to the lines they came from.
#[tokio::test]
async fn a_number_opens_its_working_in_one_step() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/poppies").await;
    let number = chrome
        .client
        .find(Locator::Css(".size.large > summary"))
        .await
        .expect("a size");
    number.click().await.expect("it opens");
    let link = chrome
        .client
        .find(Locator::Css(".size.large[open] .account a[href^='#line-']"))
        .await
        .expect("an input");
    link.click().await.expect("it leads somewhere");
    let shown = "const line = document.querySelector(location.hash); const box = line.getBoundingClientRect(); return box.height > 0 && box.top < innerHeight && document.activeElement === line";
    chrome.until("the line is in view", shown).await;
    chrome.end().await;
}

//! Care by hand: a cure applied and undone, a question asked with the keyboard alone.

use fantoccini::Locator;
use fantoccini::key::Key;

use super::chrome::{Chrome, Shade};

/// The first cure of the page, pressed by the keyboard: the document is changed, the caution gone,
/// the change can be undone, and what was typed is back.
#[tokio::test]
async fn a_cure_is_applied_and_undone() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/heron").await;
    let before = chrome
        .eval("return document.getElementById('job').value")
        .await;
    let words = chrome
        .eval("return document.querySelector('.cautions button').textContent")
        .await;
    let told = chrome
        .eval("return document.querySelector('.cautions button').closest('li').querySelector('p').textContent")
        .await;
    let cure = chrome
        .client
        .find(Locator::Css(".cautions button"))
        .await
        .expect("a cure");
    cure.send_keys(&Key::Enter.to_string())
        .await
        .expect("a key");
    chrome
        .until(
            "it is done and has the focus",
            "return document.activeElement.classList.contains('done')",
        )
        .await;
    let after = chrome
        .eval("return document.getElementById('job').value")
        .await;
    assert_ne!(before, after, "the document is changed");
    let left = format!(
        "return [...document.querySelectorAll('.cautions li')].some((one) => one.querySelector('p').textContent === {told})"
    );
    assert_eq!(chrome.eval(&left).await, false, "{told} is gone");
    let undo = chrome
        .client
        .find(Locator::Css(".done button"))
        .await
        .expect("the undoing");
    let said = undo.text().await.expect("its words");
    assert_eq!(said, format!("Undo: {}", words.as_str().expect("words")));
    undo.click().await.expect("it posts");
    chrome
        .until(
            "the document is as it was",
            &format!("return document.getElementById('job').value === {before} && !document.querySelector('.done')"),
        )
        .await;
    chrome.end().await;
}

/// From the first field to the answer with Tab and Enter; a number of it opens its working in one key.
#[tokio::test]
async fn a_question_is_asked_with_the_keyboard_alone() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/care/hang/wire").await;
    let weight = chrome
        .client
        .find(Locator::Id("hang-wire-weight"))
        .await
        .expect("the field");
    weight.clear().await.expect("it is emptied");
    weight.send_keys("30 lb").await.expect("typing");
    weight
        .send_keys(&Key::Enter.to_string())
        .await
        .expect("a key");
    chrome
        .until(
            "it is answered",
            "return document.getElementById('found') !== null",
        )
        .await;
    chrome
        .eval("document.querySelector('.found details.size > summary').focus()")
        .await;
    let number = chrome.client.active_element().await.expect("a number");
    number
        .send_keys(&Key::Enter.to_string())
        .await
        .expect("a key");
    chrome
        .until(
            "its working is open",
            "return document.querySelector('.found details[open] .account') !== null",
        )
        .await;
    chrome.end().await;
}

/// Nothing is cut off or scrolls sideways on the narrowest screens.
#[tokio::test]
async fn care_fits_a_narrow_screen() {
    let chrome = Chrome::narrow(320).await;
    for path in [
        "/care",
        "/care/light/fade?medium=watercolour",
        "/care/hang/rail?wood=basswood&width=5/8&depth=3/4&span=32&load=5+lb",
        "/piece/heron",
    ] {
        chrome.go(path).await;
        chrome
            .eval("for (const one of document.querySelectorAll('details')) one.open = true")
            .await;
        let wide = "return document.documentElement.scrollWidth";
        assert_eq!(chrome.eval(wide).await, 320, "{path}");
    }
    chrome.end().await;
}

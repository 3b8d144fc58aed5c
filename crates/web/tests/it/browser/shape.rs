//! Narrow sheets, large letters, targets a finger finds.

use super::chrome::{Chrome, Shade};

const PAGES: [&str; 8] = [
    "/",
    "/piece/heron",
    "/piece/heron?customer=1",
    "/bench",
    "/bench/list",
    "/settings",
    "/materials",
    "/nowhere",
];

/// 320 px wide, as WCAG 1.4.10 asks: nothing needs scrolling across, but for the lines of the document.
#[tokio::test]
async fn nothing_scrolls_across_at_320_pixels() {
    let chrome = Chrome::narrow(320).await;
    for path in PAGES {
        chrome.go(path).await;
        chrome
            .eval("for (const one of document.querySelectorAll('details')) one.open = true")
            .await;
        // A page too wide is shown smaller, so the sheet it was laid out for is told apart from the window.
        let wide = "return [...document.querySelectorAll('body *')]\
            .filter((one) => !one.closest('textarea') && one.getBoundingClientRect().right > 320.5 && getComputedStyle(one).clipPath === 'none')\
            .map((one) => one.outerHTML.slice(0, 100))";
        assert_eq!(
            chrome.eval(wide).await,
            serde_json::json!([]),
            "{path} needs scrolling across"
        );
        assert_eq!(
            chrome
                .eval("return document.documentElement.scrollWidth")
                .await,
            320,
            "{path}"
        );
        let smallest = "return Math.min(...[...document.querySelectorAll('main *')]\
            .filter((one) => !one.closest('svg, .over, .under') && [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim()))\
            .map((one) => parseFloat(getComputedStyle(one).fontSize)))";
        let smallest = chrome.eval(smallest).await.as_f64().expect("a size");
        assert!(smallest >= 15.99, "{path} has letters of {smallest} px");
    }
    chrome.end().await;
}

/// Buttons are at least 44 px high, every other control 24 px.
#[tokio::test]
async fn a_finger_finds_every_control() {
    let chrome = Chrome::narrow(360).await;
    for path in PAGES {
        chrome.go(path).await;
        chrome
            .eval("for (const one of document.querySelectorAll('details')) one.open = true")
            .await;
        let small = "return [...document.querySelectorAll('button, .button, input[type=file], summary, nav a, .kinds a, .cuts a')]\
            .filter((one) => { const box = one.getBoundingClientRect(); return box.height < (one.matches('button, .button, input, nav a') ? 43.9 : 23.9) })\
            .map((one) => one.outerHTML.slice(0, 80))";
        let small = chrome.eval(small).await;
        assert_eq!(small, serde_json::json!([]), "{path}");
    }
    chrome.end().await;
}

/// Letters twice as large (WCAG 1.4.4): the page still fits the window.
#[tokio::test]
async fn letters_twice_as_large_still_fit() {
    let chrome = Chrome::new(Shade::Light).await;
    for path in PAGES {
        chrome.go(path).await;
        chrome
            .eval("document.documentElement.style.fontSize = '34px'")
            .await;
        let fits = chrome
            .eval("return document.documentElement.scrollWidth <= innerWidth")
            .await;
        assert_eq!(fits, true, "{path}");
    }
    chrome.end().await;
}

//! The Bench by hand: tick, plan, cut; read from an arm away, on any sheet.

use fantoccini::Locator;

use super::chrome::{Chrome, Shade};

async fn press(chrome: &Chrome, css: &str) {
    let found = chrome.client.find(Locator::Css(css)).await;
    let found = found.unwrap_or_else(|error| panic!("{css} is not there: {error}"));
    found.click().await.expect("it is pressed");
}

/// Plans one job and opens the first material of the plan.
async fn cutting(chrome: &Chrome) {
    chrome.go("/bench?ticked=none").await;
    press(chrome, "label[for='job-heron']").await;
    press(chrome, ".patience .do").await;
    chrome
        .until(
            "the plan is there",
            "return document.querySelector('ol.materials') !== null",
        )
        .await;
    press(chrome, ".buttons .do").await;
    chrome
        .until(
            "the first material is there",
            "return document.querySelector('.leaf svg') !== null",
        )
        .await;
}

#[tokio::test]
async fn a_job_is_ticked_planned_and_cut_material_by_material() {
    let chrome = Chrome::new(Shade::Light).await;
    cutting(&chrome).await;
    let mut seen = Vec::new();
    loop {
        let name = chrome
            .eval("return document.querySelector('h1').textContent")
            .await;
        assert!(!seen.contains(&name), "{name} comes twice");
        seen.push(name);
        let more = "return document.querySelector('nav.buttons .do') !== null";
        if chrome.eval(more).await != true {
            break;
        }
        let before = chrome.eval("return location.href").await;
        press(&chrome, "nav.buttons .do").await;
        let moved = format!(
            "return location.href !== {before} && document.querySelector('.leaf') !== null"
        );
        chrome.until("the next material is there", &moved).await;
    }
    assert!(seen.len() > 3, "{seen:?}");
    chrome.end().await;
}

/// Digits at least 4.5 mm high where the tool is set by them, 3.3 mm everywhere (ISO 9241: 22 and 16
/// minutes of arc at 700 mm), with 96 px to the inch as browsers count; measured in the lettering itself.
#[tokio::test]
async fn sizes_are_read_from_an_arm_away() {
    let chrome = Chrome::new(Shade::Light).await;
    cutting(&chrome).await;
    let lowest = |css: &str| {
        format!(
            "const pen = document.createElement('canvas').getContext('2d');\
             return Math.min(...[...document.querySelectorAll('{css}')]\
             .filter((one) => !one.closest('svg, .over, .under'))\
             .map((one) => {{ const style = getComputedStyle(one);\
             pen.font = style.fontWeight + ' ' + style.fontSize + ' ' + style.fontFamily;\
             return pen.measureText('0').actualBoundingBoxAscent / 96 * 25.4 }}))"
        )
    };
    let settings = chrome.eval(&lowest(".steps .figure, .steps .number")).await;
    let settings = settings.as_f64().expect("a height");
    assert!(settings >= 4.5, "settings are {settings} mm high");
    let all =
        "main p, main td, main th, main dt, main dd, main a, main li, main span, main summary";
    let all = chrome.eval(&lowest(all)).await.as_f64().expect("a height");
    assert!(all >= 3.3, "the lowest digits are {all} mm high");
    chrome.end().await;
}

#[tokio::test]
async fn a_plan_needs_no_scrolling_across_at_320_pixels() {
    let chrome = Chrome::narrow(320).await;
    cutting(&chrome).await;
    chrome
        .eval("for (const one of document.querySelectorAll('details')) one.open = true")
        .await;
    let wide = "return [...document.querySelectorAll('body *')]\
        .filter((one) => !one.closest('svg') && one.getBoundingClientRect().right > 320.5 && getComputedStyle(one).clipPath === 'none')\
        .map((one) => one.outerHTML.slice(0, 100))";
    assert_eq!(chrome.eval(wide).await, serde_json::json!([]));
    chrome.end().await;
}

/// A fault's link leads to its line of the list, and the list is as it was typed.
#[tokio::test]
async fn a_fault_of_the_list_leads_to_its_line() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/bench/list").await;
    chrome
        .eval("const list = document.getElementById('list'); list.value = list.value.replace('8 ft', '8 fot'); document.querySelector('form.plan').requestSubmit()")
        .await;
    chrome
        .until(
            "the summary has the focus",
            "return document.activeElement.id === 'summary'",
        )
        .await;
    press(&chrome, "#summary a").await;
    let selected = "const list = document.activeElement; return list.id === 'list' && list.value.slice(list.selectionStart, list.selectionEnd).includes('8 fot')";
    assert_eq!(chrome.eval(selected).await, true);
    chrome.end().await;
}

//! A price by hand: what is asked beside the piece changes it while it is ticked, and a quote is given.

use fantoccini::Locator;

use super::chrome::{Chrome, Shade};

const TOTAL: &str = "return document.querySelector('section.price').textContent";

#[tokio::test]
async fn a_rush_is_ticked_and_the_price_follows() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/harbour").await;
    let plain = chrome.eval(TOTAL).await;
    let plain = plain.as_str().expect("a price");
    assert!(plain.contains("231.53 USD"), "{plain}");
    assert!(!plain.contains("Haste"), "{plain}");
    let rush = Locator::Id("rush");
    let rush = chrome.client.find(rush).await.expect("the control");
    rush.click().await.expect("it is ticked");
    let gone = "return !document.querySelector('section.price').textContent.includes('231.53 USD')";
    chrome.until("the total changes", gone).await;
    let hurried = chrome.eval(TOTAL).await;
    let hurried = hurried.as_str().expect("a price");
    assert!(hurried.contains("Haste"), "{hurried}");
    let kept =
        "return document.getElementById('rush').checked && document.activeElement.id === 'rush'";
    assert_eq!(chrome.eval(kept).await, true, "the tick and the focus stay");
    rush.click().await.expect("it is taken away");
    let back = "return document.querySelector('section.price').textContent.includes('231.53 USD')";
    chrome.until("the total is back", back).await;
    chrome.end().await;
}

#[tokio::test]
async fn a_quote_is_given_with_what_is_ticked() {
    let chrome = Chrome::new(Shade::Light).await;
    chrome.go("/piece/harbour").await;
    for id in ["rush", "discount-1"] {
        let control = chrome.client.find(Locator::Id(id)).await;
        control.expect("the control").click().await.expect("ticked");
    }
    let number = chrome.client.find(Locator::Id("number")).await;
    let number = number.expect("the field");
    number.send_keys("Q-7").await.expect("typing");
    let button = Locator::Css("button[formaction='/piece/harbour/quote']");
    let button = chrome.client.find(button).await.expect("the button");
    button.click().await.expect("it posts");
    let given = "return document.querySelector('h1').textContent === 'Quote Q-7'";
    chrome.until("the quote is given", given).await;
    let told = chrome.eval(TOTAL).await;
    let told = told.as_str().expect("a price");
    for line in ["Wanted within three days", "Artists' discount"] {
        assert!(told.contains(line), "{line}: {told}");
    }
    chrome.end().await;
}

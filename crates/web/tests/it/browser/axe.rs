//! No page and no state breaks a rule of accessibility.

use std::path::PathBuf;

use serde_json::Value;

use super::chrome::{Chrome, Shade};

/// Rules that must have looked at something, over all pages together.
const MUST_RUN: [&str; 11] = [
    "label",
    "button-name",
    "link-name",
    "color-contrast",
    "target-size",
    "svg-img-alt",
    "duplicate-id-aria",
    "html-has-lang",
    "document-title",
    "landmark-one-main",
    "heading-order",
];

/// Every page, and every state of it that is reached by an address.
const PAGES: [&str; 13] = [
    "/",
    "/piece/heron",
    "/piece/weir",
    "/piece/heron?customer=1",
    "/bench",
    "/bench/list",
    "/care",
    "/care/light/fade?medium=watercolour&lux=150&hours=8",
    "/care/air/wall",
    "/quote",
    "/settings",
    "/materials",
    "/nowhere",
];

#[tokio::test]
async fn no_page_breaks_a_rule_in_the_light() {
    walk(Shade::Light).await;
}

#[tokio::test]
async fn no_page_breaks_a_rule_in_the_dark() {
    walk(Shade::Dark).await;
}

async fn walk(shade: Shade) {
    let chrome = Chrome::new(shade).await;
    let mut ran = Vec::new();
    for path in PAGES {
        chrome.go(path).await;
        let dark = "return matchMedia('(prefers-color-scheme: dark)').matches";
        assert_eq!(
            chrome.eval(dark).await,
            shade == Shade::Dark,
            "the shade asked for"
        );
        ran.extend(clean(&chrome, path).await);
    }
    for state in STATES {
        chrome.go(state.path).await;
        chrome.eval(OPEN_ALL).await;
        chrome.eval(state.script).await;
        chrome.until(state.name, state.reached).await;
        ran.extend(clean(&chrome, state.name).await);
    }
    for rule in MUST_RUN {
        assert!(
            ran.iter().any(|name| name == rule),
            "the rule {rule} looked at nothing"
        );
    }
    chrome.end().await;
}

/// A state of a page that a hand brings about.
struct State {
    name: &'static str,
    path: &'static str,
    script: &'static str,
    reached: &'static str,
}

const OPEN_ALL: &str = "for (const one of document.querySelectorAll('details')) one.open = true";

const STATES: [State; 17] = [
    State {
        name: "a quote given",
        path: "/piece/harbour",
        script: "for (const id of ['rush', 'discount-1', 'exempt']) document.getElementById(id).checked = true;\
            document.getElementById('number').value = 'Q-1';\
            document.querySelector('button[formaction$=\"/quote\"]').click()",
        reached: "return document.querySelector('button[formaction*=\"copy=shop\"]') !== null",
    },
    State {
        name: "a quote opened",
        path: "/quote",
        script: "const body = new URLSearchParams({ number: 'Q-1' });\
            fetch('/piece/harbour').then((piece) => piece.text()).then((text) => {\
                const page = new DOMParser().parseFromString(text, 'text/html');\
                body.set('job', page.getElementById('job').value);\
                return fetch('/piece/harbour/quote', { method: 'POST', body });\
            }).then((given) => given.text()).then((text) => {\
                const page = new DOMParser().parseFromString(text, 'text/html');\
                document.getElementById('pasted').value = page.querySelector('[name=quote]').value;\
                document.querySelector('form[action=\"/quote\"]').requestSubmit();\
            })",
        reached: "return document.querySelector('.verdict') !== null",
    },
    State {
        name: "a quote that can't be opened",
        path: "/quote",
        script: "document.getElementById('pasted').value = '{';\
            document.querySelector('form[action=\"/quote\"]').requestSubmit()",
        reached: "return document.getElementById('summary') !== null",
    },
    State {
        name: "every question of care, opened",
        path: "/care",
        script: "",
        reached: "return document.querySelectorAll('.asking:not([open])').length === 0",
    },
    State {
        name: "an answer about a load, with everything open",
        path: "/care/hang/wire?weight=20+lb&rings=20&rise=3&breaks=60+lb",
        script: "",
        reached: "return document.querySelector('.found details[open]') !== null",
    },
    State {
        name: "a question that can't be answered",
        path: "/care/hang/wire?weight=heavy&rings=&rise=3",
        script: "",
        reached: "return document.querySelectorAll('#summary li').length === 2",
    },
    State {
        name: "a piece with a cure applied",
        path: "/piece/heron",
        script: "document.querySelector('.cautions button').click()",
        reached: "return document.querySelector('.summary.done') !== null",
    },
    State {
        name: "a piece with everything open",
        path: "/piece/heron",
        script: "",
        reached: "return document.querySelectorAll('details:not([open])').length === 0",
    },
    State {
        name: "a budget, with its proposals",
        path: "/piece/harbour",
        script: "document.getElementById('ceiling').value = '226';\
            document.querySelector('button[formaction$=\"/budget\"]').click()",
        reached: "return document.querySelector('.proposals button') !== null",
    },
    State {
        name: "alternatives side by side",
        path: "/piece/harbour",
        script: "document.querySelector('button[formaction=\"/alternatives\"]').click()",
        reached: "return document.querySelector('.alternative') !== null",
    },
    State {
        name: "a document that can't be read",
        path: "/piece/heron",
        script: "document.getElementById('job').value = 'rabbet = 1, units = ell';\
            document.getElementById('piece').requestSubmit()",
        reached: "return document.getElementById('summary') !== null",
    },
    State {
        name: "typing that can't be read yet",
        path: "/piece/poppies",
        script: "const job = document.getElementById('job');\
            job.value = job.value.replace('rabbet = 1', 'rabbet = ');\
            job.dispatchEvent(new Event('input'))",
        reached: "return document.querySelector('.stale') !== null",
    },
    State {
        name: "a piece with cautions",
        path: "/piece/poppies",
        script: "const job = document.getElementById('job');\
            job.value = job.value.replace(/width = .*/, 'width = 40');\
            document.getElementById('piece').requestSubmit()",
        reached: "return document.querySelector('.cautions li') !== null",
    },
    State {
        name: "no job ticked, and no number of seconds",
        path: "/bench?ticked=none",
        script: "document.getElementById('seconds').value = 'a while';\
            document.querySelector('form.plan').requestSubmit()",
        reached: "return document.querySelectorAll('#summary li').length === 2",
    },
    State {
        name: "a cut list that can't be read",
        path: "/bench/list",
        script: "document.getElementById('list').value = '[[piece]]\\nlength = \"8 fot\"';\
            document.querySelector('form.plan').requestSubmit()",
        reached: "return document.getElementById('summary') !== null",
    },
    State {
        name: "a plan",
        path: "/bench?ticked=none",
        script: "document.getElementById('job-heron').checked = true;\
            document.querySelector('form.plan').requestSubmit()",
        reached: "return document.querySelector('ol.materials') !== null",
    },
    State {
        name: "a material of a plan, with everything open",
        path: "/bench",
        script: "const body = new URLSearchParams([['job', 'heron'], ['job', 'quilt'], ['seconds', '1']]);\
            fetch('/bench', { method: 'POST', body }).then((plan) => { location = plan.url + '/1' })",
        reached: "for (const one of document.querySelectorAll('details')) one.open = true;\
            return document.querySelector('.leaf details[open]') !== null",
    },
];

/// Holds the page to every rule; returns the rules that looked at something.
async fn clean(chrome: &Chrome, state: &str) -> Vec<String> {
    chrome.eval(&axe()).await;
    let script = "const done = arguments[arguments.length - 1];\
        axe.run(document, { resultTypes: ['violations', 'incomplete'], runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })\
        .then((all) => done({ violations: all.violations, incomplete: all.incomplete, passes: all.passes.map((rule) => rule.id) }), (error) => done({ error: String(error) }))";
    let found = chrome
        .client
        .execute_async(script, Vec::new())
        .await
        .expect("axe runs");
    assert!(found.get("error").is_none(), "{state}: {found}");
    let told = |list: &Value| -> Vec<String> {
        let rules = list.as_array().expect("a list").iter();
        rules
            .map(|rule| format!("{}: {}\n  {}", rule["id"], rule["help"], nodes(rule)))
            .collect()
    };
    let broken = told(&found["violations"]);
    assert!(broken.is_empty(), "{state}:\n{}", broken.join("\n"));
    let open = found["incomplete"].as_array().expect("a list").iter();
    let open: Vec<&Value> = open.filter(|rule| !is_reviewed(rule)).collect();
    assert!(
        open.is_empty(),
        "{state}, to be looked at by a person: {open:#?}"
    );
    let passed = found["passes"].as_array().expect("a list").iter();
    passed
        .filter_map(|rule| rule.as_str().map(str::to_owned))
        .collect()
}

/// Where the rules ask for a person's eye, and a person has looked: words over drawings stand on
/// the sheet's own paper, and axe can't see the ground behind SVG and pictures.
fn is_reviewed(rule: &Value) -> bool {
    rule["id"] == "color-contrast"
        && rule["nodes"].as_array().expect("nodes").iter().all(|node| {
            let html = node["html"].as_str().unwrap_or_default();
            html.starts_with("<text ")
                || html.starts_with("<span class=\"over\"")
                || html.starts_with("<span class=\"under\"")
        })
}

fn nodes(rule: &Value) -> String {
    let nodes = rule["nodes"].as_array().expect("nodes").iter().take(5);
    let told: Vec<String> = nodes
        .map(|node| format!("{} {}", node["html"], node["failureSummary"]))
        .collect();
    told.join("\n  ")
}

/// The rules themselves: `AXE_CORE`, else where `./check` puts them.
fn axe() -> String {
    let place = std::env::var_os("AXE_CORE").map_or_else(
        || {
            let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(
                || PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../target"),
                PathBuf::from,
            );
            target.join("reference/axe.min.js")
        },
        PathBuf::from,
    );
    std::fs::read_to_string(&place).unwrap_or_else(|error| {
        panic!(
            "{} can't be read ({error}); ./check puts the accessibility rules there",
            place.display()
        )
    })
}

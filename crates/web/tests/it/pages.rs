//! Every page: what it shows, that it is whole, and what it does with what can't be read.

use axum::http::StatusCode;

use crate::visit::{form, get, job, post};

#[tokio::test]
async fn the_counter_hangs_every_piece_of_the_invented_shop() {
    let page = get("/").await;
    assert_eq!(page.status, StatusCode::OK);
    for piece in demo::JOBS {
        assert!(
            page.text()
                .contains(&format!("/piece/{}/front.svg", piece.name)),
            "{} hangs",
            piece.name
        );
    }
    assert!(
        page.text().contains("Nothing is kept here yet"),
        "it says that nothing is kept"
    );
}

#[tokio::test]
async fn every_piece_has_three_drawings_its_sizes_and_its_working() {
    for piece in demo::JOBS {
        let page = get(&format!("/piece/{}", piece.name)).await;
        assert_eq!(page.status, StatusCode::OK, "{}", piece.name);
        let text = page.text();
        assert_eq!(
            text.matches("role=\"img\"").count(),
            3,
            "{} has three drawings",
            piece.name
        );
        for part in [
            "Cautions",
            "Sizes",
            "Checklist",
            "All the working",
            "Work it out",
            "Ticket on A4",
        ] {
            assert!(text.contains(part), "{} lacks {part}", piece.name);
        }
    }
}

/// Every link to a line of working leads to one that is on the page, and ids are unique.
#[tokio::test]
async fn links_to_the_working_lead_somewhere() {
    for piece in demo::JOBS {
        let page = get(&format!("/piece/{}", piece.name)).await;
        let mut ids: Vec<&str> = page
            .text()
            .split(" id=\"")
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap_or_default())
            .collect();
        let count = ids.len();
        ids.sort_unstable();
        for link in page
            .text()
            .split("href=\"#")
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap_or_default())
        {
            assert!(
                ids.binary_search(&link).is_ok(),
                "{}: #{link} leads nowhere",
                piece.name
            );
        }
        ids.dedup();
        assert_eq!(ids.len(), count, "{} has an id twice", piece.name);
    }
}

#[tokio::test]
async fn the_front_is_the_piece_alone_and_as_wide_as_it_is_high() {
    for piece in demo::JOBS {
        let front = get(&format!("/piece/{}/front.svg", piece.name)).await;
        assert_eq!(
            (front.status, front.header("content-type")),
            (StatusCode::OK, "image/svg+xml"),
            "{}",
            piece.name
        );
        let drawing = roxmltree::Document::parse(front.text()).expect("well-formed");
        let plain = drawing.descendants().all(|node| {
            node.tag_name().name() != "text" && node.attribute("class") != Some("paper")
        });
        assert!(plain, "{} still has words or a ground", piece.name);
        let told = post("/api/v1/derive", "application/toml", piece.toml)
            .await
            .json();
        if told["sides"] != 4 {
            continue;
        }
        let quanta = |axis: &str| {
            told["outside"][axis]["quanta"]
                .to_string()
                .parse::<f64>()
                .expect("a length")
        };
        let viewed: Vec<f64> = drawing
            .root_element()
            .attribute("viewBox")
            .expect("a box")
            .split(' ')
            .filter_map(|n| n.parse().ok())
            .collect();
        let (wanted, found) = (quanta("width") / quanta("height"), viewed[2] / viewed[3]);
        assert!(
            (wanted - found).abs() < 0.002,
            "{}: {found} instead of {wanted}",
            piece.name
        );
    }
}

#[tokio::test]
async fn the_customer_sees_the_piece_and_not_the_shops_side() {
    let page = get("/piece/heron?customer=1").await;
    assert_eq!(page.status, StatusCode::OK);
    for hidden in [
        "Cautions",
        "Checklist",
        "Mat cutter",
        "<textarea",
        "All the working",
        "Back view",
    ] {
        assert!(!page.text().contains(hidden), "the customer sees {hidden}");
    }
    assert_eq!(page.text().matches("role=\"img\"").count(), 1);
    assert!(
        page.text().contains("Back to the shop"),
        "there is a way back"
    );
}

/// The document a customer is shown is the one in the editor, also on the way back.
#[tokio::test]
async fn changes_survive_a_look_by_the_customer() {
    let changed = job("heron").replacen("title = \"", "title = \"Changed ", 1);
    let page = form("/piece/heron?customer=1", &changed, &changed).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(
        page.text().contains("Changed "),
        "the changed title is shown"
    );
    assert!(
        page.text().matches("title = &quot;Changed ").count() >= 1,
        "the way back carries the document"
    );
}

#[tokio::test]
async fn a_document_that_cannot_be_read_keeps_its_typing_and_the_last_good_drawing() {
    let good = job("poppies");
    let typed = good.replacen("width = \"", "width = \"x", 1);
    let line = 1 + good[..good.find("width = \"").expect("a width")]
        .matches('\n')
        .count();
    let page = form("/piece/poppies", &typed, good).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(page.title().starts_with("Error: "), "{}", page.title());
    let text = page.text();
    assert!(text.contains("width = &quot;x"), "what was typed is kept");
    assert!(
        text.contains(&format!("Line {line}: ")),
        "the line is named"
    );
    assert!(
        text.contains("The last state that could be drawn"),
        "the drawing says that it is old"
    );
    assert_eq!(text.matches("role=\"img\"").count(), 3, "and is there");
    assert!(text.contains("autofocus"), "the summary takes the focus");
    assert!(text.contains("aria-invalid=\"true\""));
}

#[tokio::test]
async fn only_what_changes_comes_back_to_the_script() {
    let asked = |body: String| {
        let request = crate::visit::request(axum::http::Method::POST, "/piece/poppies")
            .header("content-type", "application/x-www-form-urlencoded")
            .header("rabbet-part", "1");
        crate::visit::send(request.body(body.into()).expect("a request"))
    };
    let good = crate::visit::encoded(job("poppies"));
    let part = asked(format!("job={good}&good={good}")).await;
    assert_eq!(part.status, StatusCode::OK);
    assert!(
        !part.text().contains("<textarea"),
        "the editor is never swapped"
    );
    for id in ["sheet", "follows", "bench", "reading"] {
        assert!(
            part.text().contains(&format!("id=\"{id}\"")),
            "{id} is missing"
        );
    }
    let part = asked(format!("job=rabbet&good={good}")).await;
    assert_eq!(part.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        !part.text().contains("id=\"sheet\""),
        "the old drawing stays"
    );
    assert!(part.text().contains("Line 1"), "{}", part.text());
}

#[tokio::test]
async fn hostile_text_stays_text() {
    let hostile = "<script>alert(1)</script>\"'&</textarea></svg>";
    let document = format!("# {hostile}\n{}", job("poppies")).replacen(
        "title = \"Poppies, Open and Closing\"",
        &format!("title = {}", serde_json::json!(hostile)),
        1,
    );
    assert!(
        document.contains("alert(1)</script>\\\"'"),
        "the title was replaced"
    );
    for path in ["/piece/poppies", "/piece/poppies?customer=1"] {
        let page = form(path, &document, &document).await;
        assert_eq!(page.status, StatusCode::OK, "{path}");
        assert!(!page.text().contains("<script>alert"), "{path}");
        assert!(page.text().contains("&lt;script&gt;alert(1)"), "{path}");
        assert_eq!(
            page.text().matches("</textarea>").count(),
            usize::from(!path.ends_with('1')),
            "{path}"
        );
    }
}

#[tokio::test]
async fn the_papers_of_the_document_in_the_editor() {
    let document = job("heron");
    for paper in ["a4", "letter"] {
        let ticket = form(
            &format!("/piece/heron/ticket.pdf?paper={paper}"),
            document,
            document,
        )
        .await;
        assert_eq!(
            (ticket.status, ticket.header("content-type")),
            (StatusCode::OK, "application/pdf")
        );
        assert!(ticket.bytes.starts_with(b"%PDF-"), "{paper}");
    }
    for view in ["elevation", "section", "back"] {
        let drawing = form(&format!("/piece/heron/{view}"), document, document).await;
        assert_eq!(
            (drawing.status, drawing.header("content-type")),
            (StatusCode::OK, "image/svg+xml"),
            "{view}"
        );
        roxmltree::Document::parse(drawing.text()).expect("well-formed");
    }
    let kept = form("/piece/heron/job.toml", "not a job ½", "").await;
    assert_eq!(
        (kept.status, kept.text()),
        (StatusCode::OK, "not a job ½"),
        "what was typed is never lost"
    );
    assert!(kept.header("content-disposition").starts_with("attachment"));
}

#[tokio::test]
async fn a_document_taken_away_is_opened_again() {
    let body = format!(
        "--cut\r\ncontent-disposition: form-data; name=\"file\"; filename=\"job.toml\"\r\n\r\n{}\r\n--cut--\r\n",
        job("harbour")
    );
    let page = post("/open", "multipart/form-data; boundary=cut", body).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(
        page.title().starts_with("Harbour at Low Tide"),
        "{}",
        page.title()
    );
    let again = form("/piece/opened", job("harbour"), "").await;
    assert_eq!(
        again.status,
        StatusCode::OK,
        "and it can be worked out there"
    );
    let nothing = post("/open", "multipart/form-data; boundary=cut", "--cut--\r\n").await;
    assert_eq!(nothing.status, StatusCode::BAD_REQUEST);
    assert!(nothing.text().contains("Choose a job document"));
}

#[tokio::test]
async fn settings_and_materials_are_listed_whole_with_their_sources() {
    let settings = get("/settings").await;
    for key in trade::settings::KEYS {
        assert!(
            settings
                .text()
                .contains(&format!("<tr id=\"{}\"", key.id())),
            "{} is missing",
            key.id()
        );
    }
    assert!(settings.text().contains("common practice, no source"));
    let materials = get("/materials").await;
    for material in trade::Catalogue::starter().iter() {
        assert!(
            materials
                .text()
                .contains(&format!("<tr id=\"{}\"", material.code)),
            "{} is missing",
            material.code
        );
    }
}

#[tokio::test]
async fn what_is_not_there_says_so() {
    for path in [
        "/piece/nobody",
        "/nowhere",
        "/asset/secret",
        "/piece/heron/ticket",
    ] {
        let page = get(path).await;
        assert!(
            matches!(
                page.status,
                StatusCode::NOT_FOUND | StatusCode::METHOD_NOT_ALLOWED
            ),
            "{path}: {}",
            page.status
        );
        assert!(page.title().starts_with("Error: "), "{path}");
        assert!(page.text().contains("To the Counter"), "{path}");
    }
}

#[tokio::test]
async fn nothing_the_pages_say_blames_the_visitor() {
    let typed = job("poppies").replacen("width = \"", "width = \"x", 1);
    let pages = [
        get("/").await,
        get("/piece/heron").await,
        get("/settings").await,
        get("/nowhere").await,
        form("/piece/poppies", &typed, job("poppies")).await,
    ];
    for page in &pages {
        let words = page.text().to_lowercase().replace("aria-invalid", "");
        for word in ["invalid", "illegal", "please", "sorry", "oops"] {
            // not said: compared with
            assert!(!words.contains(word), "{} says {word}", page.title());
        }
    }
}

/// The first page, without lettering and pictures, under 100 kB as it travels.
#[tokio::test]
async fn the_first_page_is_light() {
    let request = |path: &str| {
        let asked =
            crate::visit::request(axum::http::Method::GET, path).header("accept-encoding", "gzip");
        crate::visit::send(asked.body(axum::body::Body::empty()).expect("a request"))
    };
    let mut bytes = 0;
    for path in [
        "/",
        "/asset/table.css",
        "/asset/redraw.js",
        "/asset/mark.svg",
    ] {
        bytes += request(path).await.bytes.len();
    }
    assert!(bytes < 100_000, "{bytes} bytes");
}

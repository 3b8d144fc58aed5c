//! What can't be cut, and what the refusal says.

use crate::bench::{demo, sized, tried};

/// Checks the sentences of a day's faults.
fn check(jobs: &[&str], stock: &str, changes: &[(&str, &str)], expected: &[&str]) {
    let faults = tried(&demo(jobs), stock, changes).expect_err("it can't be cut");
    let said: Vec<String> = faults.iter().map(ToString::to_string).collect();
    assert_eq!(said, expected);
}

#[test]
fn a_part_larger_than_any_stock_names_what_would_do() {
    let listed = "stock = 1\nbuy = \"listed\"\n\
        [[stick]]\nmaterial = \"oak-square-1\"\nlength = \"20 in\"\ncount = 9\n\
        [[sheet]]\nmaterial = \"glass-uv-2.5\"\nsize = \"16 x 20 in\"\ncount = 4\n\
        [[sheet]]\nmaterial = \"mat-4-conservation\"\nsize = \"32 x 40 in\"\n\
        [[sheet]]\nmaterial = \"foam-5\"\nsize = \"15 x 90 in\"\n";
    // The legs are 22 7/8 in; a stick of 20 in less 1 in of trim leaves 19 in.
    let expected = [
        "2026-411: Frame, top (22 7/8 in) is larger than any stock of oak-square-1; 20 in from the rack comes nearest with room for 19 in, too small by 3 7/8 in. The catalogue's 108 in would do: list it in the stock document",
        "2026-411: Frame, bottom (22 7/8 in) is larger than any stock of oak-square-1; 20 in from the rack comes nearest with room for 19 in, too small by 3 7/8 in. The catalogue's 108 in would do: list it in the stock document",
        "2026-411: Backing (21 1/4 in x 17 1/4 in) is larger than any stock of foam-5; 15 in x 90 in new comes nearest with room for 15 in x 90 in, too small by 2 1/4 in x 0 in. The catalogue's 32 in x 40 in would do: list it in the stock document",
        "2026-411: Glazing (21 1/4 in x 17 1/4 in) is larger than any stock of glass-uv-2.5; 16 in x 20 in from the rack comes nearest with room for 16 in x 20 in, too small by 1 1/4 in x 1 1/4 in. The catalogue's 22 in x 28 in would do: list it in the stock document",
    ];
    check(&["harbour"], listed, &[], &expected);
}

#[test]
fn where_no_catalogue_size_would_do_the_least_that_would_is_named() {
    let text = "rabbet = 1\n[[art]]\ntitle = \"Banner\"\nwidth = \"150\"\nheight = \"20\"\n\
        [[frame]]\nmoulding = \"oak-square-1\"\n";
    let faults = tried(&[sized(text)], "", &[]).expect_err("the legs are too long");
    // outside = 150 + 1/8 − 1/2 + 2 = 151 5/8; with an inch of trim 152 5/8.
    assert_eq!(
        faults[0].to_string(),
        "Banner: Frame, top (151 5/8 in) is larger than any stock of oak-square-1; 120 in new comes nearest with room for 119 in, too small by 32 5/8 in. Stock of at least 152 5/8 in would do"
    );
    assert_eq!(faults[0].job(), Some("Banner"));
    assert_eq!(faults[0].code(), "demand.too_large");
}

#[test]
fn a_part_as_large_as_its_stock_may_miss_by_a_step() {
    let text = "rabbet = 1\nunits = \"mm\"\n[[art]]\ntitle = \"Plate\"\nwidth = 815\nheight = 1000\n\
        [[frame]]\nmoulding = \"scoop-3\"\n[[backing]]\nboard = \"mount-uk-conservation\"\n";
    let Err(faults) = tried(&[sized(text)], "", &[]) else {
        panic!("it fits exactly only");
    };
    assert_eq!(
        faults[0].to_string(),
        "Plate: Backing (815 mm x 1000 mm) fits 815 mm x 1120 mm new exactly, but not counted in steps of 1/64 in; set cutting.tick finer"
    );
    assert!(tried(&[sized(text)], "", &[("cutting.tick", "0.1 mm")]).is_ok());
}

#[test]
fn all_faults_of_all_jobs_come_together() {
    let refused = "rabbet = 1\n[identity]\norder = \"A1\"\ndue = \"Friday\"\n\
        [[art]]\nwidth = \"8\"\nheight = \"10\"\n[[frame]]\nmoulding = \"walnut-1\"\n\
        [[mat]]\nboard = \"mat-8-museum\"\n[[mat]]\nboard = \"mat-8-museum\"\n\
        [[mat]]\nboard = \"mat-8-museum\"\n[[backing]]\nboard = \"padded-6\"\n";
    let bare = "rabbet = 1\n[[material]]\ncode = \"own-board\"\nkind = \"board\"\nthickness = \"1/16\"\n\
        [[art]]\nwidth = \"8\"\nheight = \"10\"\n[[frame]]\nface = 1\nlip = \"1/4\"\n\
        [[mat]]\nboard = \"own-board\"\n";
    let costs = "stock = 1\n\
        [[sheet]]\nmaterial = \"padded-6\"\nsize = \"32 x 40\"\ncost = \"9 USD\"\n\
        [[sheet]]\nmaterial = \"padded-6\"\nsize = \"20 x 30\"\ncost = \"9 EUR\"\n";
    let faults = tried(&[sized(refused), sized(bare)], costs, &[]).expect_err("much is wrong");
    let codes: Vec<&str> = faults.iter().map(demand::Fault::code).collect();
    assert_eq!(
        codes,
        [
            "demand.due",
            "demand.refused",
            "demand.no_stock",
            "demand.two_currencies"
        ]
    );
    assert_eq!(
        faults[2].to_string(),
        "there is no stock of own-board as job 2 describes it: the catalogue names no size of it; list some in the stock document, or write its sizes in the catalogue"
    );
    for fault in &faults {
        let said = fault.to_string().to_lowercase();
        for word in ["invalid", "illegal", "please", "sorry", "oops"] {
            assert!(!said.contains(word), "{said}");
        }
    }
}

#[test]
fn a_trim_that_leaves_nothing_is_named() {
    let stock = "stock = 1\n[[sheet]]\nmaterial = \"foam-5\"\nsize = \"24 x 24\"\n\
        [[cut]]\nmaterial = \"foam-5\"\ntrim = 12\n";
    let expected =
        ["the trim leaves nothing of 24 in x 24 in new of foam-5; make the trim smaller"];
    check(&["harbour"], stock, &[], &expected);
}

#[test]
fn where_nothing_may_be_bought_the_catalogue_is_not_blamed() {
    let stock = "stock = 1\nbuy = \"listed\"\n";
    let faults = tried(&demo(&["harbour"]), stock, &[]).expect_err("nothing is listed");
    assert_eq!(
        faults[0].to_string(),
        "there is no stock of oak-square-1: the stock document lists none, and says buy = \"listed\"; list some there, or write buy = \"catalogue\""
    );
}

/// 64 ticks are an inch; the job and the part are named, not the cutting room's piece.
#[test]
fn the_cutting_room_s_faults_are_said_in_lengths_with_job_and_part() {
    let day = tried(&demo(&["harbour"]), "", &[]).expect("it can be planned");
    let batch = day
        .batches
        .iter()
        .find(|batch| matches!(batch.work, demand::Work::Sheets { .. }));
    let batch = batch.expect("a job with sheets");
    let demand::Work::Sheets { problem, .. } = &batch.work else {
        panic!("sheets were looked for");
    };
    let narrow = cutting::Fault::TooNarrow {
        piece: problem.pieces[0].name.clone(),
        side: 16,
        least: 32,
    };
    let fault = batch.fault(&narrow, day.unit);
    assert_eq!(
        (fault.job(), fault.code()),
        (Some("2026-411"), "cut.refused")
    );
    let said = fault.to_string();
    assert!(
        said.contains(" of 2026-411 is 1/4 in on its short side; "),
        "{said}"
    );
    assert!(said.contains("narrower than 1/2 in"), "{said}");
    assert!(!said.contains("ticks"), "{said}");
}

//! The cut sheets of an invented plan, read back with outside readers.

#[path = "../../../drawing/tests/it/cuts/samples.rs"]
mod samples;

use drawing::{CutPiece, StickPiece};
use paperwork::{
    Bought, CutBook, CutLeaf, CutMaterial, CutProof, Danger, Paper, Stamp, cut_sheets_pdf,
};

use crate::bars::bars_are_true;
use crate::lettering::digit_height;
use crate::margins::edges_are_white;
use crate::reader::Print;

fn book() -> CutBook {
    CutBook {
        shop: "Three Gables Framing".to_owned(),
        plan: "week 48".to_owned(),
        orders: words(&["2417", "2418", "2419", "2420", "2421", "2431"]),
        made: Stamp {
            year: 2026,
            month: 11,
            day: 25,
            hour: 9,
            minute: 5,
        },
        date: "25 Nov 2026".to_owned(),
        revision: "revision 2, replaces revision 1".to_owned(),
        superseded: String::new(),
        materials: vec![board(), ash(), glass()],
    }
}

fn words(all: &[&str]) -> Vec<String> {
    all.iter().map(|line| (*line).to_owned()).collect()
}

fn proof(reached: u64, bound: u64) -> CutProof {
    CutProof {
        what: "Cost".to_owned(),
        reached,
        bound,
        reached_words: format!("$ {reached}.00"),
        bound_words: format!("$ {bound}.00"),
        more_is_better: false,
        note: "",
    }
}

fn board() -> CutMaterial {
    CutMaterial {
        name: "Rag board, chalk, 4 ply".to_owned(),
        take: words(&["1 sheet 48 × 36 in, rack B 3"]),
        buy: words(&["2 sheets 48 × 36 in"]),
        proof: Some(proof(84, 84)),
        bought: Bought::default(),
        drops: Vec::new(),
        uncut: Vec::new(),
        dangers: vec![Danger::Blade],
        leaves: vec![
            CutLeaf::Sheet(samples::board()),
            CutLeaf::Sheet(samples::window()),
        ],
    }
}

fn ash() -> CutMaterial {
    CutMaterial {
        name: "Ash cap 1 1/2".to_owned(),
        take: words(&["2 sticks 10 ft, run 7"]),
        buy: Vec::new(),
        proof: Some(proof(61, 60)),
        bought: Bought::default(),
        drops: Vec::new(),
        uncut: words(&["Job 2440, left, 31 1/4 in"]),
        dangers: vec![Danger::Saw],
        leaves: vec![
            CutLeaf::Stick(samples::stick()),
            CutLeaf::Stick(samples::stick()),
        ],
    }
}

fn glass() -> CutMaterial {
    CutMaterial {
        name: "Glass 2 mm".to_owned(),
        take: words(&["1 sheet 305 × 407 mm"]),
        buy: Vec::new(),
        proof: None,
        bought: Bought::default(),
        drops: Vec::new(),
        uncut: Vec::new(),
        dangers: vec![Danger::Glass],
        leaves: vec![CutLeaf::Sheet(samples::whole())],
    }
}

fn printed(paper: Paper) -> Print {
    Print::of(cut_sheets_pdf(&book(), paper).unwrap())
}

#[test]
fn a_strict_reader_finds_no_fault_on_either_paper() {
    for (paper, size) in [
        (Paper::A4, "595.276 x 841.89 pts (A4)"),
        (Paper::Letter, "612 x 792 pts (letter)"),
    ] {
        let print = printed(paper);
        let said = print.read_by("qpdf", &["--check", "{}"]);
        assert!(
            said.contains("No syntax or stream encoding errors found"),
            "{said}"
        );
        let said = print.read_by("pdfinfo", &["{}"]);
        for line in [
            "Tagged:          yes",
            "Title:           Cut sheets, week 48",
            size,
        ] {
            assert!(said.contains(line), "{line} is not in {said}");
        }
        edges_are_white(&print);
        bars_are_true(&print);
    }
}

/// A cover, the board's sheet with its list, its fallout, two sticks, the glass: each sheet and
/// each material begins a page.
#[test]
fn every_sheet_begins_a_page_and_every_page_is_counted() {
    let print = printed(Paper::A4);
    let pages = print.document().get_pages().len();
    for page in 1..=pages {
        let text = page_text(&print, page);
        assert!(text.contains(&format!("page {page} of {pages}")), "{text}");
        assert!(text.contains("Plan week 48 · 25 Nov 2026"), "{text}");
    }
    let begins: Vec<String> = (1..=pages)
        .map(|page| page_text(&print, page).chars().take(12).collect())
        .collect();
    let starting = |words: &str| {
        begins
            .iter()
            .filter(|begin| begin.starts_with(words))
            .count()
    };
    assert_eq!(starting("Cut sheets: "), 1, "{begins:?}");
    assert_eq!(starting("Sheet 1 of 2"), 1, "{begins:?}");
    assert_eq!(starting("Sheet 2 of 2"), 1, "{begins:?}");
    // The two sticks of the sample share a title, and each fills a page.
    assert_eq!(starting("Stick 1 of 4"), 2, "{begins:?}");
    assert_eq!(starting("Sheet 1 of 1"), 1, "{begins:?}");
}

fn page_text(print: &Print, page: usize) -> String {
    let page = page.to_string();
    let text = print.read_by(
        "pdftotext",
        &["-f", &page, "-l", &page, "-enc", "UTF-8", "{}", "-"],
    );
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What must be legible to a reader of the file.
const SAID: &[&str] = &[
    "Three Gables Framing",
    "revision 2, replaces revision 1",
    "2417, 2418, 2419, 2420, 2421, 2431",
    "1 sheet 48 × 36 in, rack B 3",
    "2 sheets 48 × 36 in",
    // Three boards: 3 × 1728 sq in; the fallout is no stock of its own. 3 × 8 + 1 pieces.
    "3 sheets and 1 fallout, 25 pieces",
    "= stock 5184.0 sq in",
    "Cost $ 84.00, cannot be below $ 84.00: proven",
    "Cost $ 61.00, cannot be below $ 60.00: at most 1.7 % from the best possible.",
    "the stock does not reach for",
    "Job 2440, left, 31 1/4 in",
    "Rag board, chalk, 48 × 36 in × 3, cut alike",
    "Each: pieces 1302.8 + kerf 12.6 + trim 25.4 + remnants 291.3 + waste 95.9 = stock 1728.0 sq in",
    "pieces 86 5/32 + kerf 3/4 + trim 3/4 + remnants 30 19/32 + waste 1 3/4 = stock 120 in",
    "trim left edge",
    "up, from left",
    "across, from bottom",
    "right of cut 4",
    "running 34 9/16 in",
    "11 1/16 × 20 3/16 in",
    "exactly 11 3/64 × 20 3/16 in",
    "(turned)",
    "(keep upright)",
    "(its window: W-5 fallout)",
    "Keep: RB-117",
    "Window W-5 of Job 2417, top mat",
    "falls out of a piece cut before",
    "mitred: the long edge",
    "Keep: ASH-31",
    "what is left",
    "No further cut: the sheet is Job 9, glazing.",
    "= stock 0.1241 m²",
    "Mind: Glass: eye protection",
    "Mind: Saw: guard on",
    "What the maker of the cutter says comes first.",
];

#[test]
fn everything_said_can_be_read_back() {
    let text = printed(Paper::Letter).text();
    for said in SAID {
        assert!(
            text.contains(said),
            "“{said}” cannot be read back from: {text}"
        );
    }
    for leaf in book()
        .materials
        .iter()
        .flat_map(|material| &material.leaves)
    {
        let names: Vec<String> = match leaf {
            CutLeaf::Sheet(sheet) => sheet.pieces.iter().map(CutPiece::name).collect(),
            CutLeaf::Stick(stick) => stick.pieces.iter().map(StickPiece::name).collect(),
        };
        for name in names {
            assert!(
                text.contains(&name),
                "{name} cannot be read back from: {text}"
            );
        }
    }
}

/// On the pages of the board's list the numbers at the left edge run 1, 2, 3, …
#[test]
fn the_list_runs_in_the_order_of_the_cuts() {
    let mut book = book();
    book.materials.truncate(1);
    book.materials[0].leaves.truncate(1);
    let print = Print::of(cut_sheets_pdf(&book, Paper::A4).unwrap());
    let boxes = print.read_by("pdftotext", &["-bbox", "-f", "2", "{}", "-"]);
    let numbers: Vec<usize> = boxes
        .lines()
        .filter_map(|line| {
            let (place, word) = line.trim().split_once("\">")?;
            let edge = |name: &str| -> Option<f64> {
                let (_, rest) = place.split_once(&format!("{name}=\""))?;
                let number = rest.split('"').next()?;
                number.trim_end_matches('"').parse().ok()
            };
            let middle = f64::midpoint(edge("xMin")?, edge("xMax")?);
            let number = word.split('<').next()?.parse().ok()?;
            // The middle of the list's first column: 6.6 mm from the edge, 20 pt wide.
            ((middle - 28.71).abs() < 0.3).then_some(number)
        })
        .collect();
    assert_eq!(numbers, (1..=15).collect::<Vec<_>>(), "{boxes}");
}

#[test]
fn a_superseded_plan_says_so_on_every_sheet() {
    let mut book = book();
    book.superseded = "superseded by revision 4".to_owned();
    let text = Print::of(cut_sheets_pdf(&book, Paper::A4).unwrap()).text();
    let leaves: usize = book
        .materials
        .iter()
        .map(|material| material.leaves.len())
        .sum();
    assert_eq!(
        text.matches("Stop: superseded by revision 4").count(),
        leaves + 1,
        "{text}"
    );
}

/// Sixty tagged pieces: each tag stands in the list beside the piece it is on.
#[test]
fn a_crowded_sheet_is_listed_in_full() {
    let mut book = book();
    book.materials.truncate(1);
    book.materials[0].leaves = vec![CutLeaf::Sheet(samples::crowd())];
    let print = Print::of(cut_sheets_pdf(&book, Paper::A4).unwrap());
    // In the order of the document's structure, whatever stands beside what on the page.
    let structure = print.read_by("pdfinfo", &["-struct-text", "{}"]);
    let parts: Vec<&str> = structure.split('"').skip(1).step_by(2).collect();
    let text = parts.join(" ");
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for (tag, name, size) in [
        ("a", "a12", "93 × 109"),
        ("e", "a12", "73 × 109"),
        ("bq", "c", "75 × 109"),
    ] {
        let row = format!("{name} {tag} (keep upright) {size}");
        assert!(text.contains(&row), "{row} is not in {text}");
    }
    edges_are_white(&print);
}

/// Settings stand in digits of 4.5 mm; nothing on the page has digits under 3.3 mm.
#[test]
fn digits_are_as_high_as_the_bench_needs_them() {
    const MM: f64 = 25.4 / 72.0;
    let print = printed(Paper::A4);
    let mut highest = 0.0_f64;
    let mut settings = 0;
    for (font, size) in print.pages().into_iter().flat_map(|page| page.lettering) {
        let digits = size * digit_height(&font) * MM;
        assert!(
            digits >= 3.3,
            "digits of {digits:.3} mm: {font} set at {size} pt"
        );
        highest = highest.max(digits);
        settings += usize::from(digits >= 4.5);
    }
    // A measure and a piece or two in each of 15 + 1 rows of sheets, two numbers in 2 × 7 of sticks.
    assert!(settings > 60, "{settings} texts in digits of 4.5 mm");
    assert!(highest < 8.0, "{highest}");
}

#[test]
fn hostile_names_stay_on_the_paper() {
    let long = "W".repeat(10_000);
    let mut book = book();
    book.plan.clone_from(&long);
    book.orders = vec![long.clone(); 3];
    let CutLeaf::Sheet(sheet) = &mut book.materials[0].leaves[0] else {
        panic!("the first leaf is a sheet");
    };
    sheet.stock.clone_from(&long);
    sheet.title = "#panic() </svg> שלום".to_owned();
    for piece in &mut sheet.pieces {
        piece.lines = vec![long.clone(), "<script>".to_owned()];
    }
    sheet.remnants[0].label = long;
    let print = Print::of(cut_sheets_pdf(&book, Paper::Letter).unwrap());
    edges_are_white(&print);
    let text = print.text();
    assert!(text.contains("#panic() </svg> ☐☐☐☐"), "{text}");
    assert!(
        text.contains("☐ stands for a letter this sheet cannot draw"),
        "{text}"
    );
}

#[test]
fn the_same_plan_is_always_the_same_bytes() {
    let once = cut_sheets_pdf(&book(), Paper::A4).unwrap();
    assert!(
        once == cut_sheets_pdf(&book(), Paper::A4).unwrap(),
        "two prints of one plan differ"
    );
}

#[test]
fn what_cannot_be_printed_is_refused_in_a_sentence() {
    let check = |spoil: &dyn Fn(&mut CutBook), expected: &str| {
        let mut book = book();
        spoil(&mut book);
        let said = cut_sheets_pdf(&book, Paper::A4).unwrap_err().to_string();
        assert_eq!(said, expected);
    };
    check(
        &|book| book.plan = " ".to_owned(),
        "The plan has no name: give it one, so that each page can carry it.",
    );
    check(
        &|book| {
            if let CutLeaf::Sheet(sheet) = &mut book.materials[0].leaves[0] {
                sheet.cuts.remove(0);
            }
        },
        "Sheet 1 of 2: cut 4 does not go through a part that the cuts before it made; plan again.",
    );
    check(
        &|book| {
            if let CutLeaf::Sheet(sheet) = &mut book.materials[0].leaves[0] {
                sheet.copies = u64::MAX;
            }
        },
        "The plan cuts more than can be counted: split it into several plans.",
    );
}

/// A plan of nothing is a cover.
#[test]
fn an_empty_plan_is_a_cover() {
    let mut book = book();
    book.materials.clear();
    let print = Print::of(cut_sheets_pdf(&book, Paper::A4).unwrap());
    assert!(print.text().contains("page 1 of 1"));
}

use super::{Account, Broken, Tally};

fn says(broken: &Broken, sentence: &str) {
    let said = broken.to_string();
    assert_eq!(said, sentence);
    for word in ["invalid", "illegal", "please", "sorry"] {
        assert!(!said.contains(word), "{said}");
    }
}

fn name(text: &str) -> String {
    text.to_owned()
}

#[test]
fn a_fault_of_place_names_both_sides_and_the_gap() {
    says(
        &Broken::NoSuch {
            layout: 2,
            what: "piece",
            number: 7,
            held: 3,
        },
        "layout 2: piece number 7 is named; the problem holds 3, counted from 0",
    );
    says(
        &Broken::NoCopies { layout: 1 },
        "layout 1: it is cut 0 times; at least 1 is needed",
    );
    says(
        &Broken::Empty { layout: 1 },
        "layout 1: it holds 0 pieces; at least 1 is needed",
    );
    says(
        &Broken::Outside {
            layout: 3,
            part: name("piece \"a\""),
            direction: "across",
            from: 51,
            to: 101,
            room: (0, 100),
        },
        "layout 3: piece \"a\" lies 51 to 101 across, 0 to 100 can be used; 1 too far",
    );
    says(
        &Broken::Outside {
            layout: 3,
            part: name("piece \"a\""),
            direction: "up",
            from: 2,
            to: 20,
            room: (5, 100),
        },
        "layout 3: piece \"a\" lies 2 to 20 up, 5 to 100 can be used; 3 too far",
    );
}

#[test]
fn a_fault_of_size_names_both_sides_and_the_gap() {
    says(
        &Broken::Size {
            layout: 1,
            piece: name("b"),
            placed: (39, 20),
            ordered: (40, 20),
        },
        "layout 1: piece \"b\" is placed 39 × 20, ordered 40 × 20; off by 1 × 0",
    );
    says(
        &Broken::Turned {
            layout: 1,
            piece: name("b"),
        },
        "layout 1: piece \"b\" is turned and must not be",
    );
}

#[test]
fn a_fault_of_neighbours_names_both() {
    let parts = (name("piece \"a\""), name("piece \"b\""));
    says(
        &Broken::Close {
            layout: 1,
            parts: parts.clone(),
            apart: 1,
            kerf: 3,
        },
        "layout 1: piece \"a\" and piece \"b\" are 1 apart, the kerf is 3; 2 too close",
    );
    says(
        &Broken::Close {
            layout: 1,
            parts,
            apart: -4,
            kerf: 3,
        },
        "layout 1: piece \"a\" and piece \"b\" overlap by 4; they must be 3 apart",
    );
    says(
        &Broken::Flawed {
            layout: 1,
            part: name("piece \"a\""),
            from: 10,
            to: 60,
            flaw: (50, 55),
        },
        "layout 1: piece \"a\" lies 10 to 60 on the flaw 50 to 55; 5 of it is flawed",
    );
    says(
        &Broken::NoRemnant { layout: 1 },
        "layout 1: a remnant has a size of 0; leave it out",
    );
}

#[test]
fn a_fault_of_a_cut_names_it() {
    says(
        &Broken::NoPart { layout: 1, cut: 2 },
        "layout 1, cut 2: there is no such part to cut at that moment",
    );
    says(
        &Broken::Beside {
            layout: 1,
            cut: 1,
            at: 60,
            from: 0,
            to: 60,
        },
        "layout 1, cut 1: it is made at 60, the part lies 0 to 60; it must fall inside",
    );
    says(
        &Broken::Stages {
            layout: 1,
            cut: 4,
            stage: 4,
            limit: 2,
        },
        "layout 1, cut 4: it is of stage 4, 2 are allowed; 2 too many",
    );
    says(
        &Broken::Trims {
            layout: 1,
            cut: 4,
            inside: 2,
        },
        "layout 1, cut 4: a trimming cut may serve 1 piece, 2 lie here; 1 too many",
    );
    says(
        &Broken::Narrow {
            layout: 1,
            cut: 4,
            strip: 10,
            least: 11,
        },
        "layout 1, cut 4: it makes a strip of 10, the least is 11; 1 too narrow",
    );
    says(
        &Broken::NotFreed {
            layout: 1,
            part: name("piece \"b\""),
        },
        "layout 1: the cuts do not free piece \"b\" as a part of its own",
    );
}

#[test]
fn a_fault_of_counts_names_both_sides_and_the_gap() {
    let demand = |cut, uncut| Broken::Demand {
        piece: name("a"),
        cut,
        uncut,
        ordered: 4,
    };
    says(
        &demand(2, 1),
        "piece \"a\": 2 cut and 1 left uncut, 4 ordered; 1 missing",
    );
    says(
        &demand(6, 0),
        "piece \"a\": 6 cut and 0 left uncut, 4 ordered; 2 too many",
    );
    says(
        &Broken::OverStock {
            stock: name("s"),
            used: 3,
            held: 2,
        },
        "stock \"s\": 3 used, 2 held; 1 too many",
    );
    says(
        &Broken::OverWindows {
            layout: 2,
            piece: name("mat"),
            used: 3,
            freed: 1,
        },
        "layout 2: 3 windows of piece \"mat\" used by then, 1 freed; 2 too many",
    );
    says(
        &Broken::NoWindow {
            layout: 2,
            piece: name("mat"),
        },
        "layout 2: piece \"mat\" frees 0 windows, and one is cut up here",
    );
}

#[test]
fn a_fault_of_groups_names_both_sides_and_the_gap() {
    says(
        &Broken::Several { used: 2 },
        "most value is asked out of 1 stick or sheet, 2 are used; 1 too many",
    );
    says(
        &Broken::Divided {
            group: name("frame 7"),
            sticks: 2,
        },
        "group \"frame 7\" must come from 1 stick and comes from 2; 1 too many",
    );
    says(
        &Broken::Runs {
            group: name("frame 7"),
            runs: 3,
        },
        "group \"frame 7\" must come from 1 run and comes from 3; 2 too many",
    );
}

#[test]
fn a_fault_of_the_whole_plan_names_both_sides_and_the_gap() {
    says(
        &Broken::Objective {
            claimed: 5,
            counted: 6,
        },
        "the plan claims an objective of 5, 6 is counted; off by 1",
    );
    let bound = |ceiling| Broken::Bound {
        claimed: 7,
        counted: 6,
        ceiling,
    };
    says(
        &bound(false),
        "the plan claims that nothing below 7 can be reached and reaches 6 itself; off by 1",
    );
    says(
        &bound(true),
        "the plan claims that nothing above 7 can be reached and reaches 6 itself; off by 1",
    );
    says(
        &Broken::Unbalanced {
            layout: 1,
            stock: 120,
            parts: 119,
        },
        "layout 1: pieces + kerf + trim + remnants + waste = 119, stock is 120; 1 unaccounted for",
    );
    says(
        &Broken::Countless,
        "the numbers of this plan are beyond what can be counted; divide the list",
    );
}

#[test]
fn an_account_that_does_not_add_up_is_not_booked() {
    let mut account = Account {
        stock: 100,
        pieces: 60,
        kerf: 3,
        trim: 2,
        remnants: 30,
        waste: 5,
    };
    let mut tally = Tally::default();
    assert_eq!(tally.book(1, 3, account), Ok(()));
    assert_eq!((tally.whole.stock, tally.whole.parts()), (300, 300));
    account.waste = 4;
    assert_eq!(
        tally.book(2, 1, account),
        Err(Broken::Unbalanced {
            layout: 2,
            stock: 100,
            parts: 99,
        })
    );
    account.waste = 5;
    account.stock = u128::MAX;
    account.pieces = u128::MAX - 40;
    assert_eq!(tally.book(3, 2, account), Err(Broken::Countless));
}

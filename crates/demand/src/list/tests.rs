//! Cut lists: what they say, what they refuse, what they come to in ticks.

use cutting::lengths::Together;
use cutting::{Problem, lengths, sheets};
use measure::Unit;
use trade::{Settings, Units};

use super::{CutList, ListBatch};
use crate::source::{Basis, Origin};

fn batches(text: &str) -> Vec<ListBatch> {
    let list = CutList::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let settings = Settings::defaults(list.units);
    list.batches(&settings)
        .unwrap_or_else(|faults| panic!("{faults:#?}"))
}

fn sticks(batch: &ListBatch) -> &lengths::Problem {
    match &batch.problem {
        Problem::Lengths(problem) => problem,
        Problem::Sheets(_) => panic!("{} is in sheets", batch.name()),
    }
}

fn boards(batch: &ListBatch) -> &sheets::Problem {
    match &batch.problem {
        Problem::Sheets(problem) => problem,
        Problem::Lengths(_) => panic!("{} is in sticks", batch.name()),
    }
}

/// What stands in the way of a list, each with its line.
fn refusals(text: &str) -> Vec<String> {
    let faults = match CutList::read(text.as_bytes()) {
        Err(faults) => faults,
        Ok(list) => {
            let settings = Settings::defaults(list.units);
            list.batches(&settings).expect_err(text)
        }
    };
    let say = |fault: &super::ListFault| match fault.line {
        Some(line) => format!("{line}: {fault}"),
        None => fault.to_string(),
    };
    faults.iter().map(say).collect()
}

/// 1/64 in: stock and windows are counted down, pieces, cuts and trims up.
#[test]
fn lengths_are_counted_so_that_the_plan_can_be_cut() {
    let all = batches(
        "units = \"in\"\nkerf = \"1/128\"\ntrim = \"1/100\"\n\
         [[stick]]\nlength = \"100 1/128\"\n[[piece]]\nlength = \"10 1/128\"\n\
         [[cut]]\nmaterial = \"b\"\nkerf = 0\n\
         [[sheet]]\nmaterial = \"b\"\nsize = \"32 x 40\"\n\
         [[piece]]\nmaterial = \"b\"\nsize = \"8 x 10\"\nwindow = \"6 1/128 x 7\"\n",
    );
    let problem = sticks(&all[0]);
    assert_eq!((problem.kerf, problem.stock[0].length), (1, 6400));
    assert_eq!(
        (problem.stock[0].trim, problem.pieces[0].length),
        ((1, 1), 641)
    );
    let problem = boards(&all[1]);
    assert_eq!((problem.rules.kerf, problem.stock[0].trim.left), (0, 1));
    assert_eq!(problem.pieces[0].window, Some((384, 448)));
    assert_eq!(all[0].tick.name(), "1/64 in");
}

#[test]
fn a_list_in_millimetres_counts_tenths_and_its_own_tick_goes_first() {
    let metric = "units = \"mm\"\n[[stick]]\nlength = 3000\n[[piece]]\nlength = 428.6\n";
    assert_eq!(sticks(&batches(metric)[0]).pieces[0].length, 4286);
    let coarse = batches(&format!("tick = \"1 mm\"\n{metric}"));
    assert_eq!(sticks(&coarse[0]).pieces[0].length, 429);
    assert_eq!(
        refusals(&format!("tick = \"2 mm\"\n{metric}")),
        ["tick \"2 mm\": write one of 1/128 in, 1/64 in, 1/32 in, 0.1 mm, 0.5 mm or 1 mm"]
    );
}

#[test]
fn each_material_is_a_problem_of_its_own_in_the_order_of_the_pieces() {
    let all = batches(
        "[[stick]]\nmaterial = \"oak\"\nlength = 90\n[[stick]]\nlength = 80\n\
         [[sheet]]\nmaterial = \"oak\"\nsize = \"20 x 30\"\n\
         [[piece]]\nmaterial = \"oak\"\nsize = \"3 x 4\"\nturn = false\n\
         [[piece]]\nlength = 5\n[[piece]]\nmaterial = \"oak\"\nlength = 6\ncount = 2\n\
         [[piece]]\nlength = 5\n",
    );
    let names: Vec<&str> = all.iter().map(ListBatch::name).collect();
    assert_eq!(names, ["oak, sheets", "cut list", "oak, sticks"]);
    assert!(!boards(&all[0]).pieces[0].turn);
    let pieces: Vec<_> = sticks(&all[1])
        .pieces
        .iter()
        .map(|p| p.name.as_str())
        .collect();
    assert_eq!(
        pieces,
        ["5 in", "5 in (2)"],
        "what has no name is called by its size"
    );
    assert_eq!(sticks(&all[2]).pieces[0].count, Some(2));
}

/// Least cost by size: 10 USD for 100 in, so 50 in without a cost count 5 USD; a remnant 38 % of it.
#[test]
fn stock_without_a_cost_counts_by_its_size() {
    let all = batches(
        "[[stick]]\nlength = 100\ncost = \"10.00 USD\"\n[[stick]]\nlength = 60\ncost = \"9 USD\"\n\
         [[stick]]\nlength = 50\ncount = 3\n[[stick]]\nname = \"M4\"\nlength = 50\nremnant = true\n\
         [[piece]]\nlength = 20\n",
    );
    let stock = &sticks(&all[0]).stock;
    let costs: Vec<u64> = stock.iter().map(|one| one.cost).collect();
    assert_eq!(costs, [1000, 900, 500, 190]);
    let counts: Vec<Option<u64>> = stock.iter().map(|one| one.count).collect();
    assert_eq!(counts, [None, None, Some(3), Some(1)]);
    assert!(matches!(all[0].basis, Basis::Money(_)));
    let origins: Vec<Origin> = all[0].stock.iter().map(|one| one.origin).collect();
    assert_eq!(
        origins,
        [Origin::Buy, Origin::Buy, Origin::Rack, Origin::Remnant]
    );
    let plain = batches("[[stick]]\nlength = 100\n[[piece]]\nlength = 20\n");
    assert_eq!(
        (sticks(&plain[0]).stock[0].cost, plain[0].basis),
        (6400, Basis::Measure)
    );
}

#[test]
fn groups_flaws_and_days_reach_the_problem() {
    let all = batches(
        "[[stick]]\nlength = 100\nrun = \"K7\"\nflaws = [[\"30\", 31.5]]\n\
         [[piece]]\nname = \"a\"\nlength = 20\ngroup = \"f\"\n\
         [[piece]]\nname = \"b\"\nlength = 20\ngroup = \"g\"\nmatch = \"run\"\n\
         priority = 3\ndue = \"1970-01-31\"\n",
    );
    let problem = sticks(&all[0]);
    assert_eq!(problem.stock[0].flaws, [(1920, 2016)]);
    assert_eq!(
        problem.pieces[0].together,
        Some(Together::Stick("f".into()))
    );
    assert_eq!(problem.pieces[1].together, Some(Together::Run("g".into())));
    assert_eq!(
        (problem.pieces[1].priority, problem.pieces[1].due),
        (3, Some(30))
    );
}

#[test]
fn everything_that_can_not_be_read_comes_together_in_the_order_of_the_lines() {
    let said = refusals(
        "[[stick]]\nlength = \"9 f\"\ncost = \"-1 USD\"\n[[stick]]\nname = \"s\"\nlength = 9\n\
         trim = [5, 4]\nflaws = [[5, 4]]\n[[piece]]\nname = \"p\"\nlength = 0\ncount = 0\n\
         match = \"row\"\ndue = \"soon\"\n[[piece]]\nname = \"q\"\n",
    );
    let starts = [
        "2: the stick on line 1: length \"9 f\": ",
        "3: the stick on line 1: cost \"-1 USD\": it can't be less than nothing",
        "7: stick s: trim \"5 and 4\": it leaves nothing of the stick",
        "8: stick s: flaws \"5 and 4\": write from before to, both on the stick",
        "11: piece p: length \"0\": it must be above zero",
        "12: piece p: count \"0\": write a whole number from 1 to 1000000000",
        "14: piece p: due \"soon\": write a day from 1970 on as 2026-12-04",
        "15: piece q: write `length` for a piece of a stick or `size`",
    ];
    assert_eq!(said.len(), starts.len(), "{said:#?}");
    for (said, start) in said.iter().zip(starts) {
        assert!(said.starts_with(start), "{said}");
    }
}

#[test]
fn what_no_stock_takes_names_the_stock_that_would() {
    // 100 less 1/2 at each end leaves 99; 99 1/2 and both trims are 100 1/2.
    assert_eq!(
        refusals(
            "trim = \"1/2\"\n[[stick]]\nname = \"s\"\nlength = 100\n[[piece]]\nname = \"beam\"\nlength = \"99 1/2\"\n"
        ),
        [
            "5: beam (99 1/2 in) is larger than any stock; s comes nearest with room for 99 in, too small by 1/2 in: stock of at least 100 1/2 in would do"
        ]
    );
    // Turned it lacks 1 in of width only.
    assert_eq!(
        refusals(
            "[[sheet]]\nmaterial = \"ply\"\nsize = \"20 x 30\"\n[[piece]]\nmaterial = \"ply\"\nname = \"top\"\nsize = \"30 x 21\"\n"
        ),
        [
            "4: top of ply (30 in x 21 in) is larger than any stock; 20 in x 30 in comes nearest with room for 20 in x 30 in, too small by 1 in x 0 in: stock of at least 30 in x 21 in would do"
        ]
    );
    assert_eq!(
        refusals(
            "[[stick]]\nname = \"s\"\nlength = \"9 1/128\"\n[[piece]]\nname = \"p\"\nlength = \"9 1/128\"\n"
        ),
        [
            "4: p (9 1/128 in) fits s exactly, but not counted in steps of 1/64 in; write a finer tick, such as tick = \"1/128 in\""
        ]
    );
}

#[test]
fn what_means_nothing_is_refused() {
    let stock = "[[stick]]\nlength = 100\n[[sheet]]\nsize = \"9 x 9\"\n";
    let check = |text: &str, expected: &str| {
        assert_eq!(refusals(&format!("{stock}{text}")), [expected], "{text}");
    };
    check(
        "[[piece]]\nname = \"p\"\nlength = 3\nturn = true\n",
        "5: piece p: turn is for pieces of a sheet only; leave it out",
    );
    check(
        "[[piece]]\nname = \"p\"\nsize = \"3 x 4\"\ngroup = \"g\"\n",
        "5: piece p: group is for pieces of a stick only; leave it out",
    );
    check(
        "[[piece]]\nname = \"p\"\nlength = 3\nmatch = \"run\"\n",
        "5: piece p: match is for pieces with a `group` only; leave it out",
    );
    check(
        "[[piece]]\nname = \"p\"\nsize = \"3 x 4\"\nwindow = \"2 x 4\"\n",
        "8: piece p: window \"2 x 4\": it must be smaller than the piece, both ways",
    );
    check(
        "[[piece]]\nmaterial = \"oka\"\nname = \"p\"\nlength = 3\n",
        "5: there is no stick of oka to cut p from; write a [[stick]] of it",
    );
    check(
        "[[cut]]\nmaterial = \"b\"\nkerf = 1\nleast_strip = 1\n[[piece]]\nlength = 3\n",
        "5: the cut of b has a kerf and a least strip; a least strip is for what is scored and broken, where a cut takes nothing: leave out one of the two",
    );
    assert_eq!(
        refusals("cut_list = 2\n")[0],
        "1: the cut list says `cut_list = 2`, this program reads 1; update the program, or write `cut_list = 1`"
    );
    assert_eq!(
        refusals(stock),
        ["there is nothing to cut; write at least one [[piece]]"]
    );
    assert_eq!(
        refusals("[[stick]]\nlenght = 3\n")[0],
        "2: there is no field `lenght`; did you mean `length`?"
    );
}

#[test]
fn what_would_be_left_aside_without_a_word_is_refused() {
    let stock = "[[stick]]\nlength = 100\n";
    let piece = "[[piece]]\nlength = 3\n";
    let check = |text: &str, expected: &[&str]| assert_eq!(refusals(text), expected, "{text}");
    check(
        &format!("{stock}trim = [1, 2, 3]\nflaws = [[5]]\n{piece}"),
        &[
            "3: the stick on line 1: trim \"1 and 2 and 3\": write two lengths, such as [\"1/2\", \"1/4\"]",
            "4: the stick on line 1: flaws \"5\": write two lengths, such as [\"1/2\", \"1/4\"]",
        ],
    );
    check(
        &format!("{stock}{piece}[[cut]]\nkerf = 0\n[[cut]]\nkerf = 1\n"),
        &["7: two [[cut]] are about the material without a name; keep one of them"],
    );
    check(
        "[[stick]]\nmaterial = \"walnut\"\nlength = 9\n[[piece]]\nmaterial = \"walnut\"\nlength = 3\n[[cut]]\nmaterial = \"wallnut\"\nkerf = 0\n",
        &["the [[cut]] of wallnut is about nothing in the list; did you mean walnut?"],
    );
    check(
        &format!("kerf = \"2 1/8\"\n{stock}{piece}"),
        &[
            "1: kerf \"2 1/8\": no cut takes more than 1 in; write the width of the blade or bit, such as \"1/8 in\" or \"3 mm\"",
        ],
    );
    check(
        &format!("{stock}count = \"2\"\n"),
        &["3: count: found \"2\"; write a whole number, such as 2"],
    );
}

/// By hand: 640 ticks are 10 in; sticks of 100 in with a flaw that ends before it begins.
#[test]
fn a_refusal_of_the_cutting_room_names_the_line_of_its_entry() {
    let all =
        batches("[[stick]]\nname = \"s\"\nlength = 100\n[[piece]]\nname = \"p\"\nlength = 60\n");
    let narrow = cutting::Fault::OddFlaw {
        stock: "s".to_owned(),
        flaw: (640, 320),
    };
    let fault = all[0].fault(&narrow, Unit::Inch);
    assert_eq!(
        (fault.line, fault.to_string().as_str()),
        (
            Some(1),
            "the flaw from 10 in to 5 in does not lie on s; write from before to, both on the stick"
        )
    );
    let endless = cutting::Fault::EndlessCount {
        piece: "p".to_owned(),
    };
    assert_eq!(all[0].fault(&endless, Unit::Inch).line, Some(4));
    let dear = cutting::Fault::TooMuch {
        what: "cost of",
        name: "s".to_owned(),
        given: 11,
        limit: 10,
    };
    assert_eq!(all[0].fault(&dear, Unit::Inch).line, Some(1));
}

#[test]
fn faults_of_the_cutting_room_are_said_in_lengths() {
    let all =
        batches("[[stick]]\nlength = 100\n[[piece]]\nlength = 60\ngroup = \"f\"\ncount = 2\n");
    let refused = lengths::solve(
        sticks(&all[0]),
        cutting::Trying::default(),
        &cutting::Unwatched,
    )
    .expect_err("too long together");
    let said = all[0].fault(&refused[0], Unit::Inch).to_string();
    assert_eq!(
        said,
        "the pieces of group f must come from one stick and are 120 in long together with their cuts; the longest stick has room for 100 in: write match = \"run\", or list a longer stick"
    );
}

#[test]
fn the_invented_shops_list_reads() {
    let list = CutList::read(demo::CUT_LIST.as_bytes()).expect("it reads");
    assert_eq!((list.units, list.pieces.len()), (Units::Inches, 4));
    let stock = crate::Stock::read(demo::STOCK.as_bytes()).expect("it reads");
    assert_eq!(stock.remnants.len(), 6);
    assert_eq!(crate::Stock::read(stock.to_toml().as_bytes()), Ok(stock));
}

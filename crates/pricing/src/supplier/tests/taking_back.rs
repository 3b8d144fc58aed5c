use super::*;
use crate::supplier::{Applied, ApplyFault, Undo, UndoFault};

fn applied(catalogue: &str) -> Applied {
    preview(MILLRACE, MILLRACE_MAPPING, catalogue)
        .apply(&shelf(catalogue))
        .unwrap()
}

#[test]
fn the_old_text_comes_back_byte_for_byte() {
    let windows = COSTS.replace('\n', "\r\n");
    let marked = format!("\u{feff}{COSTS}");
    let cut = COSTS.trim_end().to_owned();
    for catalogue in ["", "# nothing yet", COSTS, &windows, &marked, &cut] {
        let Applied { text, undo } = applied(catalogue);
        assert_ne!(text, catalogue);
        assert_eq!(undo.take_back(&text).as_deref(), Ok(catalogue));
        let kept: Undo = serde_json::from_str(&serde_json::to_string(&undo).unwrap()).unwrap();
        assert_eq!(kept.take_back(&text).as_deref(), Ok(catalogue));
    }
    let text = applied(&windows).text;
    assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
}

#[test]
fn a_text_changed_since_is_left_alone() {
    let Applied { text, undo } = applied(COSTS);
    assert_eq!(
        undo.take_back(&format!("{text}# mine\n")),
        Err(UndoFault::Changed)
    );
    assert_eq!(undo.take_back(COSTS), Err(UndoFault::Already));
    let mut bent = undo.clone();
    bent.edits[0].was.push('x');
    assert_eq!(bent.take_back(&text), Err(UndoFault::Damaged));
    bent.edits[0].at = usize::MAX;
    assert_eq!(bent.take_back(&text), Err(UndoFault::Damaged));
}

#[test]
fn costs_in_one_list_are_not_added_to() {
    let catalogue = "[[material]]\ncode = \"x\"\nkind = \"moulding\"\nsupplier = \"Acorn\"\nsupplier_code = \"1\"\n\
        cost = [{ price = \"1.00 USD\", per = \"foot\", since = \"2026-01-01\" }]\n";
    let fault = preview("Code,Price\n1,2.00\n", PLAIN, catalogue).apply(&shelf(catalogue));
    assert_eq!(
        fault,
        Err(ApplyFault::Inline {
            code: "x".to_owned()
        })
    );
}

#[test]
fn catalogues_of_another_form_are_refused_with_their_line() {
    let told = |text: &str| {
        Shelf::read(text)
            .err()
            .map(|fault| fault.to_string())
            .unwrap_or_default()
    };
    assert_eq!(
        told("# a\nmaterial = [{ code = \"x\" }]\n"),
        "line 2: materials are written as a list here; write each as a [[material]] table of its own"
    );
    assert!(
        told("# a\n[[material]]\ncode = \"x\"\n[[material]]\ncode = \"x\"\n")
            .starts_with("two materials have the code x")
    );
    assert!(
        told("[[material]]\ncode = \"x\"\nnote = \"\"\"\n[[material]]\n\"\"\"\n")
            .starts_with("line 1: a text of several lines")
    );
    assert!(
        told("shop = 1\n").contains("there is no field `shop`"),
        "{}",
        told("shop = 1\n")
    );
    match Shelf::read(
        "[[material]]\ncode = \"x\"\n\n[[material]]\ncode = \"y\"\nkind = \"cheese\"\n",
    )
    .err()
    {
        Some(crate::supplier::ShelfFault::Form { place, .. }) => assert_eq!(place.line, Some(6)),
        other => panic!("{other:?}"),
    }
}

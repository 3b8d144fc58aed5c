//! The text twins, held to the derivation and to what their drawings show.

use drawing::{Drawing, Ink, twin_text};
use measure::Length;

use crate::{all_three, each, jobs, twin};

/// The twin says what the derivation says, exactly.
#[test]
fn twins_hold_the_sizes() {
    for case in jobs::ALL {
        let (job, sizes) = jobs::sized(case);
        let [front, cut, back] = all_three(&job, &sizes, Ink::Colour);
        let say = |length: Length| length.in_both(sizes.unit());
        assert_eq!(
            twin(&front, "Outside, width"),
            say(sizes.outside.width.value)
        );
        assert_eq!(
            twin(&front, "Outside, height"),
            say(sizes.outside.height.value)
        );
        for member in &sizes.members {
            member_twins(member, [&front, &cut], &say);
        }
        if let Some(visible) = sizes.borders.as_ref().and_then(|borders| borders.visible) {
            for (side, border) in visible.named() {
                assert_eq!(
                    twin(&front, &format!("Border seen, {side}")),
                    say(border.value)
                );
            }
        }
        if let Some(air) = sizes.air {
            assert_eq!(twin(&cut, "Air before the art"), say(air.value));
        }
        if let Some(marks) = &sizes.hangers {
            assert_eq!(
                twin(&back, "Hangers, down from the top"),
                say(marks.down.value)
            );
        }
    }
}

fn member_twins(
    member: &sizing::MemberSizes,
    [front, cut]: [&Drawing; 2],
    say: &impl Fn(Length) -> String,
) {
    let name = &member.name;
    assert_eq!(
        twin(front, &format!("{name}, face")),
        say(member.face.value)
    );
    assert_eq!(twin(cut, &format!("{name}, face")), say(member.face.value));
    if let Some(sight) = member.sight {
        assert_eq!(
            twin(front, &format!("{name}, sight, width")),
            say(sight.width.value)
        );
    }
    if let Some(stack) = &member.stack {
        assert_eq!(twin(cut, &format!("{name}, stack")), say(stack.total.value));
        assert_eq!(twin(cut, &format!("{name}, slack")), say(stack.slack.value));
        assert_eq!(twin(cut, &format!("{name}, tail")), say(stack.tail));
        assert_eq!(
            twin(cut, &format!("{name}, stands proud")),
            say(stack.proud.value)
        );
    }
    if let Some(setback) = member.floater.and_then(|floater| floater.setback) {
        assert_eq!(twin(cut, &format!("{name}, setback")), say(setback.value));
    }
}

/// Every bare size that stands on a drawing stands in its twin too.
#[test]
fn nothing_is_shown_that_the_twin_lacks() {
    each(|name, sizes, drawing, tree| {
        let unit = sizes.unit().symbol();
        let said = twin_text(drawing);
        let sizes_shown = tree
            .descendants()
            .filter(|n| n.tag_name().name() == "text")
            .filter_map(|n| n.text());
        let bare = |text: &str| {
            let known = [
                "outside ", "sight ", "inside ", "window ", "face ", "lip ", "height ", "wall ",
                "ledge ", "apart ", "mat ",
            ];
            known
                .iter()
                .find_map(|word| text.strip_prefix(word))
                .unwrap_or(text)
                .to_owned()
        };
        let mut checked = 0;
        for text in sizes_shown.map(bare) {
            let sized = !text.is_empty()
                && text
                    .chars()
                    .all(|c| c.is_ascii_digit() || " ./".contains(c));
            let numbered = text.len() == 1 && sizes.mats.iter().any(|mat| mat.windows.len() > 1);
            if sized && !numbered {
                assert!(
                    said.contains(&format!("{text} {unit}")),
                    "{name}: {text:?} {unit} not in\n{said}"
                );
                checked += 1;
            }
        }
        assert!(checked > 0, "{name}: {} shows sizes", drawing.title);
    });
}

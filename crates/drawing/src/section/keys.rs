//! Keys of the section on the ticket: a layer's number in the list of the stack, a letter for the rest.

use sizing::LayerKind;

use super::Cut;
use super::labels::{Block, Label, Said};
use crate::input::Sheet;
use crate::sheet::text_width;

impl Cut<'_> {
    /// Where a layer in a member's rabbet stands in the list, which runs over all members' stacks.
    pub(super) fn listed(&self, member: usize, layer: usize) -> Said {
        let members = &self.piece.sizes.members;
        if members[member].stack.is_none() {
            return Said::Else;
        }
        let before = members[..member]
            .iter()
            .filter_map(|member| member.stack.as_ref());
        let before: usize = before.map(|stack| stack.layers.len()).sum();
        Said::Listed(before + layer + 1)
    }

    /// Where a member stands in the list: as a layer of the one round it.
    pub(super) fn member_listed(&self, member: usize) -> Said {
        self.within(member, LayerKind::Member)
            .unwrap_or(Said::Elsewhere)
    }

    /// Where the strips on a member's back stand in the list.
    pub(super) fn strips_listed(&self, member: usize) -> Said {
        self.within(member, LayerKind::BuildUp)
            .unwrap_or(Said::Else)
    }

    /// A layer of this kind in the rabbet of the member round another.
    fn within(&self, member: usize, what: LayerKind) -> Option<Said> {
        let outer = member.checked_sub(1)?;
        let stack = self.piece.sizes.members[outer].stack.as_ref()?;
        let layer = stack.layers.iter().position(|layer| layer.what == what)?;
        Some(self.listed(outer, layer))
    }
}

/// Every label as its key; and the lines that say what the letters stand for.
///
/// Members that are no layer, and what the account of the rabbet says, have no key.
pub(super) fn keyed(labels: &[Label], sheet: Sheet) -> (Vec<Block<'_>>, Vec<String>) {
    let mut said: Vec<String> = Vec::new();
    let mut letters = 'a'..='z';
    let mut blocks: Vec<Block<'_>> = Vec::new();
    let mut order: Vec<&Label> = labels.iter().collect();
    order.sort_by(|a, b| a.at.y.total_cmp(&b.at.y));
    for label in order {
        let key = match label.said {
            Said::Elsewhere => continue,
            Said::Listed(number) => number.to_string(),
            // Art without thickness, on which there is nothing to say.
            Said::Else if label.short.is_empty() => continue,
            Said::Else => {
                let Some(letter) = letters.next() else {
                    continue;
                };
                said.push(
                    format!("{letter} {} {}", label.name, label.short)
                        .trim_end()
                        .to_owned(),
                );
                letter.to_string()
            }
        };
        let lines = vec![key];
        blocks.push(Block { label, lines });
    }
    (
        blocks,
        gathered(&said, sheet.width() - 2.0 * sheet.margin()),
    )
}

/// As many to a line as it holds.
fn gathered(said: &[String], width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for one in said {
        match lines.last_mut() {
            Some(line) if text_width(line) + text_width(" · ") + text_width(one) <= width => {
                line.extend([" · ", one]);
            }
            _ => lines.push(one.clone()),
        }
    }
    lines
}

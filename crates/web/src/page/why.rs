//! Why a number is what it is: rule, formula, inputs, source and status of its line of working.

use maud::{Markup, html};
use measure::Unit;
use working::{Input, LineId, LineView, Origin, Value, Working};

/// The working of a piece, with the unit its sentences speak in first.
#[derive(Clone, Copy)]
pub(super) struct Why<'a> {
    pub working: &'a Working,
    pub unit: Unit,
    /// What the ids of its lines begin with; empty for the sizes' own.
    pub name: &'static str,
    /// Lines at its beginning that the sizes' own working shows on the same page.
    pub shown: usize,
}

impl Why<'_> {
    /// The line's own account.
    pub fn line(self, id: LineId) -> Markup {
        self.account(&self.working.line(id))
    }

    /// Every line, in the order they were worked out.
    pub fn all(self) -> Markup {
        self.under("All the working")
    }

    /// The same, under a heading of its own.
    pub fn under(self, heading: &str) -> Markup {
        html! {
            details id={ (self.name) "working" } .all {
                summary { h2 { (heading) } span.beside { (self.working.len().saturating_sub(self.shown)) " lines" } }
                ol.lines {
                    @for line in self.working.lines().skip(self.shown) {
                        li id=(self.anchor(line.id)) tabindex="-1" {
                            p.subject { (spoken(&line)) " = " b { (self.value(line.value)) } }
                            (self.account(&line))
                        }
                    }
                }
            }
        }
    }

    /// The id of a line on the page.
    fn anchor(self, id: LineId) -> String {
        let name = if id.index() < self.shown {
            ""
        } else {
            self.name
        };
        format!("{name}line-{}", id.index() + 1)
    }

    fn account(self, line: &LineView<'_>) -> Markup {
        let rule = line.rule;
        html! {
            dl.account {
                dt { "Rule" } dd { (rule.words) }
                dt { "Formula" } dd { code { (rule.formula) } }
                @if !line.inputs.is_empty() {
                    dt { "With" }
                    @for input in line.inputs { dd { (self.input(input)) } }
                }
                dt { "Source" } dd { (rule.source) }
                dt { "Status" } dd { (rule.status) }
            }
        }
    }

    fn input(self, input: &Input) -> Markup {
        let value = self.value(input.value);
        html! {
            code { (input.name) } " = " (value) ", "
            @match input.origin {
                Origin::Line(earlier) => { "from " a href={ "#" (self.anchor(earlier)) } { (spoken(&self.working.line(earlier))) } }
                Origin::Setting(id) => { "the setting " a href={ "/settings#" (id) } { (id) } }
                Origin::Job => { "as the job says" }
                Origin::Material => { "as the catalogue says" }
                Origin::Table(source) => { "from a table of constants, source " (source) }
                Origin::Search => { "from a search that this formula checks" }
                Origin::Prices => { "from the shop's prices" }
            }
        }
    }

    fn value(self, value: Value) -> String {
        match value {
            Value::Length(length) => length.in_both(self.unit),
            other => other.to_string(),
        }
    }
}

/// A number that leads to its line.
pub(super) fn link(id: LineId, text: &str) -> Markup {
    html! { a href={ "#line-" (id.index() + 1) } { (text) } }
}

/// What a line is about, in words: `mat 2, opening 1, window, width`.
fn spoken(line: &LineView<'_>) -> String {
    let subject = line.subject;
    let named = |part: &str, index: usize| format!("{part} {}", index + 1);
    let mut words = vec![subject.index().map_or_else(
        || subject.part().to_owned(),
        |index| named(subject.part(), index),
    )];
    words.extend(subject.inner().map(|(inner, index)| named(inner, index)));
    words.push(subject.quantity().to_owned());
    words.extend(subject.axis().map(|axis| axis.to_string()));
    words.join(", ").replace('_', " ")
}

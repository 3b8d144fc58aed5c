//! The form of a question: every field with its label, its hint, and what is wrong with it.

use std::collections::BTreeMap;

use maud::{Markup, html};
use trade::{Settings, Units};

use crate::care::{Choice, Fault, Field, Kind, Question, Usual};

/// A question's form as it stands.
pub(super) struct Form<'a> {
    question: &'static Question,
    settings: &'a Settings,
    typed: BTreeMap<String, String>,
    units: Units,
    /// What is wrong with it.
    pub faults: Vec<Fault>,
}

impl<'a> Form<'a> {
    /// With the question's example typed in.
    pub fn example(question: &'static Question, settings: &'a Settings) -> Self {
        let typed = question.example.iter();
        let typed = typed.map(|(name, text)| ((*name).to_owned(), (*text).to_owned()));
        Self::typed(question, settings, typed.collect(), Units::Inches)
    }

    /// As it was sent.
    pub fn typed(
        question: &'static Question,
        settings: &'a Settings,
        typed: BTreeMap<String, String>,
        units: Units,
    ) -> Self {
        Self {
            question,
            settings,
            typed,
            units,
            faults: Vec::new(),
        }
    }

    /// An id of its own on a page with several forms.
    fn id(&self, name: &str) -> String {
        format!("{}-{}-{name}", self.question.noun, self.question.verb)
    }

    pub fn shown(&self) -> Markup {
        let action = format!("/care/{}/{}", self.question.noun, self.question.verb);
        html! {
            form.question method="get" action=(action) novalidate {
                @for field in self.question.fields { (self.field(field)) }
                @if self.has_lengths() { (self.units()) }
                div.send { button.do type="submit" { "Work it out" } }
            }
        }
    }

    fn has_lengths(&self) -> bool {
        let is_length = |field: &Field| matches!(field.kind, Kind::Length | Kind::Size);
        self.question.fields.iter().any(is_length)
    }

    fn field(&self, field: &'static Field) -> Markup {
        let id = self.id(field.name);
        let (hint, fault) = (format!("{id}-hint"), format!("{id}-fault"));
        let words = self.hint(field);
        let own = self.faults.iter().find(|fault| fault.field == field.name);
        let described = [(!words.is_empty()).then_some(&hint), own.map(|_| &fault)];
        let described: Vec<&str> = described
            .into_iter()
            .flatten()
            .map(String::as_str)
            .collect();
        let described = (!described.is_empty()).then(|| described.join(" "));
        html! {
            div.field {
                label for=(id) { (field.label) }
                @if !words.is_empty() { p.hint id=(hint) { (words) } }
                @if let Some(own) = own { ul.fault id=(fault) { li { (own.whole()) } } }
                @match field.kind {
                    Kind::Choice(list) => { (self.choice(field, &list(), &id, described.as_deref(), own.is_some())) }
                    _ => {
                        input id=(id) type="text" name=(field.name) value=(self.text(field)) autocomplete="off"
                            aria-describedby=[described] aria-invalid=[own.map(|_| "true")];
                    }
                }
            }
        }
    }

    fn text(&self, field: &Field) -> &str {
        self.typed.get(field.name).map_or("", String::as_str)
    }

    fn hint(&self, field: &Field) -> String {
        let mut words = Vec::new();
        words.extend((!field.hint.is_empty()).then(|| field.hint.to_owned()));
        words.extend((!field.such_as().is_empty()).then(|| field.such_as().to_owned()));
        if let Kind::Number { units, .. } = field.kind {
            words.extend(units.first().map(|unit| format!("in {}", unit.0)));
        }
        let is_list = matches!(field.kind, Kind::Choice(_));
        if !is_list {
            words.extend(field.left_out(self.settings, self.units.unit()));
        }
        words.join("; ")
    }

    fn choice(
        &self,
        field: &Field,
        list: &[Choice],
        id: &str,
        described: Option<&str>,
        wrong: bool,
    ) -> Markup {
        let typed = self.text(field);
        let chosen = match (field.usual, typed) {
            (Usual::Text(text), "") => text,
            _ => typed,
        };
        let empty = match field.usual {
            Usual::Asked => Some("choose one"),
            Usual::Nothing => Some("not known"),
            Usual::Text(_) | Usual::Setting(_) => None,
        };
        let mut headings: Vec<&str> = list.iter().map(|choice| choice.under).collect();
        headings.dedup();
        let options = |under: &str| {
            let own = list.iter().filter(move |choice| choice.under == under);
            let own: Vec<&Choice> = own.collect();
            html! { @for choice in own {
                option value=(choice.word) selected[choice.word == chosen] { (choice.label) }
            } }
        };
        let known = chosen.is_empty() || list.iter().any(|choice| choice.word == chosen);
        html! {
            select id=(id) name=(field.name) aria-describedby=[described] aria-invalid=[wrong.then_some("true")] {
                @if let Some(empty) = empty { option value="" { (empty) } }
                @if !known { option value=(chosen) selected { (chosen) } }
                @for heading in headings {
                    @if heading.is_empty() { (options(heading)) }
                    @else { optgroup label=(heading) { (options(heading)) } }
                }
            }
        }
    }

    fn units(&self) -> Markup {
        let id = self.id("units");
        html! {
            div.field {
                label for=(id) { "A bare length is in" }
                select id=(id) name="units" {
                    option value="in" selected[self.units == Units::Inches] { "inches" }
                    option value="mm" selected[self.units == Units::Millimetres] { "millimetres" }
                }
            }
        }
    }

    /// What is wrong, on top; its links lead to the fields.
    pub fn summary(&self) -> Markup {
        html! {
            div #summary .summary tabindex="-1" autofocus role="alert" aria-labelledby="summary-title" {
                h2 #summary-title { "This can't be worked out yet" }
                ul { @for fault in &self.faults {
                    li {
                        @if fault.field.is_empty() { (fault.whole()) }
                        @else { a href={ "#" (self.id(fault.field)) } { (fault.whole()) } }
                    }
                } }
            }
        }
    }
}

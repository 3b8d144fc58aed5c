//! Reading a cut list, and saying where it went wrong.

use std::ops::Range;

use cutting::Goal;
use cutting::sheets::First;
use measure::{Length, Money, Size, Unit, read_length, read_size};
use toml::Spanned;
use trade::reading;

use super::fault::{ListFault, ListReason};
use super::file::{Cut, Ends, File, Typed};
use super::{CutList, LIST_VERSION, ListRules};
use crate::kerf::too_wide;
use crate::names::Names;

/// The longest list that is read, in bytes: room for some 100 000 entries.
pub(super) const LONGEST: usize = 1 << 24;

/// Most pieces or sticks of one entry; more is a slip of the key.
const MOST: u64 = 1_000_000_000;

impl CutList {
    /// Reads a cut list, TOML.
    ///
    /// Errors: the first fault of form; else everything that can't be read, in the order of the
    ///         lines.
    pub fn read(bytes: &[u8]) -> Result<Self, Vec<ListFault>> {
        if bytes.len() > LONGEST {
            let bytes = bytes.len();
            return Err(vec![ListFault::whole(ListReason::TooLong { bytes })]);
        }
        let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
        let text = std::str::from_utf8(bytes).map_err(|error| {
            let at = error.valid_up_to();
            vec![ListFault::whole(ListReason::NotText { at })]
        })?;
        let mut desk = Desk {
            text,
            lines: line_starts(text),
            bare: Unit::Inch,
            entry: String::new(),
            faults: Vec::new(),
        };
        let file: File = toml::from_str(text).map_err(|error| {
            let (why, place) = reading::refusal(text, &error);
            vec![ListFault {
                line: place.line,
                column: place.column,
                reason: Box::new(ListReason::Form { why }),
            }]
        })?;
        let list = desk.list(file);
        desk.faults.sort_by_key(|fault| (fault.line, fault.column));
        if desk.faults.is_empty() {
            Ok(list)
        } else {
            Err(desk.faults)
        }
    }
}

/// Offsets at which the lines of a text begin.
fn line_starts(text: &str) -> Vec<usize> {
    let after = text.match_indices('\n').map(|(at, _)| at + 1);
    std::iter::once(0).chain(after).collect()
}

/// Nothing said of cutting.
const NO_RULES: ListRules = ListRules {
    kerf: Length::ZERO,
    trim: Length::ZERO,
    least_strip: Length::ZERO,
    stages: None,
    first: First::Any,
    turn: true,
};

/// It was written and can't be read; the fault is noted.
pub(super) struct Unread;

/// Where entries are gone through, and faults collected.
pub(super) struct Desk<'t> {
    text: &'t str,
    /// Where each line begins.
    lines: Vec<usize>,
    bare: Unit,
    /// Ready to stand before a field; empty at the top.
    pub entry: String,
    pub faults: Vec<ListFault>,
}

impl Desk<'_> {
    fn list(&mut self, file: File) -> CutList {
        self.bare = file.units.unit();
        if let Some(version) = &file.cut_list
            && *version.get_ref() != i64::from(LIST_VERSION)
        {
            let found = *version.get_ref();
            let fault = self.fault(&version.span(), ListReason::Version { found });
            self.faults.push(fault);
        }
        let goal = self.goal(file.goal.as_ref());
        let top = Cut {
            material: None,
            kerf: file.kerf,
            trim: file.trim,
            least_strip: file.least_strip,
            stages: file.stages,
            first_cut: file.first_cut,
            turn: file.turn,
        };
        let rules = self.rules(&top, NO_RULES, "the list", None);
        let cuts = self.cuts(file.cut, rules);
        let mut names = Names::default();
        let mut stock = Vec::with_capacity(file.stick.len() + file.sheet.len());
        for entry in file.stick {
            stock.extend(self.stick(entry, &mut names));
        }
        for entry in file.sheet {
            stock.extend(self.sheet(entry, &mut names));
        }
        let mut names = Names::default();
        let mut pieces = Vec::with_capacity(file.piece.len());
        for entry in file.piece {
            pieces.extend(self.piece(entry, &mut names));
        }
        CutList {
            units: file.units,
            goal,
            rules,
            cuts,
            pieces,
            stock,
            tick: file.tick.map(Spanned::into_inner),
        }
    }

    /// How single materials are cut; two about one material are a fault.
    fn cuts(
        &mut self,
        written: Vec<Spanned<Cut>>,
        usual: ListRules,
    ) -> Vec<(Option<String>, ListRules)> {
        let mut cuts: Vec<(Option<String>, ListRules)> = Vec::with_capacity(written.len());
        for cut in written {
            let line = self.place(&cut.span()).0;
            let (material, rules) = self.cut(cut, usual);
            if cuts.iter().any(|(other, _)| *other == material) {
                let material = material.clone();
                self.faults
                    .push(ListFault::on(line, ListReason::TwoCuts { material }));
            }
            cuts.push((material, rules));
        }
        cuts
    }

    fn cut(&mut self, cut: Spanned<Cut>, usual: ListRules) -> (Option<String>, ListRules) {
        let line = self.place(&cut.span()).0;
        let cut = cut.into_inner();
        let material = material(cut.material.as_deref());
        let of = match &material {
            Some(name) => format!("the cut of {name}"),
            None => format!("the cut on line {line}"),
        };
        self.entry = format!("{of}: ");
        let rules = self.rules(&cut, usual, &of, Some(line));
        (material, rules)
    }

    fn goal(&mut self, written: Option<&Spanned<String>>) -> Goal {
        self.choice(
            "goal",
            written,
            &[("cost", Goal::Cost), ("fewest", Goal::Fewest)],
        )
        .unwrap_or_default()
    }

    /// How something is cut, where it says nothing as `usual`.
    fn rules(&mut self, cut: &Cut, usual: ListRules, of: &str, line: Option<usize>) -> ListRules {
        let mut read = |field, written: &Option<Spanned<Typed>>| {
            let written = written.as_ref();
            written.and_then(|written| self.length(field, written))
        };
        let kerf = read("kerf", &cut.kerf);
        let trim = read("trim", &cut.trim);
        let least_strip = read("least_strip", &cut.least_strip);
        if let (Some(length), Some(written)) = (kerf, &cut.kerf) {
            self.not_too_wide(length, written);
        }
        let stages = self.optional(cut.stages.as_ref(), |desk, stages| {
            desk.number("stages", stages, 1, u64::from(u32::MAX))
        });
        let ways = [
            ("any", First::Any),
            ("up", First::Upright),
            ("across", First::Level),
        ];
        let first = self.choice("first_cut", cut.first_cut.as_ref(), &ways);
        let stages = stages.ok().flatten();
        let stages = stages.and_then(|stages| u32::try_from(stages).ok());
        let own = ListRules {
            kerf: kerf.unwrap_or(if least_strip.is_some() {
                Length::ZERO
            } else {
                usual.kerf
            }),
            trim: trim.unwrap_or(usual.trim),
            least_strip: least_strip.unwrap_or(if kerf.is_some() {
                Length::ZERO
            } else {
                usual.least_strip
            }),
            stages: stages.or(usual.stages),
            first: first.unwrap_or(usual.first),
            turn: cut.turn.unwrap_or(usual.turn),
        };
        if own.kerf.is_positive() && own.least_strip.is_positive() {
            let of = of.to_owned();
            self.faults.push(ListFault {
                line,
                column: None,
                reason: Box::new(ListReason::StripAndKerf { of }),
            });
        }
        own
    }

    fn not_too_wide(&mut self, kerf: Length, written: &Spanned<Typed>) {
        if let Some(why) = too_wide(kerf, self.bare) {
            let text = self.typed(written).to_owned();
            self.refuse::<()>("kerf", &written.span(), &text, why);
        }
    }

    /// One of some words.
    pub fn choice<T: Copy>(
        &mut self,
        field: &'static str,
        written: Option<&Spanned<String>>,
        choices: &[(&str, T)],
    ) -> Option<T> {
        let written = written?;
        let found = choices.iter().find(|(word, _)| word == written.get_ref());
        if let Some((_, choice)) = found {
            return Some(*choice);
        }
        let words: Vec<&str> = choices.iter().map(|(word, _)| *word).collect();
        let why = format!("write one of {}", words.join(", "));
        self.refuse(field, &written.span(), written.get_ref(), why)
    }

    /// What was written, where anything was.
    pub fn optional<T, U>(
        &mut self,
        written: Option<T>,
        read: impl FnOnce(&mut Self, T) -> Option<U>,
    ) -> Result<Option<U>, Unread> {
        written
            .map(|written| read(self, written).ok_or(Unread))
            .transpose()
    }

    /// A whole number within limits.
    pub fn number(
        &mut self,
        field: &'static str,
        written: &Spanned<i64>,
        least: u64,
        most: u64,
    ) -> Option<u64> {
        let number = u64::try_from(*written.get_ref());
        match number {
            Ok(number) if (least..=most).contains(&number) => Some(number),
            _ => {
                let text = written.get_ref().to_string();
                let why = format!("write a whole number from {least} to {most}");
                self.refuse(field, &written.span(), &text, why)
            }
        }
    }

    /// How many.
    pub fn count(&mut self, written: &Spanned<i64>, least: u64) -> Option<u64> {
        self.number("count", written, least, MOST)
    }

    /// As it was typed.
    fn typed<'a>(&'a self, written: &'a Spanned<Typed>) -> &'a str {
        match written.get_ref() {
            Typed::Text(text) => text,
            Typed::Whole(_) | Typed::Decimal(_) => {
                self.text.get(written.span()).unwrap_or_default()
            }
        }
    }

    /// A length that is not below nothing.
    pub fn length(&mut self, field: &'static str, written: &Spanned<Typed>) -> Option<Length> {
        let text = self.typed(written).to_owned();
        let why = match read_length(&text, self.bare) {
            Ok(length) if !length.is_negative() => return Some(length),
            Ok(_) => "it can't be less than nothing".to_owned(),
            Err(error) => format!("{error}; {}", error.hint()),
        };
        self.refuse(field, &written.span(), &text, why)
    }

    /// A length above nothing.
    pub fn above_zero(&mut self, field: &'static str, written: &Spanned<Typed>) -> Option<Length> {
        let length = self.length(field, written)?;
        if length.is_zero() {
            let text = self.typed(written).to_owned();
            return self.refuse(field, &written.span(), &text, "it must be above zero");
        }
        Some(length)
    }

    /// Two lengths, no more and no fewer.
    pub fn pair(&mut self, field: &'static str, written: &Ends) -> Option<[Length; 2]> {
        let [a, b] = written.get_ref().as_slice() else {
            let text = self.both(written);
            let why = "write two lengths, such as [\"1/2\", \"1/4\"]";
            return self.refuse(field, &written.span(), &text, why);
        };
        let (a, b) = (self.length(field, a), self.length(field, b));
        Some([a?, b?])
    }

    pub fn size(&mut self, field: &'static str, written: &Spanned<String>) -> Option<Size> {
        let why = match read_size(written.get_ref(), self.bare) {
            Ok(size) if size.short_side().is_positive() => return Some(size),
            Ok(_) => "both sides must be above zero".to_owned(),
            Err(error) => format!("{error}; {}", error.hint()),
        };
        self.refuse(field, &written.span(), written.get_ref(), why)
    }

    pub fn money(&mut self, written: &Spanned<String>) -> Option<Money> {
        let why = match Money::read(written.get_ref()) {
            Ok(money) if money.minor >= 0 => return Some(money),
            Ok(_) => "it can't be less than nothing".to_owned(),
            Err(error) => format!("{error}; {}", error.hint()),
        };
        self.refuse("cost", &written.span(), written.get_ref(), why)
    }

    /// All of them as they were typed, for a sentence.
    pub fn both(&self, written: &Ends) -> String {
        let typed = written.get_ref().iter().map(|one| self.typed(one));
        typed.collect::<Vec<_>>().join(" and ")
    }

    pub fn unit(&self) -> Unit {
        self.bare
    }

    pub fn refuse<T>(
        &mut self,
        field: &'static str,
        span: &Range<usize>,
        text: &str,
        why: impl Into<String>,
    ) -> Option<T> {
        let reason = ListReason::Field {
            entry: self.entry.clone(),
            field,
            text: text.to_owned(),
            why: why.into(),
        };
        let fault = self.fault(span, reason);
        self.faults.push(fault);
        None
    }

    pub fn fault(&self, span: &Range<usize>, reason: ListReason) -> ListFault {
        let (line, column) = self.place(span);
        ListFault {
            line: Some(line),
            column: Some(column),
            reason: Box::new(reason),
        }
    }

    /// Line and column a span begins at, from 1.
    pub fn place(&self, span: &Range<usize>) -> (usize, usize) {
        let at = self.text.floor_char_boundary(span.start);
        let line = self.lines.partition_point(|start| *start <= at).max(1);
        let start = self.lines[line - 1];
        (line, self.text[start..at].chars().count() + 1)
    }
}

/// A material's name; blank is none.
pub(super) fn material(written: Option<&str>) -> Option<String> {
    let name = written.map(str::trim).filter(|name| !name.is_empty());
    name.map(str::to_owned)
}

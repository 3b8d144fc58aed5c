//! How lengths stand in a table.

use measure::{Angle, Length, Rounding, Size, Tape, Toward, Unit};
use sizing::{Sizes, WorkedSize};
use working::{LineId, Worked, Working};

use super::Group;

/// The words of one piece: its unit, its tape, and its working for the paths.
#[derive(Clone, Copy)]
pub struct Words<'a> {
    unit: Unit,
    tape: Option<Tape>,
    working: &'a Working,
}

impl<'a> Words<'a> {
    /// As the piece asks.
    pub fn of(sizes: &'a Sizes) -> Self {
        Self {
            unit: sizes.unit(),
            tape: Some(sizes.tape()),
            working: &sizes.working,
        }
    }

    /// Exactly, with no tape beside it.
    pub const fn exact(unit: Unit, working: &'a Working) -> Self {
        Self {
            unit,
            tape: None,
            working,
        }
    }

    /// Exactly, in both families, and the nearest mark of the tape where it has none just there.
    pub fn length(self, length: Length) -> String {
        let exact = length.in_both(self.unit);
        match self.on_tape(length) {
            Some(mark) if !exact.contains(&format!("({mark})")) => {
                format!("{exact}  [tape {mark}]")
            }
            _ => exact,
        }
    }

    /// Exactly and without the tape, for what nobody measures off: a board's thickness.
    pub fn thickness(self, thickness: Length) -> String {
        thickness.in_both(self.unit)
    }

    /// As [`length`](Self::length), width before height.
    pub fn size(self, size: Size) -> String {
        let exact = format!(
            "{} × {}",
            size.width.in_both(self.unit),
            size.height.in_both(self.unit)
        );
        match [size.width, size.height].map(|length| self.on_tape(length)) {
            [None, None] => exact,
            [width, height] => {
                let width = width.unwrap_or_else(|| size.width.exact(self.unit));
                let height = height.unwrap_or_else(|| size.height.exact(self.unit));
                format!("{exact}  [tape {width} × {height}]")
            }
        }
    }

    /// The nearest mark, where the length lies between two.
    fn on_tape(self, length: Length) -> Option<String> {
        let printed = length.on_tape(self.tape?, Toward::Nearest);
        (printed.rounding != Rounding::Exact).then(|| printed.to_string().replace(['(', ')'], ""))
    }

    /// What `--why` calls a line.
    pub fn path(self, line: LineId) -> String {
        self.working.line(line).subject.to_string()
    }

    /// Adds a worked length.
    pub fn worked(self, group: &mut Group, label: &str, length: Worked<Length>) {
        group.row_with_path(label, self.length(length.value), self.path(length.line));
    }

    /// Adds a worked length, where there is one.
    pub fn some(self, group: &mut Group, label: &str, length: Option<Worked<Length>>) {
        if let Some(length) = length {
            self.worked(group, label, length);
        }
    }

    /// Adds a worked size.
    pub fn worked_size(self, group: &mut Group, label: &str, size: WorkedSize) {
        let path = self.path(size.width.line);
        let path = path.strip_suffix(".width").unwrap_or(&path).to_owned();
        group.row_with_path(label, self.size(size.size()), path);
    }

    /// Adds a worked angle.
    pub fn angle(self, group: &mut Group, label: &str, angle: Worked<Angle>) {
        group.row_with_path(label, angle.value.to_string(), self.path(angle.line));
    }
}

/// A name, numbered from 1 where there are several.
pub fn numbered(name: &str, index: usize, count: usize) -> String {
    if count > 1 {
        format!("{name} {}", index + 1)
    } else {
        name.to_owned()
    }
}

//! Tables for people: groups of labelled lines.

mod bench;
mod boards;
mod members;
mod money;
mod sizes;
mod words;

use crate::terminal::{Ink, Terminal};

pub use money::{of_alternatives, of_comparison, of_price, of_quote};
pub use sizes::of_sizes;
pub use words::Words;

/// Groups, one below the other.
#[derive(Debug, Default)]
pub struct Report {
    groups: Vec<Group>,
}

/// A heading and its lines.
#[derive(Debug)]
pub struct Group {
    heading: String,
    rows: Vec<Row>,
}

#[derive(Debug)]
struct Row {
    label: String,
    value: String,
    path: String,
}

impl Report {
    /// Starts a group.
    pub fn group(&mut self, heading: impl Into<String>) -> &mut Group {
        self.groups.push(Group {
            heading: heading.into(),
            rows: Vec::new(),
        });
        self.last()
    }

    /// The group that was started last; one without a heading where there is none.
    pub fn last(&mut self) -> &mut Group {
        if self.groups.is_empty() {
            self.groups.push(Group {
                heading: String::new(),
                rows: Vec::new(),
            });
        }
        let last = self.groups.len() - 1;
        &mut self.groups[last]
    }

    /// The text, as stdout may show it.
    pub fn render(&self, terminal: Terminal) -> String {
        let groups = self.groups.iter().filter(|group| !group.rows.is_empty());
        let told: Vec<String> = groups.map(|group| group.render(terminal)).collect();
        told.join("\n")
    }
}

/// Where paths stand at the furthest; behind a longer value they follow on.
const PATH_AT_MOST: usize = 50;

impl Group {
    /// A line.
    pub fn row(&mut self, label: &str, value: String) -> &mut Self {
        self.row_with_path(label, value, String::new())
    }

    /// A line, where there is a value.
    pub fn some(&mut self, label: &str, value: Option<String>) -> &mut Self {
        match value {
            Some(value) => self.row(label, value),
            None => self,
        }
    }

    /// A line that `--why` explains under `path`.
    pub fn row_with_path(&mut self, label: &str, value: String, path: String) -> &mut Self {
        self.rows.push(Row {
            label: label.to_owned(),
            value,
            path,
        });
        self
    }

    fn render(&self, terminal: Terminal) -> String {
        let wide = |text: &str| text.chars().count();
        let labels = self
            .rows
            .iter()
            .map(|row| wide(&row.label))
            .max()
            .unwrap_or_default();
        let explained = self.rows.iter().filter(|row| !row.path.is_empty());
        let values = explained
            .map(|row| wide(&row.value))
            .max()
            .unwrap_or_default()
            .min(PATH_AT_MOST);
        let mut text = format!("{}\n", terminal.ink_out(Ink::Heading, &self.heading));
        for row in &self.rows {
            let value = if row.path.is_empty() {
                row.value.clone()
            } else {
                format!(
                    "{:<values$}  {}",
                    row.value,
                    terminal.ink_out(Ink::Faint, &row.path)
                )
            };
            text.push_str(format!("  {:<labels$}  {value}", row.label).trim_end());
            text.push('\n');
        }
        text
    }
}

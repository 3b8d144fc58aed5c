//! Working as plain text.

use std::fmt;

use crate::explain::Explanation;
use crate::rule::{Source, Status};
use crate::trace::LineView;
use crate::value::{Input, Origin};

impl fmt::Display for LineView<'_> {
    /// Several lines of text, without a line break at the end:
    ///
    /// ```text
    /// package.width = 11 3/4 in (298.45 mm)
    ///   rule     the package is the window and both borders [geometry]
    ///   formula  package = window + left + right
    ///   with     window = 7 3/4 in  from mat.1.opening.1.window.width
    ///            left   = 2 in      from the job
    /// ```
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write_line(f, self, "")
    }
}

impl fmt::Display for Explanation<'_> {
    /// Every line, each two spaces further in than the one it was needed for.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, step) in self.steps().iter().enumerate() {
            if at > 0 {
                writeln!(f)?;
            }
            write_line(f, &step.line, &"  ".repeat(step.depth))?;
        }
        Ok(())
    }
}

fn write_line(f: &mut fmt::Formatter<'_>, line: &LineView<'_>, indent: &str) -> fmt::Result {
    let rule = line.rule;
    write!(f, "{indent}{} = {}", line.subject, line.value)?;
    write!(f, "\n{indent}  rule     {} [{}]", rule.words, rule.status)?;
    if (rule.source, rule.status) != (Source::Geometry, Status::Geometry) {
        write!(f, "\n{indent}  source   {}", rule.source)?;
    }
    write!(f, "\n{indent}  formula  {}", rule.formula)?;
    let values: Vec<String> = line
        .inputs
        .iter()
        .map(|input| input.value.brief())
        .collect();
    let names = widest(line.inputs.iter().map(|input| input.name));
    let columns = widest(values.iter().map(String::as_str));
    for (at, (input, value)) in line.inputs.iter().zip(&values).enumerate() {
        let head = if at == 0 { "with" } else { "" };
        write!(
            f,
            "\n{indent}  {head:<7}  {:<names$} = {value:<columns$}  from ",
            input.name
        )?;
        write_origin(f, line, input)?;
    }
    Ok(())
}

fn write_origin(f: &mut fmt::Formatter<'_>, line: &LineView<'_>, input: &Input) -> fmt::Result {
    match input.origin {
        Origin::Line(earlier) => write!(f, "{}", line.working.line(earlier).subject),
        Origin::Setting(id) => write!(f, "the setting {id}"),
        Origin::Job => f.write_str("the job"),
        Origin::Material => f.write_str("the material"),
        Origin::Table(source) => write!(f, "a table of constants, source {source}"),
        Origin::Search => f.write_str("a search, checked by this line"),
        Origin::Prices => f.write_str("the shop's prices"),
    }
}

fn widest<'a>(texts: impl Iterator<Item = &'a str>) -> usize {
    texts.map(|text| text.chars().count()).max().unwrap_or(0)
}

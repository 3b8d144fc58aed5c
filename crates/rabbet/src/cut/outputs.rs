//! Where plans go: stdout, cut sheets, drawings, JSON; all made first, then written.

use std::fs;
use std::path::Path;

use cutting::{Goal, Problem as Task};
use drawing::{CutError, Ink, Look, cut_sheet, cut_stick};
use paperwork::{CutBook, CutLeaf, CutMaterial, PaperworkError, cut_sheets_pdf, to_buy};
use trade::Units;

use super::options::Options;
use super::progress::Stopping;
use super::text::words;
use crate::exit::Exit;
use crate::files::{self, Writing};
use crate::problem::{Kind, Problem, Trouble};
use crate::terminal::Terminal;

/// What a command has to hand out.
pub struct Answer<'a> {
    /// Everything said of each material.
    pub materials: Vec<CutMaterial>,
    /// What the plan is called.
    pub name: String,
    /// The jobs it is for.
    pub orders: Vec<String>,
    /// What is printed first.
    pub units: Units,
    /// The plan as JSON.
    pub json: String,
    /// Further files, and what goes into them.
    pub further: Vec<(&'a str, Vec<u8>)>,
    /// Lines that close the text.
    pub closing: Vec<String>,
    /// Pieces the stock does not reach for, where all of them are wanted.
    pub lacking: Vec<String>,
    /// What was read; none of it is written over.
    pub stopping: Stopping,
}

impl Options {
    /// Refuses what can't be written before anything is planned.
    ///
    /// # Errors
    /// Two things for stdout, an output that is an input or a folder, a folder that is not there.
    pub fn check(&self, inputs: &[&str], further: &[&str]) -> Result<(), Trouble> {
        let named = [&self.output, &self.plan];
        let outputs: Vec<&str> = named
            .into_iter()
            .filter_map(|name| name.as_deref())
            .chain(further.iter().copied())
            .collect();
        let dashes = outputs.iter().filter(|name| **name == "-").count();
        if dashes + usize::from(self.json) > 1 {
            let problem =
                Problem::new("usage.two_on_stdout", "two answers are asked for on stdout");
            let problem = problem.hint("send one of them to a file");
            return Err(Trouble::one(Kind::Usage, problem));
        }
        for (place, output) in outputs.iter().enumerate() {
            for input in inputs {
                apart(
                    input,
                    output,
                    "this would replace what the plan is made from",
                )?;
            }
            for other in &outputs[..place] {
                if *output != "-" && output == other {
                    return Err(refused(output, "two answers go to this file"));
                }
            }
            if *output != "-" {
                files::writable(output)?;
            }
        }
        Ok(())
    }

    /// Whether stdout is taken by something else than words.
    fn takes_stdout(&self, further: &[(&str, Vec<u8>)]) -> bool {
        let dash = |name: &Option<String>| name.as_deref() == Some("-");
        dash(&self.output) || dash(&self.plan) || further.iter().any(|(name, _)| *name == "-")
    }
}

fn apart(input: &str, output: &str, sentence: &str) -> Result<(), Trouble> {
    if files::same_file(input, output) {
        return Err(refused(output, sentence));
    }
    Ok(())
}

fn refused(output: &str, sentence: &str) -> Trouble {
    let problem = Problem::new("file.own_input", sentence);
    let problem = problem
        .hint("choose another name for the output")
        .in_file(output);
    Trouble::one(Kind::Input, problem)
}

/// Makes everything that was asked for, then writes it, then says it.
///
/// # Errors
/// A plan that can't be drawn or printed; a file that can't be written.
pub fn deliver(
    answer: &Answer<'_>,
    options: &Options,
    terminal: Terminal,
) -> Result<Exit, Trouble> {
    let mut text = Vec::with_capacity(answer.materials.len() + 2);
    for material in &answer.materials {
        text.push(words(material, terminal).map_err(|error| unset(&error))?);
    }
    text.extend(to_buy(&answer.materials).map(|line| format!("{line}\n")));
    if !answer.closing.is_empty() {
        text.push(format!("{}\n", answer.closing.join("\n")));
    }
    let mut made: Vec<(&str, Vec<u8>)> = Vec::new();
    if let Some(output) = &options.output {
        made.push((output, pdf(answer, options)?));
    }
    if let Some(plan) = &options.plan {
        made.push((plan, answer.json.clone().into_bytes()));
    }
    let drawings = match &options.svg {
        Some(folder) => drawings(answer, folder)?,
        None => Vec::new(),
    };
    answer.stopping.begin_writing();
    let how = Writing {
        dry_run: options.dry_run,
        replace: true,
    };
    let further = answer.further.iter().map(|(name, bytes)| (*name, bytes));
    for (name, bytes) in made
        .iter()
        .map(|(name, bytes)| (*name, bytes))
        .chain(further)
    {
        files::write(name, bytes, how, terminal)?;
    }
    if let Some(folder) = &options.svg {
        write_drawings(folder, &drawings, options.dry_run, terminal)?;
    }
    if options.json {
        terminal.data(&answer.json)?;
    } else if !options.takes_stdout(&answer.further) {
        terminal.data(&text.join("\n"))?;
    }
    lacking(answer)
}

/// Refuses a plan that leaves pieces out; it is written all the same.
fn lacking(answer: &Answer<'_>) -> Result<Exit, Trouble> {
    const NAMED: usize = 3;
    let all = &answer.lacking;
    if all.is_empty() {
        return Ok(Exit::Done);
    }
    let named = all
        .iter()
        .take(NAMED)
        .cloned()
        .collect::<Vec<_>>()
        .join("; ");
    let more = match all.len().saturating_sub(NAMED) {
        0 => String::new(),
        more => format!("; and {more} more"),
    };
    let sentence = format!("the stock does not reach for every piece: {named}{more}");
    let hint = "list more stock, or leave its count out where it can be bought";
    let problem = Problem::new("cut.lacking", sentence).hint(hint);
    Err(Trouble::one(Kind::Piece, problem))
}

fn pdf(answer: &Answer<'_>, options: &Options) -> Result<Vec<u8>, Trouble> {
    let (date, made) = options.printing.when();
    let book = CutBook {
        shop: options.printing.shop_name.clone(),
        plan: answer.name.clone(),
        orders: answer.orders.clone(),
        made,
        date,
        revision: String::new(),
        superseded: String::new(),
        materials: answer.materials.clone(),
    };
    cut_sheets_pdf(&book, options.printing.paper(answer.units)).map_err(|error| unset(&error))
}

fn unset(error: &PaperworkError) -> Trouble {
    match error {
        PaperworkError::Cuts(error) => undrawn(error),
        PaperworkError::NotATime(_) => {
            Trouble::one(Kind::Input, Problem::new("cut.date", error.to_string()))
        }
        PaperworkError::TooMany => {
            Trouble::one(Kind::Input, Problem::new("cut.too_many", error.to_string()))
        }
        _ => Trouble::one(Kind::Ours, Problem::new("cut.setting", error.to_string())),
    }
}

fn undrawn(error: &CutError) -> Trouble {
    let kind = match error {
        CutError::TooLong { .. } => Kind::Input,
        _ => Kind::Ours,
    };
    Trouble::one(kind, Problem::new("cut.drawing", error.to_string()))
}

/// A drawing of each sheet and stick, by its file's name.
fn drawings(answer: &Answer<'_>, folder: &str) -> Result<Vec<(String, String)>, Trouble> {
    let mut drawn = Vec::new();
    for (place, material) in answer.materials.iter().enumerate() {
        for (number, leaf) in material.leaves.iter().enumerate() {
            let look = Look::wide(Ink::Colour);
            let (word, drawing) = match leaf {
                CutLeaf::Sheet(sheet) => ("sheet", cut_sheet(sheet, &look)),
                CutLeaf::Stick(stick) => ("stick", cut_stick(stick, &look)),
            };
            let drawing = drawing.map_err(|error| undrawn(&error))?.drawing;
            let name = plain_name(&material.name);
            let name = format!("{:02}-{name}-{word}-{:03}.svg", place + 1, number + 1);
            drawn.push((name, drawing.svg));
        }
    }
    refuse_another_plan(folder, &drawn)?;
    Ok(drawn)
}

/// A name that any file system takes.
fn plain_name(name: &str) -> String {
    const LONGEST: usize = 40;
    let plain = name.chars().map(|sign| {
        if sign.is_ascii_alphanumeric() {
            sign.to_ascii_lowercase()
        } else {
            ' '
        }
    });
    let plain: String = plain.collect();
    let words: Vec<&str> = plain.split_whitespace().collect();
    let joined: String = words.join("-").chars().take(LONGEST).collect();
    joined.trim_end_matches('-').to_owned()
}

/// Refuses a folder that holds drawings this plan would not replace: nobody should cut from both.
fn refuse_another_plan(folder: &str, drawn: &[(String, String)]) -> Result<(), Trouble> {
    let Ok(entries) = fs::read_dir(folder) else {
        return Ok(()); // There is none yet; it is made when all else is done.
    };
    let others = entries.flatten().filter(|entry| {
        let name = entry.file_name();
        let is_drawing = Path::new(&name).extension().is_some_and(|of| of == "svg");
        is_drawing && !drawn.iter().any(|(ours, _)| name == ours.as_str())
    });
    match others.count() {
        0 => Ok(()),
        others => {
            let sentence = format!("this folder holds {others} drawings that are not of this plan");
            let problem = Problem::new("cut.other_drawings", sentence)
                .hint("name another folder, or empty this one, so that nobody cuts from both plans")
                .in_file(folder);
            Err(Trouble::one(Kind::Input, problem))
        }
    }
}

fn write_drawings(
    folder: &str,
    drawings: &[(String, String)],
    dry_run: bool,
    terminal: Terminal,
) -> Result<(), Trouble> {
    let many = drawings.len();
    if dry_run {
        terminal.talk(&format!(
            "{folder}: {many} drawings would be written; none is (--dry-run)"
        ));
        return Ok(());
    }
    fs::create_dir_all(folder).map_err(|error| {
        let sentence = format!("the folder can't be made: {}", files::reason(&error));
        let problem = Problem::new("file.no_folder", sentence).hint("choose another place");
        Trouble::one(Kind::File, problem.in_file(folder))
    })?;
    for (name, svg) in drawings {
        files::put(&Path::new(folder).join(name), svg.as_bytes(), true)?;
    }
    terminal.talk(&format!("{folder}: {many} drawings written"));
    Ok(())
}

/// Whether every piece of a problem is wanted.
pub fn wants_all(problem: &Task) -> bool {
    problem.goal() != Goal::Value
}

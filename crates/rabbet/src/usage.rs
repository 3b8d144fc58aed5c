//! A command typed wrongly: what clap noticed, in our words.

use clap::error::{ContextKind, ContextValue, ErrorKind};

use crate::exit::Exit;
use crate::problem::{Kind, Problem, Trouble};
use crate::terminal::Terminal;

/// Shows a help page or a version, or tells what was typed wrongly.
pub fn answer(error: &clap::Error, terminal: Terminal) -> Exit {
    match error.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => {
            let page = error.render();
            let text = if terminal.colour_out {
                page.ansi().to_string()
            } else {
                page.to_string()
            };
            match terminal.data(&text) {
                Ok(()) => Exit::Done,
                Err(trouble) => trouble.tell(terminal),
            }
        }
        ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand if !terminal.json => {
            let page = error.render();
            terminal.talk(&if terminal.colour_err {
                page.ansi().to_string()
            } else {
                page.to_string()
            });
            Exit::Usage
        }
        _ => Trouble::one(Kind::Usage, problem(error)).tell(terminal),
    }
}

fn problem(error: &clap::Error) -> Problem {
    Problem::new(code(error), sentence(error)).hint(hint(error))
}

/// Whether a value stands where none, or no further one, is read.
fn is_surplus(error: &clap::Error) -> bool {
    let argument = said(error, ContextKind::InvalidArg).unwrap_or_default();
    error.kind() == ErrorKind::UnknownArgument && !argument.starts_with('-')
}

fn code(error: &clap::Error) -> &'static str {
    match error.kind() {
        ErrorKind::InvalidSubcommand => "usage.command",
        ErrorKind::UnknownArgument if is_surplus(error) => "usage.too_many",
        ErrorKind::TooManyValues => "usage.too_many",
        ErrorKind::UnknownArgument => "usage.flag",
        ErrorKind::MissingRequiredArgument => "usage.missing",
        ErrorKind::MissingSubcommand | ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
            "usage.unfinished"
        }
        ErrorKind::ArgumentConflict => "usage.conflict",
        ErrorKind::InvalidUtf8 => "usage.not_text",
        ErrorKind::InvalidValue
        | ErrorKind::ValueValidation
        | ErrorKind::TooFewValues
        | ErrorKind::WrongNumberOfValues
        | ErrorKind::NoEquals => "usage.value",
        _ => "usage.other",
    }
}

fn sentence(error: &clap::Error) -> String {
    let said = |kind| said(error, kind).unwrap_or_default();
    let (argument, value) = (
        said(ContextKind::InvalidArg),
        said(ContextKind::InvalidValue),
    );
    match code(error) {
        "usage.command" => {
            let command = said(ContextKind::InvalidSubcommand);
            format!("there is no command `{command}`")
        }
        "usage.too_many" if value.is_empty() => format!("`{argument}` is one value too many"),
        "usage.too_many" => format!("`{value}` is one value too many for `{argument}`"),
        "usage.flag" => format!("there is no `{argument}` here"),
        "usage.missing" => format!("{argument} is missing"),
        "usage.unfinished" => "the command is not finished".to_owned(),
        "usage.conflict" if said(ContextKind::PriorArg) == argument => {
            format!("`{argument}` is typed twice")
        }
        "usage.conflict" => {
            let prior = said(ContextKind::PriorArg);
            format!("`{argument}` and `{prior}` can't be used together")
        }
        "usage.not_text" => "an argument is not UTF-8 text".to_owned(),
        "usage.value" if value.is_empty() => format!("`{argument}` needs a value"),
        "usage.value" => match std::error::Error::source(error) {
            Some(why) => format!("`{value}` does not do for `{argument}`: {why}"),
            None => format!("`{value}` is not a choice of `{argument}`"),
        },
        _ => "the command can't be read".to_owned(),
    }
}

/// What to type instead.
fn hint(error: &clap::Error) -> String {
    let near = [
        ContextKind::SuggestedSubcommand,
        ContextKind::SuggestedArg,
        ContextKind::SuggestedValue,
    ];
    let mut parts: Vec<String> = near
        .into_iter()
        .filter_map(|kind| nearest(error, kind))
        .map(|near| format!("did you mean `{near}`?"))
        .take(1)
        .collect();
    if let Some(valid) = said(error, ContextKind::ValidValue).filter(|valid| !valid.is_empty()) {
        parts.push(format!("choose from {valid}."));
    }
    if let Some(usage) = said(error, ContextKind::Usage) {
        let words: Vec<&str> = usage.split_whitespace().skip(1).collect();
        parts.push(format!("usage: `{}`.", words.join(" ")));
    }
    parts.push("`--help` shows more.".to_owned());
    parts.join(" ")
}

/// The likeliest of what may have been meant; of several, clap puts it last.
fn nearest(error: &clap::Error, kind: ContextKind) -> Option<String> {
    match error.get(kind)? {
        ContextValue::Strings(texts) => texts.last().cloned(),
        _ => said(error, kind),
    }
}

fn said(error: &clap::Error, kind: ContextKind) -> Option<String> {
    match error.get(kind)? {
        ContextValue::String(text) => Some(text.clone()),
        ContextValue::Strings(texts) => Some(texts.join(", ")),
        ContextValue::StyledStr(text) => Some(text.to_string()),
        ContextValue::StyledStrs(texts) => Some(
            texts
                .iter()
                .map(ToString::to_string)
                .collect::<Vec<_>>()
                .join(", "),
        ),
        ContextValue::Number(number) => Some(number.to_string()),
        _ => None,
    }
}

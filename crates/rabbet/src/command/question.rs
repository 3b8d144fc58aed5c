//! `rabbet light`, `rabbet air`, `rabbet hang`: questions that need no job file.

use std::collections::BTreeMap;

use clap::builder::EnumValueParser;
use clap::{Arg, ArgAction, ArgMatches, Command, FromArgMatches, Subcommand};
use web::care::{self, Fault, Field, Kind, NOUNS, Question};

use super::answer::{How, shown};
use super::{Desk, Units};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::{self, Problem, Spot, Trouble};

/// Questions about light.
pub type Light = Asking<0>;
/// Questions about air.
pub type Air = Asking<1>;
/// Questions about hanging.
pub type Hang = Asking<2>;

/// One question of a noun, by the noun's place among all, with what was typed.
#[derive(Debug)]
pub struct Asking<const NOUN: usize> {
    question: &'static Question,
    typed: BTreeMap<String, String>,
    units: Units,
    how: How,
}

impl<const NOUN: usize> Asking<NOUN> {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let units = trade::Units::from(self.units);
        let settings = desk.shop.settings(units)?;
        let answer = self.question.answer(&self.typed, &settings, units);
        let answer = answer.map_err(|faults| refused(&faults, desk))?;
        desk.terminal
            .data(&shown(&answer, units.unit(), &self.how, desk)?)?;
        Ok(Exit::Done)
    }
}

/// What is wrong with what was typed: by its flag for people, by its pointer for programs.
fn refused(faults: &[Fault], desk: &Desk) -> Trouble {
    let problem = |fault: &Fault| {
        let named = !fault.field.is_empty();
        let sentence = if named && !desk.terminal.json {
            format!("--{}: {}", fault.field, fault.sentence)
        } else {
            fault.sentence.clone()
        };
        let pointer = (named && desk.terminal.json).then(|| format!("/{}", fault.field));
        let problem = Problem::new(fault.code.clone(), sentence).at(Spot {
            pointer,
            shown: fault.shown.clone(),
            ..Spot::default()
        });
        if fault.hint.is_empty() {
            problem
        } else {
            problem.hint(fault.hint.clone())
        }
    };
    Trouble {
        kind: problem::Kind::Input,
        problems: faults.iter().map(problem).collect(),
    }
}

impl<const NOUN: usize> FromArgMatches for Asking<NOUN> {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, clap::Error> {
        let missing = || clap::Error::new(clap::error::ErrorKind::MissingSubcommand);
        let (verb, typed) = matches.subcommand().ok_or_else(missing)?;
        let question = care::question(NOUNS[NOUN].0, verb).ok_or_else(missing)?;
        let texts = question.fields.iter().filter_map(|field| {
            let text = typed.get_one::<String>(field.name)?;
            Some((field.name.to_owned(), text.clone()))
        });
        Ok(Self {
            question,
            typed: texts.collect(),
            units: typed.get_one::<Units>("units").copied().unwrap_or_default(),
            how: How {
                why: typed.get_one::<String>("why").cloned(),
                working: typed.get_flag("working"),
                json: typed.get_flag("json"),
            },
        })
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

impl<const NOUN: usize> Subcommand for Asking<NOUN> {
    fn augment_subcommands(command: Command) -> Command {
        let questions = care::of_noun(NOUNS[NOUN].0);
        questions.fold(command, |command, question| {
            command.subcommand(as_command(question))
        })
    }

    fn augment_subcommands_for_update(command: Command) -> Command {
        Self::augment_subcommands(command)
    }

    fn has_subcommand(name: &str) -> bool {
        care::question(NOUNS[NOUN].0, name).is_some()
    }
}

fn as_command(question: &'static Question) -> Command {
    let command = Command::new(question.verb)
        .about(question.tells)
        .before_help(format!("Example: {}", question.command()))
        .after_help(EXIT_CODES);
    let command = question
        .fields
        .iter()
        .fold(command, |command, field| command.arg(as_flag(field)));
    let flag = |name: &'static str, help: &'static str| {
        Arg::new(name)
            .long(name)
            .help(help)
            .action(ArgAction::SetTrue)
    };
    command
        .arg(
            Arg::new("units")
                .long("units")
                .value_name("UNITS")
                .help("What a bare length is in")
                .default_value("in")
                .value_parser(EnumValueParser::<Units>::new()),
        )
        .arg(
            Arg::new("why")
                .long("why")
                .value_name("PATH")
                .help("Explain one value, or list those whose names begin so")
                .conflicts_with("working"),
        )
        .arg(flag("working", "Every line of the working too"))
        .arg(flag("json", "As JSON; with --working, its lines too"))
}

fn as_flag(field: &'static Field) -> Arg {
    let settings = trade::Settings::defaults(trade::Units::Inches);
    let mut words = vec![field.label.to_owned()];
    words.extend((!field.hint.is_empty()).then(|| field.hint.to_owned()));
    words.extend(field.left_out(&settings, measure::Unit::Inch));
    if let Kind::Choice(list) = field.kind {
        let choices: Vec<&str> = list().iter().map(|choice| choice.word).collect();
        words.push(format!("one of: {}", choices.join(" | ")));
    }
    let help = words.join("; ");
    Arg::new(field.name)
        .long(field.name)
        .value_name(kind_of(field.kind))
        .help(help)
        .required(field.is_asked())
        .allow_hyphen_values(true)
}

const fn kind_of(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "LENGTH",
        Kind::Size => "SIZE",
        Kind::Mass => "WEIGHT",
        Kind::Temperature | Kind::Warmer => "TEMPERATURE",
        Kind::Number { .. } => "NUMBER",
        Kind::Choice(_) => "WORDS",
    }
}

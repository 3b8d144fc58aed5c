//! The commands, `noun verb`, one file each.

mod completions;
mod cut_jobs;
mod cut_list;
mod demo_write;
mod job_check;
mod job_convert;
mod job_draw;
mod job_file;
mod job_largest_art;
mod job_new;
mod job_schema;
mod job_sizes;
mod job_ticket;
mod length_read;
mod material_list;
mod material_show;
mod serve;
mod setting_list;
mod setting_show;

use std::ffi::OsString;

use clap::{Parser, Subcommand, ValueEnum};

use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use crate::shop::Shop;
use crate::terminal::Terminal;
use crate::usage;

/// Works out every size of a picture frame from one description of the job, and says why
#[derive(Parser, Debug)]
#[command(
    name = "rabbet",
    version,
    before_help = "Example: rabbet job sizes print.toml",
    after_help = EXIT_CODES,
    propagate_version = true,
    disable_help_flag = true,
    arg_required_else_help = true
)]
struct Rabbet {
    #[command(subcommand)]
    noun: Noun,
    #[command(flatten)]
    shop: Shop,
    #[arg(
        long,
        global = true,
        help = "No colour; NO_COLOR in the environment does the same"
    )]
    no_color: bool,
    /// Shows this page
    #[arg(short, long, global = true, action = clap::ArgAction::HelpLong)]
    help: Option<bool>,
}

#[derive(Subcommand, Debug)]
enum Noun {
    /// One piece of framing, described in a file
    #[command(subcommand, before_help = "Example: rabbet job check print.toml", after_help = EXIT_CODES)]
    Job(JobVerb),
    /// What is cut from what: the fewest and cheapest sticks and sheets, with proof
    #[command(subcommand, before_help = "Example: rabbet cut list list.toml", after_help = EXIT_CODES)]
    Cut(CutVerb),
    /// The shop's habits: every number the trade leaves open
    #[command(subcommand, before_help = "Example: rabbet setting list", after_help = EXIT_CODES)]
    Setting(SettingVerb),
    /// Boards, glazing, mouldings and what is known of them
    #[command(subcommand, before_help = "Example: rabbet material list", after_help = EXIT_CODES)]
    Material(MaterialVerb),
    /// Lengths as people type them
    #[command(subcommand, before_help = "Example: rabbet length read '16 7/8'", after_help = EXIT_CODES)]
    Length(LengthVerb),
    /// An invented shop to try things on
    #[command(subcommand, before_help = "Example: rabbet demo write shop", after_help = EXIT_CODES)]
    Demo(DemoVerb),
    Serve(serve::Serve),
    /// Writes a script that lets a shell finish commands
    Completions(completions::Completions),
}

#[derive(Subcommand, Debug)]
enum JobVerb {
    New(job_new::JobNew),
    Sizes(job_sizes::JobSizes),
    Check(job_check::JobCheck),
    Draw(job_draw::JobDraw),
    Ticket(job_ticket::JobTicket),
    LargestArt(job_largest_art::JobLargestArt),
    Schema(job_schema::JobSchema),
    Convert(job_convert::JobConvert),
}

#[derive(Subcommand, Debug)]
enum CutVerb {
    List(cut_list::CutList),
    Jobs(cut_jobs::CutJobs),
}

#[derive(Subcommand, Debug)]
enum SettingVerb {
    List(setting_list::SettingList),
    Show(setting_show::SettingShow),
}

#[derive(Subcommand, Debug)]
enum MaterialVerb {
    List(material_list::MaterialList),
    Show(material_show::MaterialShow),
}

#[derive(Subcommand, Debug)]
enum LengthVerb {
    Read(length_read::LengthRead),
}

#[derive(Subcommand, Debug)]
enum DemoVerb {
    Write(demo_write::DemoWrite),
}

/// What every command may use.
struct Desk {
    terminal: Terminal,
    shop: Shop,
}

/// What a bare number means.
#[derive(Clone, Copy, Debug, Default, ValueEnum)]
enum Units {
    /// Inches
    #[default]
    In,
    /// Millimetres
    Mm,
}

impl From<Units> for trade::Units {
    fn from(units: Units) -> Self {
        match units {
            Units::In => Self::Inches,
            Units::Mm => Self::Millimetres,
        }
    }
}

/// Runs what was typed.
pub fn run(args: &[OsString]) -> Exit {
    let terminal = Terminal::of(args);
    let typed = match Rabbet::try_parse_from(args) {
        Ok(typed) => typed,
        Err(error) => return usage::answer(&error, terminal),
    };
    let desk = Desk {
        terminal,
        shop: typed.shop,
    };
    match done(&typed.noun, &desk) {
        Ok(exit) => exit,
        Err(trouble) => trouble.tell(terminal),
    }
}

fn done(noun: &Noun, desk: &Desk) -> Result<Exit, Trouble> {
    match noun {
        Noun::Job(JobVerb::New(new)) => new.run(desk),
        Noun::Job(JobVerb::Sizes(sizes)) => sizes.run(desk),
        Noun::Job(JobVerb::Check(check)) => check.run(desk),
        Noun::Job(JobVerb::Draw(draw)) => draw.run(desk),
        Noun::Job(JobVerb::Ticket(ticket)) => ticket.run(desk),
        Noun::Job(JobVerb::LargestArt(largest)) => largest.run(desk),
        Noun::Job(JobVerb::Schema(schema)) => schema.run(desk),
        Noun::Job(JobVerb::Convert(convert)) => convert.run(desk),
        Noun::Cut(CutVerb::List(list)) => list.run(desk),
        Noun::Cut(CutVerb::Jobs(jobs)) => jobs.run(desk),
        Noun::Setting(SettingVerb::List(list)) => list.run(desk),
        Noun::Setting(SettingVerb::Show(show)) => show.run(desk),
        Noun::Material(MaterialVerb::List(list)) => list.run(desk),
        Noun::Material(MaterialVerb::Show(show)) => show.run(desk),
        Noun::Length(LengthVerb::Read(read)) => read.run(desk),
        Noun::Demo(DemoVerb::Write(write)) => write.run(desk),
        Noun::Serve(serve) => serve.run(desk),
        Noun::Completions(completions) => completions.run(desk),
    }
}

/// The whole command line, for the scripts that finish commands.
fn whole() -> clap::Command {
    <Rabbet as clap::CommandFactory>::command()
}

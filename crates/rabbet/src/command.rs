//! The commands, `noun verb`, one file each.

mod answer;
mod asking;
mod completions;
mod cut_jobs;
mod cut_list;
mod demo_write;
mod job_advise;
mod job_budget;
mod job_check;
mod job_compare;
mod job_convert;
mod job_draw;
mod job_file;
mod job_largest_art;
mod job_new;
mod job_place;
mod job_price;
mod job_schema;
mod job_sizes;
mod job_ticket;
mod job_weight;
mod length_read;
mod material_list;
mod material_show;
mod papers;
mod prices;
mod question;
mod quote;
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
    /// Light on art: how long it lasts, and what of the year's light it may have
    #[command(subcommand, before_help = "Example: rabbet light fade --medium watercolour", after_help = EXIT_CODES)]
    Light(question::Light),
    /// Damp and warmth: wood, sheets, dew, cold walls, sealed packages
    #[command(subcommand, before_help = "Example: rabbet air dew --humidity 50", after_help = EXIT_CODES)]
    Air(question::Air),
    /// Loads: wire, screws, rails, hardware, lifting
    #[command(subcommand, before_help = "Example: rabbet hang hardware --weight '18 lb'", after_help = EXIT_CODES)]
    Hang(question::Hang),
    /// The shop's habits: every number the trade leaves open
    #[command(subcommand, before_help = "Example: rabbet setting list", after_help = EXIT_CODES)]
    Setting(SettingVerb),
    /// Boards, glazing, mouldings and what is known of them
    #[command(subcommand, before_help = "Example: rabbet material list", after_help = EXIT_CODES)]
    Material(MaterialVerb),
    /// What suppliers ask, read into a catalogue; what the shop charges, looked over and compared
    #[command(subcommand, before_help = "Example: rabbet prices import list.csv --mapping list.mapping.toml --catalogue shop.toml", after_help = EXIT_CODES)]
    Prices(prices::PricesVerb),
    /// A price given to a customer, frozen with everything it was made from
    #[command(subcommand, before_help = "Example: rabbet quote make print.toml --number Q-1 -o q-1.json --shop .", after_help = EXIT_CODES)]
    Quote(quote::QuoteVerb),
    /// Lengths as people type them
    #[command(subcommand, before_help = "Example: rabbet length read '16 7/8'", after_help = EXIT_CODES)]
    Length(LengthVerb),
    /// The label on the back of a piece, its signed record in codes
    #[command(subcommand, before_help = "Example: rabbet label print print.toml --key shop.key -o label.pdf", after_help = EXIT_CODES)]
    Label(papers::LabelVerb),
    /// The record of a piece, as its label holds it: complete, compressed, signed
    #[command(subcommand, before_help = "Example: rabbet record read record.txt", after_help = EXIT_CODES)]
    Record(papers::RecordVerb),
    /// The care card for the customer
    #[command(subcommand, before_help = "Example: rabbet card print print.toml -o card.pdf", after_help = EXIT_CODES)]
    Card(papers::CardVerb),
    /// Pieces on a wall: where each hangs, where each nail goes
    #[command(subcommand, before_help = "Example: rabbet wall show wall.toml", after_help = EXIT_CODES)]
    Wall(papers::WallVerb),
    /// What was seen on the art when it was taken in
    #[command(subcommand, before_help = "Example: rabbet condition print print.toml -o condition.pdf", after_help = EXIT_CODES)]
    Condition(papers::ConditionVerb),
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
    Advise(job_advise::JobAdvise),
    Weight(job_weight::JobWeight),
    Place(job_place::JobPlace),
    Price(job_price::JobPrice),
    Compare(job_compare::JobCompare),
    Budget(job_budget::JobBudget),
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
        Noun::Job(JobVerb::Advise(advise)) => advise.run(desk),
        Noun::Job(JobVerb::Weight(weight)) => weight.run(desk),
        Noun::Job(JobVerb::Place(place)) => place.run(desk),
        Noun::Job(JobVerb::Price(price)) => price.run(desk),
        Noun::Job(JobVerb::Compare(compare)) => compare.run(desk),
        Noun::Job(JobVerb::Budget(budget)) => budget.run(desk),
        Noun::Job(JobVerb::Draw(draw)) => draw.run(desk),
        Noun::Job(JobVerb::Ticket(ticket)) => ticket.run(desk),
        Noun::Job(JobVerb::LargestArt(largest)) => largest.run(desk),
        Noun::Job(JobVerb::Schema(schema)) => schema.run(desk),
        Noun::Job(JobVerb::Convert(convert)) => convert.run(desk),
        Noun::Cut(CutVerb::List(list)) => list.run(desk),
        Noun::Cut(CutVerb::Jobs(jobs)) => jobs.run(desk),
        Noun::Light(light) => light.run(desk),
        Noun::Air(air) => air.run(desk),
        Noun::Hang(hang) => hang.run(desk),
        Noun::Setting(SettingVerb::List(list)) => list.run(desk),
        Noun::Setting(SettingVerb::Show(show)) => show.run(desk),
        Noun::Material(MaterialVerb::List(list)) => list.run(desk),
        Noun::Material(MaterialVerb::Show(show)) => show.run(desk),
        Noun::Prices(verb) => verb.run(desk),
        Noun::Quote(verb) => verb.run(desk),
        Noun::Length(LengthVerb::Read(read)) => read.run(desk),
        Noun::Label(verb) => verb.run(desk),
        Noun::Record(verb) => verb.run(desk),
        Noun::Card(verb) => verb.run(desk),
        Noun::Wall(verb) => verb.run(desk),
        Noun::Condition(verb) => verb.run(desk),
        Noun::Demo(DemoVerb::Write(write)) => write.run(desk),
        Noun::Serve(serve) => serve.run(desk),
        Noun::Completions(completions) => completions.run(desk),
    }
}

/// The whole command line, for the scripts that finish commands.
fn whole() -> clap::Command {
    <Rabbet as clap::CommandFactory>::command()
}

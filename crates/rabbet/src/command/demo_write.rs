//! `rabbet demo write`

use std::fs;
use std::path::PathBuf;

use clap::Args;

use super::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, reason};
use crate::problem::{Kind, Problem, Trouble};

/// Writes the invented shop's jobs, pictures, stock, costs, prices and a cut list into a folder
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet demo write shop", after_help = EXIT_CODES)]
pub struct DemoWrite {
    /// The folder; it is made where there is none
    #[arg(value_name = "FOLDER")]
    folder: PathBuf,
    /// Replace files that are there
    #[arg(long)]
    force: bool,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

/// A file of the shop, by its name in the folder.
struct ShopFile {
    name: String,
    bytes: Vec<u8>,
}

impl DemoWrite {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let shop = shop()?;
        self.refuse_what_is_there(&shop)?;
        let what = format!(
            "{}: {} jobs, {} pictures, the stock, costs, prices and a cut list",
            self.folder.display(),
            demo::JOBS.len(),
            demo::PICTURES.len()
        );
        if self.dry_run {
            desk.terminal
                .talk(&format!("{what} would be written; nothing is (--dry-run)"));
            return Ok(Exit::Done);
        }
        let made = fs::create_dir_all(&self.folder);
        let made = made.and_then(|()| fs::create_dir_all(self.folder.join(JOBS)));
        made.map_err(|error| self.no_folder(&error))?;
        for file in &shop {
            files::put(&self.folder.join(&file.name), &file.bytes, self.force)?;
        }
        desk.terminal.talk(&format!("{what} written"));
        Ok(Exit::Done)
    }

    /// Before the first is written, so that a folder is not left with half a shop.
    fn refuse_what_is_there(&self, shop: &[ShopFile]) -> Result<(), Trouble> {
        if self.force {
            return Ok(());
        }
        let there: Vec<&str> = shop
            .iter()
            .map(|file| file.name.as_str())
            .filter(|name| self.folder.join(name).exists())
            .collect();
        let sentence = match there.as_slice() {
            [] => return Ok(()),
            [one] => format!("{one} is there already; nothing is written"),
            [first, more @ ..] => format!(
                "{first} and {} more of the shop's files are there already; nothing is written",
                more.len()
            ),
        };
        let problem = Problem::new("file.exists", sentence)
            .hint("choose another folder, or say --force to replace them");
        Err(self.trouble(Kind::Input, problem))
    }

    fn no_folder(&self, error: &std::io::Error) -> Trouble {
        let sentence = format!("the folder can't be made: {}", reason(error));
        let problem = Problem::new("file.no_folder", sentence).hint("choose another place");
        self.trouble(Kind::File, problem)
    }

    fn trouble(&self, kind: Kind, problem: Problem) -> Trouble {
        Trouble::one(kind, problem.in_file(&self.folder.to_string_lossy()))
    }
}

/// Where jobs lie, each beside its pictures.
const JOBS: &str = "jobs";

/// Every file of the shop: jobs, pictures, stock, cut list, costs, prices.
fn shop() -> Result<Vec<ShopFile>, Trouble> {
    let jobs = demo::JOBS.iter().map(|job| {
        Ok(ShopFile {
            name: format!("{JOBS}/{}.toml", job.name),
            bytes: job.toml.as_bytes().to_vec(),
        })
    });
    let pictures = demo::PICTURES.iter().map(|&name| {
        let bytes = demo::picture(name).ok_or_else(|| undrawn(name))?;
        Ok(ShopFile {
            name: format!("{JOBS}/{name}"),
            bytes,
        })
    });
    let others = [
        ("stock.toml", demo::STOCK),
        ("cut-list.toml", demo::CUT_LIST),
        ("catalogue.toml", demo::CATALOGUE),
        ("prices.toml", demo::PRICES),
    ];
    let others = others.map(|(name, text)| {
        Ok(ShopFile {
            name: name.to_owned(),
            bytes: text.as_bytes().to_vec(),
        })
    });
    jobs.chain(pictures).chain(others).collect()
}

fn undrawn(name: &str) -> Trouble {
    let sentence = format!("the picture {name} is listed, and nothing draws it");
    Trouble::one(Kind::Ours, Problem::new("demo.picture", sentence))
}

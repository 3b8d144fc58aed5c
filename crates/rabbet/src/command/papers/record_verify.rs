//! `rabbet record verify`

use clap::Args;
use serde_json::json;

use super::record_read;
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;

/// Checks that a record is as it was signed, and by which key
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet record verify record.txt", after_help = EXIT_CODES)]
pub struct RecordVerify {
    /// Text of the codes, one a line, or pictures of them (PNG, JPEG); - is stdin
    #[arg(value_name = "FILE", required = true)]
    files: Vec<String>,
    /// The public key the shop gave you: 64 hexadecimal digits; another one fails the check
    #[arg(long, value_name = "KEY", value_parser = public_key)]
    signed_by: Option<String>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

fn public_key(text: &str) -> Result<String, String> {
    let digits: String = text.split_whitespace().collect::<String>().to_lowercase();
    if digits.len() == 64 && digits.chars().all(|digit| digit.is_ascii_hexdigit()) {
        Ok(digits)
    } else {
        Err("a public key is 64 hexadecimal digits, as the label prints it".to_owned())
    }
}

impl RecordVerify {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let record = record_read::opened(&self.files)?;
        let holds = record.holds();
        let named = self.signed_by.as_ref().map(|key| *key == record.public());
        let good = holds && named != Some(false);
        let text = if self.json {
            let value = json!({
                "signature_holds": holds,
                "public_key": record.public(),
                "signed_by_named_key": named,
                "record": record.name(),
            });
            format!("{value:#}\n")
        } else {
            let (key, name) = (record.public(), record.name());
            match (holds, named) {
                (false, _) => format!(
                    "The signature of record {name} does not hold: it was changed after it was signed.\n"
                ),
                (true, Some(false)) => format!(
                    "The signature of record {name} holds, but it is by another key: {key}\n"
                ),
                (true, Some(true)) => {
                    format!("Record {name} is as it was signed, by the key you named: {key}\n")
                }
                (true, None) => format!(
                    "Record {name} is as it was signed, by the key {key}\nWhose key that is, it can't say: compare it with one the shop gave out.\n"
                ),
            }
        };
        desk.terminal.data(&text)?;
        Ok(if good { Exit::Done } else { Exit::Refused })
    }
}

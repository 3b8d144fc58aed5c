//! Writes every picture into a folder: `cargo run -p demo --example pictures -- FOLDER`.

use std::path::PathBuf;

fn main() -> std::io::Result<()> {
    let folder = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| ".".to_owned()));
    std::fs::create_dir_all(&folder)?;
    for name in demo::PICTURES {
        let bytes = demo::picture(name)
            .ok_or_else(|| std::io::Error::other(format!("{name} is listed and not drawn")))?;
        std::fs::write(folder.join(name), bytes)?;
    }
    Ok(())
}

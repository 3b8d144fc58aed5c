//! A wall as a person writes it: what hangs there, and how it is laid out.

use std::path::Path;

use drawing::{WallNail, WallPiece, WallPlan};
use hanging::layout::{Align, Frame, Hung, Stairs, Wall, block, grid, single, stairs};
use hanging::{Stated, choice, weigh};
use measure::{Length, Tape, Unit, read_length};
use trade::Settings;
use working::Working;

use crate::command::Desk;
use crate::problem::{Kind, Problem, Trouble};
use crate::{files, toml_place};

mod form;

use form::{AlignWord, Form, LayoutWord, PieceForm, Typed};

/// A wall, laid out.
pub struct Laid {
    /// What it is called.
    pub title: String,
    /// The units it is written in.
    pub units: trade::Units,
    /// What hangs there, in the order it is numbered.
    pub pieces: Vec<LaidPiece>,
    /// As it is drawn.
    pub plan: WallPlan,
    /// From the seat of a hook up to its nail.
    pub seat_to_nail: Length,
    /// Why every place is what it is.
    pub working: Working,
}

/// A piece in its place.
pub struct LaidPiece {
    /// What it is.
    pub name: String,
    /// Its frame.
    pub frame: Frame,
    /// Its place.
    pub hung: Hung,
}

/// Reads a wall document and lays it out.
///
/// # Errors
/// A file that can't be reached or read, a job that can't be derived, a layout that does not fit.
pub fn laid(file: &str, desk: &Desk) -> Result<Laid, Trouble> {
    let text = toml_place::text_of(file, &files::read(file)?)?;
    let form: Form = toml::from_str(&text)
        .map_err(|error| toml_place::trouble(file, &text, &error, "wall.form"))?;
    let reading = Reading {
        file,
        text: &text,
        unit: trade::Units::from(form.units).unit(),
    };
    let settings = desk.shop.settings(form.units.into())?;
    let width = reading.length(&form.width)?;
    let wall = reading.wall(&form, width, &settings)?;
    let height = form
        .height
        .as_ref()
        .map(|typed| reading.length(typed))
        .transpose()?;
    let mut frames = Vec::new();
    for piece in &form.piece {
        frames.push(reading.frame(piece, &form, desk)?);
    }
    let mut working = Working::new();
    let (order, hung) = reading.lay_out(&form, &frames, &wall, &mut working)?;
    let pieces: Vec<LaidPiece> = order
        .into_iter()
        .zip(hung)
        .map(|(index, hung)| LaidPiece {
            name: frames[index].0.clone(),
            frame: frames[index].1,
            hung,
        })
        .collect();
    let title = form.title.unwrap_or_else(|| "the wall".to_owned());
    Ok(Laid {
        plan: reading.plan(&title, (width, height), &pieces),
        title,
        units: form.units.into(),
        pieces,
        seat_to_nail: wall.seat_to_nail.value,
        working,
    })
}

fn drawn(piece: &LaidPiece) -> WallPiece {
    let nail = |nail: &hanging::layout::NailAt| WallNail {
        from_corner: nail.from_corner.value,
        above_floor: nail.above_floor.value,
    };
    WallPiece {
        name: piece.name.clone(),
        left: piece.hung.left.value,
        top: piece.hung.top.value,
        width: piece.frame.width.value,
        height: piece.frame.height.value,
        nails: piece.hung.nails.iter().map(nail).collect(),
    }
}

/// A wall document being read.
struct Reading<'a> {
    file: &'a str,
    text: &'a str,
    unit: Unit,
}

impl Reading<'_> {
    /// The wall, with the shop's habits where it says nothing.
    fn wall(&self, form: &Form, width: Length, settings: &Settings) -> Result<Wall, Trouble> {
        let mut wall = Wall::of_shop(Stated::job(width), settings);
        for (place, typed) in [
            (&mut wall.centre, &form.centre),
            (&mut wall.gap, &form.gap),
            (&mut wall.seat_to_nail, &form.seat_to_nail),
        ] {
            if let Some(typed) = typed {
                *place = Stated::job(self.length(typed)?);
            }
        }
        Ok(wall)
    }

    fn length(&self, typed: &Typed) -> Result<Length, Trouble> {
        read_length(&typed.get_ref().0, self.unit).map_err(|error| {
            let spot = toml_place::spot(self.file, self.text, &typed.span());
            let problem = Problem::new("wall.length", error.to_string()).hint(error.hint());
            Trouble::one(Kind::Document, problem.at(spot))
        })
    }

    fn plan(
        &self,
        title: &str,
        (width, height): (Length, Option<Length>),
        pieces: &[LaidPiece],
    ) -> WallPlan {
        let tape = if self.unit.is_inch_family() {
            Tape::ThirtySeconds
        } else {
            Tape::Millimetre
        };
        WallPlan {
            title: title.to_owned(),
            width,
            height,
            pieces: pieces.iter().map(drawn).collect(),
            unit: self.unit,
            tape,
        }
    }

    fn refused(&self, code: &str, sentence: String) -> Trouble {
        Trouble::one(
            Kind::Document,
            Problem::new(code, sentence).in_file(self.file),
        )
    }

    /// A piece's name and frame: of its job, or as it is typed.
    fn frame(
        &self,
        piece: &PieceForm,
        form: &Form,
        desk: &Desk,
    ) -> Result<(String, Frame), Trouble> {
        let hooks = piece.hooks.or(form.hooks);
        if let Some(job) = &piece.job {
            return self.framed(piece, job, hooks, desk);
        }
        let (Some(width), Some(height), Some(seat)) = (&piece.width, &piece.height, &piece.seat)
        else {
            return Err(self.refused(
                "wall.piece",
                "a piece needs its job, or its width, height and seat (from its top down to its hook)".to_owned(),
            ));
        };
        let apart = piece
            .hooks_apart
            .as_ref()
            .map(|typed| self.length(typed))
            .transpose()?;
        let frame = Frame {
            width: Stated::job(self.length(width)?),
            height: Stated::job(self.length(height)?),
            seat: Stated::job(self.length(seat)?),
            hooks_apart: apart.map(Stated::job),
        };
        let name = piece.name.clone().unwrap_or_else(|| "frame".to_owned());
        Ok((name, frame))
    }

    /// A piece of which there is a job beside the wall's file.
    fn framed(
        &self,
        piece: &PieceForm,
        job: &str,
        hooks: Option<u32>,
        desk: &Desk,
    ) -> Result<(String, Frame), Trouble> {
        let folder = files::folder_of(Path::new(if self.file == "-" { "" } else { self.file }));
        let path = folder.join(job).to_string_lossy().into_owned();
        let path = path.strip_prefix("./").unwrap_or(&path);
        let derived = crate::command::job_file::derive(path, desk)?;
        let mut working = derived.sizes.working.clone();
        let weight = weigh(&derived.job, &derived.sizes, &mut working);
        let made_of = derived.job.place.as_ref().and_then(|place| place.made_of);
        let usual = || choice(weight.total.value, made_of, &derived.sizes.settings).hooks;
        let frame = Frame::of(&derived.sizes, hooks.unwrap_or_else(usual));
        let frame = frame.ok_or_else(|| {
            let problem = Problem::new("wall.no_hangers", "this piece has no hangers, so it can't be hung on a wall");
            let hint = "name its hanger in [hardware], or give its width, height and seat in the wall's file";
            Trouble::one(Kind::Piece, problem.hint(hint).in_file(path))
        })?;
        let titled = || derived.job.art.first().and_then(|art| art.title.clone());
        let name = piece
            .name
            .clone()
            .or_else(titled)
            .unwrap_or_else(|| job.to_owned());
        Ok((name, frame))
    }

    /// The pieces in the order they are numbered, and where each hangs.
    fn lay_out(
        &self,
        form: &Form,
        named: &[(String, Frame)],
        wall: &Wall,
        working: &mut Working,
    ) -> Result<(Vec<usize>, Vec<Hung>), Trouble> {
        let frames: Vec<Frame> = named.iter().map(|(_, frame)| *frame).collect();
        let align = match form.align {
            AlignWord::Centre => Align::Centre,
            AlignWord::Top => Align::Top,
            AlignWord::Bottom => Align::Bottom,
            AlignWord::Line => Align::Line,
        };
        let refused = |refusal: hanging::Refusal| self.refused("wall.layout", refusal.to_string());
        let mut order: Vec<usize> = (0..frames.len()).collect();
        let hung = match form.layout {
            LayoutWord::One => {
                let [one] = frames.as_slice() else {
                    let sentence = format!(
                        "the layout \"one\" takes one piece, there are {}",
                        frames.len()
                    );
                    return Err(self.refused("wall.layout", sentence));
                };
                vec![single(*one, wall, working).map_err(refused)?]
            }
            LayoutWord::Row => flat(block(&[frames], align, wall, working).map_err(refused)?),
            LayoutWord::Rows | LayoutWord::Block => {
                let row = |index: usize| form.piece[index].row.unwrap_or(1);
                order.sort_by_key(|index| row(*index));
                let rows: Vec<Vec<Frame>> = order
                    .chunk_by(|one, other| row(*one) == row(*other))
                    .map(|row| row.iter().map(|index| frames[*index]).collect())
                    .collect();
                flat(block(&rows, align, wall, working).map_err(refused)?)
            }
            LayoutWord::Grid => {
                let columns = form.columns.ok_or_else(|| {
                    self.refused(
                        "wall.columns",
                        "a grid needs its number of columns: write columns = 3".to_owned(),
                    )
                })?;
                flat(grid(&frames, columns, wall, working).map_err(refused)?)
            }
            LayoutWord::Stairs => {
                stairs(&frames, &self.slope(form)?, wall, working).map_err(refused)?
            }
        };
        Ok((order, hung))
    }

    fn slope(&self, form: &Form) -> Result<Stairs, Trouble> {
        let (Some(run), Some(rise)) = (&form.run, &form.rise) else {
            let sentence =
                "stairs need one tread and one riser: write run = \"10\" and rise = \"7\"";
            return Err(self.refused("wall.stairs", sentence.to_owned()));
        };
        let first = form
            .first_left
            .as_ref()
            .map(|typed| self.length(typed))
            .transpose()?;
        Ok(Stairs {
            run: Stated::job(self.length(run)?),
            rise: Stated::job(self.length(rise)?),
            first_left: Stated::job(first.unwrap_or_default()),
        })
    }
}

fn flat(rows: Vec<Vec<Hung>>) -> Vec<Hung> {
    rows.into_iter().flatten().collect()
}

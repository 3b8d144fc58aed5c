//! From a row to a job document: every number the row names, and no other.

use measure::{Length, Size, Unit, read_length, read_size};
use trade::{
    Arrangement, Art, Backing, Borders, Clips, Fit, FrameFillet, Glazing, Job, Layer, Layout, Mat,
    MatFillet, Material, Measured, Medium, Member, Opening, Pair, Role, Shape, Show, Spacer, Units,
    Walls, Wrap,
};

use super::row::Row;

/// Code of the board whose sheets the `mat_sheet` column names.
pub(super) const BOARD: &str = "case-board";
/// Name of the frame that `rabbet_w` and `face_w` describe.
pub(super) const MAIN: &str = "main";

/// The job a row describes.
///
/// Errors: numbers that can't be read, numbers the kind needs and the row lacks, inputs it does not use.
pub(super) fn job(row: &Row) -> Result<Job, Vec<String>> {
    let mut builder = Builder {
        row,
        faults: Vec::new(),
    };
    let job = builder.job();
    let unused = row.unused().into_iter().map(|column| {
        format!(
            "input column {column} is filled, and kind {} does not use it",
            row.kind()
        )
    });
    let mut faults = builder.faults;
    faults.extend(unused);
    if faults.is_empty() {
        Ok(job)
    } else {
        Err(faults)
    }
}

struct Builder<'a> {
    row: &'a Row,
    faults: Vec<String>,
}

impl Builder<'_> {
    fn job(&mut self) -> Job {
        let mut job = Job::empty(Units::Inches);
        self.settings(&mut job);
        self.art(&mut job);
        self.mats(&mut job);
        self.frames(&mut job);
        self.sheets(&mut job);
        self.fit(&mut job);
        job.double_sided = self.row.kind() == "double_sided";
        if let Some(sides) = self.row.input("sides") {
            match sides.parse() {
                Ok(sides) => job.sides = sides,
                Err(_) => self
                    .faults
                    .push(format!("sides: {sides} is no whole number")),
            }
        }
        job
    }

    fn length(&mut self, column: &'static str) -> Option<Length> {
        let text = self.row.input(column)?;
        self.read(column, text)
    }

    fn read(&mut self, column: &str, text: &str) -> Option<Length> {
        match read_length(text, Unit::Inch) {
            Ok(length) => Some(length),
            Err(error) => {
                self.faults.push(format!("{column}: {error}"));
                None
            }
        }
    }

    /// A length the kind can't do without.
    fn need(&mut self, column: &'static str) -> Option<Measured> {
        if self.row.input(column).is_none() {
            self.faults.push(format!(
                "input column {column} is blank, and kind {} needs it",
                self.row.kind()
            ));
        }
        self.length(column).map(Measured)
    }

    fn measured(&mut self, column: &'static str) -> Option<Measured> {
        self.length(column).map(Measured)
    }

    fn list(&mut self, column: &'static str) -> Vec<Measured> {
        let Some(text) = self.row.input(column) else {
            return Vec::new();
        };
        text.split('|')
            .filter_map(|part| self.read(column, part).map(Measured))
            .collect()
    }

    fn pair(&mut self, width: &'static str, height: &'static str) -> Option<Pair> {
        let (width, height) = (self.length(width)?, self.length(height)?);
        Some(Pair(Size::new(width, height)))
    }

    /// Settings the table states, and habits its columns presume.
    fn settings(&mut self, job: &mut Job) {
        let visible = self.row.input("vis_border").is_some();
        let mut set = |id: &str, text: &str| {
            job.settings.insert(id.to_owned(), text.to_owned());
        };
        set("mat.window_at", "face");
        set("mat.reveal_measured", "nominal");
        set(
            "mat.border_measured",
            if visible { "visible" } else { "cut" },
        );
        set("mat.weighting", "none");
        set("mat.undermat_under", "0");
        set("moulding.charge_rule", "quick");
        set("moulding.charge_step", "foot");
        set("limit.largest", "6000 in");
        let stated = [
            ("bevel", "mat.bevel"),
            ("min_gutter", "mat.least_gutter"),
            ("ledge_land", "floater.ledge_land"),
            ("cut_allow", "moulding.cut_allowance"),
            ("end_trim", "moulding.end_trim"),
        ];
        for (column, id) in stated {
            if let Some(text) = self.row.input(column) {
                set(id, text);
            }
        }
        for column in ["cut_allow", "end_trim", "stick_len"] {
            if self.row.input(column).is_none() {
                self.faults.push(format!(
                    "input column {column} is blank, and every kind needs it"
                ));
            }
        }
    }

    fn art(&mut self, job: &mut Job) {
        let sizes: Vec<Size> = if let Some(text) = self.row.input("openings") {
            text.split('|')
                .filter_map(|part| {
                    let size = read_size(part, Unit::Inch);
                    size.map_err(|error| self.faults.push(format!("openings: {error}")))
                        .ok()
                })
                .collect()
        } else {
            let width = self.need("art_w").map(|width| *width);
            let polygon = self.row.input("sides").is_some();
            let height = if polygon {
                width
            } else {
                self.need("art_h").map(|height| *height)
            };
            width
                .zip(height)
                .map(|(w, h)| Size::new(w, h))
                .into_iter()
                .collect()
        };
        let thickness = self.length("object_d").or_else(|| self.length("art_t"));
        if self.row.input("object_d").is_some() && self.row.input("art_t").is_some() {
            self.faults
                .push("both object_d and art_t are filled".to_owned());
        }
        let show = self.show();
        for size in sizes {
            job.art.push(Art {
                width: Measured(size.width),
                height: Some(Measured(size.height)),
                width_readings: self.measured("art_w_max").into_iter().collect(),
                height_readings: self.measured("art_h_max").into_iter().collect(),
                sheet: self.pair("sheet_w", "sheet_h"),
                thickness: Measured(thickness.unwrap_or_default()),
                medium: if self.row.kind() == "canvas" {
                    Medium::Canvas
                } else {
                    Medium::Print
                },
                show,
                overlap: self.measured("overlap"),
                margin: self.measured("float_margin"),
                lift: self.measured("lift_t"),
                ..blank()
            });
        }
    }

    fn show(&mut self) -> Option<Show> {
        if self.row.input("float_margin").is_some() {
            if self.row.input("lift_t").is_none() {
                self.faults
                    .push("input column lift_t is blank, and a float needs it".to_owned());
            }
            return Some(Show::Float);
        }
        if self.row.input("board_margin").is_some() {
            return Some(Show::Wrapped);
        }
        if self.row.input("object_d").is_some() {
            Some(Show::Object)
        } else {
            None
        }
    }

    fn mats(&mut self, job: &mut Job) {
        let (thicknesses, reveals) = (self.list("mat_ts"), self.list("reveals"));
        if thicknesses.is_empty() {
            if !reveals.is_empty() {
                self.faults.push("reveals without mat_ts".to_owned());
            }
            return;
        }
        if reveals.len() + 1 != thicknesses.len() {
            self.faults.push(format!(
                "{} mats need {} reveals",
                thicknesses.len(),
                thicknesses.len() - 1
            ));
        }
        if job
            .art
            .iter()
            .any(|art| art.overlap.is_none() && art.margin.is_none())
        {
            self.faults
                .push("a mat needs overlap or float_margin".to_owned());
        }
        // Lists run front to back, as the package does.
        for (i, thickness) in thicknesses.iter().enumerate() {
            let reveal = reveals.get(i).copied();
            job.mat.push(Mat {
                board: Some(BOARD.to_owned()),
                thickness: Some(*thickness),
                reveal,
                ..Mat::default()
            });
        }
        job.material.push(board());
        if let (Some(face), Some(last)) = (self.measured("fillet_face"), job.mat.last_mut()) {
            let (tuck, thickness) = (self.need("fillet_tuck"), self.need("fillet_t"));
            last.fillet = Some(MatFillet {
                fillet: None,
                face: Some(face),
                tuck,
                thickness,
            });
        }
        self.borders(job);
        self.openings(job);
    }

    fn borders(&mut self, job: &mut Job) {
        let given = self.row.input("given_rabbet_w").is_some()
            || self.row.input("given_outside_w").is_some();
        let mut borders = Borders {
            all: self.measured("vis_border"),
            left: self.measured("border_l"),
            right: self.measured("border_r"),
            top: self.measured("border_t"),
            bottom: self.measured("border_b"),
            bottom_extra: self.measured("bottom_extra"),
        };
        let sides = [borders.left, borders.right, borders.top, borders.bottom];
        if !given && borders.all.is_none() && sides.iter().any(Option::is_none) {
            self.faults
                .push("a mat needs four borders, vis_border, or a given size".to_owned());
        }
        if given && borders.bottom_extra.is_none() {
            borders.bottom_extra = Some(Measured(Length::ZERO));
        }
        job.borders = Some(borders);
    }

    fn openings(&mut self, job: &mut Job) {
        let shape = if self.row.kind() == "oval" {
            Shape::Oval
        } else {
            Shape::Rectangle
        };
        let mut count = job.art.len();
        let mut layout = Layout {
            gutter_x: self.measured("gutter_x"),
            gutter_y: self.measured("gutter_y"),
            ..Layout::default()
        };
        if self.row.input("cols").is_some() || self.row.input("rows").is_some() {
            let mut whole = |column| {
                let text = self.row.input(column).unwrap_or("");
                text.parse::<u32>()
                    .map_err(|_| {
                        self.faults
                            .push(format!("{column}: {text} is no whole number"));
                    })
                    .unwrap_or(1)
            };
            let (columns, rows) = (whole("cols"), whole("rows"));
            layout.arrange = Arrangement::Grid;
            layout.columns = Some(columns);
            count = usize::try_from(columns.saturating_mul(rows)).unwrap_or(usize::MAX);
        }
        job.opening = vec![
            Opening {
                shape,
                ..Opening::default()
            };
            count
        ];
        job.layout = Some(layout);
    }

    fn frames(&mut self, job: &mut Job) {
        let stick = self.measured("stick_len");
        if self.row.input("outer2_face").is_some() {
            job.frame.push(Member {
                name: Some("outer".to_owned()),
                face: self.need("outer2_face"),
                lip: self.need("outer2_rabbet_w"),
                allowance: self.need("outer2_allow"),
                tail: Some(Measured(Length::ZERO)),
                stick,
                ..Member::default()
            });
        }
        let main = if self.row.input("floater_gap").is_some() {
            self.floater()
        } else {
            self.main(job)
        };
        job.frame.push(Member {
            name: Some(MAIN.to_owned()),
            stick,
            ..main
        });
        if self.row.input("liner_face").is_some() {
            job.frame.push(Member {
                role: Role::Liner,
                face: self.need("liner_face"),
                lip: self.need("liner_rabbet_w"),
                allowance: self.need("liner_allow"),
                tail: Some(Measured(Length::ZERO)),
                stick,
                ..Member::default()
            });
        }
        let clips = self.list("clips");
        if !clips.is_empty() {
            job.clips = Some(Clips { offsets: clips });
        }
    }

    fn floater(&mut self) -> Member {
        Member {
            role: Role::Floater,
            gap: self.need("floater_gap"),
            wall: self.need("floater_top"),
            ledge: self.need("floater_ledge"),
            rabbet_depth: self.measured("rabbet_d"),
            ..Member::default()
        }
    }

    fn main(&mut self, job: &Job) -> Member {
        let fillet = if job.mat.is_empty() {
            self.measured("fillet_face")
        } else {
            None
        };
        let fillet = fillet.map(|face| FrameFillet {
            fillet: None,
            face: Some(face),
            thickness: self.need("fillet_t"),
        });
        let rabbet_depth = self.measured("rabbet_d");
        let tail = if rabbet_depth.is_some() {
            self.need("tail")
        } else {
            Some(Measured(Length::ZERO))
        };
        Member {
            face: self.need("face_w"),
            lip: self.need("rabbet_w"),
            allowance: self.need("frame_allow"),
            rabbet_depth,
            tail,
            fillet,
            ..Member::default()
        }
    }

    fn sheets(&mut self, job: &mut Job) {
        if self.row.input("glaz_t").is_some() {
            job.glazing.push(Glazing {
                thickness: self.measured("glaz_t"),
                undersize: self.need("glaz_under"),
                held_in: Some(MAIN.to_owned()),
                ..Glazing::default()
            });
        }
        if self.row.input("mount_t").is_some() {
            job.mount = Some(Layer {
                board: None,
                thickness: self.measured("mount_t"),
            });
        }
        if self.row.input("back_t").is_some() {
            job.backing.push(Backing {
                board: None,
                thickness: self.measured("back_t"),
                undersize: self.need("back_under"),
            });
        }
        if self.row.input("spacer_t").is_some() {
            job.spacer = Some(Spacer {
                strip: None,
                width: self.measured("spacer_w"),
                thickness: self.measured("spacer_t"),
            });
        }
        if self.row.input("wall_t").is_some() {
            job.walls = Some(Walls {
                board: None,
                thickness: self.measured("wall_t"),
                height: self.need("wall_h"),
                display: None,
            });
        }
        if let Some(ground) = self.measured("board_margin") {
            let cloth = self.need("wrap_t").unwrap_or_default();
            job.wrap = Some(Wrap {
                ground,
                cloth,
                turn: None,
                fabric: None,
            });
        }
    }

    fn fit(&mut self, job: &mut Job) {
        let rabbet = self.pair("given_rabbet_w", "given_rabbet_h");
        let outside = self.pair("given_outside_w", "given_outside_h");
        if rabbet.is_some() || outside.is_some() {
            job.fit = Some(Fit {
                rabbet,
                outside,
                ..Fit::default()
            });
        }
    }
}

/// A board in the three sheet sizes the `mat_sheet` column chooses among.
fn board() -> Material {
    let inches = |width, height| Pair(Size::new(Length::inches(width), Length::inches(height)));
    Material {
        code: BOARD.to_owned(),
        sheets: vec![inches(32, 40), inches(40, 60), inches(48, 96)],
        ..Material::named(BOARD)
    }
}

fn blank() -> Art {
    Art::sized(Length::ZERO, Length::ZERO)
}

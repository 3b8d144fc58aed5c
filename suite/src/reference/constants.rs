//! Tables of constants: the program's own copy, and the arithmetic that ties columns together.

use conservation::TABLES;
use hanging::lift::{Lasting, frequency_row};
use hanging::screw::{lateral_group, shank};
use measure::Length;
use trade::SheetSeries;
use working::{Figure, Stated, Working};

use super::Line;
use super::row::{Row, Table, TableFault};
use super::tolerance::{EXACT, Tolerance, by, part};

/// Tables held against the program.
pub(super) const FILES: [&str; 17] = [
    "light_blue_wool_dose.csv",
    "light_limits.csv",
    "light_media.csv",
    "light_room_lux.csv",
    "light_uv.csv",
    "light_grey_scale.csv",
    "wood_properties.csv",
    "glass_thickness_astm.csv",
    "glass_thickness_en.csv",
    "board_mass.csv",
    "board_specs.csv",
    "lifting_frequency.csv",
    "screw_lateral_k.csv",
    "screw_gauges.csv",
    "paper_sizes.csv",
    "photo_sizes.csv",
    "sources.csv",
];

pub(super) fn find(name: &str) -> bool {
    FILES.contains(&name)
}

/// Judges a table of constants.
pub(super) fn judge(name: &str, text: &str) -> Result<Vec<Line>, TableFault> {
    let table = Table::read(text)?;
    let needed = columns(name)?;
    let needed: Vec<&str> = needed.iter().map(String::as_str).collect();
    table.look_over(&needed, &[])?;
    let mut lines = Vec::new();
    if let Some(own) = own(name)? {
        lines.extend(table.rows.iter().map(|row| copied(row, &own)));
        let there = own.rows.iter().map(|row| still_there(row, &table));
        lines.extend(there);
    }
    lines.push(rows_left(name, &table));
    for row in &table.rows {
        lines.extend(sums(name, row));
    }
    if name == "sources.csv" {
        lines.extend(table.rows.iter().map(|row| source(row, &table)));
    }
    Ok(lines)
}

/// The program's own copy of a table.
fn own(name: &str) -> Result<Option<Table>, TableFault> {
    let found = TABLES.iter().find(|(own, _)| *own == name);
    found.map(|(_, text)| Table::read(text)).transpose()
}

/// The columns a table must have, and no others.
fn columns(name: &str) -> Result<Vec<String>, TableFault> {
    if let Some(own) = own(name)? {
        return Ok(own.columns);
    }
    let names = words(name).split(' ');
    Ok(names.map(str::to_owned).collect())
}

/// The columns of the tables that the program holds in another form.
fn words(name: &str) -> &'static str {
    match name {
        "lifting_frequency.csv" => {
            "lifts_per_min h1_V_below_75 h1_V_75_up h2_V_below_75 h2_V_75_up h8_V_below_75 h8_V_75_up source_id status"
        }
        "screw_lateral_k.csv" => "group sg_min sg_max K_N_per_mm2 K_psi source_id status",
        "screw_gauges.csv" => "gauge diameter_in diameter_mm source_id status",
        "paper_sizes.csv" => "name series width_mm height_mm width_in height_in source_id status",
        "photo_sizes.csv" => "width_in height_in code width_mm height_mm aspect source_id status",
        _ => "source_id title publisher year seen_where status",
    }
}

/// What a row is called.
fn called(row: &Row) -> String {
    let names = [
        "blue_wool",
        "scheme",
        "medium",
        "place",
        "item",
        "grade",
        "species",
        "designation",
        "nominal_mm",
        "board",
        "spec",
        "lifts_per_min",
        "group",
        "gauge",
        "name",
        "width_in",
        "source_id",
    ];
    let found = names
        .iter()
        .map(|name| row.text(name))
        .find(|text| !text.is_empty());
    let more = [
        row.text("category"),
        row.text("sg_min"),
        row.text("height_in"),
    ];
    let more = more.into_iter().find(|text| !text.is_empty());
    let name = found.unwrap_or("row");
    more.map_or_else(|| name.to_owned(), |more| format!("{name} {more}"))
}

fn line(row: &Row, quantity: &str, tolerance: &Tolerance) -> Line {
    Line {
        case: called(row),
        quantity: quantity.to_owned(),
        value: String::new(),
        expected: String::new(),
        tolerance: tolerance.to_string(),
        source: row.text("source_id").to_owned(),
        agrees: false,
    }
}

/// A row held against the program's own copy, cell by cell.
fn copied(row: &Row, own: &Table) -> Line {
    let differing = |other: &Row| {
        let odd = own
            .columns
            .iter()
            .filter(|column| other.text(column) != row.text(column));
        odd.cloned().collect::<Vec<String>>()
    };
    let nearest = own.rows.iter().map(|other| (differing(other), other));
    let nearest = nearest.min_by_key(|(odd, _)| odd.len());
    let blank = line(row, "all its cells", &EXACT);
    match nearest {
        Some((odd, _)) if odd.is_empty() => Line {
            value: "the program's own row".to_owned(),
            expected: "the same".to_owned(),
            agrees: true,
            ..blank
        },
        Some((odd, other)) => {
            let cells = |row: &Row| {
                let each = odd
                    .iter()
                    .map(|column| format!("{column} {}", row.text(column)));
                each.collect::<Vec<_>>().join(", ")
            };
            Line {
                value: cells(other),
                expected: cells(row),
                ..blank
            }
        }
        None => blank,
    }
}

/// A row of the program's own copy that the table must still hold: one that vanished is told.
fn still_there(own: &Row, table: &Table) -> Line {
    let same = |other: &Row| {
        let mut columns = table.columns.iter();
        columns.all(|column| other.text(column) == own.text(column))
    };
    let found = table.rows.iter().any(same);
    Line {
        value: if found { "in the table" } else { "vanished" }.to_owned(),
        expected: "in the table".to_owned(),
        agrees: found,
        ..line(own, "the program's own row", &EXACT)
    }
}

/// Rows each table had when it was last read by hand; a longer one is as good.
const ROWS: [(&str, usize); FILES.len()] = [
    ("light_blue_wool_dose.csv", 8),
    ("light_limits.csv", 18),
    ("light_media.csv", 29),
    ("light_room_lux.csv", 11),
    ("light_uv.csv", 17),
    ("light_grey_scale.csv", 9),
    ("wood_properties.csv", 22),
    ("glass_thickness_astm.csv", 9),
    ("glass_thickness_en.csv", 11),
    ("board_mass.csv", 19),
    ("board_specs.csv", 11),
    ("lifting_frequency.csv", 17),
    ("screw_lateral_k.csv", 6),
    ("screw_gauges.csv", 13),
    ("paper_sizes.csv", 51),
    ("photo_sizes.csv", 25),
    ("sources.csv", 100),
];

/// Whether no row of a table vanished.
fn rows_left(name: &str, table: &Table) -> Line {
    let wanted = ROWS.iter().find(|(file, _)| *file == name);
    let wanted = wanted.map_or(1, |(_, rows)| *rows);
    let rows = table.rows.len();
    Line {
        case: name.to_owned(),
        quantity: "rows".to_owned(),
        value: rows.to_string(),
        expected: format!("{wanted} or more"),
        tolerance: EXACT.to_string(),
        source: String::new(),
        agrees: rows >= wanted,
    }
}

/// Arithmetic that ties a row's columns together, worked by the program.
fn sums(name: &str, row: &Row) -> Vec<Line> {
    let found: Result<Vec<Sum>, String> = match name {
        "light_blue_wool_dose.csv" => blue_wool(row),
        "board_mass.csv" => board(row),
        "screw_gauges.csv" => gauge(row),
        "screw_lateral_k.csv" => lateral(row),
        "lifting_frequency.csv" => frequency(row),
        "paper_sizes.csv" => paper(row),
        "photo_sizes.csv" => photo(row),
        _ => Ok(Vec::new()),
    };
    match found {
        Ok(sums) => sums.into_iter().map(|sum| sum.line(row)).collect(),
        Err(why) => vec![Line {
            value: why,
            ..line(row, "all of it", &EXACT)
        }],
    }
}

/// A number that the program works out for a column.
struct Sum {
    column: &'static str,
    value: f64,
    tolerance: Tolerance,
}

impl Sum {
    const fn of(column: &'static str, value: f64, tolerance: Tolerance) -> Self {
        Self {
            column,
            value,
            tolerance,
        }
    }

    fn line(&self, row: &Row) -> Line {
        let expected = row.number(self.column);
        Line {
            value: self.value.to_string(),
            expected: row.text(self.column).to_owned(),
            agrees: expected.is_ok_and(|expected| self.tolerance.holds(self.value, expected)),
            ..line(row, self.column, &self.tolerance)
        }
    }
}

fn blue_wool(row: &Row) -> Result<Vec<Sum>, String> {
    let ratio = row.number("jnf_dose_no_UV_Mlxh")? / row.number("jnf_dose_with_UV_Mlxh")?;
    let rounded = by(5.1e-3, "the table prints two decimals");
    Ok(vec![Sum::of(
        "life_gain_from_removing_UV_ratio",
        ratio,
        rounded,
    )])
}

fn board(row: &Row) -> Result<Vec<Sum>, String> {
    let areal = row.number("thickness_mm")? * row.number("density_kg_m3")? / 1e3;
    let rounded = part(1e-3, "densities of layered boards are rounded to 1 kg/m³");
    Ok(vec![Sum::of("area_mass_kg_m2", areal, rounded)])
}

fn gauge(row: &Row) -> Result<Vec<Sum>, String> {
    let gauge = Stated::job(row.whole("gauge")?);
    let shank = shank(gauge, &mut Working::new()).map_err(|refusal| refusal.to_string())?;
    let (inches, mm) = (shank.value.approx_inches(), shank.value.approx_mm());
    Ok(vec![
        Sum::of("diameter_in", inches, by(1e-5, "held to 1/16 000 mm")),
        Sum::of(
            "diameter_mm",
            mm,
            by(5.5e-4, "the table prints three decimals"),
        ),
    ])
}

fn lateral(row: &Row) -> Result<Vec<Sum>, String> {
    let gravity = Figure::of(row.number("sg_min")?, "");
    let softwood = match row.text("group") {
        "softwood" => true,
        "hardwood" => false,
        other => return Err(format!("group “{other}” is neither hardwood nor softwood")),
    };
    let group = lateral_group(softwood, gravity).map_err(|refusal| refusal.to_string())?;
    let constant = by(0.0, "a constant of the program");
    let psi = part(6e-4, "both columns are rounded to four digits or three");
    Ok(vec![
        Sum::of("sg_min", group.sg_min, constant),
        Sum::of("sg_max", group.sg_max, constant),
        Sum::of("K_N_per_mm2", group.newtons, constant),
        Sum::of("K_psi", group.psi, constant),
        Sum::of("K_psi", group.newtons / 0.006_894_757, psi),
    ])
}

fn frequency(row: &Row) -> Result<Vec<Sum>, String> {
    let often = row.number("lifts_per_min")?;
    let columns = [
        ("h1_V_below_75", Lasting::Hour, false),
        ("h1_V_75_up", Lasting::Hour, true),
        ("h2_V_below_75", Lasting::TwoHours, false),
        ("h2_V_75_up", Lasting::TwoHours, true),
        ("h8_V_below_75", Lasting::Day, false),
        ("h8_V_75_up", Lasting::Day, true),
    ];
    let sums = columns.into_iter().map(|(column, lasting, high)| {
        let value = frequency_row(often, lasting, high);
        let value = value.ok_or_else(|| format!("the program has no row of {often} a minute"))?;
        Ok(Sum::of(column, value, by(0.0, "a constant of the program")))
    });
    sums.collect()
}

fn paper(row: &Row) -> Result<Vec<Sum>, String> {
    let whole = by(0.0, "whole millimetres");
    let mut sums = inches_beside(row)?;
    let name = row.text("name");
    if let Some(series) = SheetSeries::named(row.text("series")) {
        let number = name.get(1..).and_then(|number| number.parse().ok());
        let sheet = number.and_then(|number| series.sheet(number));
        let sheet = sheet.ok_or_else(|| format!("the series has no {name}"))?;
        sums.push(Sum::of("width_mm", sheet.width.approx_mm(), whole));
        sums.push(Sum::of("height_mm", sheet.height.approx_mm(), whole));
    }
    Ok(sums)
}

/// Inches that stand beside millimetres.
fn inches_beside(row: &Row) -> Result<Vec<Sum>, String> {
    let rounded = by(5.5e-4, "the table prints three decimals");
    let pairs = [("width_mm", "width_in"), ("height_mm", "height_in")];
    let sums = pairs.into_iter().map(|(mm, inches)| {
        let length = row.mm(mm)?;
        Ok(Sum::of(inches, length.approx_inches(), rounded))
    });
    sums.collect()
}

fn photo(row: &Row) -> Result<Vec<Sum>, String> {
    let (width, height): (Length, Length) = (row.inches("width_in")?, row.inches("height_in")?);
    let exact = by(1e-9, "an inch is 25.4 mm exactly");
    let aspect = height.approx_mm() / width.approx_mm();
    Ok(vec![
        Sum::of("width_mm", width.approx_mm(), exact),
        Sum::of("height_mm", height.approx_mm(), exact),
        Sum::of(
            "aspect",
            aspect,
            by(5.1e-5, "the table prints four decimals"),
        ),
    ])
}

/// A source is listed once and has a title.
fn source(row: &Row, table: &Table) -> Line {
    let code = row.text("source_id");
    let times = table
        .rows
        .iter()
        .filter(|other| other.text("source_id") == code);
    let times = times.count();
    let titled = !row.text("title").is_empty();
    Line {
        value: format!(
            "listed {times} times, {}",
            if titled { "titled" } else { "without title" }
        ),
        expected: "listed 1 times, titled".to_owned(),
        agrees: times == 1 && titled,
        ..line(row, "title", &EXACT)
    }
}

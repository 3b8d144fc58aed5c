use std::collections::BTreeMap;

use measure::{Angle, Length, Unit};
use trade::settings::Layer;
use trade::{Catalogue, Settings, Units};

use super::{loss, of_sheets};
use crate::gather::Slant;
use crate::slant::{across_corners_up, along_stick_up};
use crate::stock::Stock;
use crate::ware::{Ware, WareKind};

fn settings(changes: &[(&str, &str)]) -> Settings {
    let changes: BTreeMap<String, String> = changes
        .iter()
        .map(|(id, text)| ((*id).to_owned(), (*text).to_owned()))
        .collect();
    let defaults = Settings::defaults(Units::Inches);
    defaults.with(&changes, Layer::Shop, Unit::Inch).unwrap()
}

fn inches(text: &str) -> Length {
    measure::read_length(text, Unit::Inch).unwrap()
}

fn ware(kind: WareKind, code: &str) -> Ware {
    Ware {
        kind,
        code: code.to_owned(),
        colour: None,
        own_to: None,
    }
}

/// Kerf, least strip and trim of a sheet of the starter catalogue, in inches.
fn check_sheet(kind: WareKind, code: &str, changes: &[(&str, &str)], expected: [&str; 3]) {
    let catalogue = Catalogue::starter();
    let material = catalogue.find(code).unwrap();
    let rules = of_sheets(
        &ware(kind, code),
        Some(material),
        &settings(changes),
        &Stock::default(),
    );
    let found = [rules.kerf, rules.least_strip, rules.trim];
    assert_eq!(found, expected.map(inches), "{code}");
}

#[test]
fn sheets_are_cut_by_what_they_are() {
    use WareKind::{Backing, Board, Glazing};
    check_sheet(Board, "mat-4-conservation", &[], ["0", "0", "0"]);
    // Glass of 3/32 in: four thicknesses are 3/8, less than 1/2.
    check_sheet(Glazing, "glass-2.5", &[], ["0", "1/2", "0"]);
    // 4.5 mm acrylic is thinner than 3/16 in (4.7625 mm): scored; four thicknesses are 18 mm.
    check_sheet(Glazing, "acrylic-4.5", &[], ["0", "18 mm", "0"]);
    let thin = [("glazing.acrylic_scored_to", "1/8")];
    check_sheet(Glazing, "acrylic-4.5", &thin, ["1/8", "0", "0"]);
    // 672 g/m² at 4.8 mm are 140 kg/m³, 3040 g/m² at 3.2 mm are 950.
    check_sheet(Backing, "foam-5", &[], ["0", "0", "0"]);
    check_sheet(Backing, "hardboard-3", &[], ["1/8", "0", "0"]);
    // A sawn edge takes the saw as well; a scored one no less than the least strip.
    let edge = [("backing.edge_trim", "1/4"), ("glazing.edge_trim", "1/4")];
    check_sheet(Backing, "hardboard-3", &edge, ["1/8", "0", "3/8"]);
    check_sheet(Glazing, "glass-2.5", &edge, ["0", "1/2", "1/2"]);
}

#[test]
fn the_stock_document_may_say_how_a_material_is_cut() {
    let text =
        "stock = 1\nunits = \"in\"\n[[cut]]\nmaterial = \"foam-5\"\nkerf = \"1/16\"\ntrim = 1\n";
    let stock = Stock::read(text.as_bytes()).unwrap();
    let foam = ware(WareKind::Backing, "foam-5");
    let rules = of_sheets(&foam, None, &settings(&[]), &stock);
    assert_eq!(rules.kerf, inches("1/16"));
    assert_eq!(rules.trim, inches("1 1/16"));
}

fn check_loss(kind: WareKind, slant: Slant, changes: &[(&str, &str)], least: &str, most: &str) {
    let found = loss(kind, slant, &settings(changes));
    let between = inches(least)..=inches(most);
    assert!(between.contains(&found), "{found} is not in {between:?}");
}

#[test]
fn a_mitre_takes_more_of_the_stick_than_the_blade() {
    use WareKind::{Moulding, Spacer};
    let square = Slant::Square;
    let mitred = Slant::QUARTER;
    check_loss(Moulding, mitred, &[], "1/8", "1/8");
    check_loss(Spacer, square, &[], "0", "0");
    let blade = [("moulding.loss", "blade"), ("moulding.blade", "1/8")];
    check_loss(Moulding, square, &blade, "1/8", "1/8");
    // 3.175 mm × √2 = 4.4901280… mm.
    check_loss(Moulding, mitred, &blade, "4.490 mm", "4.491 mm");
    // At a hexagon's 30°: 3.175 mm ÷ cos 30° = 3.6661742… mm.
    let hexagon = Slant::Mitred(Angle::degrees(30), Angle::ZERO);
    check_loss(Moulding, hexagon, &blade, "3.666 mm", "3.667 mm");
    let apart = [blade[0], blade[1], ("moulding.cuts_between", "2")];
    check_loss(Moulding, mitred, &apart, "8.980 mm", "8.981 mm");
}

#[test]
fn slants_are_rounded_up() {
    // 14 in across the flats of a hexagon: 355.6 mm ÷ cos 30° = 410.6115113… mm.
    let corners = across_corners_up(inches("14"), 6);
    assert!(corners > inches("410.611 mm") && corners < inches("410.612 mm"));
    // Never below the true value: straight across it is the length itself and no less.
    assert!(along_stick_up(inches("1/8"), Angle::ZERO, Angle::ZERO) >= inches("1/8"));
}

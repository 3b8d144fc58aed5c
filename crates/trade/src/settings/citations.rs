//! The sources that settings, rules and materials cite.

mod nature;

use working::{Citation, Seen};

const fn cite(
    code: &'static str,
    title: &'static str,
    publisher: &'static str,
    year: &'static str,
    seen: Seen,
) -> Citation {
    Citation {
        code,
        title,
        publisher,
        year,
        seen,
    }
}

/// Every source cited anywhere.
pub static CITATIONS: &[Citation] = &LIST;

/// Those of the trade, then those of nature.
const LIST: [Citation; TRADE.len() + nature::NATURE.len()] = {
    let mut list = [TRADE[0]; TRADE.len() + nature::NATURE.len()];
    let mut index = 0;
    while index < list.len() {
        list[index] = if index < TRADE.len() {
            TRADE[index]
        } else {
            nature::NATURE[index - TRADE.len()]
        };
        index += 1;
    }
    list
};

const TRADE: &[Citation] = &[
    cite(
        "LC1",
        "Guide to Preservation Matting and Framing",
        "Library of Congress",
        "archived 2008",
        Seen::Read,
    ),
    cite(
        "LC2",
        "Matting and Hinging Works of Art on Paper (web guide)",
        "Library of Congress",
        "undated",
        Seen::InPart,
    ),
    cite(
        "FG",
        "Framing levels",
        "Fine Art Trade Guild",
        "undated",
        Seen::SecondHand,
    ),
    cite(
        "AC",
        "Technical pages of an acrylic-sheet maker (maker left unnamed)",
        "acrylic-sheet maker",
        "undated",
        Seen::Read,
    ),
    cite(
        "SG",
        "Compound-Angle Joinery (J. Snyder, S. Gottesman)",
        "authors' note",
        "2014, rev. 2015",
        Seen::InPart,
    ),
    cite(
        "NV",
        "Training manual 14066, Matting",
        "US Navy",
        "undated",
        Seen::Read,
    ),
    cite(
        "EX",
        "Rules of a US regional photographic exhibition",
        "organiser left unnamed",
        "2022",
        Seen::Read,
    ),
    cite(
        "HP",
        "Hanging paintings securely",
        "CulturalMaterials",
        "2015",
        Seen::InPart,
    ),
    cite(
        "AS",
        "C1036 Standard Specification for Flat Glass",
        "ASTM International",
        "2021",
        Seen::FromMemory,
    ),
    cite(
        "G1",
        "Glass thickness: nominal against minimum true thickness",
        "International Window Film Association",
        "undated",
        Seen::Read,
    ),
    cite(
        "G3",
        "Standard glass: constituent materials and attributes (figures after EN 572)",
        "glass processor",
        "undated",
        Seen::Read,
    ),
    cite(
        "G6",
        "Acrylic certification, Table 3-1 (UFGS / ASME PVHO-1)",
        "US Department of Defense",
        "undated",
        Seen::Read,
    ),
    cite(
        "B3",
        "Guide to Preservation Matting and Framing",
        "Library of Congress",
        "archived 2008",
        Seen::Read,
    ),
    cite(
        "B9",
        "Art Hardware: The Definitive Guide to Artists' Materials (S. Saitzyk), paper boards",
        "Watson-Guptill",
        "1987",
        Seen::Read,
    ),
    cite(
        "B10",
        "Fibre composites (hardboard, MDF density classes)",
        "Holzforschung Austria",
        "undated",
        Seen::Read,
    ),
    cite(
        "B11",
        "Metal composite panel data sheet",
        "Australian materials atlas",
        "undated",
        Seen::Read,
    ),
    cite(
        "M1",
        "Preservation Leaflet 4.10 Matting and framing for works on paper and photographs",
        "NEDCC",
        "undated",
        Seen::InPart,
    ),
    cite(
        "H1",
        "Wood Handbook, FPL-GTR-190",
        "USDA Forest Products Laboratory",
        "2010",
        Seen::InPart,
    ),
    cite(
        "OS",
        "How to Frame Pictures (Leach, Woodruff), Bulletin 471",
        "Ohio State University Cooperative Extension",
        "1965",
        Seen::InPart,
    ),
    cite(
        "C8",
        "CCI Notes 10/8 Framing a Painting",
        "Canadian Conservation Institute",
        "undated",
        Seen::InPart,
    ),
];

/// The source with this code, for rules; the program does not build without it.
pub const fn cited(code: &str) -> &'static Citation {
    let mut index = 0;
    while index < LIST.len() {
        if same(LIST[index].code.as_bytes(), code.as_bytes()) {
            return &LIST[index];
        }
        index += 1;
    }
    panic!("a rule cites a source that is not in the list")
}

const fn same(a: &[u8], b: &[u8]) -> bool {
    let mut index = 0;
    if a.len() != b.len() {
        return false;
    }
    while index < a.len() {
        if a[index] != b[index] {
            return false;
        }
        index += 1;
    }
    true
}

/// The source with this code.
pub fn citation(code: &str) -> Option<&'static Citation> {
    CITATIONS.iter().find(|source| source.code == code)
}

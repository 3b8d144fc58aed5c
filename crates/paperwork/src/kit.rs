//! The typesetter's kit: fonts, house style and templates, all inside the binary.

use std::sync::LazyLock;

use typst::foundations::Bytes;
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt};

/// Everything that stays the same from one sheet to the next.
pub(crate) struct Kit {
    pub(crate) library: LazyHash<Library>,
    pub(crate) book: LazyHash<FontBook>,
    /// In order of preference: what is read, then what fills its gaps.
    pub(crate) fonts: Vec<Font>,
    /// The templates, each under its fixed name.
    pub(crate) sources: Vec<Source>,
}

/// The kit, opened once a process.
pub(crate) static KIT: LazyLock<Kit> = LazyLock::new(|| {
    let fonts: Vec<Font> = FONTS
        .into_iter()
        .flat_map(|file| Font::iter(Bytes::new(file)))
        .collect();
    Kit {
        library: LazyHash::new(Library::default()),
        book: LazyHash::new(FontBook::from_fonts(&fonts)),
        fonts,
        sources: TEMPLATES
            .into_iter()
            .map(|(name, text)| Source::new(file_id(name), text.to_owned()))
            .collect(),
    }
});

/// The typesetter's handle for a virtual file.
///
/// Names are interned for the life of the process, 65 535 at most, so only the fixed
/// names of this crate are ever asked for.
pub(crate) fn file_id(name: &'static str) -> FileId {
    let path = VirtualPath::new(name).expect("the fixed names are plain file names");
    RootedPath::new(VirtualRoot::Project, path).intern()
}

static FONTS: [&[u8]; 3] = [
    include_bytes!("../fonts/atkinson-hyperlegible-next/Regular.ttf"),
    include_bytes!("../fonts/atkinson-hyperlegible-next/Bold.ttf"),
    include_bytes!("../fonts/source-serif-4/SemiBold.ttf"),
];

static TEMPLATES: [(&str, &str); 10] = [
    ("choices.typ", include_str!("templates/choices.typ")),
    ("condition.typ", include_str!("templates/condition.typ")),
    ("counter.typ", include_str!("templates/counter.typ")),
    ("cut-book.typ", include_str!("templates/cut-book.typ")),
    (
        "hang-template.typ",
        include_str!("templates/hang-template.typ"),
    ),
    ("house.typ", include_str!("templates/house.typ")),
    ("leaf.typ", include_str!("templates/leaf.typ")),
    ("nail-map.typ", include_str!("templates/nail-map.typ")),
    ("quote.typ", include_str!("templates/quote.typ")),
    ("ticket.typ", include_str!("templates/ticket.typ")),
];

//! Jobs the drawings are tried on.

use sizing::Sizes;
use trade::{Catalogue, Job, Settings};

/// A name and a job document.
pub type Case<'a> = (&'a str, &'a str);

/// One mat over a print.
pub const SINGLE: Case<'static> = (
    "single",
    r#"
rabbet = 1
units = "in"
[[art]]
title = "Harbour, low water"
picture = "harbour.svg"
width = "8"
height = "10"
[[frame]]
moulding = "walnut-1"
[[glazing]]
sheet = "glass-2.5"
[borders]
all = "2"
bottom = "2 1/2"
[[mat]]
board = "mat-4-conservation"
[mount]
board = "mat-4-conservation"
[[backing]]
board = "foam-3"
[attachment]
hold = "t-hinge"
[hardware]
hanger = "wire"
[cover]
sheet = "kraft paper"
"#,
);

/// Three mats with a fillet, an oval over a float, in a liner inside two mouldings.
pub const TRIPLE: Case<'static> = (
    "triple",
    r#"
rabbet = 1
units = "in"
[[art]]
title = "Miniature of a lady with a fan"
width = "5"
height = "7"
thickness = "1/32"
show = "float"
margin = "3/4"
lift = "1/8"
[[frame]]
moulding = "scoop-3"
[[frame]]
name = "inner"
moulding = "cove-gilt-2"
[[frame]]
role = "liner"
moulding = "liner-linen-1.5"
[[glazing]]
sheet = "glass-optical-2.5"
held_in = "inner"
[borders]
all = "2 1/2"
[[mat]]
board = "mat-4-sea-green"
reveal = "1/4"
[[mat]]
board = "mat-4-straw"
reveal = "3/16"
[[mat]]
board = "mat-8-museum"
[mat.fillet]
fillet = "fillet-gilt-1/4"
tuck = "3/16"
[[opening]]
shape = "oval"
[mount]
board = "mat-4-museum"
[[backing]]
board = "foam-3"
[build_up]
[attachment]
hold = "v-hinge"
"#,
);

/// A grid of six photographs, metric.
pub const GRID: Case<'static> = (
    "grid",
    r#"
rabbet = 1
units = "mm"
[[art]]
title = "January"
medium = "photograph"
width = "100"
height = "150"
[[art]]
title = "February"
width = "100"
height = "150"
[[art]]
width = "100"
height = "150"
[[art]]
width = "100"
height = "150"
[[art]]
width = "100"
height = "150"
[[art]]
width = "100"
height = "150"
[[frame]]
moulding = "ash-metric-25"
[[glazing]]
sheet = "acrylic-2.5"
[layout]
arrange = "grid"
columns = 3
gutter_x = "20"
gutter_y = "20"
[borders]
all = "60"
[[mat]]
board = "mat-4-lamp-black"
[mount]
board = "mount-uk-conservation"
[[backing]]
board = "mdf-3"
[hardware]
hanger = "rings"
[strainer]
width = "30"
depth = "12"
uprights = 1
"#,
);

/// A canvas standing proud, held by clips.
pub const CANVAS: Case<'static> = (
    "canvas",
    r#"
rabbet = 1
units = "in"
[[art]]
title = "Orchard"
medium = "canvas"
width = "16"
height = "20"
thickness = "13/16"
[[frame]]
face = "2"
lip = "1/4"
rabbet_depth = "3/8"
height = "1"
[clips]
[hardware]
hanger = "wire"
"#,
);

/// A canvas in a floater.
pub const FLOATER: Case<'static> = (
    "floater",
    r#"
rabbet = 1
units = "in"
[[art]]
title = "Field in March"
medium = "canvas"
width = "18"
height = "24"
thickness = "1 1/2"
[[frame]]
role = "floater"
moulding = "floater-3/8"
wall = "3/8"
gap = "1/4"
"#,
);

/// Objects in a box.
pub const BOX: Case<'static> = (
    "box",
    r#"
rabbet = 1
units = "in"
[[art]]
title = "Medal"
medium = "object"
show = "object"
width = "2"
height = "4"
thickness = "1/2"
x = "1 1/2"
y = "2"
[[art]]
title = "Compass"
medium = "object"
show = "object"
width = "3"
height = "3"
thickness = "1"
x = "5"
y = "2 1/2"
[walls]
thickness = "1/4"
height = "1 1/4"
display = "10 x 8"
[[frame]]
moulding = "box-deep-3/4"
[[glazing]]
sheet = "glass-2"
[mount]
board = "mat-4-madder"
[[backing]]
board = "foam-5"
"#,
);

/// A six-sided frame round needlework, its face and lip written by hand, its depth not known.
pub const HEXAGON: Case<'static> = (
    "hexagon",
    r#"
rabbet = 1
units = "in"
sides = 6
[[art]]
title = "Star quilt"
medium = "textile"
width = "14"
[[frame]]
face = "1 1/4"
lip = "1/4"
[[glazing]]
sheet = "acrylic-2.5"
[[backing]]
board = "foam-3"
"#,
);

/// A letter seen from both sides.
pub const DOUBLE: Case<'static> = (
    "double",
    r#"
rabbet = 1
units = "in"
double_sided = true
[[art]]
title = "Letter home"
medium = "document"
width = "8 1/2"
height = "11"
[[frame]]
moulding = "oak-square-1"
[[glazing]]
sheet = "glass-2"
[borders]
all = "2"
[[mat]]
board = "mat-4-museum"
"#,
);

/// Unlike windows: an arch between rounded corners and an octagon, one mat spanning all.
pub const SHAPES: Case<'static> = (
    "shapes",
    r#"
rabbet = 1
units = "in"
[[art]]
title = "Left wing"
width = "5"
height = "7"
[[art]]
title = "The <script>alert('centre')</script> & \"more\""
width = "8"
height = "10"
[[art]]
title = "Right wing"
width = "5"
height = "7"
[[opening]]
shape = "rounded"
radius = "1/2"
[[opening]]
shape = "round-arch"
[[opening]]
shape = "octagon"
[layout]
gutter_x = "1 1/4"
[borders]
all = "3"
[[frame]]
moulding = "ash-round-3/4"
[[glazing]]
sheet = "acrylic-uv-3"
[spacer]
strip = "spacer-1/8"
[[mat]]
board = "mat-4-madder"
reveal = "1/4"
[[mat]]
board = "mat-4-conservation"
[mount]
board = "mat-4-conservation"
[[backing]]
board = "corrugated-3"
"#,
);

/// A thick relief print in a sink, with a strainer behind.
pub const SINK: Case<'static> = (
    "sink",
    r#"
rabbet = 1
units = "mm"
[[art]]
title = "Relief"
width = "300"
height = "200"
thickness = "6"
[[frame]]
face = "30"
lip = "7"
rabbet_depth = "40"
height = "50"
[frame.fillet]
fillet = "fillet-black-1/4"
[[glazing]]
sheet = "glass-2"
[borders]
all = "60"
[[mat]]
board = "mat-8-museum"
bevel = "reverse"
[sink]
board = "foam-5"
depth = "10"
[mount]
board = "mat-4-museum"
[[backing]]
board = "fluted-plastic-4"
[strainer]
width = "20"
depth = "10"
uprights = 1
cross_bars = 1
"#,
);

/// A sampler on a wrapped board behind spacers.
pub const TEXTILE: Case<'static> = (
    "textile",
    r#"
rabbet = 1
units = "in"
[[art]]
title = "Sampler"
medium = "textile"
show = "wrapped"
width = "14"
height = "14"
thickness = "1/16"
[wrap]
ground = "1/2"
cloth = "1/16"
[[frame]]
moulding = "poplar-black-1.25"
[[glazing]]
sheet = "acrylic-uv-3"
inward = "either"
[spacer]
strip = "spacer-3/8"
[[backing]]
board = "foam-5"
[hardware]
hanger = "cleat"
"#,
);

/// Every case.
pub const ALL: [Case<'static>; 11] = [
    SINGLE, TRIPLE, GRID, CANVAS, FLOATER, BOX, HEXAGON, DOUBLE, SHAPES, SINK, TEXTILE,
];

/// The job and its sizes.
pub fn sized((name, text): Case<'_>) -> (Job, Sizes) {
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{name}: {faults:?}"));
    let settings = Settings::defaults(job.units);
    let sizes = sizing::derive(&job, &Catalogue::starter(), &settings);
    let sizes = sizes.unwrap_or_else(|faults| panic!("{name}: {faults:?}"));
    (job, sizes)
}

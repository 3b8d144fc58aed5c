//! The bare front of a piece: its elevation without dimensions and caption, cropped to its outside.

/// What stands before every dimension of an elevation.
const FIRST_DIMENSION: &str = "<g data-part=\"frame.outside\">";

/// The outermost member; its paths reach as far as the piece does.
const OUTERMOST: &str = "<g data-part=\"frame.1\">";

/// The part of an elevation that is the piece itself; none where the drawing has no such part.
///
/// Shape:  as wide and high as the piece's outside at the drawing's scale, without a ground.
pub(crate) fn bare(svg: &str) -> Option<String> {
    let picture = &svg[..svg.find(FIRST_DIMENSION)?];
    let outermost = &picture[picture.find(OUTERMOST)?..];
    let edges = Edges::of(outermost)?;
    let start = picture.find("viewBox=")?;
    let attributes = &picture[..start];
    let rest = &picture[start..];
    let lettering = rest.find(" font-family=")?;
    let body = without_ground(&rest[lettering..]);
    Some(format!(
        "{attributes}{}{body}</svg>\n",
        edges.as_attributes()
    ))
}

/// How far paths reach, in millimetres of the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Edges {
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

impl Edges {
    /// Those of all corners of all paths.
    fn of(svg: &str) -> Option<Self> {
        let corners = svg
            .split(" d=\"")
            .skip(1)
            .filter_map(|path| path.split('"').next())
            .flat_map(corners);
        corners.fold(None, |edges: Option<Self>, (x, y)| {
            let edges = edges.unwrap_or(Self {
                left: x,
                top: y,
                right: x,
                bottom: y,
            });
            Some(Self {
                left: edges.left.min(x),
                top: edges.top.min(y),
                right: edges.right.max(x),
                bottom: edges.bottom.max(y),
            })
        })
    }

    fn as_attributes(self) -> String {
        let (width, height) = (self.right - self.left, self.bottom - self.top);
        format!(
            "viewBox=\"{:.3} {:.3} {width:.3} {height:.3}\" width=\"{width:.3}mm\" height=\"{height:.3}mm\"",
            self.left, self.top
        )
    }
}

/// The corners of a path of straight lines: `M8 5L102 5Z`.
fn corners(path: &str) -> impl Iterator<Item = (f64, f64)> {
    path.split(['M', 'L', 'Z']).filter_map(|corner| {
        let (x, y) = corner.split_once(' ')?;
        Some((x.parse().ok()?, y.parse().ok()?))
    })
}

/// Without the sheet of paper behind it.
fn without_ground(svg: &str) -> String {
    let ground = svg.find("<rect class=\"paper\"").and_then(|start| {
        let end = svg[start..].find("/>")? + start + "/>".len();
        Some(format!("{}{}", &svg[..start], &svg[end..]))
    });
    ground.unwrap_or_else(|| svg.to_owned())
}

//! The core chain computed a second time, straight from the formulas of the trade handbook's §3,
//! in whole quanta and without any of the engine's own steps.

use measure::{Length, Size};
use proptest::prelude::*;
use sizing::{Sizes, WorkedSize, derive};
use trade::{
    Art, Backing, Borders, Catalogue, Glazing, Job, Layer, Mat, MatFillet, Measured, Member,
    Settings, Spacer, Units,
};

/// Quanta in 1/64 in: every number drawn is a whole number of these or of 0.05 mm.
const INCH_64TH: i64 = 6_350;
const MM_20TH: i64 = 800;

#[derive(Clone, Debug)]
struct Frame {
    lip: i64,
    allowance: i64,
    face: i64,
}

#[derive(Clone, Debug)]
struct Piece {
    art: [i64; 2],
    overlap: i64,
    /// Front to back.
    mats: Vec<i64>,
    reveals: Vec<i64>,
    /// Left, right, top, bottom.
    borders: [i64; 4],
    /// Face, tuck, thickness.
    fillet: Option<[i64; 3]>,
    /// Outside in.
    frames: Vec<Frame>,
    depth: i64,
    tail: i64,
    /// Glass, spacer, mount, back.
    layers: [i64; 4],
    unders: [i64; 2],
    cut: i64,
    trim: i64,
}

fn quanta(steps: std::ops::Range<i64>) -> impl Strategy<Value = i64> + Clone {
    (steps, prop::bool::ANY).prop_map(|(n, inch)| n * if inch { INCH_64TH } else { MM_20TH })
}

fn piece() -> impl Strategy<Value = Piece> {
    let frame = (quanta(8..40), quanta(0..20), quanta(30..400));
    let frame = frame.prop_map(|(lip, allowance, face)| Frame {
        lip,
        allowance,
        face,
    });
    let art = [quanta(600..2_000), quanta(600..2_000)];
    let mats = (1..=3_usize).prop_flat_map(|count| {
        (
            prop::collection::vec(quanta(1..10), count),
            prop::collection::vec(quanta(4..60), count - 1),
        )
    });
    let borders = [
        quanta(20..400),
        quanta(20..400),
        quanta(20..400),
        quanta(20..400),
    ];
    let fillet = prop::option::of([quanta(2..30), quanta(1..30), quanta(1..20)]);
    let layers = [quanta(1..12), quanta(1..30), quanta(1..12), quanta(1..20)];
    (
        (art, quanta(0..40), mats, borders, fillet),
        (
            prop::collection::vec(frame, 1..=3),
            quanta(10..150),
            quanta(0..20),
        ),
        (
            layers,
            [quanta(0..10), quanta(0..10)],
            quanta(0..20),
            quanta(0..80),
        ),
    )
        .prop_map(|(window, frame, rest)| Piece {
            art: window.0,
            overlap: window.1,
            mats: window.2.0,
            reveals: window.2.1,
            borders: window.3,
            fillet: window.4,
            frames: frame.0,
            depth: frame.1,
            tail: frame.2,
            layers: rest.0,
            unders: rest.1,
            cut: rest.2,
            trim: rest.3,
        })
}

fn m(quanta: i64) -> Measured {
    Measured(Length::from_quanta(quanta))
}

/// The document of a piece.
fn document(piece: &Piece) -> Job {
    let mut job = Job::empty(Units::Inches);
    let [width, height] = piece.art.map(Length::from_quanta);
    job.art.push(Art {
        overlap: Some(m(piece.overlap)),
        ..Art::sized(width, height)
    });
    let [left, right, top, bottom] = piece.borders.map(|border| Some(m(border)));
    job.borders = Some(Borders {
        left,
        right,
        top,
        bottom,
        ..Borders::default()
    });
    job.mat = boards(piece);
    job.frame = members(piece);
    sheets(piece, &mut job);
    let settings = [
        ("moulding.cut_allowance", piece.cut),
        ("moulding.end_trim", piece.trim),
    ];
    for (id, value) in settings {
        let text = Length::from_quanta(value).exact_mm();
        job.settings.insert(id.to_owned(), text);
    }
    job
}

fn boards(piece: &Piece) -> Vec<Mat> {
    let each = piece.mats.iter().enumerate().map(|(i, thickness)| Mat {
        thickness: Some(m(*thickness)),
        reveal: piece.reveals.get(i).map(|reveal| m(*reveal)),
        ..Mat::default()
    });
    let mut mats: Vec<Mat> = each.collect();
    if let (Some(fillet), Some(last)) = (piece.fillet, mats.last_mut()) {
        let [face, tuck, thickness] = fillet.map(|length| Some(m(length)));
        last.fillet = Some(MatFillet {
            fillet: None,
            face,
            tuck,
            thickness,
        });
    }
    mats
}

fn members(piece: &Piece) -> Vec<Member> {
    let last = piece.frames.len() - 1;
    let each = piece.frames.iter().enumerate().map(|(i, frame)| Member {
        lip: Some(m(frame.lip)),
        allowance: Some(m(frame.allowance)),
        face: Some(m(frame.face)),
        rabbet_depth: (i == last).then(|| m(piece.depth)),
        tail: Some(m(piece.tail)),
        ..Member::default()
    });
    each.collect()
}

fn sheets(piece: &Piece, job: &mut Job) {
    let [glass, spacer, mount, back] = piece.layers.map(|layer| Some(m(layer)));
    let [glaz_under, back_under] = piece.unders.map(|under| Some(m(under)));
    job.glazing.push(Glazing {
        thickness: glass,
        undersize: glaz_under,
        ..Glazing::default()
    });
    job.spacer = Some(Spacer {
        strip: None,
        width: None,
        thickness: spacer,
    });
    job.mount = Some(Layer {
        board: None,
        thickness: mount,
    });
    job.backing.push(Backing {
        board: None,
        thickness: back,
        undersize: back_under,
    });
}

/// What the handbook's formulas give, both dimensions at once.
struct Worked {
    windows: Vec<[i64; 2]>,
    feet: Vec<[i64; 2]>,
    fillet: Option<[[i64; 2]; 2]>,
    package: [i64; 2],
    /// Outside in: rabbet, sight, outside, stick used, charge.
    frames: Vec<[[i64; 2]; 3]>,
    used: Vec<[i64; 2]>,
}

fn out(size: [i64; 2], by: i64) -> [i64; 2] {
    size.map(|length| length + 2 * by)
}

fn work(piece: &Piece) -> Worked {
    // window(face) = art - 2 overlap; with a fillet that is the fillet's sight, and
    // window = sight + 2 fillet face, long point = window + 2 tuck.
    let sight = out(piece.art, -piece.overlap);
    let (inner, fillet) = match piece.fillet {
        None => (sight, None),
        Some([face, tuck, _]) => {
            let window = out(sight, face);
            (window, Some([sight, out(window, tuck)]))
        }
    };
    // top window = window + 2 sum(reveals); foot = window - 2 t.
    let count = piece.mats.len();
    let windows: Vec<[i64; 2]> = (0..count)
        .map(|i| out(inner, piece.reveals[i..].iter().sum()))
        .collect();
    let feet = (0..count)
        .map(|i| out(windows[i], -piece.mats[i]))
        .collect();
    // mat outer = top window + borders = package.
    let [left, right, top, bottom] = piece.borders;
    let package = [windows[0][0] + left + right, windows[0][1] + top + bottom];
    let mut holds = package;
    let mut frames = Vec::new();
    let mut used = Vec::new();
    for frame in piece.frames.iter().rev() {
        let rabbet = holds.map(|length| length + frame.allowance);
        let sight = out(rabbet, -frame.lip);
        let outside = out(sight, frame.face);
        let stick = 2 * (outside[0] + outside[1]) + 4 * piece.cut + piece.trim;
        let charge = 2 * (holds[0] + holds[1]) + 8 * frame.face;
        frames.insert(0, [rabbet, sight, outside]);
        used.insert(0, [stick, charge]);
        holds = outside;
    }
    Worked {
        windows,
        feet,
        fillet,
        package,
        frames,
        used,
    }
}

fn q(size: WorkedSize) -> [i64; 2] {
    let Size { width, height } = size.size();
    [width.quanta(), height.quanta()]
}

fn compare(piece: &Piece, sizes: &Sizes) -> Result<(), TestCaseError> {
    let worked = work(piece);
    prop_assert_eq!(q(sizes.package), worked.package);
    let mut left = piece.borders[0];
    let mut top = piece.borders[2];
    for (i, mat) in sizes.mats.iter().enumerate() {
        let window = &mat.windows[0];
        prop_assert_eq!(q(window.face), worked.windows[i], "window {}", i);
        prop_assert_eq!(q(window.foot), worked.feet[i], "foot {}", i);
        prop_assert_eq!(window.x.value.quanta(), left, "left of window {}", i);
        prop_assert_eq!(window.y.value.quanta(), top, "top of window {}", i);
        // Seen from the back: W - x - w.
        let back = worked.package[0] - left - worked.windows[i][0];
        prop_assert_eq!(window.back_x().value.quanta(), back);
        let seen = mat.reveal_seen.map(|seen| seen.value.quanta());
        prop_assert_eq!(
            seen,
            piece.reveals.get(i).map(|reveal| reveal - piece.mats[i])
        );
        left += piece.reveals.get(i).unwrap_or(&0);
        top += piece.reveals.get(i).unwrap_or(&0);
    }
    let innermost = &sizes.mats[piece.mats.len() - 1].windows[0];
    let fillet = innermost
        .fillet
        .map(|fillet| [q(fillet.sight), q(fillet.long)]);
    prop_assert_eq!(fillet, worked.fillet);
    for (i, member) in sizes.members.iter().enumerate() {
        let sight = member.sight.map(q).unwrap_or_default();
        prop_assert_eq!(
            [q(member.rabbet), sight, q(member.outside)],
            worked.frames[i]
        );
        let charge = member.stick.charge.map(|charge| charge.value.quanta());
        prop_assert_eq!(member.stick.used.value.quanta(), worked.used[i][0]);
        prop_assert_eq!(charge, Some(worked.used[i][1]));
    }
    sheets_and_depth(piece, sizes, worked.package)
}

fn sheets_and_depth(piece: &Piece, sizes: &Sizes, package: [i64; 2]) -> Result<(), TestCaseError> {
    let [glaz_under, back_under] = piece.unders;
    let pane = &sizes.glazing[0];
    prop_assert_eq!(
        q(pane.sheet.size),
        package.map(|length| length - glaz_under)
    );
    prop_assert_eq!(
        q(sizes.backing[0].size),
        package.map(|length| length - back_under)
    );
    let frame = &piece.frames[piece.frames.len() - 1];
    let cover = pane.cover.map(|cover| cover.value.quanta());
    prop_assert_eq!(cover, Some(frame.lip - frame.allowance - glaz_under));
    let fillet = piece.fillet.map_or(0, |[_, _, thickness]| thickness);
    let mats: i64 = piece.mats.iter().sum::<i64>() + fillet;
    let stack = sizes.members[piece.frames.len() - 1].stack.as_ref();
    let stack = stack.map(|stack| (stack.total.value.quanta(), stack.slack.value.quanta()));
    let total = piece.layers.iter().sum::<i64>() + mats;
    prop_assert_eq!(stack, Some((total, piece.depth - total - piece.tail)));
    let air = sizes.air.map(|air| air.value.quanta());
    prop_assert_eq!(air, Some(piece.layers[1] + mats), "air = spacer + mats");
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_core_chain_agrees_with_the_handbook(piece in piece()) {
        let job = document(&piece);
        let settings = Settings::defaults(Units::Inches);
        let sizes = derive(&job, &Catalogue::default(), &settings).expect("the piece is whole");
        compare(&piece, &sizes)?;
    }
}

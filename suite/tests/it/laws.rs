//! Laws that hold for every piece, checked on random jobs.
//!
//! Source: plain geometry; the trade handbook's §3 (core chain, inverse jobs) and §4 (mirroring).

use measure::{Length, Size};
use proptest::prelude::*;
use proptest::test_runner::TestCaseError;
use sizing::{BackSide, Cuts, MemberSizes, Sizes, Window, derive, steps};
use trade::{Arrangement, Catalogue, Fit, Job, Pair, Settings, Units};
use working::Worked;

use crate::draw::{jobs, jobs_without_fit};

/// Derives a job that was drawn: nothing in it is missing or unknown.
pub fn sized(job: &Job, catalogue: &Catalogue) -> Sizes {
    let settings = Settings::defaults(Units::Inches);
    derive(job, catalogue, &settings)
        .unwrap_or_else(|faults| panic!("a drawn job is whole: {faults:#?}"))
}

type Law = Result<(), TestCaseError>;

fn catalogue() -> Catalogue {
    Catalogue::starter()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn rectangles_stand_in_one_another(job in jobs()) {
        let sizes = sized(&job, &catalogue());
        members_chain(&sizes)?;
        depths_add_up(&job, &sizes)?;
    }

    #[test]
    fn borders_windows_and_gutters_make_the_mat(job in jobs()) {
        let sizes = sized(&job, &catalogue());
        borders_sum(&job, &sizes)?;
        for (mat, each) in sizes.mats.iter().enumerate() {
            for window in &each.windows {
                mirrors(window, sizes.package.size())?;
            }
            prop_assert!(!each.windows.is_empty(), "mat {} has a window", mat + 1);
        }
    }

    #[test]
    fn the_cutter_is_set_by_the_back_view(job in jobs()) {
        let sizes = sized(&job, &catalogue());
        for setup in &sizes.setups {
            let mat = &sizes.mats[setup.mat];
            cuts_mirror(&sizes, mat.slope.value, &mat.windows[setup.window], &setup.cuts)?;
        }
    }

    #[test]
    fn every_line_of_working_comes_out_again(job in jobs()) {
        let sizes = sized(&job, &catalogue());
        let amiss = sizes.working.recheck();
        prop_assert!(amiss.is_empty(), "{:?}", amiss);
    }

    #[test]
    fn a_job_is_sized_alike_each_time(job in jobs()) {
        let (first, second) = (sized(&job, &catalogue()), sized(&job, &catalogue()));
        prop_assert_eq!(lines(&first), lines(&second));
        prop_assert_eq!(&first.faults, &second.faults);
        prop_assert_eq!(steps(&job, &first), steps(&job, &second));
    }

    #[test]
    fn toml_and_json_read_back_as_the_same_job(job in jobs()) {
        let text = job.to_toml();
        prop_assert_eq!(&Job::read(text.as_bytes()).expect("TOML reads back"), &job.0);
        let text = job.to_json().to_string();
        prop_assert_eq!(&Job::read(text.as_bytes()).expect("JSON reads back"), &job.0);
    }

    #[test]
    fn inches_and_millimetres_give_the_same_parts(job in jobs()) {
        let units = match job.units {
            Units::Inches => Units::Millimetres,
            Units::Millimetres => Units::Inches,
        };
        let text = Job { units, ..job.0.clone() }.to_toml();
        let other = Job::read(text.as_bytes()).expect("the other unit reads back");
        prop_assert_eq!(other.units, units);
        prop_assert_eq!(lines(&sized(&job, &catalogue())), lines(&sized(&other, &catalogue())));
    }

    #[test]
    fn a_size_taken_from_a_piece_gives_the_piece_back(job in jobs_without_fit()) {
        let forward = sized(&job, &catalogue());
        for fit in sizes_to_fit(&forward) {
            let given = Job { fit: Some(fit), ..job.0.clone() };
            let back = sized(&given, &catalogue());
            prop_assert_eq!(back.package.size(), forward.package.size(), "{}", given.to_toml());
            prop_assert_eq!(back.outside.size(), forward.outside.size());
            borders_sum(&given, &back)?;
        }
    }
}

/// Every line of working: subject and value.
fn lines(sizes: &Sizes) -> Vec<String> {
    let lines = sizes.working.lines();
    lines
        .map(|line| format!("{} = {}", line.subject, line.value))
        .collect()
}

/// Rabbet, sight, outside and package of a piece, each as a size to fit; none that is no size.
fn sizes_to_fit(sizes: &Sizes) -> Vec<Fit> {
    let (outermost, innermost) = (&sizes.members[0], &sizes.members[sizes.members.len() - 1]);
    let pair = |size: Size| Some(Pair(size));
    let mut fits = vec![
        Fit {
            outside: pair(sizes.outside.size()),
            ..Fit::default()
        },
        Fit {
            rabbet: pair(outermost.rabbet.size()),
            ..Fit::default()
        },
        Fit {
            package: pair(sizes.package.size()),
            ..Fit::default()
        },
    ];
    if let Some(sight) = innermost.sight {
        fits.push(Fit {
            sight: pair(sight.size()),
            ..Fit::default()
        });
    }
    fits.retain(|fit| {
        let given = [fit.outside, fit.rabbet, fit.package, fit.sight];
        given
            .into_iter()
            .flatten()
            .all(|size| size.short_side().is_positive())
    });
    fits
}

fn members_chain(sizes: &Sizes) -> Law {
    let mut holds = sizes.package.size();
    for member in sizes.members.iter().rev() {
        prop_assert_eq!(
            member.contents.size(),
            holds,
            "{} holds what is within",
            &member.name
        );
        member_adds_up(member)?;
        holds = member.outside.size();
    }
    prop_assert_eq!(sizes.outside.size(), holds);
    Ok(())
}

fn member_adds_up(member: &MemberSizes) -> Law {
    let (rabbet, outside) = (member.rabbet.size(), member.outside.size());
    let face = member.face.value;
    if let Some(sight) = member.sight {
        prop_assert_eq!(
            outside,
            sight.size().grow(face),
            "outside = sight + 2 faces"
        );
        prop_assert_eq!(rabbet, member.contents.size().widen(member.allowance));
        prop_assert_eq!(
            sight.size().grow(member.lip),
            rabbet,
            "sight = rabbet - 2 lips"
        );
        let cover = member.lip_cover.map(|cover| cover.value.twice());
        let left = member.lip.twice() - member.allowance;
        prop_assert!(cover.is_some_and(|cover| (cover - left).abs() <= Length::QUANTUM));
    }
    if let Some(floater) = &member.floater {
        prop_assert_eq!(rabbet, member.contents.size().grow(floater.gap));
        prop_assert_eq!(outside, rabbet.grow(face));
        prop_assert_eq!(floater.ledge_opening.size().grow(floater.ledge), rabbet);
    }
    Ok(())
}

fn depths_add_up(job: &Job, sizes: &Sizes) -> Law {
    for (member, stated) in sizes.members.iter().zip(&job.frame) {
        let Some(stack) = &member.stack else { continue };
        let sum: Length = stack.layers.iter().map(|layer| layer.thickness.value).sum();
        prop_assert_eq!(stack.total.value, sum, "the stack is its layers");
        let last = stack
            .layers
            .last()
            .map_or(Length::ZERO, |layer| layer.behind);
        prop_assert_eq!(last, sum, "the last layer ends where the stack does");
        let built = stack.build_up.unwrap_or_default();
        let depth = member.rabbet_depth.map(|depth| depth + built);
        prop_assert_eq!(
            Some(stack.total.value + stack.slack.value + stack.tail),
            depth
        );
        prop_assert_eq!(
            stack.proud.value,
            (stack.total.value - stack.depth).or_zero()
        );
        if let Some(tail) = stated.tail {
            prop_assert_eq!(stack.tail, *tail);
        }
        if let Some(clip) = stack.clip {
            prop_assert!(clip.value <= stack.proud.value && clip.value.is_positive());
        }
    }
    Ok(())
}

/// before + windows + after = package; with equal gutters, before + Σ windows + gutters + after too.
fn borders_sum(job: &Job, sizes: &Sizes) -> Law {
    let Some(borders) = &sizes.borders else {
        prop_assert!(sizes.mats.is_empty());
        return Ok(());
    };
    let cut = borders.cut.map(|border| border.value);
    let top = &sizes.mats[0].windows;
    let least = |pick: fn(&Window) -> Worked<Length>| top.iter().map(|w| pick(w).value).min();
    let bare = [
        least(|w| w.x),
        least(|w| w.right),
        least(|w| w.y),
        least(|w| w.bottom),
    ];
    // In a grid a window may be smaller than its cell, and borders run to the cells.
    let grid = job
        .layout
        .as_ref()
        .is_some_and(|l| l.arrange == Arrangement::Grid);
    for (bare, (side, cut)) in bare.into_iter().zip(cut.named()) {
        let bare = bare.unwrap_or_default();
        prop_assert!(
            bare == cut || grid && bare > cut,
            "{} leaves {:?}, not {:?}",
            side,
            bare,
            cut
        );
    }
    let cover = sizes.members.last().and_then(|member| member.lip_cover);
    if let (Some(cover), Some(visible)) = (cover, borders.visible) {
        for ((_, visible), (_, cut)) in visible.named().into_iter().zip(cut.named()) {
            prop_assert_eq!(visible.value + cover.value, cut);
        }
    }
    line_sums(job, sizes, cut)
}

/// A row or column whose outermost windows are one to an opening, summed afresh.
fn line_sums(job: &Job, sizes: &Sizes, cut: sizing::Sides<Length>) -> Law {
    let layout = job.layout.clone().unwrap_or_default();
    if job.mat.iter().any(|mat| !mat.around.is_empty()) {
        return Ok(());
    }
    let top = &sizes.mats[0].windows;
    let gaps = i64::try_from(top.len()).expect("a few windows") - 1;
    let gutter = |stated: Option<trade::Measured>| stated.map_or(Length::ZERO, |g| *g).times(gaps);
    let package = sizes.package.size();
    match layout.arrange {
        Arrangement::Row => {
            let windows: Length = top.iter().map(|w| w.face.width.value).sum();
            let sum = cut.left + windows + gutter(layout.gutter_x) + cut.right;
            prop_assert_eq!(sum, package.width);
        }
        Arrangement::Column => {
            let windows: Length = top.iter().map(|w| w.face.height.value).sum();
            let sum = cut.top + windows + gutter(layout.gutter_y) + cut.bottom;
            prop_assert_eq!(sum, package.height);
        }
        Arrangement::Grid => {
            let stated = layout
                .columns
                .and_then(|columns| usize::try_from(columns).ok());
            let columns = stated
                .unwrap_or_else(|| near_square(top.len()))
                .min(top.len());
            let rows = top.len().div_ceil(columns);
            let width = top
                .iter()
                .map(|w| w.face.width.value)
                .max()
                .unwrap_or_default();
            let height = top
                .iter()
                .map(|w| w.face.height.value)
                .max()
                .unwrap_or_default();
            let sum = |cells: usize, cell: Length, gutter: Option<trade::Measured>| {
                let cells = i64::try_from(cells).expect("a few cells");
                cell.times(cells) + gutter.map_or(Length::ZERO, |g| *g).times(cells - 1)
            };
            let across = sum(columns, width, layout.gutter_x);
            let down = sum(rows, height, layout.gutter_y);
            prop_assert_eq!(cut.left + across + cut.right, package.width);
            prop_assert_eq!(cut.top + down + cut.bottom, package.height);
        }
        Arrangement::Free => {}
    }
    Ok(())
}

/// The fewest columns that give no more rows than columns.
fn near_square(count: usize) -> usize {
    (1..=count).find(|n| n * n >= count).unwrap_or(1)
}

/// x + width + right = package, and the back view seen from its own back is the front view.
fn mirrors(window: &Window, package: Size) -> Law {
    let (x, width) = (window.x.value, window.face.width.value);
    let from_back = |left: Length| package.width - left - width;
    prop_assert_eq!(x + width + window.right.value, package.width);
    let (y, height) = (window.y.value, window.face.height.value);
    prop_assert_eq!(y + height + window.bottom.value, package.height);
    prop_assert_eq!(
        window.back_x().value,
        from_back(x),
        "left from the back is W - x - w"
    );
    prop_assert_eq!(from_back(from_back(x)), x);
    Ok(())
}

fn cuts_mirror(sizes: &Sizes, slope: Length, window: &Window, cuts: &Cuts) -> Law {
    use trade::Key;
    let foot = sizes.settings.choice(Key::MatMarks) == "foot";
    let (run, offset) = (
        if foot { slope } else { Length::ZERO },
        sizes.settings.length(Key::GuideOffset),
    );
    let package = sizes.package.size();
    let cuts = match cuts {
        Cuts::LaidOut { left, top, size } => {
            prop_assert_eq!(package.width - *left - size.width, window.x.value);
            prop_assert_eq!((*top, *size), (window.y.value, window.face.size()));
            return Ok(());
        }
        Cuts::Straight(cuts) => cuts,
    };
    prop_assert_eq!(cuts.len(), 4);
    for cut in cuts {
        let (edge, ends) = match cut.side {
            BackSide::Left => (window.right, [window.bottom, window.y]),
            BackSide::Top => (window.y, [window.right, window.x]),
            BackSide::Right => (window.x, [window.y, window.bottom]),
            BackSide::Bottom => (window.bottom, [window.x, window.right]),
        };
        prop_assert_eq!(cut.guide.value, edge.value + run + offset, "{:?}", cut.side);
        let mut ends = ends.map(|end| end.value + run);
        if sizes.settings.choice(Key::CutDirection) == "towards" {
            ends.reverse();
        }
        prop_assert_eq!([cut.start.value, cut.stop.value], ends, "{:?}", cut.side);
        prop_assert_eq!(cut.overcut.value, run);
    }
    Ok(())
}

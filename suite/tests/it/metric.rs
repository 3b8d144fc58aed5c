//! The millimetre column of the trade handbook's §3, every number of it, against the golden jobs
//! `sizes/ok/metric_*` (row b's triple mat, too deep on purpose, stands in `sizes/ex`).

use measure::{Length, Size, Unit};
use sizing::{MatSizes, MemberSizes, Sizes};

use crate::golden::{Came, folder, run};

/// Job, then what the table says: name of the quantity and its value in millimetres.
type Row = (&'static str, &'static [(&'static str, &'static str)]);

const ROWS: &[Row] = &[
    (
        "metric_a_single",
        &[
            ("window", "194x244"),
            ("foot", "191x241"),
            ("mat", "294x344"),
            ("rabbet", "297x347"),
            ("sight", "285x335"),
            ("outside", "335x385"),
            ("stick", "1477"),
            ("stack", "7.5"),
            ("slack", "1.5"),
        ],
    ),
    (
        "metric_b_double",
        &[
            ("window", "194x244"),
            ("top", "206x256"),
            ("mat", "326x376"),
            ("stack", "9"),
            ("slack", "0"),
        ],
    ),
    (
        "metric_b_triple_too_deep",
        &[
            ("top", "214x264"),
            ("mat", "334x384"),
            ("stack", "10.5"),
            ("slack", "-1.5"),
            ("refused", "stack.too_deep"),
        ],
    ),
    (
        "metric_c_weighted",
        &[("mat", "314x379"), ("outside", "355x420"), ("bottom", "75")],
    ),
    (
        "metric_d_grid",
        &[
            ("window", "94x144"),
            ("lefts", "60,174,288,60,174,288"),
            ("tops", "60,60,60,224,224,224"),
            ("mat", "442x428"),
        ],
    ),
    (
        "metric_d_row",
        &[
            ("lefts", "70,224,448"),
            ("tops", "105,70,105"),
            ("mat", "642x384"),
        ],
    ),
    (
        "metric_e_float",
        &[
            ("window", "234x321"),
            ("gap", "10.5"),
            ("mat", "354x441"),
            ("air", "4.5"),
            ("stack", "13.5"),
        ],
    ),
    (
        "metric_e_float_no_mat",
        &[
            ("sight", "250x337"),
            ("rabbet", "262x349"),
            ("package", "259x346"),
            ("air", "6"),
        ],
    ),
    (
        "metric_f_bleed",
        &[
            ("rabbet", "503x703"),
            ("sight", "489x689"),
            ("lost", "5.5"),
            ("air", "3"),
        ],
    ),
    (
        "metric_g_canvas",
        &[
            ("rabbet", "606x806"),
            ("sight", "590x790"),
            ("outside", "710x910"),
            ("proud", "8"),
            ("clip", "6"),
        ],
    ),
    (
        "metric_h_floater",
        &[
            ("rabbet", "616x816"),
            ("outside", "632x832"),
            ("ledge opening", "560x760"),
            ("setback", "3"),
        ],
    ),
    (
        "metric_i_fillet",
        &[
            ("fillet sight", "294x394"),
            ("window", "306x406"),
            ("fillet long", "316x416"),
            ("mat", "446x546"),
        ],
    ),
    (
        "metric_i_frame_fillet",
        &[("sight", "391x491"), ("seen", "379x479")],
    ),
    (
        "metric_j_liner",
        &[
            ("rabbet", "303x403"),
            ("sight", "291x391"),
            ("inner outside", "371x471"),
            ("outer rabbet", "374x474"),
            ("outside", "482x582"),
        ],
    ),
    (
        "metric_k_shadowbox",
        &[
            ("package", "262x212"),
            ("walls", "262,200"),
            ("stack", "40.5"),
            ("air", "7"),
        ],
    ),
    (
        "metric_l_textile",
        &[("board", "374x374"), ("package", "377x377"), ("air", "7.5")],
    ),
    (
        "metric_m_oval",
        &[("window", "188x238"), ("mat", "308x358")],
    ),
    (
        "metric_n_hexagon",
        &[("mitre", "30°"), ("sides", "196.88/203.80/231.52")],
    ),
    (
        "metric_n_octagon",
        &[("mitre", "22.5°"), ("sides", "141.25/146.22/166.10")],
    ),
    (
        "metric_o_stacked",
        &[
            ("inner outside", "231x281"),
            ("middle outside", "272x322"),
            ("outside", "357x407"),
        ],
    ),
    (
        "metric_p_double_sided",
        &[("mat", "300x387"), ("rabbet", "303x390"), ("stack", "7.5")],
    ),
];

#[test]
fn metric_examples() {
    let mut amiss = Vec::new();
    for (name, expected) in ROWS {
        let kind = if name.ends_with("too_deep") {
            "ex"
        } else {
            "ok"
        };
        let Came::Sized(sizes) = run(&folder(kind).join(format!("{name}.job.toml"))) else {
            panic!("{name} is sized");
        };
        for (quantity, value) in *expected {
            let found = read(&sizes, quantity);
            if found != *value {
                amiss.push(format!("{name}: {quantity} is {value}, found {found}"));
            }
        }
    }
    assert!(amiss.is_empty(), "{}", amiss.join("\n"));
}

fn mm(length: Length) -> String {
    length
        .exact(Unit::Millimetre)
        .trim_end_matches(" mm")
        .to_owned()
}

fn size(size: Size) -> String {
    format!("{}x{}", mm(size.width), mm(size.height))
}

fn list(lengths: impl IntoIterator<Item = Length>) -> String {
    lengths.into_iter().map(mm).collect::<Vec<_>>().join(",")
}

/// A quantity of the table, by the name it has above.
fn read(sizes: &Sizes, quantity: &str) -> String {
    let (first, last) = (&sizes.members[0], &sizes.members[sizes.members.len() - 1]);
    matted(sizes, quantity)
        .or_else(|| framed(last, quantity))
        .or_else(|| whole(sizes, quantity))
        .or_else(|| match quantity {
            "outer rabbet" => Some(size(first.rabbet.size())),
            "middle outside" => Some(size(sizes.members[1].outside.size())),
            _ => None,
        })
        .unwrap_or_else(|| format!("no such thing as {quantity}"))
}

fn matted(sizes: &Sizes, quantity: &str) -> Option<String> {
    let (top, inner): (&MatSizes, &MatSizes) = (sizes.mats.first()?, sizes.mats.last()?);
    let window = &inner.windows[0];
    Some(match quantity {
        "window" => size(window.face.size()),
        "foot" => size(window.foot.size()),
        "top" => size(top.windows[0].face.size()),
        "mat" => size(top.sheet.size.size()),
        "bottom" => mm(sizes.borders?.cut.bottom.value),
        "lefts" => list(top.windows.iter().map(|window| window.x.value)),
        "tops" => list(top.windows.iter().map(|window| window.y.value)),
        "gap" => {
            let art = sizes.art[0].largest.size();
            mm((window.foot.size().width - art.width).half_down())
        }
        "fillet sight" => size(window.fillet?.sight.size()),
        "fillet long" => size(window.fillet?.long.size()),
        _ => return None,
    })
}

fn framed(member: &MemberSizes, quantity: &str) -> Option<String> {
    let stack = member.stack.as_ref();
    Some(match quantity {
        "rabbet" => size(member.rabbet.size()),
        "sight" => size(member.sight?.size()),
        "inner outside" => size(member.outside.size()),
        "stick" => mm(member.stick.used.value),
        "stack" => mm(stack?.total.value),
        "slack" => mm(stack?.slack.value),
        "proud" => mm(stack?.proud.value),
        "clip" => mm(stack?.clip?.value),
        "ledge opening" => size(member.floater.as_ref()?.ledge_opening.size()),
        "setback" => mm(member.floater.as_ref()?.setback?.value),
        "mitre" => member.legs.mitre.value.to_string(),
        "sides" => {
            let leg = member.legs.each[0];
            let each = [leg.short, leg.rabbet, leg.long];
            each.map(|side| format!("{:.2}", side.value.approx_mm()))
                .join("/")
        }
        _ => return None,
    })
}

fn whole(sizes: &Sizes, quantity: &str) -> Option<String> {
    Some(match quantity {
        "package" => size(sizes.package.size()),
        "outside" => size(sizes.outside.size()),
        "seen" => size(sizes.seen().size()),
        "air" => mm(sizes.air?.value),
        "walls" => {
            let walls = sizes.walls.as_ref()?;
            list([walls.long.value, walls.short.value])
        }
        "board" => size(sizes.wrap.as_ref()?.board.size()),
        "lost" => {
            let (art, seen) = (sizes.art[0].largest.size(), sizes.seen().size());
            mm((art.width - seen.width).half_down())
        }
        "refused" => {
            let codes = sizes.faults.iter().map(|fault| fault.code);
            codes.collect::<Vec<_>>().join(",")
        }
        _ => return None,
    })
}

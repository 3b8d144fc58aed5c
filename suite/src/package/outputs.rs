//! From sizes to the columns of a table.

use std::collections::BTreeMap;

use measure::{Angle, Length, Size};
use sizing::{MemberSizes, Sizes, Window, WorkedSize};
use trade::{Arrangement, Job, Role};

use super::build::MAIN;
use super::row::Row;

/// A value found for a column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Found {
    Length(Length),
    Lengths(Vec<Length>),
    Angle(Angle),
    Count(i64),
    Text(String),
    Flags(Vec<&'static str>),
}

/// Every column the sizes have something to say about.
pub(super) fn read_out(row: &Row, job: &Job, sizes: &Sizes) -> BTreeMap<&'static str, Found> {
    let mut out = Out {
        polygon: row.kind() == "polygon",
        job,
        sizes,
        found: BTreeMap::new(),
    };
    out.windows();
    out.borders();
    out.openings(row);
    out.frames();
    out.sheets();
    out.depth();
    out.flags();
    out.found
}

struct Out<'a> {
    polygon: bool,
    job: &'a Job,
    sizes: &'a Sizes,
    found: BTreeMap<&'static str, Found>,
}

impl Out<'_> {
    fn put(&mut self, column: &'static str, length: Length) {
        self.found.insert(column, Found::Length(length));
    }

    fn pair(&mut self, width: &'static str, height: &'static str, size: WorkedSize) {
        self.put(width, size.width.value);
        self.put(height, size.height.value);
    }

    fn main(&self) -> Option<&MemberSizes> {
        self.sizes.members.iter().find(|member| member.name == MAIN)
    }

    fn windows(&mut self) {
        let (Some(top), Some(inner)) = (self.sizes.mats.first(), self.sizes.mats.last()) else {
            return;
        };
        let (Some(top_window), Some(window)) = (top.windows.first(), inner.windows.first()) else {
            return;
        };
        self.pair("inner_win_w", "inner_win_h", window.face);
        self.pair("top_win_w", "top_win_h", top_window.face);
        self.pair("foot_w", "foot_h", window.edge());
        self.cover(window);
        let seen = self.sizes.mats.iter().filter_map(|mat| mat.reveal_seen);
        let seen = seen.map(|seen| seen.value).collect();
        self.found.insert("reveal_seen", Found::Lengths(seen));
        self.pair("mat_w", "mat_h", top.sheet.size);
        self.stock();
        if let Some(fillet) = window.fillet {
            self.pair("fillet_sight_w", "fillet_sight_h", fillet.sight);
            self.pair("fillet_long_w", "fillet_long_h", fillet.long);
            self.put("fillet_len", inner.fillets[0].stick.used.value);
        }
    }

    /// How far the innermost window covers its art, or clears it.
    fn cover(&mut self, window: &Window) {
        let edge = window.edge();
        let art = &self.sizes.art[0];
        let largest = art.largest.size();
        let each_side = |outer: Size, inner: Size| {
            Size::new(
                (outer.width - inner.width).half_down(),
                (outer.height - inner.height).half_down(),
            )
        };
        if self.job.art[0].margin.is_some() {
            let gap = each_side(edge.size(), largest);
            self.put("float_gap_foot", gap.short_side());
            self.put("float_gap_foot_min_w", gap.width);
            self.put("float_gap_foot_min_h", gap.height);
        } else {
            self.put(
                "cover_foot",
                each_side(art.behind_window(), edge.size()).short_side(),
            );
            let most = each_side(largest, edge.size());
            self.put("cover_foot_max_w", most.width);
            self.put("cover_foot_max_h", most.height);
        }
    }

    /// The sheet the mat is cut from.
    fn stock(&mut self) {
        let stock = self.sizes.bill.iter().find_map(|line| match &line.takes {
            sizing::Takes::Sheet {
                stock: Some(stock), ..
            } if line.part.starts_with("Mat") => Some(*stock),
            _ => None,
        });
        let whole = |length: Length| length.exact_inches().trim_end_matches(" in").to_owned();
        let sheet = stock.map(|stock| format!("{}x{}", whole(stock.width), whole(stock.height)));
        self.found.insert(
            "mat_sheet",
            Found::Text(sheet.unwrap_or_else(|| "none".to_owned())),
        );
    }

    fn borders(&mut self) {
        let Some(borders) = self.sizes.borders else {
            return;
        };
        let cut = [
            "out_border_l",
            "out_border_r",
            "out_border_t",
            "out_border_b",
        ];
        for (column, (_, border)) in cut.into_iter().zip(borders.cut.named()) {
            self.put(column, border.value);
        }
        let visible = [
            "vis_border_l",
            "vis_border_r",
            "vis_border_t",
            "vis_border_b",
        ];
        for (column, (_, border)) in visible
            .into_iter()
            .zip(borders.visible.into_iter().flat_map(sizing::Sides::named))
        {
            self.put(column, border.value);
        }
    }

    /// Windows of the outermost mat: sizes, and places by column and row of a grid.
    fn openings(&mut self, row: &Row) {
        let Some(top) = self.sizes.mats.first() else {
            return;
        };
        let each = |pick: fn(&Window) -> Length| top.windows.iter().map(pick).collect::<Vec<_>>();
        let (mut xs, mut ys) = (each(|window| window.x.value), each(|window| window.y.value));
        if self
            .job
            .layout
            .as_ref()
            .is_some_and(|layout| layout.arrange == Arrangement::Grid)
        {
            for places in [&mut xs, &mut ys] {
                places.sort_unstable();
                places.dedup();
            }
        }
        self.found.insert("opening_xs", Found::Lengths(xs));
        self.found.insert("opening_ys", Found::Lengths(ys));
        if row.expected("opening_ws").is_some() || row.expected("opening_hs").is_some() {
            self.found.insert(
                "opening_ws",
                Found::Lengths(each(|window| window.face.width.value)),
            );
            self.found.insert(
                "opening_hs",
                Found::Lengths(each(|window| window.face.height.value)),
            );
        }
    }

    fn frames(&mut self) {
        let sizes = self.sizes;
        let Some(main) = self.main().cloned() else {
            return;
        };
        self.pair("package_w", "package_h", main.contents);
        self.pair("rabbet_size_w", "rabbet_size_h", main.rabbet);
        self.pair("outside_w", "outside_h", main.outside);
        if let Some(sight) = main.sight {
            self.pair("sight_w", "sight_h", sight);
        }
        if let Some(cover) = main.lip_cover {
            self.put("lip_cover", cover.value);
        }
        if let Some(floater) = &main.floater {
            self.pair("ledge_open_w", "ledge_open_h", floater.ledge_opening);
            if let Some(setback) = floater.setback {
                self.put("setback", setback.value);
            }
        }
        if let Some(fillet) = &main.fillet {
            self.pair("fillet_sight_w", "fillet_sight_h", fillet.sight);
            self.pair("fillet_long_w", "fillet_long_h", fillet.long);
            self.put("fillet_len", fillet.stick.used.value);
        }
        self.stick(&main);
        if self.polygon {
            let leg = main.legs.each[0];
            self.found
                .insert("mitre_deg", Found::Angle(main.legs.mitre.value));
            self.put("side_short", leg.short.value);
            self.put("side_rabbet", leg.rabbet.value);
            self.put("side_long", leg.long.value);
        }
        self.other_members();
        if sizes.mats.is_empty() && main.floater.is_none() {
            let (art, seen) = (sizes.art[0].largest.size(), sizes.seen().size());
            self.put("lost_per_side", (art.width - seen.width).half_down());
        }
    }

    /// What the main member takes of its moulding.
    fn stick(&mut self, main: &MemberSizes) {
        self.put("moulding_len", main.stick.used.value);
        if let Some(charge) = main.stick.charge {
            self.put("charge_len", charge.value);
        }
        if let Some(charged) = main.stick.charged {
            self.found.insert(
                "charge_ft",
                Found::Count(
                    charged
                        .value
                        .quanta()
                        .div_euclid(Length::inches(12).quanta()),
                ),
            );
        }
        let one = if main.stick.one_stick.value {
            "yes"
        } else {
            "no"
        };
        self.found.insert("one_stick", Found::Text(one.to_owned()));
    }

    fn other_members(&mut self) {
        let sizes = self.sizes;
        if let Some(liner) = sizes
            .members
            .iter()
            .find(|member| member.role == Role::Liner)
        {
            self.pair("liner_rabbet_size_w", "liner_rabbet_size_h", liner.rabbet);
            if let Some(sight) = liner.sight {
                self.pair("liner_sight_w", "liner_sight_h", sight);
            }
            self.pair("liner_long_w", "liner_long_h", liner.outside);
            self.put("liner_len", liner.stick.used.value);
        }
        if let Some(outer) = sizes
            .members
            .first()
            .filter(|member| member.name == "outer")
        {
            if let Some(sight) = outer.sight {
                self.pair("outer2_sight_w", "outer2_sight_h", sight);
            }
            self.pair("outer2_outside_w", "outer2_outside_h", outer.outside);
            self.put("outer2_len", outer.stick.used.value);
        }
    }

    fn sheets(&mut self) {
        let sizes = self.sizes;
        if let Some(pane) = sizes.glazing.first() {
            self.pair("glaz_w", "glaz_h", pane.sheet.size);
            if let Some(cover) = pane.cover {
                self.put("glaz_cover_min", cover.value);
            }
        }
        if let Some(back) = sizes.backing.first() {
            self.pair("back_w", "back_h", back.size);
        }
        if let Some(walls) = &sizes.walls {
            self.put("wall_long", walls.long.value);
            self.put("wall_short", walls.short.value);
        }
        if let Some(wrap) = &sizes.wrap {
            self.pair("board_w", "board_h", wrap.board);
        }
    }

    fn depth(&mut self) {
        if let Some(stack) = self.main().and_then(|main| main.stack.clone()) {
            self.put("stack", stack.total.value);
            self.put("slack", stack.slack.value);
            self.put("proud", stack.proud.value);
            if let Some(clip) = stack.clip {
                self.put("clip", clip.value);
            }
        }
        if let Some(air) = self.sizes.air {
            self.put("air", air.value);
        }
    }

    /// The flags of a table, by the fault that raises each at zero.
    fn flags(&mut self) {
        let flags = [
            ("stack.too_deep", "too deep"),
            ("air.none", "art on glazing"),
            ("glazing.can_drop", "glazing can drop"),
            ("spacer.shows", "spacer shows"),
            ("wall.shows", "wall shows"),
            ("layout.gutter", "gutter too narrow"),
            ("window.past_art", "window past art"),
            ("art.no_sheet", "window past art"),
            ("floater.ledge", "ledge too narrow"),
            ("stick.too_short", "stick too short"),
        ];
        let raised = |code: &str| self.sizes.faults.iter().any(|fault| fault.code == code);
        let found = flags
            .iter()
            .filter(|(code, _)| raised(code))
            .map(|(_, flag)| *flag)
            .collect();
        let mut found: Vec<&'static str> = found;
        found.dedup();
        self.found.insert("flags", Found::Flags(found));
    }
}

"""Seeded, plausible inputs for `package_cases.py`: twelve rows of every kind.

Rows 9 and 10 of each kind are in millimetres, the rest in inches. Each kind walks through
a list of situations (out of square, too deep, spacer too wide and so on), so every one of
them is met whatever the random numbers do.
"""

import random
from fractions import Fraction

SEED = 20240
ROWS_PER_KIND = 12
MM_ROWS = (9, 10)
INCH_SETTINGS = {
    "frame_allow": "1/8", "glaz_under": "0", "back_under": "0", "glaz_t": "3/32",
    "mount_t": "1/16", "back_t": "3/16", "tail": "1/8", "cut_allow": "1/8", "end_trim": "1",
    "ply": "1/16", "clips": "1/8|1/4|3/8|1/2|3/4|1", "min_gutter": "1/2", "land": "1/2",
}
MM_SETTINGS = {
    "frame_allow": "3", "glaz_under": "0", "back_under": "0", "glaz_t": "2",
    "mount_t": "1.5", "back_t": "2.5", "tail": "3", "cut_allow": "3", "end_trim": "25",
    "ply": "1.5", "clips": "3|6|10|13|20|25", "min_gutter": "12", "land": "12",
}


class Draw:
    """Random lengths in one row's own unit, and the row being filled."""

    def __init__(self, rng, kind, number):
        self.rng, self.kind, self.number = rng, kind, number
        self.metric = number in MM_ROWS
        self.settings = MM_SETTINGS if self.metric else INCH_SETTINGS
        self.row = {"kind": kind, "note": ""}

    def note(self, words):
        self.row["note"] = f"{self.row['note']}, {words}" if self.row["note"] else words

    def number_of(self, text):
        return sum(Fraction(part) for part in text.split())

    def between(self, low, high, step=Fraction(1, 16)):
        """A length between two inch figures: on `step` inches, or on whole millimetres."""
        if self.metric:
            return Fraction(self.rng.randint(round(low * Fraction(127, 5)), round(high * Fraction(127, 5))))
        return self.rng.randint(round(low / step), round(high / step)) * step

    def text(self, value):
        value = Fraction(value)
        if self.metric:
            number = f"{float(value):g}"
            return number if number == "0" else number + " mm"
        sign, (whole, part) = "-" if value < 0 else "", divmod(abs(value), 1)
        return sign + (f"{whole} {part}" if whole and part else f"{part or whole}")

    def put(self, name, value):
        self.row[name] = self.text(value)

    def draw(self, name, low, high, step=Fraction(1, 16)):
        value = self.between(low, high, step)
        self.put(name, value)
        return value

    def setting(self, *names):
        for name in names:
            self.put(name, self.number_of(self.settings[name]))

    def pick(self, *values):
        return self.rng.choice(values)

    def drop(self, name):
        self.row.pop(name, None)


EIGHTH, QUARTER, HALF = Fraction(1, 8), Fraction(1, 4), Fraction(1, 2)


def put_art(d, low=5, high=18):
    return d.draw("art_w", low, high, EIGHTH), d.draw("art_h", low, high, EIGHTH)


def out_of_square(d):
    d.note("out of square")
    for axis in "wh":
        least = d.number_of(d.row[f"art_{axis}"].removesuffix(" mm"))
        d.put(f"art_{axis}_max", least + d.between(0, QUARTER))


def put_frame(d, face=(HALF, 3), lip=(QUARTER, HALF)):
    d.setting("frame_allow", "cut_allow", "end_trim")
    d.draw("rabbet_w", *lip)
    d.draw("face_w", *face, EIGHTH)
    stick = 2700 if d.metric else d.pick(96, 108, 120, 144)
    d.put("stick_len", stick)


def put_stack(d, depth=(1, Fraction(5, 4))):
    d.setting("glaz_under", "back_under", "glaz_t", "mount_t", "back_t", "tail")
    d.put("spacer_t", 0)
    d.put("art_t", 0)
    d.draw("rabbet_d", *depth)


def put_mats(d, layers):
    ply = d.number_of(d.settings["ply"])
    plies = [ply * d.pick(1, 1, 2) for _ in range(layers)]
    d.row["mat_ts"] = "|".join(d.text(t) for t in plies)
    reveals = [d.between(Fraction(3, 16), HALF) for _ in range(layers - 1)]
    d.row["reveals"] = "|".join(d.text(r) for r in reveals)
    d.row["bevel"] = "45"


def put_borders(d):
    even = d.between(2, Fraction(7, 2), EIGHTH)
    style = d.pick("even", "weighted", "unequal")
    for side in "lrtb":
        value = even
        if style == "weighted" and side == "b":
            value += d.between(QUARTER, 1, EIGHTH)
        if style == "unequal":
            value = d.between(Fraction(3, 2), 4, EIGHTH)
        d.put(f"border_{side}", value)


def put_mat_job(d, art=(5, 18)):
    """The inputs every matted kind shares; one to four mats by row number."""
    put_art(d, *art)
    put_mats(d, 1 if d.kind == "double_sided" else (1, 2, 3, 4)[d.number % 4])
    d.draw("overlap", EIGHTH, Fraction(3, 8))
    put_borders(d)
    put_frame(d)
    put_stack(d)


def trouble_undersize(d):
    d.note("glazing and backing cut small")
    d.draw("glaz_under", Fraction(1, 16), EIGHTH)
    d.draw("back_under", Fraction(1, 16), EIGHTH)


def trouble_fall(d):
    d.note("glazing can fall past the lip")
    d.draw("rabbet_w", Fraction(3, 16), QUARTER)
    d.draw("glaz_under", EIGHTH, QUARTER)


def trouble_deep(d):
    d.note("rabbet too shallow")
    d.draw("rabbet_d", QUARTER, Fraction(5, 16))


def trouble_thick(d):
    d.note("thick art")
    d.draw("art_t", Fraction(1, 32), QUARTER, Fraction(1, 32))


def trouble_past(d):
    d.note("window reaches past the art")
    d.put("overlap", d.pick(Fraction(-1), 0, 0) * d.between(EIGHTH, QUARTER) - d.between(EIGHTH, QUARTER))


def trouble_margin(d):
    d.note("print margin shown outside the image")
    d.put("overlap", -d.between(EIGHTH, HALF))
    for axis in "wh":
        image = d.number_of(d.row[f"art_{axis}"].removesuffix(" mm"))
        d.put(f"sheet_{axis}", image + d.between(Fraction(3, 2), 3))


def trouble_sheet_edge(d):
    d.note("shown margin runs past the sheet")
    trouble_margin(d)
    d.put("overlap", -d.between(Fraction(7, 4), 2))


def trouble_stick(d):
    d.note("sticks too short for the long leg")
    d.put("stick_len", 300 if d.metric else d.pick(8, 10, 12))


def trouble_spacer(d):
    d.note("spacer under the mat")
    d.draw("spacer_t", EIGHTH, HALF)


def trouble_big(d):
    d.note("needs a larger sheet")
    d.put("art_w", d.between(26, 34))
    d.put("art_h", d.between(34, 48))


MAT_TROUBLES = (
    None, trouble_margin, trouble_undersize, out_of_square, trouble_big, trouble_thick,
    trouble_past, trouble_deep, trouble_stick, None, out_of_square, trouble_fall,
)


def mat_row(d):
    put_mat_job(d)
    follow(d, MAT_TROUBLES)
    if d.number == 0:
        trouble_sheet_edge(d)


def follow(d, troubles):
    trouble = troubles[d.number % len(troubles)]
    if trouble:
        trouble(d)


def grid_row(d):
    put_mat_job(d, (3, 7))
    cols, rows = d.pick((2, 2), (3, 1), (1, 3), (2, 3), (4, 2), (1, 1))
    d.row["cols"], d.row["rows"] = str(cols), str(rows)
    d.draw("gutter_x", HALF, Fraction(3, 2))
    d.draw("gutter_y", HALF, Fraction(3, 2))
    d.setting("min_gutter")
    if d.number % 4 == 1:
        d.note("gutter under the least")
        d.draw(d.pick("gutter_x", "gutter_y"), QUARTER, Fraction(7, 16))
    if rows == 1:
        d.put("gutter_y", 0)
    if cols == 1:
        d.put("gutter_x", 0)
    follow(d, (None, trouble_undersize, None, trouble_past, out_of_square, None,
               trouble_thick, trouble_deep, None, None, None, trouble_stick))


def row_unequal_row(d):
    put_mat_job(d)
    for name in ("art_w", "art_h", "reveals"):
        d.drop(name)
    put_mats(d, 1)
    pairs = [(d.between(3, 8, QUARTER), d.between(4, 10, QUARTER)) for _ in range(d.pick(2, 3, 4))]
    d.row["openings"] = "|".join(f"{d.text(w)}x{d.text(h)}" for w, h in pairs)
    d.draw("gutter_x", HALF, Fraction(3, 2))
    d.setting("min_gutter")
    if d.number % 3 == 1:
        d.note("gutter under the least")
        d.draw("gutter_x", EIGHTH, Fraction(7, 16))
    follow(d, (None, trouble_spacer, trouble_undersize, trouble_past, trouble_thick, trouble_deep,
               trouble_stick, trouble_fall, None, None, None, None))


def float_window_row(d):
    put_mat_job(d)
    d.drop("overlap")
    d.draw("float_margin", Fraction(3, 8), 1)
    d.draw("lift_t", 0, Fraction(1, 16), Fraction(1, 32))
    d.draw("spacer_t", 0, QUARTER)
    d.draw("rabbet_d", 1, Fraction(3, 2))
    follow(d, (out_of_square, trouble_thick, trouble_undersize, None, trouble_big, out_of_square,
               None, trouble_deep, trouble_stick, out_of_square, None, trouble_fall))
    if d.number in (3, 6):
        d.note("art stands above the mats")
        d.draw("art_t", HALF, 1)


def float_no_mat_row(d):
    put_art(d)
    put_frame(d)
    put_stack(d)
    d.draw("float_margin", QUARTER, 1)
    d.draw("spacer_w", Fraction(1, 16), EIGHTH)
    d.draw("spacer_t", QUARTER, HALF)
    d.draw("lift_t", 0, EIGHTH)
    follow(d, (out_of_square, trouble_thick, trouble_undersize, trouble_deep, trouble_stick,
               out_of_square, wide_spacer, thick_float, trouble_fall, None, out_of_square, None))


def wide_spacer(d):
    d.note("spacer wider than the lip hides")
    d.draw("spacer_w", Fraction(7, 16), HALF)


def thick_float(d):
    d.note("art as high as its spacer")
    d.put("lift_t", 0)
    d.row["art_t"] = d.row["spacer_t"]


def full_bleed_row(d):
    put_art(d, 5, 24)
    put_frame(d)
    put_stack(d)
    d.draw("spacer_w", Fraction(1, 16), EIGHTH)
    d.draw("spacer_t", Fraction(1, 16), QUARTER)
    follow(d, (None, wide_spacer, trouble_undersize, trouble_deep, trouble_stick, trouble_fall,
               no_spacer, trouble_thick, None, None, wide_spacer, None))


def no_spacer(d):
    d.note("no spacer")
    d.put("spacer_t", 0)
    d.drop("spacer_w")


def fit_row(d):
    put_mat_job(d, (5, 12))
    for side in "lrtb":
        d.drop(f"border_{side}")
    d.draw("given_rabbet_w", 18, 26, QUARTER)
    d.draw("given_rabbet_h", 20, 28, QUARTER)
    d.draw("bottom_extra", 0, 1, EIGHTH)
    follow(d, MAT_TROUBLES[:4] + (None,) + MAT_TROUBLES[5:])


def visible_border_row(d):
    put_mat_job(d)
    for side in "lrtb":
        d.drop(f"border_{side}")
    d.draw("vis_border", Fraction(3, 2), 4)
    d.draw("bottom_extra", 0, 1, EIGHTH)
    follow(d, MAT_TROUBLES)


def niche_row(d):
    put_mat_job(d, (5, 12))
    for side in "lrtb":
        d.drop(f"border_{side}")
    d.draw("given_outside_w", 22, 28, QUARTER)
    d.draw("given_outside_h", 24, 30, QUARTER)
    d.draw("bottom_extra", 0, 1, EIGHTH)
    follow(d, MAT_TROUBLES[:4] + (None,) + MAT_TROUBLES[5:])


def canvas_row(d):
    put_art(d, 8, 36)
    put_frame(d, face=(1, 3))
    d.put("frame_allow", 6 if d.metric else QUARTER)
    d.draw("art_t", Fraction(3, 4), Fraction(7, 4))
    d.draw("rabbet_d", Fraction(3, 8), Fraction(5, 8))
    d.put("tail", 0)
    d.row["clips"] = "|".join(d.text(d.number_of(c)) for c in d.settings["clips"].split("|"))
    follow(d, (None, out_of_square, no_clips, deep_rabbet, odd_clips, trouble_stick,
               out_of_square, odd_clips, canvas_tail, None, out_of_square, no_clips))


def no_clips(d):
    d.note("no clips in stock")
    d.drop("clips")


def odd_clips(d):
    d.note("clips out of order")
    sizes = d.row["clips"].split("|")
    d.rng.shuffle(sizes)
    d.row["clips"] = "|".join(sizes)


def deep_rabbet(d):
    d.note("canvas sits below the rabbet wall")
    d.draw("rabbet_d", Fraction(15, 8), 2)


def canvas_tail(d):
    d.note("bare wall kept")
    d.put("tail", EIGHTH)


def floater_row(d):
    put_art(d, 8, 40)
    d.setting("cut_allow", "end_trim")
    gap = d.draw("floater_gap", EIGHTH, HALF)
    d.draw("floater_top", QUARTER, Fraction(3, 4))
    land = d.number_of(d.settings["land"])
    d.put("ledge_land", land)
    d.put("floater_ledge", gap + land + d.between(0, HALF))
    d.draw("art_t", Fraction(3, 4), Fraction(3, 2))
    d.draw("rabbet_d", Fraction(25, 16), 2)
    d.put("stick_len", 2700 if d.metric else d.pick(108, 120, 144))
    follow(d, (None, small_ledge, out_of_square, trouble_stick, None, small_ledge))


def small_ledge(d):
    d.note("ledge too small for the screws")
    gap = d.number_of(d.row["floater_gap"].removesuffix(" mm"))
    d.put("floater_ledge", gap + d.between(QUARTER, Fraction(7, 16)))


def mat_fillet_row(d):
    put_mat_job(d)
    d.draw("fillet_face", EIGHTH, HALF)
    d.draw("fillet_tuck", EIGHTH, QUARTER)
    d.draw("fillet_t", Fraction(1, 16), QUARTER)
    follow(d, (None, out_of_square, trouble_undersize, trouble_deep, trouble_thick, trouble_big,
               trouble_stick, trouble_fall, trouble_past, None, out_of_square, None))


def frame_fillet_row(d):
    full_bleed_row(d)
    d.drop("spacer_w")
    if "wider" in d.row["note"]:
        d.row["note"] = ""
    d.draw("fillet_face", EIGHTH, HALF)
    d.draw("fillet_t", EIGHTH, QUARTER)


def liner_row(d):
    put_art(d, 6, 24)
    put_frame(d, face=(1, 3))
    d.setting("frame_allow")
    d.put("liner_allow", d.number_of(d.settings["frame_allow"]))
    d.draw("liner_rabbet_w", Fraction(3, 16), Fraction(3, 8))
    d.draw("liner_face", HALF, 2, EIGHTH)
    follow(d, (None, None, trouble_stick, None))


def stacked_row(d):
    liner_row(d)
    d.put("outer2_allow", d.number_of(d.settings["frame_allow"]) * d.pick(1, 2))
    d.draw("outer2_rabbet_w", QUARTER, HALF)
    d.draw("outer2_face", 1, 3, EIGHTH)


def shadowbox_row(d):
    put_art(d, 6, 20)
    put_frame(d, lip=(Fraction(5, 16), HALF))
    put_stack(d)
    d.drop("spacer_t")
    d.drop("art_t")
    d.draw("wall_t", EIGHTH, QUARTER)
    high = d.draw("wall_h", Fraction(3, 4), 2, EIGHTH)
    d.put("object_d", high - d.between(QUARTER, HALF))
    d.draw("rabbet_d", Fraction(11, 4), 3)
    follow(d, (None, thick_wall, trouble_undersize, trouble_deep, tall_object, trouble_stick,
               thick_wall, trouble_fall, None, None, None, None))


def thick_wall(d):
    d.note("wall thicker than the lip covers")
    d.draw("wall_t", HALF, Fraction(3, 4))


def tall_object(d):
    d.note("object reaches the glass")
    d.row["object_d"] = d.row["wall_h"]


def polygon_row(d):
    d.draw("art_w", 10, 24, EIGHTH)
    d.row["sides"] = str((3, 5, 6, 7, 8, 12)[d.number % 6])
    put_frame(d)
    d.setting("back_under", "tail")
    d.draw("art_t", EIGHTH, QUARTER)
    d.put("mount_t", 0)
    d.draw("back_t", EIGHTH, QUARTER)
    d.draw("rabbet_d", HALF, 1)
    follow(d, (None, None, None, shallow_polygon, polygon_back, trouble_stick))


def shallow_polygon(d):
    d.note("rabbet too shallow")
    d.put("art_t", d.between(QUARTER, HALF))
    d.put("rabbet_d", d.between(Fraction(5, 16), Fraction(3, 8)))


def polygon_back(d):
    d.note("backing cut small")
    d.draw("back_under", Fraction(1, 16), EIGHTH)


def textile_row(d):
    put_art(d)
    put_frame(d)
    put_stack(d)
    d.draw("board_margin", QUARTER, 1)
    d.draw("wrap_t", Fraction(1, 32), EIGHTH, Fraction(1, 32))
    d.draw("spacer_w", Fraction(1, 16), EIGHTH)
    d.draw("spacer_t", QUARTER, HALF)
    d.draw("art_t", Fraction(1, 32), Fraction(3, 32), Fraction(1, 32))
    follow(d, (None, wide_spacer, trouble_undersize, trouble_deep, thick_textile, trouble_stick,
               trouble_fall, None, None, None, None, None))


def thick_textile(d):
    d.note("textile as high as its spacer")
    d.row["art_t"] = d.row["spacer_t"]


def oval_row(d):
    put_mat_job(d)
    follow(d, MAT_TROUBLES)


def double_sided_row(d):
    put_mat_job(d)
    for name in ("back_under", "mount_t", "back_t", "spacer_t", "reveals"):
        d.drop(name)
    d.put("tail", 6 if d.metric else QUARTER)
    d.draw("art_t", 0, EIGHTH, Fraction(1, 32))
    follow(d, (None, trouble_margin, out_of_square, trouble_deep, trouble_big, trouble_stick,
               trouble_past, trouble_fall, None, None, out_of_square, None))


DRAWERS = {
    "mat": mat_row, "grid": grid_row, "row_unequal": row_unequal_row,
    "float_window": float_window_row, "float_no_mat": float_no_mat_row,
    "full_bleed": full_bleed_row, "fit_given_frame": fit_row,
    "visible_border": visible_border_row, "niche": niche_row, "canvas": canvas_row,
    "floater": floater_row, "mat_fillet": mat_fillet_row, "frame_fillet": frame_fillet_row,
    "liner": liner_row, "shadowbox": shadowbox_row, "polygon": polygon_row,
    "textile": textile_row, "oval": oval_row, "stacked": stacked_row,
    "double_sided": double_sided_row,
}


def draw_cases():
    """Every drawn row, as a mapping of the input columns it fills."""
    rng = random.Random(SEED)
    rows = []
    for kind, drawer in DRAWERS.items():
        for number in range(ROWS_PER_KIND):
            d = Draw(rng, kind, number)
            drawer(d)
            if d.metric:
                d.note("written in millimetres")
            rows.append({"id": f"Q{len(rows) + 1:03}"} | d.row)
    return rows

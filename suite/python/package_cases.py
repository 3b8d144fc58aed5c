"""Frame package sizes worked a second time, from the trade handbook's formulas alone.

    python package_cases.py check CASES.csv      recompute every row and compare
    python package_cases.py write OUT.csv        write the seeded cases with their answers

Lengths are exact inches (`Fraction`); a cell may also be written in millimetres,
`200 mm`, at 25.4 mm to the inch exactly. Only polygon sides and angles are decimals,
rounded to four places. This program shares no code with the one it checks.

Two things the handbook leaves open are fixed here so that the file says one thing. Lists of
mats and reveals run from the top mat down, the order in which the windows are cut. The
columns `float_gap_foot_min_w` and `_h` stay blank: the handbook does not say whether "min"
is the smallest gap or the gap at the smaller reading of a sheet out of square.
"""

import csv
import math
import sys
from fractions import Fraction

from package_draw import draw_cases

INPUTS = (
    "id,kind,note,art_w,art_h,art_w_max,art_h_max,sheet_w,sheet_h,overlap,float_margin,"
    "reveals,mat_ts,bevel,border_l,border_r,border_t,border_b,vis_border,given_rabbet_w,"
    "given_rabbet_h,given_outside_w,given_outside_h,bottom_extra,cols,rows,gutter_x,"
    "gutter_y,min_gutter,openings,fillet_face,fillet_tuck,fillet_t,liner_allow,"
    "liner_rabbet_w,liner_face,outer2_allow,outer2_rabbet_w,outer2_face,wall_t,wall_h,"
    "object_d,board_margin,wrap_t,floater_gap,floater_top,floater_ledge,ledge_land,sides,"
    "frame_allow,glaz_under,back_under,rabbet_w,face_w,rabbet_d,glaz_t,spacer_w,spacer_t,"
    "lift_t,art_t,mount_t,back_t,tail,clips,stick_len,cut_allow,end_trim"
).split(",")

OUTPUTS = (
    "inner_win_w,inner_win_h,top_win_w,top_win_h,foot_w,foot_h,cover_foot,"
    "cover_foot_max_w,cover_foot_max_h,float_gap_foot,float_gap_foot_min_w,"
    "float_gap_foot_min_h,reveal_seen,out_border_l,out_border_r,out_border_t,out_border_b,"
    "mat_w,mat_h,mat_sheet,opening_ws,opening_hs,opening_xs,opening_ys,fillet_sight_w,"
    "fillet_sight_h,fillet_long_w,fillet_long_h,liner_rabbet_size_w,liner_rabbet_size_h,"
    "liner_sight_w,liner_sight_h,liner_long_w,liner_long_h,wall_long,wall_short,board_w,"
    "board_h,ledge_open_w,ledge_open_h,setback,mitre_deg,side_short,side_rabbet,side_long,"
    "package_w,package_h,glaz_w,glaz_h,back_w,back_h,rabbet_size_w,rabbet_size_h,sight_w,"
    "sight_h,outside_w,outside_h,outer2_sight_w,outer2_sight_h,outer2_outside_w,"
    "outer2_outside_h,lip_cover,glaz_cover_min,lost_per_side,vis_border_l,vis_border_r,"
    "vis_border_t,vis_border_b,moulding_len,fillet_len,liner_len,outer2_len,charge_len,"
    "charge_ft,one_stick,stack,slack,proud,clip,air,flags"
).split(",")

MM = Fraction(10, 254)
BORDERS = ("l", "r", "t", "b")
SHEETS = ((32, 40), (40, 60), (48, 96))
WINDOW_KINDS = {
    "mat", "grid", "oval", "visible_border", "fit_given_frame", "niche",
    "mat_fillet", "double_sided", "float_window",
}
MAT_KINDS = WINDOW_KINDS | {"row_unequal"}
GLAZED_KINDS = MAT_KINDS | {
    "float_no_mat", "full_bleed", "frame_fillet", "shadowbox", "textile",
}
WHOLE_RABBET_KINDS = {"canvas", "floater"}
FLOATED_KINDS = {"float_window", "float_no_mat"}

FLAG_DEEP = "too deep"
FLAG_AIR = "art on glazing"
FLAG_GLAZING = "glazing can drop"
FLAG_SPACER = "spacer shows"
FLAG_WALL = "wall shows"
FLAG_GUTTER = "gutter too narrow"
FLAG_PAST = "window past art"
FLAG_LEDGE = "ledge too narrow"
FLAG_STICK = "stick too short"


def parse(text):
    """One length or count: `7 3/4`, `-1/4`, `1.5 mm`. Returns inches, or None if blank."""
    text = text.strip()
    if not text:
        return None
    if text.endswith("mm"):
        return parse(text[:-2]) * MM
    sign = -1 if text.startswith("-") else 1
    return sign * sum(Fraction(part) for part in text.lstrip("-").split())


def parse_list(text):
    return [parse(part) for part in text.split("|")] if text.strip() else []


def parse_pairs(text):
    """`5x7|8x10` as a list of (width, height)."""
    return [tuple(parse(side) for side in pair.split("x")) for pair in text.split("|")]


def show(value):
    """An exact inch figure as whole, fraction, or whole and fraction."""
    value = Fraction(value)
    sign = "-" if value < 0 else ""
    whole, part = divmod(abs(value), 1)
    if part == 0:
        return f"{sign}{whole}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def show_list(values):
    return "|".join(show(value) for value in values)


class Case:
    """One row: inputs by name as `Fraction` (blank counts as zero), outputs as text."""

    def __init__(self, row):
        self.row = row
        self.kind = row["kind"]
        self.out = {}
        self.flags = []
        self.mat_ts = parse_list(row["mat_ts"])
        self.reveals = parse_list(row["reveals"])

    def has(self, name):
        return bool(self.row[name].strip())

    def get(self, name):
        return parse(self.row[name]) or Fraction(0)

    def pair(self, stem):
        return [self.get(stem + "_w"), self.get(stem + "_h")]

    def put(self, name, value):
        self.out[name] = show(value)

    def put_pair(self, stem, pair):
        self.put(stem + "_w", pair[0])
        self.put(stem + "_h", pair[1])

    def flag(self, name, fires):
        if fires:
            self.flags.append(name)

    def largest_art(self):
        """Readings for a float, canvas or floater: the larger of the two taken."""
        return [
            self.get(f"art_{axis}_max") if self.has(f"art_{axis}_max") else self.get(f"art_{axis}")
            for axis in "wh"
        ]


def grow(pair, amount):
    return [side + amount for side in pair]


def sheet_for(size):
    for low, high in SHEETS:
        if min(size) <= low and max(size) <= high:
            return f"{low}x{high}"
    return ""


def foot_flag(case, foot, art):
    """The window's lower edge must stay on the art, or on the sheet when its margin shows."""
    edge = case.pair("sheet") if case.has("sheet_w") else art
    case.flag(FLAG_PAST, any(f >= e for f, e in zip(foot, edge)))
    return edge


def work_window(case):
    """Inner window, foot, cover and top window of a one-shape mat. Returns the top window."""
    art = case.pair("art")
    if case.kind == "float_window":
        inner = grow(case.largest_art(), 2 * case.get("float_margin"))
    else:
        inner = grow(art, -2 * case.get("overlap"))
    if case.kind == "mat_fillet":
        foot = inner
        case.put_pair("fillet_sight", foot)
        inner = grow(foot, 2 * case.get("fillet_face"))
        long_point = grow(inner, 2 * case.get("fillet_tuck"))
        case.put_pair("fillet_long", long_point)
        case.put("fillet_len", stick_used(case, long_point))
    else:
        foot = grow(inner, -2 * case.mat_ts[-1])
    top = grow(inner, 2 * sum(case.reveals))
    case.put_pair("inner_win", inner)
    case.put_pair("top_win", top)
    case.put_pair("foot", foot)
    if case.reveals:
        seen = [reveal - t for reveal, t in zip(case.reveals, case.mat_ts)]
        case.out["reveal_seen"] = show_list(seen)
    work_cover(case, art, foot)
    return top


def work_cover(case, art, foot):
    out_of_square = case.has("art_w_max")
    largest = case.largest_art()
    if case.kind == "float_window":
        case.put("float_gap_foot", min(f - a for f, a in zip(foot, largest)) / 2)
        return
    edge = foot_flag(case, foot, art)
    case.put("cover_foot", min(e - f for e, f in zip(edge, foot)) / 2)
    if out_of_square:
        case.put_pair("cover_foot_max", [(a - f) / 2 for f, a in zip(foot, largest)])


def given_borders(case):
    return [case.get(f"border_{side}") for side in BORDERS]


def leftover_borders(case, package, window):
    across = (package[0] - window[0]) / 2
    top = (package[1] - window[1] - case.get("bottom_extra")) / 2
    return [across, across, top, top + case.get("bottom_extra")]


def around(window, borders):
    left, right, top, bottom = borders
    return [window[0] + left + right, window[1] + top + bottom]


def work_grid(case, top, borders):
    """Many equal windows: outside of the windows taken together, gutters included."""
    block = []
    for axis, (side, count, gutter, first) in enumerate(
        (("x", "cols", "gutter_x", borders[0]), ("y", "rows", "gutter_y", borders[2]))
    ):
        number, gap = int(case.get(count)), case.get(gutter)
        starts = [first + i * (top[axis] + gap) for i in range(number)]
        case.out[f"opening_{side}s"] = show_list(starts)
        block.append(number * top[axis] + (number - 1) * gap)
        case.flag(FLAG_GUTTER, number > 1 and gap < case.get("min_gutter"))
    return block


def work_row(case, borders):
    """Windows of unlike size in one row, centred on one line. Returns their common block."""
    arts = parse_pairs(case.row["openings"])
    cover, gap = case.get("overlap"), case.get("gutter_x")
    windows = [grow(art, -2 * cover) for art in arts]
    tallest = max(height for _, height in windows)
    lefts, at = [], borders[0]
    for width, _ in windows:
        lefts.append(at)
        at += width + gap
    case.out["opening_ws"] = show_list(width for width, _ in windows)
    case.out["opening_hs"] = show_list(height for _, height in windows)
    case.out["opening_xs"] = show_list(lefts)
    case.out["opening_ys"] = show_list(borders[2] + (tallest - h) / 2 for _, h in windows)
    case.flag(FLAG_GUTTER, len(arts) > 1 and gap < case.get("min_gutter"))
    feet = [grow(window, -2 * case.mat_ts[-1]) for window in windows]
    case.flag(FLAG_PAST, any(f >= a for foot, art in zip(feet, arts) for f, a in zip(foot, art)))
    return [sum(width for width, _ in windows) + (len(windows) - 1) * gap, tallest]


def work_mat(case, lip_cover):
    """Window, borders and mat outside. Returns the package (which is the mat's outside)."""
    allow = case.get("frame_allow")
    borders = given_borders(case)
    top = work_row(case, borders) if case.kind == "row_unequal" else work_window(case)
    if case.kind == "grid":
        top = work_grid(case, top, borders)
    if case.kind == "fit_given_frame":
        borders = leftover_borders(case, grow(case.pair("given_rabbet"), -allow), top)
    elif case.kind == "niche":
        inward = 2 * case.get("rabbet_w") - 2 * case.get("face_w") - allow
        borders = leftover_borders(case, grow(case.pair("given_outside"), inward), top)
    elif case.kind == "visible_border":
        borders = [case.get("vis_border") + lip_cover] * 4
        borders[3] += case.get("bottom_extra")
    outer = around(top, borders)
    for side, border in zip(BORDERS, borders):
        case.put(f"out_border_{side}", border)
        case.put(f"vis_border_{side}", border - lip_cover)
    case.put_pair("mat", outer)
    case.out["mat_sheet"] = sheet_for(outer)
    return outer


def work_liner(case):
    rabbet = grow(case.pair("art"), case.get("liner_allow"))
    sight = grow(rabbet, -2 * case.get("liner_rabbet_w"))
    outside = grow(sight, 2 * case.get("liner_face"))
    case.put_pair("liner_rabbet_size", rabbet)
    case.put_pair("liner_sight", sight)
    case.put_pair("liner_long", outside)
    case.put("liner_len", stick_used(case, outside))
    return outside


def work_package(case, lip_cover):
    """The package's width and height, by kind."""
    art = case.pair("art")
    if case.kind in MAT_KINDS:
        return work_mat(case, lip_cover)
    if case.kind == "float_no_mat":
        sight = grow(case.largest_art(), 2 * case.get("float_margin"))
        return grow(sight, 2 * case.get("rabbet_w") - case.get("frame_allow"))
    if case.kind in WHOLE_RABBET_KINDS:
        return case.largest_art()
    if case.kind in ("liner", "stacked"):
        return work_liner(case)
    if case.kind == "shadowbox":
        package = grow(art, 2 * case.get("wall_t"))
        case.put("wall_long", max(package))
        case.put("wall_short", min(art))
        case.flag(FLAG_WALL, case.get("wall_t") > lip_cover)
        return package
    if case.kind == "textile":
        board = grow(art, 2 * case.get("board_margin"))
        case.put_pair("board", board)
        return grow(board, 2 * case.get("wrap_t"))
    return art


def stick_used(case, outside):
    return 2 * sum(outside) + 4 * case.get("cut_allow") + case.get("end_trim")


def put_lengths(case, package, outside, face):
    length = stick_used(case, outside)
    charge = 2 * sum(package) + 8 * face
    case.put("moulding_len", length)
    case.put("charge_len", charge)
    case.put("charge_ft", math.ceil(charge / 12))
    put_sticks(case, length, max(outside))


def put_sticks(case, length, longest):
    stick = case.get("stick_len")
    case.out["one_stick"] = "yes" if length <= stick else "no"
    case.flag(FLAG_STICK, longest + case.get("cut_allow") + case.get("end_trim") > stick)


def work_frame(case, package, lip_cover):
    """Rabbet, sight and outside; what the lip covers; glazing and backing."""
    rabbet = grow(package, case.get("frame_allow"))
    sight = grow(rabbet, -2 * case.get("rabbet_w"))
    outside = grow(sight, 2 * case.get("face_w"))
    case.put_pair("rabbet_size", rabbet)
    case.put_pair("sight", sight)
    case.put_pair("outside", outside)
    case.put("lip_cover", lip_cover)
    if case.kind in GLAZED_KINDS:
        room = case.get("rabbet_w") - case.get("frame_allow")
        case.put_pair("glaz", grow(package, -case.get("glaz_under")))
        if case.kind != "double_sided":
            case.put_pair("back", grow(package, -case.get("back_under")))
        case.put("glaz_cover_min", room - case.get("glaz_under"))
        case.flag(FLAG_GLAZING, room - case.get("glaz_under") <= 0)
        case.flag(FLAG_SPACER, case.has("spacer_w") and case.get("spacer_w") > room)
    if case.kind in ("full_bleed", "canvas"):
        case.put("lost_per_side", lip_cover)
    if case.kind in ("liner", "stacked"):
        case.put("lost_per_side", case.get("liner_rabbet_w") - case.get("liner_allow") / 2)
    if case.kind == "frame_fillet":
        case.put("lost_per_side", lip_cover + case.get("fillet_face"))
        case.put_pair("fillet_sight", grow(sight, -2 * case.get("fillet_face")))
        case.put_pair("fillet_long", package)
        case.put("fillet_len", stick_used(case, package))
    if case.kind == "stacked":
        inner = case.get("outer2_allow") - 2 * case.get("outer2_rabbet_w")
        outer2 = grow(outside, inner)
        case.put_pair("outer2_sight", outer2)
        outer2 = grow(outer2, 2 * case.get("outer2_face"))
        case.put_pair("outer2_outside", outer2)
        case.put("outer2_len", stick_used(case, outer2))
    put_lengths(case, package, outside, case.get("face_w"))


def stack_and_air(case):
    """Total thickness in line, and the air between art and glazing (None: no glazing).

    Art under a mat, or reaching the package edge, lies in line and leaves the air alone.
    Art standing free inside a window or spacers takes from the air, not from the stack.
    """
    get, mats = case.get, sum(case.mat_ts)
    behind = get("mount_t") + get("back_t")
    if case.kind in ("canvas", "polygon"):
        return get("art_t") + behind, None
    if case.kind == "shadowbox":
        return get("glaz_t") + get("wall_h") + behind, get("wall_h") - get("object_d")
    if case.kind == "double_sided":
        return 2 * get("glaz_t") + 2 * mats + get("art_t"), mats
    if case.kind in FLOATED_KINDS or case.kind == "textile":
        above = get("spacer_t") + mats
        return get("glaz_t") + above + behind, above - get("lift_t") - get("art_t")
    above = get("spacer_t") + mats
    if case.kind == "mat_fillet":
        above += get("fillet_t")
    stack = get("glaz_t") + above + get("art_t") + behind
    if case.kind == "frame_fillet":
        stack += get("fillet_t")
    return stack, above


def work_depth(case):
    stack, air = stack_and_air(case)
    slack = case.get("rabbet_d") - stack - case.get("tail")
    proud = max(Fraction(0), stack - case.get("rabbet_d"))
    case.put("stack", stack)
    case.put("slack", slack)
    case.put("proud", proud)
    clips = parse_list(case.row["clips"])
    fitting = [clip for clip in clips if clip <= proud]
    if fitting:
        case.put("clip", max(fitting))
    case.flag(FLAG_DEEP, slack < 0 and not clips)
    if air is not None:
        case.put("air", air)
        case.flag(FLAG_AIR, air <= 0)


def work_floater(case):
    canvas = case.largest_art()
    gap, top, ledge = (case.get(f"floater_{part}") for part in ("gap", "top", "ledge"))
    inside = grow(canvas, 2 * gap)
    outside = grow(inside, 2 * top)
    case.put_pair("package", canvas)
    case.put_pair("rabbet_size", inside)
    case.put_pair("outside", outside)
    case.put_pair("ledge_open", grow(inside, -2 * ledge))
    case.put("setback", case.get("rabbet_d") - case.get("art_t"))
    case.flag(FLAG_LEDGE, ledge < gap + case.get("ledge_land"))
    put_lengths(case, canvas, outside, gap + top)


def work_polygon(case):
    """Sides from the width across flats (twice the middle-to-side distance when odd)."""
    sides = int(case.get("sides"))
    package = case.get("art_w")
    rabbet = package + case.get("frame_allow")
    sight = rabbet - 2 * case.get("rabbet_w")
    outside = sight + 2 * case.get("face_w")
    slope = math.tan(math.pi / sides)
    case.out["mitre_deg"] = f"{180 / sides:.4f}"
    for name, across in (("short", sight), ("rabbet", rabbet), ("long", outside)):
        case.out[f"side_{name}"] = f"{float(across) * slope:.4f}"
    case.put("package_w", package)
    case.put("back_w", package - case.get("back_under"))
    case.put("rabbet_size_w", rabbet)
    case.put("sight_w", sight)
    case.put("outside_w", outside)
    case.put("lip_cover", case.get("rabbet_w") - case.get("frame_allow") / 2)
    long_side = float(outside) * slope
    length = sides * long_side + float(sides * case.get("cut_allow") + case.get("end_trim"))
    case.out["moulding_len"] = f"{length:.4f}"
    put_sticks(case, length, long_side)


def solve(row):
    """Every output cell of one row as text, blank where the kind has no such figure."""
    case = Case(row)
    if case.kind == "floater":
        work_floater(case)
    elif case.kind == "polygon":
        work_polygon(case)
        work_depth(case)
    else:
        lip_cover = case.get("rabbet_w") - case.get("frame_allow") / 2
        package = work_package(case, lip_cover)
        case.put_pair("package", package)
        work_frame(case, package, lip_cover)
        if case.kind not in ("liner", "stacked"):
            work_depth(case)
    case.out["flags"] = "|".join(dict.fromkeys(case.flags)) or "none"
    return {name: case.out.get(name, "") for name in OUTPUTS}


def check(path):
    """Compare every output cell of a case file; returns the number that differ."""
    with open(path, newline="", encoding="utf-8") as file:
        lines = [line for line in file if not line.startswith("#")]
    differing = 0
    rows = list(csv.DictReader(lines))
    for row in rows:
        answer = solve(row)
        for name in OUTPUTS:
            if row[name] != answer[name]:
                differing += 1
                print(f"{row['id']} {row['kind']} {name}: file {row[name]!r}, worked {answer[name]!r}")
    print(f"{len(rows)} rows, {differing} cells differ")
    return differing


def write(path):
    blank = dict.fromkeys(INPUTS, "")
    with open(path, "w", newline="", encoding="utf-8") as file:
        file.write(
            "# computed by suite/python/package_cases.py, a second computation written from"
            " the trade handbook's formulas alone\n"
        )
        writer = csv.DictWriter(file, INPUTS + OUTPUTS, lineterminator="\n")
        writer.writeheader()
        for inputs in draw_cases():
            row = blank | inputs
            writer.writerow(row | solve(row))


def main():
    if len(sys.argv) != 3 or sys.argv[1] not in ("check", "write"):
        print(__doc__)
        return 2
    if sys.argv[1] == "check":
        return 1 if check(sys.argv[2]) else 0
    write(sys.argv[2])
    return 0


if __name__ == "__main__":
    sys.exit(main())

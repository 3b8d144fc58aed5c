#!/usr/bin/env python3
"""Independent verifier for cutting plans (1D sticks and 2D guillotine sheets).

    check_plan.py INSTANCES.json PLANS.json [--all] [--name NAME] [--json] [--quiet]

INSTANCES.json : one instance ("cutting-instance/1"), or a set
                 {"format": "cutting-set/1", "instances": [...]}
PLANS.json     : one plan ("cutting-plan/1"), a list of plans, or
                 {"format": "cutting-plans/1", "plans": [...]}

Plans are matched to instances by plan["instance"] == instance["name"].
Exit status: 0 every plan valid, 1 some plan invalid, 2 unusable input.
No third-party module is needed. The formats are described in crates/cutting/src/document.rs.
"""
import argparse
import json
import sys

EPS = 1e-6
LIMIT = 200000      # parts looked at per sheet, only ever near where min_strip is set


class PlanError(Exception):
    pass


def need(cond, msg):
    if not cond:
        raise PlanError(msg)


def as_int(v, what):
    # bool is an int in Python: refuse it, and refuse floats such as 3.5
    need(isinstance(v, int) and not isinstance(v, bool), f"{what} is not an integer: {v!r}")
    return v


# ---------------------------------------------------------------- instances

def load_instances(doc):
    if isinstance(doc, dict) and "instances" in doc:
        base = {k: v for k, v in doc.get("defaults", {}).items()}
        return [dict(base, **i) for i in doc["instances"]]
    if isinstance(doc, list):
        return doc
    return [doc]


def load_plans(doc):
    if isinstance(doc, dict) and "plans" in doc:
        return doc["plans"]
    if isinstance(doc, list):
        return doc
    return [doc]


def stock_cost(inst, s):
    """A sheet's or stick's cost; its size where the instance gives none."""
    if "cost" in s:
        return s["cost"]
    return s["l"] if inst["dim"] == 1 else s["w"] * s["h"]


# ------------------------------------------------------- guillotine checking

def groups_along(items, axis, kerf, strip):
    """Group items along one axis by the cuts that can be made across it.

    Returns [[start, end, members], ...]; every gap between two groups can be
    cut without leaving a strip narrower than the minimum.
    """
    key = 0 if axis == "x" else 1
    out = []
    for r in sorted(items, key=lambda r: r[key]):
        a, b = r[key], r[key] + r[key + 2]
        if out and not separable(a - out[-1][1], kerf, strip):
            out[-1][1] = max(out[-1][1], b)
            out[-1][2].append(r)
        else:
            out.append([a, b, [r]])
    return out


def separable(gap, kerf, strip):
    if gap < kerf:
        return False
    return strip <= 0 or gap <= 2 * kerf or gap >= strip + 2 * kerf


def edge_ok(gap, kerf, strip):
    # up to one kerf is sawn to dust; more leaves a strip
    return gap <= kerf or strip <= 0 or gap >= strip + kerf


def tight(item, region):
    return (item[0] == region[0] and item[1] == region[1]
            and item[0] + item[2] == region[2] and item[1] + item[3] == region[3])


def with_extent(region, axis, a, b):
    return (a, region[1], b, region[3]) if axis == "x" else (region[0], a, region[2], b)


def border(gap, kerf, strip):
    """How much of the waste beside a group may stay on it (0 = cut it off)."""
    if gap == 0:
        return [0]
    if strip <= 0:
        return [0]                          # cutting close is never worse then
    return ([0] if edge_ok(gap, kerf, strip) else []) + [gap]


def between(gap, kerf, strip):
    """(left keeps, right keeps) for the waste between two groups."""
    out = [(0, 0)]
    if strip > 0 and gap > kerf:
        out += [(gap - kerf, 0), (0, gap - kerf)]
        if gap >= 2 * strip + 3 * kerf:
            out.append((strip + kerf, gap - strip - 2 * kerf))
    return out


def split_ok(items, region, axis, kerf, strip, rec):
    """Cut across this axis in the best way; rec judges each part that is left.

    Without a minimum strip every possible cut is safe, so all are made. With
    one it can matter which cuts are made here and on which side the waste
    stays (a close cut may leave a neighbour's own waste too narrow), so the
    other ways are tried too, the plain one first.
    """
    lo, hi = (region[0], region[2]) if axis == "x" else (region[1], region[3])
    gs = groups_along(items, axis, kerf, strip)
    if strip <= 0:
        return all(rec(g[2], with_extent(region, axis, g[0], g[1])) for g in gs)
    done = {}

    def rest(n, keep):
        """Can groups n… be cut, with `keep` of the waste before n left on it?"""
        if (n, keep) in done:
            return done[n, keep]
        ok, members, b = False, [], None
        for m in range(n, len(gs)):         # n…m stay together at this stage
            members = members + gs[m][2]
            b = gs[m][1] if b is None else max(b, gs[m][1])
            last = m + 1 == len(gs)
            ways = [(r, None) for r in border(hi - b, kerf, strip)] if last else between(gs[m + 1][0] - b, kerf, strip)
            ok = any((last or rest(m + 1, w[1])) and rec(members, with_extent(region, axis, gs[n][0] - keep, b + w[0]))
                     for w in ways)
            if ok:
                break
        done[n, keep] = ok
        return ok

    return any(rest(0, keep) for keep in border(gs[0][0] - lo, kerf, strip))


def cut_free(items, region, kerf, strip, memo):
    """Any number of stages. region = (x0, y0, x1, y1)."""
    if len(items) == 1 and tight(items[0], region):
        return True
    if region in memo:
        return memo[region]
    need(len(memo) < LIMIT, "too many ways to cut this sheet: give its 'cuts' list")
    memo[region] = False                    # also stops a step that changes nothing
    ok = False
    for axis in ("x", "y"):
        gs = groups_along(items, axis, kerf, strip)
        lo, hi = (region[0], region[2]) if axis == "x" else (region[1], region[3])
        if len(gs) == 1 and gs[0][0] == lo and gs[0][1] == hi:
            continue
        ok = split_ok(items, region, axis, kerf, strip,
                      lambda m, r: r != region and cut_free(m, r, kerf, strip, memo))
        if ok or strip <= 0:
            # without a minimum strip any possible cut is safe to take: what is
            # left of a cuttable layout is still cuttable
            break
    memo[region] = ok
    return ok


def cut_staged(items, region, axis, k, kerf, strip, trim, memo):
    if len(items) == 1 and tight(items[0], region):
        return True
    if k == 0:
        if not trim or len(items) != 1:
            return False
        r = items[0]
        if axis == "x":
            return (r[1] == region[1] and r[1] + r[3] == region[3] and edge_ok(r[0] - region[0], kerf, strip)
                    and edge_ok(region[2] - r[0] - r[2], kerf, strip))
        return (r[0] == region[0] and r[0] + r[2] == region[2] and edge_ok(r[1] - region[1], kerf, strip)
                and edge_ok(region[3] - r[1] - r[3], kerf, strip))
    key = (region, axis, k)
    if key not in memo:
        need(len(memo) < LIMIT, "too many ways to cut this sheet: give its 'cuts' list")
        other = "y" if axis == "x" else "x"
        memo[key] = split_ok(items, region, axis, kerf, strip,
                             lambda m, r: cut_staged(m, r, other, k - 1, kerf, strip, trim, memo))
    return memo[key]


def guillotine_ok(items, region, inst):
    """Can the placed rectangles be cut out by edge-to-edge cuts?"""
    if not items:
        return True
    kerf = inst.get("kerf", 0)
    strip = inst.get("min_strip", 0)
    k = inst.get("stages")
    if k is None:
        return cut_free(items, region, kerf, strip, {})
    first = inst.get("first_cut", "any")
    axes = {"any": ("x", "y"), "v": ("x",), "h": ("y",)}[first]
    trim = inst.get("final_trim", True)
    return any(cut_staged(items, region, a, k, kerf, strip, trim, {}) for a in axes)


def check_cut_list(items, region, inst, cuts, where):
    """Replay an explicit list of cuts and compare the result with the pieces."""
    kerf = inst.get("kerf", 0)
    strip = inst.get("min_strip", 0)
    k = inst.get("stages")
    x0, y0, x1, y1 = region
    live = {(x0, y0, x1 - x0, y1 - y0): (None, 0)}   # region -> (dir of last cut, stage)
    for n, c in enumerate(cuts):
        what = f"{where}, cut {n}"
        rect = tuple(as_int(c[f], what) for f in ("x", "y", "w", "h"))
        at = as_int(c["at"], what)
        d = c["dir"]
        need(d in ("v", "h"), f"{what}: dir must be v or h")
        need(rect in live, f"{what}: there is no such part to cut: {rect}")
        last, stage = live.pop(rect)
        x, y, w, h = rect
        base, size = (x, w) if d == "v" else (y, h)
        need(base - kerf < at < base + size and (kerf > 0 or at > base), f"{what}: position outside the part")
        a = max(0, at - base)
        b = max(0, base + size - at - kerf)
        if last is None:
            # a first cut across the required direction counts as stage 2
            stage = 1 if inst.get("first_cut", "any") in ("any", d) else 2
        elif d != last:
            stage += 1
        if k is not None:
            limit = k + (1 if inst.get("final_trim", True) else 0)
            need(stage <= limit, f"{what}: stage {stage} is beyond the limit")
            if stage == k + 1:
                inside = sum(x <= r[0] and y <= r[1] and r[0] + r[2] <= x + w and r[1] + r[3] <= y + h
                             for r in items)
                need(inside <= 1, f"{what}: a trimming cut may serve one piece only, {inside} lie here")
        parts = []
        for lo, sz in ((base, a), (at + kerf, b)):
            if sz > 0:
                need(sz >= strip, f"{what}: strip of {sz} is below the minimum {strip}")
                parts.append((lo, y, sz, h) if d == "v" else (x, lo, w, sz))
        for p in parts:
            live[p] = (d, stage)
    for r in items:
        need((r[0], r[1], r[2], r[3]) in live, f"{where}: piece {r[4]} is not freed by the cuts")


# ------------------------------------------------------------------- checks

def check_1d(inst, plan):
    kerf = inst.get("kerf", 0)
    tl, tr = inst.get("trim", [0, 0])[:2]
    stock = {s["id"]: s for s in inst["stock"]}
    pieces = {p["id"]: p for p in inst["pieces"]}
    made, used, cost, total, waste_len, left = {}, {}, 0, 0, 0, 0
    need(isinstance(plan.get("sticks"), list), "plan has no list 'sticks'")
    for n, st in enumerate(plan["sticks"]):
        where = f"stick {n}"
        need(st.get("stock") in stock, f"{where}: unknown stock {st.get('stock')!r}")
        s = stock[st["stock"]]
        copies = as_int(st.get("copies", 1), f"{where} copies")
        need(copies >= 1, f"{where}: copies below 1")
        end, last = tl, None
        cut = 0
        for q in sorted(st["pieces"], key=lambda q: as_int(q["at"], f"{where} at")):
            need(q["id"] in pieces, f"{where}: unknown piece {q['id']!r}")
            l = pieces[q["id"]]["l"]
            at = q["at"]
            start_min = end + (kerf if last is not None else 0)
            need(at >= start_min, f"{where}: piece {q['id']} at {at} overlaps what is before it (needs {start_min})")
            need(at + l <= s["l"] - tr, f"{where}: piece {q['id']} at {at} runs past the end")
            end, last = at + l, q["id"]
            cut += l
            made[q["id"]] = made.get(q["id"], 0) + copies
        need(last is not None, f"{where}: holds no piece")
        used[s["id"]] = used.get(s["id"], 0) + copies
        cost += copies * stock_cost(inst, s)
        total += copies * s["l"]
        waste_len += copies * (s["l"] - cut)
        left = max(left, s["l"] - tr - end - kerf)
    return made, used, cost, total, waste_len, left


def check_2d(inst, plan):
    kerf = inst.get("kerf", 0)
    tl, tr, tb, tt = (list(inst.get("trim", [0, 0, 0, 0])) + [0, 0, 0, 0])[:4]
    stock = {s["id"]: s for s in inst["stock"]}
    pieces = {p["id"]: p for p in inst["pieces"]}
    if inst.get("use_windows"):             # each piece cut gives its window back as free stock
        for p in inst["pieces"]:
            if p.get("window"):
                stock["window:" + p["id"]] = {"id": "window:" + p["id"], "w": p["window"][0], "h": p["window"][1],
                                              "cost": 0, "trim": [0, 0, 0, 0], "window_of": p["id"]}
    made, used, cost, total, waste, left = {}, {}, 0, 0, 0, 0
    need(isinstance(plan.get("sheets"), list), "plan has no list 'sheets'")
    for n, sh in enumerate(plan["sheets"]):
        where = f"sheet {n}"
        need(sh.get("stock") in stock, f"{where}: unknown stock {sh.get('stock')!r}")
        s = stock[sh["stock"]]
        copies = as_int(sh.get("copies", 1), f"{where} copies")
        need(copies >= 1, f"{where}: copies below 1")
        t = s.get("trim", (tl, tr, tb, tt))
        region = (t[0], t[2], s["w"] - t[1], s["h"] - t[3])
        rects, area = [], 0
        for q in sh["pieces"]:
            need(q.get("id") in pieces, f"{where}: unknown piece {q.get('id')!r}")
            p = pieces[q["id"]]
            x, y, w, h = (as_int(q[f], f"{where} piece {q['id']} {f}") for f in ("x", "y", "w", "h"))
            rot = bool(q.get("rotated", False))
            need((w, h) == ((p["h"], p["w"]) if rot else (p["w"], p["h"])),
                 f"{where}: piece {q['id']} has size {w}x{h}, rotated={rot}, but should be {p['w']}x{p['h']}")
            if rot and p["w"] != p["h"]:
                need(p.get("rot", inst.get("rotate", True)), f"{where}: piece {q['id']} must not be rotated")
            need(x >= region[0] and y >= region[1] and x + w <= region[2] and y + h <= region[3],
                 f"{where}: piece {q['id']} at ({x},{y}) leaves the usable area")
            rects.append((x, y, w, h, q["id"]))
            area += w * h
            made[q["id"]] = made.get(q["id"], 0) + copies
        need(rects, f"{where}: holds no piece")
        rems = []
        for r in sh.get("remnants", []):
            x, y, w, h = (as_int(r[f], f"{where} remnant {f}") for f in ("x", "y", "w", "h"))
            need(w > 0 and h > 0 and x >= region[0] and y >= region[1]
                 and x + w <= region[2] and y + h <= region[3], f"{where}: remnant out of bounds")
            rems.append((x, y, w, h, "remnant"))
            left = max(left, w * h)
        every = rects + rems
        # overlap and kerf: some axis must keep any two parts kerf apart
        by_x = sorted(every)
        for i, a in enumerate(by_x):
            for b in by_x[i + 1:]:
                if b[0] >= a[0] + a[2] + kerf:
                    break
                apart = max(b[0] - a[0] - a[2], b[1] - a[1] - a[3], a[1] - b[1] - b[3])
                need(apart >= 0, f"{where}: {a[4]} and {b[4]} overlap")
                need(apart >= kerf, f"{where}: {a[4]} and {b[4]} are closer than the kerf")
        if inst.get("guillotine", True):
            if "cuts" in sh:
                check_cut_list(every, region, inst, sh["cuts"], where)
            else:
                need(guillotine_ok(every, region, inst),
                     f"{where}: cannot be cut by guillotine cuts within the rules")
        used[s["id"]] = used.get(s["id"], 0) + copies
        cost += copies * stock_cost(inst, s)
        if "window_of" in s:
            waste -= copies * area          # cut from a part already counted as waste-to-be
        else:
            total += copies * s["w"] * s["h"]
            waste += copies * (s["w"] * s["h"] - area)
    for sid, n in used.items():
        w = stock[sid].get("window_of")
        need(w is None or n <= made.get(w, 0), f"{sid}: {n} windows used, {made.get(w, 0)} made")
    return made, used, cost, total, waste, left


def check(inst, plan):
    """Return a dict of figures; raise PlanError where the plan is invalid."""
    need(inst["dim"] in (1, 2), "instance dim must be 1 or 2")
    need(not (inst.get("kerf", 0) and inst.get("min_strip", 0)), "min_strip is defined for kerf 0 only")
    made, used, cost, total, waste, left = (check_1d if inst["dim"] == 1 else check_2d)(inst, plan)
    objective = inst.get("objective", "bins")
    value = 0
    for p in inst["pieces"]:
        got, want = made.get(p["id"], 0), p.get("qty", 1)
        if objective == "value":
            need(want is None or got <= want, f"piece {p['id']}: {got} cut, at most {want} allowed")
            size = p["l"] if inst["dim"] == 1 else p["w"] * p["h"]
            value += got * p.get("value", size)
        else:
            need(got == want, f"piece {p['id']}: {got} cut, {want} ordered")
    for s in inst["stock"]:
        if s.get("qty") is not None:
            need(used.get(s["id"], 0) <= s["qty"],
                 f"stock {s['id']}: {used.get(s['id'], 0)} used, {s['qty']} held")
    bins = sum(n for k, n in used.items() if not str(k).startswith("window:"))
    score = {"bins": bins, "cost": cost, "value": value}[objective]
    if objective == "value":
        need(bins <= 1 or inst.get("bins_limit", 1) >= bins, "a 'value' instance allows one sheet")
    best = inst.get("best", {})
    out = {"instance": inst["name"], "objective": objective, "score": score, "bins": bins,
           "cost": cost, "value": value, "waste_pct": round(100.0 * waste / total, 3) if total else 0.0,
           "largest_remnant": left, "used": used}
    if plan.get("objective") is not None:
        need(abs(plan["objective"] - score) <= EPS * max(1, abs(score)),
             f"the plan claims objective {plan['objective']}, the checker finds {score}")
    b = plan.get("bound")
    if b is not None:
        tol = EPS * max(1, abs(score))
        if objective == "value":
            need(b >= score - tol, f"claimed upper bound {b} is below the plan's own value {score}")
            if best.get("ub") is not None:      # for 'value', ub = best value known
                need(b >= best["ub"] - tol, f"claimed upper bound {b} is below the best known value {best['ub']}: the bound is wrong")
            out["gap_pct"] = round(100.0 * (b - score) / max(b, 1), 4)
        else:
            need(b <= score + tol, f"claimed lower bound {b} is above the plan's own objective {score}")
            if best.get("ub") is not None:
                need(b <= best["ub"] + tol, f"claimed lower bound {b} is above the best known objective {best['ub']}: the bound is wrong")
            out["gap_pct"] = round(100.0 * (score - b) / max(score, 1), 4)
        out["bound"] = b
        out["proved"] = abs(b - score) <= tol or (objective == "bins" and b > score - 1)
    if best.get("ub") is not None:
        out["best_known"] = best["ub"]
        out["vs_best"] = round(score - best["ub"], 6)
        if objective != "value" and best.get("lb") is not None and score < best["lb"] - EPS * max(1, abs(score)):
            raise PlanError(f"objective {score} is below the recorded lower bound {best['lb']}: instance data or checker at fault")
    return out


def main(argv=None):
    sys.setrecursionlimit(100000)
    ap = argparse.ArgumentParser(description="Verify cutting plans.")
    ap.add_argument("instances")
    ap.add_argument("plans")
    ap.add_argument("--name", help="check only the plan of this instance")
    ap.add_argument("--all", action="store_true", help="every instance must have a plan")
    ap.add_argument("--json", action="store_true", help="one JSON object a line")
    ap.add_argument("--quiet", action="store_true", help="print only invalid plans and the totals")
    a = ap.parse_args(argv)
    try:
        with open(a.instances) as f:
            insts = {i["name"]: i for i in load_instances(json.load(f))}
        with open(a.plans) as f:
            plans = load_plans(json.load(f))
    except (OSError, ValueError, KeyError, TypeError) as e:
        print(f"unusable input: {e!r}")
        return 2
    if a.name:
        plans = [p for p in plans if p.get("instance") == a.name]
    good = bad = bins = proved = met = 0
    score = known = 0
    for p in plans:
        name = p.get("instance")
        try:
            need(name in insts, "no such instance")
            r = check(insts[name], p)
        except PlanError as e:
            bad += 1
            print(json.dumps({"instance": name, "valid": False, "why": str(e)}) if a.json
                  else f"INVALID {name}: {e}")
            continue
        except (KeyError, TypeError, ValueError, AttributeError) as e:
            bad += 1
            print(json.dumps({"instance": name, "valid": False, "why": f"malformed: {e!r}"}) if a.json
                  else f"INVALID {name}: malformed plan: {e!r}")
            continue
        good += 1
        bins += r["bins"]
        proved += bool(r.get("proved"))
        if "best_known" in r:
            score, known = score + r["score"], known + r["best_known"]
            met += r["vs_best"] >= 0 if r["objective"] == "value" else r["vs_best"] <= 0
        if a.json:
            print(json.dumps(dict(r, valid=True)))
        elif not a.quiet:
            tail = "".join(f" {k}={r[k]}" for k in ("bound", "gap_pct", "best_known", "vs_best") if k in r)
            print(f"ok {name}: bins={r['bins']} cost={r['cost']} value={r['value']} "
                  f"waste={r['waste_pct']}% remnant={r['largest_remnant']}{tail}")
    if a.all:
        have = {p.get("instance") for p in plans}
        for name in insts:
            if name not in have and (not a.name or a.name == name):
                bad += 1
                print(json.dumps({"instance": name, "valid": False, "why": "no plan"}) if a.json
                      else f"INVALID {name}: no plan")
    if not a.json:
        print(f"{good} valid, {bad} invalid, {bins} bins, {proved} proved optimal; "
              f"score {score} against best known {known}, {met} at or past it")
    return 1 if bad or not plans else 0


if __name__ == "__main__":
    sys.exit(main())

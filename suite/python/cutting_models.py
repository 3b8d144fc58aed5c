"""Cutting problems as integer programs, solved to proof by HiGHS, to hold against our own search.

Reads a set of instances (cutting-set/1) from standard input. Writes a JSON list, one entry an
instance: its name and the least objective, or null where the stock does not reach.

Sticks: an arc-flow model. The nodes are lengths from 0 up, a piece is an arc as long as itself and
one kerf, a stick is an arc from its usable length and one kerf back to 0; what is left unused is an
arc of its own. Source: J. M. Valério de Carvalho, "Exact solution of bin-packing problems using
column generation and branch-and-bound", Annals of Operations Research 86 (1999).

Sheets: a level model for two stages with trimming (or without), several kinds of sheet, a kerf,
pieces that may be turned. A level is as high as the piece that opens it; the first level on a sheet
opens the sheet. Source: A. Lodi, S. Martello, D. Vigo, "Models and bounds for two-dimensional level
packing problems", Journal of Combinatorial Optimization 8 (2004).
"""

import json
import os
import sys

import highspy


class Program:
    """A program of whole numbers: columns with a cost and a ceiling, rows with two ends."""

    def __init__(self):
        self.solver = highspy.Highs()
        self.solver.setOptionValue("output_flag", False)
        self.solver.setOptionValue("threads", 1)
        self.solver.setOptionValue("mip_rel_gap", 0.0)
        self.solver.setOptionValue("mip_abs_gap", 0.5)
        self.columns = 0

    def column(self, cost=0, most=highspy.kHighsInf):
        self.solver.addVar(0, most)
        self.solver.changeColCost(self.columns, cost)
        self.solver.changeColIntegrality(self.columns, highspy.HighsVarType.kInteger)
        self.columns += 1
        return self.columns - 1

    def row(self, low, high, terms):
        weights = {}
        for column, weight in terms:
            weights[column] = weights.get(column, 0) + weight
        columns, values = list(weights), list(weights.values())
        self.solver.addRow(low, high, len(columns), columns, values)

    def least(self):
        """The proven optimum; None where there is no solution. Anything else is an error."""
        self.solver.run()
        status = self.solver.getModelStatus()
        # No program here falls without end: no cost is below nothing.
        known = highspy.HighsModelStatus
        if status in (known.kInfeasible, known.kUnboundedOrInfeasible):
            return None
        if status != known.kOptimal:
            raise RuntimeError(f"not solved to proof: {status}")
        return round(self.solver.getInfo().objective_function_value)


ENDLESS = highspy.kHighsInf


def cost_of(instance, stock):
    return 1 if instance["objective"] == "bins" else stock["cost"]


def held(stock):
    return ENDLESS if stock.get("qty") is None else stock["qty"]


def sticks(instance):
    kerf = instance.get("kerf", 0)
    left, right = instance.get("trim", [0, 0])
    rooms = [s["l"] - left - right + kerf for s in instance["stock"]]
    longest = max(rooms)
    # Longest first: every filling of a stick is one path.
    pieces = sorted(((p["l"] + kerf, p["qty"]) for p in instance["pieces"]), reverse=True)
    program = Program()
    balance = {}  # node: what flows in, less what flows out

    def arc(start, end, column):
        balance.setdefault(start, []).append((column, -1))
        balance.setdefault(end, []).append((column, 1))

    reached = {0}
    for size, count in pieces:
        used = []
        starts, fresh = set(), reached
        for _ in range(count):
            fresh = {at for at in fresh if at + size <= longest}
            starts |= fresh
            fresh = {at + size for at in fresh}
        for start in sorted(starts):
            column = program.column(most=count)
            arc(start, start + size, column)
            used.append((column, 1))
        reached = reached | {start + size for start in starts}
        program.row(count, count, used)
    nodes = sorted(reached | set(rooms))
    for start, end in zip(nodes, nodes[1:]):
        arc(start, end, program.column())
    for stock, room in zip(instance["stock"], rooms):
        arc(room, 0, program.column(cost_of(instance, stock), held(stock)))
    for terms in balance.values():
        program.row(0, 0, terms)
    return program.least()


def lying(instance, upright):
    """Every copy of every piece each way it may lie: which copy, width, height."""
    kerf, ways, copy = instance.get("kerf", 0), [], 0
    for piece in instance["pieces"]:
        for _ in range(piece.get("qty", 1)):
            sides = [(piece["w"] + kerf, piece["h"] + kerf)]
            if piece.get("rot", instance.get("rotate", True)) and piece["w"] != piece["h"]:
                sides.append((piece["h"] + kerf, piece["w"] + kerf))
            for width, height in sides:
                ways.append((copy, height, width) if upright else (copy, width, height))
            copy += 1
    return copy, sorted(ways, key=lambda way: (-way[2], -way[1], way[0]))


def rooms_of(instance, upright):
    kerf = instance.get("kerf", 0)
    for stock in instance["stock"]:
        left, right, bottom, top = stock.get("trim", instance.get("trim", [0, 0, 0, 0]))
        width, height = stock["w"] - left - right + kerf, stock["h"] - bottom - top + kerf
        yield (height, width) if upright else (width, height)


def sheets(instance):
    if instance["stages"] != 2 or instance["first_cut"] not in ("h", "v"):
        raise ValueError("the model is for two stages with a given first cut")
    upright = instance["first_cut"] == "v"
    trims = instance.get("final_trim", True)
    copies, ways = lying(instance, upright)
    rooms = list(rooms_of(instance, upright))
    program = Program()
    made = [[] for _ in range(copies)]
    widths = [[] for _ in ways]  # of each level: room less what lies in it
    opened = {}  # by the level that opens a sheet and its kind: room less what lies above
    used = [[] for _ in rooms]
    for level, (copy, width, height) in enumerate(ways):
        for kind, (across, up) in enumerate(rooms):
            if width <= across and height <= up:
                cost = cost_of(instance, instance["stock"][kind])
                column = program.column(cost, 1)
                opened[level, kind] = [(column, up - height)]
                made[copy].append((column, 1))
                widths[level].append((column, across - width))
                used[kind].append((column, 1))
    for (first, kind), terms in opened.items():
        for level in range(first + 1, len(ways)):
            copy, width, height = ways[level]
            if width <= rooms[kind][0] and copy != ways[first][0]:
                column = program.column(0, 1)
                terms.append((column, -height))
                made[copy].append((column, 1))
                widths[level].append((column, rooms[kind][0] - width))
    for level, (_, _, height) in enumerate(ways):
        for copy, width, other in ways[level + 1 :]:
            if copy != ways[level][0] and (trims or other == height):
                column = program.column(0, 1)
                made[copy].append((column, 1))
                widths[level].append((column, -width))
    for terms in made:
        program.row(1, 1, terms)
    for terms in [*widths, *opened.values()]:
        program.row(0, ENDLESS, terms)
    for stock, terms in zip(instance["stock"], used):
        program.row(0, held(stock), terms)
    return program.least()


def main():
    given = json.load(sys.stdin)
    # The solver greets on standard output, which is for the answers.
    answering = os.fdopen(os.dup(1), "w")
    os.dup2(2, 1)
    answers = []
    for own in given["instances"]:
        instance = {**given.get("defaults", {}), **own}
        model = sticks if instance["dim"] == 1 else sheets
        answers.append({"name": instance["name"], "least": model(instance)})
    with answering:
        json.dump(answers, answering)


if __name__ == "__main__":
    main()

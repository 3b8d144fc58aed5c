"""Runs a general research solver on one problem, for comparison side by side.

Reads one JSON object from standard input (see `question` in outside.rs), writes one:
value (none without a full plan), bound, first, seconds, proved; or error.
"""
import json
import math
import os
import sys
import time


def pinned(core):
    """One core only: what is compared with runs on one thread."""
    if hasattr(os, "sched_setaffinity"):
        cores = sorted(os.sched_getaffinity(0))
        os.sched_setaffinity(0, {cores[core % len(cores)]})


def copies_of(piece, room):
    """Without end means as many as the room can hold by size alone."""
    if piece["count"] is not None:
        return piece["count"]
    size = piece["l"] if "l" in piece else piece["w"] * piece["h"]
    return max(1, room // size)


def objective(problem, objectives):
    if problem["goal"] == "value":
        return objectives.Knapsack
    alike = len(problem["stock"]) == 1 and problem["stock"][0]["count"] is None
    if problem["goal"] == "bins" and alike:
        return objectives.BinPacking
    return objectives.VariableSizedBinPacking


def stock_count(problem, stock):
    """A sheet or stick to each piece is as many as could ever be used."""
    if problem["goal"] == "value":
        return 1
    wanted = sum(piece["count"] for piece in problem["pieces"])
    return wanted if stock["count"] is None else min(stock["count"], wanted)


def sticks(problem, module):
    """A kerf behind every piece, and one more behind the last, folded into the sizes."""
    kerf = problem["kerf"]
    builder = module.InstanceBuilder()
    builder.set_objective(objective(problem, module.Objective))
    room = 0
    for stock in problem["stock"]:
        length = stock["l"] - sum(stock["trim"]) + kerf
        count = stock_count(problem, stock)
        if length <= 0 or count == 0:
            continue
        room = max(room, length)
        cost = 1 if problem["goal"] == "bins" else stock["cost"]
        builder.add_bin_type(length, cost=cost, copies=count)
    for piece in problem["pieces"]:
        builder.add_item_type(piece["l"] + kerf, profit=piece["value"], copies=copies_of(piece, room))
    return builder.build()


def sheets(problem, module):
    builder = module.InstanceBuilder()
    builder.set_objective(objective(problem, module.Objective))
    builder.set_cut_thickness(problem["kerf"])
    builder.set_minimum_waste_length(max(1, problem["least_strip"]))
    if problem["stages"] is None:
        builder.set_number_of_stages_unlimited()
    else:
        builder.set_number_of_stages(problem["stages"])
        exact = module.CutType.NonExact if problem["final_trim"] else module.CutType.Exact
        builder.set_cut_type(exact)
        ways = module.CutOrientation
        first = {"v": ways.Vertical, "h": ways.Horizontal, "any": ways.Any}
        builder.set_first_stage_orientation(first[problem["first"]])
    room = 0
    for stock in problem["stock"]:
        left, right, bottom, top = stock["trim"]
        width, height = stock["w"] - left - right, stock["h"] - bottom - top
        count = stock_count(problem, stock)
        if width <= 0 or height <= 0 or count == 0:
            continue
        room = max(room, width * height)
        cost = 1 if problem["goal"] == "bins" else stock["cost"]
        builder.add_bin_type(width, height, cost=cost, copies=count)
    for piece in problem["pieces"]:
        builder.add_item_type(
            piece["w"],
            piece["h"],
            oriented=not piece["turn"],
            profit=piece["value"],
            copies=copies_of(piece, room),
        )
    return builder.build()


def reached(problem, module, output):
    """The value and the bound of an answer, as whole numbers."""
    goal = objective(problem, module.Objective)
    if goal == module.Objective.Knapsack:
        value, bound = output.solution.profit(), output.knapsack_bound
        whole = math.floor
    elif goal == module.Objective.BinPacking:
        value, bound = output.solution.number_of_bins(), output.bin_packing_bound
        whole = math.ceil
    else:
        value, bound = output.solution.cost(), output.variable_sized_bin_packing_bound
        whole = math.ceil
    slack = 1e-6 if whole is math.floor else -1e-6
    bound = whole(bound + slack) if math.isfinite(bound) and abs(bound) < 2**62 else None
    return round(value), bound


def solve(question):
    problem = question["problem"]
    if problem["dim"] == 1:
        import packingsolver.onedimensional as module

        instance = sticks(problem, module)
    else:
        import packingsolver.rectangleguillotine as module

        instance = sheets(problem, module)
    found = {"first": None}
    start = time.monotonic()

    def heard(output):
        everything = problem["goal"] == "value" or output.solution.full()
        if found["first"] is None and everything:
            found["first"] = time.monotonic() - start

    parameters = module.OptimizeParameters()
    parameters.time_limit = question["seconds"]
    parameters.verbosity_level = 0
    parameters.new_solution_callback = heard
    output = module.optimize(instance, parameters)
    seconds = time.monotonic() - start
    value, bound = reached(problem, module, output)
    full = problem["goal"] == "value" or output.solution.full()
    return {
        "value": value if full else None,
        "bound": bound,
        "first": found["first"] or seconds,
        "seconds": seconds,
        "proved": bool(full and value == bound),
    }


def main():
    question = json.load(sys.stdin)
    pinned(question["core"])
    try:
        answer = solve(question)
    except Exception as fault:  # whatever goes wrong over there is told, and the bench goes on
        answer = {"error": f"{type(fault).__name__}: {fault}"}
    print(json.dumps(answer))


if __name__ == "__main__":
    main()

"""Quotes worked out a second time, in decimal arithmetic, to hold against our own.

Reads a JSON list of quotes from standard input: the piece in 128ths of an inch or in millimetres, the prices
and the terms. Works out sizes, lines, discounts, tax, the shown price and the deposit from the rules in words,
sharing no code with the program, and writes a JSON list of every number as text.

Rounding modes are those of the General Decimal Arithmetic Specification, which IEEE 754-2008 took over.
"""

import json
import sys
from decimal import (
    ROUND_CEILING,
    ROUND_DOWN,
    ROUND_FLOOR,
    ROUND_HALF_EVEN,
    ROUND_HALF_UP,
    Decimal,
    getcontext,
)

getcontext().prec = 80
MODES = {
    "half-away": ROUND_HALF_UP,
    "half-even": ROUND_HALF_EVEN,
    "up": ROUND_CEILING,
    "down": ROUND_FLOOR,
    "toward-zero": ROUND_DOWN,
}


def to_step(amount, step, mode):
    """A multiple of the step."""
    return (amount / step).to_integral_value(rounding=MODES[mode]) * step


class Quote:
    def __init__(self, asked):
        self.q = asked
        self.inch = asked["units"] == "in"
        self.cent = Decimal(1).scaleb(-asked["places"])
        self.ways = asked["rounding"]

    def cents(self, amount, which):
        return to_step(amount, self.cent, self.ways[which])

    def length(self, name):
        """In inches or millimetres."""
        value = Decimal(self.q[name])
        return value / 128 if self.inch else value

    def sizes(self):
        """Package and second mat, from the art outward."""
        layers = 1 if self.q["double"] else 0
        self.package = [
            self.length(side)
            - 2 * self.length("overlap")
            + 2 * layers * self.length("reveal")
            + 2 * self.length("border")
            for side in ("width", "height")
        ]
        under = self.length("undermat")
        self.second = [side - under for side in self.package]

    def charged(self):
        """The quick rule, in feet or in metres, up to a whole foot or a tenth of a metre."""
        length = 2 * sum(self.package) + 8 * self.length("face")
        if self.inch:
            return to_step(length / 12, Decimal(1), "up")
        return to_step(length / 1000, Decimal("0.1"), "up")

    def area_by(self, size, rate):
        """rate × area, the area in square feet or square metres."""
        return rate * size[0] * size[1] / (144 if self.inch else 1_000_000)

    def line(self, rule, size):
        way, count = rule["way"], 1
        number = {k: Decimal(v) for k, v in rule.items() if k in NUMBERS}
        if way == "length":
            unit = self.cents(number["cost"] * (1 + number["waste"]) * number["factor"], "unit")
            return self.cents(unit * self.charged(), "line")
        if way == "cost-length":
            plain = number["cost"] * self.charged() * (1 + number["waste"]) * number["factor"]
            return self.cents(plain, "line") + number["plus"] * count
        if way == "cost-area":
            plain = self.area_by(size, number["cost"] * (1 + number["waste"]) * number["factor"])
            return self.cents(plain, "line") + number["plus"] * count
        if way == "area":
            unit = self.cents(number["cost"] * (1 + number["waste"]) * number["factor"], "unit")
            by_area = self.area_by(size, unit)
            return self.cents(max(by_area, unit * number["least"]), "line")
        if way == "bands":
            united = sum(size)
            step = Decimal(rule["step"])
            united = to_step(united, step, "up")
            for top, price in rule["bands"]:
                if united <= Decimal(top):
                    return Decimal(price)
            steps = to_step((united - Decimal(rule["bands"][-1][0])) / Decimal(rule["each"]), Decimal(1), "up")
            return Decimal(rule["bands"][-1][1]) + Decimal(rule["add"]) * steps
        if way == "each":
            return number["price"]
        if way == "minutes":
            return self.cents(number["minutes"] * Decimal(self.q["hour"]) / 60, "line")
        raise ValueError(way)

    def lines(self):
        found = []
        for rule in self.q["rules"]:
            size = self.second if rule["id"] == "second-mat" else self.package
            amount = self.line(rule, size)
            if "at_least" in rule:
                amount = max(amount, Decimal(rule["at_least"]))
            found.append({"id": rule["id"], "class": rule["class"], "amount": amount, "less": Decimal(0)})
        return found

    def discount(self, lines, discount):
        on = [line for line in lines if line["id"] in discount["on"]]
        share = Decimal(discount["share"])
        left = sum((line["amount"] - line["less"] for line in on), Decimal(0))
        whole = self.cents(left * share, "discount")
        if whole == 0:
            return whole
        parts = []
        for line in on:
            exact = (line["amount"] - line["less"]) * share
            down = to_step(exact, self.cent, "down")
            parts.append((exact - down, line["amount"], line, down))
        missing = int((whole - sum(part[3] for part in parts)) / self.cent)
        parts.sort(key=lambda part: (-part[0], -part[1], part[2]["id"]))
        for place, (_, _, line, down) in enumerate(parts):
            line["less"] += down + (self.cent if place < missing else 0)
        return whole

    def rates_on(self, name):
        return tuple(
            place for place, rate in enumerate(self.q["rates"]) if not rate["on"] or name in rate["on"]
        )

    def share(self, place):
        return Decimal(self.q["rates"][place]["share"])

    def tax_on(self, place, base, rates):
        if self.q["inside"]:
            exact = base * self.share(place) / (1 + sum(self.share(own) for own in rates))
        else:
            exact = base * self.share(place)
        return self.cents(exact, "tax")

    def taxes(self, entries, groups):
        found = {}
        for place in range(len(self.q["rates"])):
            on = [entry for entry in entries if place in entry[0]]
            if not on:
                continue
            if self.q["per_line"]:
                parts = [(rates, base) for rates, base in on]
            elif self.q["inside"]:
                parts = [(rates, base) for rates, base in groups.items() if place in rates]
            else:
                parts = [((), sum(base for _, base in on))]
            found[place] = [
                sum(base for _, base in parts),
                sum(self.tax_on(place, base, rates) for rates, base in parts),
            ]
        return found

    def show(self, total, taxes, groups):
        """The shown price, split again in the largest of the sums that are taxed alike."""
        shown = to_step(total, Decimal(self.q["shown"]["step"]), self.q["shown"]["way"])
        more = shown - total
        if more == 0:
            return shown
        rates = min((own for own in groups if groups[own] == max(groups.values())))
        base = groups[rates]
        if not rates:
            return shown
        divisor = 1 + sum(self.share(place) for place in rates)
        if self.q["inside"]:
            # Each tax grows as if it had been worked out on the shown price.
            for place in rates:
                grown = self.tax_on(place, base + more, rates) - self.tax_on(place, base, rates)
                taxes[place][0] += more
                taxes[place][1] += grown
            return shown
        gross = base + more
        for place in rates:
            same = taxes[place][0] == base
            gross += taxes[place][1] if same else self.tax_on(place, base, rates)
        added = self.cents(gross / divisor, "tax") - base
        change = more - added
        whole, so_far, given = sum(self.share(place) for place in rates), Decimal(0), Decimal(0)
        for place in rates:
            so_far += self.share(place)
            until = change if whole == 0 else to_step(change * so_far / whole, self.cent, "half-away")
            taxes[place][0] += added
            taxes[place][1] += until - given
            given = until
        return shown

    def answer(self):
        self.sizes()
        lines = self.lines()
        subtotal = sum(line["amount"] for line in lines)
        rush = self.cents(subtotal * Decimal(self.q["rush"]), "discount") if self.q["rush"] else Decimal(0)
        discounts = [self.discount(lines, one) for one in self.q["discounts"]]
        before = subtotal + rush - sum(discounts, Decimal(0))
        minimum = max(Decimal(self.q["minimum"]) - before, Decimal(0))
        entries = [(self.rates_on(line["class"]), line["amount"] - line["less"]) for line in lines]
        if self.q["rush"]:
            entries.append((self.rates_on("rush"), rush))
        if minimum:
            entries.append((self.rates_on("minimum"), minimum))
        groups = {}
        for rates, base in entries:
            groups[rates] = groups.get(rates, Decimal(0)) + base
        taxes = self.taxes(entries, groups)
        total = before + minimum
        if not self.q["inside"]:
            total += sum(tax for _, tax in taxes.values())
        if self.q["shown"]:
            total = self.show(total, taxes, groups)
        share, step = Decimal(self.q["deposit"]), self.cent
        deposit = min(to_step(total * share, step, "up"), total)
        tax = sum((tax for _, tax in taxes.values()), Decimal(0))
        figures = {
            "subtotal": subtotal,
            "rush": rush,
            "discount": sum(discounts, Decimal(0)),
            "minimum": minimum,
            "tax": tax,
            "net": total - tax,
            "total": total,
            "deposit": deposit,
            "balance": total - deposit,
        }
        answer = {name: self.text(figure) for name, figure in figures.items()}
        answer["lines"] = {line["id"]: self.text(line["amount"]) for line in lines}
        answer["less"] = {line["id"]: self.text(line["less"]) for line in lines}
        return answer

    def text(self, amount):
        return str(amount.quantize(self.cent))


NUMBERS = ("cost", "waste", "factor", "plus", "least", "price", "minutes")

json.dump([Quote(asked).answer() for asked in json.load(sys.stdin)], sys.stdout)

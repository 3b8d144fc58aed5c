//! The arithmetic of prices, rule by rule: what is recorded in a working, and every rounding by name.

use working::{Rule, Source, Status};

const fn arithmetic(id: &'static str, words: &'static str, formula: &'static str) -> Rule {
    Rule {
        id,
        words,
        formula,
        source: Source::Geometry,
        status: Status::Geometry,
    }
}

const fn custom(id: &'static str, words: &'static str, formula: &'static str) -> Rule {
    Rule {
        id,
        words,
        formula,
        source: Source::CommonPractice,
        status: Status::CommonPractice,
    }
}

macro_rules! laws {
    ($($name:ident = $kind:ident($id:literal, $words:literal, $formula:literal);)*) => {
        $(pub(crate) static $name: Rule = $kind($id, $words, $formula);)*

        /// Every rule of this room, for the printed list and its test.
        pub static LAWS: &[&Rule] = &[$(&$name),*];
    };
}

laws! {
    CHARGED = custom("price.length_charged", "a length that sizing does not round is rounded up to the shop's step", "charged = up_to(used, step)");
    WALLS = arithmetic("price.walls_length", "four walls laid end to end", "length = 2 × long + 2 × short");
    AREA = arithmetic("price.area", "a sheet is charged by the rectangle it is cut from", "area = width × height");
    UNITED = arithmetic("price.united", "width and height together, which is half the perimeter", "united = width + height");
    UNITED_UP = custom("price.united_up", "width and height together, rounded up to the step of the table", "united = up_to(width + height, step)");
    EXCHANGED = arithmetic("price.exchanged", "a cost in another currency is turned at the stated rate, to the millionth", "cost = round_to(cost_there × rate, step, way)");
    UNIT_LENGTH = custom("price.unit_by_length", "a unit of length sells for its cost with waste, times the factor", "unit = round_to(cost × unit_length ÷ per × (1 + waste) × factor, cent, way)");
    LINE_LENGTH = arithmetic("price.by_length", "the length charged at the price of a unit", "line = round_to(unit × charged × count ÷ unit_length, cent, way)");
    LINE_CHOP = custom("price.chop", "the supplier's price for the length, times the factor, and handling", "line = round_to(cost × (1 + premium) × charged × count ÷ per × factor, cent, way) + handling × count");
    LINE_COST = custom("price.cost_plus", "what is used, at cost with waste, times the factor, and what is added to each", "line = round_to(cost × used × count ÷ per × (1 + waste) × factor, cent, way) + plus × count");
    LINE_BAND = custom("price.band", "the price of the band that width and height together fall in", "line = if(from < united and united ≤ to, price × count, 0)");
    LINE_BEYOND = custom("price.beyond", "above the last band, its price and so much for every step begun", "line = (price + add × up((united - last) ÷ each)) × count");
    UNIT_AREA = custom("price.unit_by_area", "a unit of area sells for its cost with waste, times the factor", "unit = round_to(cost × unit_area ÷ per × (1 + waste) × factor, cent, way)");
    LINE_AREA = custom("price.by_area", "the area, or the least that is charged, at the price of a unit", "line = round_to(unit × max(area ÷ unit_area, least) × count, cent, way)");
    UNIT_SHEET = custom("price.unit_sheet", "a whole sheet sells for its cost times the factor; other sizes in proportion to their area", "unit = round_to(cost × stock ÷ per × factor, cent, way)");
    LINE_SHEET = custom("price.sheet_part", "the least part of a stock sheet that is sold and holds the piece's area", "line = if(area ≤ stock × part, round_to(unit × part, cent, way) × count, 0)");
    LINE_EACH = arithmetic("price.by_piece", "the price of one, for each", "line = price × count");
    LINE_MINUTES = arithmetic("price.by_minutes", "minutes at the rate for an hour", "line = round_to(minutes × hour × count ÷ 60, cent, way)");
    LINE_LEAST = custom("price.least", "never less than the least for the part", "line = max(line, least)");
    SUBTOTAL = arithmetic("price.subtotal", "the lines together", "subtotal = sum(line)");
    RUSH = custom("price.rush", "haste is charged on the lines, before any discount", "rush = round_to(subtotal × share, cent, way)");
    DISCOUNT = custom("price.discount", "a discount is taken on the lines it names, in one sum", "discount = round_to((sum(line) - sum(earlier)) × share, cent, way)");
    MINIMUM = custom("price.minimum_order", "a small order is brought to the least", "minimum = max(least - (subtotal + rush - sum(discount)), 0)");
    SUM = arithmetic("price.sum", "what the lines come to after discounts, haste and the least", "sum = subtotal + rush - sum(discount) + minimum");
    BASE = arithmetic("price.tax_base", "what a rate is reckoned on: the sums it is on, less their discounts", "base = sum(amount) - sum(discount)");
    TAX_ADDED = arithmetic("price.tax_added", "tax is added once, on the whole base", "tax = round_to(base × share, cent, way)");
    TAX_INSIDE = arithmetic("price.tax_inside", "tax held inside a price", "tax = round_to(base × share ÷ (1 + sum(shares)), cent, way)");
    TAX_LINES = arithmetic("price.tax_lines", "tax rounded line by line", "tax = sum(line_tax)");
    TOTAL = arithmetic("price.total", "the sum, and its tax where that is added", "total = sum + sum(tax)");
    SHOWN = custom("price.shown", "the price that is shown goes to a multiple of its step", "shown = round_to(total, step, way)");
    RESPLIT = arithmetic("price.resplit", "the shown price is split again into net and tax", "net = round_to(gross ÷ (1 + sum(shares)), cent, way)");
    GROSS = arithmetic("price.gross", "the largest of the sums that are taxed alike takes what the shown price adds", "gross = base + sum(tax) + shown - total");
    TAX_CHANGED = arithmetic("price.tax_changed", "tax and its part of what the shown price adds", "tax = before + change");
    NET = arithmetic("price.net", "the total without its tax", "net = total - sum(tax)");
    RELIEF = arithmetic("price.relief", "an exempt customer does not pay the tax that prices hold", "total = with - sum(tax)");
    DEPOSIT = custom("price.deposit", "a share of the total, rounded to its step, never more than the total", "deposit = min(round_to(total × share, step, way), total)");
    BALANCE = arithmetic("price.balance", "what is left to pay", "balance = total - deposit");
    COST_MATERIAL = arithmetic("price.cost_of_part", "what a part costs the shop, by what it takes from the stock", "cost = round_to(price × used × count ÷ per, cent, way)");
    COST_LABOUR = arithmetic("price.cost_of_labour", "minutes at the wage", "cost = round_to(minutes × wage ÷ 60, cent, way)");
    COST = arithmetic("price.cost", "what the piece costs the shop", "cost = sum(part) + sum(labour)");
    MARGIN = arithmetic("price.margin", "what is left of the net price", "margin = net - cost");
}

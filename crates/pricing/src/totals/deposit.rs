//! Deposit and balance.

use measure::Money;
use working::{Given, Subject, Worked};

use crate::desk::Desk;
use crate::exact::Exact;
use crate::laws;

type Paid = (Option<Worked<Money>>, Option<Worked<Money>>);

/// What is paid when the work is ordered, and what is left.
pub(super) fn deposit(desk: &mut Desk<'_>, total: Worked<Money>) -> Option<Paid> {
    let Some(deposit) = &desk.rules.deposit else {
        return Some((None, None));
    };
    let share = deposit.share.0;
    let step = deposit.step.map_or(desk.cent, |step| step.0);
    let round = desk.round(deposit.way);
    let exact = Exact::from(total.value).times(share)?;
    let rounded = exact.to_money(step, round)?;
    let amount = if rounded.minor > total.value.minor {
        total.value
    } else {
        rounded
    };
    let inputs = [
        ("total", total.into()),
        ("share", Given::prices(share)),
        ("step", Given::prices(step)),
        ("way", Given::prices(round)),
    ];
    let subject = Subject::of("price", "deposit");
    let deposit = desk.working.by(&laws::DEPOSIT, subject, &inputs, amount);
    let left = total.value.checked_sub(amount).ok()?;
    let inputs = [("total", total.into()), ("deposit", deposit.into())];
    let subject = Subject::of("price", "balance");
    let balance = desk.working.by(&laws::BALANCE, subject, &inputs, left);
    Some((Some(deposit), Some(balance)))
}

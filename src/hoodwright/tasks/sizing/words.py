"""What the sizing job found, in sentences."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from hoodwright.ducts.sizing import Checked, Sized, Slow
from hoodwright.tasks.sizing.prices import Bill
from hoodwright.tasks.sizing.split import split_words
from hoodwright.tasks.sizing.tree import DuctTree
from hoodwright.units import show
from hoodwright.workplace.model import Fan

if TYPE_CHECKING:
    from hoodwright.tasks.sizing.job import Change, Totals

MOST_TOLD = 6
CENT = 0.01


def saved_words(new: Totals, hand: Totals | None, now: float, bill: Bill, currency: str, system: str) -> Iterator[str]:
    """What the new sizes take, and what they save against the hand method."""
    watts = show(new.power, "power", system)
    yield f"The air needs {watts}; with the sizes in the file the hand method counts {show(now, 'power', system)}."
    if hand is None:
        yield "The hand method finds no sizes of this series that agree."
        return
    less, part = hand.power - new.power, new.power / hand.power - 1
    if abs(hand.total - new.total) < CENT:
        yield "Sizes chosen by hand are as good."
        return
    yield (
        f"Against sizes chosen by hand the air needs {show(abs(less), 'power', system)} "
        f"{'less' if less >= 0 else 'more'} ({100 * part:+.1f} %): "
        f"{_money(bill.yearly(less), currency)} a year for energy, "
        f"{_money(hand.ducts - new.ducts, currency)} for ducts and dampers, and "
        f"{_money(hand.total - new.total, currency)} with the energy of {bill.years:g} years."
    )


def _money(saved: float, currency: str) -> str:
    amount = f"{abs(saved):,.0f}{' ' + currency if currency else ''}"
    return f"{amount} {'saved' if saved >= 0 else 'more'}"


def change_words(one: Change, system: str) -> str:
    """What becomes of a duct: its size, how fast the air is in it, and its damper."""
    size, fast = show(one.new, "length", system), show(one.velocity, "velocity", system)
    if one.then is not None:
        told = split_words(one.duct, one.new, one.then, one.length, one.share, system)
    elif one.changed and one.old is not None:
        told = f"{one.duct}: {size} in place of {show(one.old, 'length', system)}"
    else:
        told = f"{one.duct}: keeps its size"
    if one.damper is None:
        return f"{told} ({fast})."
    return f"{told} ({fast}), and a damper of {one.damper:.2g} velocity pressures; lock it and mark its position."


def per_cent(share: float) -> str:
    """A share in whole per cent."""
    return f"{100 * share:.0f} %"


def check_words(check: Checked, tree: DuctTree, found: Sized, fan: Fan, system: str) -> Iterator[str]:
    """Solved as built: what every hood gets at the fan's worst, and what happens when a gate is shut."""
    least, most = min(check.shares.values()), max(check.shares.values())
    between = " to ".join(dict.fromkeys(per_cent(share) for share in (least, most)))
    many = ", ".join(f"{tree.ducts[i].name} {per_cent(share)}" for i, share in check.outside.items())
    yield (
        f"Solved as built with dirty filters and {_speed(check, fan, system)}, every hood still gets {between} of "
        "its intended flow when the fan turns 5 % slower."
    )
    if many:
        yield f"More than 110 % goes to: {many}. No sizes were found that share the air better without more dampers."
    yield from _slow_words(check, tree, found, system)


def _speed(check: Checked, fan: Fan, system: str) -> str:
    if fan.curve is None:
        return f"a usual curve for the {fan.name}, as the file has none"
    if fan.speed is None:
        return f"the {fan.name} at {check.speed:.3g} times the speed of its curve"
    return f"the {fan.name} at {show(fan.speed * check.speed, 'speed of rotation', system)}"


def _slow_words(check: Checked, tree: DuctTree, found: Sized, system: str) -> Iterator[str]:
    if not check.too_slow:
        yield "With any one gate shut the air stays fast enough in every main."
        return
    worst: dict[int, Slow] = {}
    for slow in check.too_slow:
        if slow.duct not in worst or slow.velocity < worst[slow.duct].velocity:
            worst[slow.duct] = slow
    for slow in sorted(worst.values(), key=lambda one: one.velocity)[:MOST_TOLD]:
        main, shut = tree.ducts[slow.duct], tree.ducts[slow.shut]
        share = found.flows[slow.shut] / found.flows[slow.duct]
        what = "damper" if slow.shut in found.dampers else "gate"
        yield (
            f"{main.name} falls to {show(slow.velocity, 'velocity', system)} (it needs "
            f"{show(main.least, 'velocity', system)}) with the {what} of {shut.name} shut, which brings "
            f"{per_cent(share)} of its air. Keep that gate open, or let air in at the end of the main."
        )
    if len(worst) > MOST_TOLD:
        yield f"So do {len(worst) - MOST_TOLD} more mains, each with one gate shut."

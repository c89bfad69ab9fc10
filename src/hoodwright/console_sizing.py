"""What the command line prints of the sizing job, and the same as plain data."""

from hoodwright.console import console, say
from hoodwright.tasks.sizing.job import Change, SizingAnswer, Totals, size_ducts
from hoodwright.workplace import Workplace


def sized(workplace: Workplace, *, quiet: bool) -> dict:
    """Size the ducts; printed unless it shall be quiet."""
    answer = size_ducts(None, workplace)
    if not quiet:
        _print(answer)
    fans = [
        {
            "name": fan.fan,
            "words": list(fan.words),
            "sized": _totals(fan.new),
            "by_hand_method": _totals(fan.by_hand),
            "air_power_now_w": fan.power_now,
            "speed_ratio": fan.speed,
            "changes": [_change(one) for one in fan.changes],
        }
        for fan in answer.fans
    ]
    return {"junction_law": answer.law, "currency": answer.currency or None, "fans": fans, "notes": list(answer.notes)}


def _print(answer: SizingAnswer) -> None:
    out = console()
    out.print()
    for fan in answer.fans:
        for words in fan.words:
            say(out, _sentence(words))
        for change in fan.changes:
            say(out, _sentence(change.words), "    ", "  - ")
    for note in answer.notes:
        say(out, f"Taken: {_sentence(note)}")


def _sentence(words: str) -> str:
    return words if words.endswith(".") else f"{words}."


def _totals(totals: Totals | None) -> dict | None:
    if totals is None:
        return None
    return {
        "air_power_w": totals.power,
        "electric_power_w": totals.electric,
        "cost_of_ducts": totals.ducts,
        "cost_with_energy": totals.total,
    }


def _change(one: Change) -> dict:
    return {
        "branch": one.duct,
        "diameter_m": one.old,
        "by_hand_method_m": one.by_hand,
        "sized_diameter_m": one.new,
        "then_diameter_m": one.then,
        "first_share_of_length": one.share,
        "damper_velocity_pressures": one.damper,
        "velocity_m_s": one.velocity,
        "words": one.words,
    }

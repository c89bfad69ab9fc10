"""A typed text, parted into a number and the words of its unit."""

import re
from typing import Any

from hoodwright.errors import UnitError
from hoodwright.units.kinds import Kind

LONGEST_TEXT = 100

_SPACES = "\u00a0\u2007\u2008\u2009\u202f"
_SIGNS: dict[int, Any] = {
    **str.maketrans("²³¹₂⁻−–·⋅×µμ″”“′’‘º⁄∕" + _SPACES, "2312---***uu\"\"\"'''°//     "),
    ord("℃"): "°C",
    ord("℉"): "°F",
}
_NUMBER = re.compile(r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)", re.ASCII)
_SEPARATED = re.compile(r"[+-]?[\d.]*(?:,\d+|[ '_]\d{3}(?!\d))[\d ,'_.]*", re.ASCII)


def plain_text(text: object, kind: Kind) -> str:
    """The text as one short printable line, or the error that it is none."""
    if isinstance(text, bool) or not isinstance(text, str | int | float):
        raise UnitError(f"a text is needed, for example {kind.example}; got {type(text).__name__}")
    if isinstance(text, int) and text.bit_length() > 300:
        raise UnitError(f"the number is beyond any that can be used; write for example {kind.example}")
    text = str(text)
    if len(text) > LONGEST_TEXT:
        raise UnitError(f"the text is {len(text)} characters long; write for example {kind.example}")
    plain = spaced(text)
    if not plain:
        raise UnitError(f"nothing is written here; write for example {kind.example}")
    return "".join(c if c.isprintable() else "?" for c in plain)


def spaced(text: str) -> str:
    return " ".join(text.translate(_SIGNS).split())


def split(plain: str, kind: Kind) -> tuple[str, str]:
    """Number and unit, both still text."""
    if separated := _SEPARATED.match(plain):
        raise UnitError(_how_to_write(plain, separated[0].rstrip(" '"), kind))
    if not (found := _NUMBER.fullmatch(plain)):
        raise UnitError(f"{plain} does not start with a number; write for example {kind.example}")
    return found[1], found[2]


def _how_to_write(plain: str, number: str, kind: Kind) -> str:
    rest = plain[len(number) :]
    tail = f" {rest.strip()}" if rest.strip() else ""
    if re.fullmatch(r"[+-]?[1-9]\d{0,2},\d{3}", number):
        thousands, decimals = number.replace(",", ""), number.replace(",", ".")
        return f"{plain} has a comma; write {thousands}{tail} if it parts thousands, or {decimals}{tail}"
    if re.fullmatch(r"[+-]?\d*,\d+", number):
        return f"{plain} has a decimal comma; write {number.replace(',', '.')}{tail}"
    last = max(number.rfind("."), number.rfind(","))
    lone = last >= 0 and number.count(number[last]) == 1
    whole, decimals = (number[:last], f".{number[last + 1 :]}") if lone else (number, "")
    whole = re.sub("[ ,_.']", "", whole)
    return f"{plain} has thousands apart; write {whole}{decimals}{tail}"

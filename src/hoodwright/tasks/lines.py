"""Numbers as recompute lines print them."""


def digits(value: float, count: int = 5) -> str:
    """A plain number with `count` significant digits, enough to recompute a line on a calculator."""
    text = f"{float(value):.{count}g}"
    if "e" in text and 1e-6 < abs(value) < 1e9:
        text = f"{float(value):.12f}".rstrip("0").rstrip(".") if abs(value) < 1 else f"{float(value):.0f}"
    return text

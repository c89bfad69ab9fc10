"""Small shops with a fan curve, for tests of ductwork as built."""

from hoodwright.workplace import parse_workplace

HEAD = """\
hoodwright: 1
name: Small shop
room: {size: [20 m, 9 m, 4 m]}
contaminants: [{name: fume, kind: fume}]
"""


def hood(number: int, flow: str = "320 m3/h", entry: str = "loss: 0.5", more: str = "") -> tuple[str, str]:
    """A source and the hood that serves it."""
    x = 1 + number
    source = f"- {{name: joint {number}, contaminant: fume, at: [{x} m, 1.9 m, 1 m], dispersion: gentle}}"
    return source, (
        f"- {{name: hood {number}, type: capturing, serves: [joint {number}], opening: {{round: 100 mm}}, "
        f"at: [{x} m, 2 m, 1 m], facing: [0, -1, 0], intended_flow: {flow}, entry: {{{entry}}}{more}}}"
    )


def shop_text(hoods: list[tuple[str, str]], ducts: str, fans: str, rest: str = "") -> str:
    """The text of a workplace file."""
    sources = "\n".join(source for source, _ in hoods)
    listed = "\n".join(one for _, one in hoods)
    return f"{HEAD}sources:\n{sources}\nhoods:\n{listed}\nducts:\n{ducts}\nfans:\n{fans}\n{rest}"


def shop(hoods: list[tuple[str, str]], ducts: str, fans: str, rest: str = ""):
    """The workplace."""
    return parse_workplace(shop_text(hoods, ducts, fans, rest))


# 1000 Pa at no flow, 0 at 0.5 m3/s: a straight line, at the density of dry air of 20 degC at sea level
LINE = (
    "pressure: total, density: 1.204152 kg/m3, "
    "curve: [[0 m3/h, 1000 Pa], [600 m3/h, 666.66667 Pa], [1200 m3/h, 333.33333 Pa], [1800 m3/h, 0 Pa]]"
)
ONE_DUCTS = """\
- {name: A, from: hood 1, to: fan, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 1.5}]}
- {name: stack, from: fan, to: outside, rectangle: [100 mm, 200 mm], length: 0 m}"""


def one_hood(fan: str = LINE, ducts: str = ONE_DUCTS, rest: str = "", more: str = ""):
    """One hood, one fan, no friction: entry 0.5, a fitting 1.5, the open end 1.0."""
    return shop([hood(1, more=more)], ducts, f"- {{name: fan, {fan}}}", rest)


TWO_DUCTS = """\
- {name: A, from: hood 1, to: J, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 1.5}]}
- {name: B, from: hood 2, to: J, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 1.5}]}
- {name: main, from: J, to: fan, rectangle: [200 mm, 200 mm], length: 0 m}
- {name: stack, from: fan, to: outside, rectangle: [200 mm, 200 mm], length: 0 m}"""


def two_hoods(ducts: str = TWO_DUCTS, fan: str = LINE, rest: str = ""):
    """Two hoods that are alike; where they meet the air keeps its speed."""
    return shop([hood(1), hood(2)], ducts, f"- {{name: fan, {fan}}}", rest)

"""A small workplace for the tests of the capture job."""

from hoodwright.flow import Plan
from hoodwright.workplace import parse_workplace

FEW = Plan(realisations=78, particles=1)
SHOP = """\
hoodwright: 1
name: Test shop
room: {size: [3 m, 3 m, 2.5 m], draught: {towards: [1, 0, 0], speed: 0.05 m/s}}
contaminants: [{name: fume, kind: fume}]
surfaces: [{name: bench, corner: [1 m, 1 m, 0.9 m], sides: [[1 m, 0 m, 0 m], [0 m, 0.6 m, 0 m]]}]
sources: [{name: joint, contaminant: fume, at: [1.5 m, 1.3 m, 1.1 m], dispersion: gentle}]
hoods: [{name: nozzle, type: capturing, serves: [joint], opening: {round: 100 mm},
  at: [1.5 m, 1.4 m, 1.1 m], facing: [0, -1, 0], intended_flow: 300 m3/h}]
"""
CABINET = SHOP[: SHOP.index("hoods:")] + (
    "hoods: [{name: box, type: enclosing, form: cabinet, serves: [joint], opening: {rectangle: [600 mm, 300 mm]}, "
    "inside: [0.8 m, 0.6 m, 0.5 m], at: [1.5 m, 1.1 m, 1.2 m], facing: [0, -1, 0], intended_flow: 600 m3/h}]\n"
)


def text(*changes, of=SHOP):
    for old, new in changes:
        assert old in of
        of = of.replace(old, new)
    return of


def shop(*changes, of=SHOP):
    return parse_workplace(text(*changes, of=of))

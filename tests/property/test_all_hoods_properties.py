"""Every type of hood, anywhere in the room and of any size: an answer, finite, in clean sentences.

Receiving and enclosing hoods, and slots at open tanks; free capturing hoods are in test_assess_properties.py.
"""

import math
import re

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hoodwright.tables import load_table
from hoodwright.tasks.assess import assess
from hoodwright.tasks.export import as_json
from hoodwright.tasks.picture import picture
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.giving_off import WHEELS

ROOM = (6.0, 5.0, 3.0)
UNCLEAN = re.compile(
    r"\b(nan|inf|None|True|False)\b|e[+-]?\d{3}|(?<![\w.])-0(?![.\d])"
    r"|  | [,;:.](\s|$)|[{}]|\.\.|,,|;;|\b([a-z]+) \3\b"
)
RUN = """
ducts:
  - {{name: branch, from: hood, to: fan, round: {duct!r} m, length: 3 m}}
  - {{name: stack, from: fan, to: outside, round: {duct!r} m, length: 2 m}}
fans: [{{name: fan, efficiency: 55 %}}]
"""

few = st.integers(0, 4).map(lambda n: n / 4)
places = st.tuples(*(few.map(lambda share, side=side: share * side) | st.floats(0, side) for side in ROOM))
sizes = st.sampled_from([0.001, 0.01, 0.05, 0.2, 0.5, 1.0, 2.0, 10.0, 100.0])
usual = st.floats(0.05, 3.0)
directions = st.sampled_from(["[0, -1, 0]", "[0, 1, 0]", "[1, 0, 0]", "[0, 0, 1]", "[0, 0, -1]", "[0.3, -0.9, 0.2]"])
FORMS = load_table("face_velocity").columns["form"]


def metres(numbers) -> str:
    return "[" + ", ".join(f"{number!r} m" for number in numbers) + "]"


def opening(draw, *, slot: bool = True) -> str:
    one, other = draw(sizes | usual), draw(sizes | usual)
    if draw(st.booleans()):
        return f"{{round: {one!r} m}}"
    if slot and min(one, other) >= 0.001 and max(one, other) >= 5 * min(one, other) and draw(st.booleans()):
        return f"{{slot: {metres((max(one, other), min(one, other)))}}}"
    return f"{{rectangle: {metres((one, other))}}}"


def heat(draw) -> str:
    form = draw(st.sampled_from(["face", "body", "cylinder", "boiling tank"]))
    one, other = draw(sizes | usual), draw(sizes | usual)
    shape = f"rectangle: {metres((one, other))}" if form == "cylinder" or draw(st.booleans()) else f"round: {one!r} m"
    strong = draw(
        st.sampled_from(["temperature: 1200 degC", "temperature: 21 degC", "convective: 3 kW", "convective: 1 W"])
    )
    strong = "boils_off: 5 kg/h" if form == "boiling tank" else strong
    tall = f", height: {other!r} m" if form == "body" else ""
    return f"heat: {{form: {form}, {shape}, {strong}{tall}}}"


def wheel(draw) -> str:
    work = draw(st.sampled_from([*WHEELS, "single-spindle disc", "open vertical-spindle disc", "belt"]))
    parts = [f"diameter: {draw(sizes)!r} m"] if work != "belt" else []
    parts += [f"width: {draw(sizes)!r} m"] if work in WHEELS or work == "belt" else []
    return f"wheel: {{work: {work}, {', '.join(parts)}}}"


def throws(draw) -> str:
    speed, grain = draw(st.sampled_from([0.01, 1.0, 30.0, 300.0])), draw(st.sampled_from([0.01, 1.0, 100.0, 50000.0]))
    way = draw(directions)
    return f"throws: {{speed: {speed} m/s, grain: {grain} um, grain_density: 2600 kg/m3, towards: {way}}}"


def falls(draw) -> str:
    rate, grain = draw(st.sampled_from([0.001, 600.0, 1e6])), draw(st.sampled_from([0.01, 200.0, 50000.0]))
    drop = draw(sizes)
    rest = "grain_density: 1500 kg/m3, bulk_density: 800 kg/m3"
    return f"falls: {{rate: {rate} kg/h, height: {drop!r} m, grain: {grain} um, {rest}}}"


def tank(draw) -> str:
    return f"tank: {{hazard: {draw(st.sampled_from('ABCD'))}, evolution: {draw(st.integers(1, 4))}}}"


GROUPS = {"receiving": (heat, wheel, throws, tank), "enclosing": (heat, falls, throws, wheel), "capturing": (tank,)}


@st.composite
def workplaces(draw):
    kind = draw(st.sampled_from(sorted(GROUPS)))
    group = draw(st.sampled_from(GROUPS[kind]))
    inside = draw(places), draw(places)
    spread = all(abs(a - b) > 1e-6 for a, b in zip(*inside, strict=True))
    boxed = spread and (group is tank or draw(st.booleans()))
    where = f"box: [{metres(inside[0])}, {metres(inside[1])}]" if boxed else f"at: {metres(inside[0])}"
    extra = group(draw) if (boxed or group is not tank) and draw(st.integers(0, 3)) else ""
    hazard = draw(st.sampled_from(["", "acid", "carcinogen", "lead"]))
    at = inside[0] if draw(st.integers(0, 5)) == 0 else draw(places)
    facing = draw(directions) if kind != "receiving" or draw(st.booleans()) else "[0, 0, -1]"
    form = f"form: {draw(st.sampled_from(FORMS))}, " if kind == "enclosing" else ""
    form += f"open_sides: {draw(st.sampled_from([2, 3, 4]))}, " if kind == "receiving" else ""
    form += f"flange: {draw(sizes)!r} m, " if kind == "capturing" and draw(st.booleans()) else ""
    intended = f", intended_flow: {draw(st.sampled_from([0.1, 1000.0, 1e6]))} m3/h" if draw(st.booleans()) else ""
    draught = "draught: {towards: [1, 0, 0], speed: 0.3 m/s, wander: 0.1 m/s}, " if draw(st.booleans()) else ""
    people = (
        f"people: [{{name: worker, at: {metres(draw(places)[:2])}, facing: [0, 1, 0]}}]" if draw(st.booleans()) else ""
    )
    form += f"opening: {opening(draw)}, "
    release = draw(st.sampled_from(["still", "gentle", "driven", "thrown"]))
    return f"""
hoodwright: 1
name: Shop
units: {draw(st.sampled_from(["SI", "US"]))}
room: {{{draught}size: {metres(ROOM)}}}
{people}
contaminants: [{{name: fume, kind: fume, hazards: [{hazard}]}}]
sources:
  - name: work
    contaminant: fume
    {where}
    dispersion: {release}
    {extra}
hoods:
  - {{name: hood, type: {kind}, serves: [work], {form}at: {metres(at)}, facing: {facing}{intended}}}
{RUN.format(duct=draw(st.sampled_from([0.01, 0.1, 0.3, 10.0]))) if draw(st.booleans()) else ""}
"""


def numbers_of(part):
    if isinstance(part, dict):
        for value in part.values():
            yield from numbers_of(value)
    elif isinstance(part, list):
        for value in part:
            yield from numbers_of(value)
    elif isinstance(part, float):
        yield part


def sentences_of(answer):
    for hood in answer.hoods:
        yield hood.sentence
        yield from (hood.enough.because, hood.met.because)
        yield from (hint.text for hint in hood.hints)
        for need in hood.needs:
            yield from (need.place, need.basis, need.untold)
    yield from (caution.text for caution in answer.cautions)


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(workplaces())
def test_every_hood_is_answered_with_finite_numbers_and_clean_sentences(text):
    workplace = parse_workplace(text)
    answer = assess(workplace)
    told = as_json(answer)
    assert all(math.isfinite(number) for number in numbers_of(told))
    assert answer.hoods[0].design_flow >= 0
    for sentence in sentences_of(answer):
        plain = sentence.replace("\u2009", " ")
        assert not UNCLEAN.search(plain), plain
        assert plain == plain.strip(), plain
    assert picture(workplace).hoods

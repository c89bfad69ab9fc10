"""Broken workplace files give clear faults and nothing else; sound ones can be written and read without loss."""

import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hoodwright import units
from hoodwright.errors import UnitError, WorkplaceError
from hoodwright.tasks.assess import assess
from hoodwright.tasks.export import as_json
from hoodwright.workplace import Document, parse_workplace
from hoodwright.workplace.tree import read_tree
from two_hoods import TWO_HOODS

DEMO = TWO_HOODS
TREE = read_tree(DEMO)
LEAVES = sorted(
    (path for path, place in TREE.places.items() if path and not any(other[:-1] == path for other in TREE.places)),
    key=str,
)
PLACES = sorted((path for path in TREE.places if path), key=str)
LINES = DEMO.splitlines(keepends=True)

JUNK = [
    "", "~", "null", "true", "no", "0", "-1", "3", "4.5", ".nan", ".inf", "-.inf", "1e400", "1e-320", "0x1F", "1_000",
    "9" * 400, "-5 mm", "1e9 m", "1e-12 m", "0 m", "1000 m", "0.001 mm", "100 m", "12 parsec", "NaN m3/h", "inf Pa",
    "0 m3/h", "1e-30 m3/h", "3.6e6 m3/h", "0 m/s", "100 m/s", "200 scfm", "-300 degC", "100 degC", "-90 degC", "100 %",
    "0 %", "140 %", "20 deg", "91 deg", "2026-10-14", "2026-10-14T08:00:00Z", "12:30:45", "[]", "{}", "[1, 2]",
    "[0, 0, 0]", "[0 m, 0 m, 0 m]", "[1e308, 1e308, 1e308]", "{a: 1}", "{<<: {x: 1}}", "{? [1]: 2}", "&a [*a]", "*a",
    "&a 5 m", "!!float 3", "!!python/object:os.system x", "!!binary aGk=", "!!set {a, b}", "!!timestamp 2001-01-01",
    "outside", "J1", "main", "roof fan", "bench nozzle", "open lacquer jar", "'", '"', "# gone", "|", ">-", "- x", "%",
    "@", "`", "a: b: c", "\t", "\x07", "\x85", "\u2028", "\ufeff", "ü", "弁", "🎺", "\\ud800", '"\\ud800"', '"\\0"',
    '"\\e[31m"', "still", "thrown", "dust", "flexible", "[sparks, flammable]", "[explosible dust]", "US", "2", "3.0",
]  # fmt: skip


def examples(count: int) -> settings:
    """So many examples, however slow the machine is."""
    return settings(
        max_examples=count, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
    )


SAME_KIND = {
    "length": ["mm", "cm", "m", "in", "ft"],
    "flow": ["m3/h", "m3/s", "L/s", "cfm"],
    "velocity": ["m/s", "km/h", "fpm"],
    "pressure": ["Pa", "kPa", "mbar", "in wg", "mm wg"],
    "temperature": ["degC", "degF", "K"],
    "share": ["%", "fraction"],
    "angle": ["deg", "rad"],
}

junk = st.one_of(st.sampled_from(JUNK), st.text(max_size=12), st.floats().map(repr), st.integers().map(str))


@st.composite
def broken_by_lines(draw) -> str:
    """Lines lost, doubled, exchanged, indented otherwise, or cut short."""
    lines = list(LINES)
    for _ in range(draw(st.integers(1, 4))):
        i, j = (draw(st.integers(0, len(lines) - 1)) for _ in range(2))
        match draw(st.sampled_from(["lose", "double", "exchange", "indent", "outdent", "cut", "tab", "move"])):
            case "lose":
                del lines[i]
            case "double":
                lines.insert(j, lines[i])
            case "exchange":
                lines[i], lines[j] = lines[j], lines[i]
            case "indent":
                lines[i] = " " * draw(st.integers(1, 5)) + lines[i]
            case "outdent":
                lines[i] = lines[i].removeprefix("  ")
            case "cut":
                lines[i] = lines[i][: draw(st.integers(0, len(lines[i])))]
            case "tab":
                lines[i] = "\t" + lines[i]
            case "move":
                lines.insert(j, lines.pop(i))
    return "".join(lines)


@st.composite
def broken_by_values(draw) -> str:
    """Values replaced by other ones of every YAML type, at any depth."""
    text = DEMO
    paths = draw(st.lists(st.sampled_from(PLACES if draw(st.booleans()) else LEAVES), min_size=1, max_size=4))
    for path in sorted(paths, key=lambda path: TREE.places[path].start, reverse=True):
        place = TREE.places[path]
        text = text[: place.start] + draw(junk) + text[place.end :]
    return text


@st.composite
def broken_by_letters(draw) -> str:
    """Letters put in anywhere, a file cut short, and deep or repeated structures at the end."""
    text = DEMO
    for _ in range(draw(st.integers(0, 3))):
        i = draw(st.integers(0, len(text)))
        text = text[:i] + draw(junk) + text[i:]
    text = text[: draw(st.integers(0, len(text)))] if draw(st.booleans()) else text
    depth = draw(st.sampled_from([0, 0, 3, 30, 2000]))
    deep = draw(st.sampled_from(["[" * depth + "]" * depth, "[" * depth, "{a: " * depth + "}" * depth, "- " * depth]))
    bomb = "a0: &b0 [1, 1]\n" + "".join(f"a{i}: &b{i} [{', '.join([f'*b{i - 1}'] * 9)}]\n" for i in range(1, 8))
    return text + draw(st.sampled_from(["", f"\nabout: {deep}\n", f"\nextra: {deep}", f"\n{bomb}", f"\n---\n{DEMO}"]))


def check_answered_or_clearly_refused(text: str) -> None:
    """Either an answer without NaN, or faults with line, column, field and message."""
    try:
        workplace = parse_workplace(text, "bench.yaml")
    except WorkplaceError as error:
        assert error.faults
        assert error.faults == sorted(error.faults)
        lines = text.count("\n") + text.count("\r") + 2 + sum(text.count(c) for c in "\x85\u2028\u2029")
        for fault in error.faults:
            assert 1 <= fault.line <= lines
            assert fault.column >= 1
            assert fault.field.strip()
            assert len(fault.message) > 5
            assert str(fault).isprintable(), repr(str(fault))
        return
    text = json.dumps(as_json(assess(workplace)), allow_nan=False, ensure_ascii=False)
    text.encode("utf-8")


@examples(700)
@given(broken_by_lines())
def test_files_with_broken_lines(text):
    check_answered_or_clearly_refused(text)


@examples(900)
@given(broken_by_values())
def test_files_with_other_values(text):
    check_answered_or_clearly_refused(text)


@examples(400)
@given(broken_by_letters())
def test_files_with_stray_letters(text):
    check_answered_or_clearly_refused(text)


def kind_of(text: str) -> str | None:
    """Kind of quantity that a value of the file is; None for names, words and plain numbers."""
    for kind in SAME_KIND:
        try:
            units.parse(text.strip(), kind)
        except UnitError:
            continue
        return None if text.strip().replace(".", "").replace("-", "").isdigit() else kind
    return None


def words(path) -> str:
    place = TREE.places[path]
    return DEMO[place.start : place.end]


QUANTITIES = [path for path in LEAVES if kind_of(words(path))]


def test_the_demo_holds_every_kind_of_quantity():
    assert {kind_of(words(path)) for path in QUANTITIES} == set(SAME_KIND)
    assert len(QUANTITIES) > 60


@pytest.mark.parametrize("path", QUANTITIES, ids=TREE.label)
def test_each_quantity_can_be_written_in_every_unit_and_back(path):
    place, kind = TREE.places[path], kind_of(words(path))
    value = units.parse(words(path), kind)
    for unit in SAME_KIND[kind]:
        text = units.write(value, kind, unit)
        changed = Document(DEMO).set(path, text)
        assert changed.text == DEMO[: place.start] + changed.words(path) + DEMO[place.end :]
        assert changed.words(path).strip('"') == text
        assert changed.set(path, words(path).strip()).text == DEMO
    assert_same(changed.workplace().model_dump(), SOUND)


SOUND = parse_workplace(DEMO).model_dump()


def assert_same(found, wanted) -> None:
    """The same data, numbers to within what a unit's own rounding may lose."""
    if isinstance(wanted, dict):
        assert found.keys() == wanted.keys()
        for key in wanted:
            assert_same(found[key], wanted[key])
    elif isinstance(wanted, tuple):
        for one, other in zip(found, wanted, strict=True):
            assert_same(one, other)
    else:
        assert found == (pytest.approx(wanted, rel=1e-8, abs=1e-12) if isinstance(wanted, float) else wanted)


@examples(300)
@given(st.sampled_from(QUANTITIES), st.data())
def test_any_value_in_any_unit_is_read_as_it_was_written(path, data):
    kind = kind_of(words(path))
    value = units.parse(words(path), kind) * data.draw(st.floats(0.9, 1.1))
    value = data.draw(st.floats(0.3, 1.2)) if kind == "angle" else value
    text = units.write(value, kind, data.draw(st.sampled_from([*SAME_KIND[kind], "SI", "US"])))
    assert units.parse(text, kind) == pytest.approx(value, rel=1e-8)
    assert units.parse(Document(DEMO).set(path, text).words(path).strip('"'), kind) == pytest.approx(value, rel=1e-8)


@examples(200)
@given(st.text(max_size=40).filter(lambda text: text.isprintable() and text.strip()))
def test_any_printable_text_can_be_written_and_read_back(text):
    changed = Document(DEMO).set(("about",), text)
    assert changed.workplace().about == text
    assert [line for line in changed.text.splitlines() if not line.startswith("about:")] == [
        line for line in DEMO.splitlines() if not line.startswith("about:")
    ]

"""Faults of a hood's entry and filter, each one error with the exact words its writer reads."""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.workplace import parse_workplace

HOOD = """
hoodwright: 1
name: Shop
room: {size: [9 m, 9 m, 4 m]}
contaminants: [{name: dust, kind: dust}]
sources: [{name: saw, contaminant: dust, at: [2 m, 1.9 m, 1 m], dispersion: gentle}]
hoods:
- name: hood
  type: capturing
  serves: [saw]
  opening: {rectangle: [0.4 m, 0.2 m]}
  at: [2 m, 2 m, 1 m]
  facing: [0, -1, 0]
"""
TAPER = "allowed: at least 15 deg, at most 180 deg; write for example '90 deg'"
ROWS = (
    "allowed: plain, flanged, bell mouth, grinding straight, grinding tapered, grinding straight by regulation, "
    "grinding tapered by regulation, sharp edge by older text, flanged by older text; choose one of these"
)
GROUP = "a group of keys is needed, got {}; write 'key: value' lines below it"
ONE_OF_FOUR = "one of taper, slots, like, loss is needed, for example 'taper: 45 deg'; keep one"
SLOTS = "size: [600 mm, 20 mm], plenum: [0.6 m, 0.3 m]"
FILTER = "clean: 50 Pa, dirty: 200 Pa, at: 2160 m3/h"

# What stands in the file, where the fault is, and what is said of it.
FAULTS = [
    ("entry: {}", "entry", f"got none of them; {ONE_OF_FOUR}"),
    ("entry: taper", "entry", GROUP.format("'taper'")),
    ("entry: {taper: 45 deg, loss: 0.3}", "entry", f"got taper and loss; {ONE_OF_FOUR}"),
    ("entry: {lose: 0.3}", "entry.lose", "unknown key; allowed here: taper, slots, like, loss; did you mean 'loss'?"),
    ("entry: {taper: 45}", "entry.taper", "45 has no unit; write for example 45 deg"),
    ("entry: {taper: 10 deg}", "entry.taper", f"got '10 deg'; {TAPER}"),
    ("entry: {taper: 200 deg}", "entry.taper", f"got '200 deg'; {TAPER}"),
    ("entry: {taper: 45 mm}", "entry.taper", "45 mm is a length; an angle is needed, for example 30 deg"),
    ("entry: {like: trumpet}", "entry.like", f"got 'trumpet'; {ROWS}"),
    (
        "entry: {like: flangd}",
        "entry.like",
        "got 'flangd'; allowed: flanged, plain, and 9 rows in all; did you mean 'flanged'?",
    ),
    ("entry: {like: 3}", "entry.like", f"got '3'; {ROWS}"),
    ("entry: {loss: -0.1}", "entry.loss", "got '-0.1'; allowed: at least 0, at most 1000; write for example 1.5"),
    (
        f"entry: {{slots: {{{SLOTS}, take_off: {{}}}}}}",
        "entry.slots.take_off",
        "got none of them; one of taper, like, loss is needed, for example 'taper: 60 deg'; keep one",
    ),
    (
        f"entry: {{slots: {{{SLOTS}, take_off: {{taper: 60 deg, loss: 0.2}}}}}}",
        "entry.slots.take_off",
        "got taper and loss; one of taper, like, loss is needed, for example 'taper: 60 deg'; keep one",
    ),
    (
        f"entry: {{slots: {{{SLOTS}, take_off: {{tapper: 60 deg}}}}}}",
        "entry.slots.take_off.tapper",
        "unknown key; allowed here: taper, like, loss; did you mean 'taper'?",
    ),
    ("entry: {loss: much}", "entry.loss", "much does not start with a number; write for example 2"),
    ("entry: {slots: [600 mm, 20 mm]}", "entry.slots", GROUP.format("a list of 2")),
    ("entry: {slots: {size: [600 mm, 20 mm]}}", "entry.slots.plenum", "missing; add 'plenum: [600 mm, 300 mm]'"),
    (
        f"entry: {{slots: {{count: 0, {SLOTS}}}}}",
        "entry.slots.count",
        "got '0'; allowed: at least 1; choose a number inside",
    ),
    (
        f"entry: {{slots: {{count: 1.5, {SLOTS}}}}}",
        "entry.slots.count",
        "a whole number is needed, got '1.5'; write for example 1",
    ),
    (
        "entry: {slots: {size: [600 mm], plenum: [0.6 m, 0.3 m]}}",
        "entry.slots.size",
        "2 lengths are needed, got a list of 1; write for example [300 mm, 200 mm]",
    ),
    (
        "entry: {slots: {size: [600 mm, 0 mm], plenum: [0.6 m, 0.3 m]}}",
        "entry.slots.size[#2]",
        "got '0 mm'; allowed: at least 1 mm, at most 100 m; write for example '150 mm' or '6 in'",
    ),
    ("filter: 200 Pa", "filter", GROUP.format("'200 Pa'")),
    ("filter: []", "filter", GROUP.format("a list of 0")),
    ("filter: {clean: 50 Pa, dirty: 200 Pa}", "filter.at", "missing; add 'at: 600 m3/h'"),
    (
        "filter: {clean: 200 Pa, dirty: 50 Pa, at: 2160 m3/h}",
        "filter",
        "dirty 50 Pa is below clean 200 Pa; exchange them or read them again",
    ),
    (
        "filter: {clean: 50, dirty: 200 Pa, at: 2160 m3/h}",
        "filter.clean",
        "50 has no unit; write for example 50 Pa",
    ),
    (
        "filter: {clean: 50 Pa, dirty: 200 Pa, at: 0 m3/h}",
        "filter.at",
        "got '0 m3/h'; allowed: at least 0.036 m3/h, at most 3600000 m3/h; write for example '300 m3/h' or '180 cfm'",
    ),
    (
        f"filter: {{{FILTER}, exponent: 4}}",
        "filter.exponent",
        "got '4'; allowed: at least 0, at most 3; write for example 1.5",
    ),
    (
        f"filter: {{{FILTER}, power: 2}}",
        "filter.power",
        "unknown key; allowed here: clean, dirty, at, exponent; remove it or mend its spelling",
    ),
]


@pytest.mark.parametrize("line, place, said", FAULTS, ids=[line for line, _, _ in FAULTS])
def test_one_clear_fault(line, place, said):
    with pytest.raises(WorkplaceError) as caught:
        parse_workplace(f"{HOOD}  {line}\n", "bench.yaml")
    (fault,) = (str(fault) for fault in caught.value.faults)
    where, told = fault.split(f": hoods[hood].{place}: ", 1)
    assert told == said
    assert where.startswith("bench.yaml:14:")


@pytest.mark.parametrize(
    "line",
    [
        "entry: {taper: 15 deg}",
        "entry: {taper: 180 deg}",
        "entry: {loss: 0}",
        "entry: {like: bell mouth}",
        f"entry: {{slots: {{{SLOTS}}}}}",
        f"filter: {{{FILTER}}}",
        f"filter: {{{FILTER}, exponent: 2}}",
    ],
)
def test_what_is_read_without_a_fault(line):
    hood = parse_workplace(f"{HOOD}  {line}\n").hoods[0]
    assert (hood.entry is None) != (hood.filter is None)

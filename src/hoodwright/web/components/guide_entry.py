"""One process of the guide in full: the sentence, the numbers, every statement with its source one click away."""

from hoodwright.results import Verdict
from hoodwright.sources import find_source
from hoodwright.tasks.guide import (
    CAPTURE_SOURCE,
    TRANSPORT_SOURCE,
    GuideEntry,
    Interval,
    Statement,
    in_a_sentence,
    record_years,
    speeds,
    statement,
)
from hoodwright.web.components.words import Words, block, mark

PRACTICE = "common-practice"
TRUST = {"read": "Read in:", "derived": "Derived:", "memory": "From memory, to be confirmed in:"}
KEPT = "UK: its record is kept for at least {} years"


def guide_entry(found: GuideEntry, system: str) -> None:
    """Everything the guide says of one process."""
    heading = Words("h2", found.process[0].upper() + found.process[1:])
    heading.props.update({"tabindex": "-1", "id": "guide-entry"})
    Words("p", f"{found.trade}; gives off {found.kind}", "because")
    Words("p", in_a_sentence(found, system), "sentence").mark("sentence")
    _numbers(found, system)
    _statements("Refused, whatever the flow", found.refusals, Verdict.SHORT)
    _statements("Mind", found.cautions)
    _statements("Why these hazards, why this hood", (*found.why_hazards, *found.why_hoods, statement("always.order")))
    _examination(found.intervals)


def _numbers(found: GuideEntry, system: str) -> None:
    capture, transport = speeds(found, system)
    with block("dl", "guide-numbers"):
        about = "air it drags along" if found.release == "thrown" else "capture velocity"
        _number(f"{about}, release {found.release}", capture, CAPTURE_SOURCE)
        _number(f"in ducts, {found.transport}", transport, TRANSPORT_SOURCE)


def _number(name: str, words: str, citation: str) -> None:
    with block("div"):
        Words("dt", name)
        Words("dd", words)
        _origin(citation, "")


def _statements(title: str, statements: tuple[Statement, ...], shape: Verdict | None = None) -> None:
    if not statements:
        return
    Words("h3", title)
    with block("ul", "statements"):
        for one in statements:
            with block("li"):
                if shape:
                    mark(shape)
                Words("span", one.said)
                _origin(one.citation, one.jurisdiction)


def _examination(found: tuple[Interval, ...]) -> None:
    Words("h3", "Examination")
    with block("ul", "statements"):
        for one in found:
            with block("li"):
                Words("span", f"{one.text}; {one.condition}")
                _origin(one.citation, one.jurisdiction)
        with block("li"):
            Words("span", KEPT.format(record_years("UK")))
            _origin("coshh-2002, reg. 9(4)", "UK")
        for key in ("examination.us", "examination.elsewhere"):
            with block("li"):
                Words("span", statement(key).said)
                _origin(statement(key).citation, statement(key).jurisdiction)


def _origin(citation: str, jurisdiction: str) -> None:
    source = find_source(citation)
    where = f" Holds in: {jurisdiction}." if jurisdiction not in ("", "any") else ""
    with block("details", "from"):
        Words("summary", "where from?")
        if source.key == PRACTICE:
            Words("p", f"{source.title} [{citation}].{where}")
            return
        Words("p", f"{TRUST[source.trust]} {source.title}; {source.edition}; {source.year} [{citation}].{where}")
        Words("p", f"How it was read: {source.how}.", "because")

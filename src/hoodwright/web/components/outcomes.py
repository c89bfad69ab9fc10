"""The answer for one hood: a sentence, two outcomes, four values, the equations, and what would help."""

from collections.abc import Callable

from hoodwright import units
from hoodwright.results import Caution, Hint, Outcome, Quantity
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.web.components.equations import equations
from hoodwright.web.components.parts import where
from hoodwright.web.components.words import Words, block, button, mark
from hoodwright.workplace.model import Workplace

NOT_GIVEN = "not given"
NOT_TOLD = "cannot be told"
NO_FAN = "no fan given"
TYPES = {"capturing": "capturing hood", "receiving": "receiving hood", "enclosing": "enclosure"}


def hood_in_full(answer: HoodAnswer, cautions: list[Caution], system: str, asked: set[str]) -> Words:
    """Everything about one hood; returns its heading. `asked` holds the numbers whose origin is open."""
    with block("article", "answer"):
        heading = Words("h2", answer.name)
        heading.props["tabindex"] = "-1"
        Words("p", f"{TYPES[answer.type]}, {' and '.join(where(need) for need in answer.needs)}", "because type")
        Words("p", answer.sentence, "sentence").mark("sentence")
        with block("div", "outcomes"):
            outcome("Is what is intended enough?", answer.enough).mark("enough")
            outcome("Is it met today?", answer.met).mark("met")
        four_values(answer, system)
        equations(answer, system, asked)
        if cautions:
            Words("h3", "Mind")
        for caution in cautions:
            about = "" if caution.about == answer.name else f"{caution.about}: "
            _note(about, caution)
        if answer.hints:
            Words("h3", "What would help most?")
            with block("ul", "hints"):
                for hint in answer.hints:
                    _hint(hint, system)
    return heading


def _hint(hint: Hint, system: str) -> None:
    """A change in words, and what it would then take, side by side."""
    with block("li"):
        with block("p"):
            Words("strong", f"{hint.change.capitalize()}: ")
            Words("span", hint.text)
        with block("dl", "then"):
            for name, value in (
                ("required flow", hint.flow),
                ("fan power", hint.fan_power),
                ("make-up air", hint.make_up_air),
            ):
                with block("div"):
                    Words("dt", name)
                    digits = 3 if name != "fan power" else 2
                    shown = NO_FAN if value is None else units.show(value.value, value.kind, system, digits)
                    Words("dd", shown)


def hood_in_short(answer: HoodAnswer, choose: Callable[[str], None]) -> None:
    """One hood that is not looked at now: name, outcomes, and the way to it."""
    with block("article", "answer short"):
        with block("div", "short-head"):
            Words("h2", answer.name)
            shown = button("Look at it", lambda: choose(answer.name))
            shown.props["aria-label"] = f"Look at it: {answer.name}"
        Words("p", answer.sentence)
        with block("p", "verdicts"):
            for question, found in (("enough", answer.enough), ("met today", answer.met)):
                with block("span", f"verdict {found.verdict.name.lower()}"):
                    mark(found.verdict)
                    Words("span", f"{question}: {found.verdict.value}")


def outcome(question: str, found: Outcome):
    """A question, and its outcome as a shape, a word and the reason."""
    with block("div", "outcome") as box:
        Words("h3", question)
        with block("p", f"verdict {found.verdict.name.lower()}"):
            mark(found.verdict)
            Words("strong", found.verdict.value)
        Words("p", found.because, "because")
    return box


def four_values(answer: HoodAnswer, system: str) -> None:
    """Required, intended, commissioned and today, side by side."""
    with block("dl", "four"):
        _required(answer.worst, system)
        _value("intended", None if answer.intended is None else Quantity(answer.intended, "flow"), system)
        _value("commissioned", answer.commissioned, system)
        _value("today", answer.today, system)


def _required(need: SourceNeed, system: str) -> None:
    """The most demanding equation; else the bracket that is certain; else that it cannot be told."""
    if need.untold and not need.bound.lines:
        _words("required", NOT_TOLD)
    elif need.in_range:
        _value("required", Quantity(need.flow, "flow"), system)
    elif need.bound.most is None:
        _value("required at least", Quantity(need.flow, "flow"), system)
    else:
        least, most = (units.show(flow, "flow", system) for flow in (need.bound.least, need.bound.most))
        _words("required, between", f"{least} and {most}")


def _words(name: str, words: str) -> None:
    with block("div"):
        Words("dt", name)
        Words("dd", words, "missing" if words == NOT_TOLD else "")


def caution_note(caution: Caution, *, everywhere: bool = False) -> None:
    """A caution next to what it concerns."""
    _note("Mind: " if everywhere else f"Mind the {caution.about}: ", caution)


def _note(about: str, caution: Caution) -> None:
    with block("p", "caution"):
        if about:
            Words("strong", about)
        Words("span", caution.text)
        Words("cite", f" [{caution.source}]")


def cautions_about(answer: HoodAnswer, workplace: Workplace, cautions: tuple[Caution, ...]) -> list[Caution]:
    """Cautions that concern a hood, the sources it serves, or what they give off."""
    sources = [workplace.source(need.source) for need in answer.needs]
    about = {answer.name, *(s.name for s in sources), *(s.contaminant for s in sources)}
    return [caution for caution in cautions if caution.about in about]


def _value(name: str, value: Quantity | None, system: str) -> None:
    with block("div"):
        Words("dt", name)
        if value is None:
            Words("dd", NOT_GIVEN, "missing")
            return
        with block("dd") as box:
            box.props["title"] = f"{value.value!r} m3/s"
            Words("span", units.show(value.value, "flow", system))
            if value.uncertainty:
                Words("span", f" ± {units.show(value.uncertainty, 'flow', system, digits=2)}", "spread")

"""What to mind about ductwork as built."""

from collections.abc import Collection, Iterator

from hoodwright.results import Caution
from hoodwright.tasks.as_built.answers import BuiltDuct, BuiltFan, BuiltHood
from hoodwright.tasks.run import FASTEST_USUAL
from hoodwright.units import show

PRACTICE = "common-practice"
TRANSPORT = "transport-table"
OPERATING = "cengel-fm, ch. 14, operating point"


def built_cautions(
    hoods: Collection[BuiltHood],
    ducts: Collection[BuiltDuct],
    fans: Collection[BuiltFan],
    closed: Collection[str],
    system: str,
) -> Iterator[Caution]:
    """Hoods that blow out, dust that settles, fans and motors in trouble."""
    for hood in hoods:
        if hood.blows_out:
            flow = show(-hood.flow, "flow", system)
            text = (
                f"the air runs backwards: it blows {flow} out into the room. Shut its gate, or raise the suction there"
            )
            yield Caution(hood.name, text, PRACTICE)
    for duct in ducts:
        yield from _settles(duct, system)
        yield from _too_fast(duct, system)
    for fan in fans:
        yield from _runs(fan, system)
        yield from _motor(fan, system)


def _too_fast(duct: BuiltDuct, system: str) -> Iterator[Caution]:
    if abs(duct.velocity) > FASTEST_USUAL:
        got, usual = (show(v, "velocity", system) for v in (abs(duct.velocity), FASTEST_USUAL))
        yield Caution(
            duct.name, f"{got} as built, above the {usual} that are usual at most: noise, wear, power", PRACTICE
        )


def _settles(duct: BuiltDuct, system: str) -> Iterator[Caution]:
    if not duct.settles:
        return
    got, asked = (show(max(v, 0.0), "velocity", system) for v in (duct.velocity, duct.transport_velocity))
    text = f"as built the air in it runs at {got}; {duct.carries} needs at least {asked} to stay airborne: it settles"
    yield Caution(duct.name, text, TRANSPORT)


def _runs(fan: BuiltFan, system: str) -> Iterator[Caution]:
    if not fan.stable:
        text = "it runs where its curve rises with the flow: its flow surges. Choose another fan or speed"
        yield Caution(fan.name, text, OPERATING)
    elsewhere = [show(p.flow, "flow", system) for p in fan.points if p.stable and not p.runs]
    if elsewhere:
        text = f"it can also run at {', '.join(elsewhere)}, and which one it finds depends on how it is started"
        yield Caution(fan.name, text, OPERATING)
    if fan.beyond_curve:
        text = "it moves more air than the last point of its curve, which is drawn on straight: ask the maker for more"
        yield Caution(fan.name, text, PRACTICE)
    if fan.swings:
        text = "the smooth curve through its points swings up and down between them: add points from the maker's sheet"
        yield Caution(fan.name, text, PRACTICE)
    if fan.flow < 0:
        yield Caution(
            fan.name, "the air runs backwards through it: another fan is stronger, or it is wired wrong", PRACTICE
        )


def _motor(fan: BuiltFan, system: str) -> Iterator[Caution]:
    if fan.margin is None or fan.motor is None or fan.motor_power is None:
        return
    needed, rated = (show(p, "power", system) for p in (fan.motor_power, fan.motor))
    if fan.margin < 0:
        text = f"its motor is too small: {needed} are needed as built, and it is rated {rated}"
        yield Caution(fan.name, text, PRACTICE)

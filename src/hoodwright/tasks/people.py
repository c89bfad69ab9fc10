"""People in the way of the air: between a source and its hood, or between the draught and a source."""

import math

from hoodwright.workplace.model import Hood, Person, Source, Workplace

BODY = 0.25  # m, half the width of a person
NEAR = 1.0  # m, how close a person works to a source


def person_between(hood: Hood, source: Source, workplace: Workplace) -> str | None:
    """Name of a person whose body is in the line from a source to its hood; None where nobody is."""
    for person in workplace.people:
        if (
            _distance_to_line(person, hood, source) < BODY
            and min(hood.at[2], source.centre[2]) < person.breathing_height
        ):
            return person.name
    return None


def in_the_draught(person: Person, source: Source, workplace: Workplace) -> bool:
    """Whether a person stands close to a source, with the draught from behind."""
    draught = workplace.room.draught
    to_source = (source.centre[0] - person.at[0], source.centre[1] - person.at[1])
    distance = math.hypot(*to_source)
    if draught is None or draught.speed <= 0 or not 0 < distance <= NEAR:
        return False
    along = (to_source[0] * draught.towards[0] + to_source[1] * draught.towards[1]) / distance
    return along > 0.7


def _distance_to_line(person: Person, hood: Hood, source: Source) -> float:
    """Level distance from a person to the stretch between source and hood."""
    ax, ay = hood.at[0] - source.centre[0], hood.at[1] - source.centre[1]
    px, py = person.at[0] - source.centre[0], person.at[1] - source.centre[1]
    length = ax * ax + ay * ay
    along = max(0.0, min(1.0, (px * ax + py * ay) / length)) if length > 0 else 0.0
    return math.hypot(px - along * ax, py - along * ay)

"""The live air of an arrangement: a workplace that is made from the draft, and lies in no file."""

from dataclasses import dataclass
from functools import lru_cache

from hoodwright.errors import InputError
from hoodwright.tasks.arrangements.arrange import arrangement
from hoodwright.workplace import Workplace

KEPT = 32  # drags ask for the same one again and again


@dataclass(frozen=True)
class Made:
    """How the workplace is made from that of the file; without a key it is the file's own."""

    key: str = ""
    hood: str = ""
    source: str = ""
    distance: str = ""

    def of(self, workplace: Workplace) -> Workplace:
        """The workplace to be asked; InputError where it cannot be made."""
        if not self.key:
            return workplace
        try:
            distance = float(self.distance) if self.distance else None
        except ValueError:
            raise InputError(f"'distance': got {self.distance[:40]!r}; metres are needed, for example 0.15") from None
        return _made(workplace, self.hood, self.source, self.key, distance)


@lru_cache(maxsize=KEPT)
def _made(workplace: Workplace, hood: str, source: str, key: str, distance: float | None) -> Workplace:
    return arrangement(workplace, hood, source, key, distance).workplace

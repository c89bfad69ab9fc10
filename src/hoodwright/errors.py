"""Every error hoodwright raises on purpose.

HoodwrightError
 |-- InputError            what was given cannot be used
 |    |-- RangeError       a value outside the range of a formula or a table
 |    |-- UnitError        a unit that is unknown, or of another kind of quantity
 |    `-- WorkplaceError   all faults of one workplace file together
 |-- FileConflict          the file changed on disk since it was read
 |-- NoSolution            an iteration that did not settle
 `-- Cancelled             a long job was told to stop

A message says what, got, allowed, and what to do.
"""

from dataclasses import dataclass


class HoodwrightError(Exception):
    """Base of every error that hoodwright raises on purpose."""


class InputError(HoodwrightError):
    """What was given cannot be used."""


class RangeError(InputError):
    """A value lies outside the range of a formula or a table."""


class UnitError(InputError):
    """A unit is unknown, or belongs to another kind of quantity."""


@dataclass(frozen=True, order=True)
class Fault:
    """One fault of a document: where it stands and how to mend it. Line 0 is the file as a whole."""

    line: int
    column: int
    field: str
    message: str
    file: str = "workplace"

    def __str__(self) -> str:
        if self.line == 0:  # of the file as a whole
            return f"{self.file}: {self.message}"
        return f"{self.file}:{self.line}:{self.column}: {self.field}: {self.message}"


class WorkplaceError(InputError):
    """All faults of one workplace file, in the order of their lines."""

    def __init__(self, faults: list[Fault]):
        self.faults = sorted(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class FileConflict(HoodwrightError):
    """The file changed on disk since it was read; nothing was written."""


class NoSolution(HoodwrightError):
    """An iteration did not settle; the message gives residual and steps."""


class Cancelled(HoodwrightError):
    """A long job was told to stop before it had an answer."""

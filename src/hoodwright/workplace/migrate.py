"""Older files are brought to today's format on reading, step by step, never silently.

To change the format: raise `model.FORMAT`, and add the step from the old number here.
"""

from collections.abc import Callable

from hoodwright.workplace.model import FORMAT
from hoodwright.workplace.quantities import said

Step = Callable[[dict], dict]
STEPS: dict[int, Step] = {}


def migrate(data: dict, steps: dict[int, Step] = STEPS, newest: int = FORMAT) -> tuple[dict, str | None]:
    """The data in format `newest`, or the data as it was and the fault of its version."""
    version = data.get("hoodwright")
    if version is None:
        return data, f"missing; add 'hoodwright: {newest}' as the first line"
    if isinstance(version, bool) or not isinstance(version, int):
        return data, f"a whole number is needed, got {said(version)}; write 'hoodwright: {newest}'"
    if version > newest:
        return (
            data,
            f"format {version} is newer than this hoodwright, which reads up to {newest}; update hoodwright",
        )
    while version < newest:
        if version not in steps:
            return (
                data,
                f"format {version} is not known; allowed: {_known(steps, newest)}; write the number it was made with",
            )
        data = steps[version](data) | {"hoodwright": version + 1}
        version += 1
    return data, None


def _known(steps: dict[int, Step], newest: int) -> str:
    return ", ".join(str(number) for number in [*sorted(steps), newest])

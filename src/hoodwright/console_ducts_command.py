"""The ducts command: what is asked for, in the order it is told."""

import json
from dataclasses import dataclass
from pathlib import Path

from hoodwright.console import console, say
from hoodwright.console_ducts import print_ducts
from hoodwright.console_files import check_output
from hoodwright.errors import InputError
from hoodwright.tasks.as_built.export import report_as_json
from hoodwright.tasks.as_built.network import has_curve
from hoodwright.tasks.as_built.report import duct_report
from hoodwright.workplace import Document, Workplace


@dataclass(frozen=True)
class DuctsAsked:
    """The file and the options of the command."""

    file: Path
    size: bool = False
    dirty: bool = False
    samples: int | None = None
    as_data: bool = False
    xlsx: Path | None = None
    dxf: Path | None = None
    units: str | None = None


def tell_ducts(asked: DuctsAsked) -> None:
    """Print the report, then what else was asked for."""
    check_output("--xlsx", asked.xlsx, (".xlsx", ".csv"), "list.xlsx")
    check_output("--dxf", asked.dxf, (".dxf",), "plan.dxf")
    workplace = Document.open(asked.file).workplace()
    if asked.units:
        workplace = workplace.model_copy(update={"units": asked.units})
    data = _report(workplace, asked)
    if asked.size:
        from hoodwright.console_sizing import sized

        data["sizing"] = sized(workplace, quiet=asked.as_data)
    if asked.samples:
        data["spread"] = _spread(workplace, asked)
    if asked.as_data:
        print(json.dumps(data, indent=2, allow_nan=False))
    if asked.xlsx:
        _write(asked.xlsx, _schedule(workplace, asked.xlsx), asked)
    if asked.dxf:
        from hoodwright.reports.duct_dxf import layout_dxf

        _write(asked.dxf, layout_dxf(workplace), asked)


def _report(workplace: Workplace, asked: DuctsAsked) -> dict:
    """Flows as built; without a curve only what needs none is told, where that is asked for."""
    needs_no_curve = (asked.size or asked.xlsx or asked.dxf) and not asked.samples
    if needs_no_curve and not has_curve(workplace):
        if not asked.as_data:
            say(console(), "No fan has a curve, so no flow is computed as built.")
        return {"workplace": workplace.name}
    report = duct_report(workplace, dirty=asked.dirty)
    if not asked.as_data:
        print_ducts(report, asked.file)
    return report_as_json(report)


def _spread(workplace: Workplace, asked: DuctsAsked) -> dict:
    """How sure the flows are; printed, unless data is asked for."""
    from hoodwright.tasks.as_built.spread import spread_as_json, spread_of

    answer = spread_of(workplace, asked.samples or 0, loaded=asked.dirty)
    if not asked.as_data:
        out = console()
        out.print()
        say(out, f"How sure: {answer.samples} samples of what nobody knows exactly.")
        for hood in answer.hoods:
            say(out, f"{hood.sentence}.", "    ", "  - ")
        for spread in answer.spreads:
            say(out, f"{spread.what}: {spread.words} [{spread.source}].", "    ", "  - ")
        say(out, f"Kept: {answer.kept}.", "    ", "  - ")
    return spread_as_json(answer)


def _schedule(workplace: Workplace, target: Path) -> bytes:
    from hoodwright.reports.duct_schedule import schedule_csv, schedule_xlsx
    from hoodwright.tasks.as_built.schedule import schedule_of

    schedule = schedule_of(workplace)
    return schedule_csv(schedule).encode() if target.suffix.lower() == ".csv" else schedule_xlsx(schedule)


def _write(target: Path, content: bytes, asked: DuctsAsked) -> None:
    try:
        target.write_bytes(content)
    except OSError as error:
        raise InputError(f"{target}: {(error.strerror or 'cannot be written').lower()}; choose another place") from None
    if not asked.as_data:
        console().print(f"Written: {target}")

"""The command line. Heavy imports wait inside the commands, so that --help answers at once."""

import codecs
import os
import sys
from io import TextIOWrapper
from pathlib import Path
from typing import Annotated
from unicodedata import normalize

import typer

from hoodwright import __version__
from hoodwright.errors import HoodwrightError, InputError, WorkplaceError

app = typer.Typer(
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    help="Choose, size and prove local exhaust ventilation: from a workplace file to an answer, a page and a PDF.",
    epilog="Start with: hoodwright demo",
)

PLAIN_LETTERS = "hoodwright-plain-letters"
SAID_PLAINLY = {"°": "deg", "±": "+/-", "●": "[*]", "△": "[/]", "◧": "[?]"}

FileArgument = Annotated[Path, typer.Argument(help="A workplace file (YAML).")]
PaperOption = Annotated[
    str | None, typer.Option(help="Paper of the PDF: a4 or letter; by default a4 for SI, letter for US.")
]
PortOption = Annotated[
    int | None, typer.Option(help="Port of the page; by default the first free one from 8088 on.", min=1, max=65535)
]


def main() -> None:
    """Run the command line: 0 when it was computed, 2 when the input has faults."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors=PLAIN_LETTERS)
    try:
        app()
    except WorkplaceError as error:
        for fault in error.faults:
            print(fault, file=sys.stderr)
        sys.exit(2)
    except InputError as error:
        print(error, file=sys.stderr)
        sys.exit(2)
    except HoodwrightError as error:
        print(error, file=sys.stderr)
        sys.exit(1)
    except OSError as error:
        print(f"cannot write the output: {(error.strerror or str(error)).lower()}", file=sys.stderr)
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)  # so that nothing more is tried at the end
        sys.exit(1)
    except KeyboardInterrupt:
        print("stopped; nothing more was written", file=sys.stderr)
        sys.exit(130)


def _plain_letters(error: UnicodeError) -> tuple[str | bytes, int]:
    """What to write where the terminal cannot show a letter: m3 for m³, deg for °, else a question mark."""
    assert isinstance(error, UnicodeEncodeError)
    lost = error.object[error.start : error.end]
    known = (SAID_PLAINLY.get(c) or normalize("NFKD", c).encode("ascii", "ignore").decode() or "?" for c in lost)
    return "".join(known), error.end


codecs.register_error(PLAIN_LETTERS, _plain_letters)


def _version(wanted: bool) -> None:
    if wanted:
        print(f"hoodwright {__version__}")
        raise typer.Exit


@app.callback()
def _root(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version.")
    ] = False,
) -> None:
    """Choose, size and prove local exhaust ventilation: from a workplace file to an answer, a page and a PDF."""


@app.command()
def demo(
    folder: Annotated[Path, typer.Option(help="Folder to put the demo workplace in.")] = Path("hoodwright-demo"),
    page: Annotated[bool, typer.Option(help="Also open the page in the browser.")] = True,
    port: PortOption = None,
) -> None:
    """Show everything on an invented workshop: the answer, the PDF, then the page."""
    from hoodwright.console import print_answer, write_report
    from hoodwright.workplace.starters import write_starter

    file = folder / "bell-workshop.yaml"
    if not file.exists():
        write_starter("demo", file)
    document, workplace, answer = _assessed(file)
    print_answer(answer, file)
    report = folder / "bell-workshop.pdf"
    write_report(document, workplace, answer, report)
    if page:
        _show_page(folder, file, port, open_browser=True)


@app.command()
def new(
    file: Annotated[Path, typer.Argument(help="Name of the file to write.")] = Path("workplace.yaml"),
    process: Annotated[
        str | None, typer.Option(help="A process of the guide, such as 'artificial nails', to lay the file out for.")
    ] = None,
) -> None:
    """Write a commented workplace file to start from, laid out for a process where one is named."""
    from hoodwright.workplace.starters import starter_text, write_new

    if process is None:
        text = starter_text("starter")
    else:
        from hoodwright.tasks.guide import entry
        from hoodwright.tasks.guide_start import starter_for

        text = starter_for(entry(process))
    write_new(text, file)
    print(f"{file} written. Change its numbers, then: hoodwright assess {file}")


@app.command()
def guide(
    words: Annotated[list[str] | None, typer.Argument(help="Words of a process, trade, contaminant or hazard.")] = None,
    sort: Annotated[str, typer.Option(help="Sort by process, trade, kind, release or hood.")] = "process",
    as_data: Annotated[bool, typer.Option("--json", help="Print the entries for machines, in SI.")] = False,
    units: Annotated[str, typer.Option(help="SI or US.")] = "SI",
) -> None:
    """Look up a process: its hood, release, velocities, cautions, refusals and examination, each with its source."""
    from hoodwright.tasks.guide import SORTS, entry, find_entries, sorted_entries

    _one_of("--units", units, ("SI", "US"))
    _one_of("--sort", sort, SORTS)
    text = " ".join(words or [])
    found = sorted_entries(sort, find_entries(text)) or (entry(text),)
    exact = tuple(one for one in found if one.process.casefold() == text.casefold())
    if as_data:
        import json

        from hoodwright.tasks.guide_export import guide_as_json

        print(json.dumps(guide_as_json(exact or found), indent=2, allow_nan=False))
        return
    from hoodwright.console_guide import print_entries, print_entry

    if exact or len(found) == 1:
        print_entry((exact or found)[0], units)
    else:
        print_entries(found, text, units)


@app.command()
def check(file: FileArgument) -> None:
    """Read a workplace file and list every fault, each with line, field and what to do."""
    from hoodwright.workplace import read_workplace

    workplace = read_workplace(file)
    parts = {"hood": workplace.hoods, "source": workplace.sources, "duct": workplace.ducts}
    counts = ", ".join(f"{len(found)} {word}{'s' * (len(found) != 1)}" for word, found in parts.items())
    print(f"{file}: no faults found in '{workplace.name}' ({counts}).")


@app.command("assess")
def assess_command(
    file: FileArgument,
    as_data: Annotated[bool, typer.Option("--json", help="Print the answer for machines, in SI.")] = False,
    report: Annotated[Path | None, typer.Option(help="Also write the answer as a PDF.")] = None,
    units: Annotated[str | None, typer.Option(help="SI or US; by default what the file says.")] = None,
    paper: PaperOption = None,
) -> None:
    """Answer: is what was intended enough, and is it met today? For every hood, duct and fan."""
    units, paper = _one_of("--units", units, ("SI", "US")), _one_of("--paper", paper, ("a4", "letter"))
    if report is not None and report.suffix.lower() != ".pdf":
        raise InputError(f"--report: got {str(report)!r}; a name that ends in .pdf is needed, for example answer.pdf")
    document, workplace, answer = _assessed(file, units)
    if as_data:
        import json

        from hoodwright.tasks.export import as_json

        utf = "utf" in (sys.stdout.encoding or "").lower()
        print(json.dumps(as_json(answer), indent=2, ensure_ascii=not utf, allow_nan=False))
    else:
        from hoodwright.console import print_answer

        print_answer(answer, file)
    if report:
        from hoodwright.console import write_report

        write_report(document, workplace, answer, report, paper, quiet=as_data)


@app.command("capture")
def capture_command(
    file: FileArgument,
    source: Annotated[str | None, typer.Option(help="Name of one source; by default all.")] = None,
    hood: Annotated[str | None, typer.Option(help="Name of one hood; by default all.")] = None,
    distances: Annotated[
        str | None, typer.Option(help="Move the source along the hood's axis: 25mm,51mm,... from its face.")
    ] = None,
    today: Annotated[bool, typer.Option("--today", help="Take today's flows where they were read.")] = False,
    plot: Annotated[Path | None, typer.Option(help="Also draw capture against distance, as PNG or SVG.")] = None,
    picture: Annotated[
        Path | None, typer.Option("--map", help="Also draw where the hood would still catch, as PNG or SVG.")
    ] = None,
    plane: Annotated[
        str | None, typer.Option(help="Plane of the map: level, through the source, or upright, through the hood.")
    ] = None,
    pdf: Annotated[Path | None, typer.Option(help="Also write all of it as a PDF, with pictures of the smoke.")] = None,
    paper: PaperOption = None,
    as_data: Annotated[bool, typer.Option("--json", help="Print the answer for machines, in SI.")] = False,
) -> None:
    """Compute the air around the hoods: which share of what a source gives off is caught, with its interval."""
    from hoodwright.console_capture import computed, distances_of, print_capture
    from hoodwright.console_capture_files import check_outputs, write_plot
    from hoodwright.console_capture_map import map_asked, mapped, write_map
    from hoodwright.workplace import Document

    paper = _one_of("--paper", paper, ("a4", "letter"))
    check_outputs(plot, picture, pdf, paper)
    asked = map_asked(picture, plane, as_data=as_data)
    places = distances_of(distances)
    document = Document.open(file)
    found = None if asked is None else mapped(document, source, hood, asked, today=today)
    report = computed(document, source, hood, places, today=today)
    if as_data:
        import json

        from hoodwright.tasks.capture.export import capture_as_json

        print(json.dumps(capture_as_json(report, found), indent=2, allow_nan=False))
    else:
        print_capture(report, file)
    if plot:
        write_plot(report, plot, quiet=as_data)
    if found and picture:
        write_map(found, picture, quiet=as_data)
    if pdf:
        from hoodwright.console_capture_pdf import write_pdf

        write_pdf(document, report, pdf, paper, quiet=as_data)


@app.command("ducts")
def ducts_command(
    file: FileArgument,
    size: Annotated[bool, typer.Option("--size", help="Size the ducts so that they balance themselves.")] = False,
    dirty: Annotated[bool, typer.Option("--dirty", help="With dirty filters; else with clean ones.")] = False,
    samples: Annotated[
        int | None, typer.Option(help="Also vary what nobody knows exactly, so many times.", min=10, max=1_000_000)
    ] = None,
    as_data: Annotated[bool, typer.Option("--json", help="Print the answer for machines, in SI.")] = False,
    xlsx: Annotated[Path | None, typer.Option(help="Also write the duct schedule as XLSX or CSV.")] = None,
    dxf: Annotated[Path | None, typer.Option(help="Also write the layout as DXF.")] = None,
    units: Annotated[str | None, typer.Option(help="SI or US; by default what the file says.")] = None,
) -> None:
    """Tell what really flows: flows, velocities and pressures as built, the fan, the filter, and what to set."""
    from hoodwright.console_ducts_command import DuctsAsked, tell_ducts

    units = _one_of("--units", units, ("SI", "US"))
    tell_ducts(DuctsAsked(file, size, dirty, samples, as_data, xlsx, dxf, units))


@app.command("open")
def open_command(
    folder: Annotated[Path, typer.Argument(help="Folder with workplace files, or one file.")] = Path("."),
    port: PortOption = None,
    browser: Annotated[bool, typer.Option(help="Open a browser window where there is one.")] = True,
) -> None:
    """Open the page on this machine (127.0.0.1), on the workplace files of a folder."""
    if not folder.exists():
        raise InputError(f"{folder} does not exist; give a folder with workplace files, or one file")
    first = folder if folder.is_file() else None
    _show_page(folder.parent if first else folder, first, port, open_browser=browser)


@app.command()
def warm() -> None:
    """Compile the computed air ahead, once for this machine, so that its first answer does not wait."""
    from hoodwright.console_warm import warm_with_a_bar

    warm_with_a_bar()


@app.command()
def schema(
    file: Annotated[Path | None, typer.Argument(help="File to write; by default it is printed.")] = None,
) -> None:
    """Write the JSON Schema of the workplace file, for editors that check while one types."""
    import json

    from hoodwright.workplace import json_schema

    text = json.dumps(json_schema(), indent=2)
    if file is None:
        print(text)
    else:
        _write(file, text + "\n")
        print(f"{file} written.")


def _assessed(file: Path, system: str | None = None):
    from hoodwright.tasks.assess import assess
    from hoodwright.workplace import Document

    document = Document.open(file)
    workplace = document.workplace()
    return document, workplace, assess(workplace, system)


def _show_page(folder: Path, first: Path | None, port: int | None, *, open_browser: bool) -> None:
    from hoodwright.web import run

    run(folder, host="127.0.0.1", port=port, open_browser=open_browser, first=first)


def _one_of(option: str, value: str | None, allowed: tuple[str, ...]) -> str | None:
    """The allowed word that was meant, in capitals or not."""
    meant = None if value is None else next((word for word in allowed if word.lower() == value.lower()), None)
    if value is not None and meant is None:
        raise InputError(f"{option}: got {value!r}; allowed: {', '.join(allowed)}; choose one of these")
    return meant


def _write(file: Path, text: str) -> None:
    if file.exists():
        raise InputError(f"{file} exists already; nothing was written: choose another name")
    try:
        file.write_text(text, encoding="utf-8")
    except OSError as error:
        raise InputError(f"{file}: {(error.strerror or 'cannot be written').lower()}; choose another place") from None


if __name__ == "__main__":
    main()

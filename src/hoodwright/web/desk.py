"""What lies open: the workplace files of a folder, and one draft for each file that was opened."""

import re
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from hoodwright.errors import Fault, HoodwrightError, InputError, WorkplaceError
from hoodwright.tasks.guide import entry
from hoodwright.tasks.guide_start import starter_for
from hoodwright.web.draft import FILE_NAME, Draft
from hoodwright.workplace import Document
from hoodwright.workplace.read import read_text
from hoodwright.workplace.starters import write_new


@dataclass(frozen=True)
class Listed:
    """A workplace file of the folder, as the file chooser shows it."""

    path: Path
    title: str
    faults: tuple[Fault, ...]


class Desk:
    """The folder and its open drafts."""

    def __init__(self, folder: Path, first: Path | None = None):
        self.folder = folder.resolve()
        self.first = first.name if first else None
        self._drafts: dict[str, Draft] = {}

    def files(self) -> list[Path]:
        """YAML files of the folder that speak of hoodwright."""
        found = sorted(p for p in self.folder.iterdir() if p.suffix in (".yaml", ".yml") and p.is_file())
        return [path for path in found if path.name == self.first or _speaks_of_hoodwright(path)]

    def listed(self) -> list[Listed]:
        """The files, each with its faults as it lies on disk."""
        return [_listed(path) for path in self.files()]

    def draft(self, name: str | None = None) -> Draft | None:
        """The draft of a file of the folder, or of the first one; None where there is no such file."""
        paths = {path.name: path for path in self.files()}
        name = name or self.first or next(iter(paths), None)
        if name not in self._drafts and name in paths:
            self._drafts[name] = Draft(paths[name])
        return self._drafts.get(name)

    def free_name(self, process: str) -> str:
        """A name for a new file of a process, which no file of the folder has."""
        plain = "-".join(re.findall(r"[a-z0-9]+", process.casefold())) or "workplace"
        names = {path.name for path in self.folder.iterdir()}
        numbered = (f"{plain}-{number}.yaml" for number in range(2, len(names) + 3))
        return next(name for name in (f"{plain}.yaml", *numbered) if name not in names)

    def start(self, process: str, name: str) -> Path:
        """Write a starter file for a process of the guide into the folder; InputError says why it cannot be."""
        if not FILE_NAME.fullmatch(name):
            raise InputError(f"got {name!r}; a name of a file that ends in .yaml is needed, for example my-bench.yaml")
        path = self.folder / name
        write_new(starter_for(entry(process)), path)
        return path

    async def opened(self, name: str | None = None) -> Draft | None:
        """The draft with its answer ready, so that the first page already holds it."""
        draft = self.draft(name)
        if draft and not draft.faults:
            with suppress(HoodwrightError):
                await draft.assessment()
        return draft


def _speaks_of_hoodwright(path: Path) -> bool:
    try:
        return "hoodwright" in path.read_bytes()[:20_000].decode("utf-8", "replace")
    except OSError:
        return False


def _listed(path: Path) -> Listed:
    try:
        document = Document(read_text(path), path)
        return Listed(path, document.workplace().name, ())
    except WorkplaceError as error:
        return Listed(path, "", tuple(error.faults))

"""Takes a part of a workplace away, with what would lead nowhere without it; or says what still needs it."""

from hoodwright.errors import InputError
from hoodwright.tasks.part_names import OUTSIDE, SECTIONS, free_name, parts_of, section_of, sound
from hoodwright.workplace import Document, Workplace
from hoodwright.workplace.items import data_of, without_item


def remove_part(document: Document, name: str) -> Document:
    """The document without a part. With a hood go its duct and whatever carried its air alone.

    A duct between two others is closed up: what led into it leads where it led. InputError says what still needs
    the part.
    """
    workplace = document.workplace()
    if name in {duct.start for duct in workplace.ducts} - set(parts_of(workplace)):
        raise InputError(f"{name!r} is where ducts meet; take a duct away there, and it goes with the last")
    section, _ = section_of(workplace, name)
    if section in REFUSED:
        REFUSED[section](workplace, name)
    with_it = goes_with(workplace, name)
    document = _led_on(document, workplace, name, section)
    for one in (*with_it, name):
        document = _without(document, one)
    if section == "cleaners":
        document = _as_meeting(document, workplace, name)
    return sound(document)


def goes_with(workplace: Workplace, name: str) -> tuple[str, ...]:
    """The names of the parts that go with one, as nothing leads to them any more."""
    section, index = section_of(workplace, name)
    if section == "hoods":
        gone = [duct for duct in workplace.ducts if duct.start == name]
    elif section == "ducts":
        gone = [workplace.ducts[index]]
    else:
        return ()
    if section == "ducts" and any(duct.to == gone[0].start for duct in workplace.ducts):
        return ()  # what leads into it leads on
    parts = _nodes(workplace)
    found: list[str] = []
    left = [duct for duct in workplace.ducts if duct not in gone]
    while gone:
        ended = {duct.to for duct in gone} - {duct.to for duct in left} - {OUTSIDE}
        found += [duct.name for duct in gone] + [end for end in ended if end in parts]
        gone = [duct for duct in left if duct.start in ended]
        left = [duct for duct in left if duct not in gone]
    return tuple(one for one in found if one != name)


def _contaminant(workplace: Workplace, name: str) -> None:
    needed = [source.name for source in workplace.sources if source.contaminant == name]
    if needed:
        raise InputError(f"{_listed(needed)} gives off {name!r}; take that source away first")


def _source(workplace: Workplace, name: str) -> None:
    needed = [hood.name for hood in workplace.hoods if hood.serves == (name,)]
    if needed:
        raise InputError(f"{_listed(needed)} serves nothing but {name!r}; take that hood away first")


def _fan(workplace: Workplace, name: str) -> None:
    if any(name in (duct.start, duct.to) for duct in workplace.ducts):
        hoods = _listed(_hoods_before(workplace, name))
        raise InputError(
            f"{name!r} still draws the air of {hoods or 'its ducts'}; take their ducts away, and it goes with the last"
        )


def _duct(workplace: Workplace, name: str) -> None:
    duct = next(one for one in workplace.ducts if one.name == name)
    led = [one.name for one in workplace.ducts if one.to == duct.start]
    if led and duct.start in _nodes(workplace):
        raise InputError(f"{duct.start!r} needs {name!r} to lead its air on; take {duct.start!r} away instead")


REFUSED = {"contaminants": _contaminant, "sources": _source, "fans": _fan, "ducts": _duct}


def _led_on(document: Document, workplace: Workplace, name: str, section: str) -> Document:
    """Ducts that led into a duct that goes lead where it led."""
    if section != "ducts":
        return document
    gone = next(duct for duct in workplace.ducts if duct.name == name)
    for index, duct in enumerate(workplace.ducts):
        if duct.to == gone.start:
            document = document.set(("ducts", index, "to"), gone.to)
    return document


def _as_meeting(document: Document, workplace: Workplace, name: str) -> Document:
    """What led to a cleaner that is gone leads to a point where ducts meet."""
    meeting = free_name(workplace, "J", numbered=True)
    for index, duct in enumerate(document.workplace().ducts):
        for key, end in (("from", duct.start), ("to", duct.to)):
            if end == name:
                document = document.set(("ducts", index, key), meeting)
    return document


def _without(document: Document, name: str) -> Document:
    """The document without one part, and without its name where others list it."""
    section, index = _place(document, name)
    if section == "sources":
        for i, hood in enumerate(data_of(document)["hoods"]):
            document = _shorter(document, ("hoods", i, "serves"), hood.get("serves"), name)
    for i, state in enumerate(data_of(document).get("scenarios") or []):
        if section == "hoods":
            document = _shorter(document, ("scenarios", i, "closed"), state.get("closed"), name)
        for key in state.get("dampers") or {}:
            if section == "ducts" and key.strip() == name:
                document = document.remove(("scenarios", i, "dampers", key))
    return without_item(document, section, index)


def _place(document: Document, name: str) -> tuple[str, int]:
    """Where a part stands in the text; half-way, the document need not read as a workplace."""
    found = (
        (section, index)
        for section in SECTIONS
        for index, item in enumerate(data_of(document).get(section) or [])
        if str(item.get("name", "")).strip() == name
    )
    return next(found)


def _shorter(document: Document, path: tuple, names: object, gone: str) -> Document:
    """A list of names without one of them."""
    if not isinstance(names, list) or gone not in [str(one).strip() for one in names]:
        return document
    return document.set(path, [one for one in names if str(one).strip() != gone])


def _hoods_before(workplace: Workplace, node: str) -> list[str]:
    """Hoods whose air comes through a fan or a meeting of ducts."""
    follow = {duct.start: duct.to for duct in workplace.ducts}
    found = []
    for hood in workplace.hoods:
        here, left = hood.name, len(follow)
        while here in follow and here != node and left >= 0:
            here, left = follow[here], left - 1
        found += [hood.name] if here == node else []
    return found


def _nodes(workplace: Workplace) -> set[str]:
    return {cleaner.name for cleaner in workplace.cleaners} | {fan.name for fan in workplace.fans}


def _listed(names: list[str]) -> str:
    return ", ".join(names)

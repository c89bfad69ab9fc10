"""What can be changed on a hood, by its type, in the user's words."""

from hoodwright import units
from hoodwright.tasks import edits
from hoodwright.web.components.fields import Fields
from hoodwright.web.components.words import Words
from hoodwright.workplace import Document
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, ReceivingHood
from hoodwright.workplace.quantities import Row
from hoodwright.workplace.tree import Path

SHAPES = {"round": "round", "rectangle": "rectangular", "slot": "slot"}
SIDES = {
    "round": (("Diameter",), ()),
    "rectangle": (("Width", "Height"), (0, 1)),
    "slot": (("Length of the slot", "Width of the slot"), (0, 1)),
}
OPEN_SIDES = {"4": "open on four sides", "3": "on three, a wall on one", "2": "on two"}
ENTRIES = {
    "none": "straight from the opening",
    "taper": "through a taper",
    "like": "like a hood of the table",
    "loss": "with a loss that is known",
    "slots": "through slots before a plenum",
}
FIRST_ENTRY = {"taper": {"taper": "60 deg"}, "loss": {"loss": 0.5}}


def shape_of(hood: Hood) -> str:
    """The key of the file that gives the opening's shape."""
    return next(key for key in SHAPES if getattr(hood.opening, key) is not None)


def layout_of(hood: Hood) -> tuple:
    """What decides which fields there are; when it changes they are built anew."""
    entry = None if hood.entry is None else tuple(key for key in ENTRIES if getattr(hood.entry, key, None) is not None)
    has = (hood.filter is not None, getattr(hood, "push", None) is not None, getattr(hood, "inside", None) is not None)
    return hood.type, hood.serves, shape_of(hood), entry, has, isinstance(hood, ReceivingHood) and hood.is_canopy


def hood_fields(fields: Fields, hood: Hood, path: Path) -> None:
    """All fields of a hood."""
    with fields.group("Where is it?"):
        _where(fields, hood, path)
    with fields.group("What opening does it have?"):
        _opening(fields, hood, path)
    if isinstance(hood, EnclosingHood):
        with fields.group("What kind of enclosure is it?"):
            _enclosure(fields, hood, path)
    if isinstance(hood, CapturingHood) and hood.push is not None:
        with fields.group("The nozzle that blows towards it"):
            _push(fields, path)
    with fields.group("How does the air enter its duct?"):
        _entry(fields, hood, path)
    with fields.group("What does it get?"):
        fields.optional((*path, "intended_flow"), "Intended flow", "flow")
        fields.text((*path, "today", "flow"), "Flow read today", "flow", gone=(*path, "today"))
        fields.optional((*path, "today", "uncertainty"), "Uncertainty of today's flow, ±", "share")


def _where(fields: Fields, hood: Hood, path: Path) -> None:
    for source in hood.serves:
        if isinstance(hood, ReceivingHood) and hood.is_canopy:
            _height(fields, path, hood.name, source)
        elif not isinstance(hood, EnclosingHood):
            _distance(fields, path, hood.name, source)
    fields.point((*path, "at"))
    down = "0, 0, -1" if isinstance(hood, ReceivingHood) else ""
    fields.way((*path, "facing"), "It looks", down)
    fields.direction((*path, "facing"), "The same as three numbers", unsaid=down)
    if not hood.opening.is_round:
        fields.direction((*path, "along"), "Direction of its first side", optional=True)


def _distance(fields: Fields, path: Path, hood: str, source: str) -> None:
    def shown() -> str:
        workplace = fields.draft.workplace
        return _said(fields, edits.distance_along_axis(workplace.hoods[int(path[1])], workplace.source(source)))

    def apply(document: Document, text: str) -> Document:
        return edits.moved_to_distance(document, hood, source, units.parse(text, "length"))

    fields.asked((*path, "distance", source), f"Distance to the {source}, along the hood's axis", shown, apply)


def _height(fields: Fields, path: Path, hood: str, source: str) -> None:
    def shown() -> str:
        workplace = fields.draft.workplace
        return _said(fields, edits.height_above(workplace.hoods[int(path[1])], workplace.source(source)))

    def apply(document: Document, text: str) -> Document:
        return edits.moved_to_height(document, hood, source, units.parse(text, "length"))

    fields.asked((*path, "height", source), f"Height above the {source}", shown, apply)


def _said(fields: Fields, length: float) -> str:
    return units.show(length, "length", fields.draft.system).replace("\u2009", " ")


def _opening(fields: Fields, hood: Hood, path: Path) -> None:
    shape, at = shape_of(hood), (*path, "opening")
    kept = SHAPES if isinstance(hood, CapturingHood) else {key: SHAPES[key] for key in ("round", "rectangle")}
    fields.radio(
        "Shape of the opening",
        kept | {shape: SHAPES[shape]},
        lambda: shape_of(fields.draft.workplace.hoods[int(path[1])]),
        lambda document, chosen: edits.with_shape(document, hood.name, chosen),
    )
    labels, steps = SIDES[shape]
    for label, step in zip(labels, steps or ((),), strict=True):
        fields.text((*at, shape, step) if steps else (*at, shape), label, "length")
    if isinstance(hood, CapturingHood):
        fields.optional((*path, "flange"), "Flange width", "length")
        fields.rows((*path, "form"), "Form, by its table", Row("hood_forms", "form").words)
    if isinstance(hood, ReceivingHood) and hood.is_canopy:
        sides = (*path, "open_sides")
        fields.radio(
            "Open sides",
            OPEN_SIDES,
            lambda: fields.says(sides) or "4",
            lambda document, chosen: document.set(sides, int(chosen)),
        )


def _enclosure(fields: Fields, hood: EnclosingHood, path: Path) -> None:
    fields.rows((*path, "form"), "Form", Row("face_velocity", "form").words, optional=False)
    fields.optional((*path, "face_velocity"), "Face velocity, stated", "velocity")
    fields.optional((*path, "sill"), "Height of its sill above the floor inside", "length")
    if hood.inside is None:
        sides = [units.write(side, "length", "SI") for side in hood.box]
        fields.button("Say how large it is inside", lambda document: document.set((*path, "inside"), sides))
        return
    for axis, label in enumerate(("Width inside", "Height inside", "Depth inside")):
        fields.text((*path, "inside", axis), label, "length")
    for index, other in enumerate(hood.other_openings):
        _other_opening(fields, (*path, "other_openings", index), other.name, other.is_round)


def _other_opening(fields: Fields, at: Path, name: str, is_round: bool) -> None:
    if is_round:
        fields.text((*at, "round"), f"{name}: diameter", "length")
        return
    for side, label in enumerate(("width", "height")):
        fields.text((*at, "rectangle", side), f"{name}: {label}", "length")


def _push(fields: Fields, path: Path) -> None:
    fields.text((*path, "push", "flow"), "Flow blown", "flow")
    fields.text((*path, "push", "slot", 0), "Length of its slot", "length")
    fields.text((*path, "push", "slot", 1), "Width of its slot", "length")


def _entry(fields: Fields, hood: Hood, path: Path) -> None:
    at, rows = (*path, "entry"), Row("hood_entry_loss", "hood").words
    now = "none" if hood.entry is None else next(key for key in ENTRIES if getattr(hood.entry, key, None) is not None)
    known = {key: words for key, words in ENTRIES.items() if key != "slots" or now == "slots"}

    def act(document: Document, chosen: str) -> Document:
        if chosen == "none":
            return document.remove(at) if document.words(at) else document
        return document.set(at, FIRST_ENTRY.get(chosen) or {"like": rows[0]})

    fields.select("Entry into the duct", known, lambda: _entry_key(fields, path), act)
    if now == "taper":
        fields.text((*at, "taper"), "Included angle of the taper", "angle")
    elif now == "loss":
        fields.text((*at, "loss"), "Loss, in velocity pressures", "number")
    elif now == "like":
        fields.rows((*at, "like"), "Hood of the table", rows, optional=False)
    elif now == "slots":
        _slots(fields, hood, (*at, "slots"))
    if hood.filter is not None:
        Words("p", "A filter sits in the hood.", "because across")
        fields.text((*path, "filter", "clean"), "Filter, clean", "pressure")
        fields.text((*path, "filter", "dirty"), "Filter, loaded", "pressure")
        fields.text((*path, "filter", "at"), "Filter, at a flow of", "flow")


def _slots(fields: Fields, hood: Hood, at: Path) -> None:
    for key, label in (("size", "Slot"), ("plenum", "Plenum")):
        fields.text((*at, key, 0), f"{label}: length", "length")
        fields.text((*at, key, 1), f"{label}: width", "length")
    take_off = hood.entry and hood.entry.slots and hood.entry.slots.take_off
    if take_off and take_off.taper is not None:
        fields.text((*at, "take_off", "taper"), "Included angle of its take-off", "angle")


def _entry_key(fields: Fields, path: Path) -> str:
    entry = fields.draft.workplace.hoods[int(path[1])].entry
    return "none" if entry is None else next(key for key in ENTRIES if getattr(entry, key, None) is not None)

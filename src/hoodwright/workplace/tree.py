"""YAML text as plain data, with the place of every value in the text.

The data holds only dict, list, str, int, float, bool and None. Nothing is built from tags, so a file cannot
do anything but be read.
"""

from dataclasses import dataclass, field, replace

from ruamel.yaml import YAML
from ruamel.yaml.composer import MaxDepthExceededError
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode
from ruamel.yaml.reader import ReaderError

from hoodwright.errors import Fault

Path = tuple[str | int, ...]
MOST_BYTES = 2_000_000
DEEPEST = 24
MOST_NODES = 100_000
LONGEST_WORD = 60


@dataclass(frozen=True)
class Place:
    """Where a value stands: 1-based line and column, and the slice of the text it fills."""

    line: int
    column: int
    start: int
    end: int
    inline: bool = False


@dataclass
class Tree:
    """Plain data of a YAML text, the place of each value and of each key, and the faults met on the way."""

    data: object = None
    places: dict[Path, Place] = field(default_factory=dict)
    keys: dict[Path, Place] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)

    def place(self, path: Path) -> Place:
        """Place of a value, or of the nearest parent that stands in the text."""
        while path and path not in self.places:
            path = path[:-1]
        return self.places.get(path, Place(1, 1, 0, 0))

    def fault(self, path: Path, message: str, *, at_key: bool = False) -> Fault:
        """A fault at the value of `path`, or at its key."""
        place = self.keys.get(path) if at_key else None
        place = place or self.place(path)
        return Fault(place.line, place.column, self.label(path), message)

    def label(self, path: Path) -> str:
        """A path as people say it: hoods[bench nozzle].opening.round"""
        words, data = "", self.data
        for step in path:
            data = _step_into(data, step)
            if isinstance(step, int):
                name = data.get("name") if isinstance(data, dict) else None
                words += f"[{word(name)}]" if isinstance(name, str) and name.strip() else f"[#{step + 1}]"
            else:
                words += f".{word(step)}" if words else word(step)
        return words or "file"


def word(text: str) -> str:
    """A key or name on one short, printable line."""
    plain = "".join(c if c.isprintable() else "?" for c in " ".join(text.split()))
    return plain if len(plain) <= LONGEST_WORD else plain[: LONGEST_WORD - 3] + "..."


def _step_into(data, step):
    try:
        return data[step]
    except (KeyError, IndexError, TypeError):
        return None


def read_tree(text: str) -> Tree:
    """Parse YAML text. Faults of syntax are collected in the tree, never raised."""
    tree = Tree()
    if len(text) > MOST_BYTES:
        tree.faults.append(Fault(1, 1, "file", f"{len(text)} characters; at most {MOST_BYTES} are read"))
        return tree
    yaml = YAML(pure=True)
    yaml.max_depth = DEEPEST
    yaml.composer.warn_double_anchors = False
    try:
        root = yaml.compose(text)
    except MaxDepthExceededError as error:
        tree.faults.append(
            _fault_at(error, f"nested too deep; at most {DEEPEST} levels are read: write it out plainly")
        )
        return tree
    except MarkedYAMLError as error:
        tree.faults.append(_syntax_fault(error))
        return tree
    except ReaderError as error:
        tree.faults.append(_character_fault(text, error))
        return tree
    except (
        YAMLError,
        ValueError,
        UnicodeError,
        AttributeError,
        AssertionError,
        IndexError,
        TypeError,
    ) as error:
        words = " ".join(str(error).split())[:120]
        tree.faults.append(Fault(1, 1, "file", f"cannot be read as YAML ({words}); mend or remove that part"))
        return tree
    if root is not None:
        builder = _Builder(tree, text)
        tree.data = builder.build(root, ())
        tree.faults += [_given_twice(tree, path, place) for path, place in builder.twice]
    return tree


def _syntax_fault(error: MarkedYAMLError) -> Fault:
    problem = " ".join(str(error.problem or error.context or "not YAML").split())
    return _fault_at(error, f"cannot be read as YAML: {problem}; check indents, colons and brackets here")


def _fault_at(error: MarkedYAMLError, message: str) -> Fault:
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
    return Fault(line, column, "file", message)


def _character_fault(text: str, error: ReaderError) -> Fault:
    before = text[: error.position].split("\n")
    message = f"character {ord(text[error.position]):#06x} cannot stand in YAML; remove it"
    return Fault(len(before), len(before[-1]) + 1, "file", message)


def _given_twice(tree: Tree, path: Path, place: Place) -> Fault:
    first = tree.keys[path].line
    message = f"given twice (first in line {first}); keep one of the two"
    return Fault(place.line, place.column, tree.label(path), message)


class _Builder:
    """Walks the nodes once; a node that contains itself or is too deep becomes a fault."""

    def __init__(self, tree: Tree, text: str):
        self.tree, self.text = tree, text
        self.open: set[int] = set()
        self.count = 0
        self.twice: list[tuple[Path, Place]] = []

    def build(self, node: Node, path: Path, place: Place | None = None):
        self.count += 1
        self.tree.places[path] = place or _place(node)
        if id(node) in self.open or len(path) > DEEPEST or self.count > MOST_NODES:
            self._refuse(path, "nested too deep, or contains itself; write it out plainly")
            return None
        self.open.add(id(node))
        try:
            return self._value(node, path)
        finally:
            self.open.discard(id(node))

    def _value(self, node: Node, path: Path):
        if isinstance(node, MappingNode):
            return self._mapping(node, path)
        if isinstance(node, SequenceNode):
            found = [self.build(child, (*path, i)) for i, child in enumerate(node.value)]
            self._end_with(path, (*path, len(found) - 1))
            return found
        return _scalar(node)

    def _mapping(self, node: MappingNode, path: Path) -> dict:
        found: dict = {}
        for key_node, value_node in node.value:
            key = str(key_node.value) if isinstance(key_node, ScalarNode) else None
            if key is None:
                self._refuse(path, "a key must be a plain word; got a list or a mapping")
                continue
            at = (*path, key)
            if key in found:
                self.twice.append((at, _place(key_node)))
                continue
            self.tree.keys[at] = _place(key_node)
            found[key] = self.build(value_node, at, self._nothing_after(key_node, value_node))
        self._end_with(path, (*path, next(reversed(found), "")))
        return found

    def _end_with(self, path: Path, last: Path) -> None:
        """A block ends with its last value; YAML counts the comments up to the next key to it."""
        place, inner = self.tree.places[path], self.tree.places.get(last)
        if inner and not place.inline and place.start <= inner.start <= place.end:
            self.tree.places[path] = replace(place, end=inner.end)

    def _nothing_after(self, key: Node, value: Node) -> Place | None:
        """Place of a value that is not written, right behind its key's colon; YAML places it at the next word."""
        start, end = key.start_mark, key.end_mark
        colon = self.text.find(":", end.index)
        if value.start_mark.index != value.end_mark.index or self.text[end.index : colon].strip() or colon < 0:
            return None
        return Place(start.line + 1, start.column + 1, colon + 1, colon + 1)

    def _refuse(self, path: Path, message: str) -> None:
        if self.count <= MOST_NODES + 1:
            self.tree.faults.append(self.tree.fault(path, message))


def _place(node: Node) -> Place:
    start, end = node.start_mark, node.end_mark
    return Place(start.line + 1, start.column + 1, start.index, end.index, bool(getattr(node, "flow_style", False)))


def _scalar(node: Node):
    tag = str(node.tag or "").rsplit(":", 1)[-1]
    text = node.value
    try:
        if tag == "int" and len(text) < 20:
            return int(text.replace("_", ""), 0 if text.lower().lstrip("+-").startswith(("0x", "0o", "0b")) else 10)
        if tag == "float":
            return float(text.replace("_", "").replace(".inf", "inf").replace(".nan", "nan"))
    except ValueError:
        return text
    if tag == "bool":
        return text.lower() == "true"
    if tag == "null":
        return None
    return text

"""Faults of the scenarios: names that lead nowhere, and names given twice."""

from difflib import get_close_matches

from hoodwright.errors import Fault
from hoodwright.workplace.quantities import said
from hoodwright.workplace.tree import Tree, word

MOST_NAMES = 12  # that a message lists


def check_scenarios(data: dict, tree: Tree) -> list[Fault]:
    """What the scenarios name must be in the file. Works on faulty data too."""
    hoods, ducts = _names(data, "hoods"), _names(data, "ducts")
    faults: list[Fault] = []
    seen: set[str] = set()
    for i, scenario in enumerate(_listed(data, "scenarios")):
        if not isinstance(scenario, dict):
            continue
        name, closed, dampers = (scenario.get(key) for key in ("name", "closed", "dampers"))
        if isinstance(name, str) and name.strip() in seen:
            message = f"{said(name)} is already the name of another scenario; give each its own"
            faults.append(tree.fault(("scenarios", i, "name"), message))
        seen.add(str(name).strip())
        for j, one in enumerate(closed if isinstance(closed, list) else []):
            if isinstance(one, str) and one.strip() not in hoods:
                faults.append(tree.fault(("scenarios", i, "closed", j), _nowhere(one, hoods, "hood")))
        for one in dampers if isinstance(dampers, dict) else {}:
            if isinstance(one, str) and one.strip() not in ducts:
                faults.append(tree.fault(("scenarios", i, "dampers"), _nowhere(one, ducts, "duct")))
    return faults


def _listed(data: dict, section: str) -> list:
    found = data.get(section)
    return found if isinstance(found, list) else []


def _names(data: dict, section: str) -> list[str]:
    items = [item for item in _listed(data, section) if isinstance(item, dict)]
    return [item["name"].strip() for item in items if isinstance(item.get("name"), str)]


def _nowhere(name: str, known: list[str], what: str) -> str:
    close = get_close_matches(name, known, n=1, cutoff=0.6)
    advice = f"did you mean {close[0]!r}?" if close else f"add that {what} or mend the name"
    there = [word(one) for one in known[:MOST_NAMES]]
    there += [f"and {len(known) - MOST_NAMES} more"] if len(known) > MOST_NAMES else []
    return f"no {what} is named {said(name)}; there is: {', '.join(there) or 'none'}; {advice}"

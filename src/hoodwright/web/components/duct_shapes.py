"""Shapes of the duct drawing: troubles in a box of 16 by 16, and what stands between the ducts round a middle."""

from hoodwright.results import Verdict
from hoodwright.web.components.words import MARKS

SHORT = MARKS[Verdict.SHORT]
TROUBLE_SHAPES = {
    "short": SHORT,
    "reversed": '<path d="M14 4H6a4 4 0 0 0 0 8h7M3 0 l0 0M10 8.5 14 12l-4 3.5" fill="none" stroke="currentColor" '
    'stroke-width="2" stroke-linecap="round" stroke-linejoin="round" transform="matrix(-1 0 0 1 16 0)"/>',
    "settles": '<g fill="currentColor"><circle cx="3.5" cy="10" r="2"/><circle cx="8" cy="5" r="2"/>'
    '<circle cx="12.5" cy="9" r="2"/><rect x="0" y="13" width="16" height="2.4"/></g>',
    "shut": '<circle cx="8" cy="8" r="6.5" fill="none" stroke="currentColor" stroke-width="2"/>'
    '<path d="M3.5 12.5 12.5 3.5" stroke="currentColor" stroke-width="2"/>',
    "unstable": '<path d="M1 11 4.5 4 8 12 11.5 4 15 11" fill="none" stroke="currentColor" stroke-width="2" '
    'stroke-linejoin="round"/>',
    "uncurved": MARKS[Verdict.CANNOT_TELL],
}
ENOUGH = MARKS[Verdict.MEETS]

HOOD = '<path class="hood-shape" d="M-24 -15 -4 -7V7L-24 15Z"/>'
FAN = (
    '<circle class="machine" r="23"/><g class="blades">'
    + "".join(
        f'<path d="M0 -3C8 -6 12 -12 7 -18C2 -16 -2 -10 0 -3Z" transform="rotate({turn})"/>' for turn in (0, 120, 240)
    )
    + '<circle r="3.5"/></g>'
)
STACK = '<path class="machine-line" d="M0 8V-16M-8 -8 0 -17 8 -8"/>'
ONWARD = '<path class="machine-line" d="M-8 0H10M3 -7 11 0 3 7"/>'
FOLDED = '<g class="folded-shape"><path d="M-26 -14H-8L-2 0-8 14H-26Z"/><path d="M-20 -14V14M-14 -14V14"/></g>'
DOT = '<circle class="junction-shape" r="4.5"/>'


def trouble_mark(key: str) -> str:
    """The shape of a trouble, to stand in a line of words."""
    return f'<svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">{TROUBLE_SHAPES[key]}</svg>'


def junction(name: str) -> str:
    """A label on the ducts where they meet."""
    half = pill_half(name)
    return f'<rect class="junction-shape" x="{-half}" y="-12" width="{2 * half}" height="24" rx="12"/>'


def pill_half(name: str) -> float:
    """Half the width of a junction's label."""
    return max(14.0, 4.4 * len(name) + 8)


def cleaner(load: float) -> str:
    """A box that fills with how dirty it is."""
    high = 48 * min(max(load, 0.0), 1.0)
    return (
        '<rect class="machine" x="-19" y="-26" width="38" height="52" rx="4"/>'
        f'<rect class="cake" x="-17" y="{24 - high:.1f}" width="34" height="{high:.1f}" rx="2"/>'
        '<path class="pleats" d="M-10 -24V24M0 -24V24M10 -24V24"/>'
    )

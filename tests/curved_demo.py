"""The demo file with curves for its fans, so that what really flows can be told."""

from importlib.resources import files

ROOF = (
    "curve: [[0 m3/h, 2600 Pa], [1500 m3/h, 2750 Pa], [3000 m3/h, 2600 Pa], [4800 m3/h, 2150 Pa], "
    "[6500 m3/h, 1300 Pa], [7800 m3/h, 300 Pa]]"
)
BOOTH = "curve: [[0 m3/h, 600 Pa], [1500 m3/h, 560 Pa], [2500 m3/h, 400 Pa], [3500 m3/h, 120 Pa]]"
FANS = f"""fans:
  - {{name: roof fan, efficiency: 60 %, pressure: total, speed: 1450 rpm, hours: 1800 h, {ROOF}}}
  - {{name: booth fan, efficiency: 55 %, pressure: total, {BOOTH}}}
"""
UNCURVED = """fans:
  - {name: roof fan, efficiency: 60 %}
  - {name: booth fan, efficiency: 55 %}
"""


def demo(fans: str = FANS) -> str:
    """The text of the demo with these fans as its last part."""
    text = (files("hoodwright") / "workplace" / "starters" / "demo.yaml").read_text(encoding="utf-8")
    before = text[: text.index("\nfans:") + 1]
    after = text[text.index("\nfans:") + 1 :].split("\n\n", 1)
    return before + fans + (f"\n{after[1]}" if len(after) > 1 else "")

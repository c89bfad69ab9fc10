"""Draw the hoods of docs/choose.md from the example of docs/workplace-file.md: python -m tools.make_pictures."""

import re
import tempfile
from pathlib import Path

from hoodwright.reports.close_up import close_up_svg
from hoodwright.tasks.picture import picture
from hoodwright.workplace import read_workplace

DOCS = Path(__file__).parents[1] / "docs"
PAPER = '><rect width="100%" height="100%" fill="#FBF9F4"/>'  # ink on paper, on a dark page too
SHOWN = ("arm hood", "crucible canopy", "tipping booth")


def main() -> None:
    """Write one SVG a hood into docs/pictures."""
    blocks = re.findall(r"```yaml\n(.*?)```", (DOCS / "workplace-file.md").read_text(encoding="utf-8"), re.DOTALL)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "page.yaml"
        path.write_text("".join(blocks), encoding="utf-8")
        drawn = picture(read_workplace(path))
    for name in SHOWN:
        svg = close_up_svg(drawn, name, "SI").replace(">", PAPER, 1)
        (DOCS / "pictures" / f"{name.replace(' ', '-')}.svg").write_text(svg, encoding="utf-8")


if __name__ == "__main__":
    main()

"""A workplace with six hoods of unusual shapes: slot, table that looks up, push nozzle, resting hood, thrown stream,
total enclosure with other openings."""

from pathlib import Path

ODD_HOODS = (Path(__file__).parent / "odd-hoods.yaml").read_text(encoding="utf-8")

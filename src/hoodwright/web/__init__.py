"""The page in the browser: what lies open, the pages, and the server that shows them on this machine only."""

from hoodwright.web.app import build, run
from hoodwright.web.desk import Desk

__all__ = ["Desk", "build", "run"]

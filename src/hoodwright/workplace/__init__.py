"""The workplace file: read, check, edit without losing a comment, write."""

from hoodwright.workplace.document import Document
from hoodwright.workplace.model import Workplace
from hoodwright.workplace.read import parse_workplace, read_workplace
from hoodwright.workplace.schema import json_schema

__all__ = ["Document", "Workplace", "json_schema", "parse_workplace", "read_workplace"]

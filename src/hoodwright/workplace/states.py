"""How prices and positions of dampers are typed: 0.25 per kWh, {B1: 4}."""

import re
from dataclasses import dataclass
from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

from hoodwright.workplace.quantities import Measure, said

DEAREST = 1e6
DAMPER_LOSS = Measure("number", least=0.0, most=1e6, example="4")


@dataclass(frozen=True)
class Price:
    """How a price is read: a number, with or without what it is for."""

    unit: str

    def read(self, value: Any) -> float:
        """The number; ValueError says how a price is written."""
        found = re.fullmatch(rf"(\d+(?:\.\d+)?)(?: *(?:per|/) *{self.unit})?", str(value).strip(), re.IGNORECASE)
        if found is None or isinstance(value, bool):
            raise ValueError(f"a price is needed, got {said(value)}; write for example '0.25 per {self.unit}'")
        price = float(found[1])
        if price > DEAREST:
            raise ValueError(f"got {said(value)}; allowed: at most {DEAREST:g} per {self.unit}; read it again")
        return price

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self.read, core_schema.float_schema())

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {"type": ["string", "number"], "title": "price", "description": f"price, such as 0.25 per {self.unit}"}


@dataclass(frozen=True)
class Positions:
    """Dampers by the duct they are in, each with its loss in velocity pressures."""

    def read(self, value: Any) -> tuple[tuple[str, float], ...]:
        """Pairs of duct and loss; ValueError says how they are written."""
        if not isinstance(value, dict):
            raise ValueError(f"dampers by their ducts are needed, got {said(value)}; write for example {{B1: 4}}")
        return tuple((str(duct).strip(), DAMPER_LOSS.read(loss)) for duct, loss in value.items())

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {"type": "object", "additionalProperties": {"type": "number"}, "description": "loss by duct"}

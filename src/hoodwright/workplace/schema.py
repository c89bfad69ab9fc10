"""JSON Schema of the workplace file, for editors that complete and check while one types."""

from hoodwright.workplace.model import FORMAT, Workplace


def json_schema() -> dict:
    """The schema as plain data (draft 2020-12)."""
    found = Workplace.model_json_schema(by_alias=True)
    head = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"hoodwright workplace file, format {FORMAT}",
    }
    return head | {key: value for key, value in found.items() if key != "title"}

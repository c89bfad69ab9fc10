"""What machines read: the answer as JSON, and whether the server is up."""

from fastapi.responses import JSONResponse
from nicegui import app

from hoodwright.errors import HoodwrightError
from hoodwright.tasks.export import as_json
from hoodwright.web.desk import Desk


def register(desk: Desk) -> None:
    """Routes that answer with JSON."""

    @app.get("/health")
    def health() -> dict:
        return {"ok": True}

    @app.get("/api/assessment")
    async def assessment(file: str | None = None) -> JSONResponse:
        draft = desk.draft(file)
        if draft is None:
            return JSONResponse({"error": f"no workplace file {file!r} in {desk.folder}"}, 404)
        if draft.faults:
            return JSONResponse({"faults": [str(fault) for fault in draft.faults]}, 422)
        try:
            return JSONResponse(as_json(await draft.assessment()))
        except HoodwrightError as error:
            return JSONResponse({"error": str(error)}, 422)

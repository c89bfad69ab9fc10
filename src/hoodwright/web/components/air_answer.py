"""What the computed air says in words, with the handbook's outcome beside it."""

from hoodwright.results import Verdict
from hoodwright.web.components.words import Words, block, mark

WAITING = "Computing the air around the {hood} ..."
COMPUTED = "Computed air"


class AirAnswer:
    """A sentence, how far to trust it, and what the handbook says. The old answer stays, greyed, while work goes on."""

    def __init__(self):
        with block("div", "air-answer") as self.box:
            self.sentence = Words("p", "", "sentence caught").mark("caught")
            with block("p", "trust"):
                self.banner = Words("strong", "").mark("banner")
            with block("div", "beside") as self.beside:
                Words("h3", "The handbook says")
                with block("p", "verdict small"):
                    self.mark = block("span")
                    self.handbook = Words("span", "").mark("handbook")
                self.differs = Words("p", "", "because differs")
        self.beside.set_visibility(False)

    def wait(self, hood: str) -> None:
        """Nothing is known yet."""
        self.sentence.text = WAITING.format(hood=hood)
        self.banner.text = ""
        self.beside.set_visibility(False)
        self.box.classes(remove="old")

    def grey(self) -> None:
        """The answer is of an earlier moment; a newer one is on its way."""
        self.box.classes(add="old")

    def show(self, share: dict) -> None:
        """The share message of the server."""
        self.box.classes(remove="old")
        self.sentence.text = share["sentence"]
        self.sentence.classes(remove="told untold-air", add="told" if share.get("told") else "untold-air")
        self.banner.text = f"{COMPUTED}, {share['banner']}."
        handbook = share.get("handbook") or ""
        self.beside.set_visibility(bool(handbook))
        self.handbook.text = handbook
        self.differs.text = share.get("differs") or ""
        self.mark.clear()
        verdict = next((one for one in Verdict if handbook.startswith(one.value)), None)
        if verdict:
            with self.mark:
                mark(verdict)

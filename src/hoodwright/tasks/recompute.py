"""A filled-in equation as one line that can be pasted into a calculator: plain characters only."""

import re

PI = "3.14159265"
FUNCTIONS = {"sqrt", "atan", "exp", "ln", "sin", "cos", "tan", "min", "max"}
SIGNS = {"²": "^2", "³": "^3", "\u2212": "-", "\u2009": "", "·": "*", "×": "*"}
TOKEN = re.compile(r"\s*(\d+\.?\d*(?:e[-+]?\d+)?|\.\d+|[a-z]+|[-+*/^(),])")
NO_SIGN_BETWEEN = re.compile(r"(?<=[\d)])\s+(?=[a-z(\d])")


def recompute(filled: str) -> str:
    """What to type to get a line's result; empty where the line is no plain arithmetic.

    `filled` is a formula with its numbers, as in `Line`: "0.5 x (10 x 0.1² + 0.00785) = 0.0539 m3/s".
    """
    asked, told, _ = filled.rpartition(" = ")
    if not told:
        return ""
    text = re.split(r": |= ", asked)[-1]
    for sign, plain in SIGNS.items():
        text = text.replace(sign, plain)
    text = re.sub(r"\bx\b", "*", text)
    text = NO_SIGN_BETWEEN.sub(" * ", text)
    text = re.sub(r"\bpi\b", PI, text).strip()
    return text if _is_arithmetic(text) else ""


def _is_arithmetic(text: str) -> bool:
    at = 0
    while at < len(text):
        found = TOKEN.match(text, at)
        if not found or (found[1].isalpha() and found[1] not in FUNCTIONS):
            return False
        at = found.end()
    return any(sign in text for sign in "+*/^(-") and text.count("(") == text.count(")")

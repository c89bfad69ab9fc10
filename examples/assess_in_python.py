"""From a workplace file to the answer, in Python: what the command line does."""

from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.starters import starter_text


def main() -> list[str]:
    """Print the answer for each hood of the demo workplace, and return the sentences."""
    answer = assess(parse_workplace(starter_text("demo")))
    for hood in answer.hoods:
        print(hood.sentence)
        print(f"  enough: {hood.enough}")
        print(f"  met today: {hood.met}")
    return [hood.sentence for hood in answer.hoods]


if __name__ == "__main__":
    main()

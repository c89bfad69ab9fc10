"""[lev-elbows-older], from memory: the older elbow table, above the newer ones."""

import pytest

from hoodwright.ducts import gored_elbow_loss, older_lev_elbow_loss

# check rows: duct.elbow.acgih.1.25, duct.elbow.acgih.1.5, duct.elbow.acgih.1.75, duct.elbow.acgih.2.0,
# duct.elbow.acgih.2.25, duct.elbow.acgih.2.5
ROWS = [(1.25, 0.55), (1.5, 0.39), (1.75, 0.32), (2.0, 0.27), (2.25, 0.26), (2.5, 0.22)]
TOL = 1e-12  # the numbers are the definition: typed here and in the table separately


@pytest.mark.memory
@pytest.mark.parametrize("ratio, remembered", ROWS)
def test_older_elbow(ratio, remembered):
    assert older_lev_elbow_loss(ratio) == pytest.approx(remembered, rel=0, abs=TOL)


def test_the_older_table_is_not_the_newer_one():
    assert older_lev_elbow_loss(1.5) > gored_elbow_loss(3, 1.5) > gored_elbow_loss(5, 1.5)

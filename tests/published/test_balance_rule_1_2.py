"""[balance-rule-1-2], from memory: later editions divide the greater suction by the lesser."""

import pytest

from hoodwright.ducts import BalanceAdvice, balance_advice, balance_advice_1_2

ADVICE = [
    (1.00, BalanceAdvice.LEAVE),
    (1.05, BalanceAdvice.LEAVE),
    (1.06, BalanceAdvice.CORRECT),
    (1.20, BalanceAdvice.CORRECT),
    (1.21, BalanceAdvice.RESIZE),
]


@pytest.mark.memory
@pytest.mark.parametrize("ratio, remembered", ADVICE)
def test_advice(ratio, remembered):
    assert balance_advice_1_2(ratio) is remembered


def test_editions_differ_between_1_20_and_1_25():
    assert balance_advice_1_2(1.22) is BalanceAdvice.RESIZE
    assert balance_advice(1 / 1.22) is BalanceAdvice.CORRECT

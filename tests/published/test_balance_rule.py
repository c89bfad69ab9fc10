"""[balance-rule], edition of ratio 0.95 / 0.80, from memory: to be confirmed against a printed copy."""

import pytest

from hoodwright.ducts import BalanceAdvice, balance_advice, balance_ratio, corrected_flow

INCH_WATER, CFM = 249.089, 4.71947e-4
TOL = 0.05  # cfm: half the last digit
ADVICE = [
    (1.00, BalanceAdvice.LEAVE),
    (0.96, BalanceAdvice.LEAVE),
    (0.95, BalanceAdvice.CORRECT),
    (0.80, BalanceAdvice.CORRECT),
    (0.79, BalanceAdvice.RESIZE),
]


def corrected(p_low):
    return corrected_flow(500 * CFM, -2.50 * INCH_WATER, -p_low * INCH_WATER) / CFM


@pytest.mark.memory
def test_corrected_flow():
    assert corrected(2.00) == pytest.approx(559.0, rel=0, abs=TOL)


@pytest.mark.memory
@pytest.mark.parametrize("ratio, remembered", ADVICE)
def test_advice(ratio, remembered):
    assert balance_advice(ratio) is remembered


def test_example_belongs_to_the_middle_class():
    assert balance_ratio(-2.50 * INCH_WATER, -2.00 * INCH_WATER) == pytest.approx(0.80)


def test_tolerance_can_fail():
    assert abs(corrected(1.99) - 559.0) > TOL
    assert abs(500 * (2.50 / 2.00) ** 0.51 - 559.0) > TOL

"""Joining the labels of two ducts at their junction, and leading labels through a duct, for the sizing of a tree.

A label is one way to build all that lies before a place. Columns: 0 suction there (Pa, positive), 1 flow (m3/s),
2 cost, 3 how many times its flow may grow before a duct in it is too fast, 4 what it carries into the junction, 5 the
most that a hood in it gets, over what is intended. Carried is flow x velocity pressure by the tabulated law, and
momentum along the common duct by the other. Labels are sorted by suction; those of a like suction (and at a junction
of a like speed) compete by score, which is cost with the flow and the pressure at their price.
"""

import math

from hoodwright.kernels.lazy import kernel

__all__ = ["CLASSES", "DAMPER", "LEAVE", "MORE_FLOW", "lead_labels", "meet_labels"]

FAST = {"_nrt": False}
LEAVE, MORE_FLOW, DAMPER = 0, 1, 2  # what is done to the side with less suction
CLASSES = 32  # of speed, among labels of a like suction at a junction
SLACK = 1e-9
ENOUGH = 1.12  # times the flow: no correction from a ratio of 0.8 asks for more
ALIKE = 0.1  # of a bucket
LABELS = "float64[:,::1]"
TABLES = "float64[:,:,::1], float64[:,::1], int64[:,:,::1]"
# rules: 0 leave above, 1 correct above, 2 density, 3 price of flow, 4 price of pressure, 5 width of a bucket, 6 most
# that a hood may get, 7 whether momentum is balanced, 8 least suction (log), 9 least speed carried (log), 10 one over
# the width of its classes, 11 and 12 what a damper in the first and in the second side costs, or -1
# own: 0 area, 1 cost, 2 least and 3 greatest velocity, 4 cosine of its entry, 5 first flow and 6 step of the rest:
# loss over the square of the flow, 7 density; flows are those of as much air of the density in the rules
ROW = "float64[::1]"


@kernel("boolean(float64[::1], UniTuple(float64, 6), float64)", **FAST)
def _serves(kept, label, near):
    """Whether a label that is kept can do all that another can: a like suction and flow, and no less room to grow."""
    return (
        abs(kept[0] - label[0]) <= near * label[0]
        and abs(kept[1] - label[1]) <= near * label[1]
        and kept[3] >= min(label[3], ENOUGH)
        and kept[5] <= label[5] + near
    )


@kernel(f"void(UniTuple(float64, 6), float64, float64, int64, int64, int64, int64, {TABLES})", **FAST)
def _keep(label, score, near, place, a, b, way, labels, scores, origin):
    """Keep a label where it is among the best of its place, and no better one serves as well."""
    worst = 0
    for n in range(scores.shape[1]):
        if scores[place, n] > scores[place, worst]:
            worst = n
    if score >= scores[place, worst]:
        return
    for n in range(scores.shape[1]):
        if scores[place, n] <= score and _serves(labels[place, n], label, near):
            return
    scores[place, worst] = score
    for n in range(6):
        labels[place, worst, n] = label[n]
    origin[place, worst, 0], origin[place, worst, 1], origin[place, worst, 2] = a, b, way


@kernel(f"int64(float64, {ROW}, int64)", **FAST)
def _bucket(suction, rules, buckets):
    return min(max(int((math.log(max(suction, 1e-9)) - rules[8]) / rules[5]), 0), buckets - 1)


@kernel(f"int64(float64, {ROW})", **FAST)
def _class(speed, rules):
    return min(max(int((math.log(max(speed, 1e-9)) - rules[9]) * rules[10]), 0), CLASSES - 1)


@kernel(f"void({ROW}, {ROW}, float64, float64, float64, {ROW}, int64, int64, int64, {TABLES})", **FAST)
def _join(high, low, more, taken, damper, rules, a, b, way, labels, scores, origin):
    """Two sides together: the flow of the lower is `more` times as much, its hoods get `taken` times as much."""
    over = max(high[5], low[5] * taken)
    if over > rules[6] * (1 + SLACK) or more > low[3]:
        return
    flow = high[1] + low[1] * more
    carried = high[4] + low[4] * more * more * (1.0 if rules[7] > 0 else more)
    cost = high[2] + low[2] + damper
    place = _bucket(high[0], rules, len(scores) // CLASSES) * CLASSES + _class(carried / flow, rules)
    label = (high[0], flow, cost, min(high[3], low[3] / more), carried, over)
    _keep(
        label, cost + rules[3] * flow + rules[4] * high[0], ALIKE * rules[5], place, a, b, way, labels, scores, origin
    )


@kernel(f"void({LABELS}, {LABELS}, int64, int64, {ROW}, {TABLES})", **FAST)
def _pair(first, second, a, b, rules, labels, scores, origin):
    """Every way to join two labels: leave them, more flow in the side with less suction, or a damper there."""
    x, y, damper = first[a], second[b], rules[12]
    if y[0] > x[0]:
        x, y, damper = y, x, rules[11]
    ratio = y[0] / x[0]
    more = math.sqrt(1 / ratio)
    if ratio >= rules[0]:
        _join(x, y, 1.0, more, 0.0, rules, a, b, LEAVE, labels, scores, origin)
    elif ratio >= rules[1]:
        _join(x, y, more, more, 0.0, rules, a, b, MORE_FLOW, labels, scores, origin)
    if ratio < 1 and damper >= 0:
        _join(x, y, 1.0, 1.0, damper, rules, a, b, DAMPER, labels, scores, origin)


@kernel(f"void({LABELS}, {ROW}, int64[:,::1])", **FAST)
def _best_so_far(labels, rules, best):
    """Of every class of speed the label of the least cost and price of flow, among each and all with less suction."""
    for n in range(len(labels)):
        for k in range(CLASSES):
            best[n, k] = best[n - 1, k] if n > 0 else -1
        k = _class(labels[n, 4] / labels[n, 1], rules)
        least = best[n, k]
        if least < 0 or labels[n, 2] + rules[3] * labels[n, 1] < labels[least, 2] + rules[3] * labels[least, 1]:
            best[n, k] = n


@kernel(f"void({LABELS}, {LABELS}, {ROW}, int64[:,::1], int64[:,::1], {TABLES})", **FAST)
def meet_labels(first, second, rules, best_first, best_second, labels, scores, origin):
    """Labels of two sides that meet; where they are too far apart for more flow, the cheapest take the damper."""
    _best_so_far(first, rules, best_first)
    _best_so_far(second, rules, best_second)
    low, high, below = 0, 0, 0
    for a in range(len(first)):
        while low < len(second) and second[low, 0] < first[a, 0] * rules[1]:
            low += 1
        while high < len(second) and second[high, 0] <= first[a, 0] / rules[1]:
            high += 1
        for b in range(low, high):
            _pair(first, second, a, b, rules, labels, scores, origin)
        for k in range(CLASSES if low > 0 and rules[12] >= 0 else 0):
            if best_second[low - 1, k] >= 0:
                _pair(first, second, a, best_second[low - 1, k], rules, labels, scores, origin)
    for b in range(len(second) if rules[11] >= 0 else 0):
        while below < len(first) and first[below, 0] < second[b, 0] * rules[1]:
            below += 1
        for k in range(CLASSES if below > 0 else 0):
            if best_first[below - 1, k] >= 0:
                _pair(first, second, best_first[below - 1, k], b, rules, labels, scores, origin)


@kernel(f"void({LABELS}, {ROW}, {ROW}, {ROW}, boolean, {TABLES})", **FAST)
def lead_labels(before, own, following, rules, alone, labels, scores, origin):
    """Labels at the end of a duct of one size, from those that come into it, `alone` or from a junction."""
    rho, last = own[7], len(following) - 2
    for a in range(len(before)):
        x = before[a]
        velocity = x[1] * rules[2] / (own[7] * own[0])
        if velocity < own[2] * (1 - SLACK) or velocity > own[3] * (1 + SLACK):
            continue
        step = min(max((x[1] - own[5]) / own[6], 0.0), last + 1.0)
        n = min(int(step), last)
        lost = (following[n] + (step - n) * (following[n + 1] - following[n])) * x[1] * x[1]
        pressure = rho * velocity * velocity / 2
        if rules[7] > 0:
            into, faster = 2 * pressure - x[4] / own[0], pressure - rho * (x[4] / (rules[2] * x[1])) ** 2 / 2
            into = faster if alone and faster > 0 else into
        else:
            into = max(pressure - x[4] / x[1], 0.0)
        arriving, cost = x[0] + into + lost, x[2] + own[1]
        carried = rules[2] * x[1] * velocity * own[4] if rules[7] > 0 else x[1] * pressure
        label = (arriving, x[1], cost, min(x[3], own[3] / velocity), carried, x[5])
        score = cost + rules[3] * x[1] + rules[4] * arriving
        _keep(
            label, score, ALIKE * rules[5], _bucket(arriving, rules, len(scores)), a, -1, LEAVE, labels, scores, origin
        )

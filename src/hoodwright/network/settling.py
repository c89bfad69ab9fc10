"""When Newton's method is done, and when it gives up."""

SETTLED = 1e-9  # m/s that no velocity moves more than in the last step
MOST_STEPS = 60

"""Timings of what a user waits for. No pass mark: machines differ, so ratios within one run count."""

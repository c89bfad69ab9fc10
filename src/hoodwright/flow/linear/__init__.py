"""The linear system of a cut grid, and its solution for many right-hand sides at once."""

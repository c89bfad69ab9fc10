"""Graded grids, and how plates, solid bodies and hood openings cut them."""

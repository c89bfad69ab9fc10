"""Sizes that balance themselves: from a workplace to its sizes, and back into the file."""

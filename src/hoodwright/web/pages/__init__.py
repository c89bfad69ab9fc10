"""One page, one file."""

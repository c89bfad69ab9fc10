"""One source with its hood beside it, above it and around it."""

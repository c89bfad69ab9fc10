"""hoodwright: capture fume, dust and vapour before anyone breathes them."""

__version__ = "0.1.0"

"""Random numbers by counting: the same for any number of threads, and easy to do alike in another language.

A number is looked up in a table of normal deviates at a place that a hash of its counter gives. The hash needs 32 bits
only: (x * constant) mod 2^32, with shifts.
"""

from hoodwright.kernels.lazy import kernel

__all__ = ["PLACES", "mixed", "particle_key"]

PLACES = 65536  # of the table of normal deviates
MASK = 0xFFFFFFFF


@kernel("int64(int64)", _nrt=False)
def mixed(x):
    """A 32-bit hash of a 32-bit number."""
    x &= MASK
    x ^= x >> 16
    x = (x * 0x7FEB352D) & MASK
    x ^= x >> 15
    x = (x * 0x846CA68B) & MASK
    return x ^ (x >> 16)


@kernel("int64(int64, int64, int64)", _nrt=False)
def particle_key(seed, realisation, particle):
    """The key of one particle: every number it draws is a hash of it and of a counter."""
    return mixed(mixed(mixed(seed) + realisation) + particle)

"""Compiled kernels: the one place that imports numba, and only when a kernel is first used.

    @kernel("float64(float64[:])")
    def total(values): ...

A kernel lies below this folder or in a physics package beside the code that uses it, and may call
other kernels. Its cache is renewed when any file of either folder changes.
"""

from hoodwright.kernels.lazy import Kernel, Warmed, kernel, warm

__all__ = ["Kernel", "Warmed", "kernel", "warm"]

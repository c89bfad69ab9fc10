"""Single particles in air: how they settle, how far a throw carries them, and how they slip between molecules.

All are smooth spheres, alone, in still air. A crowd of particles drags the air along and flies farther.
"""

from hoodwright.particles.drag import drag_coefficient, particle_reynolds_number
from hoodwright.particles.settling import (
    intermediate_settling_velocity,
    newton_settling_velocity,
    settling_criterion,
    settling_velocity,
    settling_velocity_by_criterion,
    stokes_settling_velocity,
)
from hoodwright.particles.slip import aerodynamic_diameter, mean_free_path, slip_factor
from hoodwright.particles.stopping import (
    mercer_stopping_distance,
    relaxation_time,
    stokes_stopping_distance,
    stopping_distance,
)

__all__ = [
    "aerodynamic_diameter",
    "drag_coefficient",
    "intermediate_settling_velocity",
    "mean_free_path",
    "mercer_stopping_distance",
    "newton_settling_velocity",
    "particle_reynolds_number",
    "relaxation_time",
    "settling_criterion",
    "settling_velocity",
    "settling_velocity_by_criterion",
    "slip_factor",
    "stokes_settling_velocity",
    "stokes_stopping_distance",
    "stopping_distance",
]

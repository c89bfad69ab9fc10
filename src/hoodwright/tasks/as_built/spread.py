"""How sure the flows as built are: every hood's flow over many samples of what nobody knows exactly."""

from dataclasses import asdict, dataclass
from typing import Unpack

import numpy as np

from hoodwright import __version__
from hoodwright.ducts.spread import DuctSpreads, FlowSamples, flow_samples
from hoodwright.errors import InputError
from hoodwright.jobs import Progress
from hoodwright.tasks.as_built.network import BuiltSystem, system_of
from hoodwright.tasks.as_built.runs import Asked
from hoodwright.units import show
from hoodwright.workplace.model import Workplace

SAMPLES, SEED = 2000, 1
LOW, MIDDLE, HIGH = 2.5, 50.0, 97.5  # per cent of the samples below
DECILES = tuple(range(10, 100, 10))
SIGMAS = 1.96
COMMON = "common-practice"


@dataclass(frozen=True)
class StatedSpread:
    """What was varied, by which factor, and who says so."""

    what: str
    factor: float
    words: str
    source: str


@dataclass(frozen=True)
class HoodSpread:
    """The flow of one hood [m3/s]: meant, computed, and over the samples; and how many of them give what is meant.

    `stated` where the file gives the meant flow. With endless samples the share would lie between `share_low` and
    `share_high`.
    """

    hood: str
    intended: float
    stated: bool
    computed: float
    mean: float
    low: float
    median: float
    high: float
    deciles: tuple[float, ...]  # below which 10, 20 ... 90 of 100 samples lie
    share: float
    share_low: float
    share_high: float
    sentence: str


@dataclass(frozen=True)
class SpreadAnswer:
    """The flow of every hood that is not shut; `together` is the share of samples in which all get what is meant."""

    workplace: str
    version: str
    samples: int
    seed: int
    unsettled: int
    load: float
    hoods: tuple[HoodSpread, ...]
    together: float
    spreads: tuple[StatedSpread, ...]
    kept: str


def spread_of(
    workplace: Workplace,
    samples: int = SAMPLES,
    seed: int = SEED,
    progress: Progress | None = None,
    *,
    spreads: DuctSpreads | None = None,
    **state: Unpack[Asked],
) -> SpreadAnswer:
    """The spread of every hood's flow as built, in the state that is asked for: see `system_of`.

    The same seed gives the same answer. `progress` is told how far it is and may stop it.
    """
    built = system_of(workplace, **state)
    given, names = spreads or DuctSpreads(), _open(built)
    wanted = [built.hood_runs[name] for name in names]
    rng = np.random.default_rng(seed)
    found = flow_samples(built.system, wanted, samples, rng, given, start=built.start, progress=progress)
    if progress:
        progress.report(1.0, f"{samples} samples are solved")
    stated = {hood.name for hood in workplace.hoods if hood.intended_flow is not None}
    least = np.array([built.design[name] for name in names])
    return SpreadAnswer(
        workplace=workplace.name,
        version=__version__,
        samples=samples,
        seed=seed,
        unsettled=found.unsettled,
        load=built.state.load,
        hoods=tuple(
            _hood(name, built.design[name], name in stated, found, i, workplace.units) for i, name in enumerate(names)
        ),
        together=float(np.mean((found.flow >= least).all(axis=1))),
        spreads=_stated(given, built),
        kept="temperatures, filters, sizes and lengths stay as computed; a leak that the file does not give is none",
    )


def _open(built: BuiltSystem) -> tuple[str, ...]:
    """Hoods whose gate is not shut, at the hood or in its duct."""
    shut = built.state.closed
    names = [name for name in built.hood_runs if not {name, built.walk.leaving(name).duct.name} & shut]
    if not names:
        raise InputError("every hood is shut off, so none has a flow; open one")
    return tuple(names)


def _hood(name: str, intended: float, stated: bool, found: FlowSamples, i: int, system: str) -> HoodSpread:
    flow = found.flow[:, i]
    low, middle, high, *deciles = (float(part) for part in np.percentile(flow, [LOW, MIDDLE, HIGH, *DECILES]))
    share = float(np.mean(flow >= intended))
    words = (
        f"{name}: {show(low, 'flow', system)} to {show(high, 'flow', system)} in 95 of 100 samples; "
        f"{_per_cent(share)} of them give the {show(intended, 'flow', system)} that are meant"
    )
    return HoodSpread(
        hood=name,
        intended=intended,
        stated=stated,
        computed=float(found.computed[i]),
        mean=float(flow.mean()),
        low=low,
        median=middle,
        high=high,
        deciles=tuple(deciles),
        share=share,
        share_low=_wilson(share, len(flow))[0],
        share_high=_wilson(share, len(flow))[1],
        sentence=words,
    )


def _per_cent(share: float) -> str:
    """Whole per cent, but never all or none of them where a few are otherwise."""
    if share in (0.0, 1.0):
        return "none" if share == 0 else "all"
    return f"{min(max(round(100 * share), 1), 99)} %"


def _wilson(share: float, count: int) -> tuple[float, float]:
    """Within which the share of endless samples lies, 95 times of 100."""
    z2 = SIGMAS**2 / count
    middle, half = share + z2 / 2, SIGMAS * np.sqrt(share * (1 - share) / count + z2 / count / 4)
    return float(max((middle - half) / (1 + z2), 0.0)), float(min((middle + half) / (1 + z2), 1.0))


def _stated(spreads: DuctSpreads, built: BuiltSystem) -> tuple[StatedSpread, ...]:
    """What was varied. The spreads are common practice, or the asker's own."""
    words = {
        "roughness": "one factor for all ducts: smooth new sheet to rough or used",
        "losses": "each hood, duct and fitting by itself: tables differ by as much, and so do fitters",
        "fan": "the pressure of each fan over its whole curve: a usual tolerance, and the speed of its belt",
        "leak": "one factor on what all seams let in at a pressure",
    }
    usual = DuctSpreads()
    return tuple(
        StatedSpread(name, factor, f"divided or multiplied by {factor:g} in 95 of 100; {words[name]}", source)
        for name, factor in asdict(spreads).items()
        for source in [COMMON if factor == getattr(usual, name) else "stated by the user"]
        if name != "leak" or built.leak_runs
    )


def spread_as_json(answer: SpreadAnswer) -> dict:
    """The answer as dictionaries and lists, ready for `json.dumps`; SI, every key ends in its unit."""
    return {
        "workplace": answer.workplace,
        "version": answer.version,
        "samples": answer.samples,
        "seed": answer.seed,
        "unsettled": answer.unsettled,
        "filter_load_share": answer.load,
        "share_all_hoods_meet": answer.together,
        "hoods": [_hood_json(hood) for hood in answer.hoods],
        "spreads": [asdict(spread) for spread in answer.spreads],
        "kept": answer.kept,
    }


def _hood_json(hood: HoodSpread) -> dict:
    return {
        "name": hood.hood,
        "intended_flow_m3_s": hood.intended,
        "intended_is_stated": hood.stated,
        "flow_m3_s": hood.computed,
        "mean_flow_m3_s": hood.mean,
        "low_flow_m3_s": hood.low,
        "median_flow_m3_s": hood.median,
        "high_flow_m3_s": hood.high,
        "decile_flows_m3_s": list(hood.deciles),
        "share_meets_intended": hood.share,
        "share_low": hood.share_low,
        "share_high": hood.share_high,
        "sentence": hood.sentence,
    }

"""Plots of a simulation, as PNG files."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from statistics import fmean

from bot.simulation.report import Run, interval, paired

INK = ("#1f3a5f", "#b5651d", "#4c7a34", "#7a3b6b", "#555555")
DASH = ("-", "--", "-.", ":", (0, (5, 1, 1, 1)))


def draw(runs: Sequence[Run], folder: Path) -> list[Path]:
    """Write what there is to see into `folder`: shares by day, units, differences, calibration. Needs
    matplotlib.
    """
    import matplotlib

    matplotlib.use("Agg")
    folder.mkdir(parents=True, exist_ok=True)
    files = [_curves(runs, folder), _units(runs, folder)]
    if len(runs) > 1:
        files.append(_differences(runs, folder))
    if any(year.forecasts for run in runs for year in run.years):
        files.append(_calibration(runs, folder))
    return files


def _curves(runs: Sequence[Run], folder: Path) -> Path:
    from matplotlib import pyplot

    figure, axes = pyplot.subplots(figsize=(8, 5))
    for place, run in enumerate(runs):
        days = [interval(column) for column in zip(*(year.curve for year in run.years), strict=True)]
        x = range(1, len(days) + 1)
        axes.plot(x, [100 * d.mean for d in days], color=INK[place % 5], ls=DASH[place % 5], label=run.policy)
        axes.fill_between(
            x, [100 * d.low for d in days], [100 * d.high for d in days], color=INK[place % 5], alpha=0.15
        )
    axes.set(xlabel="school day", ylabel="known share of what was taught (%)")
    axes.legend(frameon=False)
    return _save(figure, folder / "known_by_day.png")


def _units(runs: Sequence[Run], folder: Path) -> Path:
    from matplotlib import pyplot

    figure, axes = pyplot.subplots(figsize=(8, 5))
    for place, run in enumerate(runs):
        units = [100 * fmean(column) for column in zip(*(year.units for year in run.years), strict=True)]
        axes.plot(
            range(1, len(units) + 1), units, "o", ls=DASH[place % 5], color=INK[place % 5], label=run.policy
        )
    axes.set(xlabel="unit", ylabel="known share on the last day (%)")
    axes.legend(frameon=False)
    return _save(figure, folder / "known_by_unit.png")


def _differences(runs: Sequence[Run], folder: Path) -> Path:
    from matplotlib import pyplot

    figure, axes = pyplot.subplots(figsize=(8, 1.2 + 0.6 * len(runs)))
    for place, other in enumerate(runs[1:]):
        gap = paired(runs[0], other, "known_share")
        axes.plot([100 * gap.low, 100 * gap.high], [place, place], color=INK[0], lw=2)
        axes.plot(100 * gap.mean, place, "o", color=INK[0])
    axes.axvline(0, color=INK[4], lw=0.8)
    axes.set_yticks(range(len(runs) - 1), [f"against {run.policy}" for run in runs[1:]])
    axes.set(xlabel=f"{runs[0].policy}: points of known share on the last day, paired, 95 % interval")
    return _save(figure, folder / "differences.png")


def _calibration(runs: Sequence[Run], folder: Path) -> Path:
    from matplotlib import pyplot

    figure, axes = pyplot.subplots(figsize=(5.5, 5.5))
    for place, run in enumerate(runs):
        bins: dict[int, list[float]] = {}
        for year in run.years:
            for tenth, (count, said, came) in enumerate(year.forecasts):
                held = bins.setdefault(tenth, [0.0, 0.0, 0.0])
                for k, value in enumerate((count, said, came)):
                    held[k] += value
        points = [(said / count, came / count, count) for count, said, came in bins.values() if count >= 30]
        if points:
            axes.plot(
                [p[0] for p in points], [p[1] for p in points], "o-", color=INK[place % 5], label=run.policy
            )
    axes.plot([0, 1], [0, 1], color=INK[4], lw=0.8)
    axes.set(xlabel="chance that was expected", ylabel="share right at first try", xlim=(0, 1), ylim=(0, 1))
    axes.legend(frameon=False)
    return _save(figure, folder / "calibration.png")


def _save(figure: object, path: Path) -> Path:
    from matplotlib import pyplot

    figure.savefig(path, dpi=120, bbox_inches="tight")  # type: ignore[attr-defined]
    pyplot.close("all")
    return path

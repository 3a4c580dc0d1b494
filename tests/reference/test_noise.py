"""Mean and noise of exposures against Poisson's law, from pictures of many seeds.

The receptor as `src/imaging/detector.rs` states it, once more in numpy and scipy: to the primary intensity P = exp(Ā - A) of the
attenuation A that the tool writes, scatter is added, both are blurred, and each pixel counts DQE · N · I photons in the mean, N being
the photons a pixel that the exposure tells. By Poisson's law the attenuation shown then has the variance 1 / (DQE · N · I). Grey is
linear in it; how many grey values a unit takes is the slope of the mean picture's details against the model's.
"""

import numpy as np
import pytest
import tables
from conftest import view
from scipy import ndimage
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkIOImage import vtkPNGReader

SEEDS, PIXELS, PIXEL_MM, MAGNIFICATION = 16, 512, 0.4, 1100.0 / 700.0
NEW_FRAME_SHARE = tables.constant("radiograph", "NEW_FRAME_SHARE")


def grey(path):
    reader = vtkPNGReader()
    reader.SetFileName(str(path))
    reader.Update()
    # VTK's first row is the lowest.
    return vtk_to_numpy(reader.GetOutput().GetPointData().GetScalars()).reshape(PIXELS, PIXELS)[::-1].astype(float)


def exposures(folder, *options):
    """Pictures (seed, row, column), attenuation, photons a pixel."""
    pictures, file = [], folder / f"{''.join(options)}.npy"
    for seed in range(SEEDS):
        png = folder / f"{''.join(options)}{seed}.png"
        extra = (*options, "--seed", str(seed), "--png", str(png), "--attenuation", str(file))
        told = view(oblique=24.0, tilt=-2.0, extra=extra)
        pictures.append(grey(png))
    return np.array(pictures), np.load(file).astype(float), told["exposure"]["technique"]["photons_per_pixel"]


def intensity(attenuation):
    """Mean of what arrives, against the measuring field: the middle half of the open field."""
    middle = slice(PIXELS // 4, -PIXELS // 4)
    field = np.exp(-attenuation)[middle, middle].mean()
    primary = np.exp(-attenuation) / field
    nearby = ndimage.uniform_filter(primary, 3 * PIXELS // 8, mode="nearest")
    share = tables.constant("detector", "SCATTER_PER_ATTENUATION") * (-np.log(field) - 1.0)
    scatter = share * (nearby + primary.mean()) / 2.0
    focal = tables.constant("detector", "FOCAL_SPOT_MM") * (MAGNIFICATION - 1.0)
    width_px = np.hypot(focal, tables.constant("detector", "RECEPTOR_SPREAD_MM")) / PIXEL_MM
    return ndimage.gaussian_filter(primary + scatter, width_px / np.sqrt(8.0 * np.log(2.0)))


def details(picture):
    """Without low frequencies, which the display evens out."""
    return picture - ndimage.gaussian_filter(picture, 8.0)


def variance_share(pulses):
    """Variance of the running mean of so many frames, of that of one: the sum of the squared weights."""
    weights = np.array([NEW_FRAME_SHARE] * pulses) * (1.0 - NEW_FRAME_SHARE) ** np.arange(pulses)
    weights[-1] = (1.0 - NEW_FRAME_SHARE) ** (pulses - 1)
    assert weights.sum() == pytest.approx(1.0)
    return (weights**2).sum()


# Of a noisier picture the mean of the seeds is noisier too.
@pytest.mark.parametrize(
    "options, frames, alike", [(("--spot",), 1, 0.99), (("--fluoro", "1"), 1, 0.92), (("--fluoro", "5"), 5, 0.96)]
)
def test_mean_and_variance_are_poissons(folder, options, frames, alike):
    pictures, attenuation, photons = exposures(folder, *options)
    relative = intensity(attenuation)
    counts = tables.constant("detector", "DQE") * photons * relative
    mean = pictures.mean(axis=0)
    # Off the border, where the blurs' ends differ; on the straight of the window; enough counts for var(ln n) = 1 / n.
    used = np.zeros(mean.shape, dtype=bool)
    used[48:-48, 48:-48] = True
    used &= (pictures.min(axis=0) > 0.0) & (pictures.max(axis=0) < 255.0 - tables.constant("display", "KNEE")) & (counts > 60.0)
    assert used.mean() > 0.3
    shown, model = details(mean)[used], details(-np.log(relative))[used]
    assert np.corrcoef(shown, model)[0, 1] < -alike  # Bone dark.
    gain = np.polyfit(model, shown, 1)[0]
    # Each picture's window follows its own percentiles: fit it to the mean before comparing.
    spread = [p[used] - np.polyval(np.polyfit(mean[used], p[used], 1), mean[used]) for p in pictures]
    found = np.var(spread, axis=0, ddof=1) - 1.0 / 12.0  # Grey values are whole.
    poisson = gain**2 / counts[used] * variance_share(frames)
    # Measured: 0.7, 2.8 and 2.0 % more: at a hundred counts ln n bends, and the mean of the seeds is noisy.
    assert found.mean() == pytest.approx(poisson.mean(), rel=0.05)
    # The gain drops out between the darker and the brighter half of one picture.
    dark = counts[used] < np.median(counts[used])
    contrast = poisson[dark].mean() / poisson[~dark].mean()
    assert contrast > 1.3
    assert found[dark].mean() / found[~dark].mean() == pytest.approx(contrast, rel=0.03)

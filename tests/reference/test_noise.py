"""Mean and noise of exposures against Poisson's law, from pictures of many seeds.

The receptor as `src/imaging/detector.rs` states it, once more in numpy and scipy: to the primary intensity P = exp(Ā - A) of the
attenuation A that the tool writes, scatter is added and the focal spot blurs it; DQE · N · I photons are counted in the mean, N being the
photons a pixel that the exposure tells; the screen spreads them and the electronics add their noise. The attenuation shown then has the
variance (k + e² / n) / n, with n = DQE · N · I, k the sum of the squares of the screen's weights and e the electronic noise. Grey is
linear in it but for equalisation; how many grey values a unit takes is the slope of the mean picture's details against the model's.
"""

import numpy as np
import pytest
import tables
from conftest import view
from scipy import ndimage, stats
from vtkmodules.util.numpy_support import vtk_to_numpy
from vtkmodules.vtkIOImage import vtkPNGReader

SEEDS, FIELD_MM, MAGNIFICATION = 16, 204.8, 1100.0 / 700.0
NEW_FRAME_SHARE = tables.constant("radiograph", "NEW_FRAME_SHARE")


def grey(path):
    reader = vtkPNGReader()
    reader.SetFileName(str(path))
    reader.Update()
    # VTK's first row is the lowest.
    return vtk_to_numpy(reader.GetOutput().GetPointData().GetScalars()).reshape(-1, int(reader.GetOutput().GetDimensions()[0]))[::-1].astype(float)


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
    pixels = len(attenuation)
    middle = slice(pixels // 4, -pixels // 4)
    field = np.exp(-attenuation)[middle, middle].mean()
    primary = np.exp(-attenuation) / field
    nearby = ndimage.uniform_filter(primary, 3 * pixels // 8, mode="nearest")
    share = tables.constant("detector", "SCATTER_PER_ATTENUATION_SQUARED") * np.log(field) ** 2
    scatter = share * (nearby + primary.mean()) / 2.0
    focal = tables.constant("detector", "FOCAL_SPOT_MM") * (MAGNIFICATION - 1.0)
    given = ndimage.gaussian_filter(primary + scatter, focal * pixels / FIELD_MM / np.sqrt(8.0 * np.log(2.0)))
    light = screen(FIELD_MM / pixels)
    return ndimage.convolve1d(ndimage.convolve1d(given, light, axis=0), light, axis=1)


def screen(pixel_mm):
    """Weights of the screen's light along a line: from anywhere in a pixel to anywhere in another, by numbers."""
    places = np.random.default_rng(1).random((2, 4_000_000))
    far = places[0] + stats.norm.ppf(places[1]) * tables.constant("detector", "SCREEN_SPREAD_MM") / pixel_mm
    return np.bincount(np.floor(far).astype(int) + 5, minlength=11)[:11] / far.size


def details(picture):
    """Without low frequencies, which the display evens out."""
    return picture - ndimage.gaussian_filter(picture, 8.0)


def variance_share(pulses):
    """Variance of the running mean of so many frames, of that of one: the sum of the squared weights that a frame's noise has got."""
    lag, weights = tables.constant("detector", "LAG"), []
    for frame in range(pulses):
        light, held = 0.0, 0.0
        for now in range(pulses):
            new = 1.0 if now == frame else 0.0
            light = new + lag * (light - new) if now else new
            held += NEW_FRAME_SHARE * (light - held) if now else light
        weights.append(held)
    assert sum(weights) == pytest.approx(1.0)
    return sum(w * w for w in weights)


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
    light = (screen(FIELD_MM / mean.shape[0]) ** 2).sum() ** 2
    electronic = tables.constant("detector", "ELECTRONIC_QUANTA") ** 2
    poisson = gain**2 * (light + electronic / counts[used]) / counts[used] * variance_share(frames)
    # Measured: 0.7, 2.8 and 2.0 % more: at a hundred counts ln n bends, and the mean of the seeds is noisy.
    assert found.mean() == pytest.approx(poisson.mean(), rel=0.05)
    # The gain drops out between the darker and the brighter half of one picture.
    dark = counts[used] < np.median(counts[used])
    contrast = poisson[dark].mean() / poisson[~dark].mean()
    assert contrast > 1.3
    assert found[dark].mean() / found[~dark].mean() == pytest.approx(contrast, rel=0.03)

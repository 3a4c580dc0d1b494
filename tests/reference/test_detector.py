"""The receptor's test pictures (examples/beam_chain.rs) as a laboratory would measure them: noise power from flat fields, modulation
transfer from a slanted edge (the method of ISO 12233 and IEC 62220-1: an oversampled edge, its derivative, its Fourier transform), and
the attenuation of bone against whole spectra from SpekPy with xraydb's coefficients."""

import json
import subprocess

import numpy as np
import pytest
import spekpy
import tables
import xraydb
from conftest import PROJECT
from test_physics import MATERIALS, WATER, linear

SIZE, LEAN = 512, np.radians(3.0)


@pytest.fixture(scope="module")
def chain(tmp_path_factory):
    folder = tmp_path_factory.mktemp("chain")
    run = ["cargo", "run", "--locked", "--quiet", "--release", "--example", "beam_chain", "--", str(folder)]
    told = json.loads(subprocess.run(run, cwd=PROJECT, check=True, capture_output=True, text=True).stdout)
    return folder, told


def picture(folder, name):
    return np.fromfile(folder / f"{name}.f32", "<f4").reshape(SIZE, SIZE).astype(float)


@pytest.mark.parametrize("number", [0, 1], ids=["fluoroscopy", "spot"])
def test_noise_power_is_white_light_through_the_screen(chain, number):
    folder, told = chain
    own = told["chains"][number]
    counts = told["photons"] * told["dqe"]
    # Regions of 64 pixels; -ln n has 1 / counts times the counts' own relative power, pixel squared.
    power, regions = np.zeros((64, 64)), 0
    for seed in range(told["seeds"]):
        flat = picture(folder, f"flat-{own['micrometres']}-{seed}")
        for y in range(0, SIZE, 64):
            for x in range(0, SIZE, 64):
                region = flat[y : y + 64, x : x + 64]
                power += np.abs(np.fft.fft2(region - flat.mean())) ** 2 / 64**2
                regions += 1
    power /= regions
    along = np.interp(np.abs(np.fft.fftfreq(64)), own["cycles_per_pixel"], own["screen"])
    electronic = tables.constant("detector", "ELECTRONIC_QUANTA") ** 2 / counts
    expected = (np.outer(along, along) ** 2 + electronic) / counts
    # By rings, without the mean.
    radius = np.hypot(*np.meshgrid(np.fft.fftfreq(64), np.fft.fftfreq(64)))
    for low in np.arange(0.04, 0.5, 0.06):
        ring = (radius >= low) & (radius < low + 0.06)
        assert power[ring].mean() == pytest.approx(expected[ring].mean(), rel=0.05), low


def test_neighbours_go_together_as_in_a_published_kernel(chain):
    """DeepDRR's kernel (0.98, beside it 0.11, above and below 0.06; read at cb2cb3a) gives 0.22 along rows."""
    folder, told = chain
    kernel = np.array([[0.0, 0.06, 0.0], [0.11, 0.98, 0.11], [0.0, 0.06, 0.0]])
    published = (kernel[:, 1:] * kernel[:, :-1]).sum() / (kernel**2).sum()
    assert published == pytest.approx(0.22, abs=0.005)
    flats = [picture(folder, f"flat-400-{seed}") for seed in range(told["seeds"])]
    found = np.mean([np.corrcoef(f[:, 1:].ravel(), f[:, :-1].ravel())[0, 1] for f in flats])
    assert found == pytest.approx(published, abs=0.05)


def edge_transfer(edge):
    """Cycles a pixel and modulation transfer across the edge."""
    intensity = np.exp(-edge)
    y, x = np.mgrid[0:SIZE, 0:SIZE] - (SIZE - 1) / 2
    distance = x * np.cos(LEAN) + y * np.sin(LEAN)
    per_pixel = 8
    inside = (np.abs(distance) < 24) & (np.abs(y) < 200)
    bins = np.round((distance[inside] + 24) * per_pixel).astype(int)
    mean = np.bincount(bins, intensity[inside]) / np.bincount(bins)
    line = np.diff(mean)
    transfer = np.abs(np.fft.rfft(line))
    cycles = np.fft.rfftfreq(len(line), 1.0 / per_pixel)
    # The difference of neighbouring bins, and each bin's own width, are a wave's too.
    return cycles, transfer / transfer[0] / np.sinc(cycles / per_pixel) ** 2


@pytest.mark.parametrize("number", [0, 1], ids=["fluoroscopy", "spot"])
def test_slanted_edge_gives_the_stated_transfer(chain, number):
    folder, told = chain
    own = told["chains"][number]
    cycles, found = edge_transfer(picture(folder, f"edge-{own['micrometres']}"))
    stated = np.interp(cycles, own["cycles_per_pixel"], np.array(own["focal"]) * own["screen"])
    used = (cycles > 0.0) & (cycles < 0.45)
    assert used.sum() > 15
    assert np.abs(found - stated)[used].max() < 0.05
    strong = used & (stated > 0.2)
    assert (found / stated)[strong] == pytest.approx(1.0, abs=0.05)


def screen(kev):
    """What 0.6 mm of caesium iodide, packed to 0.8, takes up."""
    per_cm = linear(4.51 * 0.8, {"Cs": 0.5115, "I": 0.4885}, kev)
    return 1.0 - np.exp(-per_cm * 0.06)


@pytest.mark.parametrize("kvp", [70.0, 76.0, 90.0, 110.0])
def test_bone_hardens_the_beam_as_spekpys_spectrum(chain, kvp):
    _, told = chain
    beam = spekpy.Spek(kvp=kvp, th=12.0, z=100.0).multi_filter([("Al", 3.0), ("Cu", 0.1)])
    kev, fluence = beam.get_spectrum()
    weight = fluence * kev * np.array([screen(float(k)) for k in kev])
    of = {m: np.array([linear(*MATERIALS[m], float(k)) / 10.0 for k in kev]) for m in ("CorticalBone", "SoftTissue")}
    water = np.array([linear(1.0, WATER, float(k)) / 10.0 for k in kev])
    ours = {(t, b): a for k, t, b, a in told["bone"] if k == kvp}

    def measured(trunk, bone_mm):
        return -np.log((weight * np.exp(-trunk - (of["CorticalBone"] - of["SoftTissue"]) * bone_mm)).sum())

    # 200 mm of water (soft tissue that attenuates as much stands for it), and three thicknesses of soft tissue.
    as_soft = 189.4
    assert linear(1.0, WATER, 55.0) * 200.0 == pytest.approx(linear(*MATERIALS["SoftTissue"], 55.0) * as_soft, rel=1e-3)
    for trunk_mm, trunk in [(as_soft, 200.0 * water), *((t, t * of["SoftTissue"]) for t in (150.0, 200.0, 300.0))]:
        for bone_mm in (1.0, 3.0, 10.0, 20.0, 40.0, 60.0):
            step = ours[trunk_mm, bone_mm] - ours[trunk_mm, 0.0]
            assert step == pytest.approx(measured(trunk, bone_mm) - measured(trunk, 0.0), rel=0.02), (trunk_mm, bone_mm)

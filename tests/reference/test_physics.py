"""Attenuation and tube tables recomputed by xraydb and SpekPy.

xraydb gives the elements' attenuation; the tissues are mixtures of them by mass fraction: ICRU-44 / ICRU-46 compositions as NIST's
table 2 has them (the minor elements of soft tissue, and muscle, from memory), dry air as NIST has it, steel of a common
austenitic grade. SpekPy gives the spectrum of the tube that `src/imaging/tube.rs` names.
"""

import pytest
import spekpy
import tables
import xraydb

# Density, g/cm3, and mass fractions.
MATERIALS = {
    "CorticalBone": (1.92, {"H": 0.034, "C": 0.155, "N": 0.042, "O": 0.435, "Na": 0.001, "Mg": 0.002, "P": 0.103, "S": 0.003, "Ca": 0.225}),
    "SoftTissue": (1.06, {"H": 0.102, "C": 0.143, "N": 0.034, "O": 0.708, "Na": 0.002, "P": 0.003, "S": 0.003, "Cl": 0.002, "K": 0.003}),
    "Muscle": (1.05, {"H": 0.102, "C": 0.143, "N": 0.034, "O": 0.710, "Na": 0.001, "P": 0.002, "S": 0.003, "Cl": 0.001, "K": 0.004}),
    "Adipose": (0.95, {"H": 0.114, "C": 0.598, "N": 0.007, "O": 0.278, "Na": 0.001, "S": 0.001, "Cl": 0.001}),
    "Air": (0.001205, {"N": 0.755267, "O": 0.231781, "Ar": 0.012827, "C": 0.000124}),
    "Steel": (8.0, {"Fe": 0.70, "Cr": 0.19, "Ni": 0.10, "Mn": 0.01}),
}
WATER = {"H": 0.111898, "O": 0.888102}
# Iohexol C19H26I3N3O9 by atomic masses; 300 mg iodine a millilitre is 0.647 g of it; density of the solution from memory.
IOHEXOL = {"C": 228.21, "H": 26.21, "I": 380.71, "N": 42.02, "O": 143.99}
IOHEXOL_G_PER_ML, SOLUTION_G_PER_ML = 0.647, 1.349


def linear(density, fractions, kev):
    """1/cm, coherent scatter included."""
    return density * sum(w * xraydb.mu_elam(element, 1000.0 * kev) for element, w in fractions.items())


def test_the_tables_are_found():
    energies, rows = tables.attenuation()
    assert energies[0] == 35.0 and energies[-1] == 100.0 and len(energies) == 10
    assert set(rows) == set(MATERIALS) | {"Iohexol300"}
    assert all(len(row) == len(energies) for row in rows.values())
    assert [row[0] for row in tables.tube()] == [60.0, 70.0, 80.0, 90.0, 100.0, 110.0]


@pytest.mark.parametrize("material", MATERIALS)
def test_attenuation_is_xraydbs(material):
    density, fractions = MATERIALS[material]
    # Composition tables are rounded to a thousandth.
    assert sum(fractions.values()) == pytest.approx(1.0, abs=1e-3)
    energies, rows = tables.attenuation()
    expected = [linear(density, fractions, kev) for kev in energies]
    # Air is written to three digits only; it is the absence of tissue.
    assert rows[material] == pytest.approx(expected, rel=3e-3 if material == "Air" else 1e-4)


def test_contrast_medium_is_xraydbs():
    energies, rows = tables.attenuation()
    whole = sum(IOHEXOL.values())
    for kev, told in zip(energies, rows["Iohexol300"]):
        solute = linear(IOHEXOL_G_PER_ML, {e: m / whole for e, m in IOHEXOL.items()}, kev)
        expected = solute + linear(SOLUTION_G_PER_ML - IOHEXOL_G_PER_ML, WATER, kev)
        assert told == pytest.approx(expected, rel=5e-3), kev


def test_bone_is_where_nist_has_it():
    """NIST's table for ICRU-44 cortical bone at 40 keV, 0.6655 cm2/g, as a public copy quotes it."""
    energies, rows = tables.attenuation()
    assert rows["CorticalBone"][energies.index(40.0)] / 1.92 == pytest.approx(0.6655, abs=5e-5)


@pytest.mark.parametrize("row", tables.tube(), ids=lambda row: f"{row[0]:.0f} kVp")
def test_tube_is_spekpys(row):
    kvp, kerma, energy, transmission, photons = row
    beam = spekpy.Spek(kvp=kvp, th=12.0, z=100.0).multi_filter([("Al", 3.0), ("Cu", 0.1)])
    behind = spekpy.Spek.clone(beam).filter("Water, Liquid", 200.0)
    assert kerma == pytest.approx(beam.get_kerma(), rel=5e-3)
    assert energy == pytest.approx(behind.get_emean(), rel=5e-3)
    assert transmission == pytest.approx(behind.get_kerma() / beam.get_kerma(), rel=5e-3)
    # Fluence is told a cm2.
    assert photons == pytest.approx(behind.get_flu() / 100.0 / behind.get_kerma(), rel=5e-3)

"""Rows of the tables in the Rust source. They are constants behind no command, so they are read where they are written; a table that
is no longer written like this gives no rows, and the checks fail on that."""

import re

from conftest import PROJECT

NUMBER = r"[-+]?[0-9][0-9._]*(?:e[-+]?[0-9]+)?"


def source(module):
    return (PROJECT / "src" / "imaging" / f"{module}.rs").read_text()


def numbers(text):
    return [float(n.replace("_", "")) for n in re.findall(NUMBER, text)]


def attenuation():
    """Energies, keV, and per material the linear attenuation at them, 1/cm."""
    text = source("attenuation")
    energies = numbers(re.search(r"ENERGIES_KEV: \[f64; \d+\] = \[(.*?)\]", text, re.S)[1])
    return energies, {name: numbers(row) for name, row in re.findall(r"Material::(\w+) => \{?\s*\[(.*?)\]", text, re.S)}


def tube():
    """Rows (kVp, kerma µGy/mAs at 100 cm, mean keV, kerma transmission, photons a mm² and µGy)."""
    return [numbers(row) for row in re.findall(r"^\s+row\((.*?)\),$", source("tube"), re.M)]


def constant(module, name):
    return numbers(re.search(rf"const {name}: f(?:32|64) = ({NUMBER});", source(module))[1])[0]

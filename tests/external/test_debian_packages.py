"""The table of Debian packages against the package manager of this machine (dpkg knows which package has a file)."""

from __future__ import annotations

import re
import shutil
import subprocess

import pytest

from studyboard.shared_libraries import DEBIAN_PACKAGE_OF, debian_packages

pytestmark = pytest.mark.skipif(
    shutil.which("dpkg-query") is None or shutil.which("ldconfig") is None, reason="asks Debian's package manager"
)


def test_every_library_that_is_installed_comes_from_the_package_that_the_table_says() -> None:
    cached = subprocess.run(["ldconfig", "-p"], capture_output=True, text=True, check=True).stdout
    where = dict(re.findall(r"^\t(\S+) \(.*\) => (\S+)$", cached, re.MULTILINE))
    installed = [library for library in DEBIAN_PACKAGE_OF if library in where]
    assert len(installed) >= 10
    wrong = {}
    for library in installed:
        # The loader says /lib, the package manager may say /usr/lib: they are one folder since Debian 12.
        found = subprocess.run(["dpkg-query", "-S", f"*/{library}"], capture_output=True, text=True).stdout
        owners = {line.partition(":")[0] for line in found.splitlines()}
        expected = debian_packages([library])[0]
        if owners and expected not in owners:
            wrong[library] = (expected, owners)
    assert wrong == {}

"""The verb check-setup."""

from __future__ import annotations

import json
from dataclasses import asdict

from studyboard.setup_check import all_packages, check_setup
from studyboard.shared_libraries import install_line


def print_setup(*, as_json: bool = False) -> int:
    """Print what is installed and what is missing; 1 where something essential is missing."""
    findings = check_setup()
    packages = all_packages(findings)
    if as_json:
        report = {"findings": [asdict(finding) for finding in findings], "debian_packages": packages}
        print(json.dumps(report, indent=2, ensure_ascii=False))
    else:
        for finding in findings:
            sign = "ok     " if finding.good else ("MISSING" if finding.essential else "missing")
            print(f"{sign}  {finding.name}: {finding.detail}")
            if not finding.good:
                print(f"         Needed for {finding.needed_for}.")
                print(f"         {finding.remedy}")
        if packages:
            print(f"Everything that the system lacks, on Debian and Ubuntu: {install_line(packages)}")
    return 0 if all(finding.good or not finding.essential for finding in findings) else 1

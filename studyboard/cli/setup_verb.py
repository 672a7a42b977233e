"""The verb check-setup."""

from __future__ import annotations

import json
from dataclasses import asdict

from studyboard.setup_check import check_setup


def print_setup(*, as_json: bool = False) -> int:
    """Print what is installed and what is missing; 1 where something essential is missing."""
    findings = check_setup()
    if as_json:
        print(json.dumps({"findings": [asdict(finding) for finding in findings]}, indent=2, ensure_ascii=False))
    else:
        for finding in findings:
            sign = "ok     " if finding.good else ("MISSING" if finding.essential else "missing")
            print(f"{sign}  {finding.name}: {finding.detail}")
            if not finding.good:
                print(f"         Without it: {finding.needed_for}.")
                print(f"         {finding.remedy}")
    return 0 if all(finding.good or not finding.essential for finding in findings) else 1

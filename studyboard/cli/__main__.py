"""`python -m studyboard.cli`: the command line without the installed script."""

import sys

from studyboard.cli.main import main

sys.exit(main())

"""`python -m studyboard`: the program without the installed script."""

import sys

from studyboard.cli.main import main

sys.exit(main())

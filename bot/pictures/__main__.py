"""The process that makes pictures: `python -m bot.pictures SECONDS`, jobs on standard input."""

import sys

from bot.pictures.worker import serve

serve(sys.stdin.buffer, sys.stdout.buffer, float(sys.argv[1]))

"""Chat: updates in, messages out. The only place that knows the chat service's library."""

import os

# The library's own opt-in to what will be its only way: spans of time as timedelta. It warns at every use else.
os.environ.setdefault("PTB_TIMEDELTA", "1")

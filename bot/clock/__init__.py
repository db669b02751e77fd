"""The clock: once a minute it asks whose day opens, closes or needs a reminder."""

"""Evensum: a year of pre-algebra over a chat channel."""

"""Whole years without a chat, to see whether the planner helps."""

"""Typed text and a key in, a fair teacher's judgement out."""

"""Pictures and papers: data in, bytes out, made in a process of their own."""

from bot.pictures.worker import CannotMake, Pictures

__all__ = ["CannotMake", "Pictures"]

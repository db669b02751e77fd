"""Stands in for the chat service and a phone: a loopback Bot API server with faults on request, and a page."""

from bot.standin.app import StandIn, build_standin
from bot.standin.model import Group, Person, Upload
from bot.standin.moves import moment
from bot.standin.serving import Served, serve

__all__ = ["Group", "Person", "Served", "StandIn", "Upload", "build_standin", "moment", "serve"]

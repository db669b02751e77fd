"""The planner: calendar, memories and a date in, a day plan out. Pure; knows ids, no text and no numbers."""

from bot.planner.history import Done, History, Paces, PastDay, Wishes
from bot.planner.memory import Evidence, Memory, recall, remember, remember_item, replay
from bot.planner.plan import Because, DayKind, DayPlan, Dropped, DropReason, Pick, WarmUp
from bot.planner.plan_day import plan_day, seed_of
from bot.planner.syllabus import HandsOnPlace, Lesson, Syllabus, Template, TestPlace

__all__ = [
    "Because",
    "DayKind",
    "DayPlan",
    "Done",
    "DropReason",
    "Dropped",
    "Evidence",
    "HandsOnPlace",
    "History",
    "Lesson",
    "Memory",
    "Paces",
    "PastDay",
    "Pick",
    "Syllabus",
    "Template",
    "TestPlace",
    "WarmUp",
    "Wishes",
    "plan_day",
    "recall",
    "remember",
    "remember_item",
    "replay",
    "seed_of",
]

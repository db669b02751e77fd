"""How the service says no: a status, a description that begins with the status name, sometimes parameters."""

from __future__ import annotations

from typing import Any


class Refusal(Exception):
    """An answer of the shape {"ok": false, ...}; the HTTP status is its error code.

    Descriptions follow the published ones, for a client may look into them.
    """

    def __init__(self, status: int, description: str, parameters: dict[str, Any] | None = None) -> None:
        super().__init__(description)
        self.status = status
        self.description = description
        self.parameters = parameters

    def body(self) -> dict[str, Any]:
        """Return the answer's JSON."""
        answer: dict[str, Any] = {"ok": False, "error_code": self.status, "description": self.description}
        if self.parameters:
            answer["parameters"] = self.parameters
        return answer


def bad(reason: str) -> Refusal:
    """Return 400 with a reason."""
    return Refusal(400, f"Bad Request: {reason}")


def forbidden(reason: str) -> Refusal:
    """Return 403 with a reason: no retry helps until a person does something."""
    return Refusal(403, f"Forbidden: {reason}")


def too_many(seconds: int) -> Refusal:
    """Return 429: ask again after so many whole seconds."""
    return Refusal(429, f"Too Many Requests: retry after {seconds}", {"retry_after": seconds})


def conflict(reason: str) -> Refusal:
    """Return 409: somebody else fetches this bot's updates."""
    return Refusal(409, f"Conflict: {reason}")


UNAUTHORIZED = Refusal(401, "Unauthorized")
NO_METHOD = Refusal(404, "Not Found: method not found")
OTHER_POLL = "terminated by other getUpdates request; make sure that only one bot instance is running"
WEBHOOK_ACTIVE = (
    "can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first"
)
WEBHOOK_SET = "terminated by setWebhook request"

"""What all use cases share: the school they work for, calendars, histories and how a day stands."""

"""Chat: updates in, messages out. The only place that knows the chat service's library."""

"""The only SQL. Functions take a session and give frozen data; rows never leave."""

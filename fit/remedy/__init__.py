"""What would help: each remedy is tried on the user's data and measured again."""

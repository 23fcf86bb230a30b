"""Where sessions come from: one file a kind."""

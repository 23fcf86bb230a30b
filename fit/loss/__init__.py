"""What the small screen loses of what the big one showed, and the figures for it."""

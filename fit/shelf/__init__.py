"""A shelf of programs, sessions and documents, each scored before anybody loads it.

    paths -> entries -> findings -> table, JSON, CSV

What was found of an entry is kept by its content and the settings, so that a second look costs nothing.
"""

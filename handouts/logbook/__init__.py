"""The logbook: what clients send back, understood, asked about, and kept.

The way of a message: `hearing` or `filled` turns it into claims, `understanding`
holds the claims against the client's sheet, kit and log, `command` asks the
trainer what is in doubt, and `files` appends the lines, whole or not at all.
"""

"""Lets `python -m handouts` do what the command `handouts` does."""

from handouts.cli import main

main()

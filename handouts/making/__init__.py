"""From a studio folder to finished files."""

from handouts.making.make import Asked, Made, Outcome, make

__all__ = ["Asked", "Made", "Outcome", "make"]

"""From a studio folder to finished files."""

from handouts.making.make import Made, Outcome, make

__all__ = ["Made", "Outcome", "make"]

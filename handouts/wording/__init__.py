"""The checker of wording: finds words that only work for a person who is watching.

    from handouts.wording import check_text
    for mark in check_text("Hold the bell like this."):
        print(mark.start, mark.end, mark.kind, mark.words)

Needs numpy and onnxruntime, and loads them when a sentence may hold a fault.
"""

from handouts.wording.engine import check_text
from handouts.wording.marks import Mark

__all__ = ["Mark", "check_text"]

"""The edges of the rules for weights, each just within and just beyond."""

import pytest

from handouts.amounts import read_mass
from handouts.coaching.loads import choose, weights_there
from handouts.models import Adjustable, Kit


@pytest.mark.parametrize(
    ("there", "chosen", "how"),
    [
        ("20.5 kg", "20.5 kg", "just above"),  # 2.5 % above 20 kg, as common practice allows
        ("20.501 kg", None, "all too heavy"),
        ("20 kg", "20 kg", "as asked"),
        ("19.999 kg", "19.999 kg", "below"),
    ],
)
def test_how_far_above_a_weight_may_lie(there, chosen, how):
    found = choose([read_mass(there)], read_mass("20 kg"))
    assert (str(found.chosen) if found.chosen else None, found.how) == (chosen, how)


def test_of_two_handles_that_make_one_weight_the_first_is_set():
    # Two plates of other sizes, as many on either handle: the order of the file decides.
    def handle(weight: str, plate: str) -> Adjustable:
        return Adjustable.model_validate({"handles": "1", "handle": weight, "plates": [f"2 x {plate}"]}, by_alias=True)

    one, other = handle("2 kg", "2 kg"), handle("4 kg", "1 kg")
    for handles in ((one, other), (other, one)):
        (plates,) = weights_there(Kit(adjustable=handles), 1)[read_mass("6 kg")]
        assert plates.mass == handles[0].plates[0].mass

"""What the tests of plans share: the library as it is shipped, and the figures that plans are worked from."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from latchside.figures.catalogue import Figure, catalogue
from latchside.library import Library
from latchside.project import Checked


@pytest.fixture(scope="session")
def library(shipped: Checked) -> Library:
    return shipped.library


@pytest.fixture(scope="session")
def figures() -> Mapping[str, Figure]:
    return catalogue()

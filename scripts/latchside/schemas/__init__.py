"""Schemas: the shape of each kind of record, and whether a read record fits it."""

from latchside.schemas.load import Schemas, load_schemas
from latchside.schemas.shape import Shape

__all__ = ["Schemas", "Shape", "load_schemas"]

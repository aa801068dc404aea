"""New records and drawings to fill in, and a new project to keep them in."""

from latchside.new.project import write_project
from latchside.new.write import Wish, write_new

__all__ = ["Wish", "write_new", "write_project"]

"""Fault finding: which check to do next, so that the fault is gone in the least expected minutes.

problem    what is known: causes with their weights, checks with their results, set-ups
states     what may still be and what is in force, and what an action makes of it
precedence the best order of remedies where some wait for others
exact      the least expected minutes, by dynamic programming
heuristic  larger problems: a good plan, and how far from the best it may be
compare    what other orders of the same checks would cost
plan       the tree of a plan, and its JSON
text       the same for people to read
listing    a plain list of causes, read from a file
"""

from latchside.order.plan import Plan, make_plan
from latchside.order.problem import Problem, from_fault, from_list

__all__ = ["Plan", "Problem", "from_fault", "from_list", "make_plan"]

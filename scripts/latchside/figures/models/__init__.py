"""The figures that are more than a closed formula: one module for each, with one function `compute`.

A module is named after its figure, with underscores. `compute` takes the figure's inputs by name, already in range
and in the units of their names; an input that was left out arrives as None. It returns the outputs by name, and may
return `warnings`, a list of sentences. Inputs that contradict each other raise ValueError with a line for the reader.
"""

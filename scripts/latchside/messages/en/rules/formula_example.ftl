rule = A worked example of a figure comes out as it says.

rule = A drawing has a title, a description and a view box, holds only lines, shapes and text, and names every label.

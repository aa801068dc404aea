with-layout = { $reading } with { $layout }

# The name of a figure that is no device's own.
this-figure = This figure

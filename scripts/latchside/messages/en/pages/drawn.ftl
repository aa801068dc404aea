# What stands for a value on a page that is about no one device.
unknown = as on the label
seen = See the drawing: { $drawing }

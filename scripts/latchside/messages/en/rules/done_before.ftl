rule = A procedure that another one says is done before it comes first in the list of every device.

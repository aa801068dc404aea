rule = Every kind of opening that a device is for has its drawing.

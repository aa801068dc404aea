rule = Words of one way of sensing are told only of devices that sense so.

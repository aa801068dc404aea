rule = A device that has no magnet says where it is fixed on each kind of opening it is for.

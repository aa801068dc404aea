none = none
opening-at = { $place }: { $kind }
opening = Opening { $number }

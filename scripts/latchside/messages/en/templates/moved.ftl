moved = { $name } has moved
part-moved = { $name }: { $part } has moved
description = This page has a new address.
now = It is now { $page }.

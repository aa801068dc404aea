description = { $kind } of this library.

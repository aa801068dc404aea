and-more = { $names } and { $more } more

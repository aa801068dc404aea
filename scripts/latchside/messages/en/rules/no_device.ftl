rule = Each condition on traits is met by some device.

met-by-none =
    .found = { $traits }, which no device has
    .expected = traits that a device of the library has together
    .action = Correct the traits, or delete what is for no device.

rule = Each condition on traits is met by some device.

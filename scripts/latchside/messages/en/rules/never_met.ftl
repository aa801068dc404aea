rule = A condition can be met by an opening its device is used on, and a weight has a condition.

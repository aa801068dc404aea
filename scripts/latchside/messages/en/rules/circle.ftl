rule = No procedure draws itself in, directly or by way of others.

rule = A job in the library is invented, says so, and names the day it is planned for.

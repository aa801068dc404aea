none = none

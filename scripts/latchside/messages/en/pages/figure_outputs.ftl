yes = yes
no = no
none = none

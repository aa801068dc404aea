none = none
yes = yes
no = no

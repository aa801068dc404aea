# The columns of the parts; those of the zones are the fields of the plan.
part-sort = sort
part-name = name
part-quantity = quantity
part-spare = spare
part-in-all = in all
part-unit = unit
part-used-for = used for
yes = yes
no = no

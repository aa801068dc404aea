default = (default)
formula = Formula
sources = Sources
takes = takes { $inputs }
gives = gives { $outputs }
instead-of = { $input } (instead of { $other })
optional = { $input } (optional)
none = none

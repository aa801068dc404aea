cautions-here = Cautions
figure = Figure
worked-out = Worked out
verdict = Verdict
meaning = What it means
assumed = Assumed: { $what }

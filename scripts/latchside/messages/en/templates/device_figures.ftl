worked = Worked for this device
label-wins = Worked out with the ratings above. Where the label on your part says otherwise, the label wins.
formulas = Formula and sources: { $formulas }.
count = { $count }

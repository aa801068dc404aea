no-figure = { $id }: no such figure.{ $near } All of them: { $command }
not-sound = { $fault }. Run: { $command }
no-value = { $typed }: write it as name=value
twice = { $name }: given twice
